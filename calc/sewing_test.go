package calc

import (
	"math"
	"testing"

	"chape/calc/curve"
	"chape/calc/knife"
	"chape/calc/length"
)

// hill is a seam along 0 to 100 that lies level, and a flat line over it that climbs at
// 45° for as long as given from each of the places.
func hill(long float64, at ...float64) *sampled {
	s := &sampled{mouth: 100}
	y := 0.0
	for i := range 1001 {
		x := float64(i) / 10
		s.seam.X, s.seam.Y = append(s.seam.X, x), append(s.seam.Y, 30)
		for _, a := range at {
			if x > a+1e-9 && x <= a+long+1e-9 {
				y += 0.1
			}
		}
		s.stitch.X, s.stitch.Y = append(s.stitch.X, x), append(s.stitch.Y, y)
	}
	return s
}

// Gather by hand: of 20 mm of seam with 10 at 45° above it the leather is 10·√2 + 10 long,
// 20.7 % more; of 20 all at 45°, 41.4 %. Of several such stretches the one nearest the
// point is named, by the mean of its ends; a seam shorter than that counts whole.
func TestGatherByHand(t *testing.T) {
	for _, c := range []struct {
		what     string
		s        *sampled
		reach    float64
		most, at float64
		along    float64
	}{
		{"ten at 45°", hill(10, 40), 20, (10*math.Sqrt2+10)/20 - 1, 40, 20}, // from 30 to 50 first
		{"twenty at 45°", hill(20, 40), 20, math.Sqrt2 - 1, 50, 20},
		{"two alike", hill(20, 15, 60), 20, math.Sqrt2 - 1, 25, 20},
		{"nothing", hill(0), 20, 0, 10, 20},
		{"longer than the seam", hill(20, 40), 500, (80 + 20*math.Sqrt2 - 100) / 100, 50, 100},
	} {
		most, at, along := c.s.gather(c.reach)
		within(t, c.what+": gather", most, c.most, 1e-9)
		within(t, c.what+": at", at, c.at, 1e-6)
		within(t, c.what+": over", along, c.along, 1e-9)
	}
	if most, at, along := (&sampled{seam: curve.Graph{X: []float64{0}, Y: []float64{3}}, stitch: curve.Graph{X: []float64{0}, Y: []float64{3}}}).gather(20); most != 0 || at != 0 || along != 0 {
		t.Errorf("of no seam %v, %v, %v", most, at, along)
	}
}

// The loop's rows by hand: whole stitches with a pitch or more at both sides, a second
// row 12 mm lower from a lap of 16 on.
func TestRowsOfTheLoop(t *testing.T) {
	for _, c := range []struct {
		tab, pitch, lap length.Length
		stitches, rows  int
	}{
		{20, 4, 8, 3, 1}, {19.99, 4, 8, 2, 1}, {20, 4, 15.99, 3, 1}, {20, 4, 16, 3, 2}, {12, 4, 8, 1, 1}, {11.99, 4, 8, 0, 0}, {30, 3.5, 20, 6, 2},
	} {
		in := bar()
		in.Belt.Tab, in.Stitch.Pitch, in.Belt.Lap = c.tab, c.pitch, c.lap
		l := mustPlan(t, in).Loop
		if l.Stitches != c.stitches || l.Rows != c.rows || l.Holes != c.rows*(c.stitches+1) || len(l.Body) != l.Holes || len(l.Lap) != l.Holes {
			t.Errorf("a tab of %v, pitch %v, lap %v: %d rows of %d stitches, %d holes", c.tab, c.pitch, c.lap, l.Rows, l.Stitches, l.Holes)
			continue
		}
		if c.rows == 0 {
			if l.Thread != 0 {
				t.Errorf("no stitches, yet %v of thread", l.Thread)
			}
			continue
		}
		first, last := l.Body[0].Y, l.Body[c.stitches].Y
		within(t, "the rows stand in the middle of the tab", (first+last)/2, l.Offset+c.tab.MM()/2, 1e-9)
		within(t, "pitch of the loop", l.Body[1].Y-first, c.pitch.MM(), 1e-9)
		if first-l.Offset < c.pitch.MM()-1e-9 {
			t.Errorf("the first stitch lies %v from the tab's edge, less than %v", first-l.Offset, c.pitch)
		}
		n := float64(c.stitches)
		row := 1.05*2*((n+4)*c.pitch.MM()+(n+5)*6) + 300
		within(t, "thread of the loop", l.Thread, float64(c.rows)*row, 1e-9)
		within(t, "first row below the mouth", l.Start-l.RowX[0], 12, 1e-9)
	}
}

// With a mouth that rises the tab starts where the mouth stands at its middle, relief
// holes where it stands at theirs.
func TestTabOnARisingMouth(t *testing.T) {
	in := bar()
	in.Sheath.MouthRise = 16
	p := mustPlan(t, in)
	wide := p.Body.MouthCut
	at := func(y float64) float64 { return 120 + 16*(1+math.Cos(math.Pi*y/wide))/2 }
	within(t, "tab begins", p.Loop.Start, at(p.Loop.Offset+10), 1e-9)
	within(t, "near relief hole", p.Loop.Relief[0].Centre.X, at(p.Loop.Offset-1.5), 1e-9)
	within(t, "far relief hole", p.Loop.Relief[1].Centre.X, at(p.Loop.Offset+21.5), 1e-9)
	within(t, "highest leather", p.Body.Length, 120+16+10, 1e-9)
	within(t, "mouth at the seam", p.Flat.Mouth[len(p.Flat.Mouth)-1].X, 120, 1e-6)
	within(t, "mouth at the fold", p.Flat.Mouth[0].X, 136, 1e-9)
	_, hi := p.Flat.Outline.Bounds()
	within(t, "top of the tab", hi.X, p.Loop.Start+p.Body.TabLength, 1e-9)
}

// The moulding grips behind a guard that is more to pass than what stands at the mouth,
// by more than half a millimetre: a slab of 6 at the mouth, a guard of 6.5 before it.
func TestWhatTheMouldingGrips(t *testing.T) {
	for guard, want := range map[length.Length]string{6.499: "room to form", 6.501: "the moulding grips it", 5: "room to form", 12: "the moulding grips it"} {
		in := bar()
		st := func(x, thick length.Length, k knife.Kind) knife.Station {
			return knife.Station{At: x, Bottom: 30, Thick: thick, Kind: k, Bevel: 1}
		}
		in.Knife.Stations = []knife.Station{st(0, 4, knife.Blade), st(60, 4, knife.Blade), st(60, guard, knife.Slab), st(66, guard, knife.Slab),
			st(66, 6, knife.Slab), st(110, 6, knife.Slab), st(190, 14, knife.Slab), st(230, 14, knife.Slab)}
		in.Sheath.Mouth = 100
		if got := mustPlan(t, in).Held(); got != want {
			t.Errorf("behind a guard of %v: %q, want %q", guard, got, want)
		}
		in.Sheath.Mouth = 195 // past the swell
		in.Limits.HandleLeft = 10
		if got := mustPlan(t, in).Held(); got != "the moulding grips it" {
			t.Errorf("past the swell: %q", got)
		}
	}
	if got := mustPlan(t, bar()).Held(); got != "room to form" {
		t.Errorf("a bar: %q", got)
	}
}

// Squeeze, gather and thread guard stand in every plan, each of the others once; places
// and values are numbers, and the levels have words.
func TestEveryPlanHasItsChecks(t *testing.T) {
	planned(t, 9, 15, func(in Input, p *Plan) {
		seen := map[string]int{}
		for _, c := range p.Checks {
			seen[c.Name]++
		}
		for _, name := range []string{"squeeze", "gather", "thread guard", "edge", "hollow", "fold", "thread length", "back", "mouth"} {
			if seen[name] != 1 {
				t.Errorf("%s stands %d times in the plan", name, seen[name])
			}
		}
		loop := in.Belt.Loop == FoldedLoop
		if (seen["tab"] == 1) != loop || (seen["loop rub"] == 1) != loop || seen["thickness"] == 0 {
			t.Errorf("loop %v: %v", loop, seen)
		}
	})
}

// The back is looked at from a quarter of the mouth on: a hollow of 2 at 27 of 120 counts
// nowhere, one at 34 is named there.
func TestBackFromAQuarterOn(t *testing.T) {
	for _, c := range []struct {
		from, at, to length.Length
		level        Level
	}{{24, 27, 29.9, OK}, {30, 34, 38, Note}, {100, 104, 110, Note}} {
		in := bar()
		st := func(x, top length.Length) knife.Station {
			return knife.Station{At: x, Top: top, Bottom: 30, Thick: 4, Kind: knife.Blade, Bevel: 1}
		}
		in.Knife.Stations = []knife.Station{st(0, 0), st(c.from, 0), st(c.at, 2), st(c.to, 0), st(160, 0)}
		got := checkNamed(t, mustPlan(t, in), "back")
		if got.Level != c.level || c.level == Note && (math.Abs(got.At-c.at.MM()) > 1e-6 || math.Abs(got.Value-2) > 1e-9) {
			t.Errorf("a hollow of 2 at %v: %v, %v at %v", c.at, got.Level, got.Value, got.At)
		}
	}
}
