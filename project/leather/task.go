package leather

import (
	"fmt"

	"chape/calc"
	"chape/calc/curve"
	"chape/calc/length"
	"chape/calc/nest"
	"chape/project"
)

// Work is a project to be cut, and its plan.
type Work struct {
	Project project.Project
	Plan    *calc.Plan
}

// Laid is a placing with what was asked: what screens, paper and programs are told of it.
type Laid struct {
	Task   nest.Task
	Result nest.Result
	Whose  []string     // the title of each part's project
	Folds  []curve.Line // of each part: its fold, before it is placed; nil: it has none
}

// Ask puts the parts of several projects on pieces, which are used one after another.
func Ask(gap length.Length, pieces []Leather, works []Work) (Laid, error) {
	l := Laid{Task: nest.Task{Gap: gap.MM()}}
	for _, p := range pieces {
		if p.Sized() {
			l.Task.Pieces = append(l.Task.Pieces, p.Piece())
		}
	}
	titles := map[string]int{}
	for _, w := range works {
		whose := w.Project.Title
		if titles[w.Project.Title]++; titles[w.Project.Title] > 1 { // or no name would tell whose a part is
			whose = fmt.Sprintf("%s (%d)", whose, titles[whose])
		}
		for _, part := range nest.PartsOf(w.Plan) {
			l.add(part, whose)
		}
		for _, a := range w.Project.Added {
			outline, err := a.Outline()
			if err != nil {
				return l, err
			}
			part := nest.Part{Name: a.Name, Kind: nest.Added, Outline: outline, Count: a.Count, Along: true,
				Thickness: a.Thickness.MM()}
			if part.Thickness == 0 {
				part.Thickness = w.Project.Sheath.Leather.MM()
			}
			l.add(part, whose)
		}
	}
	return l, l.Task.Validate()
}

func (l *Laid) add(p nest.Part, whose string) {
	var fold curve.Line
	if p.Kind == nest.Body {
		lo, hi := p.Outline.Bounds()
		fold = curve.Line{{X: lo.X}, {X: hi.X}}
	}
	l.Task.Parts = append(l.Task.Parts, p)
	l.Whose = append(l.Whose, whose)
	l.Folds = append(l.Folds, fold)
}

// Several tells whether parts of more than one project are placed.
func (l Laid) Several() bool {
	for _, w := range l.Whose {
		if w != l.Whose[0] {
			return true
		}
	}
	return false
}

// Part is what a part is called: with its project, where there are several.
func (l Laid) Part(i int) string {
	if l.Several() {
		return l.Whose[i] + ": " + l.Task.Parts[i].Name
	}
	return l.Task.Parts[i].Name
}

// Copies is how many parts there are.
func (l Laid) Copies() int {
	n := 0
	for _, p := range l.Task.Parts {
		n += p.Count
	}
	return n
}

// On lists the placements on a piece.
func (l Laid) On(piece int) []nest.Placement {
	var out []nest.Placement
	for _, p := range l.Result.Placements {
		if p.Piece == piece {
			out = append(out, p)
		}
	}
	return out
}

// Lost is the leather lost between the parts, as a share of what is cut; 0 where none
// was placed.
func (l Laid) Lost() float64 {
	y := l.Result.Yield()
	if y <= 0 {
		return 0
	}
	return 1/y - 1
}

// Middle is the middle of an outline's area.
func Middle(l curve.Line) curve.Vec {
	var m curve.Vec
	var area float64
	for i, p := range l {
		q := l[(i+1)%len(l)]
		c := p.X*q.Y - q.X*p.Y
		area += c
		m = m.Add(p.Add(q).Mul(c))
	}
	if area == 0 {
		return m
	}
	return m.Mul(1 / (3 * area))
}

// Axis is the line that a part is laid by: its fold, else the middle of its length.
func (l Laid) Axis(part int) curve.Line {
	if fold := l.Folds[part]; fold != nil {
		return fold
	}
	lo, hi := l.Task.Parts[part].Outline.Bounds()
	y := (lo.Y + hi.Y) / 2
	return curve.Line{{X: lo.X, Y: y}, {X: hi.X, Y: y}}
}
