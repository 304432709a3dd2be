package sheet

import (
	"math"
	"slices"
	"testing"

	"chape/calc/curve"
)

var pieceWords = []string{"welt", "Garden knife, invented", "pattern 3, cut 1", "leather 3.2 mm", "grain side up"}

// inOrder tells whether the words are all there, in their order and whole, inside a box and
// clear of each other and of lines.
func inOrder(t *testing.T, name string, d Drawing, in Box, words []string) {
	t.Helper()
	var says []string
	for i, w := range d.Texts {
		says = append(says, w.Says)
		if g := in.Grow(1e-9); !g.holds(w.Box()) || w.Crossed(d.Paths) {
			t.Errorf("%s: %q stands at %v of %v, crossed: %v", name, w.Says, w.Box(), in, w.Crossed(d.Paths))
		}
		for _, o := range d.Texts[:i] {
			if a, b := w.Box().Grow(-0.3), o.Box().Grow(-0.3); a.meets(b) && math.Abs(w.Angle) < 0.01 {
				t.Errorf("%s: %q stands on %q", name, w.Says, o.Says)
			}
		}
	}
	if !slices.Equal(says, words) {
		t.Errorf("%s: says %q, want %q", name, says, words)
	}
}

// On a piece with room the words stand in its middle, one below the other, its name large and
// in bold; on an upright one they are turned; where lines take the middle, beside it.
func TestBlockOfWords(t *testing.T) {
	for _, c := range []struct {
		name   string
		area   Box
		turned bool
		lines  []Path
	}{
		{"roomy", Box{Hi: curve.Vec{X: 90, Y: 120}}, false, nil},
		{"upright", Box{Hi: curve.Vec{X: 22, Y: 120}}, true, nil},
		{"a line through the middle", Box{Hi: curve.Vec{X: 120, Y: 120}}, false, []Path{{Pts: curve.Line{{X: 0, Y: 60}, {X: 120, Y: 60}}}}},
	} {
		d := Drawing{Paths: c.lines}
		d.Put([]Zone{{Area: c.area, Words: pieceWords}}, c.area.Grow(50))
		inOrder(t, c.name, d, c.area, pieceWords)
		for i, w := range d.Texts {
			if (w.Size == 4) != (i == 0) || w.Bold != (i == 0) || i > 0 && w.Size != WordSize {
				t.Errorf("%s: %q is %v mm, bold %v", c.name, w.Says, w.Size, w.Bold)
			}
			if (w.Angle != 0) != c.turned {
				t.Errorf("%s: %q is turned by %v", c.name, w.Says, w.Angle)
			}
		}
		if mid := d.Texts[2].Box().mid(); c.lines == nil && mid.Dist(c.area.mid()) > 3 {
			t.Errorf("%s: the block stands about %v, the middle is %v", c.name, mid, c.area.mid())
		}
	}
}

// Where all the words together have no room they stand in two places or more, all of them.
func TestBlockIsSplit(t *testing.T) {
	area := Box{Hi: curve.Vec{X: 60, Y: 60}}
	var lines []Path
	for y := 15.0; y < 60; y += 15 { // shelves of 15 mm: the block is higher
		lines = append(lines, Path{Pts: curve.Line{{X: -10, Y: y}, {X: 70, Y: y}}})
	}
	d := Drawing{Paths: lines}
	d.Put([]Zone{{Area: area, Words: pieceWords}}, area)
	inOrder(t, "shelves", d, area, pieceWords)
}

// Each sheet that a zone reaches has its words, on the part of it that is there; one that it
// does not reach has none.
func TestWordsOnEachSheet(t *testing.T) {
	z := Zone{Area: Box{Hi: curve.Vec{X: 90, Y: 300}}, Words: pieceWords}
	for _, s := range []Box{{Hi: curve.Vec{X: 200, Y: 150}}, {Lo: curve.Vec{Y: 150}, Hi: curve.Vec{X: 200, Y: 300}}} {
		var d Drawing
		d.Put([]Zone{z}, s)
		inOrder(t, "a sheet", d, s, pieceWords)
	}
	var d Drawing
	d.Put([]Zone{z}, Box{Lo: curve.Vec{X: 100}, Hi: curve.Vec{X: 200, Y: 300}})
	if len(d.Texts) > 0 {
		t.Errorf("a sheet beside it says %q", d.Texts[0].Says)
	}
}

// On a strip the words run along its guide, one after the other, none on its head; of two
// guides that which has room for more is taken, and places with holes are passed over.
func TestWordsAlongAGuide(t *testing.T) {
	bow := func(out float64) curve.Line {
		var l curve.Line
		for x := 0.0; x <= 160; x++ {
			l = append(l, curve.Vec{X: 20 + x, Y: 100 - out*math.Sin(math.Pi*x/160)})
		}
		return l
	}
	area := Box{Hi: curve.Vec{X: 200, Y: 200}}
	long := bow(12)
	for name, guides := range map[string][]curve.Line{"one": {long}, "the second": {long[:20], long}, "backwards": {long.Reverse()}} {
		var d Drawing
		d.Circle(Circle{Layer: HoleLayer, At: curve.Vec{X: 40, Y: 95}, Radius: 1})
		d.Put([]Zone{{Area: area, Words: pieceWords, Guides: guides}}, area)
		inOrder(t, name, d, area, pieceWords)
		for i, w := range d.Texts {
			off := math.Inf(1)
			for k := 1; k < len(long); k++ {
				off = min(off, toSegment(w.At, long[k-1], long[k]))
			}
			if off > 1.5 || math.Abs(w.Angle) > math.Pi/2 || w.Bold != (i == 0) || w.Size != WordSize {
				t.Errorf("%s: %q stands %.2f mm off the guide, turned by %.2f", name, w.Says, off, w.Angle)
			}
			if w.Box().meets(d.Circles[0].box()) {
				t.Errorf("%s: %q stands on a hole", name, w.Says)
			}
		}
	}
	bent := append(curve.Line{}, long[:60]...) // a corner: words stand before it and behind it
	for y := 1.0; y < 90; y++ {
		bent = append(bent, bent[59].Add(curve.Vec{Y: y}))
	}
	var round Drawing
	round.Put([]Zone{{Area: area, Words: pieceWords, Guides: []curve.Line{bent}}}, area)
	upright := 0
	for _, w := range round.Texts {
		if math.Abs(math.Abs(w.Angle)-math.Pi/2) < 0.1 {
			upright++
		}
	}
	if level := len(round.Texts) - upright; level < 1 || upright < 2 {
		t.Errorf("%d words before a corner, %d behind it", level, upright)
	}
	var d Drawing // down the sheet: to be read from the right, up
	down := curve.Line{{X: 50, Y: 10}, {X: 50, Y: 190}}
	d.Put([]Zone{{Area: area, Words: pieceWords, Guides: []curve.Line{down}}}, area)
	for _, w := range d.Texts {
		if math.Abs(math.Abs(w.Angle)-math.Pi/2) > 1e-9 {
			t.Errorf("down the sheet %q is turned by %v", w.Says, w.Angle)
		}
	}
}
