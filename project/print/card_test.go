package print

import (
	"math"
	"strings"
	"testing"

	"chape/calc"
	"chape/calc/length"
	"chape/project/print/sheet"
)

// What lies on the bench: belt, thread, shank, drill, dividers with ten steps, lines to
// write into, the knife's own dimensions, the strap and the mouth's curve; notes in the
// lines that they were written in.
func TestWorkCard(t *testing.T) {
	p := garden()
	p.Notes = "first line\n\n  second line\nthird"
	p.Strap = calc.Strap{Kind: calc.SnapStrap, Width: 18, Thickness: 2.4, Overlap: 30}
	j, err := newJob(p, compute(t, p), Options{})
	if err != nil {
		t.Fatal(err)
	}
	card := saying(t, j.pages(), "Work card")
	all := "\n" + strings.Join(card, "\n") + "\n"
	for _, want := range []string{"belt, wide", "thread, across", "hook's shank, across", "drill", "divider setting", "ten steps of it",
		"line as measured", "setting used", "weight before wetting", "the knife, mm", "grind height", "mouth, mm", "drain, across",
		"strap, long", "arm over the back", "first line", "second line", "third"} {
		if !strings.Contains(all, "\n"+want+"\n") {
			t.Errorf("the card does not say %q in a line of its own", want)
		}
	}
	// A mark of the knife as it was typed: 60 mm from the point, 2 gap, 27 deep, 2.9 thick.
	if !strings.Contains(all, "\n60.0\n2.00\n27.00\n2.90\n27.00\nblade\n") {
		t.Errorf("the mark at 60 mm is not on the card:\n%s", all)
	}
}

// Nothing is written smaller than can be read at arm's length.
func TestLettersAreLargeEnough(t *testing.T) {
	const least = 2.5 // mm of body
	for _, o := range []Options{{}, {Half: true, Paper: paper(t, "letter")}, {Trial: length.Length(0.3)}} {
		p := garden()
		j, err := newJob(p, compute(t, p), o)
		if err != nil {
			t.Fatal(err)
		}
		for _, page := range j.pages() {
			for _, w := range page.Drawing.Texts {
				if w.Size < least && w.Layer != sheet.MapLayer {
					t.Errorf("%s: %q is %.1f mm", page.Name, w.Says, w.Size)
				}
			}
		}
	}
}

// Body and welt bear the same ticks: at the bolster's face, and every 50 mm.
func TestTicksMatch(t *testing.T) {
	p := garden()
	plan := compute(t, p)
	j, err := newJob(p, plan, Options{})
	if err != nil {
		t.Fatal(err)
	}
	f := j.facing(j.o.Up)
	at := func(d sheet.Drawing) map[int]bool { // hundredths of a millimetre from the point
		out := map[int]bool{}
		for _, l := range d.Paths {
			if l.Layer == sheet.MarkLayer && l.Stroke.Width == sheet.Thin.Width && len(l.Pts) == 2 && l.Pts[0].Y == l.Pts[1].Y {
				out[int(-100*l.Pts[0].Y+0.5)] = true
			}
		}
		return out
	}
	body, welt := at(j.pattern()), at(j.welt(f))
	for _, want := range []int{5000, 10000} {
		if !body[want] || !welt[want] {
			t.Errorf("%d mm: on the body %v, on the welt %v", want/100, body[want], welt[want])
		}
	}
	if len(body) != len(welt) {
		t.Errorf("body %v, welt %v", body, welt)
	}
	for x := range welt {
		if !body[x] {
			t.Errorf("a tick at %.2f mm on the welt has none on the body", float64(x)/100)
		}
	}
}

// Half a pattern shows the strip of a wide tab that lies over the fold, and says how wide.
func TestHalfShowsTheTabOverTheFold(t *testing.T) {
	p := garden()
	p.Belt.Tab, p.Belt.Offset, p.Belt.Centred = 46, -6, false
	plan := compute(t, p)
	if plan.Loop.Offset >= 0 {
		t.Fatalf("the tab begins %v from the fold: this test shows nothing", plan.Loop.Offset)
	}
	j, err := newJob(p, plan, Options{Half: true})
	if err != nil {
		t.Fatal(err)
	}
	all := strings.Join(saying(t, j.pages(), "Half pattern"), "\n")
	if words := oneLine(all); !strings.Contains(words, "the tab goes on over the fold by 6 mm, to the thin line") || !strings.Contains(all, "tab, 6 mm over the fold") {
		t.Errorf("nothing is said of the tab over the fold:\n%s", all)
	}
	out := false
	f := j.facing(j.o.Up)
	for _, l := range j.pattern().Paths {
		for _, v := range l.Pts {
			out = out || l.Layer == sheet.MarkLayer && math.Abs(v.X+6*f.back) < 1e-6
		}
	}
	if !out {
		t.Error("the strip over the fold is not drawn")
	}
}

// A step that is left out says so on the card.
func TestCardSaysSkipped(t *testing.T) {
	p := garden()
	for i := range p.Steps {
		p.Steps[i].Skipped = i == 0
	}
	j, err := newJob(p, compute(t, p), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(strings.Join(saying(t, j.pages(), "Work card"), " "), "(skipped)"); len(p.Steps) < 2 || n != 1 {
		t.Errorf("%d of %d steps are said to be skipped, want 1", n, len(p.Steps))
	}
}
