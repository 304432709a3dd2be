package project

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode"

	"chape/calc/knife"
	"chape/calc/length"
	"chape/calc/trace"
	"chape/calc/trace/axes"
)

// Tracing says where the marks were read from. The picture itself is not kept.
type Tracing struct {
	Picture  string        // its name, without folder; "": the marks were not traced
	Residual length.Length // how true the sheet was read, root mean square
	Read     time.Time     // a local date
	// Left are the places of the marks whose thickness was never measured, ascending; a place of two marks
	// stands twice, or once where the one on the handle's side is left.
	Left []length.Length
}

var tracing = []column[Project]{
	at(Spec{Key: "knife.tracing.picture", Group: "tracing", Name: "traced from", Kind: Text, Max: longestLine,
		Hint: "the picture's name; the picture is not kept"}, "", func(p *Project) *string { return &p.Tracing.Picture }).unlessEmpty(),
	lengthAt(Spec{Key: "knife.tracing.residual", Group: "tracing", Name: "read to", Fine: length.Calliper, Max: 10,
		Hint: "how true the sheet was read"}, 0, func(p *Project) *length.Length { return &p.Tracing.Residual }).only(
		func(p *Project) bool { return p.Tracing.Picture != "" }),
	at(Spec{Key: "knife.tracing.read", Group: "tracing", Name: "traced on", Kind: Date,
		Hint: "the day it was read"}, time.Time{}, func(p *Project) *time.Time { return &p.Tracing.Read }).unlessEmpty(),
	column[Project]{
		Spec: Spec{Key: "knife.tracing.left", Group: "tracing", Name: "still to measure", Kind: Text, Max: longestLeft,
			Hint: "places of the marks whose thickness was not measured, mm"},
		def: "",
		get: func(p *Project) any { return placesText(p.Tracing.Left) },
		set: func(p *Project, v any) { p.Tracing.Left = placesOf(v.(string)) },
	}.unlessEmpty(),
}

// longestLeft is more than the most marks of a tracing take, in letters.
const longestLeft = 2000

func placesText(ls []length.Length) string {
	words := make([]string, len(ls))
	for i, l := range ls {
		words[i] = strconv.FormatFloat(l.MM(), 'f', -1, 64)
	}
	return strings.Join(words, " ")
}

// placesOf reads places; words that are none say nothing.
func placesOf(s string) []length.Length {
	var ls []length.Length
	for _, w := range strings.Fields(s) {
		if mm, err := strconv.ParseFloat(w, 64); err == nil && mm >= 0 && mm <= longestKnife {
			ls = append(ls, length.Length(mm))
		}
	}
	slices.Sort(ls)
	return ls
}

// Unmeasured are the marks, ascending, whose thickness stands as the program proposed it: the calliper was never there.
func (p Project) Unmeasured() []int {
	if p.Source == FromOutline {
		return nil
	}
	var out []int
	marks := p.Knife.Stations
	for i, m := range marks {
		after := 0 // marks at the same place, towards the handle
		for _, n := range marks[i+1:] {
			if n.At == m.At {
				after++
			}
		}
		n := 0
		for _, l := range p.Tracing.Left {
			if l == m.At {
				n++
			}
		}
		if n > after {
			out = append(out, i)
		}
	}
	return out
}

// Measured notes that the thickness of mark i was measured; of two marks at one place the one on the point's side is
// taken for the first.
func (p *Project) Measured(i int) {
	if i < 0 || i >= len(p.Knife.Stations) {
		return
	}
	if j := slices.Index(p.Tracing.Left, p.Knife.Stations[i].At); j >= 0 {
		p.Tracing.Left = slices.Delete(slices.Clone(p.Tracing.Left), j, j+1)
	}
}

// TakeTracing is the project with the marks of a reading in place of its own. Gap and depth are those of the
// tracing; kind, thickness, grind and corners stay what they were at that share of the blade or handle; thicknesses that
// were never measured there are left to be (see Unmeasured). A mouth that stood
// where the program proposed it, or would now lie past the knife, is proposed anew. picture is the picture's file name
// without folder, day a local date. The error is that of Validate.
func (p Project) TakeTracing(r trace.Reading, picture string, day time.Time) (Project, error) {
	q := p.Clone()
	proposed := p.Sheath.Mouth == p.ProposedMouth()
	q.Source = FromStations
	q.Knife.Stations = carried(p.Knife, r.Knife)
	if proposed || q.Sheath.Mouth > q.Knife.Length() {
		q.Sheath.Mouth = q.ProposedMouth()
	}
	y, m, d := day.Date()
	q.Tracing = Tracing{Picture: nameOf(picture), Residual: length.Length(math.Round(r.Residual.RMS*1000) / 1000),
		Read: time.Date(y, m, d, 0, 0, 0, 0, time.UTC), Left: p.leftBy(r.Knife)}
	return q, q.Validate()
}

// nameOf keeps a file's name to one printable line.
func nameOf(s string) string {
	s = strings.Map(func(r rune) rune {
		if !unicode.IsPrint(r) {
			return '_'
		}
		return r
	}, strings.ToValidUTF8(s, "_"))
	if r := []rune(s); len(r) > longestLine {
		s = string(r[len(r)-longestLine:])
	}
	return s
}

// carried gives the traced marks what the old knife had at the same share.
func carried(old knife.Knife, traced axes.Knife) []knife.Station {
	was, err := knife.NewProfile(old)
	blade, to, end := spans(old, traced)
	marks := traced.Marks
	out := make([]knife.Station, len(marks))
	for i, m := range marks {
		before := i+1 < len(marks) && marks[i+1].At == m.At // of a step, the one on the point's side
		s := knife.Station{Kind: knife.Blade, Bevel: 1, Thick: 3}
		if err == nil {
			s = stationAt(old, was, share(m.At, to, end, blade, old.Length().MM()), before)
		}
		s.At, s.Top = length.Length(m.At), length.Length(m.Gap)
		s.Bottom = tidy(s.Top + length.Length(m.Depth))
		out[i] = s
	}
	return out
}

// spans are the length of the old blade, that of the traced one, and that of the traced knife.
func spans(old knife.Knife, traced axes.Knife) (blade, to, end float64) {
	blade, end = bladeEnd(old), traced.Length()
	if len(traced.Steps) > 0 {
		to = traced.Steps[0]
	} else if old.Length() > 0 {
		to = end * blade / old.Length().MM()
	}
	return blade, to, end
}

// leftBy are the places of traced marks where the thickness was never measured: all, where the marks came from an
// outline, else those beside a mark that was left before.
func (p Project) leftBy(traced axes.Knife) []length.Length {
	old := p.Knife.Stations
	left := map[int]bool{}
	for _, i := range p.Unmeasured() {
		left[i] = true
	}
	all := len(old) == 0 || p.Source == FromOutline || !p.MarksDiffer()
	blade, to, end := spans(p.Knife, traced)
	var out []length.Length
	for i, m := range traced.Marks {
		x := share(m.At, to, end, blade, p.Knife.Length().MM())
		before := i+1 < len(traced.Marks) && traced.Marks[i+1].At == m.At
		if all || beside(old, left, x, before) {
			out = append(out, length.Length(m.At))
		}
	}
	return out
}

// beside tells whether a mark next to x is left; before looks, at a step, on the point's side.
func beside(marks []knife.Station, left map[int]bool, x float64, before bool) bool {
	const near = 1e-6
	lo, hi := 0, len(marks)-1
	for i, s := range marks {
		at := s.At.MM()
		if at < x-near || !before && at <= x+near {
			lo = i
		}
	}
	for i := len(marks) - 1; i >= 0; i-- {
		at := marks[i].At.MM()
		if at > x+near || before && at >= x-near {
			hi = i
		}
	}
	if !before && math.Abs(marks[lo].At.MM()-x) < near {
		hi = lo
	}
	if before && math.Abs(marks[hi].At.MM()-x) < near {
		lo = hi
	}
	return left[lo] || left[hi]
}

// bladeEnd is where the first mark of another section stands, or the end.
func bladeEnd(k knife.Knife) float64 {
	for i, s := range k.Stations {
		if s.Kind != knife.Blade && i > 0 {
			return s.At.MM()
		}
	}
	return k.Length().MM()
}

// share takes a place on blade or handle to the same share of those of another knife.
func share(x, blade, end, toBlade, toEnd float64) float64 {
	if x <= blade && blade > 0 {
		return x / blade * toBlade
	}
	if end <= blade {
		return toEnd
	}
	return toBlade + (x-blade)/(end-blade)*(toEnd-toBlade)
}

// stationAt is the section of a knife at x, as a mark. before takes, at a step, the stretch on the point's side.
func stationAt(k knife.Knife, was *knife.Profile, x float64, before bool) knife.Station {
	const beside = 1e-6
	x = min(max(x, 0), k.Length().MM())
	stretch := 0
	for i, s := range k.Stations {
		if s.At.MM() <= x+beside && !(before && s.At.MM() > x-beside && i > 0) && i < len(k.Stations)-1 {
			stretch = i
		}
	}
	s := k.Stations[stretch]
	found := was.Sections(nil, x)
	if len(found) > 0 {
		c := found[len(found)-1]
		if before {
			c = found[0]
		}
		s.Thick = length.Length(math.Round(c.Thick*10) / 10)
	}
	return s
}
