package axes

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/interp"

	"chape/calc/curve"
)

// The curves of geometry.md through the marks (gonum's Fritsch-Butland, from step to step) stay within 0.15 mm of the knife's own curves, square to
// them, save within a millimetre of a step, where the pencil rounds, and at the very ends.
func TestMarksSayTheKnife(t *testing.T) {
	for seed := range uint64(8) {
		d := randomKnife(100 + seed)
		k := NewKnife(d.line(), d.feet())
		if len(k.Steps) != 1 || math.Abs(k.Steps[0]-d.blade) > 0.02 {
			t.Fatalf("knife %d: steps %v, want %v", seed, k.Steps, d.blade)
		}
		// the fold may lie a little turned; what is compared is the drawn curves in its axes
		for i, part := range split(k.Marks) {
			var xs, tops, bottoms []float64
			for _, m := range part {
				xs, tops, bottoms = append(xs, m.At), append(tops, m.Gap), append(bottoms, m.Gap+m.Depth)
			}
			var top, bottom interp.FritschButland
			if top.Fit(xs, tops) != nil || bottom.Fit(xs, bottoms) != nil {
				t.Fatalf("knife %d: no curve through %v", seed, part)
			}
			from, to := part[0].At, part[len(part)-1].At
			lo, hi := []float64{0.5, d.blade + 1.1}[i], []float64{d.blade - 1.1, d.long - 0.5}[i]
			for x := lo; x < hi; x += 0.3 {
				for _, side := range []struct {
					f func(float64) float64
					c *interp.FritschButland
				}{{d.top, &top}, {d.bottom, &bottom}} {
					v := k.In(curve.Vec{X: x, Y: side.f(x)})
					if v.X < from+0.4 || v.X > to-0.4 {
						continue
					}
					slope := (side.f(x+0.05) - side.f(x-0.05)) / 0.1
					if off := math.Abs(side.c.Predict(v.X)-v.Y-k.Rule) / math.Hypot(1, slope); off > 0.16 {
						t.Fatalf("knife %d: at %v the curve is %v off", seed, x, off)
					}
				}
			}
		}
		if off, at := k.Off(); off > 0.15 {
			t.Errorf("knife %d says itself that it strays by %v at %v", seed, off, at)
		}
	}
}

// split cuts marks at doubled places.
func split(ms []Mark) (out [][]Mark) {
	from := 0
	for i := 1; i < len(ms); i++ {
		if ms[i].At == ms[i-1].At {
			out = append(out, ms[from:i])
			from = i
		}
	}
	return append(out, ms[from:])
}

// Marks ascend from the point to the butt, doubled at steps alone, at least half a millimetre apart, hundredths of a millimetre, at most sixty.
func TestMarksInOrder(t *testing.T) {
	for seed := range uint64(6) {
		d := randomKnife(200 + seed)
		k := NewKnife(d.line(), d.feet())
		if k.Marks[0].At != 0 || k.Marks[len(k.Marks)-1].At != round(k.Length()) || len(k.Marks) > 60 {
			t.Errorf("knife %d: %d marks from %v to %v, want from 0 to %v", seed, len(k.Marks), k.Marks[0].At, k.Marks[len(k.Marks)-1].At, k.Length())
		}
		pairs := 0
		for i, m := range k.Marks {
			if m.Gap < 0 || m.Depth <= 0 || round(m.At) != m.At || round(m.Gap) != m.Gap || round(m.Depth) != m.Depth {
				t.Errorf("knife %d: mark %v", seed, m)
			}
			if i == 0 {
				continue
			}
			switch by := m.At - k.Marks[i-1].At; {
			case by == 0 && slices.Contains(k.Steps, m.At):
				pairs++
			case by < 0.5-0.011:
				t.Errorf("knife %d: marks at %v and %v", seed, k.Marks[i-1].At, m.At)
			}
		}
		if pairs != len(k.Steps) {
			t.Errorf("knife %d: %d pairs for steps %v", seed, pairs, k.Steps)
		}
	}
}

// Straight sides take two marks a stretch, and no more; a bow takes few.
func TestFewestMarks(t *testing.T) {
	all := 0
	for seed := range uint64(6) {
		d := randomKnife(200 + seed)
		all += len(NewKnife(d.line(), d.feet()).Marks)
	}
	if all > 62 { // 72 where none are taken away again, 90 for a third of the tolerance
		t.Errorf("six knives take %d marks, want about 10 each", all)
	}
	straight := curve.Line{{X: 0, Y: 0}, {X: 90, Y: 0}, {X: 90, Y: 1}, {X: 190, Y: 3}, {X: 190, Y: 24}, {X: 90, Y: 26}, {X: 90, Y: 20}, {X: 0, Y: 12}}
	k := NewKnife(straight, curve.Line{{X: 90, Y: 0}, {X: 90, Y: 20}})
	want := []Mark{{0, 0, 12}, {90, 0, 20}, {90, 1, 25}, {190, 3, 21}}
	if len(k.Marks) != len(want) {
		t.Fatalf("marks %v, want %v", k.Marks, want)
	}
	for i, m := range k.Marks {
		if math.Abs(m.At-want[i].At) > 0.02 || math.Abs(m.Gap-want[i].Gap) > 0.03 || math.Abs(m.Depth-want[i].Depth) > 0.05 {
			t.Errorf("mark %d is %v, want %v", i, m, want[i])
		}
	}
	if n := len(NewKnife(bladeLine(), curve.Line{{X: 80, Y: 0}, {X: 80, Y: 28}}).Marks); n > 8 {
		t.Errorf("a plain blade takes %d marks", n)
	}
}

// A side that waves more than sixty marks can say gets sixty at most, and says how far they stray.
func TestTooMuchForMarks(t *testing.T) {
	var l curve.Line
	for x := 0.0; x <= 175; x += 0.25 {
		l = append(l, curve.Vec{X: x})
	}
	for x := 175.0; x >= 0; x -= 0.25 {
		l = append(l, curve.Vec{X: x, Y: 20 + 0.03*x + (0.15+x/250)*math.Sin(1.2*x)})
	}
	k := NewKnife(l, nil)
	off, _ := k.Off()
	if len(k.Marks) > 60 || off < 0.15 || off > 3 {
		t.Errorf("%d marks, which stray by %v", len(k.Marks), off)
	}
}

// Slopes by hand: of a line its own, at the ends too; of a square by central differences twice the place.
func TestSlopes(t *testing.T) {
	x := []float64{0, 1, 3, 4}
	for i, got := range slopes(x, []float64{5, 7, 11, 13}) {
		if got != 2 {
			t.Errorf("slope %d of a line is %v, want 2", i, got)
		}
	}
	if got := slopes([]float64{0, 1, 2}, []float64{0, 1, 4}); !slices.Equal(got, []float64{1, 2, 3}) {
		t.Errorf("slopes of squares %v, want 1, 2, 3", got)
	}
}

// Beside a step a stretch is carried on straight from a millimetre inside, for the pencil rounds the corner; with a guard above the fold line as well.
func TestCarriedOnAtSteps(t *testing.T) {
	for _, rule := range []float64{0, 4} {
		s := sides{step: 0.1}
		for i := range 1001 {
			x := float64(i) / 10
			top, bottom := 0.02*x, 20+0.1*x
			if d := math.Abs(x - 50); d < 1 { // rounded
				top, bottom = top+3*(1-d), bottom-2*(1-d)
			}
			s.top, s.bottom = append(s.top, top), append(s.bottom, bottom)
		}
		k := Knife{Steps: []float64{50}, Rule: rule, sides: s}
		for i, r := range k.runs() {
			for j, x := range r.x {
				if math.Abs(r.top[j]-0.02*x-rule) > 1e-6 || math.Abs(r.bottom[j]-20-0.1*x-rule) > 1e-6 {
					t.Fatalf("rule %v, stretch %d at %v: %v to %v", rule, i, x, r.top[j], r.bottom[j])
				}
			}
			if (i == 0) != r.openFrom || (i == 1) != r.openT {
				t.Errorf("stretch %d is open: %v, %v", i, r.openFrom, r.openT)
			}
		}
	}
}

// How far marks stray, by hand: two marks on a bow of 3 mm stray by its height in its middle; on a slope of 3 : 4 a fault counts four fifths; at the
// knife's own ends the last third of a millimetre does not count.
func TestOffByHand(t *testing.T) {
	make := func(top, bottom func(x float64) float64, open bool) run {
		r := run{from: 0, to: 40, openFrom: open, openT: open}
		for x := 0.0; x <= 40; x += 0.1 {
			r.x, r.top, r.bottom = append(r.x, x), append(r.top, top(x)), append(r.bottom, bottom(x))
		}
		r.slopeT, r.slopeB = slopes(r.x, r.top), slopes(r.x, r.bottom)
		return r
	}
	flat := func(float64) float64 { return 1 }
	bow := make(flat, func(x float64) float64 { return 20 + 3*(1-(x/20-1)*(x/20-1)) }, false)
	if off, at := bow.off([]Mark{{0, 1, 19}, {40, 1, 19}}); math.Abs(off-3) > 1e-3 || math.Abs(at-20) > 0.2 {
		t.Errorf("a bow: %v at %v, want 3 at 20", off, at)
	}
	slope := make(flat, func(x float64) float64 { return 10 + 0.75*x }, false)
	if off, _ := slope.off([]Mark{{0, 1, 9.5}, {40, 1, 39.5}}); math.Abs(off-0.5*0.8) > 1e-9 {
		t.Errorf("half a millimetre on a slope: %v, want 0.4", off)
	}
	if off, _ := slope.off([]Mark{{0, 1.3, 8.7}, {40, 1.3, 38.7}}); math.Abs(off-0.3) > 1e-9 {
		t.Errorf("the back alone: %v, want 0.3", off)
	}
	turned := func(x float64) float64 { return 20 - 5*max(0, 1-x/0.3) - 5*max(0, 1-(40-x)/0.3) }
	if off, _ := make(flat, turned, true).off([]Mark{{0, 1, 19}, {40, 1, 19}}); off > 1e-9 {
		t.Errorf("round its ends it strays by %v", off)
	}
	if off, _ := make(flat, turned, false).off([]Mark{{0, 1, 19}, {40, 1, 19}}); off < 0.2 {
		t.Errorf("between steps its ends count: %v", off)
	}
}
