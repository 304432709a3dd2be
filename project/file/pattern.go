package file

import (
	"bytes"
	"slices"
	"strings"
	"time"

	"chape/project"
	"chape/project/clock"
)

// Inputs is what the pattern of p is drawn from, as the text of a file that holds
// nothing else.
func Inputs(p project.Project) string {
	_, text, _ := strings.Cut(string(Encode(p.Drawn())), "\n") // without the heading
	return text
}

// DecodeInputs reads what Inputs wrote, also in an older version. A project is loaded
// without looking at it, for a damaged note of what once was cut is no reason to refuse
// the knife in hand: so the error, a *Refused, comes here.
func DecodeInputs(q project.Pattern) (project.Project, error) {
	p, _, err := Decode("inputs", []byte(q.Inputs))
	if err != nil {
		return project.Project{}, err
	}
	return p.Drawn(), nil
}

// SameInputs tells whether a printed pattern was drawn from what p holds now.
func SameInputs(q project.Pattern, p project.Project) bool {
	drawn, err := DecodeInputs(q)
	return err == nil && Inputs(drawn) == Inputs(p)
}

// Printed is p with the note that its pattern is printed on a day, and whether that is
// news. One that was printed already, from the same inputs, keeps its date: its sheets
// are the same. From others, under the same number, it is another: the newer one counts.
func Printed(p project.Project, day time.Time) (project.Project, bool) {
	if !DateOf(p).IsZero() {
		return p, false
	}
	p = p.Clone()
	p.Note(project.Pattern{Number: p.Revision, Printed: clock.DayOf(day), Inputs: Inputs(p)})
	return slimmed(p), true
}

// DateOf is the day that the pattern of p was printed on, from what p holds now; zero
// where it was not.
func DateOf(p project.Project) time.Time {
	q, ok := p.Printed(p.Revision)
	if !ok || !SameInputs(q, p) {
		return time.Time{}
	}
	return q.Printed
}

// Appended is the text of a file with the last pattern of q put at its end, so that
// comments stay; ok is false where that does not make it a file of q.
func Appended(data []byte, q project.Project) (text []byte, ok bool) {
	var b strings.Builder
	last := project.Project{Patterns: q.Patterns[max(0, len(q.Patterns)-1):]}
	for _, l := range project.Lists {
		if l.Key == "pattern" {
			writeRows(&b, &last, l)
		}
	}
	text = slices.Clone(data)
	if !bytes.HasSuffix(text, []byte("\n")) {
		text = append(text, '\n')
	}
	text = append(text, b.String()...)
	got, _, err := Decode("appended", text)
	return text, err == nil && bytes.Equal(Encode(got), Encode(q))
}

// slimmed keeps a project well below the largest file: of the patterns printed first
// only number and date are left where the inputs of all would be too much.
func slimmed(p project.Project) project.Project {
	const most = MaxSize / 2
	over := len(Encode(p)) - most
	for i := 0; over > 0 && i < len(p.Patterns)-1; i++ {
		over -= len(p.Patterns[i].Inputs) // or a little more, as it is written
		p.Patterns[i].Inputs = ""
	}
	return p
}
