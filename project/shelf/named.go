package shelf

import (
	"slices"
	"strings"
)

// Named looks for a project by its title, or its file's name, whatever the accents and
// capitals: exact has those called so, or, where none is, near those in whose title,
// customer or file name every word of it is found. What is put away counts where
// nothing else does. A shelf that can't be read has none.
func (s *Shelf) Named(title string) (exact, near []Entry) {
	want, query := folded(title), ParseQuery(title)
	scan, err := s.Look()
	if err != nil || len(query) == 0 {
		return nil, nil
	}
	all := scan.Entries()
	for _, e := range scan.Next(scan.Left()) {
		all[slices.IndexFunc(all, func(o Entry) bool { return o.Path == e.Path })] = e
	}
	slices.SortFunc(all, func(a, b Entry) int { return strings.Compare(a.Path, b.Path) })
	for _, e := range all {
		switch {
		case folded(e.Title) == want || folded(nameOf(e.Path)) == want:
			exact = append(exact, e)
		case query.Finds(e):
			near = append(near, e)
		}
	}
	return inHandFirst(exact), inHandFirst(near)
}

// inHandFirst leaves out what is put away where there is anything else.
func inHandFirst(all []Entry) []Entry {
	var out []Entry
	for _, e := range all {
		if !e.PutAway {
			out = append(out, e)
		}
	}
	if len(out) == 0 {
		return all
	}
	return out
}
