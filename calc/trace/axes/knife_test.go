package axes

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"chape/calc/curve"
)

// However the outline lies, even seen from behind, it comes out the same along its fold.
func TestKnifeHoweverItLies(t *testing.T) {
	line := bladeLine()
	feet := curve.Line{{X: 80.2, Y: 0}, {X: 79.6, Y: 28}}
	for _, turn := range []float64{0, 0.7, 2, 3.1, -1.2} {
		by := curve.Vec{X: 40 * turn, Y: 90}
		k := NewKnife(moved(line, turn, by), moved(feet, turn, by))
		if len(k.Steps) != 1 || math.Abs(k.Steps[0]-79.9) > 0.05 {
			t.Fatalf("turned by %v: steps %v, want 79.9", turn, k.Steps)
		}
		if math.Abs(k.Length()-170) > 0.05 {
			t.Errorf("turned by %v: length %v, want 170", turn, k.Length())
		}
		if off, at := k.Off(); off > 0.15 {
			t.Errorf("turned by %v: the marks stray by %v at %v", turn, off, at)
		}
		if m := k.Marks[0]; math.Abs(m.Gap-6) > 0.1 {
			t.Errorf("turned by %v: first mark %v, want a gap of 6", turn, m)
		}
		if n := len(k.Marks); n > 16 {
			t.Errorf("turned by %v: %d marks", turn, n)
		}
		from, to := k.Fold()
		ends := moved(curve.Line{{}, {X: 170}}, turn, by)
		if from.Dist(ends[0]) > 0.15 || to.Dist(ends[1]) > 0.15 {
			t.Errorf("turned by %v: the fold runs from %v to %v, want %v to %v", turn, from, to, ends[0], ends[1])
		}
		behind := NewKnife(mirrored(moved(line, turn, by)), mirrored(moved(feet, turn, by)))
		for i, x := range []float64{1, 20, 60, 100, 165} {
			a, b := k.sides, behind.sides
			at, ab := a.at(x)
			bt, bb := b.at(x)
			if math.Abs(at-bt) > 0.01 || math.Abs(ab-bb) > 0.01 {
				t.Errorf("turned by %v, seen from behind: place %d is %v to %v, want %v to %v", turn, i, bt, bb, at, ab)
			}
		}
	}
}

// The same outline gives the same knife, and laying it anew does not touch the one that is there.
func TestKnifeAgain(t *testing.T) {
	line, feet := bladeLine(), curve.Line{{X: 80, Y: 0}, {X: 80, Y: 28}}
	a, b := NewKnife(line, feet), NewKnife(line, feet)
	if !reflect.DeepEqual(a, b) {
		t.Error("two readings differ")
	}
	a.TurnBack()
	a.TurnEnds()
	a.MoveStep(0, 60)
	a.DropStep(0)
	a.AddMark(140)
	a.DropMark(1)
	a.AddStep(120)
	if !reflect.DeepEqual(a, b) {
		t.Error("a method changes the knife that it is asked of")
	}
}

// A guard that stands out of the back by 4 mm lifts the rule by as much: gaps are from the rule, the fold stays on the blade's back.
func TestGuardLiftsTheRule(t *testing.T) {
	line := curve.Line{{X: 0, Y: 2}, {X: 12, Y: 0}, {X: 90, Y: 0}, {X: 90, Y: -4}, {X: 98, Y: -4}, {X: 98, Y: 2}, {X: 200, Y: 2}, {X: 200, Y: 24},
		{X: 98, Y: 24}, {X: 98, Y: 34}, {X: 90, Y: 34}, {X: 90, Y: 28}, {X: 40, Y: 26}, {X: 12, Y: 14}}
	feet := curve.Line{{X: 90, Y: -4}, {X: 90, Y: 34}, {X: 98, Y: -4}, {X: 98, Y: 34}}
	k := NewKnife(line, feet)
	if math.Abs(k.Rule-4) > 0.02 || !slices.Equal(k.Steps, []float64{90, 98}) {
		t.Fatalf("the rule lies %v over the fold, steps %v; want 4, 90 and 98", k.Rule, k.Steps)
	}
	for _, want := range []Mark{{90, 4, 28}, {90, 0, 38}, {98, 0, 38}, {98, 6, 22}, {200, 6, 22}} {
		if !slices.ContainsFunc(k.Marks, func(m Mark) bool {
			return math.Abs(m.At-want.At) < 0.02 && math.Abs(m.Gap-want.Gap) < 0.05 && math.Abs(m.Depth-want.Depth) < 0.08
		}) {
			t.Errorf("no mark %v among %v", want, k.Marks)
		}
	}
	if more, ok := k.AddMark(150); !ok || !slices.Contains(more.Marks, Mark{150, 6, 22}) {
		t.Errorf("a mark at 150: %v, %v", ok, more.Marks)
	}
}

// Feet of strokes become steps: a back's and an edge's within 4 mm are one, at their mean; one alone is one; two on a side are not paired; those near the ends are none.
func TestStepsOfFeet(t *testing.T) {
	box := curve.Line{{}, {X: 150}, {X: 150, Y: 30}, {Y: 30}}
	k := Knife{Axes: Axes{Along: curve.Vec{X: 1}, Down: curve.Vec{Y: 1}}, sides: sidesOf(box)}
	back := func(x float64) curve.Vec { return curve.Vec{X: x, Y: 0.3} }
	edge := func(x float64) curve.Vec { return curve.Vec{X: x, Y: 29.6} }
	for _, c := range []struct {
		name string
		feet []curve.Vec
		want []float64
	}{
		{"none", nil, nil},
		{"a pair", []curve.Vec{back(80), edge(81)}, []float64{80.5}},
		{"a pair, the edge first", []curve.Vec{edge(81), back(80.5)}, []float64{80.75}},
		{"one alone", []curve.Vec{edge(60.123)}, []float64{60.12}},
		{"too far apart for one", []curve.Vec{back(80), edge(84.2)}, []float64{80, 84.2}},
		{"two on the back", []curve.Vec{back(80), back(83)}, []float64{80, 83}},
		{"a guard", []curve.Vec{back(100), back(92), edge(93), edge(99.5)}, []float64{92.5, 99.75}},
		{"the nearest pair first", []curve.Vec{back(90), edge(93), back(93.4)}, []float64{90, 93.2}},
		{"at the ends", []curve.Vec{back(1), edge(2), back(149), edge(148.5)}, nil},
		{"two that would be one", []curve.Vec{back(50), back(51)}, []float64{50}},
	} {
		if got := k.stepsOf(c.feet); !slices.Equal(got, c.want) {
			t.Errorf("%s: steps %v, want %v", c.name, got, c.want)
		}
	}
}

// A step moves as far as its neighbours and the ends let it: 2.5 mm from each.
func TestMoveStep(t *testing.T) {
	k := NewKnife(bladeLine(), curve.Line{{X: 80, Y: 0}, {X: 80, Y: 28}})
	k, ok := k.AddStep(120)
	if !ok || !slices.Equal(k.Steps, []float64{80, 120}) {
		t.Fatalf("steps %v, %v", k.Steps, ok)
	}
	for _, c := range []struct {
		i        int
		to, want float64
	}{{0, 70, 70}, {0, -9, 2.5}, {0, 200, 117.5}, {1, 10, 82.5}, {1, 1000, round(k.Length() - 2.5)}, {1, 100.128, 100.13}} {
		m := k.MoveStep(c.i, c.to)
		if m.Steps[c.i] != c.want || !slices.ContainsFunc(m.Marks, func(q Mark) bool { return q.At == c.want }) {
			t.Errorf("step %d to %v: %v, want %v, with marks there", c.i, c.to, m.Steps, c.want)
		}
	}
	for _, at := range []float64{1, 78, 82.4, 118, 122.4, 169} {
		if s, ok := k.AddStep(at); ok {
			t.Errorf("a step at %v: %v", at, s.Steps)
		}
	}
	if s := k.DropStep(0); !slices.Equal(s.Steps, []float64{120}) || !slices.Equal(s.DropStep(0).Steps, []float64{}) {
		t.Errorf("dropped: %v", s.Steps)
	}
}

// Marks are added on the outline, a millimetre from others, and dropped, but not at ends and steps.
func TestAddAndDropMarks(t *testing.T) {
	k := NewKnife(bladeLine(), curve.Line{{X: 80, Y: 0}, {X: 80, Y: 28}})
	more, ok := k.AddMark(120)
	if !ok || len(more.Marks) != len(k.Marks)+1 || !slices.IsSortedFunc(more.Marks, func(a, b Mark) int { return int(math.Copysign(1, a.At-b.At)) * min(1, int(1e3*math.Abs(a.At-b.At))) }) {
		t.Fatalf("a mark at 120: %v, %v", ok, more.Marks)
	}
	i := slices.IndexFunc(more.Marks, func(m Mark) bool { return m.At == 120 })
	if m := more.Marks[i]; math.Abs(m.Gap-2.44) > 0.05 || math.Abs(m.Depth-22.44) > 0.1 { // by hand: 2 + 40/90 and 24 + 2·40/90
		t.Errorf("it is %v, want 2.44 and 22.44", m)
	}
	if less, ok := more.DropMark(i); !ok || !slices.Equal(less.Marks, k.Marks) {
		t.Errorf("dropped: %v, %v", ok, less.Marks)
	}
	for _, at := range []float64{-3, 0, 0.9, 80.5, 170, 200, 119.2} {
		if m, ok := more.AddMark(at); ok {
			t.Errorf("a mark at %v: %v", at, m.Marks)
		}
	}
	for i, m := range more.Marks {
		_, ok := more.DropMark(i)
		if fixed := i == 0 || i == len(more.Marks)-1 || m.At == 80; ok == fixed {
			t.Errorf("mark %d at %v can be dropped: %v", i, m.At, ok)
		}
	}
	for at := 1.7; at < 168; at += 1.3 {
		more, _ = more.AddMark(at)
	}
	if len(more.Marks) != 60 {
		t.Errorf("%d marks, want no more than 60", len(more.Marks))
	}
	if _, ok := more.DropMark(-1); ok {
		t.Error("a mark before the first can be dropped")
	}
}

// How far the marks stray is told for the stretch where they do: with one of them taken away from the belly, there.
func TestOffSaysWhere(t *testing.T) {
	k := NewKnife(bladeLine(), curve.Line{{X: 80, Y: 0}, {X: 80, Y: 28}})
	before, _ := k.Off()
	less, ok := k.DropMark(2)
	off, at := less.Off()
	if !ok || before > 0.15 || off < 2*before || at > 80 {
		t.Errorf("without the mark at %v: %v at %v, before %v", k.Marks[2], off, at, before)
	}
	handle := k.sides
	handle.bottom = slices.Clone(handle.bottom)
	for i := range handle.bottom {
		if x := float64(i) * handle.step; x > 100 && x < 140 {
			handle.bottom[i] += 2
		}
	}
	k.sides = handle
	if off, at := k.Off(); math.Abs(off-2) > 0.1 || at < 100 || at > 140 {
		t.Errorf("with a swell on the handle: %v at %v", off, at)
	}
}
