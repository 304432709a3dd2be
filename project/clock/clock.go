// Package clock is how times and spans are said, and how they are read as people type
// them. Nothing here reads the clock: the time is passed in.
package clock

import (
	"fmt"
	"time"
)

// Span says how long something lasts, in at most two units: "40 s", "12 min",
// "3 h 12 min", "3 d 4 h". It rounds up to the smallest unit shown, so that what still
// runs never reads as nothing.
func Span(d time.Duration) string {
	switch {
	case d <= 0:
		return "0 s"
	case d <= 59*time.Second:
		return fmt.Sprintf("%d s", ceilTo(d, time.Second))
	case d <= 59*time.Minute:
		return fmt.Sprintf("%d min", ceilTo(d, time.Minute))
	case d <= 48*time.Hour:
		m := ceilTo(d, time.Minute)
		return twoUnits(m/60, "h", m%60, "min")
	}
	h := ceilTo(d, time.Hour)
	return twoUnits(h/24, "d", h%24, "h")
}

func ceilTo(d, unit time.Duration) int64 { return int64((d + unit - 1) / unit) }

func twoUnits(a int64, aUnit string, b int64, bUnit string) string {
	if b == 0 {
		return fmt.Sprintf("%d %s", a, aUnit)
	}
	return fmt.Sprintf("%d %s %d %s", a, aUnit, b, bUnit)
}

// Time says when t is, on the clock of now's location: "14:20" today,
// "Thu 14:20" up to six days away, "3 Dec 14:20" beyond, with the year when it
// is another one.
func Time(t, now time.Time) string {
	t = t.In(now.Location())
	days := dayNumber(t) - dayNumber(now)
	switch {
	case days == 0:
		return t.Format("15:04")
	case -6 <= days && days <= 6:
		return t.Format("Mon 15:04")
	case t.Year() == now.Year():
		return t.Format("2 Jan 15:04")
	}
	return t.Format("2 Jan 2006 15:04")
}

// dayNumber counts calendar days, which are not always 24 hours long.
func dayNumber(t time.Time) int64 {
	y, m, d := t.Date()
	return time.Date(y, m, d, 0, 0, 0, 0, time.UTC).Unix() / (24 * 60 * 60)
}

// Window says hold times the way ParseWindow reads them.
func Window(hold, latest time.Duration) string {
	switch {
	case hold <= 0 && latest <= 0:
		return "0"
	case latest <= 0:
		return Span(hold)
	}
	return Span(hold) + " - " + Span(latest)
}
