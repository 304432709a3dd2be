package versions

import (
	"strings"
	"testing"
	"time"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/file"
)

var day = time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)

func printed(p project.Project, d int) project.Project {
	q, _ := file.Printed(p, day.AddDate(0, 0, d))
	return q
}

func knifeProject() project.Project {
	p := project.Defaults()
	p.Revision = 1
	return p
}

func TestOf(t *testing.T) {
	p := knifeProject()
	if all := Of(p); len(all) != 1 || all[0].Name() != "pattern 1 as it is now" {
		t.Errorf("unprinted: %v", all)
	}
	p = printed(p, 0)
	if all := Of(p); len(all) != 1 || all[0].Name() != "pattern 1 as it is now, printed 25 Nov 2026" {
		t.Errorf("printed as it is: %v", all)
	}
	if _, ok := Outgrown(p); ok {
		t.Error("outgrown as printed")
	}
	p.Title, p.Notes = "another", "words" // no cut
	if _, ok := Outgrown(p); ok {
		t.Error("words make another pattern")
	}
	p.Sheath.Leather = 2.5
	if q, ok := Outgrown(p); !ok || q.Number != 1 {
		t.Error("thinner leather makes no other pattern")
	}
	Raise(&p)
	if all := Of(p); len(all) != 2 || all[0].Number != 1 || all[1].Number != 2 || all[0].Project().Sheath.Leather == 2.5 {
		t.Errorf("raised: %v", all)
	}
	if _, ok := Outgrown(p); ok {
		t.Error("the next number was not printed")
	}
	p.Revision = 1 // set back by hand: the next is still none that was had
	p.Patterns = append(p.Patterns, project.Pattern{Number: 7, Printed: day, Inputs: "torn = "})
	if Raise(&p); p.Revision != 8 {
		t.Errorf("raised to %d", p.Revision)
	}
	if all := Of(p); len(all) != 2 {
		t.Errorf("a torn note is a pattern: %v", all)
	}
}

// A correction of 2 with reach 25 at the deepest part of the blade, far from where the
// line is closed: the half-width grows by 2 there, by 1 half a reach away, by nothing past
// it (geometry.md's cosine), and the cut line with it.
func TestBetweenByHand(t *testing.T) {
	p := printed(knifeProject(), 0)
	p.Fits = []project.Fit{{Fit: calc.Fit{At: 60, By: 2, Reach: 20}, With: "leather"}}
	Raise(&p)
	all := Of(p)
	pair, err := Between(all[0], all[1], calc.DefaultLimits())
	if err != nil {
		t.Fatal(err)
	}
	got := map[string][]string{}
	for _, r := range pair.HalfWidths(length.Millimetres).Rows {
		got[r[0]] = r
	}
	for at, want := range map[string]string{"60.0": "+2.00", "50.0": "+1.00", "70.0": "+1.00", "30.0": "0.00"} {
		if got[at] == nil || got[at][3] != want {
			t.Errorf("at %s: %v, want %s", at, got[at], want)
		}
	}
	if w := pair.Most(length.Millimetres); !strings.HasPrefix(w, "2 mm wider a side at 60") {
		t.Errorf("most: %q", w)
	}
	if d := pair.Difference(); d.At(60) < 1.999 || d.At(60) > 2.001 || d.At(50) < 0.999 || d.At(50) > 1.001 || d.At(30) != 0 {
		t.Errorf("the difference at 60, 50 and 30 is %v, %v, %v", d.At(60), d.At(50), d.At(30))
	}
	if n := pair.HalfWidths(length.Millimetres).Note; n != "along the fold; then, now; + where it is wider now" {
		t.Errorf("note %q", n)
	}
	back, _ := Between(all[1], all[0], calc.DefaultLimits())
	if w := back.Most(length.Millimetres); !strings.HasPrefix(w, "2 mm narrower a side at 60") {
		t.Errorf("most the other way round: %q", w)
	}
	same, _ := Between(all[0], all[0], calc.DefaultLimits())
	if w := same.Most(length.Millimetres); w != "the stitch lines are alike" || len(same.Figures(length.Millimetres).Rows) != 0 {
		t.Errorf("with itself: %q, %v", w, same.Figures(length.Millimetres).Rows)
	}
}

func TestFiguresThatDiffer(t *testing.T) {
	p := printed(knifeProject(), 0)
	p.Belt.Loop = calc.NoLoop
	p.Stitch.Pitch = 5
	Raise(&p)
	all := Of(p)
	pair, err := Between(all[0], all[1], calc.DefaultLimits())
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, r := range pair.Figures(length.Millimetres).Rows {
		names = append(names, r[0])
	}
	for _, want := range []string{"stitches", "divider setting", "thread for the loop"} {
		if !strings.Contains(strings.Join(names, "\n"), want) {
			t.Errorf("no %q in %q", want, names)
		}
	}
}

func TestUnplannable(t *testing.T) {
	p := knifeProject()
	p.Sheath.Ease = -60
	if _, err := Between(Of(p)[0], Of(p)[0], calc.DefaultLimits()); err == nil {
		t.Error("no plan, yet a pair")
	}
}
