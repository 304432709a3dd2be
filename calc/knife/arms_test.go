package knife

import (
	"math"
	"testing"

	"chape/calc/curve"
)

// whole is the section with both its halves, closed.
func whole(s Section) curve.Line {
	up := curve.Line(s.Upper(nil))
	for i := len(up) - 1; i >= 0; i-- {
		up = append(up, curve.Vec{X: up[i].X, Y: -up[i].Y})
	}
	return up
}

// round is the length of the closed line.
func round(l curve.Line) float64 { return append(l, l[0]).Length() }

// TestArms: both arms together are the perimeter of the section's convex hull.
// Sources: SciPy reference, ellipe (ellipse of 3.5 × 2.1: 17.868899204378693);
// Abramowitz & Stegun 17.1 (1 × 0.5: 4 E(0.75) = 4.844224110273839); a rectangle
// with rounded corners after Steiner, 2(a + b) + 2πr round the inner one
// (do Carmo, Differential Geometry of Curves and Surfaces).
func TestArms(t *testing.T) {
	for _, c := range []struct {
		s    Section
		want float64
	}{
		{Section{Kind: Oval, Top: 1, Bottom: 8, Thick: 4.2}, 17.868899204378693},
		{Section{Kind: Oval, Bottom: 1, Thick: 2}, 4.844224110273839},
		{Section{Kind: Oval, Bottom: 12, Thick: 12}, 12 * math.Pi},
		{Section{Kind: Slab, Bottom: 30, Thick: 18, Round: 2}, 2*(26+14) + 2*math.Pi*2},
		{Section{Kind: Slab, Bottom: 30, Thick: 18}, 96},
		{Section{Kind: Slab, Bottom: 20, Thick: 12, Round: 9}, 2*8 + 12*math.Pi}, // the corners meet: a stadium
		{Section{Kind: Blade, Bottom: 28, Thick: 4, Bevel: 1}, 4 + 2*math.Hypot(28, 2)},
		{Section{Kind: Blade, Bottom: 28, Thick: 4, Bevel: 0.25}, 4 + 2*21 + 2*math.Hypot(7, 2)},
	} {
		back, belly := c.s.Arms()
		if got := back + belly; math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%+v: arms of %v in all, want %v", c.s, got, c.want)
		}
		if got := round(whole(c.s).Hull()); math.Abs(got-c.want) > 0.01 {
			t.Errorf("%+v: its convex hull is %v round, want %v", c.s, got, c.want)
		}
		// Each arm by itself: the hull's upper half cut at the middle of the depth.
		var over float64
		mid := (c.s.Top + c.s.Bottom) / 2
		up := c.s.Upper(nil)
		for i := 1; i < len(up); i++ {
			a, b := up[i-1], up[i]
			switch {
			case b.X <= mid:
				over += a.Dist(b)
			case a.X < mid:
				over += a.Dist(b) * (mid - a.X) / (b.X - a.X)
			}
		}
		if c.s.Kind == Blade { // its polygon begins at the spine's corner
			over += c.s.Thick / 2
		}
		if math.Abs(back-2*over) > 0.01 {
			t.Errorf("%+v: the arm over the back is %v, want %v", c.s, back, 2*over)
		}
	}
	if back, belly := (Section{Kind: Oval}).Arms(); back != 0 || belly != 0 {
		t.Errorf("round nothing the arms are %v and %v", back, belly)
	}
}

// TestOddProportions: a slip of the finger shows, the usual outline in all its
// sizes does not.
func TestOddProportions(t *testing.T) {
	for _, scale := range []float64{0.4, 1, 2.5} {
		o := Usual()
		for _, l := range []*float64{(*float64)(&o.Blade), (*float64)(&o.Depth), (*float64)(&o.Spine), (*float64)(&o.FrontLength),
			(*float64)(&o.FrontDepth), (*float64)(&o.FrontThick), (*float64)(&o.Handle), (*float64)(&o.HandleDepth), (*float64)(&o.HandleThick)} {
			*l *= scale
		}
		if odd := o.Odd(2); len(odd) > 0 {
			t.Errorf("%v times the usual knife: %+v", scale, odd)
		}
	}
	for key, change := range map[string]func(*Outline){
		"blade": func(o *Outline) { o.Blade = 11 }, "spine": func(o *Outline) { o.Spine = 40 },
		"front_depth": func(o *Outline) { o.FrontDepth = 3.1 }, "front_thick": func(o *Outline) { o.FrontThick = 170 },
		"front_length": func(o *Outline) { o.FrontLength = 120 }, "handle": func(o *Outline) { o.Handle = 1100 },
		"butt": func(o *Outline) { o.Butt = 2.7 }, "handle_thick": func(o *Outline) { o.HandleThick, o.FrontThick = 1.7, 1.7 },
	} {
		o := Usual()
		change(&o)
		odd := o.Odd(2)
		if len(odd) != 1 || odd[0].Key != key {
			t.Errorf("%s changed: %+v", key, odd)
		}
	}
	o := Usual()
	o.Front, o.FrontLength = Guard, 6
	if odd := o.Odd(2); len(odd) > 0 {
		t.Errorf("a guard: %+v", odd)
	}
}
