package clock

import (
	"testing"
	"time"
)

func TestParsePast(t *testing.T) {
	berlin, err := time.LoadLocation("Europe/Berlin")
	if err != nil {
		t.Fatal(err)
	}
	now := time.Date(2026, 11, 26, 12, 0, 30, 0, berlin) // a Thursday
	for _, c := range []struct{ text, want string }{
		{"now", "2026-11-26T12:00:30+01:00"},
		{"09:30", "2026-11-26T09:30:00+01:00"},
		{"9:30", "2026-11-26T09:30:00+01:00"},
		{"12:00", "2026-11-26T12:00:00+01:00"},
		{"12:01", "2026-11-25T12:01:00+01:00"}, // not today: it has not been
		{" thu  09:30", "2026-11-26T09:30:00+01:00"},
		{"Thu 14:20", "2026-11-19T14:20:00+01:00"},
		{"Fri 14:20", "2026-11-20T14:20:00+01:00"},
		{"wednesday 0:05", "2026-11-25T00:05:00+01:00"},
		{"20 min ago", "2026-11-26T11:40:30+01:00"},
		{"3 Dec 14:20", "2025-12-03T14:20:00+01:00"},
		{"24 Oct 14:20", "2026-10-24T14:20:00+02:00"}, // summer time then
		{"29 Feb 08:00", "2024-02-29T08:00:00+01:00"},
		{"3 Dec 2024 14:20", "2024-12-03T14:20:00+01:00"},
		{"2026-11-26 07:00", "2026-11-26T07:00:00+01:00"},
		{"2026-11-26T07:00:00Z", "2026-11-26T07:00:00Z"},
	} {
		got, err := ParsePast(c.text, now)
		want, _ := time.Parse(time.RFC3339, c.want)
		if err != nil || !got.Equal(want) {
			t.Errorf("ParsePast(%q) = %v, %v, want %s", c.text, got, err, c.want)
		}
	}
	for text, want := range map[string]string{
		"":                 `"" is not a time: try 14:20, Thu 14:20, 3 Dec 14:20, 20 min ago`,
		"25:10":            `"25:10" is not a time: try 14:20, Thu 14:20, 3 Dec 14:20, 20 min ago`,
		"141.5":            `"141.5" is not a time: try 14:20, Thu 14:20, 3 Dec 14:20, 20 min ago`,
		"T 14:20":          `"T 14:20" is not a time: try 14:20, Thu 14:20, 3 Dec 14:20, 20 min ago`,
		"30 Feb 14:20":     `"30 Feb 14:20" is not a time: try 14:20, Thu 14:20, 3 Dec 14:20, 20 min ago`,
		"2026-11-26 12:01": `"2026-11-26 12:01" is still to come: give a time that has been`,
	} {
		if got, err := ParsePast(text, now); err == nil || err.Error() != want {
			t.Errorf("ParsePast(%q) = %v, %v, want the error %s", text, got, err, want)
		}
	}
}

// What Time says of the past is read back as the same minute.
func TestParsePastReadsTime(t *testing.T) {
	now := time.Date(2026, 3, 31, 8, 15, 0, 0, time.UTC)
	for back := time.Duration(0); back < 400*24*time.Hour; back += 11*time.Hour + 7*time.Minute {
		at := now.Add(-back)
		if got, err := ParsePast(Time(at, now), now); err != nil || !got.Equal(at) {
			t.Fatalf("ParsePast(%q) = %v, %v, want %v", Time(at, now), got, err, at)
		}
	}
}
