package knife

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/mathext"

	"chape/calc/curve"
	"chape/calc/length"
)

func mark(at, top, bottom, thick length.Length) Station {
	return Station{At: at, Top: top, Bottom: bottom, Thick: thick, Bevel: 1}
}

func profile(t *testing.T, st ...Station) *Profile {
	t.Helper()
	p, err := NewProfile(Knife{Stations: st})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// bottomAt is the edge at a place with one section.
func bottomAt(t *testing.T, p *Profile, x float64) float64 {
	t.Helper()
	secs := p.Sections(nil, x)
	if len(secs) != 1 {
		t.Fatalf("%d sections at %v, want 1", len(secs), x)
	}
	return secs[0].Bottom
}

// TestProfileSlopes works three stretches by hand after Fritsch and Butland:
// secants 2, 1 and -1 over lengths 10, 20 and 10. The slopes are
// (40·2 - 10·1)/30 = 7/3 at the first mark, 3·30/(50/2 + 40/1) = 18/13 at the
// second, 0 at the turn, and ((20+20)·(-1) - 10·1)/30 = -5/3 at the last.
func TestProfileSlopes(t *testing.T) {
	p := profile(t, mark(0, 0, 0, 1), mark(10, 0, 20, 1), mark(30, 0, 40, 1), mark(40, 0, 30, 1))
	const h = 1e-5
	for _, c := range []struct{ x, dx, want float64 }{
		{0, h, 7.0 / 3}, {10, h, 18.0 / 13}, {10, -h, 18.0 / 13}, {30, h, 0}, {30, -h, 0}, {40, -h, -5.0 / 3},
	} {
		got := (bottomAt(t, p, c.x+c.dx) - bottomAt(t, p, c.x)) / c.dx
		if math.Abs(got-c.want) > 1e-4 {
			t.Errorf("slope at %v = %.5f, want %.5f", c.x, got, c.want)
		}
	}
}

// TestProfileKeepsItsShape: straight data stays straight, nothing overshoots,
// two marks give a straight line.
func TestProfileKeepsItsShape(t *testing.T) {
	line := profile(t, mark(0, 0, 10, 2), mark(7, 0, 13.5, 2), mark(50, 0, 35, 2))
	two := profile(t, mark(0, 0, 10, 2), mark(50, 0, 35, 2))
	hump := profile(t, mark(0, 0, 10, 2), mark(5, 0, 30, 2), mark(30, 0, 30, 2), mark(50, 0, 12, 2))
	for x := 0.0; x <= 50; x += 0.5 {
		for _, p := range []*Profile{line, two} {
			if got, want := bottomAt(t, p, x), 10+x/2; math.Abs(got-want) > 1e-9 {
				t.Errorf("straight edge at %v = %v, want %v", x, got, want)
			}
		}
		if got := bottomAt(t, hump, x); got > 30+1e-9 || (x >= 5 && x <= 30 && got < 30-1e-9) {
			t.Errorf("edge at %v = %v overshoots 30", x, got)
		}
	}
}

// TestSectionsAtMarks: at a step both sections apply, the one nearer the
// point first; a change of kind without a step counts from the mark on.
func TestSectionsAtMarks(t *testing.T) {
	slab, oval := mark(20, 0, 30, 10), mark(30, 0, 32, 12)
	slab.Kind, oval.Kind = Slab, Oval
	p := profile(t, mark(0, 0, 20, 3), mark(20, 0, 25, 3), slab, oval, mark(40, 0, 32, 12))
	for _, c := range []struct {
		x    float64
		want []Kind
	}{
		{-0.001, nil}, {0, []Kind{Blade}}, {19.99, []Kind{Blade}}, {20, []Kind{Blade, Slab}}, {20.01, []Kind{Slab}},
		{30, []Kind{Oval}}, {40, []Kind{Oval}}, {40.001, nil},
	} {
		secs := p.Sections(nil, c.x)
		if len(secs) != len(c.want) {
			t.Errorf("%d sections at %v, want %d", len(secs), c.x, len(c.want))
			continue
		}
		for i, s := range secs {
			if s.Kind != c.want[i] {
				t.Errorf("section %d at %v is %v, want %v", i, c.x, s.Kind, c.want[i])
			}
		}
	}
	if at := p.Breaks(); len(at) != 2 || at[0] != 20 || at[1] != 30 {
		t.Errorf("breaks at %v, want 20 and 30", at)
	}
}

func TestProfileRefusals(t *testing.T) {
	for _, c := range []struct {
		st   []Station
		want string
	}{
		{nil, "at least two marks"},
		{[]Station{mark(0, 0, 1, 1)}, "at least two marks"},
		{[]Station{mark(1, 0, 1, 1), mark(9, 0, 1, 1)}, "the first mark belongs at 0"},
		{[]Station{mark(0, 0, 1, 1), mark(9, 0, 1, 1), mark(8, 0, 1, 1)}, "mark 3 stands before mark 2"},
		{[]Station{mark(0, 0, 1, 1), mark(9, 0, 1, 1), mark(9, 0, 1, 1)}, "nothing lies between"},
		{[]Station{mark(0, 0, 1, 1), mark(0, 0, 1, 1), mark(9, 0, 1, 1)}, "nothing lies between"},
		{[]Station{mark(0, 0, 1, 1), mark(9, 0, 1, 1), mark(9, 0, 1, 1), mark(9, 0, 1, 1), mark(12, 0, 1, 1)}, "at most two"},
	} {
		if _, err := NewProfile(Knife{Stations: c.st}); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("NewProfile(%v) = %v, want an error with %q", c.st, err, c.want)
		}
	}
}

// TestUpper: the polygon of a section is at most 0.005 mm shorter than its
// curve. Half the perimeter of an ellipse is 2a·E(1 - b²/a²): Abramowitz &
// Stegun 17.1, gonum's CompleteE. A slab's is two straights and a half circle.
func TestUpper(t *testing.T) {
	for _, c := range []struct {
		s    Section
		want float64
	}{
		{Section{Kind: Oval, Top: 1, Bottom: 31, Thick: 22}, 2 * 15 * mathext.CompleteE(1-11.0*11/(15*15))},
		{Section{Kind: Oval, Bottom: 12, Thick: 40}, 2 * 20 * mathext.CompleteE(1-6.0*6/(20*20))},
		{Section{Kind: Oval, Bottom: 300, Thick: 100}, 2 * 150 * mathext.CompleteE(1-50.0*50/(150*150))},
		{Section{Kind: Slab, Bottom: 30, Thick: 8, Round: 3}, 1 + math.Pi/2*3 + 24 + math.Pi/2*3 + 1},
		{Section{Kind: Slab, Bottom: 30, Thick: 8, Round: 9}, math.Pi/2*4 + 22 + math.Pi/2*4},
		{Section{Kind: Slab, Bottom: 6, Thick: 20, Round: 9}, 7 + math.Pi*3 + 7},
		{Section{Kind: Slab, Bottom: 30, Thick: 8}, 4 + 30 + 4},
		{Section{Kind: Blade, Top: 2, Bottom: 32, Thick: 4, Bevel: 0.5}, 15 + math.Hypot(15, 2)},
		{Section{Kind: Blade, Bottom: 30, Thick: 4, Bevel: 1}, math.Hypot(30, 2)},
		{Section{Kind: Oval, Top: 5, Bottom: 5}, 0},
	} {
		pts := curve.Line(c.s.Upper(nil))
		if got := pts.Length(); got > c.want+1e-9 || got < c.want-0.005 {
			t.Errorf("%+v: half perimeter %v, want %v", c.s, got, c.want)
		}
		for i := 1; i < len(pts); i++ {
			if pts[i].X < pts[i-1].X-1e-9 {
				t.Errorf("%+v: point %d steps back", c.s, i)
			}
		}
	}
}
