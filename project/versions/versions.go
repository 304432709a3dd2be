package versions

import (
	"fmt"
	"time"

	"chape/calc"
	"chape/project"
	"chape/project/file"
)

// Version is one pattern of a project.
type Version struct {
	Number   int
	Printed  time.Time // the day, UTC; zero: not printed as it is
	Standing bool      // it is drawn from what the project holds now
	project  project.Project
}

// Of gives the patterns of p by number, the one that stands last. Those of which only
// number and date are left, or that can't be read, are left out.
func Of(p project.Project) []Version {
	var all []Version
	date := file.DateOf(p)
	for _, q := range p.Patterns {
		if q.Inputs == "" || q.Number == p.Revision && !date.IsZero() {
			continue
		}
		drawn, err := file.DecodeInputs(q)
		if err != nil {
			continue
		}
		drawn.Title, drawn.Units, drawn.Customer, drawn.Revision = p.Title, p.Units, p.Customer, q.Number
		drawn.Hide, drawn.Added = p.Hide, p.Added // cut from the same leather
		all = append(all, Version{Number: q.Number, Printed: q.Printed, project: drawn})
	}
	for i := range all { // by number; a file may have them in any order
		for j := i; j > 0 && all[j].Number < all[j-1].Number; j-- {
			all[j], all[j-1] = all[j-1], all[j]
		}
	}
	return append(all, Version{Number: p.Revision, Printed: date, Standing: true, project: p})
}

// Name is the pattern in words: "pattern 3, printed 25 Nov 2026", "pattern 3 as it is now".
func (v Version) Name() string {
	name := fmt.Sprintf("pattern %d", v.Number)
	switch {
	case v.Standing && v.Printed.IsZero():
		name += " as it is now"
	case v.Standing:
		name += " as it is now, printed " + v.Printed.Format("2 Jan 2006")
	default:
		name += ", printed " + v.Printed.Format("2 Jan 2006")
	}
	return name
}

// Project is what it is drawn from, with the project's own title, unit, customer, leather and
// added parts.
func (v Version) Project() project.Project { return v.project }

// Plan works the pattern out.
func (v Version) Plan(limits calc.Limits) (*calc.Plan, error) {
	return calc.Compute(v.project.Input(limits))
}

// Outgrown is the pattern that was printed under the number of p while p is drawn from
// something else by now: what calls for the next number. ok is false where there is none.
func Outgrown(p project.Project) (q project.Pattern, ok bool) {
	q, ok = p.Printed(p.Revision)
	if !ok || q.Inputs == "" || file.SameInputs(q, p) {
		return project.Pattern{}, false
	}
	return q, true
}

// Raise gives p the number after all that it has had.
func Raise(p *project.Project) {
	next := p.Revision
	for _, q := range p.Patterns {
		next = max(next, q.Number)
	}
	p.Revision = next + 1
}
