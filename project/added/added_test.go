package added

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"chape/calc/length"
)

// By hand: 40 × 25 mm; half-widths 10, 20 and 8 at 0, 40 and 80 enclose
// 2·(600 + 560) = 2320 mm².
func TestOutlineOfAddedParts(t *testing.T) {
	for _, c := range []struct {
		part Part
		want float64
	}{
		{Part{Length: 40, Width: 25}, 1000},
		{Part{Halves: "0 10; 40 20; 80 8"}, 2320},
		{Part{Halves: "0 10;40 20 ; 80 8;", Length: 4}, 2320},
	} {
		l, err := c.part.Outline()
		if err != nil || math.Abs(math.Abs(l.Area())-c.want) > 1e-9 {
			t.Errorf("%+v: area %v, %v, want %v", c.part, l.Area(), err, c.want)
		}
	}
	for text, want := range map[string]string{"0 10; 40": "is no place", "0 10; 40 x": "", "0 10": "two half-widths", "40 10; 0 10": "further along", "0 -1; 2 3": "0 or more"} {
		if _, err := (Part{Halves: text}).Outline(); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("half-widths %q: %v, want %q", text, err, want)
		}
	}
}

// The ends of what a part may be: half-widths of 0 stand at its ends alone, nothing is larger
// than a hide, and there is an outline without a width nowhere.
func TestOutlineAtItsEnds(t *testing.T) {
	for _, c := range []struct {
		part Part
		want string
	}{
		{Part{Halves: "0 0; 40 15; 80 0"}, ""}, {Part{Halves: "0 0; 80 3000"}, ""}, {Part{Halves: "-20 5; 3000 5"}, ""}, {Part{Length: 0.1, Width: 3000}, ""},
		{Part{Halves: "0 10; 40 0; 80 10"}, "a half-width of 0 between its ends makes two parts of it"}, {Part{Halves: "0 0; 40 0"}, "one of them above 0"},
		{Part{Halves: "0 5; 3001 5"}, "of up to 3000 mm"}, {Part{Halves: "0 3001; 9 5"}, "of up to 3000 mm"}, {Part{Halves: "-3001 5; 9 5"}, "of up to 3000 mm"}, {Part{Halves: ";"}, "two half-widths"},
		{Part{Halves: "0 5; 0 5"}, "further along"}, {Part{Length: 40}, "give its length and its width"}, {Part{Width: 40}, "give its length and its width"},
		{Part{Length: length.Length(math.NaN()), Width: 40}, "give its length and its width"}, {Part{Length: -40, Width: 40}, "give its length and its width"},
	} {
		l, err := c.part.Outline()
		if (err == nil) != (c.want == "") || err != nil && !strings.Contains(err.Error(), c.want) {
			t.Errorf("%+v: %v, want %q", c.part, err, c.want)
		}
		if err == nil && l.Area() <= 0 { // counter-clockwise
			t.Errorf("%+v encloses %v", c.part, l.Area())
		}
	}
}

// Drawn from half-widths a part is the same on both sides of its middle line: by hand half of
// its area lies above, and the smallest box is as long as its places and twice as wide.
func TestOutlineIsEven(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 8))
	for range 200 {
		x, area, wide, before := 0.0, 0.0, 0.0, 0.0
		var text []string
		for i := range 2 + r.IntN(8) {
			w := 1 + float64(r.IntN(400))/10
			if i > 0 {
				step := 1 + float64(r.IntN(300))/10
				x, area = x+step, area+step*(before+w) // twice the trapezium above the line
			}
			wide, before = max(wide, w), w
			text = append(text, fmt.Sprintf("%.1f %.1f", x, w))
		}
		l, err := Part{Halves: strings.Join(text, "; ")}.Outline()
		if err != nil || math.Abs(l.Area()-area) > 1e-6 {
			t.Fatalf("%s: area %v, %v, want %v", text, l.Area(), err, area)
		}
		lo, hi := l.Bounds()
		if math.Abs(hi.X-lo.X-x) > 1e-9 || math.Abs(hi.Y-wide) > 1e-9 || math.Abs(lo.Y+wide) > 1e-9 {
			t.Fatalf("%s lies from %v to %v", text, lo, hi)
		}
	}
}

// What will not do is said of the key that it stands in.
func TestCheckNamesTheKey(t *testing.T) {
	for _, c := range []struct {
		part Part
		want string
	}{
		{Part{Length: 40, Width: 25}, ""},
		{Part{Length: 38.1}, "part.length: 1 1/2 in by 0 in: give its length and its width, or half-widths"},
		{Part{Halves: "0 10; x\x1b"}, `part.halves: "0 10; x\x1b": "x\x1b" is no place: write two figures for each, with ";" between places: 0 10; 40 20; 80 8`},
	} {
		said := ""
		c.part.Check(length.Inches, func(key, found, remedy string) { said += key + ": " + found + ": " + remedy })
		if said != c.want {
			t.Errorf("%+v: %q, want %q", c.part, said, c.want)
		}
	}
}
