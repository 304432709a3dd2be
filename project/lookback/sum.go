package lookback

import (
	"cmp"
	"slices"
	"time"

	"github.com/shopspring/decimal"

	"chape/calc/length"
	"chape/project/money"
	"chape/project/steps"
)

// StepSum is what one step took over all sheaths that counted minutes for it.
type StepSum struct {
	Title    string
	Sheaths  int           // that counted minutes
	Spent    time.Duration // together
	Median   time.Duration
	Expected time.Duration // of those sheaths together
}

// Totals are sums over sheaths.
type Totals struct {
	Sheaths  int // that could be read
	Finished int
	Hours    money.Sum
	Leather  length.Area
	Bought   length.Area
	Thread   length.Length
	Quoted   int             // finished sheaths with a quote and no price missing
	Asked    decimal.Decimal // for those
	Took     decimal.Decimal // what those cost
	Steps    []StepSum       // the longest first
}

// Yield is the share of the leather bought that became parts; 0 where none is known.
func (t Totals) Yield() float64 { return Sheath{Leather: t.Leather, Bought: t.Bought}.Yield() }

// Sum adds sheaths up. Leather, thread and money are of the finished ones; minutes are of
// all.
func Sum(all []Sheath) Totals {
	var t Totals
	spent := map[string][]time.Duration{}
	sums := map[string]*StepSum{}
	for _, s := range all {
		if s.Err == "" || len(s.Steps) > 0 {
			t.Sheaths++
		}
		t.Hours.Expected += s.Hours.Expected
		t.Hours.Spent += s.Hours.Spent
		t.Hours.Left += s.Hours.Left
		for _, st := range s.Steps {
			if st.Spent < steps.LeastSpent {
				continue
			}
			if sums[st.Title] == nil {
				sums[st.Title] = &StepSum{Title: st.Title}
			}
			sum := sums[st.Title]
			sum.Sheaths++
			sum.Spent += st.Spent
			sum.Expected += st.Expected
			spent[st.Title] = append(spent[st.Title], st.Spent)
		}
		if s.Finished {
			t.finished(s)
		}
	}
	for title, sum := range sums {
		sum.Median, _ = money.Learn(0, spent[title])
		t.Steps = append(t.Steps, *sum)
	}
	slices.SortFunc(t.Steps, func(a, b StepSum) int { return cmp.Or(cmp.Compare(b.Spent, a.Spent), cmp.Compare(a.Title, b.Title)) })
	return t
}

func (t *Totals) finished(s Sheath) {
	t.Finished++
	t.Leather += s.Leather
	t.Bought += s.Bought
	t.Thread += s.Thread
	if left, ok := s.Left(); ok {
		t.Quoted++
		t.Asked = t.Asked.Add(s.Quote.Total())
		t.Took = t.Took.Add(s.Quote.Total().Sub(left))
	}
}
