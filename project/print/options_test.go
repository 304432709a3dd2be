package print

import (
	"math"
	"slices"
	"strings"
	"testing"

	"chape/calc/length"
	"chape/project/print/sheet"
)

// A printer that gives 98.5 mm for 100 is measured, corrected, and measured
// again: the second sheet's error multiplies with the first correction.
func TestMeasuredAgain(t *testing.T) {
	const realX, realY = 0.9850, 1.0120 // what the printer makes of 1 mm
	gives := func(c sheet.Correction) sheet.Correction {
		fx, fy := c.Factors()
		return sheet.Correction{X: 100 * realX * fx, Y: 100 * realY * fy}
	}
	// Read off carelessly at first, by 0.4 mm.
	c, err := sheet.Correction{}.Then(sheet.Correction{X: 98.9, Y: 100.8})
	if err != nil || c != (sheet.Correction{X: 98.9, Y: 100.8}) {
		t.Fatalf("first correction %v, %v", c, err)
	}
	again := gives(c)
	if math.Abs(again.X-100) > 0.5 || math.Abs(again.X-100) < 0.3 {
		t.Fatalf("the corrected sheet gives %v", again)
	}
	if c, err = c.Then(again); err != nil {
		t.Fatal(err)
	}
	if last := gives(c); math.Abs(last.X-100) > 0.01 || math.Abs(last.Y-100) > 0.01 {
		t.Errorf("corrected twice it gives %v with %v", last, c)
	}
	if _, err := (sheet.Correction{X: 96, Y: 100}).Then(sheet.Correction{X: 96, Y: 100}); err == nil {
		t.Error("a printer 8 % out is believed")
	}
}

func TestProgress(t *testing.T) {
	var heard []string
	o := Options{Progress: func(s string) { heard = append(heard, s) }}
	p := garden()
	if _, err := Files(p, compute(t, p), o, "x", []string{"pdf", "svg"}); err != nil {
		t.Fatal(err)
	}
	if want := []string{"pattern, 2 sheets", "welt", "setting out", "work card", "care card", "svg"}; !slices.Equal(heard, want) {
		t.Errorf("heard %q, want %q", heard, want)
	}
}

func TestOptionsCheck(t *testing.T) {
	for want, o := range map[string]Options{
		"try 0.1 for paper":   {Trial: 99},
		"measure again":       {Correction: sheet.Correction{X: 80}},
		"thickness for trial": {Trial: -1},
		"mm":                  {Paper: sheet.Paper{Name: "x", Width: 10, Height: 10}},
	} {
		if err := o.Check(); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%+v: %v, want …%s", o, err, want)
		}
	}
	if err := (Options{}).Check(); err != nil {
		t.Error(err)
	}
}

// A pattern is folded in the stock that it is printed on: how loose it hangs is said of paper
// of 0.1 mm, or of the stock that was named; (π/2)·0.5·(3.2 − 1) is 1.73 mm.
func TestHowLooseItHangs(t *testing.T) {
	p := garden()
	plan := compute(t, p)
	for stock, want := range map[length.Length]string{0: "hangs 2.5 mm loose", 0.1: "hangs 2.5 mm loose", 1: "hangs 1.5 mm loose"} {
		j, err := newJob(p, plan, Options{Stock: stock})
		if err != nil {
			t.Fatal(err)
		}
		if got := j.looseWords(); !strings.Contains(got, want) {
			t.Errorf("stock of %v: %q, want %q", stock, got, want)
		}
	}
	if got := (Options{}).defaults().Stock; got != 0.1 {
		t.Errorf("paper is taken to be %v mm thick", got)
	}
}
