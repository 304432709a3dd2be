package project

import (
	"errors"
	"fmt"
	"strings"
	"time"
	"unicode"

	"github.com/charmbracelet/x/ansi"
)

// SpanText says how long something lasts, in at most two units: "40 s", "12 min",
// "3 h 12 min", "3 d 4 h". It rounds up to the smallest unit shown, so that what still
// runs never reads as nothing.
func SpanText(d time.Duration) string {
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

// ClockTime says when t is, on the clock of now's location: "14:20" today,
// "Thu 14:20" up to six days away, "3 Dec 14:20" beyond, with the year when it
// is another one.
func ClockTime(t, now time.Time) string {
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

// plainText keeps what can be shown on one line: names come from files.
func plainText(s string) string {
	return strings.TrimSpace(strings.Map(func(r rune) rune {
		if !unicode.IsPrint(r) {
			return -1
		}
		return r
	}, ansi.Strip(s)))
}

// ParseSpan reads a length of time as people type it: "15 min", "1 h 30 min", "1h30m",
// "2 d", "40 s", "0". A bare number other than 0 has no meaning.
func ParseSpan(text string) (time.Duration, error) { return parseSpanIn(text, text) }

// parseSpanIn reads a part of what was typed; an error quotes all of it.
func parseSpanIn(text, typed string) (time.Duration, error) {
	bad := func() (time.Duration, error) {
		return 0, fmt.Errorf("%s is not a length of time: try 15 min, 2 h, 1 h 30 min or 2 d", quote(typed))
	}
	rest := strings.ToLower(strings.Join(strings.Fields(text), ""))
	if rest == "0" {
		return 0, nil
	}
	if rest == "" {
		return bad()
	}
	if _, err := parseDecimal(rest); err == nil {
		return 0, fmt.Errorf("%s has no unit: give the unit, as in 15 min, 2 h", quote(typed))
	}
	var sum time.Duration
	for rest != "" {
		n := strings.IndexFunc(rest, unicode.IsLetter)
		if n <= 0 {
			return bad()
		}
		end := strings.IndexFunc(rest[n:], func(r rune) bool { return !unicode.IsLetter(r) })
		if end < 0 {
			end = len(rest) - n
		}
		unit, ok := spanUnits[rest[n:n+end]]
		number, err := parseDecimal(rest[:n])
		if !ok || err != nil {
			return bad()
		}
		if number*float64(unit) > float64(MaxHold-sum) {
			return 0, fmt.Errorf("%s is too long: give at most 366 d", quote(typed))
		}
		sum += time.Duration(number * float64(unit)).Round(time.Second)
		rest = rest[n+end:]
	}
	return sum, nil
}

// ParseWindow reads hold times as people type them: "2 h", "24-48 h", "10 min - 1 h".
// The second time is 'look by'; "0" is no hold.
func ParseWindow(text string) (hold, latest time.Duration, err error) {
	plain := strings.NewReplacer("–", "-", "−", "-").Replace(text)
	first, second, window := strings.Cut(plain, "-")
	if !window {
		hold, err = ParseSpan(text)
		return hold, 0, err
	}
	if strings.TrimSpace(first) == "" {
		return 0, 0, fmt.Errorf("%s is less than nothing: try 15 min, 2 h or 24-48 h", quote(text))
	}
	if latest, err = parseSpanIn(second, text); err != nil {
		return 0, 0, err
	}
	if !strings.ContainsFunc(first, unicode.IsLetter) { // "24-48 h": the unit is said once
		first += strings.TrimLeftFunc(second, func(r rune) bool { return !unicode.IsLetter(r) })
	}
	if hold, err = parseSpanIn(first, text); err != nil {
		return 0, 0, err
	}
	return hold, latest, checkHold(hold, latest)
}

var spanUnits = map[string]time.Duration{
	"s": time.Second, "sec": time.Second,
	"m": time.Minute, "min": time.Minute,
	"h": time.Hour,
	"d": 24 * time.Hour, "day": 24 * time.Hour, "days": 24 * time.Hour,
}

// parseDecimal reads a number with a point or a comma, up to five digits.
func parseDecimal(s string) (float64, error) {
	var whole, part, scale float64 = 0, 0, 1
	inPart, digits := false, 0
	for _, r := range s {
		switch {
		case (r == '.' || r == ',') && !inPart:
			inPart = true
		case '0' <= r && r <= '9' && digits < 9:
			digits++
			if inPart {
				scale /= 10
				part += float64(r-'0') * scale
			} else {
				whole = whole*10 + float64(r-'0')
			}
		default:
			return 0, errors.New("not a number")
		}
	}
	if digits == 0 {
		return 0, errors.New("no digits")
	}
	return whole + part, nil
}

// WindowText says hold times the way ParseWindow reads them.
func WindowText(hold, latest time.Duration) string {
	switch {
	case hold <= 0 && latest <= 0:
		return "0"
	case latest <= 0:
		return SpanText(hold)
	}
	return SpanText(hold) + " - " + SpanText(latest)
}
