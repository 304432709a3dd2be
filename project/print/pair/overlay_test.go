package pair

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"chape/calc"
	"chape/calc/curve"
	"chape/calc/length"
	"chape/project"
	"chape/project/print/sheet"
	"chape/project/versions"
)

// longer is a pair of which the later pattern is longer, wider and drawn by another hand.
func longer(t *testing.T, hand calc.Hand) versions.Pair {
	t.Helper()
	return two(t, func(p *project.Project) {
		p.Sheath.Mouth += 8
		p.Sheath.Ease = 1
		p.Customer.Hand = hand
	})
}

// lines are the paths of an overlay by the line that draws them: whole outlines are closed.
func lines(d sheet.Drawing, s sheet.Stroke, closed bool) []curve.Line {
	var out []curve.Line
	for _, p := range d.Paths {
		if p.Stroke.Width == s.Width && len(p.Stroke.Dashes) == len(s.Dashes) && p.Closed == closed {
			out = append(out, p.Pts)
		}
	}
	return out
}

// area is what an outline encloses at true size.
func area(l curve.Line, scale float64) float64 { return math.Abs(l.Area()) / (scale * scale) }

// The earlier pattern is thin and the later heavy, each whole, at the scale that is said, on
// one fold; both fill the room that there is and stay in it.
func TestWhichIsWhich(t *testing.T) {
	p := longer(t, calc.RightHand)
	const w, h = 170.0, 90.0
	d, scale := overlay(p, w, h)
	thin, heavy := lines(d, sheet.Hair, true), lines(d, sheet.Wide, true)
	if len(thin) != 1 || len(heavy) != 1 {
		t.Fatalf("%d thin outlines, %d heavy ones", len(thin), len(heavy))
	}
	was, is := math.Abs(p.WasPlan.Flat.Outline.Area()), math.Abs(p.IsPlan.Flat.Outline.Area())
	if got := area(thin[0], scale); math.Abs(got/was-1) > 0.001 || math.Abs(is/was-1) < 0.02 {
		t.Errorf("the thin one encloses %.0f mm², the earlier pattern %.0f, the later %.0f", got, was, is)
	}
	if got := area(heavy[0], scale); math.Abs(got/is-1) > 0.001 {
		t.Errorf("the heavy one encloses %.0f mm², the later pattern %.0f", got, is)
	}
	b := d.Bounds()
	if b.Lo.X < -0.01 || b.Lo.Y < -0.01 || b.Hi.X > w+0.01 || b.Hi.Y > h+0.01 || b.Width() < w-0.5 && b.Height() < h-0.5 {
		t.Errorf("they take %v of %v × %v", b, w, h)
	}
}

// Each pattern has its stitch line on both halves, as far from the fold on the one as on the
// other, and the fold runs from the later one's point end to its mouth.
func TestHalvesAreAlike(t *testing.T) {
	p := longer(t, calc.RightHand)
	d, scale := overlay(p, 170, 90)
	fold := lines(d, sheet.DashDot, false)
	if len(fold) != 1 || math.Abs(fold[0][0].Y-fold[0][1].Y) > 1e-9 {
		t.Fatalf("the fold is %v", fold)
	}
	f := p.IsPlan.Flat
	if long := fold[0].Length() / scale; math.Abs(long-(f.Mouth[0].X-f.Cut[0].X)) > 1e-6 {
		t.Errorf("the fold is %.2f mm long, the pattern %.2f", long, f.Mouth[0].X-f.Cut[0].X)
	}
	at := fold[0][0].Y
	for name, pair := range map[string][]curve.Line{"earlier": lines(d, sheet.Hair, false), "later": lines(d, sheet.Dashed, false)} {
		if len(pair) != 2 || len(pair[0]) != len(pair[1]) {
			t.Fatalf("%s: %d stitch lines", name, len(pair))
		}
		plan := map[string]*calc.Plan{"earlier": p.WasPlan, "later": p.IsPlan}[name]
		for i, v := range pair[0] {
			o := pair[1][i]
			if math.Abs(v.X-o.X) > 1e-9 || math.Abs(v.Y-at+o.Y-at) > 1e-9 {
				t.Fatalf("%s: %v and %v don't lie alike about the fold at %v", name, v, o, at)
			}
			left := v.X/scale - fold[0][0].X/scale + f.Cut[0].X
			if y := math.Abs(v.Y-at) / scale; i > 0 && i < len(pair[0])-1 && math.Abs(y-plan.Flat.Stitch.Height(left)) > 0.3 {
				t.Errorf("%s: the stitch line is %.2f mm from the fold at %.1f, want %.2f", name, y, left, plan.Flat.Stitch.Height(left))
			}
		}
	}
}

// The tab lies on the back half: with the mouth to the right that is below the fold for the
// right hand, edge to the rear, grain side up, and above it for the left.
func TestHandOfThePair(t *testing.T) {
	for hand, below := range map[calc.Hand]bool{calc.RightHand: true, calc.LeftHand: false} {
		p := longer(t, hand)
		d, _ := overlay(p, 170, 90)
		fold := lines(d, sheet.DashDot, false)[0][0].Y
		var tip curve.Vec // of the tab: the rightmost place
		for _, v := range lines(d, sheet.Wide, true)[0] {
			if v.X >= tip.X {
				tip = v
			}
		}
		if (tip.Y > fold) != below {
			t.Errorf("%v: the tab lies at %.1f, the fold at %.1f", hand, tip.Y, fold)
		}
	}
}

// The page says which line is which pattern, to what scale they are drawn, and has the tables
// in the maker's unit.
func TestPageSaysWhichIsWhich(t *testing.T) {
	p := longer(t, calc.RightHand)
	for _, u := range []length.Unit{length.Millimetres, length.Inches} {
		o := Options{Paper: sheet.Papers[0]}
		var words []string
		drawn := math.Inf(1)
		for _, page := range pages(p, o, u) {
			for _, text := range page.Drawing.Texts {
				words = append(words, text.Says)
			}
			for _, path := range page.Drawing.Paths {
				if path.Closed && path.Stroke.Width == sheet.Wide.Width {
					lo, hi := path.Pts.Bounds()
					a, b := p.IsPlan.Flat.Outline.Bounds()
					drawn = (b.X - a.X) / (hi.X - lo.X)
				}
			}
		}
		all := strings.Join(words, " ")
		if want := "Thin: " + p.Was.Name() + ". Heavy: " + p.Is.Name() + "."; !strings.Contains(all, want) {
			t.Errorf("%s: no %q", u, want)
		}
		m := regexp.MustCompile(`Drawn at 1 : ([\d.]+), not to cut by`).FindStringSubmatch(all)
		if m == nil {
			t.Fatalf("%s: no scale is said", u)
		}
		if said, _ := strconv.ParseFloat(m[1], 64); math.Abs(said-drawn) > 0.0051 || said < 1 {
			t.Errorf("%s: drawn at 1 : %.3f, said to be 1 : %v", u, drawn, said)
		}
		if want := fmt.Sprintf("half-widths, %s", u); !strings.Contains(all, want) {
			t.Errorf("%s: no table %q", u, want)
		}
	}
}
