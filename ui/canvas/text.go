package canvas

import (
	"unicode"

	"github.com/charmbracelet/x/ansi"
)

// Text writes over the drawing from cell (cx, cy) on; what does not fit is cut
// off. It is one line: control characters, escapes and characters without a
// width are left out.
func (c *Canvas) Text(cx, cy int, s string, pen Pen) {
	if cy < 0 || cy >= c.h {
		return
	}
	for len(s) > 0 && cx < c.w {
		cluster, wide := ansi.FirstGraphemeCluster(s, ansi.GraphemeWidth)
		if len(cluster) == 0 {
			return
		}
		s = s[len(cluster):]
		if wide < 1 || wide > 2 || !printable(cluster) {
			continue
		}
		if cx >= 0 && cx+wide <= c.w {
			c.label(cx, cy, cluster, wide, pen)
		}
		cx += wide
	}
}

// printable says whether a cluster is free of controls and of format
// characters.
func printable(cluster string) bool {
	for _, r := range cluster {
		if !unicode.IsGraphic(r) || r == unicode.ReplacementChar {
			return false
		}
	}
	return true
}

// label puts one cluster into its cells.
func (c *Canvas) label(cx, cy int, cluster string, wide int, pen Pen) {
	if len(c.labels) >= textTail-1 {
		return
	}
	c.wipe(cx, cy)
	c.labels = append(c.labels, cluster)
	row := c.cells[cy*c.w : (cy+1)*c.w]
	if wide == 2 {
		c.wipe(cx+1, cy)
		row[cx+1].text, row[cx+1].pen = textTail, pen
	}
	row[cx].text, row[cx].pen = uint16(len(c.labels)), pen
}

// wipe takes away the text at a cell, both halves of a wide one.
func (c *Canvas) wipe(cx, cy int) {
	row := c.cells[cy*c.w : (cy+1)*c.w]
	if row[cx].text == textTail && cx > 0 {
		row[cx-1].text = 0
	}
	if cx+1 < c.w && row[cx+1].text == textTail {
		row[cx+1].text = 0
	}
	row[cx].text = 0
}
