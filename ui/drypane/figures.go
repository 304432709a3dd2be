package drypane

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"time"

	"chape/project"
	"chape/project/clock"
)

// ounce is the avoirdupois ounce in grams, exactly (international yard and
// pound agreement, 1959).
const ounce = 28.349523125

// gramsField is the field of weighing i.
func gramsField(i int) project.Field {
	for _, f := range project.WeighFields(i) {
		if f.Key == "weigh.grams" {
			return f
		}
	}
	panic("no field of grams") // it stands in the table of fields
}

// scaleWords is what scales put before the weight: "ST,GS," for steady, gross. The
// letters before the comma that begins a number are gone already.
var scaleWords = regexp.MustCompile(`(?i)^,?([a-z]{1,3},)+`)

// gramsOf reads a weight as people and scales write it: 141.5, 141,5 g,
// + 141.5 g, 0.1415 kg, 5 oz.
func gramsOf(f project.Field, text string, p project.Project) (float64, error) {
	body, unit := strings.TrimSpace(text), 1.0
	for _, u := range []struct {
		name  string
		grams float64
	}{{"kg", 1000}, {"oz", ounce}, {"g", 1}} {
		if cut, ok := strings.CutSuffix(strings.ToLower(body), u.name); ok {
			body, unit = strings.TrimSpace(cut), u.grams
			break
		}
	}
	body = scaleWords.ReplaceAllString(body, "")
	if sign, ok := strings.CutPrefix(body, "+"); ok {
		body = strings.TrimSpace(sign)
	}
	if body == "" {
		return 0, fmt.Errorf("no weight yet: type it in grams, such as 141.5")
	}
	if unit == 1 {
		v, err := f.Parse(body, p)
		if err != nil {
			return 0, err
		}
		return v.(float64), nil
	}
	n, err := strconv.ParseFloat(strings.Replace(body, ",", ".", 1), 64)
	if err != nil {
		return 0, fmt.Errorf("%q is not a weight: try 141.5, 0.1415 kg or 5 oz", text)
	}
	v, err := f.Parse(strconv.FormatFloat(math.Round(n*unit*100)/100, 'f', -1, 64), p)
	if err != nil {
		return 0, err
	}
	return v.(float64), nil
}

// far is how many times another weight makes one doubtful. Soaked leather
// weighs no more than about two and a half times what it does dry (common
// practice, no source).
const far = 3

// doubt asks about a weight far from the one nearest in time; i is its own
// place, -1 when it is new.
func (m *Model) doubt(grams float64, when time.Time, i int) string {
	nearest, gap := -1, time.Duration(math.MaxInt64)
	for j, w := range m.snap.Project.Weigh {
		if d := w.When.Sub(when).Abs(); j != i && d <= gap {
			nearest, gap = j, d
		}
	}
	if nearest < 0 {
		return ""
	}
	other := m.snap.Project.Weigh[nearest].Grams
	if grams <= far*other && grams >= other/far {
		return ""
	}
	return fmt.Sprintf("far from %s g, weighed %s: a slip of the digits? Enter: it is right; Esc: take it back",
		figure(other), m.clock(m.snap.Project.Weigh[nearest].When))
}

// celsiusText takes the unit off a temperature, and turns Fahrenheit into
// Celsius.
func celsiusText(text string) string {
	body := strings.TrimSpace(text)
	upper := strings.ToUpper(body)
	cut := func(unit string) (string, bool) {
		s, ok := strings.CutSuffix(upper, unit)
		return strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(s), "°")), ok
	}
	if s, ok := cut("F"); ok {
		if f, err := strconv.ParseFloat(strings.Replace(s, ",", ".", 1), 64); err == nil {
			return strconv.FormatFloat(math.Round((f-32)/1.8*10)/10, 'f', -1, 64)
		}
		return body
	}
	if s, ok := cut("C"); ok {
		return s
	}
	if s, ok := cut("°"); ok {
		return s
	}
	return body
}

func percentText(text string) string {
	return strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(text), "%"))
}

// figure is a number in as few digits as it was given.
func figure(f float64) string { return strconv.FormatFloat(f, 'f', -1, 64) }

// fine is a computed number, with a decimal where it is small.
func fine(f float64) string {
	if math.Abs(f) < 10 {
		return strconv.FormatFloat(f, 'f', 1, 64)
	}
	return strconv.FormatFloat(f, 'f', 0, 64)
}

// clock says when, as everywhere on the screen.
func (m *Model) clock(t time.Time) string { return clock.Time(t, m.snap.Now) }
