package leather

import (
	"strings"
	"testing"

	"chape/calc/bend"
	"chape/calc/length"
	"chape/project"
	"chape/project/money"
)

// A project takes of a leather what was measured of it, and says what it has not; the bend to
// a thousandth, and a thickness that a gauge does not tell apart stays as it was typed.
func TestCutFromIt(t *testing.T) {
	l := Leather{Name: "shoulder", Thickness: 3.24, Price: money.ByArea{M2: "92.50"}, Neutral: bend.Neutral{K: 0.45678, Plus: 0.04, Of: 3}}
	p := project.Defaults()
	p.Sold.Body = "8-9 oz"
	if got := l.HeldBy(p); got != "" {
		t.Errorf("another's: %q", got)
	}
	l.Onto(&p)
	if p.Sheath.Neutral != 0.457 || p.Sheath.Leather != 3.2 || p.Sold.Body != "8-9 oz" || p.Hide.Price.M2 != "92.50" || l.HeldBy(p) != "it is" {
		t.Errorf("taken: %v, %v, %q, %+v, %q", p.Sheath.Neutral, p.Sheath.Leather, p.Sold.Body, p.Hide, l.HeldBy(p))
	}
	for want, do := range map[string]func(p *project.Project){
		"it is, but for the bend":      func(p *project.Project) { p.Sheath.Neutral = 0.5 },
		"it is, but for the thickness": func(p *project.Project) { p.Sheath.Leather = 3.3 },
		"it is, but for the price":     func(p *project.Project) { p.Hide.Price = money.ByArea{} },
	} {
		q := p.Clone()
		do(&q)
		if got := l.HeldBy(q); got != want {
			t.Errorf("%q, want %q", got, want)
		}
		if l.Onto(&q); l.HeldBy(q) != "it is" {
			t.Errorf("taken once more: %q", l.HeldBy(q))
		}
	}
	thick := l
	thick.Thickness, thick.Neutral.Of = 4, 0
	if thick.Onto(&p); p.Sheath.Leather != 4 || p.Sold.Body != "" || p.Sheath.Neutral != 0.457 {
		t.Errorf("of a thicker one whose bend nobody measured: %v, %q, %v", p.Sheath.Leather, p.Sold.Body, p.Sheath.Neutral)
	}
	if got := l.Bend(); got != "0.46 ± 0.04 of its thickness, of 3 strips" {
		t.Error(got)
	}
}

// A flaw beside the piece is refused with where the piece is; one that lies over its edge is a
// flaw of it.
func TestFlawOffThePiece(t *testing.T) {
	l := Leather{Width: 300, Height: 200}
	for text, off := range map[string]bool{"310 100 30": false, "316 100 30": true, "-16 100 30": true, "150 -20 30": true, "150 210 30": false, "150 216 30": true} {
		_, err := l.ReadFlaw(text, length.Millimetres)
		if (err != nil) != off {
			t.Errorf("%s: %v", text, err)
		}
		if off && !strings.Contains(err.Error(), "from 0 mm, 0 mm to 300 mm, 200 mm") {
			t.Errorf("%s: %v", text, err)
		}
	}
	if _, err := (Leather{}).ReadFlaw("316 100 30", length.Millimetres); err != nil {
		t.Errorf("of a hide's figures alone: %v", err)
	}
}

func TestSizesOfAddedParts(t *testing.T) {
	for want, p := range map[string]project.Part{
		"60 mm × 30 mm":             {Length: 60, Width: 30},
		"60 mm × 30 mm, 2 mm thick": {Length: 60, Width: 30, Thickness: 2},
		"2 half-widths":             {Halves: "0 10; 40 20"},
		"2 half-widths, 2 mm thick": {Halves: "0 10; 40 20;", Thickness: 2},
	} {
		if got := SizeOf(p, length.Millimetres); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	if got := Added(project.Part{Name: "loop", Count: 2}) + Added(project.Part{Name: ", flap", Count: 1}); got != "loop × 2, flap" {
		t.Error(got)
	}
}
