package clock

import (
	"strings"
	"time"
)

// Short is a duration as Go writes it, without the zeros at its end.
func Short(d time.Duration) string {
	s := d.String()
	if strings.HasSuffix(s, "m0s") {
		s = strings.TrimSuffix(s, "0s")
	}
	if strings.HasSuffix(s, "h0m") {
		s = strings.TrimSuffix(s, "0m")
	}
	return s
}

// Whole gives a time as the file keeps it: whole seconds, its offset in whole
// minutes, no monotonic reading and no zone name, so that equal times are
// equal structs.
func Whole(t time.Time) time.Time {
	if t.IsZero() {
		return time.Time{}
	}
	t = t.Round(0).Truncate(time.Second)
	_, off := t.Zone()
	if off == 0 || off%60 != 0 {
		return t.UTC()
	}
	return t.In(time.FixedZone("", off))
}

// Wall strips the monotonic reading, which stands still while the machine
// sleeps, and the part of a second, which the file has no use for.
func Wall(t time.Time) time.Time { return t.Round(0).Truncate(time.Second) }

// DayOf is the day of a moment where it is told, as a file keeps days: at midnight UTC.
func DayOf(t time.Time) time.Time {
	return time.Date(t.Year(), t.Month(), t.Day(), 0, 0, 0, 0, time.UTC)
}
