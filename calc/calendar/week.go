// Package calendar reckons when work can be ready: minutes at the bench, fitted
// into the shop's hours, and waits, which run day and night. There is no clock in
// it: times are passed in, and the zone is that of the time passed in.
package calendar

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"
)

// Hours is a stretch at the bench, in minutes after midnight by the clock on the
// wall; To is above From, and at most 24·60.
type Hours struct{ From, To int }

// Week holds the stretches of each day, Sunday first as time.Weekday counts, in
// order and apart from each other. The zero Week has none.
type Week [7][]Hours

// Day is a date without a time.
type Day struct {
	Year  int
	Month time.Month
	Day   int
}

// DayOf is the date of a time in its own zone.
func DayOf(t time.Time) Day {
	y, m, d := t.Date()
	return Day{y, m, d}
}

// Until counts the days from d to e; below 0 where e is earlier.
func (d Day) Until(e Day) int {
	utc := func(d Day) time.Time { return time.Date(d.Year, d.Month, d.Day, 0, 0, 0, 0, time.UTC) }
	return int(utc(e).Sub(utc(d)).Hours() / 24)
}

// Any tells whether there is any time at the bench.
func (w Week) Any() bool {
	return slices.ContainsFunc(w[:], func(h []Hours) bool { return len(h) > 0 })
}

// A week in letters: "mon-fri 18:00-21:00, sat 9:00-13:00 14:00-17:00".
var letters = [7]string{"sun", "mon", "tue", "wed", "thu", "fri", "sat"}

// ParseWeek reads days and hours as in "mon-fri 18-21, sat 9:00-13:00 14-17". The
// error is one line that says what would do.
func ParseWeek(text string) (Week, error) {
	var w Week
	for _, part := range strings.Split(text, ",") {
		words := strings.Fields(strings.ToLower(part))
		if len(words) == 0 {
			continue
		}
		days, ok := parseDays(words[0])
		if !ok {
			return Week{}, fmt.Errorf("%q is no day: try mon, or mon-fri, then the hours", words[0])
		}
		if len(words) == 1 {
			return Week{}, fmt.Errorf("%q has no hours: try %s 18:00-21:00", words[0], words[0])
		}
		for _, h := range words[1:] {
			hours, ok := parseHours(h)
			if !ok {
				return Week{}, fmt.Errorf("%q is no time at the bench: try 18:00-21:00", h)
			}
			for _, d := range days {
				w[d] = append(w[d], hours)
			}
		}
	}
	return w, w.sort()
}

// sort puts each day in order; the error names two stretches that overlap.
func (w *Week) sort() error {
	for d, hs := range w {
		slices.SortFunc(hs, func(a, b Hours) int { return a.From - b.From })
		for i := 1; i < len(hs); i++ {
			if hs[i].From < hs[i-1].To {
				return fmt.Errorf("%s: %v and %v overlap: give hours apart from each other", letters[d], hs[i-1], hs[i])
			}
		}
	}
	return nil
}

func parseDays(s string) ([]int, bool) {
	from, to, through := strings.Cut(s, "-")
	a := slices.Index(letters[:], cut3(from))
	b := a
	if through {
		b = slices.Index(letters[:], cut3(to))
	}
	if a < 0 || b < 0 {
		return nil, false
	}
	days := []int{a}
	for a != b {
		a = (a + 1) % 7
		days = append(days, a)
	}
	return days, true
}

// cut3 takes the first three letters, of "Thursday" as well as of "thu".
func cut3(s string) string {
	if len(s) > 3 && len(s) <= len("wednesday") {
		return s[:3]
	}
	return s
}

func parseHours(s string) (Hours, bool) {
	from, to, _ := strings.Cut(s, "-")
	a, ok := parseMinute(from)
	b, ok2 := parseMinute(to)
	return Hours{a, b}, ok && ok2 && a < b
}

// parseMinute reads 18, 18:30 or 24:00.
func parseMinute(s string) (int, bool) {
	hour, minute, _ := strings.Cut(s, ":")
	h, err := strconv.Atoi(hour)
	m := 0
	if err == nil && minute != "" {
		m, err = strconv.Atoi(minute)
	}
	return h*60 + m, err == nil && h >= 0 && m >= 0 && m < 60 && h*60+m <= 24*60
}

// String writes the hours as they are read.
func (h Hours) String() string {
	return fmt.Sprintf("%d:%02d-%d:%02d", h.From/60, h.From%60, h.To/60, h.To%60)
}

// String writes the week as ParseWeek reads it, Monday first, days alike
// together.
func (w Week) String() string {
	var parts []string
	for i := 1; i <= 7; {
		d, last := i%7, i
		for last < 7 && slices.Equal(w[(last+1)%7], w[d]) {
			last++
		}
		i = last + 1
		if len(w[d]) == 0 {
			continue
		}
		name := letters[d]
		if last%7 != d {
			name += "-" + letters[last%7]
		}
		for _, h := range w[d] {
			name += " " + h.String()
		}
		parts = append(parts, name)
	}
	return strings.Join(parts, ", ")
}
