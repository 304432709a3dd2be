package curve

import (
	"math"
	"math/rand/v2"
	"testing"
)

// ring is an arc of a circle, in pieces so short that they stray by nanometres.
func ring(r, turn float64) Line {
	const n = 8000
	l := make(Line, n+1)
	for i := range l {
		sin, cos := math.Sincos(turn * float64(i) / n)
		l[i] = Vec{r * cos, r * sin}
	}
	return l
}

// Equal chords on a circle of radius r subtend equal angles: n of them over the angle a
// are 2·r·sin(a/2n) long. Source: handbook table of chords for spacing off a circle, by
// its formula, from memory.
func TestWalkOnCircles(t *testing.T) {
	for _, c := range []struct {
		r, turn, first, last float64
		n                    int
	}{{25, math.Pi, 0, 0, 12}, {60, 2, 4, 4, 20}, {10, 1.5, 3, 5, 1}, {8, 5, 1, 2, 7}, {300, 0.4, 4, 4, 28}} {
		l := ring(c.r, c.turn)
		long := c.r * c.turn
		chord, at := l.Walk(c.first, long-c.last, c.n)
		angle := (long - c.first - c.last) / c.r
		if want := 2 * c.r * math.Sin(angle/float64(2*c.n)); math.Abs(chord-want) > 1e-5 {
			t.Errorf("%d chords over %.3f of a circle of %v: %v, want %v", c.n, angle, c.r, chord, want)
		}
		for i, p := range at {
			if want := c.first + float64(i)*angle*c.r/float64(c.n); math.Abs(p.S-want) > 1e-4 {
				t.Errorf("circle of %v: place %d at %v along it, want %v", c.r, i, p.S, want)
			}
			if d := p.Norm(); math.Abs(d-c.r) > 1e-6*c.r {
				t.Errorf("circle of %v: place %d lies %v from the middle", c.r, i, d)
			}
		}
	}
}

// Round a square corner by hand: a step of √(3² + 4²) = 5 from 3 before it lands 4
// after it.
func TestDividersRoundACorner(t *testing.T) {
	l := Line{{0, 0}, {10, 0}, {10, 20}}
	at := l.Dividers(7, 5, 3)
	for i, want := range []Vec{{7, 0}, {10, 4}, {10, 9}, {10, 14}} {
		if at[i].Dist(want) > 1e-9 {
			t.Errorf("place %d is %v, want %v", i, at[i].Vec, want)
		}
	}
	if at[1].S != 14 || at[1].Seg != 1 || at[0].Seg != 0 {
		t.Errorf("the place past the corner is %+v", at[1])
	}
	// Past its end the line goes on straight.
	if at := l.Dividers(26, 8, 1); at[1].Dist(Vec{10, 24}) > 1e-9 || math.Abs(at[1].S-34) > 1e-9 {
		t.Errorf("past the end the dividers fall on %+v", at[1])
	}
}

// Along gives places by their distance, kept to both ends, also over points that stand
// twice.
func TestAlong(t *testing.T) {
	l := Line{{0, 0}, {3, 4}, {3, 4}, {3, 10}}
	for _, c := range []struct {
		s    float64
		want Vec
		at   float64
	}{{-2, Vec{0, 0}, 0}, {0, Vec{0, 0}, 0}, {2.5, Vec{1.5, 2}, 2.5}, {5, Vec{3, 4}, 5}, {8, Vec{3, 7}, 8}, {11, Vec{3, 10}, 11}, {40, Vec{3, 10}, 11}} {
		if p := l.Along(c.s); p.Dist(c.want) > 1e-12 || math.Abs(p.S-c.at) > 1e-12 {
			t.Errorf("Along(%v) = %v at %v, want %v at %v", c.s, p.Vec, p.S, c.want, c.at)
		}
	}
}

// On lines that bend as seams do: no chord is longer than its arc, more chords are
// shorter ones, the way back gives the same setting, and twice the line twice of it.
func TestWalkOnSeams(t *testing.T) {
	rng := rand.New(rand.NewPCG(13, 7))
	for range 25 {
		var l, twice Line
		steep := rng.NormFloat64() / 2
		for x := 0.0; x <= 150; x += 0.25 {
			v := Vec{x, steep*x + 6*math.Sin(x/20) + 3*math.Sin(x/7+steep)}
			l, twice = append(l, v), append(twice, v.Mul(2))
		}
		long := l.Length()
		n := 20 + rng.IntN(30)
		chord, at := l.Walk(4, long-6, n)
		if mean := (long - 10) / float64(n); chord > mean+1e-12 || chord < 0.9*mean {
			t.Errorf("%d chords of %v where the mean arc is %v", n, chord, mean)
		}
		if math.Abs(at[n].S-(long-6)) > 1e-6 || len(at) != n+1 {
			t.Errorf("the last of %d falls on %v, want %v", len(at), at[n].S, long-6)
		}
		if more, _ := l.Walk(4, long-6, n+1); more >= chord {
			t.Errorf("%d chords are %v, one more %v", n, chord, more)
		}
		if back, _ := l.Reverse().Walk(6, long-4, n); math.Abs(back-chord) > 2e-3 {
			t.Errorf("stepped from the other end the setting is %v, not %v", back, chord)
		}
		if double, _ := twice.Walk(8, 2*long-12, n); math.Abs(double-2*chord) > 1e-8 {
			t.Errorf("on twice the line the setting is %v, not twice %v", double, chord)
		}
	}
}
