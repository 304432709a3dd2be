package drying

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

// curve is dry + water·exp(−rate·hours), hours since the first weighing.
type curve struct {
	dry, water, rate float64
	ssr              float64 // sum of squared residuals, g²
}

func (c curve) grams(hours float64) float64 {
	return c.dry + c.water*math.Exp(-c.rate*hours)
}

// nearDry is when the curve is within NearDry of dry, in hours.
func (c curve) nearDry() float64 {
	return math.Log(c.water/(NearDry*c.dry)) / c.rate
}

// fit finds the curve with the least sum of squares.
func (s series) fit() (curve, error) {
	span := s.hours[len(s.hours)-1]
	low, high := 0.02/span, 60/span
	if s.given() {
		if k, _ := s.logLine(s.dry); k > 0 {
			low, high = k/20, k*20
		}
	}
	rate := minimise(func(k float64) float64 { return s.atRate(k).ssr }, low, high)
	c := s.atRate(rate)
	switch {
	case c.water <= 0 || math.IsInf(c.ssr, 1):
		return curve{}, s.tooEarly()
	case !s.given() && (c.dry <= 0 || rate < 1.1*low):
		return curve{}, s.tooEarly()
	}
	return c, nil
}

// tooEarly is the refusal when the weighings fit any end.
func (s series) tooEarly() error {
	more := math.Max(1, math.Round(s.hours[len(s.hours)-1]/2))
	if s.given() {
		return fmt.Errorf("too early to tell when it will be dry: weigh again in about %v h", more)
	}
	return fmt.Errorf("too early to tell where the weight will end: weigh again in about %v h, or give the weight before wetting", more)
}

// atRate solves for the best curve of a given rate: a straight line of the
// weight over exp(−k·t), through the dry weight if that is given.
func (s series) atRate(k float64) curve {
	x := make([]float64, len(s.hours))
	for i, h := range s.hours {
		x[i] = math.Exp(-k * h)
	}
	c := curve{rate: k, dry: s.dry}
	if s.given() {
		var xx, xy float64
		for i := range x {
			xx += x[i] * x[i]
			xy += x[i] * (s.grams[i] - s.dry)
		}
		c.water = xy / xx
	} else {
		c.dry, c.water = stat.LinearRegression(x, s.grams, nil, false)
	}
	return s.measured(c)
}

// through solves for the best curve of a given rate that is within NearDry
// of dry at the given hour: dry·(1 + NearDry·exp(k·(hour − t))).
func (s series) through(hour, k float64) curve {
	c := curve{rate: k, dry: s.dry}
	if !s.given() {
		var xx, xy float64
		for i, h := range s.hours {
			x := 1 + NearDry*math.Exp(k*(hour-h))
			xx += x * x
			xy += x * s.grams[i]
		}
		c.dry = xy / xx
	}
	c.water = c.dry * NearDry * math.Exp(k*hour)
	return s.measured(c)
}

// measured fills in how far the weighings are from the curve.
func (s series) measured(c curve) curve {
	c.ssr = 0
	for i, h := range s.hours {
		d := s.grams[i] - c.grams(h)
		c.ssr += d * d
	}
	if math.IsNaN(c.ssr) {
		c.ssr = math.Inf(1)
	}
	return c
}

// freedom is the residuals' degrees of freedom, at least 1.
func (s series) freedom() float64 { return float64(len(s.grams) - s.unknowns()) }

// scatter is the standard deviation of a weighing from the curve, not less
// than the rounding of the scale: step/√12 (a uniform distribution).
func (s series) scatter(ssr float64) float64 {
	return math.Max(math.Sqrt(ssr/s.freedom()), s.step/math.Sqrt(12))
}

// widest bounds the late side of a window: an end that may be this many
// times later than the likely one is no answer.
const widest = 10

// window finds the hours on both sides of the best end at which the best
// curve through them becomes too bad to believe (profile of the sum of
// squares; Bates & Watts, Nonlinear Regression Analysis, 6.1, from memory).
func (s series) window(best curve, scatter float64) (early, late float64, err error) {
	t := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: s.freedom()}.Quantile((1 + Confidence) / 2)
	limit := best.ssr + t*t*scatter*scatter
	believable := func(hour float64) bool {
		k := minimise(func(k float64) float64 { return s.through(hour, k).ssr }, best.rate/30, best.rate*30)
		return s.through(hour, k).ssr <= limit
	}
	mid := best.nearDry()
	last := s.hours[len(s.hours)-1]
	first := math.Max(0.01*math.Abs(mid), 0.01*last)
	late, ok := edge(believable, mid, first, widest*math.Max(mid, last))
	if !ok {
		return 0, 0, s.tooEarly()
	}
	early, _ = edge(believable, mid, -first, -last)
	return early, late, nil
}

// edge walks from a believable hour with doubling steps to the first that
// is not, and halves the last step down. It stops at the given hour and
// says so.
func edge(believable func(float64) bool, from, step, stop float64) (float64, bool) {
	in, out := from, from+step
	for believable(out) {
		if (out-stop)*step >= 0 {
			return stop, false
		}
		step *= 2
		in, out = out, out+step
	}
	for range 30 {
		if m := (in + out) / 2; believable(m) {
			in = m
		} else {
			out = m
		}
	}
	return in, true
}

// minimise finds where f is least for positive arguments from low to high:
// the best of a grid in the logarithm, then golden section between its
// neighbours.
func minimise(f func(float64) float64, low, high float64) float64 {
	const grid = 48
	a, b := math.Log(low), math.Log(high)
	step := (b - a) / grid
	best, least := 0, math.Inf(1)
	for i := range grid + 1 {
		if v := f(math.Exp(a + float64(i)*step)); v < least {
			best, least = i, v
		}
	}
	mid := a + float64(best)*step
	a, b = math.Max(a, mid-step), math.Min(b, mid+step)
	const golden = 1 / math.Phi
	x1, x2 := b-golden*(b-a), a+golden*(b-a)
	f1, f2 := f(math.Exp(x1)), f(math.Exp(x2))
	for range 36 {
		if f1 < f2 {
			b, x2, f2 = x2, x1, f1
			x1 = b - golden*(b-a)
			f1 = f(math.Exp(x1))
		} else {
			a, x1, f1 = x1, x2, f2
			x2 = a + golden*(b-a)
			f2 = f(math.Exp(x2))
		}
	}
	return math.Exp((a + b) / 2)
}

// logLine fits a straight line to the logarithm of the water left. It gives
// the rate per hour and R², both 0 if fewer than two weighings are above dry.
func (s series) logLine(dry float64) (rate, r2 float64) {
	var x, y []float64
	for i, h := range s.hours {
		if w := s.grams[i] - dry; w > 0 {
			x, y = append(x, h), append(y, math.Log(w))
		}
	}
	if len(x) < 2 || x[0] == x[len(x)-1] {
		return 0, 0
	}
	alpha, beta := stat.LinearRegression(x, y, nil, false)
	return -beta, stat.RSquared(x, y, nil, alpha, beta)
}

// straightness is R² of that line.
func (s series) straightness(dry float64) float64 {
	_, r2 := s.logLine(dry)
	return r2
}
