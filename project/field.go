package project

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"chape/calc/length"
	"chape/project/clock"
	"chape/project/plain"
)

// Kind is what sort of value a field holds.
type Kind uint8

// The kinds, with the Go type of their values.
const (
	Length  Kind = iota // length.Length
	Leather             // length.Length; leather weights may be typed
	Share               // float64
	Number              // float64, a plain figure such as grams
	Count               // int
	Choice              // string, one of Options
	Text                // string, one line
	Lines               // string, several lines
	Date                // time.Time at midnight UTC; zero: none
	Moment              // time.Time; zero: not yet
	Span                // time.Duration
	Flag                // bool
	Words               // []string; in a configuration alone
)

// Spec says what a field is: the reading and the writing of the file, the
// checks and the screens all go by it.
type Spec struct {
	Key     string          // in the file: "sheath.leather", "knife.station.at"
	Group   string          // "project", "customer", "knife", "outline", "sheath", "strap", "belt", "stitches", "room"
	Name    string          // the trade's plain words, for the screen
	Hint    string          // how to measure or choose it, one line
	Kind    Kind            //
	Fine    length.Fineness // the tool it is measured with
	In      string          // unit of a number: "g"
	Min     float64         // mm, or as the kind counts; texts: unused
	Max     float64         // texts: the most letters
	Above   bool            // Min itself is too little
	Options []string        // of a choice, as in the file
	Shown   []string        // the options as the screens say them; nil: as in the file
	Auto    string          // what the screen says where no value is given: "centred"
	Needed  bool            // the file must hold it: there is no default
}

// Field is one value of a project: the screens edit it, the file keeps it.
type Field struct {
	Spec
	Index   int  // of the row it belongs to, -1: none
	Default any  // what a key that the file lacks stands for; nil: nothing given
	ranged  bool // Min and Max are of what the screens show, too
	get     func(p *Project, i int) any
	set     func(p *Project, i int, v any) error
	kept    func(p *Project, i int) any
	keep    func(p *Project, i int, v any)
	written func(p *Project, i int) bool
}

// At is the column of a list in row i.
func (f Field) At(i int) Field {
	f.Index = i
	return f
}

// Kept gives the value as the file holds it, of the type Kind says; nil where none is
// given.
func (f Field) Kept(p *Project) any { return f.kept(p, f.Index) }

// Keep puts a value into p as it comes from a file. Nothing is checked and nothing
// follows from it: Validate p when it is filled.
func (f Field) Keep(p *Project, v any) { f.keep(p, f.Index, v) }

// Written tells whether the file needs the key: some say nothing where they are empty.
func (f Field) Written(p *Project) bool { return f.written(p, f.Index) }

// Get gives the value as the screens show it, of the type Kind says; nil
// where none is given and Auto is shown.
func (f Field) Get(p Project) any { return f.get(&p, f.Index) }

// Set puts a value that Parse gave into p. When the project would no longer
// do, it is left as it was and the error is a Problem.
func (f Field) Set(p *Project, v any) error {
	q := p.Clone()
	if err := f.set(&q, f.Index, v); err != nil {
		if bad, ok := err.(Problem); ok {
			bad.Index = f.Index
			return bad
		}
		return err
	}
	if err := q.Validate(); err != nil {
		ps := err.(Problems)
		if own, ok := ps.For(f.Key, f.Index); ok {
			return own
		}
		return ps[0]
	}
	*p = q
	return nil
}

// Show gives the text for the screen and its edit field, without a unit. Parse
// takes it for the value as it is, to the last digit.
func (f Field) Show(p Project) string { return f.show(f.Get(p), p.Units) }

// Text is a value as Show would give it.
func (f Field) Text(v any, p Project) string { return f.show(v, p.Units) }

// Parse reads what was typed. The error is one line that says what would do.
// An empty text is no value where Auto says what then holds; the text that
// Show gives is the value as it is, to the last digit.
func (f Field) Parse(text string, p Project) (any, error) {
	if text == f.Show(p) {
		return f.Get(p), nil
	}
	v, err := f.parse(strings.TrimSpace(text), p.Units)
	if err != nil || !f.ranged {
		return v, err
	}
	if bad, ok := f.Outside(v, p.Units); ok {
		switch v.(type) {
		case length.Length, length.Sold:
			bad.Found = plain.Quote(strings.TrimSpace(text))
		}
		return nil, fmt.Errorf("%s will not do: %s", bad.Found, bad.Remedy)
	}
	return v, nil
}

// Unit is what stands behind the value on the screen.
func (f Field) Unit(p Project) string {
	switch f.Kind {
	case Length, Leather:
		if sold, ok := f.Get(p).(length.Sold); ok { // both are shown
			return "counts as " + sold.Thick.Format(p.Units, length.Calliper)
		}
		return p.Units.String()
	}
	return f.In
}

func (s Spec) show(v any, u length.Unit) string {
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

func (s Spec) parse(text string, u length.Unit) (any, error) {
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
		p.Found, p.Remedy = measure(v, u), s.lengths(u)
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

// measure shows a length for an error.
func measure(l length.Length, u length.Unit) string {
	f := float64(l)
	if math.IsNaN(f) || math.IsInf(f, 0) || math.Abs(f) > 1e6 || f != 0 && math.Abs(f) < 1e-6 {
		return strconv.FormatFloat(f, 'g', -1, 64)
	}
	if u == length.Inches {
		return l.Short(u) + " in"
	}
	return strconv.FormatFloat(f, 'f', -1, 64) + " mm"
}

// bound shows the most or the least that will do. What has no short text in
// inches is rounded, by math.Ceil or math.Floor, so that it will do itself.
func bound(l length.Length, u length.Unit, round func(float64) float64) string {
	if u == length.Inches && l.Short(u) != l.Exact(u) {
		return strconv.FormatFloat(round(l.In()*1000)/1000, 'f', -1, 64) + " in"
	}
	return measure(l, u)
}

// tidy takes off what adding and dividing leave behind the ninth decimal, so
// that a sum of two readings is a reading again.
func tidy(l length.Length) length.Length {
	return length.Length(math.Round(float64(l)*1e9) / 1e9)
}
