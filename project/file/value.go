package file

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"chape/calc/length"
	"chape/project"
	"chape/project/clock"
	"chape/project/plain"
)

// fromTOML gives the value, or what would do instead.
func fromTOML(s project.Spec, raw any) (v any, remedy string) {
	switch s.Kind {
	case project.Length, project.Leather:
		return lengthFrom(s, raw)
	case project.Share, project.Number:
		if n, ok := figure(raw); ok {
			return n, ""
		}
		return nil, "write a number, such as 0.5"
	case project.Count:
		if n, ok := raw.(int64); ok && math.Abs(float64(n)) < 1e9 {
			return int(n), ""
		}
		return nil, fmt.Sprintf("write a whole number, such as %d", int(s.Min)+1)
	case project.Choice:
		if t, ok := raw.(string); ok && slices.Contains(s.Options, t) {
			return t, ""
		}
		return nil, s.Offer()
	case project.Text, project.Lines:
		if t, ok := raw.(string); ok {
			return t, ""
		}
		return nil, "write a text in quotes"
	case project.Flag:
		if b, ok := raw.(bool); ok {
			return b, ""
		}
		return nil, "write true or false"
	case project.Span:
		return spanFrom(raw)
	case project.Words:
		return wordsFrom(raw)
	}
	return timeFrom(s, raw)
}

// figure is a number that is one.
func figure(raw any) (float64, bool) {
	switch n := raw.(type) {
	case int64:
		return float64(n), true
	case float64:
		return n, !math.IsNaN(n) && !math.IsInf(n, 0)
	}
	return 0, false
}

func lengthFrom(s project.Spec, raw any) (any, string) {
	if n, ok := figure(raw); ok {
		return length.Length(n), ""
	}
	remedy := `write millimetres, such as 3.2, or a text with its unit, such as "1/8 in"`
	read := func(t string, u length.Unit) (length.Sold, error) {
		l, err := length.Parse(t, u)
		return length.Sold{Thick: l}, err
	}
	if s.Kind == project.Leather {
		read = length.ParseSold
		remedy = `write millimetres, such as 3.2, or a text with its unit, such as "1/8 in", "8 oz" or "8-9 oz"`
	}
	t, ok := raw.(string)
	if !ok {
		return nil, remedy
	}
	sold, err := read(t, length.Millimetres)
	if err != nil {
		if _, why, ok := strings.Cut(err.Error(), ": "); ok && strings.Contains(err.Error(), "leather weight") {
			remedy = "ounces are for leather alone: " + why
		}
		return nil, remedy
	}
	// Without a unit the same text is another length in inches.
	if in, err := read(t, length.Inches); err != nil || in != sold {
		return nil, remedy
	}
	if sold.As != "" {
		return sold, ""
	}
	return sold.Thick, ""
}

func wordsFrom(raw any) (any, string) {
	const remedy = `write a list of texts, such as ["command", "word"], or [] for none`
	list, ok := raw.([]any)
	if !ok {
		return nil, remedy
	}
	var words []string
	for _, w := range list {
		t, ok := w.(string)
		if !ok || strings.ContainsRune(t, 0) {
			return nil, remedy
		}
		words = append(words, t)
	}
	return words, ""
}

func spanFrom(raw any) (any, string) {
	const remedy = `write a duration in quotes, such as "24h" or "15m"`
	t, ok := raw.(string)
	if !ok || t == "" {
		return nil, remedy
	}
	d, err := time.ParseDuration(t)
	if err != nil {
		return nil, remedy
	}
	return d, ""
}

// timeFrom reads a date or a time. The decoder marks local dates and times by
// the names of their zones.
func timeFrom(s project.Spec, raw any) (any, string) {
	t, ok := raw.(time.Time)
	kind := ""
	if ok {
		kind = t.Location().String()
	}
	if s.Kind == project.Date {
		if kind != "date-local" {
			return nil, "write a date without quotes, such as 2026-12-18"
		}
		return time.Date(t.Year(), t.Month(), t.Day(), 0, 0, 0, 0, time.UTC), ""
	}
	if !ok || strings.HasSuffix(kind, "-local") {
		return nil, "write a time with its offset, without quotes, such as 2026-11-25T09:30:00+01:00"
	}
	return clock.Whole(t), ""
}

// foundRaw says what TOML holds, for an error.
func foundRaw(raw any) string {
	switch v := raw.(type) {
	case string:
		return plain.Quote(v)
	case int64, bool:
		return fmt.Sprint(v)
	case float64:
		return strconv.FormatFloat(v, 'g', -1, 64)
	case time.Time:
		return foundTime(v)
	case map[string]any:
		return "a table"
	}
	return "a list"
}

func foundTime(t time.Time) string {
	switch t.Location().String() {
	case "date-local":
		return "the date " + t.Format(time.DateOnly)
	case "time-local":
		return "the time " + t.Format(time.TimeOnly)
	case "datetime-local":
		return t.Format("2006-01-02T15:04:05") + " without an offset"
	}
	return t.Format(time.RFC3339)
}
