package calc

import (
	"math"
	"math/rand/v2"
	"testing"

	"chape/calc/knife"
	"chape/calc/length"
)

// Where the mouth is proposed, by hand: half the handle behind the bolster and its
// fattest part, 50 mm left to hold, just before a guard that stands proud (common practice, no source).
func TestProposeMouth(t *testing.T) {
	st := func(at, top, bottom, thick float64, k knife.Kind) knife.Station {
		return knife.Station{At: length.Length(at), Top: length.Length(top), Bottom: length.Length(bottom), Thick: length.Length(thick), Kind: k, Bevel: 1}
	}
	short := []knife.Station{st(0, 0, 20, 2, knife.Blade), st(100, 0, 28, 4, knife.Blade), st(100, 0, 28, 18, knife.Oval), st(170, 0, 28, 18, knife.Oval)}
	late := append([]knife.Station{}, short...)
	late[3] = st(300, 0, 28, 18, knife.Oval)
	late = append(late, st(320, 0, 28, 18, knife.Oval))
	fat := append([]knife.Station{}, short...)
	fat[3] = st(200.2, 0, 30, 24, knife.Oval)
	fat = append(fat, st(290, 0, 28, 18, knife.Oval))
	for _, c := range []struct {
		what string
		k    knife.Knife
		mm   float64
		in   float64 // in eighths
	}{
		// Handle from 117 to 225: half of it to 171, 54 left; 53 in the whole eighths below.
		{"the orchard knife", orchard().Knife, 171, 53},
		// Handle from 100 to 170: 135 would leave 35; 50 mm before its end is 120.
		{"a short handle", knife.Knife{Stations: short}, 120, 37},
		// Handle from 100 to 320: half to 210, as far as its fattest, which is everywhere.
		{"a long handle", knife.Knife{Stations: late}, 210, 66},
		// Its fattest part lies past the middle, at 200.2: a whole millimetre past it.
		{"fattest late", knife.Knife{Stations: fat}, 201, 63},
		// A guard 4 proud of the back at 90: a millimetre before it.
		{"a guard", guarded(), 89, 28},
		// A bar: three quarters of it.
		{"a bar", bar().Knife, 120, 37},
		// A sleeve before the blade is no handle: as the short handle.
		{"a slab before the blade", knife.Knife{Stations: append([]knife.Station{st(0, 0, 20, 2, knife.Slab), st(8, 0, 20, 2, knife.Blade)}, short[1:]...)}, 120, 37},
		{"nothing", knife.Knife{}, 0, 0},
	} {
		if got := ProposeMouth(c.k, length.Millimetres).MM(); got != c.mm {
			t.Errorf("%s: %v mm, want %v", c.what, got, c.mm)
		}
		if got := ProposeMouth(c.k, length.Inches).In() * 8; math.Abs(got-c.in) > 1e-6 {
			t.Errorf("%s: %v eighths of an inch, want %v", c.what, got, c.in)
		}
	}
}

// Whatever the knife, the mouth proposed lies on it, in whole steps of the unit, and can
// be planned for; what the maker then hears of the mouth is no warning where 100 mm of
// handle are there.
func TestProposedMouthsCanBePlanned(t *testing.T) {
	rng := rand.New(rand.NewPCG(23, 31))
	quiet := 0
	for range 40 {
		in := believable(rng)
		in.Sheath.Drain, in.Sheath.MouthRise, in.Strap.Kind, in.Fits = 0, 0, NoStrap, nil
		for _, u := range []length.Unit{length.Millimetres, length.Inches} {
			in.Sheath.Mouth = ProposeMouth(in.Knife, u)
			end := in.Knife.Length()
			if m := in.Sheath.Mouth; m <= 0 || m > end {
				t.Fatalf("a mouth at %v on a knife of %v", m, end)
			}
			step := length.Length(1)
			if u == length.Inches {
				step = length.Inch / 8
			}
			if off := math.Remainder(float64(in.Sheath.Mouth/step), 1); math.Abs(off) > 1e-6 {
				t.Errorf("a mouth at %v, %v of a step off", in.Sheath.Mouth, off)
			}
			p, err := Compute(in)
			if err != nil {
				continue
			}
			for _, c := range p.Checks {
				if c.Name == "mouth" && c.Level == Warn && u == length.Millimetres {
					t.Errorf("the mouth proposed: %s", c.Text(u))
				}
				if c.Name == "mouth" && c.Level == OK {
					quiet++
				}
			}
		}
	}
	if quiet < 40 {
		t.Errorf("only %d of 80 mouths proposed pass without a word", quiet)
	}
}

// Leather and thread by hand: what is cut, a quarter more for offcuts, never less than
// the smallest boxes side by side unless the parts are placed.
func TestCostByHand(t *testing.T) {
	in := bar()
	in.Sheath.Plies = 3
	p := mustPlan(t, in)
	cut := p.Body.AreaWithTab + 3*p.Welt.Area
	for _, c := range []struct {
		rates Rates
		want  float64
	}{{Rates{Offcut: 3}, 4 * cut}, {Rates{Offcut: 0.1, Placed: true}, 1.1 * cut}, {Rates{Placed: true}, cut}} {
		got := p.Cost(c.rates)
		within(t, "leather cut", got.LeatherArea, cut, 1e-6)
		within(t, "leather to buy", got.ToBuy, c.want, 1e-6)
		within(t, "thread used", got.ThreadUsed, p.Thread.Length+p.Loop.Thread, 1e-9)
	}
	if got := p.Cost(Rates{}); got.ToBuy <= cut {
		t.Errorf("side by side the parts take %v, no more than is cut, %v", got.ToBuy, cut)
	}
	in.Belt.Loop = NoLoop
	q := mustPlan(t, in)
	within(t, "thread without a loop", q.Cost(Rates{}).ThreadUsed, q.Thread.Length, 0)
	if q.Body.TabLength != 0 || q.Body.AreaWithTab != q.Body.Area || q.Loop.Rows != 0 {
		t.Errorf("without a loop: a tab of %v, %d rows", q.Body.TabLength, q.Loop.Rows)
	}
	within(t, "a flattened share", DefaultOffcut, 0.25, 0)
}
