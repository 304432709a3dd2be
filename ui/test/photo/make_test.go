package photo

import (
	"context"
	"errors"
	"flag"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"chape/calc/curve"
	"chape/calc/knife"
	"chape/calc/trace"
	"chape/project/picture"
	"chape/project/picture/phototest"
	"chape/project/print/tracing"
)

var take = flag.Bool("take", false, "take the pictures anew")

// outline goes round the knife, mm from the point and from its rule.
func outline(t *testing.T) curve.Line {
	prof, err := knife.NewProfile(Knife)
	if err != nil {
		t.Fatal(err)
	}
	var back, edge curve.Line
	for x := 0.0; x <= Knife.Length().MM(); x += 0.25 {
		for _, s := range prof.Sections(nil, x) {
			back, edge = append(back, curve.Vec{X: x, Y: s.Top}), append(edge, curve.Vec{X: x, Y: s.Bottom})
		}
	}
	return append(back, edge.Reverse()...)
}

// onPaper lays the knife on the sheet, a little askew: mm from the paper's upper left.
func onPaper(x, y float64) curve.Vec {
	s, c := math.Sincos(1.5)
	return curve.Vec{X: 118 + c*x - s*y, Y: 44 + s*x + c*y}
}

// photograph draws the tracing, with gaps in its line, and takes the picture.
func photograph(t *testing.T, gaps ...[2]float64) []byte {
	pdf, err := tracing.PDF(tracing.Options{})
	if err != nil {
		t.Fatal(err)
	}
	p, err := phototest.Read(pdf, 5)
	if err != nil {
		t.Fatal(err)
	}
	pen := phototest.Pencil{Width: 0.6, Dark: 0.75, Rand: rand.New(rand.NewPCG(5, 5))}
	line := outline(t)
	for i, v := range line {
		line[i] = onPaper(v.X, v.Y)
	}
	p.Trace(line, pen, gaps...)
	for _, x := range []float64{95, 109} {
		p.Stroke(onPaper(x, 0), onPaper(x, -5.5), pen)
		p.Stroke(onPaper(x, 27), onPaper(x, 32.5), pen)
	}
	return phototest.JPEG(p, phototest.Camera{Width: 1200, Height: 1600, Fill: 0.92, Tilt: 0.15, Toward: 1, Turn: 0.03, Bulge: 0.02,
		Fall: 0.8, Blur: 0.6, Noise: 0.01, Quality: 80, Seed: 3})
}

func read(t *testing.T, path string) (trace.Reading, error) {
	p, err := picture.Read(context.Background(), path)
	if err != nil {
		t.Fatal(err)
	}
	return trace.Read(context.Background(), p, trace.Options{})
}

// With -take the pictures are taken anew. Here the open line is read, the other one in the workbench's tests.
func TestPictures(t *testing.T) {
	if *take {
		for name, gaps := range map[string][][2]float64{"traced.jpg": {{170, 171.2}}, "open.jpg": {{130, 136}}} {
			if err := os.WriteFile(filepath.Join("testdata", name), photograph(t, gaps...), 0o666); err != nil {
				t.Fatal(err)
			}
		}
		return
	}
	var no *trace.Refused
	if _, err := read(t, Open(t, t.TempDir(), "b.jpg")); !errors.As(err, &no) || len(no.Seen) < 2 {
		t.Errorf("the open line: %v", err)
	}
}
