package session

import (
	"fmt"

	"chape/project"
	"chape/project/print"
	"chape/project/versions"
	"chape/ui/act"
)

// Numbered is printing once it is settled under which number.
type Numbered struct{ Options print.Options }

// Outgrown tells what to say of a change that takes a project from one state to another:
// where it is the first that makes its pattern another than the one printed under its
// number, that is said, with the key that raises it.
func Outgrown(was, is project.Project, raise string) string {
	if is.Revision != was.Revision {
		return ""
	}
	q, now := versions.Outgrown(is)
	if !now {
		return ""
	}
	if _, before := versions.Outgrown(was); before {
		return ""
	}
	return fmt.Sprintf("pattern %d was printed on %s, and this changes it: %s raises its number to %d",
		q.Number, q.Printed.Format("2 Jan"), raise, raised(is))
}

// raised is the number that Raise gives.
func raised(p project.Project) int {
	versions.Raise(&p)
	return p.Revision
}

// AskRaise gives the pattern the next number; where nothing that is cut has changed since it
// was printed it asks first.
func (s *Session) AskRaise() []act.Msg {
	p := s.doc.Committed()
	q, printed := p.Printed(p.Revision)
	if !printed {
		return say(fmt.Sprintf("pattern %d was not printed yet: it keeps its number", p.Revision))
	}
	if _, outgrown := versions.Outgrown(p); outgrown || q.Inputs == "" { // one of old may have been drawn from anything
		return s.Raise()
	}
	return []act.Msg{act.Question{
		Title: fmt.Sprintf("Nothing that is cut has changed since pattern %d was printed on %s", q.Number, q.Printed.Format("2 Jan 2006")),
		Text:  []string{"Under another number it would be the same pattern once more."},
		Choices: []act.Choice{
			{Key: "n", Does: fmt.Sprintf("give it number %d all the same", raised(p)), Do: s.Raise},
		},
	}}
}

// Raise gives the pattern the next number.
func (s *Session) Raise() []act.Msg {
	n := raised(s.doc.Committed())
	return []act.Msg{
		act.Commit{Label: fmt.Sprintf("pattern number %d", n), Do: func(p *project.Project) error {
			versions.Raise(p)
			return nil
		}},
		act.Say{Text: fmt.Sprintf("pattern number %d from now on; N shows it beside the former ones", n)},
	}
}

// PrintPattern prints the pattern; where another was printed under its number it asks
// first under which, and answers with Numbered. A trial is no pattern, and has none.
func (s *Session) PrintPattern(o print.Options) []act.Msg {
	if why, ok := s.Printable(); !ok { // the panel was opened for another sheet
		return []act.Msg{why}
	}
	p := s.doc.Committed()
	q, outgrown := versions.Outgrown(p)
	if !outgrown || o.Trial != 0 {
		return s.Print(o)
	}
	again := func() []act.Msg { return []act.Msg{Numbered{o}} }
	return []act.Msg{act.Question{
		Title: fmt.Sprintf("Pattern %d was printed on %s, from other numbers", q.Number, q.Printed.Format("2 Jan 2006")),
		Text:  []string{"With a number of its own, both stay in the file and can be laid over each other. Under the old one the new sheets take the place of the old."},
		Choices: []act.Choice{
			{Key: "n", Does: fmt.Sprintf("print it as pattern %d", raised(p)), Do: func() []act.Msg { return append(s.Raise(), again()...) }},
			{Key: "s", Does: fmt.Sprintf("print it as pattern %d: the old one is given up", q.Number), Do: again},
		},
	}}
}
