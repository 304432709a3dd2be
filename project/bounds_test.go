package project

import (
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"
	"time"
	"unicode"

	"chape/calc/length"
	"chape/project/steps"
)

// everything is a project with two rows of every list, and something in every scalar that may
// be left empty.
func everything() Project {
	p := full()
	noon := time.Date(2026, 11, 25, 12, 0, 0, 0, time.UTC)
	p.Title, p.Notes, p.Customer.Name, p.Customer.Due = "Orchard", "a\nb", "nobody", noon.Truncate(24*time.Hour)
	p.Tracing = Tracing{Picture: "x.jpg", Residual: 0.2, Read: noon.Truncate(24 * time.Hour), Left: []length.Length{10, 40}}
	p.Hide = Hide{Name: "shoulder", Lost: 0.3, Placed: true, Cut: 80000}
	p.Hide.Price.M2 = "92.50"
	p.MadeFor = MadeFor{"Boning", "format = 1\n"}
	p.Room.Humidity, p.Room.HasHumidity, p.Room.HasTemperature = 50, true, true
	p.Outline.BackGiven, p.Outline.EdgeGiven, p.Strap.Placed, p.Belt.Centred, p.Stitch.NeedleSet, p.Stitch.Needle = true, true, true, false, true, 1.2
	p.Fits = append(p.Fits, Fit{With: "leather", Note: "tight"})
	p.Fits[1].At, p.Fits[1].By, p.Fits[1].Reach = 60, 1.5, 20
	p.Carried = []Carried{{Fit: p.Fits[1], From: "x", Front: 100, Mouth: 140}, {Fit: p.Fits[1], Front: 90, Mouth: 120}}
	p.Earlier = []Half{{At: 10, Wide: 20, Line: "edge"}, {At: 30, Wide: 22, Line: "stitches"}}
	p.Steps = []steps.Step{{Title: "Form", Short: "FORM", Started: noon, First: noon, Done: noon, Spent: time.Hour},
		{Title: "Dry", Caution: "heat", Note: "n", Hold: 24 * time.Hour, Latest: 48 * time.Hour, From: "FORM", Expect: time.Minute, Sheet: true, Ended: noon}}
	p.Patterns = []Pattern{{Number: 1, Printed: noon.Truncate(24 * time.Hour), Inputs: "x"}, {Number: 2, Printed: noon.Truncate(24 * time.Hour)}}
	p.Quotes = append(p.Quotes, Quote{Date: p.Quotes[0].Date, Accepted: p.Quotes[0].Date, Lines: p.Quotes[0].Lines, Currency: "€", Unit: "0.05", What: "w"})
	p.Weigh = append(p.Weigh, p.Weigh[0])
	p.Added = []Part{{Name: "loop", Count: 1, Length: 60, Width: 20}, {Name: "leaf", Count: 2, Halves: "0 0; 40 15; 80 0"}}
	return p
}

// columns are all fields of a project: the scalars, and those of the second row of each list.
func columns() []Field {
	fs := append([]Field{}, Fields...)
	for _, l := range Lists {
		for _, f := range l.Columns {
			fs = append(fs, f.At(1))
		}
	}
	return fs
}

// It is valid, and no list and no key of it is left out.
func TestEverythingIsThere(t *testing.T) {
	p := everything()
	if err := p.Validate(); err != nil {
		t.Error(err)
	}
	for _, l := range Lists {
		if n := l.Rows(&p); n < 2 {
			t.Errorf("%s has %d rows", l.Key, n)
		}
	}
	for _, f := range Fields {
		if !f.Written(&p) && f.Key != "leather.price_ft2" { // by the square metre
			t.Errorf("%s is not written", f.Key)
		}
	}
}

// just gives values of a field at its bounds: those that will do and those that will not.
func just(f Field) (in, out []any) {
	up, down := func(x float64) float64 { return math.Nextafter(x, 1e300) }, func(x float64) float64 { return math.Nextafter(x, -1e300) }
	nan, inf := math.NaN(), math.Inf(1)
	switch f.Kind {
	case Length, Leather:
		in = []any{length.Length(f.Max), length.Length(up(f.Min))}
		out = []any{length.Length(up(f.Max)), length.Length(down(f.Min)), length.Length(nan), length.Length(inf), length.Length(-inf), length.Length(1e300)}
		if f.Above {
			out = append(out, length.Length(f.Min))
		} else {
			in = append(in, length.Length(f.Min))
		}
	case Share, Number:
		in, out = []any{f.Max, up(f.Min)}, []any{up(f.Max), down(f.Min), nan, inf, -inf}
	case Count:
		in, out = []any{int(f.Max), int(f.Min)}, []any{int(f.Max) + 1, int(f.Min) - 1, math.MinInt, math.MaxInt}
	case Text, Lines:
		in, out = []any{strings.Repeat("é", int(f.Max))}, []any{strings.Repeat("é", int(f.Max)+1), "\xff"}
		if f.Needed {
			out = append(out, "", " \n")
		}
	case Choice:
		for _, o := range f.Options {
			in = append(in, o)
		}
	case Span:
		in, out = []any{time.Duration(0), time.Duration(f.Max)}, []any{time.Duration(-1), time.Duration(f.Max) + 1}
	case Date, Moment:
		in, out = []any{time.Date(1970, 1, 1, 0, 0, 0, 0, time.UTC), time.Date(2200, 12, 31, 0, 0, 0, 0, time.UTC)}, []any{time.Date(1969, 12, 31, 0, 0, 0, 0, time.UTC), time.Date(2201, 1, 1, 0, 0, 0, 0, time.UTC)}
		if f.Needed {
			out = append(out, time.Time{})
		}
	case Flag:
		in = []any{true, false}
	}
	return in, out
}

// Every field of every table takes what is just in its range, and Validate refuses what is just
// out of it in one line, with its key and its row.
func TestEveryFieldAtItsBounds(t *testing.T) {
	for _, f := range columns() {
		if f.Kind == Choice && f.Index < 0 || f.Key == "knife.tracing.left" { // another word is never kept
			continue
		}
		in, out := just(f)
		for _, v := range in {
			if bad, ok := f.Outside(v, length.Millimetres); ok {
				t.Errorf("%s = %v: %v", f.Key, v, bad)
			}
		}
		for _, v := range out {
			p := everything()
			f.Keep(&p, v)
			ps, _ := p.Validate().(Problems)
			bad, ok := ps.For(f.Key, f.Index)
			if !ok {
				t.Errorf("%s = %v: %v", f.Key, v, ps)
				continue
			}
			if line := bad.Error(); strings.ContainsFunc(line, unicode.IsControl) || len(line) > 400 || !strings.HasPrefix(line, f.Key) || (f.Index > 0) != strings.Contains(line, " 2: found ") {
				t.Errorf("%s = %v: %q", f.Key, v, line)
			}
		}
	}
}

// In either unit the bounds that a refusal names are taken when they are typed.
func TestBoundsNamedAreTaken(t *testing.T) {
	for _, u := range []length.Unit{length.Millimetres, length.Inches} {
		p := everything()
		p.Units = u
		for _, f := range columns() {
			if !f.ranged || f.Kind != Length && f.Kind != Leather {
				continue
			}
			_, err := f.Parse(fmt.Sprint(f.Max+100), p)
			if err == nil {
				t.Errorf("%s takes %v", f.Key, f.Max+100)
				continue
			}
			_, bounds, ok := strings.Cut(err.Error(), "will not do: give ")
			lo, hi, unit := "", "", ""
			if n, _ := fmt.Sscanf(bounds, "between %s and %s %s", &lo, &hi, &unit); n != 3 {
				if n, _ := fmt.Sscanf(bounds, "more than %s and at most %s %s", &lo, &hi, &unit); n != 3 || !f.Above {
					t.Errorf("%s: %v", f.Key, err)
				}
				lo = ""
			}
			for _, text := range []string{lo, hi} {
				if text == "" {
					continue
				}
				if _, err := f.Parse(text, p); err != nil || !ok || unit != u.String() {
					t.Errorf("%s in %v names %s %s: %v", f.Key, u, text, unit, err)
				}
			}
		}
	}
}

// Every choice is taken by its word and by the screen's, and shown as the screen's.
func TestEveryChoiceIsTaken(t *testing.T) {
	for _, f := range columns() {
		if f.Kind != Choice {
			continue
		}
		for i, o := range f.Options {
			p := everything()
			f.Keep(&p, o)
			shown := o
			if i < len(f.Shown) {
				shown = f.Shown[i]
			}
			if f.Kept(&p) != o || f.Show(p) != shown {
				t.Errorf("%s = %s is kept as %v and shown as %s", f.Key, o, f.Kept(&p), f.Show(p))
			}
			for _, text := range []string{o, strings.ToUpper(shown)} {
				if v, err := f.Parse(text, everything()); err != nil || v != o {
					t.Errorf("%s: %q is %v, %v", f.Key, text, v, err)
				}
			}
		}
	}
}

// What is kept in every key is given back, one key at a time, and no other is touched.
func TestKeepTouchesItsOwnKey(t *testing.T) {
	fs := columns()
	for _, f := range fs {
		in, _ := just(f)
		if f.Key == "knife.tracing.left" {
			in = []any{"10 40.5"}
		}
		for _, v := range in {
			p, before := everything(), everything()
			f.Keep(&p, v)
			if got := f.Kept(&p); !reflect.DeepEqual(got, v) {
				t.Errorf("%s = %v is kept as %v", f.Key, v, got)
			}
			for _, g := range fs {
				if g.Key != f.Key && !reflect.DeepEqual(g.Kept(&p), g.Kept(&before)) {
					t.Errorf("%s = %v changes %s", f.Key, v, g.Key)
				}
			}
		}
	}
}
