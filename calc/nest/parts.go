package nest

import (
	"errors"
	"math"

	"chape/calc"
	"chape/calc/curve"
)

// PartsOf are the parts of a plan: the body with its tab, once, each ply of the
// welt, and the strap. The fold of the body and the length of the strap run along x;
// a welt may lie any way round.
func PartsOf(p *calc.Plan) []Part {
	parts := []Part{{
		Name: "body", Kind: Body, Outline: p.Flat.Outline, Count: 1,
		Thickness: p.Input.Sheath.Leather.MM(), Along: true,
	}}
	if plies := max(1, p.Welt.Plies); len(p.Welt.Outline) > 0 {
		parts = append(parts, Part{
			Name: "welt", Kind: Welt, Outline: p.Welt.Outline, Count: plies,
			Thickness: p.Welt.Thickness / float64(plies),
		})
	}
	if p.Strap != nil {
		parts = append(parts, Part{Name: "strap", Kind: Strap, Outline: p.Strap.Outline, Count: 1,
			Thickness: p.Input.Strap.Thickness.MM(), Along: true})
	}
	return parts
}

// Corners leaves out what an outline does not need to be true within tol, mm. It comes
// counter-clockwise.
func Corners(l curve.Line, tol float64) curve.Line { return simplify(l, tol) }

// Halves draws a part from half-widths measured at places along its middle line: X
// is the place, Y the half-width there. At least two are needed, in order, and one
// of them above 0; 0 stands at the ends alone, or it would be two parts.
func Halves(at []curve.Vec) (curve.Line, error) {
	wide := 0.0
	for i, p := range at {
		if !(p.Y >= 0) || math.IsInf(p.X+p.Y, 0) || math.IsNaN(p.X) || i > 0 && p.X <= at[i-1].X {
			return nil, errors.New("give half-widths of 0 or more, each further along than the one before")
		}
		if p.Y == 0 && i > 0 && i < len(at)-1 {
			return nil, errors.New("a half-width of 0 between its ends makes two parts of it: give more than 0 there")
		}
		wide = max(wide, p.Y)
	}
	if len(at) < 2 || wide == 0 {
		return nil, errors.New("give two half-widths at least, one of them above 0")
	}
	var l curve.Line
	for _, p := range at {
		l = append(l, curve.Vec{X: p.X, Y: -p.Y})
	}
	for i := len(at) - 1; i >= 0; i-- {
		if at[i].Y > 0 {
			l = append(l, at[i])
		}
	}
	return l, nil
}
