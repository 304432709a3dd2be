package sheet

import (
	"fmt"
	"strings"

	"chape/calc/length"
)

// Paper is a sheet as it lies in the printer, mm.
type Paper struct {
	Name   string
	Width  float64
	Height float64
}

// The papers with names: ISO 216, and ANSI/ASME Y14.1 for letter; legal is
// 8.5 by 14 in.
var Papers = []Paper{
	{"a4", 210, 297},
	{"a3", 297, 420},
	{"letter", 8.5 * 25.4, 11 * 25.4},
	{"legal", 8.5 * 25.4, 14 * 25.4},
}

// edge is how near to the paper's edge nothing is printed, mm.
const edge = 8.0

// Bounds on a sheet: the pricks and the words have to fit on it, and a
// printer has to exist for it.
const (
	leastWidth  = 148
	leastHeight = 180
	mostSide    = 2500
)

// ParsePaper reads a4, a3, letter, legal, or width by height as in 210x297,
// 8.5x11in or 11 in x 17 in. A bare number is millimetres; one unit at the
// end stands for both.
func ParsePaper(s string) (Paper, error) {
	low := strings.ToLower(strings.TrimSpace(s))
	for _, p := range Papers {
		if p.Name == low {
			return p, nil
		}
	}
	refuse := fmt.Errorf("%.40q is not a paper: try a4, a3, letter, legal, 210x297 or 8.5x11in", s)
	w, h, ok := strings.Cut(strings.ReplaceAll(low, "×", "x"), "x")
	if !ok {
		return Paper{}, refuse
	}
	unit := length.Millimetres
	if t := strings.TrimRight(h, " ."); strings.HasSuffix(t, "in") || strings.HasSuffix(t, "inch") || strings.HasSuffix(t, `"`) {
		unit = length.Inches
	}
	width, err1 := length.Parse(w, unit)
	height, err2 := length.Parse(h, unit)
	if err1 != nil || err2 != nil {
		return Paper{}, refuse
	}
	p := Paper{Name: fmt.Sprintf("%s x %s mm", width.Short(length.Millimetres), height.Short(length.Millimetres)), Width: width.MM(), Height: height.MM()}
	return p, p.Check()
}

// OrFirst is the paper, or the first of those with names if it is the zero value.
func (p Paper) OrFirst() Paper {
	if p.Width == 0 {
		return Papers[0]
	}
	return p
}

// Check refuses paper that the sheets can't be laid out on.
func (p Paper) Check() error {
	switch {
	case p.Width < leastWidth || p.Height < leastHeight:
		return fmt.Errorf("paper %q is too small for the scale pricks and the words: use at least %d x %d mm", p.Name, leastWidth, leastHeight)
	case p.Width > mostSide || p.Height > mostSide:
		return fmt.Errorf("paper %q is too large: use at most %d mm a side", p.Name, mostSide)
	}
	return nil
}

// Area is what may be printed on, measured on paper: its size, and where the
// corrected file puts its middle.
func (p Paper) Area(c Correction) (w, h float64) {
	fx, fy := c.Factors()
	return (p.Width - 2*edge) / max(fx, 1), (p.Height - 2*edge) / max(fy, 1)
}
