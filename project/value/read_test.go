package value

import (
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"
	"time"
	"unicode"

	"chape/calc/length"
)

// every is a spec of each kind that is typed.
func every() []Spec {
	return []Spec{
		{Key: "a", Kind: Length, Max: 100}, {Key: "b", Kind: Leather, Max: 15}, {Key: "c", Kind: Share, Max: 1},
		{Key: "d", Kind: Number, Min: -30, Max: 60}, {Key: "e", Kind: Count, Min: 1, Max: 50},
		{Key: "f", Kind: Choice, Options: []string{"stations", "outline", "straight"}, Shown: []string{"measured", "outline", "straight"}},
		{Key: "g", Kind: Text, Max: 20}, {Key: "h", Kind: Lines, Max: 40}, {Key: "i", Kind: Date}, {Key: "j", Kind: Moment},
		{Key: "k", Kind: Span, Max: float64(366 * 24 * time.Hour)}, {Key: "l", Kind: Flag},
	}
}

// of is the spec of a kind.
func of(k Kind) Spec {
	for _, s := range every() {
		if s.Kind == k {
			return s
		}
	}
	panic("no such kind")
}

func day(y int, m time.Month, d int) time.Time { return time.Date(y, m, d, 0, 0, 0, 0, time.UTC) }

// Each kind reads what people write and gives the type that Kind says. 1 oz of leather is
// 1/64 in: common practice, no source; 25.4 mm to the inch: 16 CFR 500.19.
func TestParseGivesTheTypeOfTheKind(t *testing.T) {
	for _, c := range []struct {
		kind Kind
		text string
		unit length.Unit
		want any
	}{
		{Length, "3,2", length.Millimetres, length.Length(3.2)},
		{Length, "3", length.Inches, length.Length(76.2)},
		{Leather, "8 oz", length.Millimetres, length.Length(3.175)},
		{Leather, "8-9 oz", length.Millimetres, length.Sold{Thick: 9 * 25.4 / 64, As: "8-9 oz"}},
		{Share, "0.05", length.Millimetres, 0.05},
		{Share, "5 %", length.Millimetres, 0.05},
		{Share, "12,5%", length.Millimetres, 0.125},
		{Number, "-2,5", length.Millimetres, -2.5},
		{Number, "+7", length.Millimetres, 7.0},
		{Count, "12", length.Millimetres, 12},
		{Text, "oak & ash", length.Millimetres, "oak & ash"},
		{Lines, "a\nb", length.Millimetres, "a\nb"},
		{Date, "2028-02-29", length.Millimetres, day(2028, 2, 29)},
		{Date, "", length.Millimetres, time.Time{}},
		{Moment, "2026-11-25T09:30:00Z", length.Millimetres, time.Date(2026, 11, 25, 9, 30, 0, 0, time.UTC)},
		{Moment, "", length.Millimetres, time.Time{}},
		{Span, "1h30m", length.Millimetres, 90 * time.Minute},
		{Span, "", length.Millimetres, time.Duration(0)},
		{Flag, "TRUE", length.Millimetres, true},
		{Flag, "n", length.Millimetres, false},
		{Flag, "", length.Millimetres, false},
	} {
		got, err := of(c.kind).Parse(c.text, c.unit)
		if err != nil || !reflect.DeepEqual(got, c.want) {
			t.Errorf("kind %d: %q is read as %#v, %v, want %#v", c.kind, c.text, got, err, c.want)
		}
	}
	// Whole seconds, the offset kept: what the file holds.
	at, err := of(Moment).Parse("2026-11-25T09:30:00.75+01:00", length.Millimetres)
	if err != nil || at.(time.Time).Format(time.RFC3339Nano) != "2026-11-25T09:30:00+01:00" {
		t.Errorf("a moment with a fraction is read as %v, %v", at, err)
	}
}

// What is no such value is refused in one line that quotes it and gives an example; nothing
// of it reaches the terminal raw.
func TestParseRefuses(t *testing.T) {
	tries := map[Kind][]string{
		Length: {"3..2", "", "8 oz", "NaN", "Inf", "1e300", "3 \x1b[31m"},
		Share:  {"%", "", "x %", "5 %%", "NaN", "1e-2", "0x1p-2"},
		Number: {"", "1.2.3", "1,2,3", "Inf", "nan", "1e5", "0x10", "--1", strings.Repeat("9", 40), "\x00"},
		Count:  {"", "1.5", "two", "1e2", "99999999999999999999", "\x07"},
		Date:   {"2026-2-3", "2026-02-30", "18.12.2026", "2026-12-18T00:00:00Z", "\u202e"},
		Moment: {"2026-11-25", "09:30", "2026-11-25 09:30", "2026-11-25T25:00:00Z", "\x1b]2;x\a"},
		Span:   {"1", "24", "h", "1 day", "24h-", "1e3h\n"},
		Flag:   {"maybe", "0", "yess", "y\x1b"},
		Choice: {"", "x", "st\x1b", "outlines"},
	}
	remedy := map[Kind]string{
		Length: "try 3.2", Share: "is not a share: try 0.05 or 5 %", Number: "is not a number: try 3.5", Count: "is not a whole number: try 2",
		Date: "is not a date: try 2026-12-18", Moment: "is not a time: try 2026-11-25T09:30:00+01:00", Span: "is not a duration: try 24h or 15m",
		Flag: "is neither: try yes or no", Choice: "is not one of them: try measured, outline or straight",
	}
	for kind, texts := range tries {
		for _, text := range texts {
			v, err := of(kind).Parse(text, length.Millimetres)
			if err == nil || v != nil {
				t.Errorf("kind %d: %q is read as %#v, %v", kind, text, v, err)
				continue
			}
			if !strings.Contains(err.Error(), remedy[kind]) && kind != Length || strings.ContainsFunc(err.Error(), unicode.IsControl) {
				t.Errorf("kind %d: %q: %q, want %q in one line", kind, text, err, remedy[kind])
			}
		}
	}
	if _, err := of(Number).Parse(strings.Repeat("x", 5000), length.Millimetres); len(err.Error()) > 120 {
		t.Errorf("a text of 5000 letters is quoted in %d", len(err.Error()))
	}
}

// A choice is taken by the file's word, by the screen's or by the beginning of one that fits
// one option alone.
func TestChoose(t *testing.T) {
	s := of(Choice)
	for text, want := range map[string]string{
		"stations": "stations", "MEASURED": "stations", "m": "stations", "o": "outline", "Out": "outline", "stra": "straight", "stat": "stations",
	} {
		if got, err := s.Parse(text, length.Millimetres); err != nil || got != want {
			t.Errorf("%q is %v, %v, want %s", text, got, err, want)
		}
	}
	for _, text := range []string{"s", "st", "sta ", "measuredly"} {
		if got, err := s.Parse(text, length.Millimetres); err == nil {
			t.Errorf("%q is taken for %v", text, got)
		}
	}
	whole := Spec{Kind: Choice, Options: []string{"oval", "oval slab"}} // a whole word is no mere beginning
	if got, err := whole.Parse("oval", length.Millimetres); err != nil || got != "oval" {
		t.Errorf("oval is %v, %v", got, err)
	}
}

// Where the screen has a word for no value, nothing and that word are no value.
func TestParseNoValue(t *testing.T) {
	for _, s := range every() {
		s.Auto = "Centred"
		for _, text := range []string{"", "centred", "CENTRED"} {
			if v, err := s.Parse(text, length.Millimetres); v != nil || err != nil {
				t.Errorf("kind %d: %q is %v, %v, want no value", s.Kind, text, v, err)
			}
		}
		if got := s.Show(nil, length.Millimetres); got != "Centred" {
			t.Errorf("kind %d: no value is shown as %q", s.Kind, got)
		}
	}
}

// What Show gives Parse takes for the same, over seeded random values of every kind. In
// inches and to four decimals a length is what it was within half of the last.
func TestShowIsReadBack(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 25))
	for range 400 {
		for _, s := range every() {
			u := []length.Unit{length.Millimetres, length.Inches}[r.IntN(2)]
			var v any
			switch s.Kind {
			case Length, Leather:
				v = length.Length(r.IntN(200000)) / 1000
				if u == length.Inches {
					v = length.Length(r.IntN(6400)) * 25.4 / 64
				}
			case Share:
				v = float64(r.IntN(10001)) / 10000
			case Number:
				v = float64(r.IntN(90000))/1000 - 30
			case Count:
				v = r.IntN(100)
			case Choice:
				v = s.Options[r.IntN(3)]
			case Text, Lines:
				v = strings.Repeat("né ", r.IntN(5)) + "x"
			case Date:
				v = day(1970+r.IntN(230), time.Month(1+r.IntN(12)), 1+r.IntN(28))
			case Moment:
				v = time.Unix(r.Int64N(1<<32), 0).UTC()
			case Span:
				v = time.Duration(r.IntN(400000)) * time.Second
			case Flag:
				v = r.IntN(2) == 0
			}
			text := s.Show(v, u)
			got, err := s.Parse(text, u)
			if l, ok := v.(length.Length); ok && err == nil {
				if off := got.(length.Length) - l; off < -0.00006 || off > 0.00006 {
					t.Fatalf("%v in %v is shown as %q and read as %v", l, u, text, got)
				}
				continue
			}
			if at, ok := v.(time.Time); ok && err == nil && at.Equal(got.(time.Time)) {
				continue
			}
			if err != nil || !reflect.DeepEqual(got, v) {
				t.Fatalf("kind %d: %#v is shown as %q and read as %#v, %v", s.Kind, v, text, got, err)
			}
		}
	}
}
