package pair

import (
	"bytes"
	"strings"
	"testing"
	"time"

	"chape/calc"
	"chape/calc/curve"
	"chape/calc/length"
	"chape/project"
	"chape/project/file"
	"chape/project/print/sheet"
	"chape/project/versions"
)

func two(t *testing.T, change func(*project.Project)) versions.Pair {
	t.Helper()
	p := project.Defaults()
	p.Title, p.Revision = "Bench knife", 2
	p, _ = file.Printed(p, time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC))
	change(&p)
	versions.Raise(&p)
	all := versions.Of(p)
	pair, err := versions.Between(all[0], all[1], calc.DefaultLimits())
	if err != nil {
		t.Fatal(err)
	}
	return pair
}

// What stands on the page, and that it stays on it.
func TestPage(t *testing.T) {
	p := two(t, func(p *project.Project) { p.Sheath.Mouth += 5 })
	for _, paper := range []string{"a4", "letter", "148x210"} {
		sized, err := sheet.ParsePaper(paper)
		if err != nil {
			t.Fatal(err)
		}
		w, h := sized.Area(sheet.Correction{})
		words := ""
		for _, page := range pages(p, Options{Paper: sized}, length.Millimetres) {
			for _, text := range page.Drawing.Texts {
				words += " " + text.Says
			}
			if b := page.Drawing.Bounds(); b.Lo.X < -0.01 || b.Lo.Y < -0.01 || b.Hi.X > w+0.01 || b.Hi.Y > h+0.01 {
				t.Errorf("%s: lines reach to %v of %v × %v", paper, b, w, h)
			}
		}
		for _, want := range []string{"Bench knife", "pattern 2, printed 25 Nov 2026", "pattern 3 as it is now", "not to cut by", "along the fold; then, now", "figures that differ"} {
			if !strings.Contains(words, want) {
				t.Errorf("%s: no %q on the page", paper, want)
			}
		}
	}
}

// A correction of 2 at 60 of reach 20: the curve's top is 2 mm above the zero line on the
// scale that its figures give, and over 60 on the fold; the places are called by their names.
func TestDifferenceToScale(t *testing.T) {
	p := two(t, func(p *project.Project) {
		p.Fits = []project.Fit{{Fit: calc.Fit{At: 60, By: 2, Reach: 20}, With: "leather"}}
	})
	const w, h = 170, 42
	d := difference(p, length.Millimetres, w, h)
	if b := d.Bounds(); b.Lo.X < -0.01 || b.Lo.Y < -0.01 || b.Hi.X > w+0.3 || b.Hi.Y > h+0.01 {
		t.Errorf("it reaches to %v", b)
	}
	words := map[string]curve.Vec{}
	for _, text := range d.Texts {
		words[text.Says] = text.At
	}
	for _, want := range []string{"0", "2.00 wider", "point", "deepest place", "bolster, front face"} {
		if _, ok := words[want]; !ok {
			t.Errorf("no %q among %v", want, words)
		}
	}
	g := p.Difference()
	var top curve.Vec
	for _, path := range d.Paths {
		if path.Stroke.Width == sheet.Wide.Width {
			top = path.Pts[0]
			for _, v := range path.Pts {
				if v.Y < top.Y {
					top = v
				}
			}
		}
	}
	if want := gutter + (60-g.X[0])/(g.X[len(g.X)-1]-g.X[0])*(w-gutter); top.X < want-1 || top.X > want+1 {
		t.Errorf("it is highest at %v, 60 is at %v", top.X, want)
	}
	if up := words["0"].Y - words["2.00 wider"].Y; up < 20 || words["2.00 wider"].Y-top.Y > 1.5 {
		t.Errorf("2 mm are %v high, the top at %v", up, top.Y)
	}
	same := two(t, func(p *project.Project) { p.Belt.Loop = calc.NoLoop })
	if d := difference(same, length.Millimetres, w, h); len(d.Texts) == 0 {
		t.Error("no line of two that are alike")
	}
}

// The thin outline is the earlier one, the heavy one the later: a longer mouth shows in the
// heavy alone, at the drawing's own scale.
func TestOverlayToScale(t *testing.T) {
	p := two(t, func(p *project.Project) { p.Sheath.Mouth += 5; p.Belt.Loop = calc.NoLoop })
	d, scale := overlay(p, 170, 90)
	long := map[float64]float64{} // by the line's width
	for _, path := range d.Paths {
		if path.Closed {
			lo, hi := path.Pts.Bounds()
			long[path.Stroke.Width] = (hi.X - lo.X) / scale
		}
	}
	thin, heavy := long[sheet.Hair.Width], long[sheet.Wide.Width]
	lo, hi := p.IsPlan.Flat.Outline.Bounds()
	if d := heavy - (hi.X - lo.X); d > 0.1 || d < -0.1 {
		t.Errorf("the heavy one is %v long, the pattern %v", heavy, hi.X-lo.X)
	}
	if lo, hi = p.WasPlan.Flat.Outline.Bounds(); thin-(hi.X-lo.X) > 0.1 || thin-(hi.X-lo.X) < -0.1 {
		t.Errorf("the thin one is %v long, the pattern %v", thin, hi.X-lo.X)
	}
}

func TestFile(t *testing.T) {
	p := two(t, func(p *project.Project) { p.Sheath.Mouth += 5 })
	f, err := File(p, Options{}, "bench", length.Millimetres)
	if err != nil || f.Name != "bench patterns 2 and 3.pdf" || !bytes.HasPrefix(f.Data, []byte("%PDF")) {
		t.Errorf("%q, %d bytes, %v", f.Name, len(f.Data), err)
	}
	again, _ := File(p, Options{}, "bench", length.Millimetres)
	if !bytes.Equal(f.Data, again.Data) {
		t.Error("the same two give other bytes")
	}
	if _, err := File(p, Options{Paper: sheet.Paper{Width: 10, Height: 10}}, "bench", length.Millimetres); err == nil {
		t.Error("printed on a stamp")
	}
}
