package lookback

import (
	"fmt"
	"time"

	"chape/calc/length"
	"chape/project/money"
	"chape/project/shop"
)

// Table is texts in columns: the first is a name, the others are figures. The columns that
// matter most come first.
type Table struct {
	Head  []string
	Rows  [][]string
	Total []string // the sums below
}

// Sheaths is a row for each sheath; areas and lengths in the unit.
func Sheaths(all []Sheath, sh shop.Shop, u length.Unit) Table {
	t := Table{Head: []string{"knife", "spent", "expected", "quoted", "cost so far", "leaves", "leather bought", "yield", "thread"}}
	for _, s := range all {
		t.Rows = append(t.Rows, s.row(u))
	}
	sum := Sum(all)
	c := sh.Prices.Currency
	t.Total = []string{fmt.Sprintf("%d, finished %d", sum.Sheaths, sum.Finished), minutes(sum.Hours.Spent), minutes(sum.Hours.Expected), "", "", "",
		area(sum.Bought, u), share(sum.Yield()), thread(sum.Thread, u)}
	if sum.Quoted > 0 {
		t.Total[3], t.Total[4], t.Total[5] = c.Format(sum.Asked), c.Format(sum.Took), c.Format(sum.Asked.Sub(sum.Took))
	}
	return t
}

func (s Sheath) row(u length.Unit) []string {
	title := s.Title
	switch {
	case s.Err != "":
		title = "! " + title
	case s.Finished:
		title = "x " + title
	default:
		title = "  " + title
	}
	row := []string{title, minutes(s.Hours.Spent), minutes(s.Hours.Expected), "", "", "", area(s.Bought, u), share(s.Yield()), thread(s.Thread, u)}
	if s.Quote != nil {
		row[3] = s.Quote.Bill.Say()
	}
	if sum, atLeast := s.Cost.Total(); s.Err == "" && !(atLeast && sum.IsZero()) {
		row[4] = s.Cost.Say()
	}
	if left, ok := s.Left(); ok {
		row[5] = s.Cost.Currency.Format(left)
	}
	return row
}

// StepRows is a row for each step that minutes were counted for, the longest first.
func StepRows(all []Sheath) Table {
	t := Table{Head: []string{"step", "spent", "sheaths", "median", "expected"}}
	for _, s := range Sum(all).Steps {
		t.Rows = append(t.Rows, []string{s.Title, minutes(s.Spent), fmt.Sprint(s.Sheaths), minutes(s.Median), minutes(s.Expected)})
	}
	return t
}

func minutes(d time.Duration) string {
	if d <= 0 {
		return ""
	}
	return money.Minutes(d)
}

func area(a length.Area, u length.Unit) string {
	if a <= 0 {
		return ""
	}
	return a.Format(u)
}

func share(f float64) string {
	if f <= 0 {
		return ""
	}
	return fmt.Sprintf("%.0f %%", 100*f)
}

// thread is in metres or feet, as the plan says it.
func thread(l length.Length, u length.Unit) string {
	switch {
	case l <= 0:
		return ""
	case u == length.Inches:
		return fmt.Sprintf("%.1f ft", l.In()/12)
	}
	return fmt.Sprintf("%.2f m", l.MM()/1000)
}
