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
	rounds := []length.Length{0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500}
	if u == length.Inches {
		rounds = nil
		for _, n := range []float64{1. / 32, 1. / 16, 1. / 8, 0.25, 0.5, 1, 2, 5, 10, 20} {
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

// samples are the line types with their words, and how many cells each takes:
// a long dash, a dot and a dash must be seen of the fold's.
var samples = []struct {
	stroke canvas.Stroke
	word   string
	cells  int
}{{cutLine, "cut", 4}, {stitchLine, "stitch", 5}, {foldLine, "fold", 8}, {glueLine, "glue", 4}}

// What the parts of the legend take, in cells.
const (
	longestBar   = 13
	barWords     = 11
	samplesWidth = (4 + 5 + 8 + 4) + 4 + len("cut"+"stitch"+"fold"+"glue") + 3*2
)

// LegendRows is how many rows the legend wants at a width.
func LegendRows(w int) int {
	if w >= samplesWidth && w < longestBar+barWords+samplesWidth {
		return 2
	}
	return 1
}

// Legend writes the scale line and a sample of each line type into the canvas,
// as far as they fit; scale is in cells a millimetre.
func Legend(c *canvas.Canvas, scale float64, u length.Unit, shape Shape) {
	w, h := c.Size()
	at, row := 0, 0
	if bar, ok := ScaleBar(scale, u, min(longestBar, w-barWords)); ok {
		at = barOn(c, bar, u)
	}
	if LegendRows(w) == 2 && h >= 2 {
		at, row = 0, 1
	}
	if at+samplesWidth > w {
		return
	}
	for i, s := range samples {
		word := s.word
		if shape == Closed && i == 3 {
			word = "welt"
		}
		sample(c, at, row, s.cells, s.stroke)
		c.Text(at+s.cells+1, row, word, s.stroke.Pen)
		at += s.cells + 1 + len(word) + 2
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

// barOn draws the scale line into the first row and returns the cell after it.
func barOn(c *canvas.Canvas, b Bar, u length.Unit) int {
	w, h := c.Dots()
	cw, ch := c.Size()
	across, down := w/max(cw, 1), h/max(ch, 1)
	y := float64(down) / 2
	s := canvas.Stroke{Type: canvas.Thin, Pen: ink.PenText}
	end := float64(b.Cells*across) - 1
	c.Line(0, y, end, y, s)
	c.Line(0, 0, 0, float64(down)-1, s)
	c.Line(end, 0, end, float64(down)-1, s)
	words := b.Length.Format(u, length.Calliper)
	c.Text(b.Cells+1, 0, words, ink.PenText)
	return b.Cells + 1 + ansi.StringWidth(words) + 3
}
