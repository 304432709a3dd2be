package draw

import (
	"math"

	"github.com/charmbracelet/x/ansi"

	"chape/calc/length"
	"chape/ui/canvas"
	"chape/ui/term/ink"
)

// Bar is a scale line: a round length and how many cells it takes.
type Bar struct {
	Length length.Length
	Cells  int
}

// ScaleBar chooses the shortest round length that takes at least five cells,
// at a scale in cells a millimetre; none of more than most cells.
func ScaleBar(scale float64, u length.Unit, most int) (Bar, bool) {
	rounds := []length.Length{1, 2, 5, 10, 20, 50, 100, 200, 500}
	if u == length.Inches {
		rounds = nil
		for _, n := range []float64{0.125, 0.25, 0.5, 1, 2, 5, 10, 20} {
			rounds = append(rounds, length.Length(n)*length.Inch)
		}
	}
	for _, l := range rounds {
		if n := int(math.Round(l.MM() * scale)); n >= 5 && n <= most {
			return Bar{l, n}, true
		}
	}
	return Bar{}, false
}

// Legend writes the scale line and a sample of each line type into one row of
// the canvas, as far as they fit.
func Legend(c *canvas.Canvas, row int, scale float64, u length.Unit, shape Shape) {
	w, _ := c.Size()
	at := 0
	if bar, ok := ScaleBar(scale, u, w-8); ok {
		at = barOn(c, row, bar, u)
	}
	samples := []struct {
		stroke canvas.Stroke
		word   string
	}{{cutLine, "cut"}, {stitchLine, "stitch"}, {foldLine, "fold"}, {glueLine, "glue"}}
	if shape == Closed {
		samples[3].word = "welt"
	}
	const long = 7 // cells, so that a long dash, a dot and a dash are seen
	need := 0
	for _, s := range samples {
		need += long + 1 + len(s.word) + 2
	}
	if at+need-2 > w {
		return
	}
	for _, s := range samples {
		sample(c, at, row, long, s.stroke)
		c.Text(at+long+1, row, s.word, s.stroke.Pen)
		at += long + 1 + len(s.word) + 2
	}
}

// sample draws one line type through cells of a row.
func sample(c *canvas.Canvas, cx, row, cells int, s canvas.Stroke) {
	w, h := c.Dots()
	cw, ch := c.Size()
	across, down := w/max(cw, 1), h/max(ch, 1)
	y := float64(row*down) + float64(down)/2
	c.Line(float64(cx*across), y, float64((cx+cells)*across)-1, y, s)
}

// barOn draws the scale line and returns the cell after it.
func barOn(c *canvas.Canvas, row int, b Bar, u length.Unit) int {
	w, h := c.Dots()
	cw, ch := c.Size()
	across, down := w/max(cw, 1), h/max(ch, 1)
	y := float64(row*down) + float64(down)/2
	s := canvas.Stroke{Type: canvas.Thin, Pen: ink.PenText}
	end := float64(b.Cells*across) - 1
	c.Line(0, y, end, y, s)
	c.Line(0, float64(row*down), 0, float64((row+1)*down)-1, s)
	c.Line(end, float64(row*down), end, float64((row+1)*down)-1, s)
	words := b.Length.Format(u, length.Calliper)
	c.Text(b.Cells+1, row, words, ink.PenText)
	return b.Cells + 1 + ansi.StringWidth(words) + 3
}
