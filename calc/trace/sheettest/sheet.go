// Package sheettest draws tracing sheets by the figures of their definition, not by those of the reader, and
// photographs them: for the tests of the rooms that read them.
package sheettest

import "math"

// Light of the three channels, 0 to 1.
type Light [3]float64

// What a sheet is of: paper, ink, and the table that it lies on.
var (
	Paper = Light{0.8, 0.8, 0.8}
	Ink   = Light{0.05, 0.05, 0.05}
	Table = Light{0.3, 0.3, 0.3}
)

// Sheet is a printed sheet of so many mm inside its frame. The origin is the frame's inner corner beside the dotted mark.
type Sheet struct {
	Width, Height float64
	Version       int // 0 is 1
	// On, unless nil, is what lies or is drawn on the sheet, over whatever is printed.
	On func(x, y float64) (Light, bool)
	// Plain leaves frame, marks and row out.
	Plain bool
}

// At is the light that the sheet throws back at a place.
func (s Sheet) At(x, y float64) Light {
	if s.On != nil {
		if l, ok := s.On(x, y); ok {
			return l
		}
	}
	switch {
	case x < -13 || y < -13 || x > s.Width+18 || y > s.Height+18:
		return Table
	case !s.Plain && s.inked(x, y):
		return Ink
	}
	return Paper
}

// inked tells where the printer puts black.
func (s Sheet) inked(x, y float64) bool {
	u, v := min(x, s.Width-x), min(y, s.Height-y) // from the nearer sides
	switch {
	case u < -5 || v < -5:
		return false
	case u < 10 && v < 10: // a mark, its middle 2.5 mm inside
		r := math.Hypot(u-2.5, v-2.5)
		dot := x < 10 && y < 10 && r < 1.75
		return (r < 3 || r > 5.5) && !dot
	case v < 0:
		return black(x, s.Width)
	case u < 0:
		return black(y, s.Height)
	case y > 2.5 && y < 6.5 && x > 15 && x < 90:
		return s.Row()[int((x-15)/2.5)]
	}
	return false
}

// black tells which squares of a side are: every other one from 15 mm on, and none beside a mark.
func black(along, long float64) bool {
	i := int(math.Floor(along / 5))
	return i >= 3 && i%2 == 1 && float64(i)*5 < long-16
}

// Row is the code row by its definition: start, width and height in squares of 5 mm with 8 bits each, the version with 4, CRC-8 with
// polynomial 0x07 over these 20 bits, stop; divided as on paper, bit by bit.
func (s Sheet) Row() (cells [30]bool) {
	data := uint32(s.Width/5+0.5)<<12 | uint32(s.Height/5+0.5)<<4 | uint32(max(s.Version, 1))
	rest := data << 8
	for i := 27; i >= 8; i-- {
		if rest>>i&1 == 1 {
			rest ^= 0x107 << (i - 8)
		}
	}
	all := 1<<29 | data<<9 | rest<<1 | 1
	for i := range cells {
		cells[i] = all>>(29-i)&1 == 1
	}
	return cells
}
