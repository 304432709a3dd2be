package clock

import (
	"errors"
	"fmt"
	"strings"
	"time"
	"unicode"

	"chape/project/plain"
)

// Longest bounds a span; more is a slip of the keys.
const Longest = 366 * 24 * time.Hour

// ParseSpan reads a length of time as people type it: "15 min", "1 h 30 min", "1h30m",
// "2 d", "40 s", "0". A bare number other than 0 has no meaning.
func ParseSpan(text string) (time.Duration, error) { return parseSpanIn(text, text) }

// parseSpanIn reads a part of what was typed; an error quotes all of it.
func parseSpanIn(text, typed string) (time.Duration, error) {
	bad := func() (time.Duration, error) {
		return 0, fmt.Errorf("%s is not a length of time: try 15 min, 2 h, 1 h 30 min or 2 d", plain.Quote(typed))
	}
	rest := strings.ToLower(strings.Join(strings.Fields(text), ""))
	if rest == "0" {
		return 0, nil
	}
	if rest == "" {
		return bad()
	}
	if _, err := parseDecimal(rest); err == nil {
		return 0, fmt.Errorf("%s has no unit: give the unit, as in 15 min, 2 h", plain.Quote(typed))
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
		if number*float64(unit) > float64(Longest-sum) {
			return 0, fmt.Errorf("%s is too long: give at most 366 d", plain.Quote(typed))
		}
		sum += time.Duration(number * float64(unit)).Round(time.Second)
		rest = strings.TrimPrefix(rest[n+end:], ",") // "1 h, 2 min"
	}
	return sum, nil
}

// ParseWindow reads hold times as people type them: "2 h", "24-48 h", "10 min - 1 h".
// The second time is 'look by'; "0" is no hold.
func ParseWindow(text string) (hold, latest time.Duration, err error) {
	dashed := strings.NewReplacer("–", "-", "−", "-").Replace(text)
	first, second, window := strings.Cut(dashed, "-")
	if !window {
		hold, err = ParseSpan(text)
		return hold, 0, err
	}
	if strings.TrimSpace(first) == "" {
		return 0, 0, fmt.Errorf("%s is less than nothing: try 15 min, 2 h or 24-48 h", plain.Quote(text))
	}
	if latest, err = parseSpanIn(second, text); err != nil {
		return 0, 0, err
	}
	if !strings.ContainsFunc(first, unicode.IsLetter) { // "24-48 h": the unit is said once
		other := func(r rune) bool { return !unicode.IsLetter(r) }
		unit := strings.TrimLeftFunc(second, other)
		if end := strings.IndexFunc(unit, other); end >= 0 {
			unit = unit[:end]
		}
		first += unit
	}
	if hold, err = parseSpanIn(first, text); err != nil {
		return 0, 0, err
	}
	return hold, latest, CheckWindow(hold, latest)
}

var spanUnits = map[string]time.Duration{
	"s": time.Second, "sec": time.Second,
	"m": time.Minute, "min": time.Minute,
	"h": time.Hour,
	"d": 24 * time.Hour, "day": 24 * time.Hour, "days": 24 * time.Hour,
}

// parseDecimal reads a number with a point or a comma, up to nine digits.
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

// CheckWindow tells why hold times will not do: not before hold, look by latest, both from
// the start; 0 for none.
func CheckWindow(hold, latest time.Duration) error {
	switch {
	case hold < 0 || latest < 0 || hold > Longest || latest > Longest:
		return errors.New("a hold lasts from 0 to 366 days: try 2 h, or 24-48 h")
	case latest > 0 && latest < hold:
		return fmt.Errorf("look by %s is before not before %s: give the shorter time first",
			Span(latest), Span(hold))
	}
	return nil
}
