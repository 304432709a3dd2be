package project

import (
	"fmt"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"
)

// badText tells whether a text or a choice will not do.
func (s Spec) badText(v string, p Problem) (Problem, bool) {
	p.Found = quote(v)
	if s.Kind == Choice {
		for _, o := range s.Options {
			if v == o {
				return p, false
			}
		}
		p.Remedy = s.offer()
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
		return 0, fmt.Errorf("%s is not a number: try 3.5", quote(text))
	}
	return f, nil
}

// parseShare reads 0.05 or 5 %.
func parseShare(text string) (float64, error) {
	body, percent := strings.CutSuffix(text, "%")
	f, err := parseNumber(strings.TrimSpace(body))
	if err != nil {
		return 0, fmt.Errorf("%s is not a share: try 0.05 or 5 %%", quote(text))
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
		return t, fmt.Errorf("%s is not a date: try 2026-12-18", quote(text))
	}
	return t, nil
}

func parseMoment(text string) (time.Time, error) {
	if text == "" {
		return time.Time{}, nil
	}
	t, err := time.Parse(time.RFC3339, text)
	if err != nil {
		return t, fmt.Errorf("%s is not a time: try 2026-11-25T09:30:00+01:00", quote(text))
	}
	return whole(t), nil
}

// parseSpan reads a duration as Go writes it; empty is none.
func parseSpan(text string) (time.Duration, error) {
	if text == "" {
		return 0, nil
	}
	d, err := time.ParseDuration(text)
	if err != nil {
		return 0, fmt.Errorf("%s is not a duration: try 24h or 15m", quote(text))
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
	return false, fmt.Errorf("%s is neither: try yes or no", quote(text))
}

// shortSpan is a duration as Go writes it, without the zeros at its end.
func shortSpan(d time.Duration) string {
	s := d.String()
	if strings.HasSuffix(s, "m0s") {
		s = strings.TrimSuffix(s, "0s")
	}
	if strings.HasSuffix(s, "h0m") {
		s = strings.TrimSuffix(s, "0m")
	}
	return s
}

// whole gives a time as the file keeps it: whole seconds, its offset in whole
// minutes, no monotonic reading and no zone name, so that equal times are
// equal structs.
func whole(t time.Time) time.Time {
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
