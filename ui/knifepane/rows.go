package knifepane

import (
	"chape/project"
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

// The headings, in the order of the work: the knife first.
var groups = []struct{ group, heading string }{
	{"outline", "Outline"},
	{"marks", "Marks"},
	{"knife", "Blade"},
	{"sheath", "Sheath"},
	{"strap", "Retention strap"},
	{"belt", "Belt"},
	{"stitches", "Stitches"},
	{"fits", "Corrections after a trial fit"},
	{"customer", "Who it is for"},
	{"project", "This project"},
}

// sourceKey is the field that says where the marks come from.
const sourceKey = "knife.source"

// rowsOf lays out the fields of a project. Steps and weighings have panes of
// their own.
func rowsOf(p project.Project) []row {
	var rows []row
	for _, g := range groups {
		title := g.heading
		if g.group == "marks" && p.Source == project.FromOutline {
			title = "Marks, filled from the outline"
		}
		if more := rowsIn(g.group, p); len(more) > 0 {
			rows = append(rows, row{heading: title})
			if more[0].list != "" {
				rows = append(rows, row{heads: more[0].cells, list: more[0].list})
			}
			rows = append(rows, more...)
		}
	}
	return rows
}

func rowsIn(group string, p project.Project) []row {
	var rows []row
	switch group {
	case "marks":
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
