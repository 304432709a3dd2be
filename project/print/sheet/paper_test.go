package sheet

import (
	"math"
	"strings"
	"testing"
)

// The A sizes of ISO 216 are A0, 841 × 1189 mm, halved along its longer side and rounded
// down; letter is 8 1/2 × 11 in (ANSI/ASME Y14.1), legal 8 1/2 × 14 in; an inch is 25.4 mm.
func TestPapersAreThoseOfTheStandards(t *testing.T) {
	a := map[int][2]float64{0: {841, 1189}}
	for n := 1; n <= 4; n++ {
		a[n] = [2]float64{math.Floor(a[n-1][1] / 2), a[n-1][0]}
	}
	for name, want := range map[string][2]float64{"a4": a[4], "a3": a[3], "letter": {215.9, 279.4}, "legal": {215.9, 355.6}} {
		p, err := ParsePaper(name)
		if err != nil || math.Abs(p.Width-want[0]) > 1e-9 || math.Abs(p.Height-want[1]) > 1e-9 || p.Name != name {
			t.Errorf("%s is %+v, %v, want %v", name, p, err, want)
		}
	}
	for _, p := range Papers {
		if err := p.Check(); err != nil {
			t.Errorf("%s: %v", p.Name, err)
		}
	}
	if (Paper{}).OrFirst() != Papers[0] || Papers[0].Name != "a4" || Papers[2].OrFirst() != Papers[2] {
		t.Errorf("no paper is %+v", Paper{}.OrFirst())
	}
}

// Paper is read as it is typed: in capitals, with a cross or an x, in millimetres or, with
// one unit at the end for both, inches.
func TestParsePaper(t *testing.T) {
	for typed, want := range map[string]Paper{
		" A4 ": Papers[0], "Letter": Papers[2], "200x300": {"200 x 300 mm", 200, 300}, "200×300": {"200 x 300 mm", 200, 300}, "200 X 300 mm": {"200 x 300 mm", 200, 300},
		"8.5x11in": {"215.9 x 279.4 mm", 215.9, 279.4}, "8.5 x 11 in": {"215.9 x 279.4 mm", 215.9, 279.4}, `8 1/2x11"`: {"215.9 x 279.4 mm", 215.9, 279.4}, "210,5x297": {"210.5 x 297 mm", 210.5, 297},
	} {
		got, err := ParsePaper(typed)
		if err != nil || got.Name != want.Name || math.Abs(got.Width-want.Width) > 1e-9 || math.Abs(got.Height-want.Height) > 1e-9 {
			t.Errorf("ParsePaper(%q) = %+v, %v, want %+v", typed, got, err, want)
		}
	}
}

// What is no paper, and paper that nothing can be laid out on, is refused in one line that
// says what would do.
func TestPaperSaysWhatWouldDo(t *testing.T) {
	for typed, want := range map[string]string{
		"a9": "try a4, a3, letter, legal, 210x297 or 8.5x11in", "": "try a4", strings.Repeat("x", 500): "try a4", "210x": "try a4", "-210x297": "too small", "100x100": "use at least 148 x 180 mm",
		"147x300": "use at least 148", "200x179": "x 180 mm", "2501x300": "use at most 2500 mm", "300x2501": "use at most 2500 mm", "8.5x11": "too small",
	} {
		_, err := ParsePaper(typed)
		if err == nil || !strings.Contains(err.Error(), want) || strings.Contains(err.Error(), "\n") || len(err.Error()) > 200 {
			t.Errorf("ParsePaper(%.20q): %v, want %q", typed, err, want)
		}
	}
	for _, typed := range []string{"148x180", "2500x2500"} {
		if _, err := ParsePaper(typed); err != nil {
			t.Errorf("%s is refused: %v", typed, err)
		}
	}
}

// 8 mm all round are kept free in the file and on the paper: of what is stretched for a printer
// that prints too small, less can be used, and of what is shrunk no more.
func TestAreaKeepsTheRim(t *testing.T) {
	for _, p := range Papers {
		for _, c := range []Correction{{}, {X: 98.5, Y: 101.2}, {X: 95, Y: 105}, {X: 101}, {Y: 97}} {
			w, h := p.Area(c)
			fx, fy := c.Factors()
			if inFile := w * fx; inFile > p.Width-16+1e-9 || w > p.Width-16+1e-9 {
				t.Errorf("%s, %v: %.3f mm wide, %.3f in the file, of %v", p.Name, c, w, inFile, p.Width)
			}
			if inFile := h * fy; inFile > p.Height-16+1e-9 || h > p.Height-16+1e-9 {
				t.Errorf("%s, %v: %.3f mm high, %.3f in the file, of %v", p.Name, c, h, inFile, p.Height)
			}
			if max(w, w*fx) < p.Width-16-1e-9 || max(h, h*fy) < p.Height-16-1e-9 {
				t.Errorf("%s, %v: %.3f × %.3f leaves paper unused", p.Name, c, w, h)
			}
		}
	}
}
