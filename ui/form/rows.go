package form

import "chape/project"

// A Row is a heading, the names over a table, one field, or one line of a table
// with a field in each column.
type Row struct {
	Heading string
	Heads   []project.Field // the columns that are named
	Cells   []project.Field
	Texts   []string // of a line of a table: what its cells show
	List    string   // "mark" or "fit": the table it belongs to; "" for a field of its own
	Index   int      // its place in that table
}

// IsHeading tells whether the cursor passes over the row.
func (r Row) IsHeading() bool { return len(r.Cells) == 0 }

// SourceKey is the field that says where the marks come from.
const SourceKey = "knife.source"

// Rows lays out a page of the form. Steps and weighings have panes of their own.
func Rows(page Page, p project.Project) []Row {
	var rows []Row
	for _, g := range page.Groups() {
		more := rowsIn(g.Key, p)
		if len(more) == 0 {
			continue
		}
		if g.Heading != "" {
			rows = append(rows, Row{Heading: g.Heading})
		}
		if more[0].List != "" {
			fill(more, p)
			rows = append(rows, Row{Heads: more[0].Cells, List: more[0].List})
		}
		rows = append(rows, more...)
	}
	return rows
}

func rowsIn(group string, p project.Project) []Row {
	var rows []Row
	switch group {
	case "marks":
		if p.Source == project.FromOutline {
			return nil // they follow from it, and stand among the half-widths
		}
		for i := range p.Knife.Stations {
			rows = append(rows, Row{Cells: project.MarkFields(i), List: "mark", Index: i})
		}
		return rows
	case "fits":
		for i := range p.Fits {
			rows = append(rows, Row{Cells: project.FitFields(i), List: "fit", Index: i})
		}
		return rows
	}
	for _, f := range project.Fields {
		if f.Group == group && f.Counts(p) {
			rows = append(rows, Row{Cells: []project.Field{f}})
		}
	}
	return rows
}

// InReach tells whether the row of a field is there in p: it may be gone after the
// file was changed by someone else.
func InReach(f project.Field, p project.Project) bool {
	switch f.Group {
	case "marks":
		return f.Index < len(p.Knife.Stations)
	case "fits":
		return f.Index < len(p.Fits)
	}
	return true
}

// Numeric tells whether a value is typed with digits, so that a digit starts it.
func Numeric(f project.Field) bool {
	switch f.Kind {
	case project.Length, project.Leather, project.Share, project.Number, project.Count:
		return true
	}
	return false
}

// Cycles tells whether left, right and space go through the values.
func Cycles(f project.Field) bool { return f.Kind == project.Choice || f.Kind == project.Flag }

// Next is the option after (by 1) or before (by -1) the one that stands.
func Next(f project.Field, p project.Project, by int) any {
	if f.Kind == project.Flag {
		on, _ := f.Get(p).(bool)
		return !on
	}
	now := -1
	for i, o := range f.Options {
		if v, ok := f.Get(p).(string); ok && v == o {
			now = i
		}
	}
	n := len(f.Options)
	return f.Options[((now+by)%n+n)%n]
}
