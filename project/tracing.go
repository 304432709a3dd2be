package project

import (
	"math"
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
}

var tracing = []column[Project]{
	at(Spec{Key: "knife.tracing.picture", Group: "tracing", Name: "traced from", Kind: Text, Max: longestLine,
		Hint: "the picture's name; the picture is not kept"}, "", func(p *Project) *string { return &p.Tracing.Picture }).unlessEmpty(),
	lengthAt(Spec{Key: "knife.tracing.residual", Group: "tracing", Name: "read to", Fine: length.Calliper, Max: 10,
		Hint: "how true the sheet was read"}, 0, func(p *Project) *length.Length { return &p.Tracing.Residual }).unlessEmpty(),
	at(Spec{Key: "knife.tracing.read", Group: "tracing", Name: "traced on", Kind: Date,
		Hint: "the day it was read"}, time.Time{}, func(p *Project) *time.Time { return &p.Tracing.Read }).unlessEmpty(),
}

// TakeTracing is the project with the marks of a reading in place of its own. Gap and depth are those of the
// tracing; kind, thickness, grind and corners stay what they were at that share of the blade or handle. A mouth that stood
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
		Read: time.Date(y, m, d, 0, 0, 0, 0, time.UTC)}
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
	blade, to := bladeEnd(old), 0.0
	end := traced.Length()
	if len(traced.Steps) > 0 {
		to = traced.Steps[0]
	} else if old.Length() > 0 {
		to = end * blade / old.Length().MM()
	}
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
