package leather

import (
	"context"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"github.com/peterstace/simplefeatures/geom"

	"chape/calc"
	"chape/calc/curve"
	"chape/calc/length"
	"chape/calc/nest"
	"chape/project"
)

// polygon is an outline as the geometry library has it, which the search does not use.
func polygon(l curve.Line) geom.Geometry {
	var xy []float64
	for _, p := range append(append(curve.Line{}, l...), l[0]) {
		xy = append(xy, p.X, p.Y)
	}
	return geom.NewPolygon([]geom.LineString{geom.NewLineString(geom.NewSequence(xy, geom.DimXY))}).AsGeometry()
}

// works are three knives: one with a strap, one with parts of the maker's own.
func works(t *testing.T) []Work {
	t.Helper()
	var out []Work
	for i, title := range []string{"Orchard", "Boning", "Field"} {
		p := project.Defaults()
		p.Title = title
		switch i {
		case 1:
			p.Strap.Kind, p.Strap.Thickness = calc.SnapStrap, p.Sheath.Leather
		case 2:
			p.Added = []project.Part{{Name: "firesteel loop", Count: 2, Length: 80, Width: 25}, {Name: "leaf", Count: 1, Halves: "0 0; 40 15; 80 0"}}
		}
		plan, err := calc.Compute(p.Input(calc.DefaultLimits()))
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, Work{p, plan})
	}
	return out
}

// place is the placing that the search begins with.
func place(t *testing.T, l Laid) Laid {
	t.Helper()
	ctx, stop := context.WithCancel(context.Background())
	stop()
	r, err := nest.Place(ctx, l.Task, nil)
	if err != nil {
		t.Fatal(err)
	}
	l.Result = r
	return l
}

// From the file of the leather to the placing: three knives on an odd offcut with flaws and
// a plain piece, no part outside, none on a flaw, none closer than the gap.
func TestFromFileToPlacing(t *testing.T) {
	s, err := Decode("leather.toml", []byte(strings.Replace(rackOf, `thickness = "8 oz"`, "thickness = 3.2", 1)))
	if err != nil {
		t.Fatal(err)
	}
	s.Pieces[1].Width, s.Pieces[1].Height = 700, 400
	l, err := Ask(s.Gap, s.Pieces, works(t))
	if err != nil {
		t.Fatal(err)
	}
	if n := l.Copies(); n != 10 { // three bodies, three welts, a strap, three parts added
		t.Fatalf("%d parts, want 10", n)
	}
	l = place(t, l)
	if !l.Result.Fits() {
		t.Fatalf("missing %v", l.Missing(length.Millimetres))
	}
	laid := make([]geom.Geometry, len(l.Result.Placements))
	for i, p := range l.Result.Placements {
		laid[i] = polygon(p.Put(l.Task.Parts[p.Part].Outline))
		if out, err := geom.Difference(laid[i], polygon(s.Pieces[p.Piece].Outline())); err != nil || out.Area() > 0.05 {
			t.Errorf("%s lies %.3f mm² outside (%v)", l.Part(p.Part), out.Area(), err)
		}
		for _, f := range s.Pieces[p.Piece].Flaws {
			if d, ok := geom.Distance(laid[i], polygon(f.Outline())); !ok || d < -1e-6 {
				t.Errorf("%s lies on a flaw", l.Part(p.Part))
			}
			if in, err := geom.Intersection(laid[i], polygon(f.Outline())); err != nil || in.Area() > 0.05 {
				t.Errorf("%s lies on a flaw by %.3f mm²", l.Part(p.Part), in.Area())
			}
		}
		for j := range i {
			if l.Result.Placements[j].Piece != p.Piece {
				continue
			}
			if d, _ := geom.Distance(laid[i], laid[j]); d < s.Gap.MM()-1e-6 {
				t.Errorf("%s and %s are %.4f mm apart", l.Part(p.Part), l.Part(l.Result.Placements[j].Part), d)
			}
		}
	}
	if lost := l.Lost(); math.Abs((1+lost)*l.Result.Yield()-1) > 1e-9 {
		t.Errorf("lost %v at a yield of %v", lost, l.Result.Yield())
	}
	checkSaid(t, l)
}

// checkSaid asks that words and JSON say what the placing is.
func checkSaid(t *testing.T, l Laid) {
	t.Helper()
	data, err := l.JSON()
	var said struct {
		Fits       bool
		Placements []struct{ Part, Project string }
	}
	if err != nil || json.Unmarshal(data, &said) != nil || !said.Fits || len(said.Placements) != 10 {
		t.Errorf("JSON %s, %v", data, err)
	}
	if got := l.Verdict(); !strings.HasPrefix(got, "10 parts have their place, yield ") || !strings.HasSuffix(got, "broken off, the best so far") {
		t.Errorf("verdict %q", got)
	}
	p := nest.Placement{At: curve.Vec{X: 110, Y: 60}, Angle: math.Pi / 2}
	q := Laid{Task: nest.Task{Parts: []nest.Part{{Name: "strip", Outline: nest.Rect(80, 20)}},
		Pieces: []nest.Piece{{Outline: curve.Line{{X: 10, Y: 10}, {X: 300, Y: 10}, {X: 300, Y: 300}}}}}, Whose: []string{"x"}, Folds: []curve.Line{nil}}
	// By hand: the middle of the strip runs from (0, 10) to (80, 10); turned by 90° and moved it runs
	// from (100, 60) to (100, 140), counted from (10, 10).
	if got := q.Where(p, length.Millimetres); got != "strip: middle from 90.0, 50.0 to 90.0, 130.0; turned by 90°" {
		t.Errorf("it lies %q", got)
	}
	for angle, want := range map[float64]string{math.Atan2(1, 259.5): "0.2", math.Pi / 2: "90", -math.Pi / 6: "330", 2*math.Pi - 1e-5: "0", 5.5 * math.Pi: "270"} {
		if got := degrees(angle); got != want {
			t.Errorf("%v is %s°, want %s°", angle, got, want)
		}
	}
}

// What has no room, or no piece of its thickness, is said.
func TestMissing(t *testing.T) {
	w := works(t)[:1]
	small := New("small")
	small.Width, small.Height = 300, 40
	l, err := Ask(3, []Leather{small}, w)
	if err != nil {
		t.Fatal(err)
	}
	got := strings.Join(place(t, l).Missing(length.Millimetres), "\n")
	if !strings.Contains(got, "missing: body, no room") {
		t.Errorf("said %q", got)
	}
	small.Thickness = 2
	if l, err = Ask(3, []Leather{small}, w); err != nil {
		t.Fatal(err)
	}
	l = place(t, l)
	if got := l.Missing(length.Inches); l.Verdict() != "nothing fits" || !strings.Contains(got[0], "no piece is 1/8 in thick") {
		t.Errorf("said %q, %q", l.Verdict(), got)
	}
}

// The middle of a right triangle by hand: a third of its sides.
func TestMiddle(t *testing.T) {
	if m := Middle(curve.Line{{X: 3}, {X: 33}, {X: 3, Y: 60}}); m.Dist(curve.Vec{X: 13, Y: 20}) > 1e-9 {
		t.Errorf("middle %v", m)
	}
}

// Two projects of one title are told apart, as two of different titles are.
func TestWhoseAPartIs(t *testing.T) {
	w := works(t)[:2]
	w[1].Project.Title = w[0].Project.Title
	l, err := Ask(3, []Leather{New("shoulder")}, w)
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	for i := range l.Task.Parts {
		if seen[l.Part(i)] {
			t.Errorf("two parts are called %q", l.Part(i))
		}
		seen[l.Part(i)] = true
	}
	if !seen["Orchard: body"] || !seen["Orchard (2): body"] {
		t.Errorf("they are called %v", seen)
	}
}
