package clock

import (
	"testing"
	"time"
)

func TestSpan(t *testing.T) {
	for d, want := range map[time.Duration]string{
		-time.Second: "0 s", 0: "0 s", time.Millisecond: "1 s", 40 * time.Second: "40 s", 59 * time.Second: "59 s",
		59*time.Second + 1: "1 min", time.Minute: "1 min", 61 * time.Second: "2 min", 59 * time.Minute: "59 min",
		59*time.Minute + 1: "1 h", 3*time.Hour + 12*time.Minute: "3 h 12 min", 24 * time.Hour: "24 h",
		48*time.Hour + 1: "2 d 1 h", 76 * time.Hour: "3 d 4 h", 72 * time.Hour: "3 d",
	} {
		if got := Span(d); got != want {
			t.Errorf("Span(%v) = %q, want %q", d, got, want)
		}
	}
}

func TestTime(t *testing.T) {
	at := func(d time.Duration) time.Time { return noon.Add(d) }
	day := 24 * time.Hour
	for _, c := range []struct {
		t    time.Time
		want string
	}{
		{at(2 * time.Hour), "14:00"}, {at(11*time.Hour + 59*time.Minute), "23:59"}, {at(12 * time.Hour), "Fri 00:00"},
		{at(6 * day), "Wed 12:00"}, {at(7 * day), "3 Dec 12:00"}, {at(-6 * day), "Fri 12:00"}, {at(-7 * day), "19 Nov 12:00"},
		{at(40 * day), "5 Jan 2027 12:00"}, {at(time.Hour).In(time.FixedZone("", 5*3600)), "13:00"},
	} {
		if got := Time(c.t, noon); got != c.want {
			t.Errorf("Time(%v) = %q, want %q", c.t, got, c.want)
		}
	}
}

func TestParseSpan(t *testing.T) {
	for text, want := range map[string]time.Duration{
		"0": 0, "15 min": 15 * time.Minute, "1 h 30 min": 90 * time.Minute, "1h30m": 90 * time.Minute, "1,5 h": 90 * time.Minute,
		" 2 D ": 48 * time.Hour, "40s": 40 * time.Second, "24h0m0s": 24 * time.Hour,
	} {
		if got, err := ParseSpan(text); err != nil || got != want {
			t.Errorf("ParseSpan(%q) = %v, %v, want %v", text, got, err, want)
		}
	}
	for _, text := range []string{"", "15", "h", "-1 h", "1 x", "1 h 2", "1.2.3 h", "9999999999 h", "999999999 d", "NaN h", "1e9 h"} {
		if got, err := ParseSpan(text); err == nil {
			t.Errorf("ParseSpan(%q) = %v, want an error", text, got)
		}
	}
}

func TestParseWindow(t *testing.T) {
	hour := time.Hour
	for text, want := range map[string][2]time.Duration{
		"0": {}, "2 h": {2 * hour}, "24-48 h": {24 * hour, 48 * hour}, "24h – 48h": {24 * hour, 48 * hour},
		"10 min - 1 h": {10 * time.Minute, hour}, "0 - 1 h": {0, hour}, "1 d 2 h - 3 d": {26 * hour, 72 * hour},
	} {
		hold, latest, err := ParseWindow(text)
		if err != nil || hold != want[0] || latest != want[1] {
			t.Errorf("ParseWindow(%q) = %v, %v, %v, want %v", text, hold, latest, err, want)
		}
		again, last, err := ParseWindow(Window(hold, latest))
		if err != nil || again != hold || last != latest {
			t.Errorf("ParseWindow(Window(%v, %v)) = %v, %v, %v", hold, latest, again, last, err)
		}
	}
	for text, want := range map[string]string{
		"-5":      `"-5" is less than nothing: try 15 min, 2 h or 24-48 h`,
		"−5 h":    `"−5 h" is less than nothing: try 15 min, 2 h or 24-48 h`,
		"10000":   `"10000" has no unit: give the unit, as in 15 min, 2 h`,
		"1,5":     `"1,5" has no unit: give the unit, as in 15 min, 2 h`,
		"1-2":     `"1-2" has no unit: give the unit, as in 15 min, 2 h`,
		"1 x-2 h": `"1 x-2 h" is not a length of time: try 15 min, 2 h, 1 h 30 min or 2 d`,
		"400 d":   `"400 d" is too long: give at most 366 d`,
	} {
		if _, _, err := ParseWindow(text); err == nil || err.Error() != want {
			t.Errorf("ParseWindow(%q): %v, want %s", text, err, want)
		}
	}
	for _, text := range []string{"", "-", "2 h - 1 h", "2-", "1 h-2 h-3 h"} {
		if _, _, err := ParseWindow(text); err == nil {
			t.Errorf("ParseWindow(%q): want an error", text)
		}
	}
}

var noon = time.Date(2026, 11, 26, 12, 0, 0, 0, time.UTC) // a Thursday
