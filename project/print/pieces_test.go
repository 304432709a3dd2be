package print

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"chape/calc"
	"chape/calc/length"
	"chape/project/print/sheet"
)

// Every piece says inside its cut line what it is, whose, its number, how often it is cut, of
// what leather (one ply's thickness), which side is up, and for which hand.
func TestPiecesSayWhatTheyAre(t *testing.T) {
	for _, hand := range []calc.Hand{calc.RightHand, calc.LeftHand} {
		for _, up := range []calc.Up{calc.GrainUp, calc.FleshUp} {
			p := garden()
			p.Customer.Hand = hand
			p.Sheath.Welt, p.Sheath.Plies = 6.6, 3
			p.Sold.Body = "8/9 oz"
			j, err := newJob(p, compute(t, p), Options{Up: up, Paper: paper(t, "a3")})
			if err != nil {
				t.Fatal(err)
			}
			_, zones := j.strips()
			all := append(j.halves(), zones...)
			for i, want := range []struct {
				name, leather string
				count         int
			}{{"back half", "leather 3.2 mm, 8/9 oz", 1}, {"front half", "leather 3.2 mm, 8/9 oz", 1}, {"welt", "leather 2.2 mm", 3}} {
				words := all[i].Words
				whole := strings.Join(words, " ")
				side := map[calc.Up]string{calc.GrainUp: "grain side up", calc.FleshUp: "flesh side up"}[up]
				for _, s := range []string{fmt.Sprintf("pattern 3, cut %d", want.count), want.leather, side + ", mouth up", "for the " + hand.String() + " hand", "invented for the tests"} {
					if !strings.Contains(whole, s) {
						t.Errorf("%s, %s: no %q in %q", hand, want.name, s, whole)
					}
				}
				if words[0] != want.name {
					t.Errorf("piece %d is called %q, want %q", i, words[0], want.name)
				}
			}
		}
	}
}

// Ticks run in from the cut line, and their numbers count millimetres, or inches, from the
// point: each stands as high as it says.
func TestTicksSayWhereTheyStand(t *testing.T) {
	for u, each := range map[length.Unit]float64{length.Millimetres: 1, length.Inches: 25.4} {
		p := garden()
		p.Units = u
		plan := compute(t, p)
		j, err := newJob(p, plan, Options{})
		if err != nil {
			t.Fatal(err)
		}
		d := j.pattern()
		numbers := 0
		for _, l := range d.Paths {
			if l.Layer != sheet.MarkLayer || l.Stroke.Width != sheet.Thin.Width || len(l.Pts) != 2 || l.Pts[0].Y != l.Pts[1].Y {
				continue
			}
			at, out, in := -l.Pts[0].Y, math.Abs(l.Pts[0].X), math.Abs(l.Pts[1].X)
			if cut := plan.Flat.Cut.Height(at); math.Abs(out-cut) > 1e-6 || math.Abs(out-in-tickLong) > 1e-6 {
				t.Errorf("a tick at %.1f runs from %.2f to %.2f, the cut line is at %.2f", at, out, in, cut)
			}
			for _, w := range d.Texts {
				if math.Abs(w.At.Y-0.33*sheet.WordSize-l.Pts[0].Y) > 1e-6 || math.Abs(math.Abs(w.At.X)-out) > 1.01 {
					continue
				}
				var n float64
				if _, err := fmt.Sscan(strings.TrimSuffix(w.Says, "″"), &n); err != nil || math.Abs(n*each-at) > 1e-6 || strings.HasSuffix(w.Says, "″") != (u == length.Inches) {
					t.Errorf("%s: the tick at %.2f mm says %q", u, at, w.Says)
				}
				numbers++
			}
		}
		if numbers < 4 {
			t.Errorf("%s: %d ticks are numbered", u, numbers)
		}
	}
}

// The overview numbers the sheets as they are called, says where each lies, and its list of
// pages counts them as the file does: the first page is the overview itself.
func TestOverviewCounts(t *testing.T) {
	p := large(3, 3)
	j, err := newJob(p, compute(t, p), Options{})
	if err != nil {
		t.Fatal(err)
	}
	pages := j.pages()
	words := map[string]bool{}
	all := ""
	for _, w := range pages[0].Drawing.Texts {
		words[w.Says] = true
		all += w.Says + " "
	}
	sheets := 0
	for i, page := range pages[1:] {
		if want := fmt.Sprintf("%d %s", i+2, page.Name); !strings.Contains(all, want) {
			t.Errorf("the list of pages has no %q", want)
		}
		if strings.HasPrefix(page.Name, "Pattern, sheet ") {
			sheets++
			if n := fmt.Sprint(sheets); !words[n] || !strings.HasPrefix(page.Name, "Pattern, sheet "+n+" of ") {
				t.Errorf("%s: no sheet is numbered %s", page.Name, n)
			}
		}
	}
	if sheets < 4 {
		t.Errorf("%d sheets: this test shows little", sheets)
	}
	if words[fmt.Sprint(sheets+1)] {
		t.Errorf("a sheet %d is shown", sheets+1)
	}
}

// What a hole is called by is its diameter, at the drain and at the tab.
func TestHolesAreNamedByTheirDiameter(t *testing.T) {
	p := garden()
	plan := compute(t, p)
	j, err := newJob(p, plan, Options{})
	if err != nil {
		t.Fatal(err)
	}
	d := j.pattern()
	want := map[string]int{"drain " + j.exact(plan.Flat.Drain.Diameter): 1}
	for _, c := range plan.Loop.Relief {
		want["relief hole "+j.exact(c.Diameter)]++
	}
	for s, n := range want {
		got := 0
		for _, w := range d.Texts {
			if w.Says == s {
				got++
			}
		}
		if got != n {
			t.Errorf("%q stands %d times on the pattern, want %d", s, got, n)
		}
	}
}

// The words of a print are in the maker's unit: those who measure in inches are told nothing
// in millimetres but what the pricks and a correction are.
func TestSkivingInTheMakersUnit(t *testing.T) {
	for u, want := range map[length.Unit]string{length.Millimetres: "Skive the last 10 to 15 mm at the point", length.Inches: "Skive the last 3/8 to 5/8 in at the point"} {
		p := garden()
		p.Units = u
		j, err := newJob(p, compute(t, p), Options{})
		if err != nil {
			t.Fatal(err)
		}
		if got := strings.Join(saying(t, j.pages(), "Welt"), " "); !strings.Contains(got, want) {
			t.Errorf("%s: no %q in %s", u, want, got)
		}
	}
}

// The sheet to set out on shows the front of the closed sheath, mouth up: for the right hand,
// edge to the rear, the back half lies right of the fold in the flat, so the front lies left
// of it; its mouth runs square across from fold to seam.
func TestSettingOutShowsTheFront(t *testing.T) {
	for hand, side := range map[calc.Hand]float64{calc.RightHand: -1, calc.LeftHand: 1} {
		p := garden()
		p.Customer.Hand = hand
		plan := compute(t, p)
		j, err := newJob(p, plan, Options{Up: calc.FleshUp}) // the closed sheath has its grain outside whatever lies up
		if err != nil {
			t.Fatal(err)
		}
		d := j.settingOut()
		mouth := p.Sheath.Mouth.MM()
		squared := false
		for _, l := range d.Paths {
			for _, v := range l.Pts {
				if v.X*side < -1.01 { // but for the tips of crosses at the fold
					t.Fatalf("%s hand: a line on %s at %v lies on the back's side", hand, l.Layer, v)
				}
			}
			if a, b := l.Pts[0], l.Pts[len(l.Pts)-1]; l.Name == "mouth" {
				squared = a.Y == -mouth && math.Abs(b.Y+mouth) < 1e-6 && a.X == 0 && math.Abs(math.Abs(b.X)-plan.Plane.Stitch.Height(mouth)) < 1e-6
			}
		}
		if !squared {
			t.Errorf("%s hand: the mouth does not run square from fold to seam", hand)
		}
	}
}

// The welt's ticks run in from its outer edge, where the body's cut line comes to lie on it.
func TestTicksOfTheWelt(t *testing.T) {
	p := garden()
	plan := compute(t, p)
	j, err := newJob(p, plan, Options{})
	if err != nil {
		t.Fatal(err)
	}
	ticks := 0
	for _, l := range j.welt(j.facing(j.o.Up)).Paths {
		if l.Layer != sheet.MarkLayer {
			continue
		}
		ticks++
		at, out, in := -l.Pts[0].Y, math.Abs(l.Pts[0].X), math.Abs(l.Pts[1].X)
		if edge := plan.Plane.Outer.Height(at); math.Abs(out-edge) > 1e-6 || math.Abs(out-in-tickLong) > 1e-6 {
			t.Errorf("a tick at %.1f runs from %.2f to %.2f, the welt's edge is at %.2f", at, out, in, edge)
		}
	}
	if ticks < 3 {
		t.Errorf("%d ticks", ticks)
	}
}
