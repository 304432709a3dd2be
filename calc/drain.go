package calc

import (
	"errors"
	"fmt"
	"math"

	"chape/calc/curve"
	"chape/calc/length"
)

// drainRim is the leather left round the drain: to the welt, to the point, to
// the fold, mm.
const drainRim = 1

// makeDrain places the drain in the back half where water gathers when the
// sheath hangs: below the point, hard by the welt's end, half way between fold
// and glue line. Where it has no room it is refused.
func (p *Plan) makeDrain() error {
	s := p.at
	d := p.Input.Sheath.Drain.MM()
	if d <= 0 {
		return nil
	}
	if need := d + 2*drainRim; s.q < need-tie {
		room := p.Input.Sheath.PointRoom + length.Length(need-s.q)
		return fmt.Errorf("a drain of %s finds no room below the point, which would come out through it: raise point_room to %s",
			inMM(d), roomUp(room))
	}
	x := -s.q + drainRim + d/2
	hole := Circle{Centre: curve.Vec{X: x, Y: s.glueAt(x) / 2}, Diameter: d}
	if most := s.widestDrain(hole.Centre); d > most+tie {
		if most <= 0 {
			return errors.New("there is no place for a drain between fold and welt below the point: leave it out (drain 0)")
		}
		return fmt.Errorf("a drain of %s comes within %s of fold or welt: make it %s at most", inMM(d), inMM(drainRim),
			inMM(math.Floor(most*10)/10))
	}
	p.Flat.Drain = &hole
	return nil
}

// widestDrain is the diameter of the widest hole round c that keeps off the
// fold and the glue line.
func (s *sampled) widestDrain(c curve.Vec) float64 {
	r := c.Y
	for i, x := range s.stitch.X {
		if x < -s.q || x > 0 {
			continue
		}
		r = math.Min(r, curve.Vec{X: x, Y: s.glue(i)}.Dist(c))
	}
	return 2 * (r - drainRim)
}

// inMM shows a length for a line of refusal, which does not know the maker's
// unit.
func inMM(mm float64) string { return calliper(mm, length.Millimetres) }

// roomUp shows a length rounded up to a tenth.
func roomUp(l length.Length) string { return inMM(math.Ceil(l.MM()*10-1e-6) / 10) }
