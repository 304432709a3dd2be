package value

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"chape/calc/length"
)

// Just in and just out of each kind's range. NaN and the infinities are never in it.
func TestOutsideAtTheBounds(t *testing.T) {
	up := func(f float64) float64 { return math.Nextafter(f, math.Inf(1)) }
	down := func(f float64) float64 { return math.Nextafter(f, math.Inf(-1)) }
	mm := func(f float64) any { return length.Length(f) }
	fig := func(f float64) any { return f }
	for _, c := range []struct {
		spec Spec
		of   func(float64) any
	}{
		{Spec{Kind: Length, Min: 0.2, Max: 15}, mm}, {Spec{Kind: Length, Min: -50, Max: 50}, mm}, {Spec{Kind: Length, Max: 2000, Above: true}, mm},
		{Spec{Kind: Leather, Min: 0.2, Max: 15}, func(f float64) any { return length.Sold{Thick: length.Length(f), As: "as sold"} }},
		{Spec{Kind: Share, Max: 1}, fig}, {Spec{Kind: Number, Min: -30, Max: 60}, fig}, {Spec{Kind: Number, Max: 100, Above: true}, fig},
	} {
		s := c.spec
		for v, out := range map[float64]bool{
			s.Min: s.Above, up(s.Min): false, down(s.Min): true, s.Max: false, down(s.Max): false, up(s.Max): true,
			math.Inf(1): true, math.Inf(-1): true, 1e300: true, -1e300: true, (s.Min + s.Max) / 2: false,
		} {
			if _, got := s.Outside(c.of(v), length.Millimetres); got != out {
				t.Errorf("%+v: %v is outside: %v, want %v", s, v, got, out)
			}
		}
		if p, out := s.Outside(c.of(math.NaN()), length.Millimetres); !out || p.Found != "NaN" {
			t.Errorf("%+v: NaN is outside: %v, found %q", s, out, p.Found)
		}
	}
}

// The same for what is counted, told in letters or in time.
func TestOutsideOfCountsTextsAndTimes(t *testing.T) {
	year := 366 * 24 * time.Hour
	utc := func(y int) time.Time { return time.Date(y, 12, 31, 23, 59, 59, 0, time.UTC) }
	for _, c := range []struct {
		spec Spec
		v    any
		want string // what the problem says; "": it will do
	}{
		{of(Count), 1, ""}, {of(Count), 50, ""}, {of(Count), 0, "found 0: give between 1 and 50"}, {of(Count), 51, "found 51: give between 1 and 50"},
		{of(Text), strings.Repeat("é", 20), ""}, {of(Text), strings.Repeat("é", 21), "found 21 letters: give at most 20 letters"},
		{of(Text), "", ""}, {Spec{Kind: Text, Max: 9, Needed: true}, " \t", `found " \t": give it some words`},
		{of(Text), "\xff\xfe", `found "\xff\xfe": write it as UTF-8`},
		{of(Choice), "outline", ""}, {of(Choice), "measured", `found "measured": try stations, outline or straight`}, {of(Choice), "", `found "": try stations, outline or straight`},
		{of(Span), time.Duration(0), ""}, {of(Span), year, ""}, {of(Span), -time.Nanosecond, `found "-1ns": give 0h to 8784h, such as 24h or 15m`},
		{of(Span), year + time.Second, `found "8784h0m1s": give 0h to 8784h, such as 24h or 15m`},
		{of(Moment), time.Time{}, ""}, {Spec{Kind: Moment, Needed: true}, time.Time{}, "found nothing: give a time between the years 1970 and 2200"},
		{of(Moment), utc(1969), "found 1969-12-31T23:59:59Z: give a time between the years 1970 and 2200"}, {of(Moment), utc(1969).Add(time.Second), ""},
		{of(Date), utc(2200), ""}, {of(Date), utc(2200).Add(time.Second), "found 2201-01-01T00:00:00Z: give a time between the years 1970 and 2200"},
		{Spec{Kind: Words, Max: 2}, []string{"a", "b"}, ""}, {Spec{Kind: Words, Max: 2}, []string{"a", "b", "c"}, "found 3 words: give at most 2"},
		{of(Flag), true, ""}, {of(Length), nil, ""}, {Spec{Kind: Length, Needed: true}, nil, ""},
	} {
		p, out := c.spec.Outside(c.v, length.Millimetres)
		if out != (c.want != "") || out && p.Beside() != c.want {
			t.Errorf("kind %d, %v: %q, %v, want %q", c.spec.Kind, c.v, p.Beside(), out, c.want)
		}
		if out && (p.Key != c.spec.Key || p.Index != -1) {
			t.Errorf("kind %d: the problem is of %q, %d", c.spec.Kind, p.Key, p.Index)
		}
	}
}

// The bounds that an error names will do themselves, in either unit: those in inches are
// rounded inwards. 0.2 to 15 mm are 0.00787 to 0.59055 in (25.4 mm to the inch: 16 CFR 500.19).
func TestTheBoundsNamedWillDo(t *testing.T) {
	p, _ := Spec{Min: 0.2, Max: 15}.Outside(length.Length(40), length.Inches)
	if p.Beside() != "found 1.5748 in: give between 0.01 and 0.59 in" {
		t.Errorf("said %q", p.Beside())
	}
	if p, _ := (Spec{Max: 254, Above: true}).Outside(length.Length(0), length.Inches); p.Beside() != "found 0 in: give more than 0 and at most 10 in" {
		t.Errorf("said %q", p.Beside())
	}
	r := rand.New(rand.NewPCG(3, 4))
	for range 500 {
		s := Spec{Min: math.Round(r.Float64()*400-200) / 10, Max: 30 + math.Round(r.Float64()*20000)/10}
		for _, u := range []length.Unit{length.Millimetres, length.Inches} {
			p, out := s.Outside(length.Length(s.Max+100), u)
			var lo, hi, unit string
			if n, err := fmt.Sscanf(p.Remedy, "give between %s and %s %s", &lo, &hi, &unit); n != 3 || err != nil || !out || unit != u.String() {
				t.Fatalf("%+v: %q", s, p.Remedy)
			}
			for _, text := range []string{lo, hi} {
				l, err := length.Parse(text, u)
				if bad, out := s.Outside(l, u); err != nil || out {
					t.Fatalf("%q names %s %v, which will not do: %v, %v", p.Remedy, text, u, bad, err)
				}
			}
		}
	}
}

// A length in an error is short, whatever it is, and is the length.
func TestMeasure(t *testing.T) {
	for _, c := range []struct {
		l    length.Length
		u    length.Unit
		want string
	}{
		{3.2, length.Millimetres, "3.2 mm"}, {0, length.Millimetres, "0 mm"}, {-1.5, length.Millimetres, "-1.5 mm"},
		{3.175, length.Inches, "1/8 in"}, {0, length.Inches, "0 in"}, {-34.925, length.Inches, "-1 3/8 in"},
		{1e6, length.Millimetres, "1000000 mm"}, {2e6, length.Millimetres, "2e+06"}, {1e300, length.Inches, "1e+300"}, {1e-9, length.Millimetres, "1e-09"},
		{length.Length(math.NaN()), length.Millimetres, "NaN"}, {length.Length(math.Inf(-1)), length.Inches, "-Inf"},
	} {
		if got := Measure(c.l, c.u); got != c.want {
			t.Errorf("%v in %v is said as %q, want %q", float64(c.l), c.u, got, c.want)
		}
	}
}

// 10 mm are 0.3937007… in: as the most that will do 0.393, as the least 0.394.
func TestBound(t *testing.T) {
	for _, c := range []struct {
		l     length.Length
		u     length.Unit
		round func(float64) float64
		want  string
	}{
		{10, length.Inches, math.Floor, "0.393 in"}, {10, length.Inches, math.Ceil, "0.394 in"}, {10, length.Millimetres, math.Floor, "10 mm"},
		{12.7, length.Inches, math.Floor, "1/2 in"}, {12.7, length.Inches, math.Ceil, "1/2 in"},
	} {
		if got := Bound(c.l, c.u, c.round); got != c.want {
			t.Errorf("%v in %v: %q, want %q", c.l, c.u, got, c.want)
		}
	}
	r := rand.New(rand.NewPCG(5, 6))
	for range 500 {
		l := length.Length(r.Float64() * 500)
		for _, u := range []length.Unit{length.Millimetres, length.Inches} {
			most, err1 := length.Parse(Bound(l, u, math.Floor), u)
			least, err2 := length.Parse(Bound(l, u, math.Ceil), u)
			if err1 != nil || err2 != nil || most > l || least < l || least-most > 0.0255 {
				t.Fatalf("%v in %v: most %v, least %v, %v, %v", l, u, most, least, err1, err2)
			}
		}
	}
}

// A sum of two readings is a reading: 0.1 and 0.2 are 0.3, which they are not in binary.
func TestTidy(t *testing.T) {
	a, b := length.Length(0.1), length.Length(0.2)
	if a+b == 0.3 || Tidy(a+b) != 0.3 || Tidy(-a-b) != -0.3 || Tidy(3.175) != 3.175 || Tidy(0.396875) != 0.396875 {
		t.Errorf("0.1 and 0.2 are %v; 1/64 in is %v", Tidy(a+b), Tidy(0.396875))
	}
}
