package form

import (
	"slices"
	"strings"

	"chape/project"
)

// Changed is the first field of the form in which two states of a project differ; ok is
// false where none does, or rows of a list have come or gone.
func Changed(a, b project.Project) (f project.Field, ok bool) {
	differ := func(f project.Field) bool { return f.Show(a) != f.Show(b) }
	for _, f := range project.Fields {
		if _, shown := Of(f.Group); shown && differ(f) {
			return f, true
		}
	}
	if len(a.Knife.Stations) != len(b.Knife.Stations) || len(a.Fits) != len(b.Fits) {
		return f, false
	}
	var rows []project.Field
	for i := range a.Knife.Stations {
		rows = append(rows, project.MarkFields(i)...)
	}
	for i := range a.Fits {
		rows = append(rows, project.FitFields(i)...)
	}
	if i := slices.IndexFunc(rows, differ); i >= 0 {
		return rows[i], true
	}
	return f, false
}

// Stands says what a field holds now, behind a label that may begin with its name.
func Stands(f project.Field, p project.Project, label string) string {
	value := strings.TrimSpace(f.Show(p) + " " + f.Unit(p))
	if f.Show(p) == "" {
		value = "empty"
	}
	is := "is " + value + " now"
	if name := f.NameIn(p); !strings.HasPrefix(label, name) {
		return name + " " + is
	}
	return "it " + is
}
