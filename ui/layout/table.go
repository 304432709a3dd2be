package layout

import (
	"strings"

	"github.com/charmbracelet/x/ansi"
)

// gap is what stands between two columns of a table.
const gap = 2

// Columns are the widths of a table's columns that have room in w cells: the first, a
// name, has at least so many cells and takes what the others leave of w, they are as wide
// as their texts. The last ones go first.
func Columns(rows [][]string, w, least int) []int {
	if len(rows) == 0 {
		return nil
	}
	widths := make([]int, len(rows[0]))
	for _, r := range rows {
		for i, cell := range r {
			widths[i] = max(widths[i], ansi.StringWidth(cell))
		}
	}
	room, n := w-least, 1
	for n < len(widths) && room >= widths[n]+gap {
		room -= widths[n] + gap
		n++
	}
	widths = widths[:n]
	widths[0] = min(w, least+room)
	return widths
}

// Row is a line of a table in columns of such widths: the name to the left, figures to the
// right.
func Row(cells []string, widths []int) string {
	var b strings.Builder
	for i, width := range widths[:min(len(widths), len(cells))] {
		if i == 0 {
			b.WriteString(Line(cells[i], width))
			continue
		}
		b.WriteString(strings.Repeat(" ", max(0, width-ansi.StringWidth(cells[i]))+gap) + cells[i])
	}
	return b.String()
}

// Aligned are the lines of a table, each column as wide as its texts: flush right but for
// so many at the left, and the last, which says what the others are of.
func Aligned(rows [][]string, left int) []string {
	if len(rows) == 0 {
		return nil
	}
	widths := make([]int, len(rows[0]))
	for _, row := range rows {
		for i, cell := range row {
			widths[i] = max(widths[i], ansi.StringWidth(cell))
		}
	}
	var out []string
	for _, row := range rows {
		var b strings.Builder
		for i, cell := range row {
			pad := strings.Repeat(" ", widths[i]-ansi.StringWidth(cell))
			if i > 0 {
				b.WriteString(strings.Repeat(" ", gap))
			}
			if i < left || i == len(row)-1 {
				b.WriteString(cell + pad)
			} else {
				b.WriteString(pad + cell)
			}
		}
		out = append(out, strings.TrimRight(b.String(), " "))
	}
	return out
}
