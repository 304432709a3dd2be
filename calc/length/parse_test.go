package length

import (
	"math"
	"strings"
	"testing"
)

// tolerance is how close two lengths must be to be the same, in millimetres.
const tolerance = 1e-9

func approxEqual(a, b Length) bool { return math.Abs(float64(a-b)) <= tolerance }

func TestParse(t *testing.T) {
	tests := []struct {
		in   string
		bare Unit
		want Length
	}{
		{"3.2", Millimetres, 3.2},
		{"3.2", Inches, 81.28},
		{"3,2", Millimetres, 3.2},
		{"3.2 mm", Inches, 3.2},
		{"3.2mm", Inches, 3.2},
		{"3.2 MM", Inches, 3.2},
		{"+003.20", Millimetres, 3.2},
		{".5", Millimetres, 0.5},
		{"5.", Millimetres, 5},
		{"0", Millimetres, 0},
		{"-1.5", Millimetres, -1.5},
		{"−1.5", Millimetres, -1.5},
		{"- 1.5 mm", Inches, -1.5},
		{"0.32 cm", Inches, 3.2},
		{"1/8", Millimetres, 3.175},
		{"1/8", Inches, 3.175},
		{"1/8 in", Millimetres, 3.175},
		{"1/8 in.", Millimetres, 3.175},
		{"1/8 mm", Inches, 0.125},
		{"1 inch", Millimetres, 25.4},
		{"2 Inches", Millimetres, 50.8},
		{`1 3/8"`, Millimetres, 34.925},
		{"1-3/8", Millimetres, 34.925},
		{"-1-3/8", Millimetres, -34.925},
		{"-1 3/8 in", Millimetres, -34.925},
		{"1⅜", Millimetres, 34.925},
		{"1 ⅜″", Millimetres, 34.925},
		{"1⅜”", Millimetres, 34.925},
		{"1 3/8''", Millimetres, 34.925},
		{"1 3⁄8′′", Millimetres, 34.925},
		{"⅟8", Millimetres, 3.175},
		{"-⅛", Millimetres, -3.175},
		{"9/8 in", Millimetres, 28.575},
		{"1,234", Millimetres, 1.234},
		{" 3.2\r\n", Millimetres, 3.2},
		{"3.2\u00a0mm", Millimetres, 3.2},
		// Decimal-inch tables print 37/64 in as 14.6844 mm.
		{"37/64", Millimetres, 14.684375},
		// One inch and one foot: 16 CFR 500.19; NBS Circular 572, addendum 1959.
		{"1 in", Millimetres, 25.4},
		{"12 in", Millimetres, 304.8},
	}
	for _, tt := range tests {
		got, err := Parse(tt.in, tt.bare)
		if err != nil || !approxEqual(got, tt.want) {
			t.Errorf("Parse(%q, %v) = %v, %v, want %v", tt.in, tt.bare, got, err, tt.want)
		}
		if math.Signbit(float64(got)) && got == 0 {
			t.Errorf("Parse(%q, %v) is a negative zero", tt.in, tt.bare)
		}
	}
}

// The code points and their values are those of the Unicode character
// database, field Numeric_Value.
func TestParseVulgarFractions(t *testing.T) {
	for r, want := range map[rune]float64{
		0x00BC: 1. / 4, 0x00BD: 1. / 2, 0x00BE: 3. / 4,
		0x2150: 1. / 7, 0x2151: 1. / 9, 0x2152: 1. / 10, 0x2153: 1. / 3, 0x2154: 2. / 3,
		0x2155: 1. / 5, 0x2156: 2. / 5, 0x2157: 3. / 5, 0x2158: 4. / 5, 0x2159: 1. / 6, 0x215A: 5. / 6,
		0x215B: 1. / 8, 0x215C: 3. / 8, 0x215D: 5. / 8, 0x215E: 7. / 8,
	} {
		for _, in := range []string{string(r), "2" + string(r) + `"`} {
			want := want
			if in[0] == '2' {
				want += 2
			}
			got, err := Parse(in, Millimetres)
			if err != nil || !approxEqual(got, Length(want)*Inch) {
				t.Errorf("Parse(%q, mm) = %v, %v, want %v in", in, got, err, want)
			}
		}
	}
}

func TestParseRefuses(t *testing.T) {
	const syntax = "is not a length: try 3.2, 3.2 mm, 1/8 in"
	tests := []struct{ in, want string }{
		{"3..2", `"3..2" ` + syntax},
		{"", "nothing typed: try 3.2, 3.2 mm, 1/8 in"},
		{" \t", "nothing typed: try 3.2, 3.2 mm, 1/8 in"},
		{"NaN", `"NaN" ` + syntax},
		{"Inf", `"Inf" ` + syntax},
		{"-inf", `"-inf" ` + syntax},
		{"0x1p4", `"0x1p4" ` + syntax},
		{"1_000", `"1_000" ` + syntax},
		{"1e3", `"1e3" ` + syntax},
		{"1e9999", `"1e9999" ` + syntax},
		{"+-1", `"+-1" ` + syntax},
		{"--1", `"--1" ` + syntax},
		{"mm", `"mm" ` + syntax},
		{".", `"." ` + syntax},
		{"3 2", `"3 2" ` + syntax},
		{"3 m", `"3 m" ` + syntax},
		{"3 mm 2", `"3 mm 2" ` + syntax},
		{"1/", `"1/" ` + syntax},
		{"/8", `"/8" ` + syntax},
		{"1//8", `"1//8" ` + syntax},
		{"1/8/2", `"1/8/2" ` + syntax},
		{"1.5/8", `"1.5/8" ` + syntax},
		{"1/-8", `"1/-8" ` + syntax},
		{"1⅜⅜", `"1⅜⅜" ` + syntax},
		{"٣", `"٣" ` + syntax},
		{"3\x00", `"3\x00" ` + syntax},
		{"3\xff", `"3\xff" ` + syntax},
		{"1,234.5", `"1,234.5" is not a length: write it with one decimal point and no thousands mark, as 1234.5`},
		{"1.234.567", `"1.234.567" is not a length: write it with one decimal point and no thousands mark, as 1234.5`},
		{"3-4 mm", `"3-4 mm" is not a length: a range will not do, write one figure`},
		{"1/0", `"1/0" is not a length: nothing can be divided by 0, try 1/8 in`},
		{"1 9/8", `"1 9/8" is not a length: the fraction after a whole number must be less than 1, try 1 3/8 in`},
		{"8 oz", `"8 oz" is a leather weight: here try 3.2, 3.2 mm, 1/8 in`},
		{"6'", `"6'" is in feet: write it in inches, a foot is 12 in`},
		{"1000001", `"1000001" is more than a kilometre: try 3.2, 3.2 mm, 1/8 in`},
		{strings.Repeat("9", 1<<20), `"` + strings.Repeat("9", 24) + `…" is too long for a length: try 3.2, 3.2 mm, 1/8 in`},
	}
	for _, tt := range tests {
		got, err := Parse(tt.in, Millimetres)
		if err == nil {
			t.Errorf("Parse(%.40q, mm) = %v, want the error %q", tt.in, got, tt.want)
		} else if err.Error() != tt.want {
			t.Errorf("Parse(%.40q, mm): error %q, want %q", tt.in, err, tt.want)
		}
	}
}

// Trade conversion charts: 8 oz is 1/8 in, 9 oz is 9/64 in, 6 oz is 4.5
// irons of 1/48 in (common practice, no source).
func TestParseLeather(t *testing.T) {
	tests := []struct {
		in   string
		want Length
	}{
		{"8 oz", 3.175},
		{"8oz.", 3.175},
		{"9 ounces", Inch * 9 / 64},
		{"6 oz", 4.5 * Inch / 48},
		{"5.5 oz", 5.5 * Inch / 64},
		{"5½ oz", 5.5 * Inch / 64},
		{"3,2", 3.2},
		{"1/8", 3.175},
		{"3.2 mm", 3.2},
	}
	for _, tt := range tests {
		got, err := ParseLeather(tt.in, Millimetres)
		if err != nil || !approxEqual(got, tt.want) {
			t.Errorf("ParseLeather(%q, mm) = %v, %v, want %v", tt.in, got, err, tt.want)
		}
	}
}

// A range as sold counts as its thicker end and is kept as it was typed; one
// figure is not (trade usage, no source).
func TestParseSold(t *testing.T) {
	for in, want := range map[string]Sold{
		"8-9 oz": {Inch * 9 / 64, "8-9 oz"}, "8/9 oz": {Inch * 9 / 64, "8/9 oz"}, " 8–9 oz ": {Inch * 9 / 64, "8–9 oz"},
		"7 to 8 oz": {Inch / 8, "7 to 8 oz"}, "9-8 oz": {Inch * 9 / 64, "9-8 oz"}, "8 oz": {Inch / 8, ""}, "½ oz": {Inch / 128, ""},
		"5½ oz": {5.5 * Inch / 64, ""}, "3.2": {3.2, ""},
	} {
		got, err := ParseSold(in, Millimetres)
		if err != nil || !approxEqual(got.Thick, want.Thick) || got.As != want.As {
			t.Errorf("ParseSold(%q) = %+v, %v, want %+v", in, got, err, want)
		}
	}
}

func TestParseLeatherRefuses(t *testing.T) {
	tests := []struct{ in, want string }{
		{"oz", "is not a thickness: try 8 oz, 8-9 oz, 3.2 mm, 1/8 in"},
		{"8 9/8 oz", "is not a thickness: try 8 oz, 8-9 oz, 3.2 mm, 1/8 in"},
		{"7-8-9 oz", "is not a thickness: try 8 oz, 8-9 oz, 3.2 mm, 1/8 in"},
		{"8 kg", "is not a length: try 3.2, 3.2 mm, 1/8 in"},
		{"2-3 mm", "is not a length: a range will not do, write one figure"},
	}
	for _, tt := range tests {
		got, err := ParseLeather(tt.in, Millimetres)
		if err == nil || !strings.HasSuffix(err.Error(), tt.want) {
			t.Errorf("ParseLeather(%q, mm) = %v, %v, want the error …%q", tt.in, got, err, tt.want)
		}
	}
}

// FuzzParse: whatever is typed, the answer is a length on this earth or one
// printable line.
func FuzzParse(f *testing.F) {
	for _, s := range []string{"3.2", "1 3/8\"", "1⅜", "-1-3/8", "3..2", "8 oz", "1e9999", "0x1p4", "1,234.5", "\xff", "K3 MM."} {
		f.Add(s, true)
	}
	f.Fuzz(func(t *testing.T, s string, inches bool) {
		u := Millimetres
		if inches {
			u = Inches
		}
		for _, parse := range []func(string, Unit) (Length, error){Parse, ParseLeather} {
			l, err := parse(s, u)
			if err != nil {
				if l != 0 || strings.ContainsAny(err.Error(), "\n\r\x1b\x00") || len(err.Error()) > 300 {
					t.Errorf("parse(%q, %v) = %v with the error %q", s, u, l, err)
				}
				continue
			}
			if !(math.Abs(float64(l)) <= float64(longest)) {
				t.Errorf("parse(%q, %v) = %v", s, u, l)
			}
			again, err := Parse(l.Exact(u), u)
			if err != nil || !(math.Abs(float64(again-l)) <= 1e-15*math.Abs(float64(l))) {
				t.Errorf("Parse(%q, %v) = %v, %v, want %v as %q gave", l.Exact(u), u, again, err, l, s)
			}
		}
	})
}
