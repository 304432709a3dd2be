package knife

import (
	"math"
	"slices"
	"testing"

	"chape/calc/length"
)

// The usual outline's marks worked by hand from its shares (common practice, no source):
// the edge curves over twice the depth, 60 mm, with marks at 0, 8, 18, 32, 50, 75 and
// 100 % of it to half a millimetre, one half way to the blade's end, then the front's
// two faces and seven along the handle.
func TestUsualMarksByHand(t *testing.T) {
	st, err := Usual().Stations()
	if err != nil {
		t.Fatal(err)
	}
	var at []length.Length
	for _, s := range st {
		at = append(at, s.At)
	}
	want := []length.Length{0, 5, 11, 19, 30, 45, 60, 85, 110, 110, 122, 122, 138.5, 155, 177, 199, 215.5, 232}
	if !slices.Equal(at, want) {
		t.Errorf("marks at %v, want %v", at, want)
	}
	// The back of a drop point falls by 0.3 of the depth as a parabola: at 30, half way,
	// 0.3·30/4 = 2.25. The edge there has come to bow(½) = (3/4)^0.8 of what is left.
	half := st[4]
	if edge := 9 + 21*math.Pow(0.75, 0.8); half.Top != 2.25 || math.Abs(half.Bottom.MM()-edge) > 0.026 {
		t.Errorf("half way the blade is %v to %v, want 2.25 to %.2f", half.Top, half.Bottom, edge)
	}
	// The spine thins to 0.55 at the point's end but for its tip: at 30 of 110 it is
	// 4·(0.55 + 0.45·30/110) = 2.69.
	if math.Abs(half.Thick.MM()-2.7) > 1e-9 {
		t.Errorf("half way the spine is %v, want 2.7", half.Thick)
	}
	if st[0].Thick != 0.6 || st[0].Top != 9 || st[0].Bottom != 9 {
		t.Errorf("the point is %+v, want 0.6 thick and 9 below the back", st[0])
	}
	// The handle goes from 27 to its fattest, 31, half way and back, in fair curves: at
	// 0.3 of the way it has (1 − cos 0.6π)/2 = 0.6545 of that.
	if d := st[13].Depth().MM(); math.Abs(d-29.6) > 1e-9 {
		t.Errorf("at 0.3 the handle is %v deep, want 27 + 4·0.6545, to 0.05", d)
	}
}

// Each point's back and edge by hand, at the shares where they are easy.
func TestPointsByHand(t *testing.T) {
	bow := math.Pow(0.75, 0.8) // half way
	for _, c := range []struct {
		point      Point
		x          float64
		back, edge float64
	}{
		{Straight, 30, 0, 30 * bow}, {Straight, 60, 0, 30}, {Straight, 0, 0, 0},
		{Drop, 0, 9, 9}, {Drop, 30, 2.25, 9 + 21*bow}, {Drop, 90, 0, 30},
		{Clip, 0, 12, 12}, {Clip, 30, 12 * (0.6*0.5 + 0.4*0.75), 12 + 18*bow},
		{Spear, 0, 15, 15}, {Spear, 30, 15 * (1 - bow), 15 + 15*bow},
		{Sheepsfoot, 0, 27.6, 27.6}, {Sheepsfoot, 18, 27.6 * (1 - bow), 27.6 + 2.4*math.Pow(1-0.7*0.7, 0.8)}, {Sheepsfoot, 36, 0, 27.6 + 2.4*math.Pow(1-0.4*0.4, 0.8)},
	} {
		o := Usual()
		o.Point = c.point
		back, edge := o.profile(c.x)
		if math.Abs(back.MM()-c.back) > 1e-9 || math.Abs(edge.MM()-c.edge) > 1e-9 {
			t.Errorf("%v at %v: back %v, edge %v, want %v, %v", c.point, c.x, back, edge, c.back, c.edge)
		}
	}
}

// A slab's corners are 2 mm, or a quarter of its thickness or depth where that is less.
func TestSlabCorners(t *testing.T) {
	for _, c := range []struct{ thick, deep, want length.Length }{{17, 27, 2}, {6, 27, 1.5}, {17, 4, 1}, {7.9, 8.2, 2}, {3, 40, 0.75}} {
		if got := corner(Station{Kind: Slab, Thick: c.thick, Bottom: c.deep}); got != c.want {
			t.Errorf("a slab %v thick and %v deep has corners of %v, want %v", c.thick, c.deep, got, c.want)
		}
	}
	if got := corner(Station{Kind: Oval, Thick: 17, Bottom: 27}); got != 0 {
		t.Errorf("an oval has corners of %v", got)
	}
}

// A guard as it was measured: so far out at the back, so far at the edge; the blade and
// the handle then start as far down as it stands out.
func TestGuardAsMeasured(t *testing.T) {
	for _, c := range []struct {
		change func(*Outline)
		proud  length.Length
		depth  length.Length
	}{
		{func(o *Outline) { o.FrontDepth = 45 }, 3, 45},                                                     // a fifth of 15
		{func(o *Outline) { o.FrontBack, o.BackGiven = 7, true; o.FrontDepth = 50 }, 7, 50},                 //
		{func(o *Outline) { o.FrontEdge, o.EdgeGiven = 12, true }, 3, 30 + 3 + 12},                          // a fourth of the edge's
		{func(o *Outline) { o.FrontBack, o.BackGiven, o.FrontEdge, o.EdgeGiven = 2, true, 9, true }, 2, 41}, //
		{func(o *Outline) { o.FrontBack, o.BackGiven = 0, true; o.FrontDepth = 60 }, 0, 60},
	} {
		o := Usual()
		o.Front = Guard
		c.change(&o)
		st, err := o.Stations()
		if err != nil {
			t.Fatal(err)
		}
		n := bladeEnd(st)
		if st[n].Top != 0 || st[n].Depth() != c.depth || st[n].Kind != Slab || st[n-1].Top != c.proud || st[n+2].Top != c.proud {
			t.Errorf("%+v: guard %v to %v, blade from %v, handle from %v, want 0 to %v, %v", o, st[n].Top, st[n].Bottom, st[n-1].Top, st[n+2].Top, c.depth, c.proud)
		}
	}
}

// A short blade keeps its marks apart: none nearer than 5 mm to its end, one more half
// way where more than 10 mm are left.
func TestBladeMarksOfShortBlades(t *testing.T) {
	for _, c := range []struct {
		blade length.Length
		want  []float64
	}{
		{60, []float64{0, 5, 11, 19, 30, 45, 60}},           // the curve takes it all
		{64, []float64{0, 5, 11, 19, 30, 45, 64}},           // 4 mm left: the mark at 60 goes
		{66, []float64{0, 5, 11, 19, 30, 45, 60, 66}},       // 6 mm left
		{71, []float64{0, 5, 11, 19, 30, 45, 60, 65.5, 71}}, // 11 left: one half way
		{20, []float64{0, 1.5, 3.5, 6.5, 10, 15, 20}},
	} {
		o := Usual()
		o.Blade = c.blade
		if got := o.bladeMarks(); !slices.Equal(got, c.want) {
			t.Errorf("a blade of %v: marks at %v, want %v", c.blade, got, c.want)
		}
	}
}
