package shop

import (
	"time"

	"chape/project/money"
	"chape/project/steps"
)

// Lesson is a step whose expected minutes differ from what finished sheaths took.
type Lesson struct {
	Step int           // its place in the list
	To   time.Duration // the median of what it took
	Of   int           // so many sheaths
}

// Lessons are what finished sheaths teach of the steps that are still open: of each with
// the same title the minutes that were counted, skipped ones left out.
func Lessons(list []steps.Step, finished [][]steps.Step) []Lesson {
	spent := map[string][]time.Duration{}
	for _, l := range finished {
		for _, s := range l {
			if !s.Skipped && !s.Done.IsZero() {
				spent[s.Title] = append(spent[s.Title], s.Spent)
			}
		}
	}
	var out []Lesson
	for i, s := range list {
		if s.Skipped || !s.Done.IsZero() {
			continue
		}
		if to, of := money.Learn(s.Expect, spent[s.Title]); of > 0 && to != s.Expect {
			out = append(out, Lesson{i, to, of})
		}
	}
	return out
}

// Finished tells whether a checklist is worked off, so that its minutes can teach.
func Finished(list []steps.Step) bool { return len(list) > 0 && steps.Current(list) < 0 }
