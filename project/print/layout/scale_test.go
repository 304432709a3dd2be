package layout

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"chape/calc/curve"
	"chape/calc/nest"
	"chape/project/leather"
	"chape/project/print/letters"
	"chape/project/print/sheet"
	"chape/project/print/svg"
)

// rectangle is a closed outline from the origin.
func rectangle(w, h float64) curve.Line { return curve.Line{{}, {X: w}, {X: w, Y: h}, {Y: h}} }

// byHand is a body with its fold, a welt and a strap placed by hand on a piece so large.
func byHand(wide, high float64) leather.Laid {
	parts := []nest.Part{{Name: "body", Kind: nest.Body, Outline: rectangle(60, 20), Count: 1}, {Name: "welt", Kind: nest.Welt, Outline: rectangle(30, 30), Count: 1},
		{Name: "strap", Kind: nest.Strap, Outline: rectangle(50, 8), Count: 2}}
	return leather.Laid{
		Task: nest.Task{Parts: parts, Gap: 3, Pieces: []nest.Piece{{Name: "shoulder", Outline: rectangle(wide, high), Flaws: []curve.Line{square(curve.Vec{X: 80, Y: 80}, 10)}}}},
		Result: nest.Result{Uses: []nest.Use{{Lo: curve.Vec{X: 10, Y: 10}, Hi: curve.Vec{X: 90, Y: 70}, Parts: 2500}}, Missing: []nest.Missing{{Part: 2, Count: 1}},
			Placements: []nest.Placement{{Part: 0, At: curve.Vec{X: 10, Y: 10}}, {Part: 1, At: curve.Vec{X: 40, Y: 40}}, {Part: 2, At: curve.Vec{X: 90, Y: 20}, Angle: math.Pi / 2}}},
		Whose: []string{"a knife", "a knife", "a knife"}, Folds: []curve.Line{{{Y: 10}, {X: 60, Y: 10}}, nil, nil},
	}
}

// The scale is the largest of 1:4, 1:5, 1:8, 1:10, 1:20 and 1:50 at which the leather has room
// on the paper, it is said, and what is drawn is drawn to it, the lower left corner of the
// leather below and left.
func TestDrawnToTheScaleThatIsSaid(t *testing.T) {
	scales := []float64{4, 5, 8, 10, 20, 50}
	for _, name := range []string{"a4", "letter", "a3", "148x180"} {
		paper, err := sheet.ParsePaper(name)
		if err != nil {
			t.Fatal(err)
		}
		w, h := paper.Area(sheet.Correction{})
		for _, size := range [][2]float64{{100, 100}, {300, 200}, {860, 700}, {1500, 900}, {2400, 1200}, {200, 1100}} {
			l := byHand(size[0], size[1])
			p := job{l, "Orchard knife", Options{Paper: paper}}.piece(l.Result.Uses[0])
			var scale float64
			head := texts(p)
			if _, err := fmt.Sscanf(head, "Parts on shoulder, 1:%f, grain side up", &scale); err != nil || !slices.Contains(scales, scale) {
				t.Fatalf("%s, %v: %q: %v", name, size, strings.SplitN(head, "\n", 2)[0], err)
			}
			at := func(x, y float64) curve.Vec { return curve.Vec{X: side + x/scale, Y: headHigh + (size[1]-y)/scale} }
			for _, want := range []struct {
				layer sheet.Layer
				lo    curve.Vec
				hi    curve.Vec
			}{{sheet.MarkLayer, at(0, size[1]), at(size[0], 0)}, {sheet.CutLayer, at(10, 30), at(70, 10)}, {sheet.WeltLayer, at(40, 70), at(70, 40)},
				{sheet.StrapLayer, at(82, 70), at(90, 20)}, {sheet.FoldLayer, at(10, 20), at(70, 20)}, {sheet.MapLayer, at(10, 70), at(90, 10)}} {
				if !slices.ContainsFunc(p.Drawing.Paths, func(q sheet.Path) bool {
					lo, hi := q.Pts.Bounds()
					return q.Layer == want.layer && q.Closed == (want.layer != sheet.FoldLayer) && lo.Dist(want.lo) < 1e-6 && hi.Dist(want.hi) < 1e-6
				}) {
					t.Errorf("%s, %v: no %s from %v to %v", name, size, want.layer, want.lo, want.hi)
				}
			}
			room := func(s float64) bool {
				return size[0]/s <= w-side-4 && size[1]/s <= h-headHigh-side-12
			}
			if i := slices.Index(scales, scale); !room(scale) || i > 0 && room(scales[i-1]) {
				t.Errorf("%s, %v: 1:%v", name, size, scale)
			}
			if b := p.Drawing.Bounds(); b.Lo.X < 0 || b.Lo.Y < 0 || b.Hi.X > w || b.Hi.Y > h {
				t.Errorf("%s, %v: drawn to %v of %v × %v", name, size, b, w, h)
			}
		}
	}
}

// Each dimension's line is as long on paper as what it says, by the scale: those of the leather
// outside, those of the rectangle used nearer to it; upright ones are read from the right.
func TestDimensions(t *testing.T) {
	l := byHand(300, 200)
	p := job{l, "Orchard knife", Options{Paper: sheet.Papers[0]}}.piece(l.Result.Uses[0])
	for _, want := range []struct {
		says    string
		long    float64
		upright bool
	}{{"300.0", 75, false}, {"80.0", 20, false}, {"200.0", 50, true}, {"60.0", 15, true}} {
		i := slices.IndexFunc(p.Drawing.Texts, func(w sheet.Text) bool { return w.Says == want.says && w.Layer == sheet.ScaleLayer })
		if i < 0 {
			t.Errorf("no dimension of %s", want.says)
			continue
		}
		w := p.Drawing.Texts[i]
		if (w.Angle == math.Pi/2) != want.upright {
			t.Errorf("%s is turned by %v", want.says, w.Angle)
		}
		found := false
		for _, q := range p.Drawing.Paths {
			a, b := q.Pts[0], q.Pts[len(q.Pts)-1]
			mid := a.Add(b).Mul(0.5)
			found = found || q.Layer == sheet.ScaleLayer && math.Abs(a.Dist(b)-want.long) < 1e-6 && mid.Dist(w.At) < 1.5 && (a.X == b.X) == want.upright
		}
		if !found {
			t.Errorf("%s stands at no line of %v mm", want.says, want.long)
		}
	}
}

// The number in a part is that of its line in the list, which says where it lies; what found
// no room is said below.
func TestNumbersAreThoseOfTheList(t *testing.T) {
	l := byHand(300, 200)
	j := job{l, "Orchard knife", Options{Paper: sheet.Papers[0], Date: time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)}}
	p := j.piece(l.Result.Uses[0])
	list := strings.Join(strings.Fields(texts(j.list(l.Result.Uses[0])...)), " ")
	for i, q := range l.On(0) {
		number := fmt.Sprint(i + 1)
		k := slices.IndexFunc(p.Drawing.Texts, func(w sheet.Text) bool { return w.Says == number && w.Bold && w.Size == numbers })
		if k < 0 {
			t.Fatalf("part %s has no number", number)
		}
		mid := leather.Middle(q.Put(l.Task.Parts[q.Part].Outline))
		at := curve.Vec{X: side + mid.X/4, Y: headHigh + (200-mid.Y)/4}
		if w := p.Drawing.Texts[k]; w.At.Dist(at) > 1.5 {
			t.Errorf("number %s stands at %v, the part's middle is %v", number, w.At, at)
		}
		if want := number + " " + letters.Printable(l.Where(q, j.o.Unit)); !strings.Contains(list, want) {
			t.Errorf("the list has no %q: %s", want, list)
		}
	}
	if missing := l.Missing(j.o.Unit); len(missing) != 1 || !strings.Contains(list, "! "+missing[0]) {
		t.Errorf("that %q is not said: %s", missing, list)
	}
	if got := texts(p); !strings.Contains(got, "Orchard knife, 25 November 2026") || !strings.Contains(got, l.Verdict()) {
		t.Errorf("the head says %q", got)
	}
}

// Where the grain counts the list says how it runs and how far folds may lie from it.
func TestGrainIsSaid(t *testing.T) {
	l := byHand(300, 200)
	j := job{l, "x", Options{Paper: sheet.Papers[0]}}
	if got := texts(j.list(l.Result.Uses[0])...); strings.Contains(got, "The grain runs") {
		t.Errorf("where it does not count: %s", got)
	}
	l.Task.Pieces[0].Fixed, l.Task.Pieces[0].Grain, l.Task.Pieces[0].Within = true, math.Pi/6, math.Pi/18
	if got := strings.ReplaceAll(texts(j.list(l.Result.Uses[0])...), "\n", " "); !strings.Contains(got, "The grain runs at 30° to the lower edge; folds lie within 10° of it.") {
		t.Errorf("where it counts: %s", got)
	}
}

// In the file for a cutter each kind of part has the group that it is cut by, at true size and
// the right way up: SVG's y runs down, so what lies up the leather is below 0.
func TestKindsForCutter(t *testing.T) {
	l := byHand(300, 200)
	data := string(SVG(l, l.Result.Uses[0], "T", svg.Look{}))
	for group, path := range map[string]string{"cut": "M10 -10L70 -10L70 -30L10 -30Z", "welt": "M40 -40L70 -40L70 -70L40 -70Z", "strap": "M90 -20L90 -70L82 -70L82 -20Z", "fold": "M10 -20L70 -20"} {
		_, in, there := strings.Cut(data, `<g id="`+group+`"`)
		in, _, _ = strings.Cut(in, "</g>")
		if !there || !strings.Contains(in, path) {
			t.Errorf("%s has no %s:\n%s", group, path, in)
		}
	}
}
