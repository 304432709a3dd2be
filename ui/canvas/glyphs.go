package canvas

import (
	"fmt"
	"strings"
)

// Glyphs is the set of characters that a drawing is made of.
type Glyphs uint8

// The three sets. Many fonts lack braille, some lack the quadrant blocks;
// ASCII is there in every terminal.
const (
	Braille Glyphs = iota // 2×4 dots a cell
	Blocks                // 2×2 quadrants a cell, thin lines as light box lines
	ASCII                 // 1×2 places a cell, characters chosen by direction
)

// Dots returns how many dots a cell has across and down.
func (g Glyphs) Dots() (across, down int) {
	switch g {
	case Braille:
		return 2, 4
	case Blocks:
		return 2, 2
	default:
		return 1, 2
	}
}

// String returns the name used in the configuration.
func (g Glyphs) String() string {
	switch g {
	case Braille:
		return "braille"
	case Blocks:
		return "blocks"
	default:
		return "ascii"
	}
}

// ParseGlyphs reads the name used in the configuration.
func ParseGlyphs(s string) (Glyphs, error) {
	for _, g := range []Glyphs{Braille, Blocks, ASCII} {
		if strings.EqualFold(strings.TrimSpace(s), g.String()) {
			return g, nil
		}
	}
	return ASCII, fmt.Errorf("%q is not a set of glyphs: try braille, blocks or ascii", s)
}

// brailleBits are the bits of U+2800 by row, then column (The Unicode
// Standard, chapter 21.1, Braille Patterns).
var brailleBits = [4][2]uint8{{0x01, 0x08}, {0x02, 0x10}, {0x04, 0x20}, {0x40, 0x80}}

// quadrants are the Block Elements by bit: 1 upper left, 2 upper right,
// 4 lower left, 8 lower right.
var quadrants = [16]rune{' ', '▘', '▝', '▀', '▖', '▌', '▞', '▛', '▗', '▚', '▐', '▜', '▄', '▙', '▟', '█'}

// glyph is the character for a cell without text; bits are not 0.
func (g Glyphs) glyph(c cell) rune {
	switch g {
	case Braille:
		return 0x2800 + rune(c.bits)
	case Blocks:
		switch {
		case c.look&lookWide != 0:
			return quadrants[c.bits&15]
		case c.look&lookDot != 0:
			return '•'
		default:
			return lightLine(c.dirs)
		}
	default:
		return asciiGlyph(c)
	}
}

// lightLine is the box character for the directions that meet in a cell.
func lightLine(dirs uint8) rune {
	switch dirs {
	case dirLevel:
		return '─'
	case dirUpright:
		return '│'
	case dirRising:
		return '╱'
	case dirFalling:
		return '╲'
	case dirRising | dirFalling:
		return '╳'
	default:
		return meeting(dirs, '─', '│', '╱', '╲', '┼')
	}
}

// asciiGlyph tells wide and broken lines, drawn by direction, from thin ones,
// drawn with stops at their height in the cell.
func asciiGlyph(c cell) rune {
	upper, lower := c.bits&1 != 0, c.bits&2 != 0
	if c.look&lookDot != 0 {
		return 'o'
	}
	if c.look&(lookWide|lookBroken) == 0 {
		switch {
		case upper && lower:
			return ':'
		case upper:
			return '\''
		default:
			return '.'
		}
	}
	level := '-'
	if lower && !upper {
		level = '_'
	}
	switch c.dirs {
	case dirLevel:
		return level
	case dirUpright:
		return '|'
	case dirRising:
		return '/'
	case dirFalling:
		return '\\'
	case dirRising | dirFalling:
		return 'x'
	default:
		return meeting(c.dirs, level, '|', '/', '\\', '+')
	}
}

// meeting chooses one character where a line bends within a cell: a slant next
// to level or upright is the slant; level and upright cross.
func meeting(dirs uint8, level, upright, rising, falling, cross rune) rune {
	switch {
	case dirs&dirLevel != 0 && dirs&dirUpright != 0:
		return cross
	case dirs&dirRising != 0 && dirs&dirFalling == 0:
		return rising
	case dirs&dirFalling != 0 && dirs&dirRising == 0:
		return falling
	case dirs&dirLevel != 0:
		return level
	default:
		return upright
	}
}
