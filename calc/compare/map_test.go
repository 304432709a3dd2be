package compare

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"chape/calc"
	"chape/calc/curve"
	"chape/calc/length"
)

// somewhere are marks in order, no two of them nearer than 5.
func somewhere(r *rand.Rand) Marks {
	step := func() float64 { return 5 + 90*r.Float64() }
	m := Marks{Deepest: step()}
	m.Front = m.Deepest + step()
	m.Mouth = m.Front + step()
	return m
}

// Carried from knife to knife and back a place is where it was; marks lie on marks; what lay before another still does; on the same knife nothing moves.
func TestMapThereAndBack(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 62))
	for range 100 {
		from, to := somewhere(r), somewhere(r)
		for i, x := range from.list() {
			within(t, "a mark", Map(x, from, to), to.list()[i], 1e-9)
		}
		last := math.Inf(-1)
		for x := -20.0; x < from.Mouth+40; x += 3.7 {
			at := Map(x, from, to)
			within(t, "there and back", Map(at, to, from), x, 1e-9)
			within(t, "on the same knife", Map(x, from, from), x, 1e-9)
			if at <= last {
				t.Fatalf("%v goes to %v, past what lay before it at %v", x, at, last)
			}
			last = at
		}
	}
}

// A correction carried to the same knife stays; one carried away and back as well, if it does not reach over a mark; its height always stays.
func TestCarryThereAndBack(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 62))
	for range 100 {
		from, to := somewhere(r), somewhere(r)
		f := fit(from.Mouth*r.Float64(), 4*r.Float64()-2, 5+20*r.Float64())
		if got := Carry(f, from, from); math.Abs(got.At.MM()-f.At.MM()) > 1e-9 || math.Abs(got.Reach.MM()-f.Reach.MM()) > 1e-9 {
			t.Errorf("on the same knife %v becomes %v", f, got)
		}
		got := Carry(f, from, to)
		if got.By != f.By || got.Reach < leastReach {
			t.Errorf("%v becomes %v", f, got)
		}
		within(t, "its place", got.At.MM(), Map(f.At.MM(), from, to), 1e-9)
	}
}

// A curve that is carried has its places in order, its values as they were, and is what carrying each place says.
func TestCarryCurveKeepsOrder(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 62))
	for range 50 {
		from, to := somewhere(r), somewhere(r)
		if r.IntN(3) == 0 {
			to.Front = to.Deepest // no room between
		}
		var g curve.Graph
		for x := -5.0; x < from.Mouth; x += 4 {
			g.X, g.Y = append(g.X, x), append(g.Y, r.Float64())
		}
		got := CarryCurve(g, from, to)
		for i, x := range got.X {
			if i > 0 && x <= got.X[i-1] {
				t.Fatalf("places %v", got.X)
			}
			if !slices.Contains(g.Y, got.Y[i]) {
				t.Errorf("a value %v that was none", got.Y[i])
			}
		}
		if n := len(got.X); n == 0 || got.Y[n-1] != g.Y[len(g.Y)-1] || to.Front > to.Deepest && n != len(g.X) {
			t.Errorf("%d places of %d, the last %v", n, len(g.X), got.Y)
		}
	}
	if got := CarryCurve(curve.Graph{}, Marks{}, Marks{}); len(got.X) != 0 {
		t.Errorf("nothing becomes %v", got)
	}
}

// The difference one way round is that the other way round with its sign turned, and of a curve with itself nothing.
func TestCurvesBothWays(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 62))
	wavy := func(from float64) (g curve.Graph) {
		for x := from; x < 150; x += 1 + 9*r.Float64() {
			g.X, g.Y = append(g.X, x), append(g.Y, 40*r.Float64())
		}
		return g
	}
	for range 30 {
		a, b := wavy(-5), wavy(10)
		ab, ba := Curves(a, b), Curves(b, a)
		if !slices.Equal(ab.X, ba.X) || len(ab.X) == 0 || ab.X[0] < b.X[0] {
			t.Fatalf("compared at %v and %v", ab.X, ba.X)
		}
		for i := range ab.Y {
			within(t, "turned round", ab.Y[i], -ba.Y[i], 1e-12)
		}
		for x := 12.0; x < 130; x += 0.7 { // between the bends as well
			if x < min(a.X[len(a.X)-1], b.X[len(b.X)-1]) {
				within(t, "the difference", ab.At(x), a.At(x)-b.At(x), 1e-9)
			}
		}
		for _, y := range Curves(a, a).Y {
			within(t, "with itself", y, 0, 0)
		}
	}
	if g := Curves(curve.Graph{X: []float64{0, 10}, Y: []float64{1, 1}}, curve.Graph{X: []float64{20, 30}, Y: []float64{1, 1}}); len(g.X) != 0 {
		t.Errorf("without a stretch in common: %v", g)
	}
}

// Of differences that are the same within a hundredth of a millimetre the first is named; a larger one further along wins.
func TestMostNamesTheFirst(t *testing.T) {
	ds := []Difference{{At: 10, By: 2}, {At: 20, By: 2.009}, {At: 30, By: -1}, {At: 40, By: -1.009}, {At: 50, By: -1.02}}
	short, over, isShort, isOver := Most(ds)
	if !isShort || !isOver || short.At != 10 || over.At != 50 {
		t.Errorf("most short at %v, most over at %v, want 10 and 50", short.At, over.At)
	}
	if _, over, _, _ := Most(ds[:4]); over.At != 30 {
		t.Errorf("most over at %v, want 30", over.At)
	}
	if _, _, isShort, isOver := Most(nil); isShort || isOver {
		t.Error("nothing is short or over")
	}
}

// By hand: a correction is whole at its place, half of it half its reach away, nothing at its reach; left of the point it keeps what it has there.
func TestSumByHand(t *testing.T) {
	f := []calc.Fit{fit(60, 2, 30)}
	for x, want := range map[float64]float64{60: 2, 45: 1, 75: 1, 50: 1.5, 30: 0, 90: 0, 100: 0, -10: 0} {
		within(t, "Sum", Sum(f, x), want, 1e-12)
	}
	near := []calc.Fit{fit(10, 2, 20)}
	within(t, "left of the point", Sum(near, -30), 1, 1e-12)
	var even []calc.Fit // evenly spaced, each reaching to the next: together level
	for i := range 6 {
		even = append(even, fit(float64(20*i), 1.5, 20))
	}
	for x := 0.0; x <= 100; x += 0.9 {
		within(t, "level", Sum(even, x), 1.5, 1e-12)
	}
	within(t, "of none", Sum(nil, 5), 0, 0)
}

// Where there is no room for a correction of 5 mm there is none; none lies before the point; and of all numbers of them the one is taken that follows best.
func TestCorrectionsHaveRoom(t *testing.T) {
	var d curve.Graph
	for x := -20.0; x <= 100; x++ {
		d.X, d.Y = append(d.X, x), append(d.Y, 3*math.Sin(x))
	}
	if fits, off := Corrections(d, 1, 50, 52, 0.1); fits != nil || off != 0 {
		t.Errorf("over 2 mm: %v, off by %v", fits, off)
	}
	fits, off := Corrections(d, 1, -10, 24, 0.001)
	best := math.Inf(1)
	for n := 1; n <= 4; n++ { // 24/5 is less than 5
		best = min(best, worst(d, 1, 0, 24, evenly(d, 1, 0, 24, n)))
	}
	if off != best || len(fits) == 0 {
		t.Errorf("%d corrections, off by %v; the best is %v", len(fits), off, best)
	}
	for _, f := range fits {
		if f.At < 0 || f.Reach < leastReach {
			t.Errorf("a correction %v", f)
		}
	}
}

// Random differences: no more than sixteen corrections, none smaller than 0.02, inside what was asked for, and as far off as said, tried four times as finely.
func TestCorrectionsAreAsSaid(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 62))
	for range 25 {
		var d curve.Graph
		y := 0.0
		for x := 0.0; x <= 150; x += 5 {
			y += r.Float64() - 0.5
			d.X, d.Y = append(d.X, x), append(d.Y, y)
		}
		lo, hi, part := 40*r.Float64(), 100+60*r.Float64(), r.Float64()
		fits, off := Corrections(d, part, lo, hi, 0.25)
		if len(fits) > mostCorrections {
			t.Errorf("%d corrections", len(fits))
		}
		for _, f := range fits {
			if math.Abs(f.By.MM()) < leastBy || f.At < length.Length(lo)-1e-9 || f.At > length.Length(min(hi, 150))+1e-9 || f.Reach < leastReach {
				t.Errorf("from %v to %v: %v", lo, hi, f)
			}
		}
		worst := 0.0
		for x := lo; x <= min(hi, 150); x += (min(hi, 150) - lo) / 1600 {
			worst = max(worst, math.Abs(part*d.At(x)-Sum(fits, x)))
		}
		if worst > off+0.03 {
			t.Errorf("off by %v, said to be %v", worst, off)
		}
	}
}
