package earlier

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"chape/calc"
	"chape/calc/compare"
	"chape/calc/curve"
	"chape/project"
	"chape/project/file"
)

// Knife is the knife that an earlier sheath was made for, in its sheath, and its plan.
type Knife struct {
	Title   string          // "" for the project's own
	Project project.Project // what was measured on the earlier sheath is not in it
	Plan    *calc.Plan
}

// Keep is a project as the knife that an earlier sheath was made for.
func Keep(p project.Project) project.MadeFor {
	q := p.Drawn()
	q.Source, q.Outline = p.Source, p.Outline // what stands before the handle is called by its name
	_, text, _ := strings.Cut(string(file.Encode(q)), "\n")
	return project.MadeFor{Title: p.Title, Inputs: text}
}

// KnifeOf reads what Keep wrote and plans it. The error is one line: a note that is damaged
// is no reason to refuse the project.
func KnifeOf(m project.MadeFor, limits calc.Limits) (Knife, error) {
	k := Knife{Title: cmp.Or(m.Title, "another knife")}
	var err error
	if k.Project, _, err = file.Decode("inputs", []byte(m.Inputs)); err == nil {
		k.Plan, err = calc.Compute(k.Project.Input(limits))
	}
	if err != nil {
		return Knife{}, fmt.Errorf("the knife that it was made for, %s, can't be planned: %w", k.Title, err)
	}
	return k, nil
}

// Own is the project's own knife.
func Own(p project.Project, plan *calc.Plan) Knife { return Knife{Project: p, Plan: plan} }

// ToTake is what of the difference this project's plan can take over, over its own fold.
// For its own knife that is the difference. For another it is carried by the landmarks of
// both, with the corrections that knife's plan has already, less those of this one: once it
// is taken over nothing is left to take. The error is that of the marks.
func ToTake(rows []Row, k Knife, p project.Project) (curve.Graph, error) {
	d := Curve(rows)
	if k.Title == "" || len(d.X) == 0 {
		return d, nil
	}
	from, err := compare.MarksOf(k.Project.Knife, k.Project.Sheath.Mouth)
	if err != nil {
		return curve.Graph{}, err
	}
	to, err := compare.MarksOf(p.Knife, p.Sheath.Mouth)
	if err != nil {
		return curve.Graph{}, err
	}
	there, here := fitsOf(k.Project), fitsOf(p)
	g := curve.Graph{}
	for _, x := range closely(d.X) {
		g.X, g.Y = append(g.X, x), append(g.Y, d.At(x)+compare.Sum(there, x))
	}
	g = compare.CarryCurve(g, from, to)
	for i, x := range g.X {
		g.Y[i] -= compare.Sum(here, x)
	}
	return g, nil
}

func fitsOf(p project.Project) []calc.Fit { return p.Input(calc.Limits{}).Fits }

// closely puts places between those given, ascending, at most 1 mm apart: corrections bend
// in between.
func closely(at []float64) []float64 {
	out := at[:1:1]
	for _, x := range at[1:] {
		last := out[len(out)-1]
		n := math.Ceil(x - last)
		for i := 1.0; i < n; i++ {
			out = append(out, last+(x-last)*i/n)
		}
		out = append(out, x)
	}
	return out
}
