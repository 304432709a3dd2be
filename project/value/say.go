package value

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"chape/calc/length"
	"chape/project/clock"
	"chape/project/plain"
)

// Show is a value as the screens show it, without its unit.
func (s Spec) Show(v any, u length.Unit) string {
	switch v := v.(type) {
	case nil:
		return s.Auto
	case length.Length:
		return v.Short(u)
	case length.Sold:
		return v.As
	case float64:
		return strconv.FormatFloat(v, 'f', -1, 64)
	case int:
		return strconv.Itoa(v)
	case string:
		return s.word(v)
	case time.Time:
		if v.IsZero() {
			return ""
		}
		if s.Kind == Date {
			return v.Format(time.DateOnly)
		}
		return v.Format(time.RFC3339)
	case time.Duration:
		if v == 0 {
			return ""
		}
		return clock.Short(v)
	case bool:
		if v {
			return "yes"
		}
		return "no"
	}
	return ""
}

// Parse reads what was typed, of the type Kind says; nil where none is given. The error says what
// would do. The range is not looked at: Outside does.
func (s Spec) Parse(text string, u length.Unit) (any, error) {
	if s.Auto != "" && (text == "" || strings.EqualFold(text, s.Auto)) {
		return nil, nil
	}
	switch s.Kind {
	case Length:
		return wrap(length.Parse(text, u))
	case Leather:
		return soldOr(length.ParseSold(text, u))
	case Share:
		return wrap(parseShare(text))
	case Number:
		return wrap(parseNumber(text))
	case Count:
		n, err := strconv.Atoi(text)
		if err != nil {
			return nil, fmt.Errorf("%s is not a whole number: try %d", plain.Quote(text), int(s.Min)+1)
		}
		return n, nil
	case Choice:
		return wrap(s.choose(text))
	case Date:
		return wrap(parseDate(text))
	case Moment:
		return wrap(parseMoment(text))
	case Span:
		return wrap(parseSpan(text))
	case Flag:
		return wrap(parseFlag(text))
	}
	return text, nil
}

func wrap[T any](v T, err error) (any, error) {
	if err != nil {
		return nil, err
	}
	return v, nil
}

// soldOr is the length alone where no range was typed.
func soldOr(s length.Sold, err error) (any, error) {
	if s.As == "" {
		return wrap(s.Thick, err)
	}
	return wrap(s, err)
}

// choose takes an option by its word or the beginning of it.
func (s Spec) choose(text string) (string, error) {
	low := strings.ToLower(text)
	var found []string
	for _, o := range s.Options {
		if low == o || low == s.word(o) {
			return o, nil
		}
		if low != "" && (strings.HasPrefix(o, low) || strings.HasPrefix(s.word(o), low)) {
			found = append(found, o)
		}
	}
	if len(found) == 1 {
		return found[0], nil
	}
	shown := s
	if s.Shown != nil {
		shown.Options = s.Shown
	}
	return "", fmt.Errorf("%s is not one of them: %s", plain.Quote(text), shown.Offer())
}

// word is an option as the screens say it.
func (s Spec) word(option string) string {
	if i := slices.Index(s.Options, option); i >= 0 && i < len(s.Shown) {
		return s.Shown[i]
	}
	return option
}

// Offer says which options there are.
func (s Spec) Offer() string {
	n := len(s.Options)
	return "try " + strings.Join(s.Options[:n-1], ", ") + " or " + s.Options[n-1]
}
