package shelf

import (
	"math"

	"chape/calc"
	"chape/calc/compare"
	"chape/calc/length"
	"chape/project"
	"chape/project/steps"
	"chape/project/store"
)

// alike is by how much two leathers may differ and count as one, mm.
const alike = 0.05

// Experience is the finished sheaths of the shelf that are of leather of a thickness, with
// the corrections found by trying them in leather or finished; those from a fold of paper
// or other stock say nothing of leather. The project in the file except is left out, as is
// what can't be read.
func (s *Shelf) Experience(leather length.Length, except string) ([]compare.Tried, error) {
	scan, err := s.Look()
	if err != nil {
		return nil, err
	}
	var out []compare.Tried
	for _, e := range scan.Entries() {
		if e.State != Unread && e.State != Finished {
			continue // known, and nothing to learn from
		}
		p, err := s.Load(e.Path)
		if err != nil || store.FullPath(e.Path) == store.FullPath(except) {
			continue
		}
		if t, ok := tried(p, leather); ok {
			out = append(out, t)
		}
	}
	return out, nil
}

// tried is a project as experience, if it is.
func tried(p project.Project, leather length.Length) (compare.Tried, bool) {
	finished := len(p.Steps) > 0 && steps.Current(p.Steps) < 0
	if !finished || math.Abs((p.Sheath.Leather-leather).MM()) > alike {
		return compare.Tried{}, false
	}
	m, err := compare.MarksOf(p.Knife, p.Sheath.Mouth)
	if err != nil {
		return compare.Tried{}, false
	}
	t := compare.Tried{Marks: m}
	for _, f := range p.Fits {
		if f.With == "leather" || f.With == "finished" {
			t.Fits = append(t.Fits, calc.Fit{At: f.At, By: f.By, Reach: f.Reach})
		}
	}
	return t, true
}
