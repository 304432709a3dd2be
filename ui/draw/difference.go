package draw

import (
	"math"

	"github.com/charmbracelet/x/ansi"

	"chape/calc/curve"
	"chape/calc/length"
	"chape/project/places"
	"chape/ui/canvas"
	"chape/ui/term/ink"
)

// Difference is how one line differs from another along the fold, drawn for itself: the
// place along the fold to the right, the difference across it, up where it is above 0. The
// two have scales of their own: a few millimetres stand beside a hand's breadth.
type Difference struct {
	By     curve.Graph // mm over the fold
	Taken  curve.Graph // what would be taken over of it; may be empty
	Dots   []float64   // places that were measured
	Lo, Hi float64     // of the fold that is shown, mm
	Places []Name      // what can be found on the knife, ascending
	At     float64     // the place in hand; NaN: none
	Say    func(mm float64) string
}

// Name is a place and what it is called; Lesser ones give way.
type Name struct {
	At     float64
	Word   string
	Lesser bool
}

// Saying says a difference in a unit, without the unit: "4.0 short", "6.0 over".
func Saying(u length.Unit, f length.Fineness, above, below string) func(mm float64) string {
	return func(mm float64) string {
		text := length.Length(math.Abs(mm)).Figure(u, f)
		switch {
		case text == length.Length(0).Figure(u, f):
			return "0"
		case mm < 0:
			return text + " " + below
		}
		return text + " " + above
	}
}

// NamesOf are landmarks by their names and, giving way to them, marks by their numbers.
func NamesOf(all []places.Place) []Name {
	var out []Name
	for _, q := range all {
		n := Name{At: q.At, Word: q.Name, Lesser: q.Name == ""}
		if n.Lesser {
			n.Word = q.Said()
		}
		out = append(out, n)
	}
	return out
}

// chart is where a Difference lies on a canvas, in dots.
type chart struct {
	left, right, top, foot float64
	lo, hi, most, least    float64 // mm
}

func (h chart) x(mm float64) float64 { return h.left + (mm-h.lo)/(h.hi-h.lo)*(h.right-h.left) }
func (h chart) y(mm float64) float64 { return h.top + (h.most-mm)/(h.most-h.least)*(h.foot-h.top) }

// leastSpan is how much of a difference the height shows at least, mm: hairs are not drawn
// as hills.
const leastSpan = 2

// Draw fills the canvas. Without a curve, or room for one, it draws nothing.
func (d Difference) Draw(c *canvas.Canvas, g canvas.Glyphs) {
	w, rows := c.Size()
	names := 1
	if rows >= 8 {
		names = 2
	}
	if len(d.By.X) == 0 || rows < names+3 || w < 20 || d.Hi <= d.Lo {
		return
	}
	h, gutter := d.lay(c, g, rows-names)
	c.Line(h.left, h.y(0), h.right, h.y(0), tickLine)
	for _, p := range d.Places {
		if p.At >= d.Lo && p.At <= d.Hi {
			_, down := g.Dots()
			c.Line(h.x(p.At), h.y(0)-float64(down)/4, h.x(p.At), h.y(0)+float64(down)/4, tickLine)
		}
	}
	if !math.IsNaN(d.At) && d.At >= d.Lo && d.At <= d.Hi {
		c.Line(h.x(d.At), h.top, h.x(d.At), h.foot, markLine)
	}
	c.Polyline(h.line(d.Taken), stitchLine)
	c.Polyline(h.line(d.By), cutLine)
	for _, x := range d.Dots {
		cx, cy := c.Cell(h.x(x), h.y(d.By.At(x)))
		c.Text(cx, cy, "o", ink.PenMark)
	}
	d.scale(c, h, gutter)
	d.names(c, h, rows-names, names)
}

// lay finds the scales: the fold into what the words at the left leave, the difference into
// so many rows.
func (d Difference) lay(c *canvas.Canvas, g canvas.Glyphs, rows int) (h chart, gutter int) {
	across, down := g.Dots()
	w, _ := c.Size()
	h = chart{lo: d.Lo, hi: d.Hi}
	for _, v := range append(append([]float64{}, d.By.Y...), d.Taken.Y...) {
		h.most, h.least = max(h.most, v), min(h.least, v)
	}
	if more := leastSpan - (h.most - h.least); more > 0 {
		h.most, h.least = h.most+more/2, h.least-more/2
	}
	gutter = 1 + max(ansi.StringWidth(d.Say(h.most)), ansi.StringWidth(d.Say(h.least)), ansi.StringWidth(d.Say(0)))
	h.left, h.right = float64(gutter*across), float64(w*across-2)
	h.top, h.foot = float64(down)/2, float64(rows*down)-float64(down)/2
	return h, gutter
}

func (h chart) line(g curve.Graph) []canvas.Point {
	var out []canvas.Point
	for i := range g.X {
		out = append(out, canvas.Point{X: h.x(g.X[i]), Y: h.y(g.Y[i])})
	}
	return out
}

// scale writes at the left how much top, zero line and foot are, where they have rows of
// their own.
func (d Difference) scale(c *canvas.Canvas, h chart, gutter int) {
	_, zero := c.Cell(h.left, h.y(0))
	put := func(mm float64) {
		if _, cy := c.Cell(h.left, h.y(mm)); cy != zero || mm == 0 {
			text := d.Say(mm)
			c.Text(gutter-1-ansi.StringWidth(text), cy, text, ink.PenQuiet)
		}
	}
	put(0)
	put(h.most)
	put(h.least)
}

// names writes what the places are called below them, in so many rows: those that others
// give way to first.
func (d Difference) names(c *canvas.Canvas, h chart, top, rows int) {
	w, _ := c.Size()
	used := make([][]bool, rows)
	for i := range used {
		used[i] = make([]bool, w+2)
	}
	put := func(p Name) {
		wide := ansi.StringWidth(p.Word)
		cx, _ := c.Cell(h.x(p.At), 0)
		cx = max(0, min(cx-wide/2, w-wide))
		if p.Word == "" || wide > w {
			return
		}
		for row := range used {
			free := true
			for i := max(0, cx-1); i < cx+wide+1; i++ { // a cell between two
				free = free && !used[row][i]
			}
			if !free {
				continue
			}
			for i := cx; i < cx+wide; i++ {
				used[row][i] = true
			}
			c.Text(cx, top+row, p.Word, ink.PenQuiet)
			return
		}
	}
	for _, lesser := range []bool{false, true} {
		for _, p := range d.Places {
			if p.Lesser == lesser && p.At >= d.Lo && p.At <= d.Hi {
				put(p)
			}
		}
	}
}
