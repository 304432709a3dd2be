// Package compare sets two patterns side by side: half-widths of an earlier sheath
// against the plan, and corrections of one knife carried over to another by their
// landmarks. Figures are mm; x runs from the knife's point.
package compare

import (
	"math"

	"chape/calc"
	"chape/calc/curve"
	"chape/calc/knife"
	"chape/calc/length"
)

// Marks are the places along the fold by which two knives are laid side by
// side, in ascending order; two may be one.
type Marks struct {
	Point   float64
	Deepest float64 // where the blade comes to its full depth
	Front   float64 // of the handle: of bolster or guard, where there is one
	Mouth   float64
}

// nearDeepest is the share of a blade's greatest depth that counts as deepest: on
// a long straight edge the place of the last hair is chance.
const nearDeepest = 0.99

// MarksOf finds the marks of a knife in a sheath with that mouth. Without a
// blade the deepest place is the point, without a handle inside the mouth the
// front is the mouth. The error is that of the knife's marks.
func MarksOf(k knife.Knife, mouth length.Length) (Marks, error) {
	p, err := knife.NewProfile(k)
	if err != nil {
		return Marks{}, err
	}
	m := Marks{Front: mouth.MM(), Mouth: mouth.MM()}
	blade := false
	for _, s := range k.Stations {
		if s.Kind == knife.Blade {
			blade = true
		} else if blade {
			m.Front = min(m.Front, s.At.MM())
			break
		}
	}
	m.Deepest = deepest(p, m.Front)
	return m, nil
}

// deepest is where the blade first comes near its greatest depth before the
// handle.
func deepest(p *knife.Profile, front float64) float64 {
	const step = 0.25
	var xs, depths []float64
	var buf []knife.Section
	most := 0.0
	for x := 0.0; x <= min(front, p.Length()); x += step {
		buf = p.Sections(buf[:0], x)
		for _, s := range buf {
			if s.Kind == knife.Blade {
				xs, depths = append(xs, x), append(depths, s.Bottom-s.Top)
				most = max(most, s.Bottom-s.Top)
			}
		}
	}
	for i, d := range depths {
		if d >= nearDeepest*most {
			return xs[i]
		}
	}
	return 0
}

func (m Marks) list() [4]float64 { return [4]float64{m.Point, m.Deepest, m.Front, m.Mouth} }

// Map carries a place of one knife to another: marks onto marks, what lies between
// in proportion, what lies outside at its distance from point or mouth.
func Map(x float64, from, to Marks) float64 {
	a, b := from.list(), to.list()
	if x <= a[0] {
		return b[0] + x - a[0]
	}
	for i := 1; i < len(a); i++ {
		if x <= a[i] && a[i] > a[i-1] {
			return b[i-1] + (x-a[i-1])/(a[i]-a[i-1])*(b[i]-b[i-1])
		}
	}
	return b[3] + x - a[3]
}

// leastReach keeps a correction carried into no room from becoming a spike, mm.
const leastReach = 5

// Carry carries a correction over: its place and, by how the stretch it reaches
// over grows or shrinks, its reach. Its height stays.
func Carry(f calc.Fit, from, to Marks) calc.Fit {
	at, reach := f.At.MM(), f.Reach.MM()
	wide := Map(at+reach, from, to) - Map(at-reach, from, to)
	return calc.Fit{
		At:    length.Length(Map(at, from, to)),
		By:    f.By,
		Reach: length.Length(math.Max(leastReach, wide/2)),
	}
}

// CarryCurve carries a curve over x over. Where the marks leave a stretch no room
// only its last place stays.
func CarryCurve(g curve.Graph, from, to Marks) curve.Graph {
	var out curve.Graph
	for i, x := range g.X {
		at := Map(x, from, to)
		if n := len(out.X); n > 0 && at <= out.X[n-1] {
			out.Y[n-1] = g.Y[i]
			continue
		}
		out.X, out.Y = append(out.X, at), append(out.Y, g.Y[i])
	}
	return out
}
