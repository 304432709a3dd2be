package lookback

import (
	"strings"
	"testing"
	"time"

	"chape/calc/length"
	"chape/project/money"
	"chape/project/shop/shoptest"
)

// Areas and lengths in either unit, by hand: 123,400 mm² are 1234 cm² and 1.328 ft² (929.0304
// cm² to the square foot: 16 CFR 500.19), 60,000 are 93.0 in²; 2836 mm of thread are 2.84 m
// and 9.3 ft. What is not known is left empty.
func TestFiguresOfARow(t *testing.T) {
	for _, c := range []struct {
		s    Sheath
		u    length.Unit
		want string
	}{
		{Sheath{Leather: 83912, Bought: 123400, Thread: 2836}, length.Millimetres, "1234 cm²|68 %|2.84 m"},
		{Sheath{Leather: 83912, Bought: 123400, Thread: 2836}, length.Inches, "1.33 ft²|68 %|9.3 ft"},
		{Sheath{Leather: 30000, Bought: 60000, Thread: 304.8}, length.Inches, "93.0 in²|50 %|1.0 ft"},
		{Sheath{}, length.Millimetres, "||"}, {Sheath{}, length.Inches, "||"},
	} {
		row := c.s.row(c.u)
		if got := strings.Join(row[6:], "|"); got != c.want {
			t.Errorf("%+v in %v: %q, want %q", c.s, c.u, got, c.want)
		}
		if c.s.Finished = true; c.s.row(c.u)[0] != "x " || row[0] != "  " {
			t.Errorf("marked %q, in hand %q", c.s.row(c.u)[0], row[0])
		}
	}
}

// What it has cost so far is said where anything is known of it: a price missing makes it "at
// least", all of them missing say nothing, and so does a sheath without a plan.
func TestCostSoFar(t *testing.T) {
	missing := money.Line{Name: "thread"}
	for name, c := range map[string]struct {
		change       func(*Sheath)
		cost, leaves string
	}{
		"known":            {func(*Sheath) {}, "84.50 €", "15.50 €"},
		"a price missing":  {func(s *Sheath) { s.Cost.Lines = append(s.Cost.Lines, missing) }, "at least 84.50 €", ""},
		"all missing":      {func(s *Sheath) { s.Cost.Lines = []money.Line{missing} }, "", ""},
		"nothing to count": {func(s *Sheath) { s.Cost.Lines = nil }, "0.00 €", "100.00 €"},
		"no plan":          {func(s *Sheath) { s.Err = "no plan: x" }, "", ""},
		"too dear":         {func(s *Sheath) { s.Cost.Lines[0].Amount = shoptest.Amount("100.01") }, "100.01 €", "-0.01 €"},
		"in hand":          {func(s *Sheath) { s.Finished = false }, "84.50 €", ""},
		"no quote":         {func(s *Sheath) { s.Quote = nil }, "84.50 €", ""},
	} {
		s := billed("84.50", "100", "€")
		c.change(&s)
		quoted := "100.00 €"
		if s.Quote == nil {
			quoted = ""
		}
		if row := s.row(length.Millimetres); row[3] != quoted || row[4] != c.cost || row[5] != c.leaves {
			t.Errorf("%s: %q, want %s, %s, %s", name, row[3:6], quoted, c.cost, c.leaves)
		}
	}
}

// The line of sums is that of the rows above it, and says no money where nothing was quoted.
func TestTotalRow(t *testing.T) {
	a, b := billed("84.50", "100", "€"), billed("50", "", "€")
	a.Leather, a.Bought, a.Thread = 50000, 100000, 2000
	b.Leather, b.Bought, b.Thread = 70000, 100000, 1500
	for i := range b.Steps {
		b.Steps[i].Expected = time.Hour
	}
	a.Hours, b.Hours = money.Hours(a.Steps), money.Hours(b.Steps)
	got := Sheaths([]Sheath{a, b}, shoptest.Evenings(), length.Millimetres).Total
	if row := strings.Join(got, "|"); row != "2, finished 2|2 min|1 h 0 min|100.00 €|84.50 €|15.50 €|2000 cm²|60 %|3.50 m" {
		t.Errorf("total %s", row)
	}
	got = Sheaths([]Sheath{b}, shoptest.Evenings(), length.Inches).Total
	if row := strings.Join(got, "|"); row != "1, finished 1|1 min|1 h 0 min||||1.08 ft²|70 %|4.9 ft" {
		t.Errorf("total of the one that nobody quoted %s", row)
	}
	if rows := StepRows([]Sheath{a, b}).Rows; len(rows) != 1 || strings.Join(rows[0], "|") != "Sew|2 min|2|1 min|1 h 0 min" {
		t.Errorf("steps %q", rows)
	}
}
