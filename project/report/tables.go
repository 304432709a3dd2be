package report

import (
	"fmt"
	"strconv"

	"chape/calc"
	"chape/calc/length"
)

// Table is rows of figures under a heading. Columns are flush right, except
// the last if it is called "".
type Table struct {
	Name    string
	Note    string
	Columns []string
	Rows    [][]string
}

// Heading is the name, with what the note says of it.
func (t Table) Heading() string {
	if t.Note == "" {
		return t.Name
	}
	return t.Name + ": " + t.Note
}

// Tenths are the holes counted from the mouth that are numbered on paper:
// the first, every tenth and the last, as indices from 0.
func Tenths(holes int) []int {
	var out []int
	for i := range holes {
		if i == 0 || (i+1)%10 == 0 || i == holes-1 {
			out = append(out, i)
		}
	}
	return out
}

// TenthHoles is the table to check the dividers by.
func TenthHoles(plan *calc.Plan, u length.Unit) Table {
	t := Table{
		Name:    "holes on the closed sheath, " + u.String(),
		Note:    "counted from the mouth; along its stitch line",
		Columns: []string{"hole", "along the line", "along the fold", "from the fold"},
	}
	for _, i := range Tenths(len(plan.Stitch.Positions)) {
		h := plan.Stitch.Positions[i]
		t.Rows = append(t.Rows, []string{strconv.Itoa(i + 1), AlongAt(plan, i, u), fig(h.X, u), fig(h.Y, u)})
	}
	return t
}

// Holes is every hole on one table: along the line of the closed sheath, the places in
// the flat.
func Holes(plan *calc.Plan, u length.Unit) Table {
	t := Table{
		Name:    "holes, " + u.String(),
		Note:    "counted from the mouth: along the line on the closed sheath; along and from the fold in the flat, for piercing before folding",
		Columns: []string{"hole", "along the line", "flat: along fold", "flat: from fold"},
	}
	for i, h := range plan.Stitch.Flat {
		t.Rows = append(t.Rows, []string{strconv.Itoa(i + 1), AlongAt(plan, i, u), fig(h.X, u), fig(h.Y, u)})
	}
	return t
}

// AlongAt is how far along the line of the closed sheath hole i stands, from the mouth.
func AlongAt(plan *calc.Plan, i int, u length.Unit) string { return fig(plan.Stitch.Along[i], u) }

// FlatHoles is every hole of a half in the flat, for makers who pierce the
// body before folding.
func FlatHoles(plan *calc.Plan, u length.Unit) Table {
	t := Table{
		Name:    "all holes in the flat, " + u.String(),
		Note:    "the same on both halves; only for piercing before folding",
		Columns: []string{"hole", "along", "from fold"},
	}
	for i, h := range plan.Stitch.Flat {
		t.Rows = append(t.Rows, []string{strconv.Itoa(i + 1), fig(h.X, u), fig(h.Y, u)})
	}
	return t
}

// LoopFigures are the places on the tab; none without a loop.
func LoopFigures(plan *calc.Plan, u length.Unit) Rows {
	l := plan.Loop
	if plan.Body.TabLength == 0 {
		return nil
	}
	out := Rows{
		ruler(loopRow, "tab's near edge from the fold", l.Offset, u, "on the back half", ""),
		ruler(loopRow, "tab's far edge from the fold", l.Offset+plan.Input.Belt.Tab.MM(), u, "", ""),
	}
	for i, b := range l.Bends {
		out = append(out, ruler(loopRow, []string{"turn begins past the mouth", "turn ends past the mouth"}[min(i, 1)], b, u, "", ""))
	}
	mouth := l.Start
	for i := range l.Rows {
		out = append(out, ruler(loopRow, fmt.Sprintf("row %d below the mouth", i+1), mouth-l.RowX[i], u,
			"on the tab "+length.Length(l.LapX[i]-mouth).Format(u, length.Ruler)+" past the mouth", ""))
	}
	if l.Rows > 0 {
		out = append(out, Row{Key: loopRow, Name: "holes in the loop", Value: strconv.Itoa(l.Holes), Note: fmt.Sprintf("%d stitches a row", l.Stitches)})
	}
	if len(l.Body) > 1 {
		r := Row{Key: loopRow, Name: "divider setting there", Unit: u.String()}
		r.Value, r.Note = dividers(l.Body[0].Dist(l.Body[1]), u)
		out = append(out, r)
	}
	for _, c := range l.Relief {
		out = append(out, calliper(loopRow, "relief hole, across", c.Diameter, u, fmt.Sprintf("%s along the fold, %s from it",
			length.Length(c.Centre.X).Format(u, length.Ruler), length.Length(c.Centre.Y).Format(u, length.Ruler)), ""))
	}
	return out
}

// fig shows a figure that a ruler will be laid to.
func fig(mm float64, u length.Unit) string { return length.Length(mm).Figure(u, length.Ruler) }
