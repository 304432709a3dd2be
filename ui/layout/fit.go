package layout

import (
	"strings"
	"unicode/utf8"

	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"

	"chape/project/plain"
)

// Fit returns exactly h lines of exactly w cells: lines are cut or padded with
// spaces, missing ones are blank. A line that was cut ends its styling.
func Fit(lines []string, w, h int) []string {
	w, h = max(w, 0), max(h, 0)
	fitted := make([]string, h)
	blank := strings.Repeat(" ", w)
	for i := range fitted {
		fitted[i] = blank
		if i < len(lines) {
			fitted[i] = Line(lines[i], w)
		}
	}
	return fitted
}

// Line returns s on exactly w cells.
func Line(s string, w int) string {
	s = line(s, w)
	return s + strings.Repeat(" ", max(w-ansi.StringWidth(s), 0))
}

// line cuts s to at most w cells, with an ellipsis where something is missing.
func line(s string, w int) string {
	if w <= 0 {
		return ""
	}
	s = oneLine(s)
	styled := strings.Contains(s, "\x1b")
	if ansi.StringWidth(s) > w {
		s = ansi.Truncate(s, w, "…")
	}
	if styled && !strings.HasSuffix(s, reset) && !strings.HasSuffix(s, "\x1b[m") {
		s += reset
	}
	return s
}

const reset = "\x1b[0m"

// oneLine keeps what moves the cursor out of a line; widths could not be told
// with it.
func oneLine(s string) string {
	if !strings.ContainsAny(s, "\n\r\t\b\v\f") {
		return s
	}
	return strings.Map(func(r rune) rune {
		switch r {
		case '\n', '\r', '\t', '\v', '\f':
			return ' '
		case '\b':
			return -1
		}
		return r
	}, s)
}

// Ends returns exactly w cells with left at the left and right at the right;
// when both do not fit the left one is cut, and when right alone does not fit
// it is cut too.
func Ends(left, right string, w int) string {
	right = line(right, w)
	wide := ansi.StringWidth(right)
	if wide == 0 {
		return Line(left, w)
	}
	room := w - wide - 1
	if room < 0 {
		return Line(right, w)
	}
	both := Line(left, room) + " " + right
	if ansi.StringWidth(both) != w { // a stray accent has joined what stands before it
		both = Line(asked(left), room) + " " + Line(asked(right), wide)
	}
	return both
}

// asked puts a question mark for every character beyond ASCII.
func asked(s string) string {
	return strings.Map(func(r rune) rune {
		if r < utf8.RuneSelf {
			return r
		}
		return '?'
	}, s)
}

// Beside joins blocks of the same height side by side.
func Beside(blocks ...[]string) []string {
	if len(blocks) == 0 {
		return nil
	}
	joined := make([]string, len(blocks[0]))
	for i := range joined {
		var b strings.Builder
		for _, block := range blocks {
			if i < len(block) {
				b.WriteString(block[i])
			}
		}
		joined[i] = b.String()
	}
	return joined
}

// Wrap is plain.Wrap: lines of at most w cells, figures whole.
func Wrap(text string, w int) []string { return plain.Wrap(text, w) }

// Paragraph breaks text into at most most lines of at most w cells, each in style;
// where lines are left out the last one ends with an ellipsis.
func Paragraph(text string, w, most int, style lipgloss.Style) []string {
	if text == "" || most <= 0 || w <= 0 {
		return nil
	}
	lines := Wrap(text, w)
	if len(lines) > most {
		rest := strings.Join(lines[most-1:], " ")
		lines = append(lines[:most-1], ansi.Truncate(rest, w-1, "")+"…")
	}
	for i := range lines {
		lines[i] = style.Render(strings.TrimRight(lines[i], " "))
	}
	return lines
}
