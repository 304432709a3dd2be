package shelf

import (
	"cmp"
	"slices"
	"strings"
)

// ByTitle are the projects of the shelf that another can take something from, in hand or
// finished, by title: at most so many, those changed last first. The error is one line.
func (s *Shelf) ByTitle(most int) ([]Entry, error) {
	scan, err := s.Look()
	if err != nil {
		return nil, err
	}
	var out []Entry
	listed := map[string]bool{}
	for _, e := range append(scan.Next(most), scan.Entries()...) { // what was read just now, then what was known before
		if listed[e.Path] || e.State == Unread {
			continue
		}
		listed[e.Path] = true
		if (e.State == InHand || e.State == Finished) && !e.PutAway && len(out) < most {
			out = append(out, e)
		}
	}
	slices.SortFunc(out, func(a, b Entry) int {
		return cmp.Or(strings.Compare(a.Title, b.Title), strings.Compare(a.Path, b.Path))
	})
	return out, nil
}
