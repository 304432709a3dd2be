package value

import (
	"fmt"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"chape/project/clock"
	"chape/project/plain"
)

// badText tells whether a text or a choice will not do.
func (s Spec) badText(v string, p Problem) (Problem, bool) {
	p.Found = plain.Quote(v)
	if s.Kind == Choice {
		for _, o := range s.Options {
			if v == o {
				return p, false
			}
		}
		p.Remedy = s.Offer()
		return p, true
	}
	switch n := utf8.RuneCountInString(v); {
	case !utf8.ValidString(v):
		p.Remedy = "write it as UTF-8"
	case s.Needed && strings.TrimSpace(v) == "":
		p.Remedy = "give it some words"
	case float64(n) > s.Max:
		p.Found = fmt.Sprintf("%d letters", n)
		p.Remedy = fmt.Sprintf("give at most %d letters", int(s.Max))
	default:
		return p, false
	}
	return p, true
}

// parseNumber reads a plain figure, with a point or a comma.
func parseNumber(text string) (float64, error) {
	t := strings.Replace(text, ",", ".", 1)
	digits := strings.Trim(t, "+-.0123456789") == "" && len(t) < 40
	f, err := strconv.ParseFloat(t, 64)
	if err != nil || !digits {
		return 0, fmt.Errorf("%s is not a number: try 3.5", plain.Quote(text))
	}
	return f, nil
}

// parseShare reads 0.05 or 5 %.
func parseShare(text string) (float64, error) {
	body, percent := strings.CutSuffix(text, "%")
	f, err := parseNumber(strings.TrimSpace(body))
	if err != nil {
		return 0, fmt.Errorf("%s is not a share: try 0.05 or 5 %%", plain.Quote(text))
	}
	if percent {
		f /= 100
	}
	return f, nil
}

func parseDate(text string) (time.Time, error) {
	if text == "" {
		return time.Time{}, nil
	}
	t, err := time.Parse(time.DateOnly, text)
	if err != nil {
		return t, fmt.Errorf("%s is not a date: try 2026-12-18", plain.Quote(text))
	}
	return t, nil
}

func parseMoment(text string) (time.Time, error) {
	if text == "" {
		return time.Time{}, nil
	}
	t, err := time.Parse(time.RFC3339, text)
	if err != nil {
		return t, fmt.Errorf("%s is not a time: try 2026-11-25T09:30:00+01:00", plain.Quote(text))
	}
	return clock.Whole(t), nil
}

// parseSpan reads a duration as Go writes it; empty is none.
func parseSpan(text string) (time.Duration, error) {
	if text == "" {
		return 0, nil
	}
	d, err := time.ParseDuration(text)
	if err != nil {
		return 0, fmt.Errorf("%s is not a duration: try 24h or 15m", plain.Quote(text))
	}
	return d, nil
}

func parseFlag(text string) (bool, error) {
	switch strings.ToLower(text) {
	case "yes", "y", "true":
		return true, nil
	case "no", "n", "false", "":
		return false, nil
	}
	return false, fmt.Errorf("%s is neither: try yes or no", plain.Quote(text))
}
