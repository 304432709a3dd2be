package knifepane

import (
	"chape/project"
	"chape/ui/form"
)

// A row is a heading, the names over a table, one field, or one line of a table
// with a field in each column.
type row struct {
	heading string
	heads   []project.Field // the columns that are named
	cells   []project.Field
	list    string // "mark" or "fit": the table it belongs to; "" for a field of its own
	index   int    // its place in that table
}

// isHeading tells whether the cursor passes over the row.
func (r row) isHeading() bool { return len(r.cells) == 0 }

// sourceKey is the field that says where the marks come from.
const sourceKey = "knife.source"

// rowsOf lays out a page of the form. Steps and weighings have panes of their own.
func rowsOf(page form.Page, p project.Project) []row {
	var rows []row
	for _, g := range page.Groups() {
		more := rowsIn(g.Key, p)
		if len(more) == 0 {
			continue
		}
		if g.Heading != "" {
			rows = append(rows, row{heading: g.Heading})
		}
		if more[0].list != "" {
			rows = append(rows, row{heads: more[0].cells, list: more[0].list})
		}
		rows = append(rows, more...)
	}
	return rows
}

func rowsIn(group string, p project.Project) []row {
	var rows []row
	switch group {
	case "marks":
		if p.Source == project.FromOutline {
			return nil // they follow from it, and stand among the half-widths
		}
		for i := range p.Knife.Stations {
			rows = append(rows, row{cells: project.MarkFields(i), list: "mark", index: i})
		}
		return rows
	case "fits":
		for i := range p.Fits {
			rows = append(rows, row{cells: project.FitFields(i), list: "fit", index: i})
		}
		return rows
	}
	for _, f := range project.Fields {
		if f.Group == group && f.Counts(p) {
			rows = append(rows, row{cells: []project.Field{f}})
		}
	}
	return rows
}

// inReach tells whether the row of a field is there in p: it may be gone after the
// file was changed by someone else.
func inReach(f project.Field, p project.Project) bool {
	switch f.Group {
	case "marks":
		return f.Index < len(p.Knife.Stations)
	case "fits":
		return f.Index < len(p.Fits)
	}
	return true
}

// numeric tells whether a value is typed with digits, so that a digit starts it.
func numeric(f project.Field) bool {
	switch f.Kind {
	case project.Length, project.Leather, project.Share, project.Number, project.Count:
		return true
	}
	return false
}

// cycles tells whether left, right and space go through the values.
func cycles(f project.Field) bool { return f.Kind == project.Choice || f.Kind == project.Flag }

// next is the option after (by 1) or before (by -1) the one that stands.
func next(f project.Field, p project.Project, by int) any {
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
