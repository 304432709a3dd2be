package canvas

import (
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"
)

// Style is what a terminal is sent before and after a run of one pen: whole
// escape sequences, made once.
type Style struct{ Open, Close string }

// Rows returns the canvas without styling: h lines, each exactly w cells wide.
func (c *Canvas) Rows() []string { return c.Render(nil) }

// Render returns h lines, each exactly w cells wide; runs of one pen are put
// between the style's sequences, by pen number. A pen without a style is plain.
func (c *Canvas) Render(styles []Style) []string {
	c.out = c.out[:0]
	ends := make([]int, c.h)
	for y := range ends {
		from := len(c.out)
		if wide := c.row(y, styles, false); wide && ansi.StringWidth(string(c.out[from:])) != c.w {
			// Neighbouring labels have joined to another width, as the halves
			// of a flag do: this row goes without such characters.
			c.out = c.out[:from]
			c.row(y, styles, true)
		}
		ends[y] = len(c.out)
	}
	all := string(c.out)
	rows := make([]string, c.h)
	from := 0
	for y, to := range ends {
		rows[y] = all[from:to]
		from = to
	}
	return rows
}

// row appends one line to out; it says whether the line has text beyond ASCII.
// With plain such text is replaced by question marks.
func (c *Canvas) row(y int, styles []Style, plain bool) (beyond bool) {
	open := -1
	row := c.cells[y*c.w : (y+1)*c.w]
	for i := range row {
		at := &row[i]
		if at.text == textTail && !plain {
			continue
		}
		blank := at.bits == 0 && at.text == 0
		pen := int(at.pen)
		if blank || pen >= len(styles) || styles[pen].Open == "" {
			pen = -1
		}
		if pen != open {
			if open >= 0 {
				c.out = append(c.out, styles[open].Close...)
			}
			if pen >= 0 {
				c.out = append(c.out, styles[pen].Open...)
			}
			open = pen
		}
		switch {
		case blank:
			c.out = append(c.out, ' ')
		case at.text == 0:
			c.out = utf8.AppendRune(c.out, c.glyphs.glyph(*at))
		case at.text == textTail:
			c.out = append(c.out, ' ')
		default:
			label := c.labels[at.text-1]
			if label[0] >= utf8.RuneSelf || len(label) > 1 {
				beyond = true
				if plain {
					label = "?"
				}
			}
			c.out = append(c.out, label...)
		}
	}
	if open >= 0 {
		c.out = append(c.out, styles[open].Close...)
	}
	return beyond
}
