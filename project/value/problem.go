package value

import (
	"fmt"
	"strings"

	"chape/project/plain"
)

// Problem is one thing in a project that will not do.
type Problem struct {
	Key    string // as in the file: "sheath.gap", "knife.station.bottom"
	Index  int    // of the row of a list, from 0; -1: none
	Line   int    // in the file, from 1; 0: not known
	Found  string // what stands there
	Remedy string // what would do
}

// rowNames is what one row of each list is called.
var rowNames = map[string]string{
	"knife.station": "mark", "fit": "fit", "carried": "carried fit", "earlier": "earlier half-width", "step": "step", "pattern": "pattern", "quote": "quote",
	"weigh": "weighing", "part": "part",
}

// Error names key, row, what was found and what would do, in one line.
func (p Problem) Error() string {
	if p.Key == "" {
		return p.Beside()
	}
	s := p.Key
	if p.Index >= 0 {
		for list, name := range rowNames {
			if strings.HasPrefix(strings.TrimPrefix(p.Key, `"`), list) {
				s += fmt.Sprintf(" of %s %d", name, p.Index+1)
			}
		}
	}
	return s + ": " + p.Beside()
}

// Beside is the text for a screen that shows the field already.
func (p Problem) Beside() string { return "found " + p.Found + ": " + p.Remedy }

// Typed is the text for a screen where the value was typed as text.
func (p Problem) Typed(text string) string {
	return plain.Quote(strings.TrimSpace(text)) + " will not do: " + p.Remedy
}

// Problems is everything that will not do, in the order of the fields.
type Problems []Problem

// Error gives the first problem and how many more there are.
func (ps Problems) Error() string {
	if len(ps) == 0 {
		return "no problems"
	}
	return ps[0].Error() + more(len(ps)-1)
}

// For gives the first problem of a field, or of one row of it.
func (ps Problems) For(key string, index int) (Problem, bool) {
	for _, p := range ps {
		if p.Key == key && p.Index == index {
			return p, true
		}
	}
	return Problem{}, false
}

// Err is nil where there is nothing to say: a nil Problems in an error is not.
func (ps Problems) Err() error {
	if len(ps) == 0 {
		return nil
	}
	return ps
}

func more(n int) string {
	if n == 0 {
		return ""
	}
	return fmt.Sprintf(" (and %d more)", n)
}
