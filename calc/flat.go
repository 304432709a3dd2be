package calc

import (
	"fmt"
	"math"

	"chape/calc/curve"
	"chape/calc/knife"
)

// inFlat makes the curves of the opened leather, and what passing takes.
func (s *sampled) inFlat(base curve.Graph, disc *curve.Disc) {
	n := len(s.seam.X)
	raw := curve.Graph{X: s.seam.X, Y: make([]float64, n, n+s.beyond())}
	over := raw.Between(0, s.mouth).X
	s.need = curve.Graph{X: over, Y: make([]float64, len(over))}
	first := len(raw.X) - len(over) // raw begins at -e, the knife at 0

	half := s.in.Sheath.Welt.MM() / 2
	extra := s.bend() + s.in.Sheath.Ease.MM()
	var buf []knife.Section
	var str tautString
	passing := 0.0
	for i, x := range raw.X {
		us, uc := s.seam.Y[i], s.inner.Y[i]
		inside := half + us
		if k := i - first; k >= 0 {
			buf = s.inside.Sections(buf[:0], x)
			inside, passing = str.through(half, buf, uc, passing)
			inside += us - uc
			if r := s.foldRadius(buf); r < s.fold-tie {
				s.fold, s.foldAt = r, x
			}
			s.need.Y[k] = passing
		}
		raw.Y[i] = inside + extra + s.fit(x)
	}
	s.stitch = s.closed(raw, disc)
	s.cut = disc.Dilate(s.stitch, base.Between(-(s.e+s.m), s.mouth).X, s.m)

	s.room = curve.Graph{X: over, Y: make([]float64, len(over))}
	for k := range over {
		i := k + first
		s.room.Y[k] = s.stitch.Y[i] - s.bend() - (s.seam.Y[i] - s.inner.Y[i])
	}
}

// beyond is more points than closed needs past the mouth.
func (s *sampled) beyond() int { return int(s.b/s.step) + 3 }

// closed closes the raw flat line by the blend: a sudden step in girth can't
// be followed by leather. Beyond the mouth the line is held level.
func (s *sampled) closed(raw curve.Graph, disc *curve.Disc) curve.Graph {
	n := len(raw.X)
	long := curve.Graph{X: append(make([]float64, 0, n+s.beyond()), raw.X...), Y: raw.Y}
	level := raw.Y[n-1]
	for x := s.mouth + s.step; x < s.mouth+s.b; x += s.step {
		long.X, long.Y = append(long.X, x), append(long.Y, level)
	}
	long.X, long.Y = append(long.X, s.mouth+s.b), append(long.Y, level)
	y := disc.Close(long, s.b, s.step)
	return curve.Graph{X: raw.X, Y: y.Y[:n]}
}

// bend is what the leather's own thickness adds to a half: a quarter turn of
// its neutral fibre.
func (s *sampled) bend() float64 {
	return Bend(math.Pi/2, 0, s.in.Sheath.Leather.MM(), s.in.Sheath.Neutral)
}

// Bend is the length of the neutral fibre of stock of thickness t through a
// bend of the given angle (radians) and inside radius r: angle·(r + k·t).
// It is the bend allowance of sheet work.
func Bend(angle, r, t, k float64) float64 { return angle * (r + k*t) }

// fit is the sum of the corrections at x; left of the point it keeps its
// value there.
func (s *sampled) fit(x float64) float64 {
	x = max(x, 0)
	var sum float64
	for _, f := range s.in.Fits {
		if z := (x - f.At.MM()) / f.Reach.MM(); math.Abs(z) < 1 {
			sum += f.Counts(s.in.Sheath).MM() * (1 + math.Cos(math.Pi*z)) / 2
		}
	}
	return sum
}

// end is where the seam meets the fold in the flat, at x = -e.
func (s *sampled) end() float64 {
	return s.in.Sheath.Welt.MM()/2 + s.bend() + s.in.Sheath.Ease.MM() + s.fit(0)
}

// eaten refuses an ease or corrections so negative that nothing is left
// between the fold and the welt.
func (s *sampled) eaten() error {
	short, at := -s.end(), -s.e
	for i, y := range s.stitch.Y {
		if d := s.seam.Y[i] - s.inner.Y[i] - y; d > short {
			short, at = d, s.stitch.X[i]
		}
	}
	if short <= tie {
		return nil
	}
	return fmt.Errorf("ease and corrections leave nothing between fold and welt at %.1f mm from the point: raise ease by at least %.2f mm",
		at, short+0.005)
}
