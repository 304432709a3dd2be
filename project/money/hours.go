package money

import (
	"slices"
	"time"

	"chape/project/steps"
)

// Sum is the minutes of steps together.
type Sum struct {
	Expected, Spent time.Duration
	Left            time.Duration // expected of steps not done, less what was spent on them
}

// Hours sums the minutes of steps.
func Hours(steps []Step) Sum {
	var s Sum
	for _, st := range steps {
		s.Expected += st.Expected
		s.Spent += st.Spent
		if !st.Done {
			s.Left += max(0, st.Expected-st.Spent)
		}
	}
	return s
}

// Spends tells whether any minutes were spent.
func (u Use) Spends() bool { return Hours(u.Steps).Spent > 0 }

// Learn is the minutes to expect of a step: the median of what finished sheaths
// took, or the step's own where none of them counted any; of tells from how many. What is
// less than steps.LeastSpent is no work.
func Learn(own time.Duration, spent []time.Duration) (expected time.Duration, of int) {
	s := slices.DeleteFunc(slices.Clone(spent), func(d time.Duration) bool { return d < steps.LeastSpent })
	if len(s) == 0 {
		return own, 0
	}
	slices.Sort(s)
	n := len(s)
	return ((s[(n-1)/2] + s[n/2]) / 2).Round(time.Minute), n
}
