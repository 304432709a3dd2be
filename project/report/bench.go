package report

import (
	"slices"

	"chape/calc"
	"chape/calc/knife"
	"chape/calc/length"
	"chape/project"
)

// Bench are the rows that lie on the bench: what belt and thread it is for, and what
// needle, drill and dividers are set by.
func Bench(p project.Project, plan *calc.Plan, u length.Unit) Rows {
	var out Rows
	if plan.Body.TabLength > 0 {
		out = append(out, calliper(benchRow, "belt, wide", p.Belt.Width.MM(), u, "and "+p.Belt.Thickness.Format(u, length.Calliper)+" thick", ""))
	}
	needle, why := "hook's shank", ""
	if p.Stitch.Method == calc.TwoNeedles {
		needle = "needle"
	}
	if !p.Stitch.NeedleSet {
		why = "taken as 1.5 threads"
	}
	out = append(out, calliper(benchRow, "thread, across", p.Stitch.Thread.MM(), u, "", ""),
		calliper(benchRow, needle+", across", p.Stitch.Shank().MM(), u, why, ""))
	return append(out, sewing(p, plan, u).Pick(benchKeys...)...)
}

// benchKeys are the rows of Figures that Bench has too.
var benchKeys = []Key{Divider, TenSteps, Drill, SeamThread, LoopThread}

// WithoutBench leaves out what Bench has.
func (rs Rows) WithoutBench() Rows { return rs.Without(benchKeys...) }

// KnifeMarks is the table of the knife's own dimensions, as they were measured.
func KnifeMarks(p project.Project, u length.Unit) Table {
	const rule = ": gap at the back from the rule, depth from spine to edge"
	t := Table{
		Name:    "the knife, " + u.String(),
		Note:    "as measured" + rule,
		Columns: []string{"from the point", "gap", "depth", "thickness", "grind height", ""},
	}
	thick := func(l length.Length) string { return l.Figure(u, length.Calliper) }
	left := p.Unmeasured()
	switch {
	case p.Source == project.FromOutline:
		t.Note = "worked out from the outline's figures" + rule
	case len(left) > 0:
		t.Note = "gap and depth as measured" + rule + "; * not measured: thickness, and grind height, as proposed"
	}
	for i, s := range p.Knife.Stations {
		row := []string{fig(s.At.MM(), u), thick(s.Top), thick(s.Depth()), thick(s.Thick), none, s.Kind.String()}
		if s.Kind == knife.Blade {
			row[4] = thick(length.Length(s.Bevel) * s.Depth())
		}
		if slices.Contains(left, i) {
			row[3] += "*"
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}
