package project

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"chape/calc/knife"
	"chape/calc/length"
	"chape/project/plain"
	"chape/project/value"
)

// Validate tells whether a plan can be made of the project and whether it can
// be saved and loaded again. The error is of type Problems.
//
// Besides the range of each field: the first mark stands at 0, the marks are
// in order, at most two share one place, a section at least is left between
// steps, no bottom lies above its top; the mouth lies on the knife; gap is
// more than clearance, handle_clearance no more; blend more than margin and sanding together; a step's
// latest not short of its hold.
func (p Project) Validate() error {
	c := checker{units: p.Units}
	for _, f := range Fields {
		c.inRange(&p, f)
	}
	if !c.checkRows(&p) {
		return c.problems.Err()
	}
	c.outline(p)
	c.marks(p.Knife.Stations)
	c.sheath(p)
	return c.problems.Err()
}

type checker struct {
	units    length.Unit
	problems Problems
}

func (c *checker) add(key string, i int, found, remedy string) {
	c.problems = append(c.problems, Problem{Key: key, Index: i, Found: found, Remedy: remedy})
}

// of adds problems of row i.
func (c *checker) of(i int) func(key, found, remedy string) {
	return func(key, found, remedy string) { c.add(key, i, found, remedy) }
}

// say shows a length in an error.
func (c *checker) say(l length.Length) string { return value.Measure(l, c.units) }

func (c *checker) inRange(p *Project, f Field) {
	if bad, ok := f.Outside(f.Kept(p), c.units); ok {
		bad.Index = f.Index
		c.problems = append(c.problems, bad)
	}
}

// checkRows checks each row by itself; false where the numbers can't be
// compared with each other.
func (c *checker) checkRows(p *Project) bool {
	for _, l := range Lists {
		if n := l.Rows(p); n > l.Most {
			c.add(l.Key, -1, fmt.Sprintf("%d of them", n), fmt.Sprintf("give at most %d", l.Most))
			return false
		}
	}
	for _, l := range Lists {
		for i := range l.Rows(p) {
			for _, f := range l.Columns {
				c.inRange(p, f.At(i))
			}
			switch l.Key {
			case "step":
				p.Steps[i].Check(c.of(i))
			case "pattern":
				c.once(i, p.Patterns)
			case "quote":
				p.Quotes[i].Check(c.of(i))
			case "part":
				p.Added[i].Check(p.Units, c.of(i))
			}
		}
	}
	c.hide(p.Hide.Price)
	return len(c.problems) == 0
}

// once checks that a pattern's number stands for one of them.
func (c *checker) once(i int, ps []Pattern) {
	for _, before := range ps[:i] {
		if before.Number == ps[i].Number {
			c.add("pattern.number", i, fmt.Sprintf("%d once more", before.Number), "give each printed pattern its own number, or take one out")
			return
		}
	}
}

// outline checks the outline where the marks come from it.
func (c *checker) outline(p Project) {
	for _, name := range strings.Fields(p.Untouched) {
		if !slices.Contains(strings.Fields(asNew), name) {
			c.add("knife.untouched", -1, plain.Quote(name), "give some of: "+asNew+"; or nothing")
			break
		}
	}
	if p.Source != FromOutline {
		return
	}
	if err := p.Outline.Validate(); err != nil {
		c.problems = append(c.problems, misfit(err, c.units))
	}
}

// misfit is a dimension of the outline that will not do.
func misfit(err error, u length.Unit) Problem {
	var m *knife.Misfit
	if !errors.As(err, &m) {
		return Problem{Key: "knife.outline", Index: -1, Found: err.Error(), Remedy: "change the outline"}
	}
	return Problem{Key: "knife.outline." + m.Key, Index: -1, Found: value.Measure(m.Value, u), Remedy: m.Remedy(
		func(l length.Length) string { return value.Bound(l, u, math.Ceil) },
		func(l length.Length) string { return value.Bound(l, u, math.Floor) })}
}

// leastApart is how far apart two marks stand that do not make a step, mm.
const leastApart = 0.05

func (c *checker) marks(s []knife.Station) {
	const at = "knife.station.at"
	if len(s) < 2 {
		c.add("knife.station", -1, fmt.Sprintf("%d of them", len(s)), "give the point, the end and marks between them: at least two")
		return
	}
	if s[0].At != 0 {
		c.add(at, 0, c.say(s[0].At), "the first mark stands at the point: give 0")
	}
	run := 1 // marks since the last step
	for i, m := range s {
		if m.Bottom < m.Top {
			c.add("knife.station.bottom", i, c.say(m.Bottom), "give at least top, "+c.say(m.Top)+": the edge can't lie above the back")
		}
		if i == 0 {
			continue
		}
		switch apart := m.At - s[i-1].At; {
		case apart < 0:
			c.add(at, i, c.say(m.At), "put the marks in order: the one before stands at "+c.say(s[i-1].At))
		case apart == 0 && i > 1 && s[i-2].At == m.At:
			c.add(at, i, "a third mark at "+c.say(m.At), "two make a step: take one out")
		case apart == 0 && run < 2:
			c.add(at, i-1, "a single mark before the step at "+c.say(m.At), "leave a section between steps: give it a mark more")
			run = 1
		case apart == 0:
			run = 1
		case apart < leastApart:
			c.add(at, i, c.say(m.At), "keep marks "+value.Bound(leastApart, c.units, math.Ceil)+" or more apart, or make a step of two at one place")
		default:
			run++
		}
	}
	if run < 2 {
		c.add(at, len(s)-1, "a single mark after the step at "+c.say(s[len(s)-1].At), "leave a section between steps: give it a mark more")
	}
}

func (c *checker) sheath(p Project) {
	s := p.Sheath
	if end := p.Knife.Length(); len(p.Knife.Stations) > 1 && s.Mouth > end {
		c.add("sheath.mouth", -1, c.say(s.Mouth), "the knife ends at "+c.say(end)+": give less")
	}
	if s.Gap <= s.Clearance {
		c.add("sheath.gap", -1, c.say(s.Gap), "give more than clearance, "+c.say(s.Clearance))
	}
	if s.HandleClearance > s.Clearance {
		c.add("sheath.handle_clearance", -1, c.say(s.HandleClearance), "give at most clearance, "+c.say(s.Clearance))
	}
	if m := s.Margin + s.Sanding; s.Blend <= m {
		c.add("sheath.blend", -1, c.say(s.Blend), "give more than margin and sanding together, "+c.say(m))
	}
}
