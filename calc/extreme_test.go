package calc

import (
	"math/rand/v2"
	"testing"

	"chape/calc/curve"
	"chape/calc/knife"
	"chape/calc/length"
)

// extremeInput takes each number from the ends of what a project file may
// hold, or from anywhere in between: no thickness, no bevel, no depth, a mouth
// of a millimetre or the whole knife, a tab wider than the sheath.
func extremeInput(rng *rand.Rand) Input {
	pick := func(lo, hi float64, usual ...float64) length.Length {
		switch n := rng.IntN(4 + len(usual)); {
		case n == 0:
			return length.Length(lo)
		case n == 1:
			return length.Length(hi)
		case n < 4:
			return length.Length(lo + (hi-lo)*rng.Float64())
		default:
			return length.Length(usual[n-4])
		}
	}
	in := bar()
	in.Knife = extremeKnife(rng, pick)
	end := in.Knife.Length().MM()
	in.Sheath = Sheath{
		Mouth: pick(min(1, end), end, end/2, end/3), Leather: pick(0.5, 10, 3), Welt: pick(0.5, 30, 3), Plies: 1 + rng.IntN(10),
		Clearance: pick(0, 50, 3, 3), Margin: pick(0, 50, 5, 5), Sanding: pick(0, 20, 1, 1), Ease: pick(-10, 30, 0, 0, -3),
		Neutral: pick(0, 1, 0.5).MM(), MouthRound: pick(0, 200, 6), MouthRise: pick(0, 200, 10), Drain: pick(0, 20),
	}
	sh := &in.Sheath
	sh.HandleClearance, sh.PointRoom = pick(0, sh.Clearance.MM(), 0), pick(0, 30, 3)
	sh.Gap = sh.Clearance + pick(1e-6, 100-sh.Clearance.MM(), 4, 4)
	sh.Blend = sh.Margin + sh.Sanding + pick(1e-6, 900, 5, 50)
	in.Belt = Belt{Loop: LoopKind(rng.IntN(2)), Width: pick(5, 150, 40), Thickness: pick(0.5, 20, 4), Ease: pick(0, 50),
		Tab: pick(5, 300, 30), Row: pick(0, 200, 12), Lap: pick(0, 200, 20), Offset: pick(0, 500, 8), Centred: rng.IntN(2) == 0}
	in.Stitch = Stitch{Pitch: pick(1, 50, 4), Thread: pick(1e-3, 5, 0.8), Needle: pick(1e-3, 10, 1.2), NeedleSet: rng.IntN(2) == 0,
		First: pick(0, 200, 4, 4, 4), Last: pick(0, 200, 4, 4, 4), Back: rng.IntN(21), Tail: pick(0, 2000), Waste: pick(0, 2).MM(),
		Measured: pick(0, 5000, 0, 0, 200)}
	for range rng.IntN(4) {
		in.Fits = append(in.Fits, Fit{At: pick(-200, 2000, end/2), By: pick(-10, 10, 1), Reach: pick(1e-3, 2000, 20)})
	}
	return in
}

func extremeKnife(rng *rand.Rand, pick func(lo, hi float64, usual ...float64) length.Length) knife.Knife {
	var k knife.Knife
	scale := []float64{10, 60, 400}[rng.IntN(3)]
	x := length.Length(0)
	for range 1 + rng.IntN(4) {
		for i := range 2 + rng.IntN(4) {
			if i > 0 {
				x += pick(0.05, scale, scale/3)
			}
			top := pick(0, 300, 0, 0, 1)
			k.Stations = append(k.Stations, knife.Station{At: x, Top: top, Bottom: top + pick(0, 200, 25, 25, 30),
				Thick: pick(0, 100, 3, 3, 15), Kind: knife.Kinds[rng.IntN(3)], Bevel: pick(0, 1).MM(), Round: pick(0, 100, 2)})
		}
	}
	k.Back = knife.Back(rng.IntN(2))
	return k
}

// FuzzExtremes: the ends of all ranges give a plan or a line of refusal.
func FuzzExtremes(f *testing.F) {
	f.Add(uint64(1), uint64(2))
	f.Fuzz(func(t *testing.T, a, b uint64) { tryExtreme(t, a, b) })
}

// mostSamples bounds what any plan may take: the time grows with the samples.
const mostSamples = 20000

func tryExtreme(t *testing.T, a, b uint64) (planned bool) {
	in := extremeInput(rand.New(rand.NewPCG(a, b)))
	p, err := Compute(in)
	if err != nil {
		return false
	}
	checkSane(t, p)
	if n := len(p.at.cut.X); n > mostSamples {
		t.Errorf("%d samples for a plan of %+v", n, in)
	}
	return true
}

func TestExtremesAreSane(t *testing.T) {
	planned := 0
	for n := range uint64(90) {
		if tryExtreme(t, 3, n) {
			planned++
		}
	}
	if planned < 30 {
		t.Errorf("only %d of 90 could be planned: the test has no teeth", planned)
	}
}

// TestOutlinesAreSimple: on believable knives nothing that is cut crosses
// itself.
func TestOutlinesAreSimple(t *testing.T) {
	rng := rand.New(rand.NewPCG(12, 13))
	ins := []Input{bar(), orchard()}
	for range 6 {
		in := believable(rng)
		in.Sheath.MouthRound = length.Length(3 * rng.IntN(4))
		ins = append(ins, in)
	}
	for i, in := range ins {
		p := mustPlan(t, in)
		for what, l := range map[string]curve.Line{"body": p.Flat.Outline, "half": p.Flat.Front, "welt": p.Welt.Outline} {
			if a, b, found := crossing(l); found {
				t.Errorf("knife %d: the outline of the %s crosses itself at %v and %v", i, what, l[a], l[b])
			}
		}
		if area := p.Flat.Outline.Area(); area*p.Flat.Front.Area() < 0 {
			t.Errorf("knife %d: body and half run round different ways", i)
		}
	}
}

// crossing looks for two pieces of the closed polyline that cross, every
// piece against every other.
func crossing(l curve.Line) (i, j int, found bool) {
	n := len(l)
	side := func(a, b, c curve.Vec) float64 { return (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X) }
	for i := range l {
		a, b := l[i], l[(i+1)%n]
		for j := i + 2; j < n && (i > 0 || j < n-1); j++ {
			c, d := l[j], l[(j+1)%n]
			if max(a.X, b.X) < min(c.X, d.X) || max(c.X, d.X) < min(a.X, b.X) {
				continue
			}
			if side(a, b, c)*side(a, b, d) < -1e-15 && side(c, d, a)*side(c, d, b) < -1e-15 {
				return i, j, true
			}
		}
	}
	return 0, 0, false
}
