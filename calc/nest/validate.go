package nest

import (
	"fmt"
	"math"

	"chape/calc/curve"
)

// The most that is taken on.
const (
	MostCopies = 200   // parts in all, each copy counted
	MostPoints = 5000  // of one outline
	mostSize   = 20000 // mm from the origin
	mostGap    = 100
)

// Validate says what about the task will not do; nil where all does. An outline
// needs three corners, an area, and may not cross itself.
func (t Task) Validate() error {
	if !(t.Gap >= 0 && t.Gap <= mostGap) {
		return fmt.Errorf("a gap of %v mm between parts will not do: give 0 to %v mm", t.Gap, mostGap)
	}
	n := 0
	for i, p := range t.Parts {
		if err := outlineError(p.Outline); err != nil {
			return fmt.Errorf("part %d, %q: %w", i+1, p.Name, err)
		}
		if p.Count < 0 || !(p.Thickness > 0) {
			return fmt.Errorf("part %d, %q: give how many, and a thickness above 0", i+1, p.Name)
		}
		n += p.Count
	}
	if n > MostCopies {
		return fmt.Errorf("%d parts are too many for one placing: give %d or fewer", n, MostCopies)
	}
	for i, p := range t.Pieces {
		if err := outlineError(p.Outline); err != nil {
			return fmt.Errorf("leather %d, %q: %w", i+1, p.Name, err)
		}
		if !(p.Thickness > 0) || math.IsNaN(p.Grain+p.Within) || p.Within < 0 {
			return fmt.Errorf("leather %d, %q: give a thickness above 0, and an angle of 0 or more", i+1, p.Name)
		}
		for j, f := range p.Flaws {
			if err := outlineError(f); err != nil {
				return fmt.Errorf("leather %d, %q, flaw %d: %w", i+1, p.Name, j+1, err)
			}
		}
	}
	return nil
}

func outlineError(l curve.Line) error {
	if len(l) < 3 || len(l) > MostPoints {
		return fmt.Errorf("an outline of %d corners: give 3 to %d", len(l), MostPoints)
	}
	for _, p := range l {
		if !(math.Abs(p.X) <= mostSize && math.Abs(p.Y) <= mostSize) {
			return fmt.Errorf("a corner at %v, %v mm: give places within %v mm", p.X, p.Y, mostSize)
		}
	}
	if math.Abs(l.Area()) < 1 {
		return fmt.Errorf("an outline without area: give its corners in their order round it")
	}
	if a, b, ok := crossing(l); ok {
		return fmt.Errorf("the outline crosses itself near %.0f, %.0f mm (sides %d and %d): give its corners in their order round it",
			l[a].X, l[a].Y, a+1, b+1)
	}
	return nil
}

// crossing finds two sides that cross each other inside both.
func crossing(l curve.Line) (int, int, bool) {
	for i := range l {
		for j := i + 2; j < len(l); j++ {
			if i == 0 && j == len(l)-1 {
				continue // neighbours
			}
			if _, ok := meet(l[i], l[(i+1)%len(l)], l[j], l[(j+1)%len(l)]); ok {
				return i, j, true
			}
		}
	}
	return 0, 0, false
}

// meet gives the x where two sides cross inside both.
func meet(a, b, c, d curve.Vec) (float64, bool) {
	if min(a.X, b.X) > max(c.X, d.X) || min(c.X, d.X) > max(a.X, b.X) ||
		min(a.Y, b.Y) > max(c.Y, d.Y) || min(c.Y, d.Y) > max(a.Y, b.Y) {
		return 0, false
	}
	u, v := b.Sub(a), d.Sub(c)
	den := cross(u, v)
	if den == 0 {
		return 0, false
	}
	s, t := cross(c.Sub(a), v)/den, cross(c.Sub(a), u)/den
	const e = 1e-9
	return a.X + s*u.X, s > e && s < 1-e && t > e && t < 1-e
}

func cross(u, v curve.Vec) float64 { return u.X*v.Y - u.Y*v.X }
