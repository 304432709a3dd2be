package file

import (
	"slices"
	"strings"
	"time"

	"chape/project"
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
	i := slices.IndexFunc(p.Patterns, func(q project.Pattern) bool { return q.Number == p.Revision })
	if i >= 0 && SameInputs(p.Patterns[i], p) {
		return p, false
	}
	q := project.Pattern{Number: p.Revision, Printed: project.Day(day), Inputs: Inputs(p)}
	p = p.Clone()
	if i >= 0 {
		p.Patterns[i] = q
	} else {
		p.Patterns = append(p.Patterns, q)
	}
	return slimmed(p), true
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
