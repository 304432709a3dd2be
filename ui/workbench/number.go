package workbench

import (
	"fmt"

	"chape/project"
	"chape/project/print"
	"chape/project/versions"
	"chape/ui/act"
	"chape/ui/panel"
)

// printAs is printing once it is settled under which number.
type printAs struct{ o print.Options }

// takePrint does what a value says about printing patterns; known is false for others.
func (m *Model) takePrint(msg act.Msg) (out []act.Msg, known bool) {
	switch msg := msg.(type) {
	case panel.PrintMsg:
		return m.print(msg), true
	case printAs:
		return m.session.Print(msg.o), true
	case act.PrintPair:
		return m.session.PrintPair(msg.Pair, m.o.Print), true
	}
	return nil, false
}

// offerNumber tells what to say of a change that takes a project from one state to
// another: where it is the first that makes its pattern another than the one printed
// under its number, that is said, with the key that raises it.
func (m *Model) offerNumber(was, is project.Project) string {
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
	return fmt.Sprintf("pattern %d was printed on %s, and this makes it another: %s raises its number to %d",
		q.Number, q.Printed.Format("2 Jan"), m.Keys.Raise.Help().Key, raised(is))
}

// raised is the number that Raise gives.
func raised(p project.Project) int {
	versions.Raise(&p)
	return p.Revision
}

// raise gives the pattern the next number.
func (m *Model) raise() []act.Msg {
	p := m.session.Doc().Committed()
	if _, printed := p.Printed(p.Revision); !printed {
		return []act.Msg{act.Say{Text: fmt.Sprintf("pattern %d was not printed yet: it keeps its number", p.Revision)}}
	}
	n := raised(p)
	return []act.Msg{
		act.Commit{Label: fmt.Sprintf("pattern number %d", n), Do: func(p *project.Project) error {
			versions.Raise(p)
			return nil
		}},
		act.Say{Text: fmt.Sprintf("pattern number %d from now on; N shows it beside the former ones", n)},
	}
}

// print prints what the panel asks for; where another pattern was printed under the number
// it asks first under which. A trial is no pattern, and has none.
func (m *Model) print(msg panel.PrintMsg) []act.Msg {
	o := msg.Options
	if msg.Tracing {
		return m.session.PrintTracing(o)
	}
	if why, ok := m.session.Printable(); !ok { // the panel was opened for another sheet
		return []act.Msg{why}
	}
	p := m.session.Doc().Committed()
	q, outgrown := versions.Outgrown(p)
	if !outgrown || o.Trial != 0 {
		return m.session.Print(o)
	}
	again := func() []act.Msg { return []act.Msg{printAs{o}} }
	return []act.Msg{act.Question{
		Title: fmt.Sprintf("Pattern %d was printed on %s, from other numbers", q.Number, q.Printed.Format("2 Jan 2006")),
		Text:  []string{"With a number of its own, both stay in the file and can be laid over each other. Under the old one the new sheets take the place of the old."},
		Choices: []act.Choice{
			{Key: "n", Does: fmt.Sprintf("print it as pattern %d", raised(p)), Do: func() []act.Msg { return append(m.raise(), again()...) }},
			{Key: "s", Does: fmt.Sprintf("print it as pattern %d: the old one is given up", q.Number), Do: again},
		},
	}}
}
