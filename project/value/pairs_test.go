package value

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"unicode"

	"chape/calc/curve"
	"chape/calc/length"
)

// 1 3/8 in are 34.925 mm: 25.4 to the inch, 16 CFR 500.19.
func TestPairs(t *testing.T) {
	for _, c := range []struct {
		text string
		unit length.Unit
		want []curve.Vec
	}{
		{"", length.Millimetres, nil}, {" ; ;", length.Millimetres, nil},
		{"0 10; 40 20; 80 8", length.Millimetres, []curve.Vec{{X: 0, Y: 10}, {X: 40, Y: 20}, {X: 80, Y: 8}}},
		{" 0\t10 ;40,5 -2 ; ", length.Millimetres, []curve.Vec{{X: 0, Y: 10}, {X: 40.5, Y: -2}}},
		{"1/2 3mm", length.Millimetres, []curve.Vec{{X: 12.7, Y: 3}}},
		{"1-3/8 -2", length.Inches, []curve.Vec{{X: 34.925, Y: -50.8}}},
	} {
		got, err := Pairs(c.text, c.unit)
		if err != nil || len(got) != len(c.want) {
			t.Errorf("%q: %v, %v", c.text, got, err)
			continue
		}
		for i := range got {
			if got[i].Dist(c.want[i]) > 1e-9 {
				t.Errorf("%q: place %d is %v, want %v", c.text, i, got[i], c.want[i])
			}
		}
	}
}

func TestPairsRefuses(t *testing.T) {
	for text, want := range map[string]string{
		"0 10; 40":     `"40" is no place: write two figures for each`,
		"0 10 40 20":   `"0 10 40 20" is no place`,
		"0 10, 40 20":  `is no place`,
		"0 x":          `"x" is not a length`,
		"0 NaN":        `"NaN" is not a length`,
		"0 1e9":        `"1e9" is not a length`,
		"\x1b[2J 1 2":  `is no place`,
		"0 9999999":    "more than a kilometre",
		"0 8oz":        "is a leather weight",
		"1 2; \x00 \a": `is not a length`,
	} {
		got, err := Pairs(text, length.Millimetres)
		if err == nil || got != nil || !strings.Contains(err.Error(), want) || strings.ContainsFunc(err.Error(), unicode.IsControl) {
			t.Errorf("%q: %v, %v, want %q in one line", text, got, err, want)
		}
	}
	if _, err := Pairs("0 10 1/2; 12 0", length.Inches); err == nil || !strings.Contains(err.Error(), `"0 10 1/2" is no place`) || !strings.Contains(err.Error(), "a fraction behind a hyphen") || !strings.Contains(err.Error(), "0 10-1/2; 12 0") {
		t.Errorf("a fraction behind a space: %v", err)
	}
	if _, err := Pairs(strings.Repeat("7", 9000), length.Millimetres); err == nil || len(err.Error()) > 200 {
		t.Errorf("a long one: %v", err)
	}
}

// What SayPairs says Pairs reads: in millimetres to the fourth decimal, in inches as near as
// a calliper shows.
func TestPairsRoundTrip(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for range 300 {
		var at []curve.Vec
		for range r.IntN(8) {
			at = append(at, curve.Vec{X: r.Float64()*900 - 100, Y: r.Float64()*900 - 100})
		}
		for u, near := range map[length.Unit]float64{length.Millimetres: 0.0001, length.Inches: 0.08} {
			text := SayPairs(at, u)
			back, err := Pairs(text, u)
			if err != nil || len(back) != len(at) {
				t.Fatalf("%v is said as %q, read as %v, %v", at, text, back, err)
			}
			for i := range at {
				if back[i].Dist(at[i]) > near {
					t.Fatalf("%v is said as %q, read as %v", at[i], text, back[i])
				}
			}
			if SayPairs(back, u) != text {
				t.Fatalf("%q is said as %q the second time", text, SayPairs(back, u))
			}
		}
	}
	if got := SayPairs([]curve.Vec{{X: 34.925, Y: -38.1}, {X: 25.4, Y: 0}}, length.Inches); got != "1-3/8 -1-1/2; 1 0" {
		t.Errorf("in inches %q", got)
	}
}

// Words that are no place say nothing, nor do places before 0 or past the end.
func TestPlacesText(t *testing.T) {
	if got := Places(" 12.5 x 3 -1 1e9 NaN 3", 2000); !slices.Equal(got, []length.Length{3, 3, 12.5}) || SayPlaces(got) != "3 3 12.5" {
		t.Errorf("%v, %q", got, SayPlaces(got))
	}
	if got := Places("100 100.1 -0.1 0 Inf -Inf 99 \x1b", 100); !slices.Equal(got, []length.Length{0, 99, 100}) {
		t.Errorf("up to 100: %v", got)
	}
	if got := Places(" ", 100); len(got) != 0 || SayPlaces(nil) != "" {
		t.Errorf("nothing: %v", got)
	}
	r := rand.New(rand.NewPCG(9, 10))
	for range 200 {
		var ls []length.Length
		for range r.IntN(9) {
			ls = append(ls, length.Length(r.Float64()*math.Pow10(r.IntN(4))))
		}
		slices.Sort(ls)
		if back := Places(SayPlaces(ls), 2000); !slices.Equal(back, ls) { // to the last bit: they are compared with marks
			t.Fatalf("%v comes back as %v", ls, back)
		}
	}
}
