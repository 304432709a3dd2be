package pdf

import (
	"math"
	"testing"
	"time"

	"chape/calc/curve"
	"chape/project/print/printtest"
	"chape/project/print/sheet"
)

// fine is what the bytes can say: coordinates have hundredths of a point, 0.0035 mm.
const fine = 0.004

// written is the pages of drawings on paper, read back from the bytes.
func written(t *testing.T, paper sheet.Paper, c sheet.Correction, drawings ...sheet.Drawing) []printtest.Page {
	t.Helper()
	d := Document{Paper: paper, Correction: c, Date: time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC), Title: "T"}
	for _, q := range drawings {
		d.Pages = append(d.Pages, sheet.Page{Drawing: q})
	}
	data, err := d.Bytes(true)
	if err != nil {
		t.Fatal(err)
	}
	pages := printtest.Read(t, data)
	if len(pages) != len(drawings) {
		t.Fatalf("%d pages are %d in the file", len(drawings), len(pages))
	}
	return pages
}

func near(a, b curve.Vec) bool { return a.Dist(b) <= 1.5*fine }

// A point is 1/72 in (ISO 32000-1, 8.3.2.3), an inch 25.4 mm: what is 80 mm long in a drawing
// is 80 mm long in the bytes, 8 mm in from the paper's edge, on paper of ISO 216 and in inches.
func TestTrueSize(t *testing.T) {
	for _, paper := range sheet.Papers {
		var d sheet.Drawing
		d.Line(sheet.CutLayer, sheet.Wide, curve.Vec{X: 10, Y: 20}, curve.Vec{X: 90, Y: 20}, curve.Vec{X: 90, Y: 120})
		p := written(t, paper, sheet.Correction{}, d)[0]
		if math.Abs(p.Width-paper.Width) > fine || math.Abs(p.Height-paper.Height) > fine {
			t.Errorf("%s is %.3f x %.3f mm in the file", paper.Name, p.Width, p.Height)
		}
		if len(p.Paths) != 1 || p.Paths[0].Layer != sheet.CutLayer || p.Paths[0].Closed {
			t.Fatalf("%s: %+v", paper.Name, p.Paths)
		}
		got := p.Paths[0].Pts
		for i, want := range []curve.Vec{{X: 18, Y: 28}, {X: 98, Y: 28}, {X: 98, Y: 128}} {
			if !near(got[i], want) {
				t.Errorf("%s: corner %d stands at %v, want %v", paper.Name, i, got[i], want)
			}
		}
		if across, along := got[0].Dist(got[1]), got[1].Dist(got[2]); math.Abs(across-80) > 2*fine || math.Abs(along-100) > 2*fine {
			t.Errorf("%s: %.3f and %.3f mm long, want 80 and 100", paper.Name, across, along)
		}
	}
}

// A printer that gives 98.5 mm for 100 across and 101.2 along gives true lengths of what is
// stretched by 100/98.5 and 100/101.2, about the middle of the paper; a circle becomes an
// ellipse in the file and is round on paper.
func TestCorrectedAboutTheMiddle(t *testing.T) {
	c := sheet.Correction{X: 98.5, Y: 101.2}
	paper := sheet.Papers[0]
	w, h := paper.Area(c)
	var d sheet.Drawing
	d.Line(sheet.CutLayer, sheet.Wide, curve.Vec{}, curve.Vec{X: w, Y: h})
	d.Circle(sheet.Circle{Layer: sheet.HoleLayer, Stroke: sheet.Hair, At: curve.Vec{X: w / 2, Y: h / 2}, Radius: 30})
	p := written(t, paper, c, d)[0]
	mid := curve.Vec{X: paper.Width / 2, Y: paper.Height / 2}
	onPaper := func(v curve.Vec) curve.Vec { // what that printer makes of a place
		return curve.Vec{X: (v.X - mid.X) * 0.985, Y: (v.Y - mid.Y) * 1.012}
	}
	var line, ring printtest.Path
	for _, q := range p.Paths {
		if q.Curved {
			ring = q
		} else {
			line = q
		}
	}
	a, b := onPaper(line.Pts[0]), onPaper(line.Pts[1])
	if !near(a, b.Mul(-1)) || math.Abs(b.X-a.X-w) > 3*fine || math.Abs(b.Y-a.Y-h) > 3*fine {
		t.Errorf("on paper the diagonal runs from %v to %v about the middle, want %.3f by %.3f mm", a, b, w, h)
	}
	if lo, hi := line.Pts.Bounds(); lo.X < 8-fine || lo.Y < 8-fine || hi.X > paper.Width-8+fine || hi.Y > paper.Height-8+fine {
		t.Errorf("in the file it runs from %v to %v, nearer than 8 mm to the edge", lo, hi)
	}
	for _, v := range ring.Pts {
		if r := onPaper(v).Norm(); math.Abs(r-30) > 2*fine {
			t.Errorf("a circle of 30 mm is %.3f mm from its middle at %v", r, v)
		}
	}
	if len(ring.Pts) < 5 {
		t.Errorf("the circle has %d places", len(ring.Pts))
	}
}

// Each line has its own width and dashes, whatever was drawn before it, on the first page
// and on the second; a piece of a dashed line goes on where the piece before it ended.
func TestStrokesAsDrawn(t *testing.T) {
	strokes := []sheet.Stroke{sheet.Wide, sheet.Dashed, sheet.Thin, sheet.DashDot, sheet.Dotted, sheet.Dotted, sheet.Hair, sheet.Wide, sheet.Dashed}
	from := []float64{0, 7, 0, 100, 0.5, 0, 3, 0, 0}
	var d sheet.Drawing
	for i, s := range strokes {
		y := float64(10 * i)
		d.Path(sheet.Path{Layer: sheet.MarkLayer, Stroke: s, From: from[i], Pts: curve.Line{{Y: y}, {X: 50, Y: y}}})
	}
	for n, p := range written(t, sheet.Papers[0], sheet.Correction{}, d, d) {
		if len(p.Paths) != len(strokes) {
			t.Fatalf("page %d: %d lines of %d", n+1, len(p.Paths), len(strokes))
		}
		for i, want := range strokes {
			got, sum := p.Paths[i], 0.0
			same := len(got.Dashes) == len(want.Dashes) && math.Abs(got.Width-want.Width) <= fine
			for k := range want.Dashes {
				sum += want.Dashes[k]
				same = same && math.Abs(got.Dashes[k]-want.Dashes[k]) <= fine
			}
			phase := 0.0
			if sum > 0 {
				phase = math.Mod(from[i], sum)
			}
			if !same || sum > 0 && math.Abs(got.Phase-phase) > fine {
				t.Errorf("page %d, line %d is %.3f wide, dashes %.3f from %.3f; want %+v from %.3f", n+1, i, got.Width, got.Dashes, got.Phase, want, phase)
			}
		}
	}
}

// A closed path is closed, one of a single place is nothing, and filled ones have no line:
// black, with white spots that lie over it and black ones over those.
func TestFilled(t *testing.T) {
	var d sheet.Drawing
	box := sheet.Box{Hi: curve.Vec{X: 20, Y: 10}}
	d.Path(sheet.Path{Layer: sheet.CutLayer, Stroke: sheet.Wide, Closed: true, Pts: box.Corners()})
	d.Path(sheet.Path{Layer: sheet.CutLayer, Stroke: sheet.Wide, Pts: curve.Line{{X: 3}}})
	d.Path(sheet.Path{Layer: sheet.RegisterLayer, Ink: sheet.Black, Closed: true, Pts: box.Corners()})
	at := curve.Vec{X: 10, Y: 5}
	d.Spots = []sheet.Spot{{Layer: sheet.RegisterLayer, At: at, Radius: 4, Ink: sheet.White}, {Layer: sheet.RegisterLayer, At: at, Radius: 2, Ink: sheet.Black}}
	p := written(t, sheet.Papers[0], sheet.Correction{}, d)[0]
	if len(p.Paths) != 1 || !p.Paths[0].Closed || len(p.Paths[0].Pts) != 4 {
		t.Errorf("lines: %+v", p.Paths)
	}
	if len(p.Fills) != 3 {
		t.Fatalf("%d areas, want 3", len(p.Fills))
	}
	for i, grey := range []float64{0, 1, 0} {
		if p.Fills[i].Grey != grey || p.Fills[i].Layer != sheet.RegisterLayer {
			t.Errorf("area %d is %v on %s, want %v", i, p.Fills[i].Grey, p.Fills[i].Layer, grey)
		}
	}
	for i, s := range p.Spots(sheet.RegisterLayer) {
		if want := []float64{4, 2}[i]; math.Abs(s.Radius-want) > fine || !near(s.At, at.Add(curve.Vec{X: 8, Y: 8})) {
			t.Errorf("spot %d of %.3f mm at %v, want %v", i, s.Radius, s.At, want)
		}
	}
}
