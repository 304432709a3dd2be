package frame

import (
	"math"
	"strings"
	"testing"

	"chape/calc/curve"
	"chape/calc/trace/sheettest"
)

// The sizes of the definition, 5 ⌊(paper − 31 mm)/5⌋ each way and at least 105, for papers that are sold; the room is 16 mm less.
func TestOnPaper(t *testing.T) {
	for _, c := range []struct{ w, h, wantW, wantH float64 }{
		{210, 297, 175, 265},
		{297, 420, 265, 385},
		{215.9, 279.4, 180, 245},
		{215.9, 355.6, 180, 320},
		{600, 1200, 565, 1165},
		{136, 136, 105, 105},
		{140.999, 141, 105, 110},
	} {
		s, err := On(c.w-2*Rim, c.h-2*Rim)
		if err != nil || s.Width != c.wantW || s.Height != c.wantH || s.Version != 1 {
			t.Errorf("on %v × %v mm of paper: %v, %v; want %v × %v", c.w, c.h, s, err, c.wantW, c.wantH)
		}
		for _, by := range []float64{c.wantW, c.wantH} {
			if math.Mod(by, 5) != 0 || by < 105 {
				t.Fatalf("the case's own %v is no whole number of squares", by)
			}
		}
	}
	for _, c := range []struct {
		w, h float64
		want string
	}{{135.9, 297, "larger paper"}, {297, 135.9, "larger paper"}, {1400, 297, "smaller paper"}, {297, 1400, "smaller paper"}, {0, 0, "larger paper"}, {-5, 400, "larger paper"}} {
		if s, err := On(c.w-2*Rim, c.h-2*Rim); err == nil || !strings.Contains(err.Error(), c.want) || strings.Contains(err.Error(), "\n") {
			t.Errorf("on %v × %v mm of paper: %v, %v; want %q", c.w, c.h, s, err, c.want)
		}
	}
}

// inked is where the sheet is black by what this room says of it.
func inked(s Sheet, v curve.Vec) bool {
	in := func(b Box) bool { return v.X >= b.Lo.X && v.Y >= b.Lo.Y && v.X < b.Hi.X && v.Y < b.Hi.Y }
	for i, m := range s.Marks() {
		d := v.Sub(m)
		if max(math.Abs(d.X), math.Abs(d.Y)) < MarkHalf {
			r := d.Norm()
			return (r < RingIn || r > RingOut) && !(i == 0 && r < Dot)
		}
	}
	for _, q := range s.Squares() {
		if in(q.Box) {
			return true
		}
	}
	for i, black := range s.Code() {
		if in(Cell(i)) {
			return black
		}
	}
	return false
}

// Ink lies where the tests' own drawing of the definition has it, over the whole sheet, on sides with an even and an odd number of squares.
func TestInkByDefinition(t *testing.T) {
	for _, s := range []Sheet{{105, 110, 1}, {110, 125, 1}} {
		own := sheettest.Sheet{Width: s.Width, Height: s.Height}
		for x := -12.7; x < s.Width+12; x += 0.5 {
			for y := -12.7; y < s.Height+12; y += 0.5 {
				want := own.At(x, y) == sheettest.Ink
				if got := inked(s, curve.Vec{X: x, Y: y}); got != want {
					t.Fatalf("sheet %v: black at %.2f,%.2f is %v, want %v", s, x, y, got, want)
				}
			}
		}
	}
}

// Every size's row is the one that dividing by the polynomial on paper gives; the row's box holds all cells and nothing more.
func TestRowByDefinition(t *testing.T) {
	for w := Least; w <= 1275; w += 35 {
		for h := Least; h <= 1275; h += 45 {
			own := sheettest.Sheet{Width: w, Height: h}
			if got, want := (Sheet{w, h, 1}).Code(), own.Row(); got != want {
				t.Fatalf("row of %v × %v: %v, want %v", w, h, got, want)
			}
		}
	}
	lo, hi := Cell(0).Lo, Cell(Cells-1).Hi
	if r := Row(); r.Lo != lo || r.Hi != hi || hi != (curve.Vec{X: 90, Y: 6.5}) || r.Mid() != (curve.Vec{X: 52.5, Y: 4.5}) {
		t.Errorf("the row lies in %v, its cells from %v to %v", r, lo, hi)
	}
}

// Squares stand outside the frame's inner edge, touching it, on the side that they say is out; each has a twin across.
func TestSquaresStandOut(t *testing.T) {
	s := Sheet{110, 105, 1}
	count := map[curve.Vec]int{}
	for _, q := range s.Squares() {
		count[q.Out]++
		mid := q.Mid()
		foot := mid.Sub(q.Out.Mul(Band / 2))
		onEdge := foot.X == 0 || foot.Y == 0 || foot.X == s.Width || foot.Y == s.Height
		if further := mid.Add(q.Out.Mul(Band)); !onEdge || further.X > -Band && further.X < s.Width+Band && further.Y > -Band && further.Y < s.Height+Band {
			t.Errorf("square %v with out %v", q.Box, q.Out)
		}
		if q.Hi.X-q.Lo.X != Band || q.Hi.Y-q.Lo.Y != Band {
			t.Errorf("square %v is not %v mm", q.Box, Band)
		}
	}
	if count[curve.Vec{X: 1}] != 8 || count[curve.Vec{X: -1}] != 8 || count[curve.Vec{Y: 1}] != 8 || count[curve.Vec{Y: -1}] != 8 {
		t.Errorf("squares by side: %v, want 8 each", count)
	}
}

// A row that is sound but says no sheet is refused in one line; a later version is told from a broken row.
func TestParseRefuses(t *testing.T) {
	for _, c := range []struct {
		s    Sheet
		want string
	}{
		{Sheet{100, 265, 1}, "no sheet is 100 × 265 mm"},
		{Sheet{265, 100, 1}, "no sheet is 265 × 100 mm"},
		{Sheet{175, 265, 0}, "newer kind"},
		{Sheet{175, 265, 15}, "newer kind"},
	} {
		if _, err := Parse(c.s.Code()); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("Parse of %v's row: %v, want %q", c.s, err, c.want)
		}
	}
	if _, err := Parse([Cells]bool{}); err == nil {
		t.Error("a white row is read")
	}
}

// The marks' middles, 2.5 mm inside the corners: at the origin, along x, across, along y.
func TestMarks(t *testing.T) {
	want := [4]curve.Vec{{X: 2.5, Y: 2.5}, {X: 107.5, Y: 2.5}, {X: 107.5, Y: 122.5}, {X: 2.5, Y: 122.5}}
	if got := (Sheet{110, 125, 1}).Marks(); got != want {
		t.Errorf("Marks() = %v, want %v", got, want)
	}
}
