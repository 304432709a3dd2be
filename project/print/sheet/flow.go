package sheet

import (
	"fmt"
	"slices"

	"chape/calc/curve"
	"chape/project/print/letters"
)

// Flow writes words and tables down columns and over pages.
type Flow struct {
	name   string
	head   func(size, width float64) string // what stands at the right of every page's head
	full   float64                          // width of the page
	Pages  []Page
	cols   int
	col    int
	Width  float64 // of a column
	Top, H float64
	Y      float64
}

const (
	gutter     = 8.0 // between columns, mm
	PageNumber = 3.6 // what it takes at the foot
	strokeRoom = 0.3 // keeps strokes inside what may be printed on
)

// NewFlow starts a run of pages of one name on w by h, with up to so many columns.
func NewFlow(w, h float64, name string, cols int, head func(size, width float64) string) *Flow {
	for cols > 1 && (w-gutter*float64(cols-1))/float64(cols) < 85 {
		cols--
	}
	f := &Flow{name: name, head: head, full: w, cols: cols, H: h - PageNumber, Width: (w - gutter*float64(cols-1)) / float64(cols)}
	f.newPage()
	return f
}

func (f *Flow) newPage() {
	p := Page{Name: f.name}
	if len(f.Pages) > 0 {
		p.Name = fmt.Sprintf("%s, page %d", f.name, len(f.Pages)+1)
	}
	w := f.full
	p.Drawing.Text(Text{Layer: WordLayer, At: curve.Vec{Y: 3.4}, Says: letters.Fit(p.Name, 3.4, w*0.45, true), Size: 3.4, Bold: true})
	head := f.head(2.6, w*0.52)
	p.Drawing.Text(Text{Layer: WordLayer, At: curve.Vec{X: w, Y: 3.4}, Says: head, Size: 2.6, Anchor: End})
	p.Drawing.Line(WordLayer, Thin, curve.Vec{X: strokeRoom, Y: 5.2}, curve.Vec{X: w - strokeRoom, Y: 5.2})
	f.Pages = append(f.Pages, p)
	f.col, f.Top = 0, 8
	f.Y = f.Top
}

// Page is the drawing that is written on.
func (f *Flow) Page() *Drawing { return &f.Pages[len(f.Pages)-1].Drawing }

// X is where the column begins.
func (f *Flow) X() float64 { return float64(f.col) * (f.Width + gutter) }

// Need makes room for so much, in the next column or on the next page.
func (f *Flow) Need(high float64) {
	if f.Y+high <= f.H-1 {
		return
	}
	if f.col+1 < f.cols {
		f.col++
		f.Y = f.Top
		return
	}
	f.newPage()
}

// Keep makes room for line i of some that are so high, mm: none of them is left alone at
// the end of a column, or at the head of the next.
func (f *Flow) Keep(i int, high []float64) {
	n := 1
	switch {
	case i == 0 && len(high) <= 3:
		n = len(high)
	case i == 0 || i == len(high)-2:
		n = 2
	}
	sum := 0.0
	for _, h := range high[i:min(i+n, len(high))] {
		sum += h
	}
	f.Need(sum)
}

// Gap leaves room.
func (f *Flow) Gap(high float64) { f.Y += high }

// Put writes one line of words at an indent; y stays.
func (f *Flow) Put(indent float64, s string, size float64, bold bool, a anchor) {
	f.Page().Text(Text{Layer: WordLayer, At: curve.Vec{X: f.X() + indent, Y: f.Y + size}, Says: s, Size: size, Bold: bold, Anchor: a})
}

// HeadingHigh is what a heading takes with the gap above it, mm: whoever needs that and its
// first lines before it is not left with a heading alone.
const HeadingHigh = 8.2

// Heading writes a heading over a line.
func (f *Flow) Heading(s string) {
	f.Need(16)
	if f.Y > f.Top {
		f.Gap(3)
	}
	f.Put(0, letters.Fit(letters.Printable(s), 3.2, f.Width, true), 3.2, true, Start)
	f.Y += 4.2
	f.Page().Line(WordLayer, Hair, curve.Vec{X: f.X() + strokeRoom, Y: f.Y}, curve.Vec{X: f.X() + f.Width - strokeRoom, Y: f.Y})
	f.Gap(1)
}

// Big writes a title on at most so many lines.
func (f *Flow) Big(s string, most int) {
	const size = 6
	lines := letters.Wrap(s, size, f.Width, true)
	for i, l := range lines {
		if i == most-1 && len(lines) > most {
			l = letters.Fit(l+" "+lines[i+1], size, f.Width, true)
		}
		if i < most {
			f.Put(0, l, size, true, Start)
			f.Y += size * 1.25
		}
	}
}

// Para writes words as wide as the column.
func (f *Flow) Para(s string, size, indent float64) { f.para(s, size, indent, false) }

// Bold writes words as wide as the column in bold.
func (f *Flow) Bold(s string, size float64) { f.para(s, size, 0, true) }

func (f *Flow) para(s string, size, indent float64, bold bool) {
	lines := letters.Wrap(letters.Printable(s), size, f.Width-indent, bold)
	high := slices.Repeat([]float64{size * 1.35}, len(lines))
	for i, l := range lines {
		f.Keep(i, high)
		f.Put(indent, l, size, bold, Start)
		f.Y += size * 1.35
	}
}

// Item is a paragraph with a mark before it.
func (f *Flow) Item(mark, s string) {
	const size, indent = 2.7, 5.0
	lines := letters.Wrap(letters.Printable(s), size, f.Width-indent, false)
	high := slices.Repeat([]float64{size * 1.35}, len(lines))
	for i, l := range lines {
		if f.Keep(i, high); i == 0 {
			f.Put(0, mark, size, false, Start)
		}
		f.Put(indent, l, size, false, Start)
		f.Y += size * 1.35
	}
}
