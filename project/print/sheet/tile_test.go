package sheet

import (
	"regexp"
	"testing"

	"chape/calc/curve"
)

// strip is a piece so wide and high.
func strip(w, h float64) Drawing {
	var d Drawing
	d.Path(Path{Layer: CutLayer, Stroke: Wide, Closed: true, Pts: Box{Hi: curve.Vec{X: w, Y: h}}.Corners()})
	return d
}

// However little a piece is longer than its sheets, none of them holds a sliver of it,
// and there are no more of them than it takes.
func TestNoSliver(t *testing.T) {
	const w, h = 180.0, 240.0
	for _, c := range []struct{ wide, high float64 }{{38, 235}, {38, 300}, {100, 460}, {170, 235}, {172, 200}, {172, 240}, {340, 470}, {400, 100}} {
		d := strip(c.wide, c.high)
		got := CutUp(&d, w, h, "B")
		if n := got.Rows * got.Cols; len(got.Sheets) > n {
			t.Errorf("%v: %d sheets of %d", c, len(got.Sheets), n)
		}
		for _, s := range got.Sheets {
			lo := curve.Vec{X: max(0, s.Area.Lo.X), Y: max(0, s.Area.Lo.Y)}
			hi := curve.Vec{X: min(c.wide, s.Area.Hi.X), Y: min(c.high, s.Area.Hi.Y)}
			if hi.X-lo.X < 20 || hi.Y-lo.Y < 20 {
				t.Errorf("%v: sheet %s holds %.1f x %.1f mm", c, s.Name(), hi.X-lo.X, hi.Y-lo.Y)
			}
		}
	}
}

// All of a piece lies on the sheets, inside their joints, and each joint has a name of its
// own that begins with the piece's letter.
func TestSheetsCover(t *testing.T) {
	d := strip(500, 700)
	got := CutUp(&d, 180, 240, "W")
	names := map[string]bool{}
	for _, j := range got.Joints {
		if names[j.Name] || !regexp.MustCompile(`^W[A-Z]+$`).MatchString(j.Name) {
			t.Errorf("joint %q: twice, or without its piece's letter", j.Name)
		}
		names[j.Name] = true
	}
	for x := 0.0; x <= 500; x += 20 {
		for y := 0.0; y <= 700; y += 20 {
			on := 0
			for _, s := range got.Sheets {
				if s.Area.has(curve.Vec{X: x, Y: y}) {
					on++
				}
			}
			if on == 0 {
				t.Errorf("%v, %v is on no sheet", x, y)
			}
		}
	}
}

// A sheet's words are whole on it, and stand clear of lines and of each other.
func TestSettle(t *testing.T) {
	var d Drawing
	d.Line(CutLayer, Wide, curve.Vec{X: 0, Y: 50}, curve.Vec{X: 100, Y: 50})
	for range 3 {
		d.Text(Text{Layer: WordLayer, At: curve.Vec{X: 50, Y: 51}, Says: "relief hole", Size: WordSize, Anchor: Middle})
	}
	d.Text(Text{Layer: WordLayer, At: curve.Vec{X: 99, Y: 20}, Says: "47", Size: WordSize})
	d.Settle(Box{Hi: curve.Vec{X: 100, Y: 100}})
	if len(d.Texts) != 4 {
		t.Fatalf("%d words are left of 4", len(d.Texts))
	}
	for i, a := range d.Texts {
		if a.Crossed(d.Paths) {
			t.Errorf("%q is crossed at %v", a.Says, a.At)
		}
		for _, b := range d.Texts[:i] {
			if a.Box().meets(b.Box()) {
				t.Errorf("%q at %v lies on %q at %v", a.Says, a.At, b.Says, b.At)
			}
		}
	}
}
