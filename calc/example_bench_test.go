package calc

import (
	"math/rand/v2"
	"testing"

	"chape/calc/knife"
	"chape/calc/length"
)

// orchard is a knife of our own invention: a drop point, a bolster with two
// faces and a swelling oval handle.
func orchard() Input {
	mark := func(at, top, bottom, thick float64, k knife.Kind) knife.Station {
		return knife.Station{At: length.Length(at), Top: length.Length(top), Bottom: length.Length(bottom),
			Thick: length.Length(thick), Kind: k, Bevel: 1}
	}
	in := bar()
	in.Knife = knife.Knife{Stations: []knife.Station{
		mark(0, 7, 7, 0.8, knife.Blade), mark(10, 4.5, 14, 1.6, knife.Blade), mark(20, 2.8, 19.5, 2.2, knife.Blade),
		mark(45, 0.6, 26, 3, knife.Blade), mark(70, 0, 28, 3.4, knife.Blade), mark(105, 0, 28, 3.8, knife.Blade),
		mark(105, 0, 30, 14, knife.Slab), mark(117, 0, 30, 15, knife.Slab),
		mark(117, 0, 29, 16, knife.Oval), mark(150, 0.5, 33, 21, knife.Oval), mark(190, 1.5, 30, 18, knife.Oval),
		mark(225, 0, 34, 19, knife.Oval),
	}}
	in.Sheath = Sheath{Mouth: 150, Leather: 3.2, Welt: 3.2, Plies: 1, Clearance: 3, HandleClearance: 1, PointRoom: 3, Gap: 7.5, Margin: 5,
		Sanding: 1.5, Blend: 60, Neutral: 0.5, MouthRise: 8, MouthRound: 6}
	in.Belt = Belt{Width: 38, Thickness: 4, Ease: 4, Tab: 30, Row: 12, Lap: 20, Offset: 8}
	in.Fits = []Fit{{At: 108, By: 1.5, Reach: 20}}
	return in
}

func BenchmarkPlan(b *testing.B) {
	in := orchard()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Compute(in); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkPlanTwiceTheSamples(b *testing.B) {
	in := orchard()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := compute(in, spacing/2); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkPlanAtTheExtremes makes plans from the ends of all ranges: knives
// of metres, hundreds of stitches.
func BenchmarkPlanAtTheExtremes(b *testing.B) {
	var ins []Input
	for n := range uint64(50) {
		ins = append(ins, extremeInput(rand.New(rand.NewPCG(3, n))))
	}
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		_, _ = Compute(ins[i%len(ins)]) // many are refused
	}
}

// BenchmarkBruteTwin makes the curves of the same plan by the definitions
// read out, n·w.
func BenchmarkBruteTwin(b *testing.B) {
	in := orchard()
	b.ReportAllocs()
	for b.Loop() {
		bruteCurves(in, spacing)
	}
}
