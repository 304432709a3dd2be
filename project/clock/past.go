package clock

import (
	"fmt"
	"strings"
	"time"

	"chape/project/plain"
)

// ParsePast reads a moment that has been as people type it, on the clock of
// now's location: "now", "20 min ago", "14:20", "Thu 14:20", "3 Dec 14:20",
// "2026-12-03 14:20". What leaves the day open is the last such moment, so that
// it reads what Time says of the past.
func ParsePast(text string, now time.Time) (time.Time, error) {
	text = strings.Join(strings.Fields(text), " ")
	now = now.Round(0)
	if strings.EqualFold(text, "now") {
		return Whole(now), nil
	}
	if span, ok := strings.CutSuffix(text, " ago"); ok {
		d, err := ParseSpan(span)
		if err != nil {
			return time.Time{}, err
		}
		return Whole(now.Add(-d)), nil
	}
	t, ok := lastTime(text, now)
	if !ok {
		return time.Time{}, fmt.Errorf("%s is not a time: try 14:20, Thu 14:20, 3 Dec 14:20, 20 min ago", plain.Quote(text))
	}
	if t.After(now) {
		return time.Time{}, fmt.Errorf("%s is still to come: give a time that has been", plain.Quote(text))
	}
	return Whole(t), nil
}

// lastTime is the last moment, not after now where the text leaves that open,
// that reads as text.
func lastTime(text string, now time.Time) (time.Time, bool) {
	loc := now.Location()
	for _, layout := range []string{"2006-01-02 15:04", "2006-01-02 15:04:05", "2 Jan 2006 15:04", time.RFC3339} {
		if t, err := time.ParseInLocation(layout, text, loc); err == nil {
			return t, true
		}
	}
	y, m, d := now.Date()
	if t, err := time.Parse("2 Jan 15:04", text); err == nil {
		for year := y; year > y-8; year-- { // 29 February is rare
			got := time.Date(year, t.Month(), t.Day(), t.Hour(), t.Minute(), 0, 0, loc)
			if !got.After(now) && got.Day() == t.Day() {
				return got, true
			}
		}
		return time.Time{}, false
	}
	day, clock, named := strings.Cut(text, " ")
	if !named {
		clock = text
	}
	c, err := time.Parse("15:04", clock)
	if err != nil {
		return time.Time{}, false
	}
	for back := range 8 {
		got := time.Date(y, m, d-back, c.Hour(), c.Minute(), 0, 0, loc)
		if !got.After(now) && (!named || isDay(day, got.Weekday())) {
			return got, true
		}
	}
	return time.Time{}, false
}

// isDay tells whether a word is a day's name or the beginning of it.
func isDay(word string, day time.Weekday) bool {
	return len(word) >= 2 && strings.HasPrefix(strings.ToLower(day.String()), strings.ToLower(word))
}
