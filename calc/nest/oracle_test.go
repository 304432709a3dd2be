package nest

import (
	"context"
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"chape/calc/curve"
	"github.com/peterstace/simplefeatures/geom"
)

var many = flag.Int("nest.random", 12, "how many random tasks are checked against the geometry library")

// polygon is an outline as the geometry library holds it, which the search
// itself does not use.
func polygon(l curve.Line) geom.Geometry {
	var xy []float64
	for _, p := range append(append(curve.Line{}, l...), l[0]) {
		xy = append(xy, p.X, p.Y)
	}
	ring := geom.NewLineString(geom.NewSequence(xy, geom.DimXY))
	return geom.NewPolygon([]geom.LineString{ring}).AsGeometry()
}

// What touches may come out as overlapping by a rounding error: a tenth of a
// micrometre along half a metre.
const (
	overlapTol = 1e-4 * 500 // mm²
	gapTol     = 1e-6       // mm
)

// check asks the library whether a placing is what the task asked for.
func check(t *testing.T, name string, k Task, r Result) {
	t.Helper()
	seen := map[[2]int]bool{}
	laid := make([]geom.Geometry, len(r.Placements))
	for i, p := range r.Placements {
		seen[[2]int{p.Part, p.Copy}] = true
		part, piece := k.Parts[p.Part], k.Pieces[p.Piece]
		if math.Abs(part.Thickness-piece.Thickness) > 0.051 {
			t.Errorf("%s: part of %v mm on leather of %v mm", name, part.Thickness, piece.Thickness)
		}
		if p.Turned && part.Kind != Welt {
			t.Errorf("%s: %s is turned over", name, part.Name)
		}
		if part.Along && piece.Fixed && offGrain(p.Angle-piece.Grain) > piece.Within+1e-9 {
			t.Errorf("%s: %s lies at %.3f, the grain at %.3f within %.3f", name, part.Name, p.Angle, piece.Grain, piece.Within)
		}
		laid[i] = polygon(p.Put(part.Outline))
		checkOnPiece(t, name, laid[i], piece)
		for j := range i {
			if r.Placements[j].Piece == p.Piece {
				checkApart(t, name, laid[i], laid[j], k.Gap)
			}
		}
	}
	for _, m := range r.Missing {
		for c := range k.Parts[m.Part].Count {
			if !seen[[2]int{m.Part, c}] && m.Count > 0 {
				seen[[2]int{m.Part, c}] = true
				m.Count--
			}
		}
	}
	for i, p := range k.Parts {
		for c := range p.Count {
			if !seen[[2]int{i, c}] {
				t.Errorf("%s: copy %d of %s is neither placed nor missing", name, c, p.Name)
			}
		}
	}
	checkUses(t, name, k, r, laid)
}

// offGrain is the angle between two directions without regard to their ends.
func offGrain(a float64) float64 { return math.Abs(math.Remainder(a, math.Pi)) }

func checkOnPiece(t *testing.T, name string, part geom.Geometry, piece Piece) {
	t.Helper()
	if out, err := geom.Difference(part, polygon(piece.Outline)); err != nil || out.Area() > overlapTol {
		t.Errorf("%s: a part lies %.4f mm² outside (%v)", name, out.Area(), err)
	}
	for _, f := range piece.Flaws {
		if in, err := geom.Intersection(part, polygon(f)); err != nil || in.Area() > overlapTol {
			t.Errorf("%s: a part lies %.4f mm² on a flaw (%v)", name, in.Area(), err)
		}
	}
}

func checkApart(t *testing.T, name string, a, b geom.Geometry, gap float64) {
	t.Helper()
	if d, ok := geom.Distance(a, b); !ok || d < gap-gapTol {
		t.Errorf("%s: two parts are %.6f mm apart, the gap is %v", name, d, gap)
	}
	if in, err := geom.Intersection(a, b); err != nil || in.Area() > overlapTol {
		t.Errorf("%s: two parts overlap by %.4f mm² (%v)", name, in.Area(), err)
	}
}

func checkUses(t *testing.T, name string, k Task, r Result, laid []geom.Geometry) {
	t.Helper()
	for _, u := range r.Uses {
		var all []geom.Geometry
		sum := 0.0
		for i, p := range r.Placements {
			if p.Piece == u.Piece {
				all = append(all, laid[i])
				sum += laid[i].Area()
			}
		}
		box := geom.NewGeometryCollection(all).AsGeometry().Envelope()
		if w, h := box.Width(), box.Height(); math.Abs(w*h-u.Rectangle()) > 1e-6*w*h {
			t.Errorf("%s: the rectangle is %.3f × %.3f, said to be %.3f mm²", name, w, h, u.Rectangle())
		}
		if math.Abs(sum-u.Parts) > 1e-6*sum {
			t.Errorf("%s: the parts have %.3f mm², said to be %.3f", name, sum, u.Parts)
		}
		leather := polygon(k.Pieces[u.Piece].Outline).Area()
		for _, f := range k.Pieces[u.Piece].Flaws {
			leather -= polygon(f).Area()
		}
		if math.Abs(leather-u.Leather) > 1e-6*leather {
			t.Errorf("%s: the leather has %.3f mm², said to be %.3f", name, leather, u.Leather)
		}
	}
}

// randomShape is a part of the dimensions that occur on sheaths.
func randomShape(r *rand.Rand) (taskShape, Kind) {
	u := func(lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }
	s := taskShape{Count: 1 + r.IntN(2), Length: u(80, 220), Half: u(30, 66), Point: u(0.45, 0.8)}
	switch r.IntN(4) {
	case 0:
		s.Shape, s.Swell = "body", u(0, 8)
		if r.IntN(4) > 0 {
			s.Tab, s.TabLength, s.Offset = u(18, 28), u(70, 120), u(1, 5)
		}
		return s, Body
	case 1:
		s.Shape, s.Width = "welt", u(9, 13)
		return s, Welt
	case 2:
		s.Shape, s.Width = "strap", u(14, 24)
		return s, Strap
	}
	s.Shape, s.Width = "plain", u(15, 80)
	return s, Added
}

// randomPiece is a rectangle, or an offcut with corners all round a middle, and
// flaws on it.
func randomPiece(r *rand.Rand) Piece {
	p := Piece{Thickness: 3, Outline: Rect(150+450*r.Float64(), 120+300*r.Float64())}
	if r.IntN(2) == 0 {
		n := 5 + r.IntN(6)
		p.Outline = nil
		for i := range n {
			sin, cos := math.Sincos(2 * math.Pi * (float64(i) + 0.6*r.Float64()) / float64(n))
			far := 140 + 200*r.Float64()
			p.Outline = append(p.Outline, curve.Vec{X: 50 + far*cos, Y: -30 + far*sin})
		}
	}
	lo, hi := p.Outline.Bounds()
	for range r.IntN(3) {
		at := curve.Vec{X: lo.X + (hi.X-lo.X)*r.Float64(), Y: lo.Y + (hi.Y-lo.Y)*r.Float64()}
		flaw := Round(at, 4+16*r.Float64())
		if in, _ := geom.Difference(polygon(flaw), polygon(p.Outline)); in.Area() == 0 && len(p.Flaws) == 0 {
			p.Flaws = append(p.Flaws, flaw)
		}
	}
	p.Fixed, p.Grain, p.Within = r.IntN(2) == 0, 3*r.Float64(), 0.5*r.Float64()
	return p
}

func randomTask(seed uint64) Task {
	r := rand.New(rand.NewPCG(seed, 2))
	k := Task{Gap: float64(r.IntN(4))}
	for range 1 + r.IntN(3) {
		k.Pieces = append(k.Pieces, randomPiece(r))
	}
	if r.IntN(3) == 0 {
		k.Pieces[0].Thickness = 2.4
	}
	for range 2 + r.IntN(4) {
		s, kind := randomShape(r)
		p := Part{Name: s.Shape, Kind: kind, Outline: s.outline(), Count: s.Count, Thickness: 3, Along: kind == Body || kind == Strap}
		if r.IntN(6) == 0 {
			p.Thickness = []float64{2.4, 5}[r.IntN(2)]
		}
		k.Parts = append(k.Parts, p)
	}
	return k
}

// Hundreds of them with -nest.random 500.
func TestPlacingsAgainstLibrary(t *testing.T) {
	few := func(int) int { return 0 } // the fewest tries
	missing, placed := 0, 0
	for seed := range uint64(*many) {
		k := randomTask(seed)
		if err := k.Validate(); err != nil {
			t.Fatalf("task %d: %v", seed, err)
		}
		r := place(context.Background(), k, few, nil)
		check(t, fmt.Sprint("task ", seed), k, r)
		placed += len(r.Placements)
		missing += len(r.Missing)
	}
	t.Logf("%d parts placed, %d kinds missing", placed, missing)
	if placed < 2**many {
		t.Errorf("only %d parts were placed in %d tasks: nothing is checked", placed, *many)
	}
}
