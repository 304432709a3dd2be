package report

import (
	"fmt"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
)

// Extras are the figures that not every sheath has: where the fold lies, the drain, the
// retention strap, and what each correction counts.
func Extras(p project.Project, plan *calc.Plan, u length.Unit) Rows {
	out := foldRows(plan, u)
	out = append(out, drainRows(plan, u)...)
	out = append(out, strapRows(plan, u)...)
	return append(out, fitRows(p, plan, u)...)
}

// AddedParts are the parts that the maker added, a line each: "strap keeper: 60 × 30 mm, cut
// 2 of 2 mm leather".
func AddedParts(p project.Project, u length.Unit) []string {
	var out []string
	for _, a := range p.Added {
		out = append(out, a.Say(p.Sheath.Leather, u))
	}
	return out
}

// leastFold is how far the fold must lie from the rule to be worth a line, mm.
const leastFold = 0.05

// foldRows says where the fold lies below the rule that the marks are measured from.
func foldRows(plan *calc.Plan, u length.Unit) Rows {
	mouth := plan.Input.Sheath.Mouth.MM()
	point, there := plan.Fold.At(0), plan.Fold.At(mouth)
	if max(point, there) < leastFold && min(point, there) > -leastFold {
		return nil
	}
	return Rows{
		calliper(extraRow, "fold below the rule, point", point, u, "", "the fold lies against the back of what is inside"),
		calliper(extraRow, "fold below the rule, mouth", there, u, "", ""),
	}
}

// drainRows says where the drain is punched.
func drainRows(plan *calc.Plan, u length.Unit) Rows {
	d := plan.Flat.Drain
	if d == nil {
		return nil
	}
	return Rows{calliper(extraRow, "drain, across", d.Diameter, u,
		fmt.Sprintf("back half alone, %s beyond the point, %s from the fold",
			length.Length(-d.Centre.X).Format(u, length.Ruler), length.Length(d.Centre.Y).Format(u, length.Ruler)), "")}
}

// strapRows says how the strap is cut, and where snap and fixing go.
func strapRows(plan *calc.Plan, u length.Unit) Rows {
	c := plan.Strap
	if c == nil {
		return nil
	}
	const from = "from the end that goes over the back"
	return Rows{
		ruler(extraRow, "strap, long", c.Length, u, "", "its ends rounded by half its width"),
		ruler(extraRow, "strap, wide", c.Width, u, "round the handle, "+length.Length(c.At).Format(u, length.Ruler)+" from the point", ""),
		ruler(extraRow, "arm over the back", c.ArmBack, u, "", "from fixing to snap"),
		ruler(extraRow, "arm under the belly", c.ArmBelly, u, "", "from fixing to snap"),
		ruler(extraRow, "snap", c.Snap, u, from, ""),
		ruler(extraRow, "fixing", c.Fixing, u, from, ""),
	}
}

// fitRows says what each correction counts: one seen in paper more than was typed.
func fitRows(p project.Project, plan *calc.Plan, u length.Unit) Rows {
	var out Rows
	for _, f := range p.Fits {
		note := length.Length(f.At).Format(u, length.Ruler) + " from the point"
		if f.With == "paper" {
			f.Paper = true
			note += "; " + InPaper(f.Fit, plan.Input.Sheath, u)
		}
		out = append(out, calliper(extraRow, "correction", f.By.MM(), u, note, ""))
	}
	return out
}

// InPaper says what a correction counts that was seen in paper: a right pattern hangs
// loose in it, and nobody should cut that looseness away twice.
func InPaper(f calc.Fit, s calc.Sheath, u length.Unit) string {
	by := f.Counts(s)
	sign := "+"
	if by < 0 {
		sign, by = "-", -by
	}
	return "in paper: counts as " + sign + by.Format(u, length.Calliper)
}
