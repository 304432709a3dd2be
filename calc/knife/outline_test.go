package knife

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"chape/calc/length"
)

// middling is a drop point with a bolster and an oval handle.
func middling() Outline {
	return Outline{
		Point: Drop, Blade: 110, Depth: 30, Spine: 4,
		Front: Bolster, FrontLength: 12, FrontDepth: 31, FrontThick: 17,
		Handle: 110, HandleDepth: 27, HandleThick: 17, Swell: 4, Section: Oval,
	}
}

// checkMarks holds marks against the rules for a knife: the first at 0, in
// order, no more than two at one place, a section left between steps.
func checkMarks(t *testing.T, s []Station) {
	t.Helper()
	if len(s) < 12 || s[0].At != 0 {
		t.Fatalf("%d marks from %v, want 12 or more from 0", len(s), s[0].At)
	}
	for i, m := range s {
		if m.Bottom < m.Top || m.Top < 0 || !(m.Thick > 0) || !(m.Bevel > 0 && m.Bevel <= 1) || m.Round < 0 {
			t.Errorf("mark %d = %+v", i, m)
		}
		if v := float64(m.At + m.Bottom + m.Thick); math.IsNaN(v) || math.IsInf(v, 0) {
			t.Errorf("mark %d = %+v", i, m)
		}
		if i > 0 && m.At < s[i-1].At {
			t.Errorf("mark %d at %v stands before the one at %v", i, m.At, s[i-1].At)
		}
		if i > 1 && m.At == s[i-2].At {
			t.Errorf("three marks at %v", m.At)
		}
		if i > 0 && m.At == s[i-1].At && (i == 1 || i == len(s)-1 || s[i-1].At == s[i-2].At || s[i+1].At == m.At) {
			t.Errorf("no section left beside the step at %v", m.At)
		}
	}
}

// bladeEnd is the number of marks of the blade.
func bladeEnd(s []Station) int {
	return slices.IndexFunc(s, func(m Station) bool { return m.Kind != Blade })
}

func TestStationsAreAKnifeWhateverTheOutline(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	between := func(lo, hi float64) length.Length { return length.Length(lo + (hi-lo)*r.Float64()) }
	for range 2000 {
		o := Outline{
			Point: Points[r.IntN(len(Points))], Blade: between(20, 1500), Depth: between(5, 200), Spine: between(0.5, 15),
			Front: Fronts[r.IntN(len(Fronts))], FrontLength: between(1, 100), FrontDepth: between(1, 200), FrontThick: between(1, 80),
			Handle: between(20, 500), HandleDepth: between(5, 150), HandleThick: between(2, 80), Swell: between(0, 50),
			Section: []Kind{Slab, Oval}[r.IntN(2)],
		}
		if r.IntN(2) == 0 {
			o.Butt = between(5, 150)
		}
		if r.IntN(2) == 0 {
			o.Grind = between(0.1, float64(o.Depth))
		}
		s, err := o.Stations()
		if err != nil {
			t.Fatalf("Stations(%+v) = %v", o, err)
		}
		checkMarks(t, s)
		if t.Failed() {
			t.Fatalf("outline %+v", o)
		}
	}
}

// What a maker would see in each point's drawing; common practice, no source.
func TestPointsLookLikeWhatTheyAreCalled(t *testing.T) {
	for _, c := range []struct {
		point  Point
		lowest float64 // the point below the line of the back, share of the depth
	}{
		{Straight, 0}, {Drop, 0.3}, {Clip, 0.4}, {Spear, 0.5}, {Sheepsfoot, 0.92},
	} {
		o := middling()
		o.Point = c.point
		s, err := o.Stations()
		if err != nil {
			t.Fatal(err)
		}
		if got := float64(s[0].Top / o.Depth); math.Abs(got-c.lowest) > 0.005 {
			t.Errorf("%v: the point lies %v of the depth below the back, want %v", c.point, got, c.lowest)
		}
		if s[0].Depth() != 0 || s[0].Thick > 0.8 {
			t.Errorf("%v: the point is %v deep and %v thick, want 0 and at most 0.8", c.point, s[0].Depth(), s[0].Thick)
		}
		for i := 1; i < bladeEnd(s); i++ {
			if s[i].Top > s[i-1].Top || s[i].Bottom < s[i-1].Bottom || s[i].Thick < s[i-1].Thick {
				t.Errorf("%v: mark %d %+v after %+v: back, edge and thickness must run one way", c.point, i, s[i], s[i-1])
			}
		}
		end := s[bladeEnd(s)-1]
		if end.At != o.Blade || end.Top != 0 || end.Bottom != o.Depth || end.Thick != o.Spine {
			t.Errorf("%v: the blade ends with %+v", c.point, end)
		}
	}
}

// A drop point's back is a bow, a clip's is hollow: at half its fall the one
// lies above the straight line from the corner to the point, the other below.
func TestADropIsABowAndAClipIsHollow(t *testing.T) {
	o := middling()
	half := float64(o.Depth) // half of the fall of two depths
	for _, c := range []struct {
		point Point
		bow   bool
	}{{Drop, true}, {Clip, false}} {
		o.Point = c.point
		point, _ := o.profile(0)
		back, _ := o.profile(half)
		if got := back < point/2; got != c.bow {
			t.Errorf("%v: the back is %v mm down half way, %v at the point: bow = %v, want %v", c.point, back, point, got, c.bow)
		}
	}
}

func TestABolsterStandsInLineWithTheBack(t *testing.T) {
	s, _ := middling().Stations()
	n := bladeEnd(s)
	want := Station{At: 110, Bottom: 31, Thick: 17, Kind: Oval, Bevel: 1}
	if s[n] != want || s[n-1].At != want.At {
		t.Errorf("the bolster's face = %+v, want %+v", s[n], want)
	}
	if s[n+1].At != 122 || s[n+2].At != 122 || s[n+2].Bottom != 27 {
		t.Errorf("the bolster's end = %+v, %+v", s[n+1], s[n+2])
	}
	fat := s[n+2+3]
	if fat.Bottom != 31 || fat.Thick != 21 {
		t.Errorf("the swell = %+v, want 31 deep, 21 thick", fat)
	}
	if end := s[len(s)-1]; end.At != 232 || end.Bottom != 27 || end.Thick != 17 {
		t.Errorf("the butt = %+v, want 27 deep, 17 thick at 232", end)
	}
}

func TestAProudGuardHoldsTheRuleOffTheBack(t *testing.T) {
	o := middling()
	o.Front, o.FrontDepth = Guard, 55
	s, _ := o.Stations()
	n := bladeEnd(s)
	if s[n-1].Top != 5 || s[n-1].Bottom != 35 || s[n].Top != 0 || s[n].Bottom != 55 || s[n].Kind != Slab {
		t.Errorf("blade and guard meet with %+v and %+v, want a gap of 5 (a fifth of 55-30) behind the blade", s[n-1], s[n])
	}
	o.FrontDepth = 28 // smaller than the blade is deep: not proud
	if s, _ := o.Stations(); s[n-1].Top != 0 {
		t.Errorf("a small guard holds the rule off by %v", s[n-1].Top)
	}
}

func TestGrindHeightIsKeptAlongTheBlade(t *testing.T) {
	o := middling()
	o.Grind = 15
	s, _ := o.Stations()
	for i := range bladeEnd(s) {
		want := min(o.Grind, s[i].Depth())
		if got := length.Length(s[i].Bevel) * s[i].Depth(); math.Abs(float64(got-want)) > 1e-9 {
			t.Errorf("mark %d: grind height %v, want %v", i, got, want)
		}
	}
}

func TestOutlineValidate(t *testing.T) {
	if err := middling().Validate(); err != nil {
		t.Fatalf("Validate = %v", err)
	}
	nan := length.Length(math.NaN())
	for key, spoil := range map[string]func(*Outline){
		"blade": func(o *Outline) { o.Blade = 19 }, "depth": func(o *Outline) { o.Depth = 0 }, "spine": func(o *Outline) { o.Spine = -1 },
		"grind": func(o *Outline) { o.Grind = 30.1 }, "front_length": func(o *Outline) { o.FrontLength = 0 },
		"front_depth": func(o *Outline) { o.FrontDepth = nan }, "front_thick": func(o *Outline) { o.FrontThick = 0 },
		"handle": func(o *Outline) { o.Handle = length.Length(math.Inf(1)) }, "handle_depth": func(o *Outline) { o.HandleDepth = 0 },
		"handle_thick": func(o *Outline) { o.HandleThick = 0 }, "swell": func(o *Outline) { o.Swell = -0.1 }, "butt": func(o *Outline) { o.Butt = -1 },
	} {
		o := middling()
		spoil(&o)
		var m *Misfit
		if err := o.Validate(); !errors.As(err, &m) || m.Key != key || !strings.Contains(err.Error(), "give ") {
			t.Errorf("%s: Validate = %v", key, err)
		}
		if s, err := o.Stations(); err == nil || s != nil {
			t.Errorf("%s: Stations = %v, %v", key, s, err)
		}
	}
	o := middling()
	o.Front, o.FrontLength, o.FrontDepth, o.FrontThick = NoFront, 0, 0, 0
	if err := o.Validate(); err != nil {
		t.Errorf("without a front its figures do not count: %v", err)
	}
}
