package bench

import "strings"

// big draws text in rows of block characters, no wider than width and at most
// tall rows high: as large as goes, but never less than least rows, however
// narrow that makes the letters look. It returns nothing when the text is empty
// or does not fit even with letters five columns wide. Characters it has no
// letter for are left out.
func big(text string, width, least, tall int, ink rune) []string {
	text = strings.Map(func(r rune) rune {
		if _, known := letters[r]; !known {
			return -1
		}
		return r
	}, text)
	if text == "" {
		return nil
	}
	least, tall = max(least, squares), max(tall, least, squares)
	wide := squares
	for columns(text, wide+1) <= width && wide < 2*tall {
		wide++
	}
	if columns(text, wide) > width {
		return nil
	}
	rows := min(max(least, wide), tall)
	for wide > squares && wide > 2*rows { // letters wider than they are high are hard to read
		wide--
	}
	return draw(text, wide, rows, ink)
}

// columns is how wide text is with letters of wide columns.
func columns(text string, wide int) int {
	sum := -gap(wide)
	for _, r := range text {
		sum += letterWidth(r, wide) + gap(wide)
	}
	return sum
}

// gap is what stands between two letters.
func gap(wide int) int { return max(1, wide/squares) }

// letterWidth scales the width of r as that of a whole letter.
func letterWidth(r rune, wide int) int {
	return max(1, len(letters[r][0])*wide/squares)
}

// draw scales the squares by taking, for each cell, the square its middle falls
// in, which keeps letters symmetrical at any size.
func draw(text string, wide, rows int, ink rune) []string {
	lines := make([]string, rows)
	for y := range lines {
		var b strings.Builder
		for i, r := range text {
			if i > 0 {
				b.WriteString(strings.Repeat(" ", gap(wide)))
			}
			row := letters[r][middle(y, rows, squares)]
			w := letterWidth(r, wide)
			for x := range w {
				if row[middle(x, w, len(row))] == '#' {
					b.WriteRune(ink)
				} else {
					b.WriteByte(' ')
				}
			}
		}
		lines[y] = b.String()
	}
	return lines
}

// middle maps the middle of cell i of n to one of the squares.
func middle(i, n, squares int) int { return (2*i + 1) * squares / (2 * n) }
