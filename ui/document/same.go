package document

import (
	"reflect"

	"chape/project"
)

// same tells whether a and b hold the same. An empty list is as good as none.
func same(a, b project.Project) bool {
	return reflect.DeepEqual(tidy(a), tidy(b))
}

func tidy(p project.Project) project.Project {
	p.Knife.Stations = orNil(p.Knife.Stations)
	p.Fits = orNil(p.Fits)
	p.Steps = orNil(p.Steps)
	p.Patterns = orNil(p.Patterns)
	p.Quotes = orNil(p.Quotes)
	p.Weigh = orNil(p.Weigh)
	p.Added = orNil(p.Added)
	return p
}

func orNil[T any](s []T) []T {
	if len(s) == 0 {
		return nil
	}
	return s
}
