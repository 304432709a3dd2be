package tracing

import (
	"fmt"
	"math"
	"testing"

	"chape/calc/curve"
	"chape/calc/trace/frame"
	"chape/project/print/printtest"
	"chape/project/print/sheet"
)

// on is the two pages of a tracing sheet as they come out of the printer: a printer that
// gave c.X for 100 mm across and c.Y along takes back what the file is stretched by.
func on(t *testing.T, paper string, c sheet.Correction) []printtest.Page {
	t.Helper()
	key := fmt.Sprint(paper, c)
	if printed[key] == nil {
		printed[key] = printOn(t, paper, c)
	}
	return printed[key]
}

var printed = map[string][]printtest.Page{} // each is read once

func printOn(t *testing.T, paper string, c sheet.Correction) []printtest.Page {
	t.Helper()
	p, err := sheet.ParsePaper(paper)
	if err != nil {
		t.Fatal(err)
	}
	data, err := PDF(Options{Paper: p, Correction: c})
	if err != nil {
		t.Fatalf("%s: %v", paper, err)
	}
	pages := printtest.Read(t, data)
	fx, fy := c.Factors()
	for i := range pages {
		page := &pages[i]
		at := func(v curve.Vec) curve.Vec {
			return curve.Vec{X: page.Width/2 + (v.X-page.Width/2)/fx, Y: page.Height/2 + (v.Y-page.Height/2)/fy}
		}
		for _, paths := range [][]printtest.Path{page.Paths, page.Fills} {
			for k := range paths {
				for n, v := range paths[k].Pts {
					paths[k].Pts[n] = at(v)
				}
			}
		}
		for k := range page.Texts {
			page.Texts[k].At = at(page.Texts[k].At)
		}
	}
	return pages
}

// papers are those with names, lying ones, the smallest and the largest, and corrected ones.
var papers = []struct {
	name string
	c    sheet.Correction
}{{"a4", sheet.Correction{}}, {"a3", sheet.Correction{}}, {"letter", sheet.Correction{}}, {"legal", sheet.Correction{}}, {"297x210", sheet.Correction{}},
	{"148x180", sheet.Correction{}}, {"600x1200", sheet.Correction{}}, {"1200x600", sheet.Correction{}}, {"a4", sheet.Correction{X: 98.5, Y: 101.2}}, {"letter", sheet.Correction{X: 101, Y: 99}}}

// fine is what the bytes can say, mm.
const fine = 0.01

// origin is the frame's inner corner on paper: the middle of the dotted mark is 2.5 mm from
// it each way. The dot is the smallest white spot.
func origin(t *testing.T, p printtest.Page) curve.Vec {
	t.Helper()
	var dots []curve.Vec
	for _, s := range p.Spots(sheet.RegisterLayer) {
		if math.Abs(s.Radius-1.75) < 0.05 {
			dots = append(dots, s.At)
		}
	}
	if len(dots) != 1 {
		t.Fatalf("%d corner marks have a dot", len(dots))
	}
	return dots[0].Sub(curve.Vec{X: 2.5, Y: 2.5})
}

// inked tells whether a place is black on paper: areas lie over those before them.
func inked(p printtest.Page, v curve.Vec) bool {
	black := false
	for _, f := range p.Fills {
		lo, hi := f.Pts.Bounds()
		in := v.X > lo.X && v.X < hi.X && v.Y > lo.Y && v.Y < hi.Y
		if f.Curved {
			var mid curve.Vec
			for _, q := range f.Pts[1:] {
				mid = mid.Add(q.Mul(1 / float64(len(f.Pts)-1)))
			}
			in = v.Dist(mid) < f.Pts[0].Dist(mid)
		}
		if in {
			black = f.Grey == 0
		}
	}
	return black
}

// The frame stands 8 mm from the paper's edge or more, its code row spells the size that it
// has, and that is the largest which leaves strips for pricks and words: inside it measures
// 5·⌊(paper − 31 mm)/5⌋ (A4: 175 × 265) where nothing is corrected.
func TestFrameSaysItsSize(t *testing.T) {
	for _, c := range papers {
		p := on(t, c.name, c.c)[0]
		o := origin(t, p)
		var cells [frame.Cells]bool
		for i := range cells { // 30 cells of 2.5 × 4 mm from (15, 2.5)
			cells[i] = inked(p, o.Add(curve.Vec{X: 15 + 2.5*(float64(i)+0.5), Y: 4.5}))
		}
		s, err := frame.Parse(cells)
		if err != nil {
			t.Errorf("%s %v: the code row: %v", c.name, c.c, err)
			continue
		}
		inside := func(paper float64) float64 { return 5 * math.Floor((paper-31)/5+1e-9) }
		if !c.c.Set() && (s.Width != inside(p.Width) || s.Height != inside(p.Height)) {
			t.Errorf("%s: the row says %v × %v, want %v × %v", c.name, s.Width, s.Height, inside(p.Width), inside(p.Height))
		}
		if c.name == "a4" && !c.c.Set() && (s.Width != 175 || s.Height != 265) {
			t.Errorf("A4: %v × %v, want 175 × 265", s.Width, s.Height)
		}
		lo, hi := curve.Vec{X: math.Inf(1), Y: math.Inf(1)}, curve.Vec{X: math.Inf(-1), Y: math.Inf(-1)}
		for _, f := range p.Fills {
			a, b := f.Pts.Bounds()
			lo, hi = curve.Vec{X: min(lo.X, a.X), Y: min(lo.Y, a.Y)}, curve.Vec{X: max(hi.X, b.X), Y: max(hi.Y, b.Y)}
		}
		if math.Abs(hi.X-lo.X-s.Width-10) > 2*fine || math.Abs(hi.Y-lo.Y-s.Height-10) > 2*fine {
			t.Errorf("%s %v: the frame is %.3f × %.3f outside, want 10 mm more than %v × %v", c.name, c.c, hi.X-lo.X, hi.Y-lo.Y, s.Width, s.Height)
		}
		if !c.c.Set() && (math.Abs(lo.X-8) > fine || math.Abs(lo.Y-8) > fine) {
			t.Errorf("%s: the frame begins at %v, want it 8 mm in", c.name, lo)
		}
		if hi.X > p.Width-8-5+fine || hi.Y > p.Height-8-5+fine {
			t.Errorf("%s: the frame ends at %v of %.1f × %.1f: no strips for pricks and words", c.name, hi, p.Width, p.Height)
		}
	}
}

// The band is 5 mm wide, its squares black and white by turns, those beside a mark white.
func TestBand(t *testing.T) {
	for _, c := range papers {
		p := on(t, c.name, c.c)[0]
		o := origin(t, p)
		s, err := frame.On(sizeOf(t, c.name, c.c))
		if err != nil {
			t.Fatal(err)
		}
		for _, side := range []struct {
			long float64
			at   func(along float64) curve.Vec
		}{
			{s.Width, func(a float64) curve.Vec { return curve.Vec{X: a, Y: -2.5} }},
			{s.Width, func(a float64) curve.Vec { return curve.Vec{X: a, Y: s.Height + 2.5} }},
			{s.Height, func(a float64) curve.Vec { return curve.Vec{X: -2.5, Y: a} }},
			{s.Height, func(a float64) curve.Vec { return curve.Vec{X: s.Width + 2.5, Y: a} }},
		} {
			last := 0.0
			for i, a := 0, 12.5; a < side.long-10; i, a = i+1, a+5 {
				if black := inked(p, o.Add(side.at(a))); black != (i%2 == 1) && a < side.long-15 {
					t.Errorf("%s: the square at %v is black: %v", c.name, side.at(a), black)
				}
				last = a
			}
			if inked(p, o.Add(side.at(last))) {
				t.Errorf("%s: the square beside the mark, at %v, is black", c.name, side.at(last))
			}
		}
	}
}

func sizeOf(t *testing.T, paper string, c sheet.Correction) (w, h float64) {
	t.Helper()
	p, err := sheet.ParsePaper(paper)
	if err != nil {
		t.Fatal(err)
	}
	return p.Area(c)
}

// A mark is a black square from −5 to 10 mm off the frame's corner each way, a white ring
// of radii 3.0 and 5.5 in it, a black disc in that, with a white dot of 1.75 at the origin
// alone.
func TestMarks(t *testing.T) {
	for _, c := range papers {
		p := on(t, c.name, c.c)[0]
		o := origin(t, p)
		s, err := frame.On(sizeOf(t, c.name, c.c))
		if err != nil {
			t.Fatal(err)
		}
		for i, corner := range []curve.Vec{{}, {X: s.Width}, {X: s.Width, Y: s.Height}, {Y: s.Height}} {
			in := curve.Vec{X: 1, Y: 1} // into the frame
			if corner.X > 0 {
				in.X = -1
			}
			if corner.Y > 0 {
				in.Y = -1
			}
			mid := o.Add(corner).Add(in.Mul(2.5))
			for _, r := range []struct {
				far   float64
				black bool
			}{{0, i != 0}, {1.7, i != 0}, {1.8, true}, {2.95, true}, {3.05, false}, {5.45, false}, {5.55, true}, {7.45, true}, {7.55, false}} {
				for _, way := range []curve.Vec{{X: 1}, {Y: 1}, {X: -1}, {Y: -1}} {
					if got := inked(p, mid.Add(way.Mul(r.far))); got != r.black {
						t.Errorf("%s: mark %d is black %v mm from its middle: %v", c.name, i, r.far, got)
					}
				}
			}
			if !inked(p, mid.Sub(in.Mul(7.4))) || !inked(p, mid.Add(in.Mul(7.4))) {
				t.Errorf("%s: mark %d has no corners", c.name, i)
			}
		}
	}
}

// Inside the frame there is nothing but the code row and what the marks reach in: no area,
// no line, no word; and nothing of the strips lies on the frame.
func TestFrameIsClear(t *testing.T) {
	for _, c := range papers {
		p := on(t, c.name, c.c)[0]
		o := origin(t, p)
		w, h := sizeOf(t, c.name, c.c)
		s, err := frame.On(w, h)
		if err != nil {
			t.Fatal(err)
		}
		outer := sheet.Box{Lo: o.Sub(curve.Vec{X: 5, Y: 5}), Hi: o.Add(curve.Vec{X: s.Width + 5, Y: s.Height + 5})}
		var strays []string
		for _, f := range p.Fills {
			lo, hi := f.Pts.Bounds()
			lo, hi = lo.Sub(o), hi.Sub(o)
			row := lo.X > 14.9 && hi.X < 90.1 && lo.Y > 2.4 && hi.Y < 6.6
			mark := (hi.X < 10.1 || lo.X > s.Width-10.1) && (hi.Y < 10.1 || lo.Y > s.Height-10.1)
			band := hi.X < 0.1 || lo.X > s.Width-0.1 || hi.Y < 0.1 || lo.Y > s.Height-0.1
			if !row && !mark && !band {
				strays = append(strays, fmt.Sprintf("an area at %v", lo))
			}
		}
		for _, l := range p.Paths {
			lo, hi := l.Pts.Bounds()
			if lo.X < outer.Hi.X && lo.Y < outer.Hi.Y {
				strays = append(strays, fmt.Sprintf("a line from %v to %v", lo, hi))
			}
		}
		for _, text := range p.Texts {
			if text.At.X < outer.Hi.X && text.At.Y < outer.Hi.Y+0.7*text.Size {
				strays = append(strays, fmt.Sprintf("%q at %v", text.Says, text.At))
			}
		}
		if len(strays) > 0 {
			t.Errorf("%s %v: on the frame or in it: %q", c.name, c.c, strays)
		}
	}
}
