package length

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strconv"
	"testing"
)

func TestFormat(t *testing.T) {
	tests := []struct {
		l      Length
		u      Unit
		f      Fineness
		figure string
		format string
	}{
		{0, Millimetres, Ruler, "0.0", "0 mm"},
		{0, Inches, Ruler, "0", "0 in"},
		{12.5, Millimetres, Ruler, "12.5", "12.5 mm"},
		{12.24, Millimetres, Ruler, "12.0", "12 mm"},
		{12.25, Millimetres, Ruler, "12.5", "12.5 mm"},
		{-12.25, Millimetres, Ruler, "-12.5", "-12.5 mm"},
		{-0.1, Millimetres, Ruler, "0.0", "0 mm"},
		{-0.1, Inches, Ruler, "0", "0 in"},
		{3.175, Millimetres, Calliper, "3.20", "3.2 mm"},
		{12.525, Millimetres, Calliper, "12.55", "12.55 mm"}, // 12.525/0.05 < 250.5 in binary
		{100, Millimetres, Calliper, "100.00", "100 mm"},
		{34.925, Inches, Ruler, "1 3/8", "1 3/8 in"},
		{-34.925, Inches, Ruler, "-1 3/8", "-1 3/8 in"},
		{25.4, Inches, Calliper, "1", "1 in"},
		{25.39, Inches, Calliper, "1", "1 in"},
		{Inch / 64, Inches, Ruler, "1/32", "1/32 in"}, // a half, up
		{-Inch / 64, Inches, Ruler, "-1/32", "-1/32 in"},
		{Inch / 64, Inches, Calliper, "1/64", "1/64 in"},
		// Decimal-inch tables: .123 is nearest 1/8, .400 nearest 13/32, to
		// the 64th; 37/64 in is 14.6844 mm.
		{0.123 * Inch, Inches, Calliper, "1/8", "1/8 in"},
		{0.400 * Inch, Inches, Calliper, "13/32", "13/32 in"},
		{14.6844, Inches, Calliper, "37/64", "37/64 in"},
		// Trade conversion charts: 9 oz is 9/64 in (common practice, no source).
		{9 * Ounce, Inches, Calliper, "9/64", "9/64 in"},
		// One foot: 16 CFR 500.19.
		{304.8, Inches, Ruler, "12", "12 in"},
	}
	for _, tt := range tests {
		if got := tt.l.Figure(tt.u, tt.f); got != tt.figure {
			t.Errorf("Length(%v).Figure(%v, %v) = %q, want %q", float64(tt.l), tt.u, tt.f, got, tt.figure)
		}
		if got := tt.l.Format(tt.u, tt.f); got != tt.format {
			t.Errorf("Length(%v).Format(%v, %v) = %q, want %q", float64(tt.l), tt.u, tt.f, got, tt.format)
		}
	}
}

// What is shown is never further from the length than half a step.
func TestFormatIsNearest(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		l := Length(rnd.Float64()*600 - 100)
		for _, s := range []struct {
			u    Unit
			f    Fineness
			step Length
		}{{Millimetres, Ruler, 0.5}, {Millimetres, Calliper, 0.05}, {Inches, Ruler, Inch / 32}, {Inches, Calliper, Inch / 64}} {
			shown := l.Format(s.u, s.f)
			got, err := Parse(shown, s.u)
			if err != nil || math.Abs(float64(got-l)) > float64(s.step/2)+1e-6 {
				t.Fatalf("Length(%v).Format(%v, %v) = %q, which is %v, %v", float64(l), s.u, s.f, shown, got, err)
			}
		}
	}
}

func TestExact(t *testing.T) {
	tests := []struct {
		typed string
		u     Unit
		want  string
	}{
		{"3.2", Millimetres, "3.2"},
		{"+003,20 mm", Millimetres, "3.2"},
		{"-0", Millimetres, "0"},
		{"-1.5", Millimetres, "-1.5"},
		{"1/8", Millimetres, "3.175"},
		{"1/8", Inches, "1/8"},
		{"0.125", Inches, "1/8"},
		{"3.175 mm", Inches, "1/8"},
		{"-1-3/8", Inches, "-1 3/8"},
		{"304.8 mm", Inches, "12"},
		{"0.123", Inches, "0.123"},
		{"0.12345678901234", Inches, "0.12345678901234"},
		{"0.4", Inches, "0.4"},
		{"5", Inches, "5"},
	}
	for _, tt := range tests {
		l, err := Parse(tt.typed, tt.u)
		if err != nil {
			t.Fatal(err)
		}
		if got := l.Exact(tt.u); got != tt.want {
			t.Errorf("Exact(%v) of %q = %q, want %q", tt.u, tt.typed, got, tt.want)
		}
	}
}

// Every reading of a calliper comes back bit for bit: hundredths of a
// millimetre, half thousandths of an inch, 64ths.
func TestExactRoundTrip(t *testing.T) {
	for n := range 20000 {
		for _, r := range []struct {
			typed string
			u     Unit
		}{
			{fmt.Sprintf("%d.%02d", n/100, n%100), Millimetres},
			{fmt.Sprintf("%.4f", float64(n)*0.0005), Inches},
			{fmt.Sprintf("%d/64", n), Inches},
			{fmt.Sprintf("%d.%02d mm", n/100, n%100), Millimetres},
		} {
			want, err := Parse(r.typed, r.u)
			if err != nil {
				t.Fatal(err)
			}
			got, err := Parse(want.Exact(r.u), r.u)
			if err != nil || got != want || len(want.Exact(r.u)) > len(r.typed)+2 {
				t.Fatalf("%q in %v is shown as %q, which is %v, %v, want %v", r.typed, r.u, want.Exact(r.u), got, err, want)
			}
		}
	}
}

// What is typed in inches is the millimetres that its decimals say, to the last bit: a file
// has 9.525 for 3/8, which 0.375 times 25.4 is not in binary. 25.4 mm to the inch: 16 CFR
// 500.19. The figures are longhand multiplication.
func TestInchesAreTheirDecimals(t *testing.T) {
	for text, want := range map[string]string{
		"3/8": "9.525", "0.375": "9.525", "1 7/8": "47.625", "37/64": "14.684375", "0.3": "7.62", "12": "304.8",
		"1.1": "27.94", "4 5/16": "109.5375", "-3/8": "-9.525", "0.0005": "0.0127",
	} {
		l, err := Parse(text, Inches)
		if got := l.Exact(Millimetres); err != nil || got != want {
			t.Errorf("%s in is %s mm, %v, want %s", text, got, err, want)
		}
	}
	for n := range 64 * 60 { // 25.4/64 is 0.396875: six decimals hold every 64th
		l, err := Parse(fmt.Sprintf("%d/64", n), Inches)
		if want := fmt.Sprintf("%d.%06d", n*396875/1000000, n*396875%1000000); err != nil || Length(mustFloat(t, want)) != l {
			t.Fatalf("%d/64 in is %s mm, %v, want %s", n, l.Exact(Millimetres), err, want)
		}
	}
	for old, want := range map[Length]string{9.524999999999999: "3/8", 47.62499999999999: "1 7/8", 7.619999999999999: "0.3"} {
		if got := old.Short(Inches); got != want {
			t.Errorf("%v of an older file is shown as %q, want %q", float64(old), got, want)
		}
	}
}

func mustFloat(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// FuzzExact: any length survives an edit field that is entered and left; in
// millimetres bit for bit, in inches but for the last bit.
func FuzzExact(f *testing.F) {
	for _, v := range []float64{0, 3.2, -1.5, 3.175, 25.4 / 3, 1e-12, 1e6, 0.1 + 0.2, 5e-324} {
		f.Add(v)
	}
	f.Fuzz(func(t *testing.T, v float64) {
		if !(math.Abs(v) <= float64(longest)/2) || v != 0 && math.Abs(v) < 1e-30 {
			return // no length Parse gives, or too small to write out
		}
		l := Length(v)
		if got, err := Parse(l.Exact(Millimetres), Millimetres); err != nil || got != l {
			t.Errorf("Parse(%q, mm) = %v, %v, want %v", l.Exact(Millimetres), got, err, v)
		}
		got, err := Parse(l.Exact(Inches), Inches)
		if err != nil || math.Abs(float64(got-l)) > 1e-15*math.Abs(v) {
			t.Errorf("Parse(%q, in) = %v, %v, want %v", l.Exact(Inches), got, err, v)
		}
	})
}

func TestShort(t *testing.T) {
	for _, c := range []struct {
		l    Length
		u    Unit
		want string
	}{
		{7.5, Millimetres, "7.5"}, {3.175, Millimetres, "3.175"}, {Inch / 64, Millimetres, "0.3969"}, {25.4 / 3, Millimetres, "8.4667"},
		{0, Inches, "0"}, {1e-7, Inches, "0.000000003937007874015748"},
		{7.5, Inches, "19/64"},            // 0.29528: 0.04 mm off
		{3.2, Inches, "1/8"},              // 0.12598
		{0.8, Inches, "1/32"},             // 0.03150
		{20, Inches, "0.7874"},            // 0.15 mm from a 64th
		{-3.2, Inches, "-1/8"},            //
		{0.03, Inches, "0.0012"},          // no 64th of nothing
		{0.3135 * Inch, Inches, "0.3135"}, // as typed
		{1.375 * Inch, Inches, "1 3/8"},   //
	} {
		if got := c.l.Short(c.u); got != c.want {
			t.Errorf("Length(%v).Short(%v) = %q, want %q", float64(c.l), c.u, got, c.want)
		}
	}
	for mm := Length(-60); mm < 60; mm += 0.007 { // never further from the truth than a calliper shows
		for _, u := range []Unit{Millimetres, Inches} {
			got, err := Parse(mm.Short(u), u)
			if err != nil || math.Abs(float64(got-mm)) > 0.05 {
				t.Fatalf("Length(%v).Short(%v) = %q, which is %v (%v)", float64(mm), u, mm.Short(u), got, err)
			}
		}
	}
}

// What was typed is not rounded for the tool that it was read off.
func TestTyped(t *testing.T) {
	for _, c := range []struct {
		l    Length
		u    Unit
		f    Fineness
		want string
	}{
		{2.2, Millimetres, Ruler, "2.2"}, {12.3, Millimetres, Ruler, "12.3"}, {2, Millimetres, Ruler, "2.0"}, {2.5, Millimetres, Ruler, "2.5"},
		{1.7, Millimetres, Calliper, "1.70"}, {1.73, Millimetres, Calliper, "1.73"}, {0, Millimetres, Ruler, "0.0"},
		{Inch * 7 / 16, Inches, Ruler, "7/16"}, {Inch * 57 / 128, Inches, Ruler, "0.4453"}, {Inch * 5 / 64, Inches, Ruler, "5/64"}, {2.2, Inches, Ruler, "0.0866"},
	} {
		if got := c.l.Typed(c.u, c.f); got != c.want {
			t.Errorf("%v: %q, want %q", float64(c.l), got, c.want)
		}
	}
}
