package draw

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"chape/calc/curve"
	"chape/ui/canvas"
)

// Fold 0 to 100 in 50 cells behind a gutter of 3: a difference of 4 at 50 and -4 at 100 lies
// in the top and the bottom row of the curve, the zero line half way, each place's name
// below it.
func TestDifference(t *testing.T) {
	d := Difference{
		By: curve.Graph{X: []float64{0, 50, 100}, Y: []float64{0, 4, -4}}, Dots: []float64{0, 50, 100}, Lo: 0, Hi: 100, At: math.NaN(),
		Places: []Name{{At: 0, Word: "point"}, {At: 48, Word: "m7", Lesser: true}, {At: 50, Word: "bolster"}, {At: 100, Word: "mouth"}},
		Say:    func(mm float64) string { return fmt.Sprintf("%+.0f", mm) },
	}
	for _, g := range []canvas.Glyphs{canvas.ASCII, canvas.Braille, canvas.Blocks} {
		c := canvas.New(53, 12, g)
		d.Draw(c, g)
		rows := c.Rows()
		if !strings.HasPrefix(rows[0], "+4") || strings.Index(rows[0], "o") < 25 {
			t.Errorf("%v: the top row is %q", g, rows[0])
		}
		if !strings.HasPrefix(rows[9], "-4") || !strings.HasSuffix(strings.TrimRight(rows[9], " "), "o") {
			t.Errorf("%v: the bottom row is %q", g, rows[9])
		}
		zero := -1
		for i, r := range rows {
			if strings.HasPrefix(r, "+0") {
				zero = i
			}
		}
		if zero < 4 || zero > 5 {
			t.Errorf("%v: the zero line is in row %d", g, zero)
		}
		if !strings.Contains(rows[10], "point") || !strings.Contains(rows[10], "bolster") || !strings.HasSuffix(strings.TrimRight(rows[10], " "), "mouth") {
			t.Errorf("%v: the places are called %q", g, rows[10])
		}
		if strings.Contains(rows[10], "m7") || !strings.Contains(rows[11], "m7") {
			t.Errorf("%v: the mark does not give way: %q, %q", g, rows[10], rows[11])
		}
	}
	for _, size := range [][2]int{{0, 0}, {10, 10}, {60, 3}, {20, 4}} { // no room: nothing, and no fault
		c := canvas.New(size[0], size[1], canvas.Braille)
		d.Draw(c, canvas.Braille)
	}
	flat := Difference{By: curve.Graph{X: []float64{0, 100}, Y: []float64{0.01, 0}}, Hi: 100, At: 20, Say: d.Say}
	c := canvas.New(53, 11, canvas.Braille)
	if flat.Draw(c, canvas.Braille); !strings.HasPrefix(c.Rows()[0], "+1") {
		t.Errorf("a hair is drawn as a hill: %q", c.Rows()[0])
	}
}
