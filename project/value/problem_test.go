package value

import (
	"errors"
	"strings"
	"testing"
	"time"
	"unicode"

	"chape/calc/length"
)

func TestProblemsSayWhere(t *testing.T) {
	ps := Problems{
		{Key: "knife.station.at", Index: 2, Found: "1 mm", Remedy: "give 2"},
		{Key: "knife.station", Index: 0, Found: "a", Remedy: "b"},
		{Key: "sheath.gap", Index: -1, Found: "3 mm", Remedy: "give more"},
	}
	for i, want := range []string{"knife.station.at of mark 3: found 1 mm: give 2", "knife.station of mark 1: found a: b", "sheath.gap: found 3 mm: give more"} {
		if got := ps[i].Error(); got != want {
			t.Errorf("Error() = %q, want %q", got, want)
		}
	}
	if got, want := ps.Error(), "knife.station.at of mark 3: found 1 mm: give 2 (and 2 more)"; got != want {
		t.Errorf("Problems.Error() = %q, want %q", got, want)
	}
	if got := ps[2:].Error(); got != ps[2].Error() {
		t.Errorf("one problem: %q", got)
	}
	if got := (Problem{Found: "a", Remedy: "b"}).Error(); got != "found a: b" {
		t.Errorf("without a key: %q", got)
	}
}

// Every list of the file names its row, counted from 1 as people do.
func TestEveryRowIsNamed(t *testing.T) {
	for key, want := range map[string]string{
		"knife.station.at": "of mark 4", "fit.by": "of fit 4", "step.title": "of step 4", "pattern.number": "of pattern 4", "weigh.grams": "of weighing 4",
		"part.length": "of part 4", "quote.until": "of quote 4", "carried.by": "of carried fit 4", "earlier.wide": "of earlier half-width 4",
	} {
		if got := (Problem{Key: key, Index: 3, Found: "x", Remedy: "give y"}).Error(); got != key+" "+want+": found x: give y" {
			t.Errorf("%s, the fourth: %q", key, got)
		}
		if got := (Problem{Key: key, Index: -1, Found: "x", Remedy: "give y"}).Error(); got != key+": found x: give y" {
			t.Errorf("%s of no row: %q", key, got)
		}
	}
}

// A problem is found by its key and its row, both.
func TestFor(t *testing.T) {
	ps := Problems{{Key: "fit.at", Index: 1, Found: "first"}, {Key: "fit.at", Index: 0, Found: "second"}, {Key: "fit.at", Index: 1, Found: "third"}, {Key: "fit", Index: -1, Found: "fourth"}}
	for _, c := range []struct {
		key   string
		index int
		found string
	}{{"fit.at", 1, "first"}, {"fit.at", 0, "second"}, {"fit", -1, "fourth"}, {"fit.at", -1, ""}, {"fit", 0, ""}, {"fit.by", 1, ""}} {
		if p, ok := ps.For(c.key, c.index); ok != (c.found != "") || p.Found != c.found {
			t.Errorf("For(%s, %d) = %+v, %v", c.key, c.index, p, ok)
		}
	}
	if err := (Problems)(nil).Err(); err != nil {
		t.Errorf("no problems are an error: %v", err)
	}
	var back Problems
	if err := ps.Err(); !errors.As(err, &back) || len(back) != 4 {
		t.Errorf("four problems as an error: %v", ps.Err())
	}
	if got := (Problems{}).Error(); got != "no problems" {
		t.Errorf("none: %q", got)
	}
}

// What was typed is quoted in the line beside its field: harmless, and cut where it is long.
func TestTyped(t *testing.T) {
	p := Problem{Key: "sheath.gap", Index: -1, Found: "3 mm", Remedy: "give more than clearance"}
	if got := p.Typed(" 3 "); got != `"3" will not do: give more than clearance` {
		t.Errorf("said %q", got)
	}
	if got := p.Typed("\x1b[31m" + strings.Repeat("9", 500)); strings.ContainsFunc(got, unicode.IsControl) || len(got) > 120 {
		t.Errorf("said %q", got)
	}
	if got := p.Beside(); got != "found 3 mm: give more than clearance" {
		t.Errorf("beside: %q", got)
	}
}

// How the screens show a value of each type.
func TestShow(t *testing.T) {
	at := time.Date(2026, 11, 25, 9, 30, 0, 0, time.FixedZone("", 3600))
	for _, c := range []struct {
		kind Kind
		v    any
		unit length.Unit
		want string
	}{
		{Length, length.Length(3.175), length.Millimetres, "3.175"}, {Length, length.Length(34.925), length.Inches, "1 3/8"}, {Length, length.Length(25.4 / 3), length.Millimetres, "8.4667"},
		{Leather, length.Sold{Thick: 3.2, As: "8-9 oz"}, length.Inches, "8-9 oz"}, {Share, 0.05, length.Millimetres, "0.05"}, {Number, 1e-7, length.Millimetres, "0.0000001"},
		{Count, -3, length.Millimetres, "-3"}, {Choice, "stations", length.Millimetres, "measured"}, {Choice, "straight", length.Millimetres, "straight"}, {Choice, "none", length.Millimetres, "none"},
		{Date, at, length.Millimetres, "2026-11-25"}, {Date, time.Time{}, length.Millimetres, ""}, {Moment, at, length.Millimetres, "2026-11-25T09:30:00+01:00"}, {Moment, time.Time{}, length.Millimetres, ""},
		{Span, 90 * time.Minute, length.Millimetres, "1h30m"}, {Span, time.Duration(0), length.Millimetres, ""}, {Flag, true, length.Millimetres, "yes"}, {Flag, false, length.Millimetres, "no"},
		{Words, []string{"a"}, length.Millimetres, ""}, {Text, nil, length.Millimetres, ""},
	} {
		s := Spec{Kind: c.kind}
		if c.kind == Choice {
			s = of(Choice)
		}
		if got := s.Show(c.v, c.unit); got != c.want {
			t.Errorf("kind %d, %v: shown as %q, want %q", c.kind, c.v, got, c.want)
		}
	}
}
