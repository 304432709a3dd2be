// Package traced takes what a photographed tracing gave into a project.
package traced

import (
	"math"
	"strings"
	"time"
	"unicode"

	"chape/calc/knife"
	"chape/calc/length"
	"chape/calc/trace"
	"chape/calc/trace/axes"
	"chape/project"
	"chape/project/value"
)

// Take is the project with the marks of a reading in place of its own. Gap and depth are those of the
// tracing; kind, thickness, grind and corners stay what they were at that share of the blade or handle; thicknesses that
// were never measured there are left to be (see Project.Unmeasured). A mouth that stood
// where the program proposed it, or would now lie past the knife, is proposed anew. picture is the picture's file name
// without folder, day a local date. The error is that of Validate.
func Take(p project.Project, r trace.Reading, picture string, day time.Time) (project.Project, error) {
	q := p.Clone()
	proposed := p.Sheath.Mouth == p.ProposedMouth()
	q.Source = project.FromStations
	q.Knife.Stations = carried(p.Knife, r.Knife)
	if proposed || q.Sheath.Mouth > q.Knife.Length() {
		q.Sheath.Mouth = q.ProposedMouth()
	}
	y, m, d := day.Date()
	q.Tracing = project.Tracing{Picture: nameOf(picture), Residual: length.Length(math.Round(r.Residual.RMS*1000) / 1000),
		Read: time.Date(y, m, d, 0, 0, 0, 0, time.UTC), Left: leftBy(p, r.Knife)}
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
	if r := []rune(s); len(r) > project.LongestLine {
		s = string(r[len(r)-project.LongestLine:])
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
		s.Bottom = value.Tidy(s.Top + length.Length(m.Depth))
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
func leftBy(p project.Project, traced axes.Knife) []length.Length {
	old := p.Knife.Stations
	left := map[int]bool{}
	for _, i := range p.Unmeasured() {
		left[i] = true
	}
	all := len(old) == 0 || p.Source == project.FromOutline || !p.MarksDiffer()
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
