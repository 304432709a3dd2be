package drying

import (
	"math"
	"testing"
	"time"

	"gonum.org/v1/gonum/stat/distuv"
)

// The Lewis law solved by hand: water falls as exp(−k·t), so a sheath of dry weight D
// with W of water is within 2 % after ln(W/(0.02·D))/k, whatever the figures.
// Source: Lewis law, as used for leather by Sander 2007 (thin-layer drying).
func TestLewisLawInClosedForm(t *testing.T) {
	for _, c := range []struct{ dry, water, k float64 }{{120, 60, 0.1}, {75, 40, 0.06}, {250, 90, 0.2}, {60, 39, 0.15}} {
		want := math.Log(c.water/(NearDry*c.dry)) / c.k
		n := node{rate: c.k, fit: fit{dry: c.dry, fast: c.water}}
		if got := n.until(n.fit) / n.rate; !approxEqual(got, want, 1e-9) {
			t.Errorf("%+v: near dry after %v h, want %v", c, got, want)
		}
		for _, h := range []float64{0, 1, 7.5, want} {
			if got, w := n.weight(13, h), c.dry+c.water*math.Exp(-c.k*h); !approxEqual(got, w, 1e-9) {
				t.Errorf("%+v: %v g after %v h, want %v", c, got, h, w)
			}
		}
		var at []float64
		for i := range 7 {
			at = append(at, want*float64(i)/9)
		}
		e, err := predict(c.dry, exact(c.dry, c.water, c.k, at...))
		if err != nil || !approxEqual(e.Likely.Hours(), want, 0.03*want) || e.Earliest.Hours() > want || e.Latest.Hours() < want {
			t.Errorf("%+v: weighings on it give %v to %v, likely %v (%v), want %.2f h", c, e.Earliest, e.Latest, e.Likely, err, want)
		}
	}
}

// Two parts in closed form, where the slower dries at a third of the rate and one in
// x = exp(−kt/3) is left: f·x³ + s·x = 0.02·D. With f = 8, s = 2 and D = 100, x = 0.5.
func TestTwoPartsInClosedForm(t *testing.T) {
	n := node{law: law{ratio: 1.0 / 3}, rate: 0.3, fit: fit{dry: 100, fast: 8, slow: 2}}
	want := 3 * math.Log(2) // of rate times hours
	if got := n.until(n.fit); !approxEqual(got, want, 1e-4) {
		t.Errorf("near dry after %v, want 3·ln 2 = %v", got, want)
	}
	if got := n.weight(0, want/0.3); !approxEqual(got, 102, 1e-4) {
		t.Errorf("it then weighs %v, want 102", got)
	}
}

// A law whose rate goes up and down through the day in closed form: by day's end it has
// dried as if evenly, and most of it round two in the afternoon.
func TestDayAndNightInClosedForm(t *testing.T) {
	l := law{night: 0.6}
	if got := l.clock(driest+6) - l.clock(driest-6); !approxEqual(got, 12+2*0.6*24/(2*math.Pi), 1e-9) {
		t.Errorf("from eight to twenty it dries %v hours' worth, want 12 + 2·0.6·24/2π", got)
	}
	if got := l.clock(driest+18) - l.clock(driest+6); !approxEqual(got, 12-2*0.6*24/(2*math.Pi), 1e-9) {
		t.Errorf("from twenty to eight it dries %v hours' worth, want 12 − 2·0.6·24/2π", got)
	}
	late := law{night: 0.6, lag: 3}
	if a, b := late.clock(driest+3+2)-late.clock(driest+3-2), l.clock(driest+2)-l.clock(driest-2); !approxEqual(a, b, 1e-9) {
		t.Errorf("three hours later it dries %v round its best hour, not %v", a, b)
	}
	// A node by day and night is dry when its own clock says so.
	n := node{law: l, rate: 0.1, fit: fit{dry: 100, fast: 50}}
	s := series{clock: 8}
	at := s.moment(n, n.until(n.fit))
	if got := n.weight(8, at); !approxEqual(got, 102, 1e-3) {
		t.Errorf("at its moment it weighs %v, want 102", got)
	}
}

// The places that stand for a normal distribution have its mean and its variance, are
// symmetric, and lie where its middles of equal parts do but for one factor.
func TestSpreadIsNormal(t *testing.T) {
	var sum, squares float64
	for i, z := range spread {
		sum, squares = sum+z, squares+z*z
		if !approxEqual(z, -spread[len(spread)-1-i], 1e-12) {
			t.Errorf("place %d, %v, has no mirror", i, z)
		}
		if q := distuv.UnitNormal.Quantile((float64(i) + 0.5) / 5); q != 0 && !approxEqual(z/q, spread[4]/distuv.UnitNormal.Quantile(0.9), 1e-9) {
			t.Errorf("place %d is %v, the quantile %v", i, z, q)
		}
	}
	if !approxEqual(sum, 0, 1e-12) || !approxEqual(squares, 5, 1e-9) {
		t.Errorf("mean %v, variance %v, want 0 and 1", sum/5, squares/5)
	}
}

// The step of a scale is the finest digit it shows.
func TestScaleStep(t *testing.T) {
	for _, c := range []struct {
		grams []float64
		want  float64
	}{{[]float64{180, 171, 0}, 1}, {[]float64{180.5, 171}, 0.5}, {[]float64{180.5, 171.2}, 0.1}, {[]float64{180.25}, 0.01}, {[]float64{0.1 + 0.2, 3}, 0.1}, {nil, 1}} {
		if got := scaleStep(c.grams); got != c.want {
			t.Errorf("scaleStep(%v) = %v, want %v", c.grams, got, c.want)
		}
	}
}

// Weights that rise by what damp air gives back are taken, a hair more is refused; below
// the weight before wetting by what soaking washes out is taken, a hair more is refused.
// 3 % up and 6 % down, and two steps of the scale (common practice, no source).
func TestContradictionAtItsBounds(t *testing.T) {
	for _, c := range []struct {
		before, first, then float64
		refused             bool
	}{
		{0, 100, 103.2, false}, {0, 100, 103.3, true}, {0, 200, 206.2, false}, {0, 200, 206.3, true},
		{100, 150, 93.8, false}, {100, 150, 93.7, true}, {200, 300, 187.8, false}, {200, 300, 187.7, true},
	} {
		_, err := newSeries(Record{Before: c.before, Step: 0.1, Weighings: []Weighing{{0, c.first}, {hours(5), c.then}}})
		if (err != nil) != c.refused {
			t.Errorf("%v g before, %v g, then %v g: %v, want refused %v", c.before, c.first, c.then, err, c.refused)
		}
	}
}

// How far apart two weighings must be: 3 h within 0.3 % of the dry weight, 6 h within a
// step of a coarser scale (common practice, no source).
func TestApart(t *testing.T) {
	for _, c := range []struct {
		before, step float64
		apart        time.Duration
		within       float64
	}{{120, 0.1, 3 * time.Hour, 0.36}, {120, 0.5, 6 * time.Hour, 0.5}, {120, 0.36, 3 * time.Hour, 0.36}, {120, 0.37, 6 * time.Hour, 0.37}, {0, 0.1, 3 * time.Hour, 0.54}} {
		s, err := newSeries(Record{Before: c.before, Step: c.step, Weighings: exact(120, 60, 0.1, 0)})
		if err != nil {
			t.Fatal(err)
		}
		if apart, within := s.apart(); apart != c.apart || !approxEqual(within, c.within, 1e-9) {
			t.Errorf("%v g before, a step of %v: %v within %v, want %v within %v", c.before, c.step, apart, within, c.apart, c.within)
		}
	}
}

// More water, a slower room or a heavier sheath never dries sooner: the same weighings
// at the same hours from curves that differ in one figure.
func TestDryingIsMonotone(t *testing.T) {
	at := []float64{0, 3, 6, 10, 14, 18}
	likely := func(dry, water, k float64) time.Duration {
		e, err := predict(dry, exact(dry, water, k, at...))
		if err != nil {
			t.Fatal(err)
		}
		return e.Likely
	}
	base := likely(120, 60, 0.1)
	if wetter, slower, twice := likely(120, 70, 0.1), likely(120, 60, 0.09), likely(240, 120, 0.1); wetter <= base || slower <= base || (twice-base).Abs() > time.Hour/2 {
		t.Errorf("likely after %v; with more water %v, in a slower room %v, of twice the weight %v", base, wetter, slower, twice)
	}
	// Hotter and drier air dries sooner, by the ratio of what it lacks of saturation.
	g := func(c, h float64) time.Duration {
		guess, err := FirstGuess(c, h)
		if err != nil {
			t.Fatal(err)
		}
		return guess.Latest
	}
	if !(g(25, 50) < g(20, 50) && g(20, 40) < g(20, 50) && g(20, 60) > g(20, 50)) || !approxEqual(g(20, 75).Hours(), 2*g(20, 50).Hours(), 0.02) {
		t.Errorf("guesses of %v at 20 °C and 50 %%, %v at 25 °C, %v at 40 %%, %v at 75 %%", g(20, 50), g(25, 50), g(20, 40), g(20, 75))
	}
	for _, c := range []struct {
		celsius float64
		ok      bool
	}{{40, true}, {40.01, false}, {5, true}, {4.99, false}} {
		if _, err := FirstGuess(c.celsius, 50); (err == nil) != c.ok {
			t.Errorf("at %v °C: %v", c.celsius, err)
		}
	}
}

// Numbers that are none, or no sheath's, are refused by name, before any arithmetic.
func TestSeriesRefusesNonsense(t *testing.T) {
	for _, bad := range []float64{0, -1, math.NaN(), math.Inf(1), math.Inf(-1), heaviest * 1.01} {
		if _, err := newSeries(Record{Weighings: []Weighing{{0, 180}, {hours(1), bad}}}); err == nil {
			t.Errorf("a weighing of %v g is taken", bad)
		}
		if bad == 0 {
			continue // not weighed
		}
		if _, err := newSeries(Record{Before: bad, Weighings: []Weighing{{0, 180}}}); err == nil {
			t.Errorf("a dry weight of %v g is taken", bad)
		}
	}
	if _, err := newSeries(Record{Before: heaviest, Weighings: []Weighing{{0, heaviest}}}); err != nil {
		t.Errorf("the heaviest sheath: %v", err)
	}
}
