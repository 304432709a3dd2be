package knife

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"chape/calc/curve"
	"chape/calc/length"
)

// guardKnife is a blade to 90, a guard 4 proud of its back to 96, an oval grip in line
// with the guard's back to 200.
func guardKnife() []Station {
	slab := func(s Station) Station { s.Kind = Slab; return s }
	oval := func(s Station) Station { s.Kind = Oval; return s }
	return []Station{
		mark(0, 6, 6, 1), mark(40, 4, 25, 3), mark(90, 4, 28, 4),
		slab(mark(90, 0, 34, 10)), slab(mark(96, 0, 34, 10)),
		oval(mark(96, 2, 28, 16)), oval(mark(150, 2, 30, 20)), oval(mark(200, 2, 28, 18)),
	}
}

// Where the parts of a knife stand, by its marks.
func TestPlacesOfAKnife(t *testing.T) {
	p := profile(t, guardKnife()...)
	if p.Length() != 200 {
		t.Errorf("length %v, want 200", p.Length())
	}
	if at, has := p.HandleFront(); !has || at != 90 {
		t.Errorf("the handle begins at %v (%v), want 90", at, has)
	}
	if got := p.Steps(); !slices.Equal(got, []float64{90, 96}) {
		t.Errorf("steps at %v, want 90 and 96", got)
	}
	if got := p.Breaks(); !slices.Equal(got, []float64{90, 96}) {
		t.Errorf("breaks at %v, want 90 and 96", got)
	}
	if got := p.Marks(); !slices.Equal(got, []float64{0, 40, 90, 90, 96, 96, 150, 200}) {
		t.Errorf("marks at %v", got)
	}
	if (Knife{}).Length() != 0 || (Knife{Stations: guardKnife()}).Length() != 200 {
		t.Error("a knife is as long as its last mark says, and nothing has no length")
	}
	if d := guardKnife()[3].Depth(); d != 34 {
		t.Errorf("the guard is %v deep, want 34", d)
	}
	for _, sec := range p.Sections(nil, 93) {
		if !sec.Handle || sec.Kind != Slab {
			t.Errorf("the guard's section is %+v", sec)
		}
	}
	bar := profile(t, Station{Bottom: 30, Thick: 6, Kind: Slab}, Station{At: 160, Bottom: 30, Thick: 6, Kind: Slab})
	if at, has := bar.HandleFront(); has {
		t.Errorf("a bar's handle begins at %v", at)
	}
	// A slab before the blade is no handle; it counts as edge.
	swapped := profile(t, Station{Bottom: 30, Thick: 6, Kind: Slab}, mark(50, 0, 28, 3), mark(90, 0, 28, 3), Station{At: 90, Bottom: 30, Thick: 9, Kind: Oval}, Station{At: 150, Bottom: 30, Thick: 9, Kind: Oval})
	if secs := swapped.Sections(nil, 20); len(secs) != 1 || secs[0].Handle {
		t.Errorf("a slab before the blade is handle: %+v", secs)
	}
	if at, has := swapped.HandleFront(); !has || at != 90 {
		t.Errorf("the handle behind it begins at %v (%v)", at, has)
	}
}

// Before the mouth: at a step exactly there only the side of the point is left, a hair
// past it both are.
func TestBefore(t *testing.T) {
	p := profile(t, guardKnife()...)
	for _, c := range []struct {
		mouth   float64
		end     float64
		handle  bool
		at90    int
		beyond4 int // sections at 94
	}{{90, 90, false, 1, 0}, {90.001, 96, true, 2, 1}, {96, 96, true, 2, 1}, {120, 200, true, 2, 1}, {50, 90, false, 1, 0}} {
		b := p.Before(c.mouth)
		if b.Length() != c.end {
			t.Errorf("before %v it ends at %v, want %v", c.mouth, b.Length(), c.end)
		}
		if _, has := b.HandleFront(); has != c.handle {
			t.Errorf("before %v there is a handle: %v", c.mouth, has)
		}
		if got := len(b.Sections(nil, 90)); got != c.at90 {
			t.Errorf("before %v there are %d sections at 90, want %d", c.mouth, got, c.at90)
		}
		if got := len(b.Sections(nil, 94)); got != c.beyond4 {
			t.Errorf("before %v there are %d sections at 94, want %d", c.mouth, got, c.beyond4)
		}
	}
}

// The resting line moves as the rule does: marks measured from a rule that lies lower,
// or aslant, give the same fold on the knife.
func TestRestingFollowsTheRule(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 21))
	for n := range 40 {
		var st, lower []Station
		by, x := 7*rng.Float64(), 0.0
		for range 3 + rng.IntN(5) {
			top := 5 * rng.Float64()
			st = append(st, mark(length.Length(x), length.Length(top), length.Length(top+20), 3))
			lower = append(lower, mark(length.Length(x), length.Length(top+by), length.Length(top+by+20), 3))
			x += 5 + 30*rng.Float64()
		}
		mouth := st[len(st)-1].At.MM() * (0.3 + 0.7*rng.Float64())
		p, q := profile(t, st...), profile(t, lower...)
		a, b := p.Resting(mouth), q.Resting(mouth)
		if math.Abs(b.At(mouth/2)-a.At(mouth/2)-by) > 1e-6 {
			t.Errorf("knife %d: the rule %v higher lifts the line over the middle by %v", n, by, b.At(mouth/2)-a.At(mouth/2))
		}
		// Nowhere past the back, and touching it on both sides of the middle.
		left, right := math.Inf(1), math.Inf(1)
		for i := range 4001 {
			x := mouth * float64(i) / 4000
			for _, sec := range p.Sections(nil, x) {
				gap := sec.Top - a.At(x)
				if gap < -1e-5 {
					t.Fatalf("knife %d: the line lies %v past the back at %v", n, -gap, x)
				}
				if x <= mouth/2 {
					left = math.Min(left, gap)
				} else {
					right = math.Min(right, gap)
				}
			}
		}
		if left > 0.01 || right > 0.01 {
			t.Errorf("knife %d: the line keeps %v off the point's half and %v off the mouth's", n, left, right)
		}
	}
}

// Held and Touching on a laid knife are what looking at very many places finds.
func TestHeldAgainstLooking(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 21))
	for n := range 40 {
		st := some(rng)
		p := profile(t, st...)
		mouth := p.Length() * (0.4 + 0.6*rng.Float64())
		laid := p.Before(mouth).Laid(p.Resting(mouth))
		gap, at := laid.Held(mouth/4, mouth)
		most := math.Inf(-1)
		for i := range 4001 {
			x := math.Min(mouth*(0.25+0.75*float64(i)/4000), mouth)
			for _, sec := range laid.Sections(nil, x) {
				most = math.Max(most, sec.Top)
			}
		}
		if math.Abs(gap-most) > 1e-3 || at < mouth/4-1e-9 || at > mouth+1e-9 {
			t.Errorf("knife %d: held off by %v at %v, looking finds %v", n, gap, at, most)
		}
		touching := laid.Touching(mouth)
		if len(touching) == 0 {
			t.Errorf("knife %d touches its own line nowhere", n)
		}
		for _, x := range touching {
			if top := laid.Sections(nil, x)[0].Top; math.Abs(top) > 1e-5 {
				t.Errorf("knife %d: said to touch at %v, it lies %v off", n, x, top)
			}
		}
	}
}

// Of places held off alike the nearest to the point is named, though the marks make
// several pieces of a level back.
func TestHeldNamesTheFirst(t *testing.T) {
	p := profile(t, mark(0, 0, 10, 1), mark(1, 3, 20, 2), mark(50, 3, 28, 3), mark(80, 3, 28, 3), mark(99, 3, 28, 3), mark(100, 0, 28, 3))
	if gap, at := p.Laid(FoldLine{}).Held(0, 100); math.Abs(gap-3) > 1e-9 || math.Abs(at-1) > 1e-6 {
		t.Errorf("held off by %v at %v, want 3 at 1", gap, at)
	}
}

// A section moved keeps its shape, and its upper half lies between its spine and edge,
// within half its thickness, for every kind.
func TestShiftAndUpper(t *testing.T) {
	rng := rand.New(rand.NewPCG(6, 21))
	for range 200 {
		s := Section{Kind: Kinds[rng.IntN(3)], Top: 4 * rng.Float64(), Thick: 20 * rng.Float64(), Bevel: rng.Float64(), Round: 6 * rng.Float64()}
		s.Bottom = s.Top + 35*rng.Float64()
		m := s.Shift(2.5)
		if math.Abs(m.Depth()-s.Depth()) > 1e-12 || math.Abs(m.Top-s.Top-2.5) > 1e-12 || m.Thick != s.Thick {
			t.Errorf("%+v moved by 2.5 is %+v", s, m)
		}
		for _, v := range s.Upper([]curve.Vec{{X: -9}})[1:] {
			if v.X < s.Top-1e-9 || v.X > s.Bottom+1e-9 || v.Y < -1e-9 || v.Y > s.Thick/2+1e-9 {
				t.Errorf("%+v: its outline runs through %v", s, v)
			}
		}
	}
}
