package picture

import (
	"bytes"
	"context"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"sync"
	"testing"

	"chape/calc/curve"
	"chape/calc/knife"
	"chape/calc/trace"
	"chape/project/file"
	"chape/project/picture/phototest"
	"chape/project/print/tracing"
)

const perMM = 10 // dots of the paper in the tests: finer than the pictures

// blankPage is the printed A4 sheet as the tests' own reading has it.
var blankPage = sync.OnceValue(func() *phototest.Paper {
	data, err := tracing.PDF(tracing.Options{})
	if err != nil {
		panic(err)
	}
	p, err := phototest.Read(data, perMM)
	if err != nil {
		panic(err)
	}
	return p
})

func page() *phototest.Paper {
	p := *blankPage()
	p.RGB = bytes.Clone(p.RGB)
	return &p
}

// inFrame is the frame's inner corner on the paper, by the sheet's definition.
var inFrame = curve.Vec{X: 13, Y: 13}

// sheath is a file of testdata.
func testKnife(t testing.TB, name string) knife.Knife {
	t.Helper()
	path := filepath.Join("..", "..", "testdata", name)
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	p, _, err := file.Decode(path, data)
	if err != nil {
		t.Fatal(err)
	}
	return p.Knife
}

// drawn is a knife's outline, x along it and y from the back to the edge, with its steps.
type drawn struct {
	line  curve.Line
	steps []float64
	long  float64
}

func outlineOf(t testing.TB, k knife.Knife) drawn {
	t.Helper()
	prof, err := knife.NewProfile(k)
	if err != nil {
		t.Fatal(err)
	}
	d := drawn{long: k.Length().MM()}
	for i := 1; i < len(k.Stations); i++ {
		if s := k.Stations[i]; s.At == k.Stations[i-1].At {
			d.steps = append(d.steps, s.At.MM())
		}
	}
	var back, edge curve.Line
	for i := range int(d.long*4) + 1 {
		x := float64(i) / 4
		for _, s := range prof.Sections(nil, x) {
			back = append(back, curve.Vec{X: x, Y: s.Top})
			edge = append(edge, curve.Vec{X: x, Y: s.Bottom})
		}
	}
	d.line = append(back, edge.Reverse()...)
	return d
}

func place(l curve.Line, at curve.Vec, turn float64) curve.Line {
	sin, cos := math.Sincos(turn)
	out := make(curve.Line, len(l))
	for i, v := range l {
		out[i] = curve.Vec{X: v.X*cos - v.Y*sin, Y: v.X*sin + v.Y*cos}.Add(at)
	}
	return out
}

// drawKnife draws a knife on a page, with strokes at its steps, and gives the true outline on the frame's axes.
func drawKnife(t testing.TB, p *phototest.Paper, d drawn, r *rand.Rand, gaps ...[2]float64) curve.Line {
	t.Helper()
	pen := phototest.Pencil{Width: 0.5 + 0.2*r.Float64(), Dark: 0.6, Rand: r}
	lo, hi := d.line.Bounds()
	room := curve.Vec{X: 175 - (hi.Y - lo.Y) - 30, Y: 265 - (hi.X - lo.X) - 34}
	at := curve.Vec{X: 13 + 15 + hi.Y + max(room.X, 0)*(0.2+0.6*r.Float64()), Y: 13 + 18 + max(room.Y, 0)*r.Float64()}
	turn := math.Pi/2 + 0.06*(r.Float64()-0.5)
	on := place(d.line, at, turn)
	p.Trace(on, pen, gaps...)
	for _, s := range d.steps {
		top, bottom := math.Inf(1), math.Inf(-1)
		for _, v := range d.line {
			if math.Abs(v.X-s) < 0.3 {
				top, bottom = min(top, v.Y), max(bottom, v.Y)
			}
		}
		for _, stroke := range []curve.Line{{{X: s, Y: top}, {X: s, Y: top - 5.5}}, {{X: s, Y: bottom}, {X: s, Y: bottom + 5.5}}} {
			q := place(stroke, at, turn)
			p.Stroke(q[0], q[1], pen)
		}
	}
	return place(on, curve.Vec{X: -inFrame.X, Y: -inFrame.Y}, 0)
}

// small is a plain picture for the suite; hard is one of everything that tracing has to bear.
func small(seed uint64) phototest.Camera {
	return phototest.Camera{Width: 1500, Height: 2000, Fill: 0.8, Seed: seed}
}

func hard(r *rand.Rand, high int, seed uint64) phototest.Camera {
	return phototest.Camera{Width: high * 3 / 4, Height: high, Fill: 0.78, Tilt: 35 * math.Pi / 180 * math.Sqrt(r.Float64()), Toward: 2 * math.Pi * r.Float64(),
		Turn: 0.3 * (r.Float64() - 0.5), Bulge: 0.16*r.Float64() - 0.08, Fall: 0.5, Shadow: 0.5, Blur: 1.5, Noise: 0.03, Wave: 0.15, Seed: seed}
}

// read reads the picture of a page as the program would.
func read2(t testing.TB, p *phototest.Paper, c phototest.Camera, o trace.Options) (trace.Reading, error) {
	t.Helper()
	m, err := Decode(context.Background(), bytes.NewReader(phototest.JPEG(p, c)))
	if err != nil {
		t.Fatalf("Decode: %v", err)
	}
	return trace.Read(context.Background(), m, o)
}

// fault is how far an outline is from the true one: root mean square and worst, further than 2 mm from the true corners of steps.
func fault(got, want curve.Line, corners curve.Line) (rms, worst float64) {
	n := 0
	for _, v := range got {
		if len(corners) > 0 && toPoints(corners, v) < 2 {
			continue
		}
		e := toLine(want, v)
		rms, worst, n = rms+e*e, max(worst, e), n+1
	}
	return math.Sqrt(rms / float64(max(n, 1))), worst
}

func toPoints(l curve.Line, v curve.Vec) float64 {
	least := math.Inf(1)
	for _, p := range l {
		least = min(least, p.Dist(v))
	}
	return least
}

func toLine(l curve.Line, v curve.Vec) float64 {
	least := math.Inf(1)
	for i, a := range l {
		e := l[(i+1)%len(l)].Sub(a)
		t := 0.0
		if q := e.X*e.X + e.Y*e.Y; q > 0 {
			t = min(max(((v.X-a.X)*e.X+(v.Y-a.Y)*e.Y)/q, 0), 1)
		}
		least = min(least, v.Dist(a.Add(e.Mul(t))))
	}
	return least
}
