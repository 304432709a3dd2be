package clock

import (
	"math/rand/v2"
	"strings"
	"testing"
	"time"
	"unicode"
)

const (
	hour = time.Hour
	day  = 24 * hour
)

// What Span says ParseSpan reads: the same to the smallest unit shown, never less, over seeded
// random spans of every length.
func TestSpanIsReadBack(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 30))
	for range 3000 {
		d := time.Duration(r.Int64N(int64(Longest)>>uint(r.IntN(40)) + 1))
		grain := time.Second
		switch {
		case d > 48*hour:
			grain = hour
		case d > 59*time.Second:
			grain = time.Minute
		}
		got, err := ParseSpan(Span(d))
		if err != nil || got < d || got-d >= grain || Span(got) != Span(d) {
			t.Fatalf("%v is said as %q and read as %v, %v", d, Span(d), got, err)
		}
		if short, err := time.ParseDuration(Short(d)); err != nil || short != d {
			t.Fatalf("%v in a file is %q, read as %v, %v", d, Short(d), short, err)
		}
	}
	// What is longer is said as well: a hold that ran out long ago.
	if got := Span(400 * day); got != "400 d" {
		t.Errorf("400 days are %q", got)
	}
}

// The longest span just in and just out, in any unit and in a sum.
func TestSpanAtItsEnd(t *testing.T) {
	for _, text := range []string{"366 d", "8784 h", "365 d 24 h", "527040 min", "365 days 23 h 60 min", "31622400 s"} {
		if got, err := ParseSpan(text); err != nil || got != Longest {
			t.Errorf("%q is %v, %v", text, got, err)
		}
	}
	for _, text := range []string{"366 d 1 s", "366.1 d", "8784.1 h", "366 d 366 d", "31622401 s"} {
		if got, err := ParseSpan(text); err == nil || !strings.HasSuffix(err.Error(), "is too long: give at most 366 d") {
			t.Errorf("%q is %v, %v", text, got, err)
		}
	}
	for text, want := range map[string]time.Duration{"0,5 h": 30 * time.Minute, ".5h": 30 * time.Minute, "1.5 d": 36 * hour, "90 MIN": 90 * time.Minute, "1 day": day, "2sec": 2 * time.Second, "0.4 s": 0, "0 h": 0, "1 h, 2 min": 62 * time.Minute, "1, 5 h": 90 * time.Minute,
		"00": -1, "0 0": -1} {
		got, err := ParseSpan(text)
		if want >= 0 && (err != nil || got != want) || want < 0 && err == nil {
			t.Errorf("%q is %v, %v, want %v", text, got, err, want)
		}
	}
	for _, text := range []string{"1 \x1b[31m", "\x00 h", "h 1", "1 h 1", "1..5 h", "1,2,3 h", "½ h", "١ h", "0.123456789 h", strings.Repeat("9", 3000) + " h"} {
		if got, err := ParseSpan(text); err == nil || strings.ContainsFunc(err.Error(), unicode.IsControl) || len(err.Error()) > 300 {
			t.Errorf("%.40q is %v, %v", text, got, err)
		}
	}
}

// The unit that is said once is the first of the second time, not all of it.
func TestWindowWithOneUnit(t *testing.T) {
	for text, want := range map[string][2]time.Duration{
		"24-48 h": {day, 2 * day}, "1-2 d 3 h": {day, 2*day + 3*hour}, "24-48 h 30 min": {day, 48*hour + 30*time.Minute}, "1,5-2 h": {90 * time.Minute, 2 * hour},
		"0-48 h": {0, 2 * day}, "12 h-1 d": {12 * hour, day}, "48−48 h": {2 * day, 2 * day}, "366-366 d": {Longest, Longest},
	} {
		if hold, latest, err := ParseWindow(text); err != nil || hold != want[0] || latest != want[1] {
			t.Errorf("%q is %v to %v, %v, want %v", text, hold, latest, err, want)
		}
	}
	for text, want := range map[string]string{"48-24 h": "look by 24 h is before not before 48 h: give the shorter time first", "24-367 d": `"24-367 d" is too long`, "24 - x": `"24 - x" is not a length of time`} {
		if _, _, err := ParseWindow(text); err == nil || !strings.HasPrefix(err.Error(), want) {
			t.Errorf("%q: %v, want %s", text, err, want)
		}
	}
}

func TestCheckWindow(t *testing.T) {
	for _, c := range []struct {
		hold, latest time.Duration
		ok           bool
	}{
		{0, 0, true}, {day, 0, true}, {day, day, true}, {0, hour, true}, {Longest, Longest, true}, {day, day - 1, false}, {-1, 0, false}, {0, -1, false},
		{Longest + 1, 0, false}, {0, Longest + 1, false},
	} {
		if err := CheckWindow(c.hold, c.latest); (err == nil) != c.ok {
			t.Errorf("%v to %v: %v", c.hold, c.latest, err)
		}
	}
	for _, c := range []struct {
		hold, latest time.Duration
		want         string
	}{{0, 0, "0"}, {-1, -1, "0"}, {2 * hour, 0, "2 h"}, {day, 2 * day, "24 h - 48 h"}, {0, hour, "0 s - 1 h"}} {
		if got := Window(c.hold, c.latest); got != c.want {
			t.Errorf("%v to %v is said as %q, want %q", c.hold, c.latest, got, c.want)
		}
	}
}

// Days are those of the calendar, not of 24 hours: around the nights in which the clock is
// changed (Sun 29 Mar and Sun 25 Oct 2026: Directive 2000/84/EC) tomorrow is tomorrow.
func TestTimeOverTheChangeOfTheClock(t *testing.T) {
	berlin, err := time.LoadLocation("Europe/Berlin")
	if err != nil {
		t.Fatal(err)
	}
	at := func(m time.Month, d, h, min int) time.Time { return time.Date(2026, m, d, h, min, 0, 0, berlin) }
	for _, c := range []struct {
		t, now time.Time
		want   string
	}{
		{at(3, 29, 23, 30), at(3, 29, 0, 30), "23:30"}, {at(3, 30, 0, 0), at(3, 29, 0, 30), "Mon 00:00"}, {at(4, 4, 23, 59), at(3, 29, 0, 30), "Sat 23:59"}, {at(4, 5, 0, 0), at(3, 29, 0, 30), "5 Apr 00:00"},
		{at(10, 25, 23, 59), at(10, 25, 0, 0), "23:59"}, {at(10, 24, 23, 59), at(10, 25, 0, 0), "Sat 23:59"}, {at(10, 19, 0, 0), at(10, 25, 23, 59), "Mon 00:00"}, {at(10, 18, 23, 59), at(10, 25, 0, 0), "18 Oct 23:59"},
		{at(12, 31, 23, 0), at(12, 31, 1, 0), "23:00"}, {at(12, 31, 23, 0).AddDate(0, 0, 1), at(12, 31, 1, 0), "Fri 23:00"}, {at(3, 1, 0, 0), at(10, 25, 0, 0), "1 Mar 00:00"},
		{at(12, 31, 0, 0).AddDate(-1, 0, 0), at(10, 25, 0, 0), "31 Dec 2025 00:00"},
	} {
		if got := Time(c.t, c.now); got != c.want {
			t.Errorf("%v, said at %v, is %q, want %q", c.t, c.now, got, c.want)
		}
	}
}

// The day of a moment is the one where it is told, and stands at midnight UTC as in a file;
// Wall leaves the place and takes off what the file has no use for.
func TestDayOfAndWall(t *testing.T) {
	for off, want := range map[int]string{-12: "2026-11-25", 0: "2026-11-26", 14: "2026-11-26"} {
		m := time.Date(2026, 11, 26, 8, 30, 15, 987e6, time.UTC).In(time.FixedZone("", off*3600))
		if got := DayOf(m); got.Format(time.RFC3339) != want+"T00:00:00Z" {
			t.Errorf("the day of %v is %v", m, got)
		}
		if w := Wall(m); w.Nanosecond() != 0 || w.Location() != m.Location() || m.Sub(w) != 987*time.Millisecond {
			t.Errorf("%v on the wall is %v", m, w)
		}
	}
}
