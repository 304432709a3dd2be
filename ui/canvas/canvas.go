// Package canvas is a drawing surface of character cells: lines in the types
// of technical drawings, markers and text, in braille, blocks or ASCII.
package canvas

import "math"

// Pen tells the parts of a drawing apart so that each can have its colour. The
// caller numbers its pens; 0 is the plain one.
type Pen uint8

// Line directions that have passed through a cell.
const (
	dirLevel uint8 = 1 << iota
	dirUpright
	dirRising  // up to the right
	dirFalling // down to the right
)

// What kinds of line have passed through a cell.
const (
	lookWide uint8 = 1 << iota
	lookBroken
	lookDot
)

// cell is one character's place.
type cell struct {
	bits uint8 // the dots set, in the glyph set's own numbering
	dirs uint8
	look uint8
	pen  Pen
	text uint16 // 0, or 1 + index into labels, or textTail
}

// textTail marks the second cell of a wide character.
const textTail = math.MaxUint16

// Canvas is a surface of w×h cells. It keeps its buffers between frames: use
// one, and Clear it.
type Canvas struct {
	w, h         int // cells
	glyphs       Glyphs
	across, down int // dots a cell
	aspect       float64
	tall         float64 // height of a dot in dot widths
	cells        []cell
	labels       []string // clusters of text, by index
	out          []byte
}

// DefaultAspect is the usual height of a cell in cell widths.
const DefaultAspect = 2.0

// New returns a clear canvas of w×h cells; a negative size counts as 0.
func New(w, h int, g Glyphs) *Canvas {
	c := &Canvas{aspect: DefaultAspect}
	c.Reset(w, h, g)
	return c
}

// Reset clears the canvas and gives it a size and glyphs, keeping buffers
// where they suffice.
func (c *Canvas) Reset(w, h int, g Glyphs) {
	c.w, c.h, c.glyphs = max(w, 0), max(h, 0), g
	c.across, c.down = g.Dots()
	if n := c.w * c.h; cap(c.cells) < n {
		c.cells = make([]cell, n)
	} else {
		c.cells = c.cells[:n]
	}
	c.SetAspect(c.aspect)
	c.Clear()
}

// SetAspect sets a cell's height in cell widths, which fonts differ in. What
// is not between 1 and 4 is no font: DefaultAspect is taken.
func (c *Canvas) SetAspect(aspect float64) {
	if !(aspect >= 1 && aspect <= 4) {
		aspect = DefaultAspect
	}
	c.aspect = aspect
	c.tall = aspect * float64(c.across) / float64(c.down)
}

// Clear wipes everything drawn.
func (c *Canvas) Clear() {
	clear(c.cells)
	c.labels = c.labels[:0]
}

// Size is the size in cells.
func (c *Canvas) Size() (w, h int) { return c.w, c.h }

// Dots is the size in dots: dot (0, 0) is the upper left, its middle at
// (0.5, 0.5).
func (c *Canvas) Dots() (w, h int) { return c.w * c.across, c.h * c.down }

// Cell is the cell that holds a place given in dots; it may lie outside.
func (c *Canvas) Cell(x, y float64) (cx, cy int) {
	return floor(x / float64(c.across)), floor(y / float64(c.down))
}

// Dot sets one dot, as a marker without direction. Outside the canvas nothing
// happens.
func (c *Canvas) Dot(x, y float64, pen Pen) {
	c.set(floor(x), floor(y), 0, lookDot, pen)
}

// set sets the dot at column x, row y.
func (c *Canvas) set(x, y int, dir, look uint8, pen Pen) {
	if uint(x) >= uint(c.w*c.across) || uint(y) >= uint(c.h*c.down) {
		return
	}
	var at *cell
	switch c.glyphs {
	case Braille:
		at = &c.cells[y/4*c.w+x/2]
		at.bits |= brailleBits[y%4][x%2]
	case Blocks:
		at = &c.cells[y/2*c.w+x/2]
		at.bits |= 1 << (y%2*2 + x%2)
	default:
		at = &c.cells[y/2*c.w+x]
		at.bits |= 1 << (y % 2)
	}
	at.dirs |= dir
	at.look |= look
	at.pen = pen
}

// floor is the whole part, held within what an int surely holds; NaN is far
// outside.
func floor(x float64) int {
	const far = 1 << 30
	if !(x > -far) {
		return -far
	}
	if x > far {
		return far
	}
	return int(math.Floor(x))
}
