package value

import (
	"fmt"
	"math"
	"strconv"
	"time"

	"chape/calc/length"
	"chape/project/clock"
	"chape/project/plain"
)

// Outside tells whether a value, as the file holds it, is out of the field's range; the
// Problem is said in the unit.
func (s Spec) Outside(v any, u length.Unit) (Problem, bool) {
	p := Problem{Key: s.Key, Index: -1}
	switch v := v.(type) {
	case nil:
		return p, false
	case length.Sold:
		return s.Outside(v.Thick, u)
	case length.Length:
		p.Found, p.Remedy = Measure(v, u), s.lengths(u)
		return p, !s.holds(float64(v))
	case float64:
		p.Found, p.Remedy = strconv.FormatFloat(v, 'g', -1, 64), s.figures()
		return p, !s.holds(v)
	case int:
		p.Found, p.Remedy = strconv.Itoa(v), s.figures()
		return p, !s.holds(float64(v))
	case string:
		return s.badText(v, p)
	case []string:
		p.Found, p.Remedy = fmt.Sprintf("%d words", len(v)), fmt.Sprintf("give at most %d", int(s.Max))
		return p, float64(len(v)) > s.Max
	case time.Duration:
		p.Found, p.Remedy = plain.Quote(clock.Short(v)), fmt.Sprintf("give 0h to %s, such as 24h or 15m", clock.Short(time.Duration(s.Max)))
		return p, v < 0 || v > time.Duration(s.Max)
	case time.Time:
		p.Found, p.Remedy = v.Format(time.RFC3339), "give a time between the years 1970 and 2200"
		if v.IsZero() {
			p.Found = "nothing"
			return p, s.Needed
		}
		return p, v.Year() < 1970 || v.Year() > 2200
	}
	return p, false
}

func (s Spec) holds(f float64) bool {
	return f >= s.Min && f <= s.Max && !(s.Above && f == s.Min) && !math.IsNaN(f)
}

// lengths says the range in the unit, rounded inwards in inches.
func (s Spec) lengths(u length.Unit) string {
	lo, hi := s.Min, s.Max
	if u == length.Inches {
		lo, hi = math.Ceil(lo/25.4*100)/100, math.Floor(hi/25.4*100)/100
	}
	return s.span(lo, hi) + " " + u.String()
}

func (s Spec) figures() string { return s.span(s.Min, s.Max) }

func (s Spec) span(lo, hi float64) string {
	from, to := strconv.FormatFloat(lo, 'f', -1, 64), strconv.FormatFloat(hi, 'f', -1, 64)
	if s.Above {
		return "give more than " + from + " and at most " + to
	}
	return "give between " + from + " and " + to
}

// Measure shows a length for an error.
func Measure(l length.Length, u length.Unit) string {
	f := float64(l)
	if math.IsNaN(f) || math.IsInf(f, 0) || math.Abs(f) > 1e6 || f != 0 && math.Abs(f) < 1e-6 {
		return strconv.FormatFloat(f, 'g', -1, 64)
	}
	if u == length.Inches {
		return l.Short(u) + " in"
	}
	return strconv.FormatFloat(f, 'f', -1, 64) + " mm"
}

// Bound shows the most or the least that will do. What has no short text in
// inches is rounded, by math.Ceil or math.Floor, so that it will do itself.
func Bound(l length.Length, u length.Unit, round func(float64) float64) string {
	if u == length.Inches && l.Short(u) != l.Exact(u) {
		return strconv.FormatFloat(round(l.In()*1000)/1000, 'f', -1, 64) + " in"
	}
	return Measure(l, u)
}

// Tidy takes off what adding and dividing leave behind the ninth decimal, so
// that a sum of two readings is a reading again.
func Tidy(l length.Length) length.Length {
	return length.Length(math.Round(float64(l)*1e9) / 1e9)
}
