package canvas

import (
	"strings"
	"testing"

	"chape/ui/test/golden"
)

// drawing is a small made-up pattern: all line types, holes, a label.
func drawing(g Glyphs) []string {
	c := New(44, 12, g)
	v := c.Fit(Box{0, -26, 150, 26})
	at := func(xy ...float64) []Point {
		var pts []Point
		for i := 0; i < len(xy); i += 2 {
			pts = append(pts, v.Dot(xy[i], xy[i+1]))
		}
		return pts
	}
	c.Polygon(at(0, -20, 60, -26, 150, -22, 150, 22, 60, 26, 0, 20), Stroke{Continuous, 1})
	c.Polyline(at(4, 0, 150, 0), Stroke{LongDashDot, 2})
	c.Polyline(at(4, 13, 60, 19, 150, 15), Stroke{Dashed, 3})
	c.Polyline(at(4, -10, 60, -16, 150, -12), Stroke{Thin, 4})
	c.Circle(v.Dot(25, -5).X, v.Dot(25, -5).Y, 3*v.Scale(), Stroke{Continuous, 5})
	c.Text(16, 4, "fold ½", 6)
	return c.Rows()
}

func TestDrawingGolden(t *testing.T) {
	for _, g := range []Glyphs{Braille, Blocks, ASCII} {
		rows := drawing(g)
		checkSize(t, rows, 44, 12)
		golden.Exact(t, g.String()+".golden", strings.Join(rows, "\n")+"\n")
	}
}
