package clock

import (
	"strings"
	"time"
)

// days are the ways in which a day is typed, without the year or with it.
var days = []string{
	"2 Jan", "Jan 2", "2 January", "January 2", "2 Jan 2006", "Jan 2 2006", "2 January 2006", "January 2 2006",
	"2.1.", "2.1.2006", "2.1.06", "2006-1-2",
}

// Day writes a day as people type it ("24 Dec", "Dec 24", "24.12.") the way the file
// does, 2026-12-24; without a year it is the next such day from now on. Whatever is none
// is given back as it is.
func Day(text string, now time.Time) string { return dayNear(text, now, next) }

// PastDay is Day of what has been: without a year it is the last such day up to now.
func PastDay(text string, now time.Time) string { return dayNear(text, now, last) }

func dayNear(text string, now time.Time, near func(t, now time.Time) time.Time) string {
	clean := strings.NewReplacer(",", " ", ". ", " ").Replace(text)
	clean = strings.Join(strings.Fields(clean), " ")
	for _, form := range days {
		t, err := time.Parse(form, strings.TrimSpace(clean))
		if err != nil {
			continue
		}
		if t.Year() == 0 {
			t = near(t, now)
		}
		return t.Format(time.DateOnly)
	}
	return text
}

// next is the day of t's month and day that comes first, not before today. 29 February
// waits for a leap year.
func next(t, now time.Time) time.Time {
	today := time.Date(now.Year(), now.Month(), now.Day(), 0, 0, 0, 0, time.UTC)
	for year := now.Year(); ; year++ {
		d := time.Date(year, t.Month(), t.Day(), 0, 0, 0, 0, time.UTC)
		if d.Month() == t.Month() && !d.Before(today) {
			return d
		}
	}
}

// last is the day of t's month and day that was latest, not after today.
func last(t, now time.Time) time.Time {
	today := time.Date(now.Year(), now.Month(), now.Day(), 0, 0, 0, 0, time.UTC)
	for year := now.Year(); ; year-- {
		d := time.Date(year, t.Month(), t.Day(), 0, 0, 0, 0, time.UTC)
		if d.Month() == t.Month() && !d.After(today) {
			return d
		}
	}
}
