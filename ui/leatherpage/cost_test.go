package leatherpage

import (
	"strings"
	"testing"

	"chape/calc/length"
	"chape/project/leather"
	"chape/project/money"
	"chape/project/takes"
)

// A yield of an earlier pattern is said to be one, and the cost goes back to a share for
// offcuts; with the pattern as it was it counts again.
func TestAYieldOfAnEarlierPattern(t *testing.T) {
	b := newBench(t, 120, 30, offcut())
	b.Keys("p", "end", "up", "enter").Shows("so far yield")
	if got := takes.LossOf(b.Project, b.Snap.Plan, 0.25).From; !strings.HasPrefix(got, "placed, yield") {
		t.Errorf("the cost comes of %q", got)
	}
	margin := b.Project.Sheath.Margin
	b.Project.Sheath.Margin += 1
	b.Show()
	b.Keys("end").Shows("an earlier pattern's", "not counted", "place them again")
	if got := takes.LossOf(b.Project, b.Snap.Plan, 0.25).From; got != "25 % for offcuts: the placing is of an earlier pattern" {
		t.Errorf("the cost comes of %q", got)
	}
	b.Project.Sheath.Margin = margin
	b.Show()
	b.Keys("end").Shows("the cost is reckoned w").Lacks("earlier pattern")
	b.Keys("p", "end", "up", "x")
	if h := b.Project.Hide; h.Placed || h.Cut != 0 {
		t.Errorf("forgotten, but for %+v", h)
	}
}

// The price of a piece is kept with it, and goes into the project that is cut from it.
func TestPriceOfThePiece(t *testing.T) {
	b := newBench(t, 120, 40, offcut())
	b.Keys("enter", "end", "up", "up", "up").Shows("that of the settings")
	b.Keys("9", "2", ",", "5", "enter").Shows("92.5 a m²")
	if got := b.kept().Pieces[0].Price; got != (money.ByArea{M2: "92.5"}) {
		t.Errorf("kept %+v", got)
	}
	b.Keys("end", "enter").Shows("it is")
	if h := b.Project.Hide; h.Price.M2 != "92.5" || h.Name != "offcut by the window" {
		t.Errorf("the project has %+v", h)
	}
	b.Keys("up", "up", "up", "enter", "7", "enter").Shows("it is, but for the price")
	b.Keys("up", "enter", "-", "1", "enter").Shows("write an amount")
}

// In inches a gap is a fraction, a new piece has round figures, and its price is by the foot.
func TestInches(t *testing.T) {
	b := newBench(t, 120, 40)
	b.Project.Units = length.Inches
	b.Show()
	b.Shows("1/8 in")
	b.Keys("home", "enter").Shows("length", "12 in", "8 in")
	l := b.kept().Pieces[0]
	if l.Width != 304.8 || l.Height != 203.2 {
		t.Errorf("a new piece of %v × %v mm", l.Width, l.Height)
	}
	b.Keys("end", "up", "up", "up", "9", "enter").Shows("9 a ft²")
	b.Keys("esc").Shows("12 in × 8 in")
	// Enter on the gap as it stands changes nothing of it.
	b.Keys("end", "up", "enter", "enter")
	if got := b.kept(); got.Gap != leather.DefaultGap || got.Pieces[0].Price.Ft2 != "9" {
		t.Errorf("kept a gap of %v mm, %+v", got.Gap, got.Pieces[0].Price)
	}
}
