package drying

import (
	"math"
	"strings"
	"testing"
	"time"
)

func approxEqual(a, b, tolerance float64) bool { return math.Abs(a-b) <= tolerance }

// predict is the estimate of weighings that begin at eight in the morning.
func predict(before float64, w []Weighing) (Estimate, error) {
	return Record{Before: before, Clock: 8 * time.Hour, Weighings: w}.Estimate()
}

func hours(h float64) time.Duration { return time.Duration(h * float64(time.Hour)) }

// A first-order decay, measured: Zumdahl, Chemistry, chapter 11, exercise
// 37. Here the concentration stands for the water in 100 g of leather, as a
// share of the leather's weight.
var (
	zumdahlSeconds = []float64{0, 120, 300, 600, 1200, 1800, 2400, 3000, 3600}
	zumdahlLeft    = []float64{1, .91, .78, .59, .37, .22, .13, .082, .050}
)

func zumdahl(n int) []Weighing {
	var w []Weighing
	for i := range n {
		w = append(w, Weighing{time.Duration(zumdahlSeconds[i]) * time.Second, 100 + 100*zumdahlLeft[i]})
	}
	return w
}

// Rate and R² of the line through the logarithms, worked out from the
// published data by ordinary least squares.
func TestLogLinePublished(t *testing.T) {
	s, err := newSeries(Record{Before: 100, Weighings: zumdahl(9)})
	if err != nil {
		t.Fatal(err)
	}
	rate, r2 := s.logLine(100)
	if !approxEqual(rate/3600, 8.34979e-4, 5e-10) {
		t.Errorf("logLine: rate %.6g /s, want 8.34979e-4", rate/3600)
	}
	if !approxEqual(r2, 0.999780, 5e-7) {
		t.Errorf("logLine: R² %.7f, want 0.999780", r2)
	}
}

func TestPredictPublished(t *testing.T) {
	// The line's own answer for 2 % left: intercept and rate as above.
	want := math.Log(1/NearDry) / 8.34979e-4
	for _, dry := range []float64{100, 0} {
		e, err := predict(dry, zumdahl(9))
		if err != nil {
			t.Fatalf("Predict(%v): %v", dry, err)
		}
		if rate := e.Rate / 3600; !approxEqual(rate, 8.34979e-4, 0.06*8.34979e-4) {
			t.Errorf("Predict(%v): rate %.5g /s, want within 6 %% of 8.34979e-4", dry, rate)
		}
		if !approxEqual(e.Dry, 100, 1.5) {
			t.Errorf("Predict(%v): dry at %.2f g, want 100", dry, e.Dry)
		}
		if e.Earliest.Seconds() > want || e.Latest.Seconds() < want {
			t.Errorf("Predict(%v): window %v to %v, want %.0f s in it", dry, e.Earliest, e.Latest, want)
		}
		if e.Reached {
			t.Errorf("Predict(%v): reached, want not yet", dry)
		}
	}
}

// A curve fitted to the first weighings foretells those kept back: Zumdahl,
// as above.
func TestPredictHeldOut(t *testing.T) {
	for kept := 5; kept < 9; kept++ {
		e, err := predict(100, zumdahl(kept))
		if err != nil {
			t.Fatal(err)
		}
		for i := kept; i < 9; i++ {
			at := time.Duration(zumdahlSeconds[i]) * time.Second
			if got, want := e.Grams(at), 100+100*zumdahlLeft[i]; !approxEqual(got, want, 1) {
				t.Errorf("from the first %d: %.2f g at %v, want %.2f within 1 g of 100 g lost", kept, got, at, want)
			}
		}
	}
}

// exact is weighings on a Lewis curve, worked out by hand: the sheath is
// within 2 % of dry when water·exp(−k·t) is 2 % of dry.
func exact(dry, water, k float64, at ...float64) []Weighing {
	var w []Weighing
	for _, h := range at {
		w = append(w, Weighing{hours(h), dry + water*math.Exp(-k*h)})
	}
	return w
}

func TestPredictExactCurve(t *testing.T) {
	const dry, water, k = 120.0, 60.0, 0.1
	want := math.Log(60/(NearDry*120)) / k // 32.19 h
	for _, given := range []float64{dry, 0} {
		e, err := predict(given, exact(dry, water, k, 0, 3, 6, 10, 16))
		if err != nil {
			t.Fatal(err)
		}
		// Other laws explain it too: without the dry weight up to half an hour later.
		if !approxEqual(e.Likely.Hours(), want, 0.5) || !approxEqual(e.Rate, k, 0.01*k) || !approxEqual(e.Dry, dry, 0.3) || e.Slow > 0 {
			t.Errorf("Predict(%v) = likely %v, rate %v, dry %v; want %.2f h, %v, %v", given, e.Likely, e.Rate, e.Dry, want, k, dry)
		}
		if !(e.Earliest < e.Likely && e.Likely < e.Latest) {
			t.Errorf("Predict(%v): window %v, %v, %v is not in order", given, e.Earliest, e.Likely, e.Latest)
		}
	}
}

// The same weighings under another clock, and out of order, give the same
// moment.
func TestPredictMovesWithTheClock(t *testing.T) {
	w := exact(120, 60, 0.1, 0, 3, 6, 10, 16)
	a, err := predict(120, w)
	if err != nil {
		t.Fatal(err)
	}
	w[0], w[3] = w[3], w[0]
	for i := range w {
		w[i].At -= 100 * time.Hour
	}
	b, err := predict(120, w)
	if err != nil {
		t.Fatal(err)
	}
	if d := a.Likely - b.Likely - 100*time.Hour; d.Abs() > time.Second {
		t.Errorf("moved by 100 h the likely moment moves by %v more", d)
	}
	if got, want := b.Grams(-84*time.Hour), a.Grams(16*time.Hour); !approxEqual(got, want, 1e-6) {
		t.Errorf("Grams after the move = %v, want %v", got, want)
	}
}

// More weighings of the same scale narrow the window.
func TestWindowNarrows(t *testing.T) {
	width := func(at ...float64) time.Duration {
		e, err := predict(120, exact(120, 60, 0.1, at...))
		if err != nil {
			t.Fatal(err)
		}
		return e.Latest - e.Earliest
	}
	few, more, late := width(0, 2, 4), width(0, 1, 2, 3, 4), width(0, 2, 4, 10, 16)
	if !(few > more && more > late) {
		t.Errorf("windows %v, %v, %v with more and later weighings, want them to narrow", few, more, late)
	}
}

func TestPredictReached(t *testing.T) {
	w := exact(120, 60, 0.1, 0, 5, 10, 20, 30, 40)
	e, err := predict(120, w)
	if err != nil {
		t.Fatal(err)
	}
	if !e.Reached || e.Earliest != hours(30) || e.Latest != hours(40) || !approxEqual(e.Likely.Hours(), 32.19, 0.1) {
		t.Errorf("Predict = %+v, want reached between 30 h and 40 h, likely at 32.19 h", e)
	}
	// One weighing is enough when the scale says dry, or a little under: soaking
	// takes something out of the leather.
	for _, g := range []float64{121, 120, 118.5} {
		e, err := predict(120, []Weighing{{hours(7), g}})
		if err != nil || !e.Reached || e.Likely != hours(7) || e.Grams(hours(9)) != 120 {
			t.Errorf("predict(120, %v g) = %+v, %v, want reached at 7 h", g, e, err)
		}
	}
	// Without a dry weight, a floor that has been seen.
	e, err = predict(0, exact(120, 60, 0.1, 0, 5, 10, 20, 40, 50, 60, 70))
	if err != nil || !e.Reached || !approxEqual(e.Dry, 120, 0.2) {
		t.Errorf("Predict of a seen floor = %+v, %v, want reached at 120 g", e, err)
	}
}

func TestPredictRefuses(t *testing.T) {
	w := func(grams ...float64) []Weighing {
		var w []Weighing
		for i, g := range grams {
			w = append(w, Weighing{time.Duration(i) * time.Hour, g})
		}
		return w
	}
	tests := []struct {
		name string
		dry  float64
		w    []Weighing
		want string
	}{
		{"none", 120, nil, "no weighings yet: weigh the sheath, the knife out, now and then while it dries"},
		{"two", 120, w(180, 170), "2 of at least 3 weighings: weigh again in an hour or more"},
		{"three without dry", 0, w(180, 170, 162), "3 of at least 4 weighings (3 with the weight before wetting): weigh again in an hour or more"},
		{"rising", 120, w(180, 170, 179, 160), "weighing 3 is heavier than the one before (170 g, then 179 g): take out the wrong one, or all from before it was wetted again"},
		{"flat", 120, w(180, 180, 180), "the weight has not fallen enough to tell (180 g, then 180 g): weigh again in some hours"},
		{"at once", 120, []Weighing{{0, 180}, {0, 180}, {0, 170}}, "the weight has not fallen enough to tell (180 g, then 170 g): weigh again in some hours"},
		{"below dry", 120, w(150, 130, 110), "weighing 3 is below the dry weight (110 g against 120 g): correct one of them, or leave the dry weight out"},
		{"a straight fall", 0, w(180, 175, 170, 165, 160), "too early to tell where the weight will end: weigh again in about 2 h, or give the weight before wetting"},
		{"a bend the wrong way", 0, w(180, 179, 176, 170, 160), "take out a wrong one, or those from while it was soaked"},
		{"off any curve", 120, w(180, 179, 178, 130, 129), "take out a wrong one, or those from while it was soaked"},
		{"no weight", 120, w(180, 0, 160), "weighing 2, 0 g, can't be: correct it or take it out"},
		{"not a number", 120, w(180, math.NaN(), 160), "weighing 2, NaN g, can't be: correct it or take it out"},
		{"dry not a number", math.NaN(), w(180, 170, 160), "a dry weight of NaN g can't be: leave it out or correct it"},
		{"dry below nothing", -1, w(180, 170, 160), "a dry weight of -1 g can't be: leave it out or correct it"},
	}
	for _, tt := range tests {
		e, err := predict(tt.dry, tt.w)
		if err == nil || !strings.HasSuffix(err.Error(), tt.want) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%s: Predict = %+v, error %v, want the error %q", tt.name, e, err, tt.want)
		}
	}
}

// What a scale may do is no contradiction: a digit or two up, or a little
// below the dry weight.
func TestPredictForgivesTheScale(t *testing.T) {
	w := func(grams ...float64) []Weighing {
		var w []Weighing
		for i, g := range grams {
			w = append(w, Weighing{hours(4 * float64(i)), g})
		}
		return w
	}
	for _, tt := range []struct {
		dry float64
		w   []Weighing
	}{
		{120, w(130, 128, 129, 126)},            // one digit of a kitchen scale, two in a hundred of the loss are less
		{0, w(220, 170.1, 144.8, 145.9, 126.2)}, // ten digits of a finer one, but little of the loss
		{120, w(121, 116)},                      // 2 % below, and two digits
	} {
		_, err := predict(tt.dry, tt.w)
		if err != nil && (strings.Contains(err.Error(), "heavier") || strings.Contains(err.Error(), "below the dry")) {
			t.Errorf("Predict(%v, %v): %v, want no contradiction", tt.dry, tt.w, err)
		}
	}
}

// A last weighing that is too heavy says not yet, whatever the curve says.
func TestPredictIsNotInThePast(t *testing.T) {
	w := exact(120, 60, 0.1, 0, 3, 6, 10, 16, 24) // dry after 32.19 h
	w = append(w, Weighing{hours(34), 123.0})     // 1 g above the curve
	e, err := predict(120, w)
	if err != nil {
		t.Fatal(err)
	}
	if e.Reached || e.Earliest < hours(34) || e.Likely < e.Earliest || e.Latest < e.Likely {
		t.Errorf("Predict = %+v, want a window from 34 h on", e)
	}
}

func TestCurve(t *testing.T) {
	e, err := predict(120, exact(120, 60, 0.1, 0, 3, 6, 10))
	if err != nil {
		t.Fatal(err)
	}
	points := e.Curve(0, hours(20), 5)
	if len(points) != 5 || points[0].At != 0 || points[4].At != hours(20) {
		t.Fatalf("Curve(0, 20 h, 5) = %v, want both ends and three between", points)
	}
	for _, p := range points {
		if want := 120 + 60*math.Exp(-0.1*p.At.Hours()); !approxEqual(p.Grams, want, 0.05) {
			t.Errorf("Curve at %v = %v g, want %v", p.At, p.Grams, want)
		}
	}
}

// Whatever weighings come in, the answer is a window in order or one line.
func FuzzPredict(f *testing.F) {
	f.Add(120.0, 180.0, 170.0, 162.0, 155.0, 150.0, 1.0)
	f.Add(0.0, 180.0, 170.0, 170.0, 170.0, 169.9, 1e-6)
	f.Add(1e-9, 1e-8, 1e-8, 1e-8, 1e-9, 1e-9, 1e5)
	f.Fuzz(func(t *testing.T, dry, a, b, c, d, e, step float64) {
		if !(math.Abs(step) < 1e5) {
			return
		}
		var w []Weighing
		for i, g := range []float64{a, b, c, d, e} {
			w = append(w, Weighing{hours(step * float64(i)), g})
		}
		got, err := predict(dry, w)
		if err != nil {
			if strings.Contains(err.Error(), "\n") {
				t.Errorf("Predict: error %q has more than one line", err)
			}
			return
		}
		if !(got.Earliest <= got.Likely && got.Likely <= got.Latest) || math.IsNaN(got.Rate) || !(got.Dry > 0) {
			t.Errorf("Predict(%v, %v) = %+v", dry, w, got)
		}
	})
}

func BenchmarkEstimate(b *testing.B) {
	r := Record{Before: 120, Clock: 8 * time.Hour, Weighings: exact(120, 60, 0.1, 0, 3, 6, 10, 16, 24, 30)}
	for b.Loop() {
		if _, err := r.Estimate(); err != nil {
			b.Fatal(err)
		}
	}
}
