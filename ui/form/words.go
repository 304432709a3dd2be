package form

import (
	"errors"
	"fmt"

	"chape/project"
)

// Words says an error as the screen says things: fields by their names, not by
// their keys in the file.
func Words(err error) string {
	var ps project.Problems
	var p project.Problem
	switch {
	case errors.As(err, &ps) && len(ps) > 0:
		p = ps[0]
	case !errors.As(err, &p):
		return err.Error()
	}
	return placeOf(p) + p.Beside()
}

// placeOf is the field of a problem, and the row it stands in.
func placeOf(p project.Problem) string {
	for _, list := range []struct {
		row    string
		fields []project.Field
	}{
		{"", project.Fields},
		{"mark", project.MarkFields(max(0, p.Index))},
		{"correction", project.FitFields(max(0, p.Index))},
		{"step", project.StepFields(max(0, p.Index))},
		{"weighing", project.WeighFields(max(0, p.Index))},
	} {
		for _, f := range list.fields {
			switch {
			case f.Key != p.Key:
			case p.Index < 0:
				return f.Name + ": "
			default:
				return fmt.Sprintf("%s of %s %d: ", f.Name, list.row, p.Index+1)
			}
		}
	}
	return ""
}
