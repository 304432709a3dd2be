package print

import (
	"math"
	"regexp"
	"strings"
	"testing"

	"chape/calc"
	"chape/calc/curve"
	"chape/project"
	"chape/project/print/printtest"
	"chape/project/print/sheet"
)

// assembly is the sheets of a pattern laid on each other by the register
// marks that were read from the file, as a maker would.
type assembly struct {
	pages []readPage
	moves []curve.Vec // of each page into the first one's place
	cores []sheet.Box // of each page: inside the joint lines
}

var markRE = regexp.MustCompile(`^[A-Z]+[12]$`)

// marks gives the named register marks of a page.
func (p readPage) marks(t *testing.T) map[string]curve.Vec {
	t.Helper()
	out := map[string]curve.Vec{}
	circles := p.Circles(sheet.RegisterLayer)
	for _, w := range p.Texts {
		if w.Layer != sheet.RegisterLayer || !markRE.MatchString(w.Says) {
			continue
		}
		best := math.Inf(1)
		for _, c := range circles {
			if d := c.At.Dist(w.At); d < best {
				best, out[w.Says] = d, c.At
			}
		}
	}
	if len(out) != len(circles) {
		t.Fatalf("%d register marks, but %d names", len(circles), len(out))
	}
	return out
}

// assemble lays the pages out; pages are put together by marks of one name,
// which must agree within 0.1 mm after undoing the correction.
func assemble(t *testing.T, all []readPage, title string, c sheet.Correction) assembly {
	t.Helper()
	var a assembly
	for _, p := range all {
		if len(p.Circles(sheet.ScaleLayer)) > 0 && strings.Contains(oneLine(p.Words()), title) {
			a.pages = append(a.pages, p.printed(c))
		}
	}
	if len(a.pages) == 0 {
		t.Fatalf("no page called %q", title)
	}
	a.moves = make([]curve.Vec, len(a.pages))
	done := map[int]bool{0: true}
	for grew := true; grew; {
		grew = false
		for i := range a.pages {
			for k := range a.pages {
				if !done[i] || done[k] {
					continue
				}
				if d, ok := shift(t, a.pages[i].marks(t), a.pages[k].marks(t)); ok {
					a.moves[k], done[k], grew = a.moves[i].Add(d), true, true
				}
			}
		}
	}
	if len(done) != len(a.pages) {
		t.Fatalf("%d of %d sheets hang together", len(done), len(a.pages))
	}
	for _, p := range a.pages {
		a.cores = append(a.cores, p.core())
	}
	return a
}

// oneLine joins the wrapped name of a sheet.
func oneLine(s string) string { return strings.ReplaceAll(s, "\n", " ") }

// printed is the page as a printer with that error puts it on paper.
func (p readPage) printed(c sheet.Correction) readPage {
	fx, fy := c.Factors()
	at := func(v curve.Vec) curve.Vec {
		return curve.Vec{X: p.Width/2 + (v.X-p.Width/2)/fx, Y: p.Height/2 + (v.Y-p.Height/2)/fy}
	}
	out := readPage{printtest.Page{Width: p.Width, Height: p.Height}}
	for _, q := range p.Paths {
		pts := q.Pts
		q.Pts = nil
		for _, v := range pts {
			q.Pts = append(q.Pts, at(v))
		}
		out.Paths = append(out.Paths, q)
	}
	for _, w := range p.Texts {
		w.At = at(w.At)
		out.Texts = append(out.Texts, w)
	}
	return out
}

// shift is what brings the marks of b onto those of a.
func shift(t *testing.T, a, b map[string]curve.Vec) (curve.Vec, bool) {
	t.Helper()
	var moves []curve.Vec
	for name, v := range a {
		if w, ok := b[name]; ok {
			moves = append(moves, v.Sub(w))
		}
	}
	if len(moves) == 0 {
		return curve.Vec{}, false
	}
	if len(moves) != 2 || moves[0].Dist(moves[1]) > 0.1 {
		t.Errorf("marks of one joint don't lie on each other: %v", moves)
	}
	return moves[0], true
}

// core is the page inside its joint lines.
func (p readPage) core() sheet.Box {
	b := sheet.Box{Lo: curve.Vec{X: math.Inf(-1), Y: math.Inf(-1)}, Hi: curve.Vec{X: math.Inf(1), Y: math.Inf(1)}}
	mid := curve.Vec{X: p.Width / 2, Y: p.Height / 2}
	for _, q := range p.Paths {
		if q.Layer != sheet.RegisterLayer || len(q.Dashes) == 0 {
			continue
		}
		u, v := q.Pts[0], q.Pts[1]
		switch {
		case math.Abs(u.X-v.X) < 0.01 && u.X < mid.X:
			b.Lo.X = u.X
		case math.Abs(u.X-v.X) < 0.01:
			b.Hi.X = u.X
		case u.Y < mid.Y:
			b.Lo.Y = u.Y
		default:
			b.Hi.Y = u.Y
		}
	}
	return b
}

// cut gives the pieces of the cut line inside the joint lines, and all pieces.
func (a assembly) cut() (trimmed, all []curve.Line) { return a.drawn(sheet.CutLayer) }

// drawn gives the pieces of a layer's lines inside the joint lines, and all pieces.
func (a assembly) drawn(layer sheet.Layer) (trimmed, all []curve.Line) {
	for i, p := range a.pages {
		move := func(pts curve.Line, closed bool) curve.Line {
			var out curve.Line
			for _, v := range pts {
				out = append(out, v.Add(a.moves[i]))
			}
			if closed {
				out = append(out, out[0])
			}
			return out
		}
		for _, q := range p.Paths {
			if q.Layer != layer {
				continue
			}
			all = append(all, move(q.Pts, q.Closed))
			for _, piece := range (sheet.Path{Pts: q.Pts, Closed: q.Closed}).Clip(a.cores[i]) {
				trimmed = append(trimmed, move(piece.Pts, piece.Closed))
			}
		}
	}
	return trimmed, all
}

// chain strings pieces together end to end; each gap may be 0.1 mm.
func chain(t *testing.T, pieces []curve.Line) curve.Line {
	t.Helper()
	out := append(curve.Line{}, pieces[0]...)
	left := append([]curve.Line{}, pieces[1:]...)
	turned := false
	for len(left) > 0 {
		best, gap, turn := -1, math.Inf(1), false
		tip := out[len(out)-1]
		for i, l := range left {
			if d := tip.Dist(l[0]); d < gap {
				best, gap, turn = i, d, false
			}
			if d := tip.Dist(l[len(l)-1]); d < gap {
				best, gap, turn = i, d, true
			}
		}
		if gap > 0.1 && !turned { // an open line: go on at its other end
			out, turned = out.Reverse(), true
			continue
		}
		if gap > 0.1 {
			t.Fatalf("the cut line breaks by %.3f mm at %v", gap, tip)
		}
		l := left[best]
		if turn {
			l = l.Reverse()
		}
		out = append(out, l...)
		left = append(left[:best], left[best+1:]...)
	}
	return out
}

// checkPattern holds a printed pattern against its plan.
func checkPattern(t *testing.T, p project.Project, plan *calc.Plan, o Options) {
	t.Helper()
	data, err := PDF(p, plan, o)
	if err != nil {
		t.Fatalf("PDF: %v", err)
	}
	title := "Pattern"
	if o.Half {
		title = "Half pattern"
	}
	a := assemble(t, readPDF(t, data), title, o.Correction)
	trimmed, all := a.cut()
	outline := chain(t, trimmed)

	want := plan.Flat.Outline
	if o.Half {
		want = sheet.AboveFold(want)
	} else if gap := outline[0].Dist(outline[len(outline)-1]); gap > 0.1 {
		t.Errorf("the cut line is open by %.3f mm", gap)
	}
	f := facing{1}
	if !calc.BackIsRight(p.Customer.Hand, p.Customer.Edge, o.Up) {
		f = facing{-1}
	}
	wantArea := math.Abs(want.Area())
	if got := math.Abs(outline.Area()); math.Abs(got/wantArea-1) > 0.001 {
		t.Errorf("cut line encloses %.1f mm², want %.1f", got, wantArea)
	}
	lo, _ := f.line(want).Bounds()
	gotLo, _ := outline.Bounds()
	move := gotLo.Sub(lo) // the plan's place on the first sheet

	// Both sheets of a joint show the overlap: every piece lies on the plan.
	ring := append(f.line(want), f.line(want)[0])
	for _, l := range all {
		for _, v := range l {
			if d := toLine(v.Sub(move), ring); d > 0.06 {
				t.Fatalf("cut line strays %.3f mm at %v", d, v)
			}
		}
	}
	checkHoles(t, a, plan, o, f, move)
}

func checkHoles(t *testing.T, a assembly, plan *calc.Plan, o Options, f facing, move curve.Vec) {
	t.Helper()
	want := append(append(append(curve.Line{}, plan.Stitch.Flat...), plan.Loop.Body...), plan.Loop.Lap...)
	if !o.Half {
		want = append(want, mirrored(plan.Stitch.Flat)...)
	}
	var got curve.Line
	for i, p := range a.pages {
		for _, v := range p.crosses(sheet.HoleLayer) {
			got = append(got, v.Add(a.moves[i]).Sub(move))
		}
	}
	const most = 0.03
	for _, h := range f.line(want) {
		if d := nearest(h, got); d > most {
			t.Errorf("hole %v of the plan is %.3f mm from one on paper", h, d)
		}
	}
	for _, h := range got {
		if d := nearest(h, f.line(want)); d > most {
			t.Errorf("hole %v on paper is %.3f mm from one of the plan", h, d)
		}
	}
}

func nearest(v curve.Vec, l curve.Line) float64 {
	best := math.Inf(1)
	for _, w := range l {
		best = math.Min(best, v.Dist(w))
	}
	return best
}

func toLine(v curve.Vec, l curve.Line) float64 {
	best := math.Inf(1)
	for i := 1; i < len(l); i++ {
		best = math.Min(best, toSegment(v, l[i-1], l[i]))
	}
	return best
}

// toSegment is the distance from v to the piece of line from a to b.
func toSegment(v, a, b curve.Vec) float64 {
	d, q := b.Sub(a), v.Sub(a)
	share := 0.0
	if n := d.X*d.X + d.Y*d.Y; n > 0 {
		share = min(1, max(0, (q.X*d.X+q.Y*d.Y)/n))
	}
	return q.Sub(d.Mul(share)).Norm()
}
