package calendar

import (
	"slices"
	"sort"
	"time"
)

// Span is a stretch of time, To after From.
type Span struct{ From, To time.Time }

// Taken are stretches of time at the bench that some work has, in order and apart from
// each other.
type Taken []Span

// With is both together; those that touch become one. It shares nothing with either.
func (t Taken) With(more Taken) Taken {
	all := slices.Concat(t, more)
	slices.SortFunc(all, func(a, b Span) int { return a.From.Compare(b.From) })
	var out Taken
	for _, s := range all {
		if n := len(out); n > 0 && !s.From.After(out[n-1].To) {
			if s.To.After(out[n-1].To) {
				out[n-1].To = s.To
			}
			continue
		}
		out = append(out, s)
	}
	return out
}

// free visits what other work leaves of every stretch from t on, until visit says no.
func (s Shop) free(t time.Time, visit func(stretch) bool) {
	s.each(t, func(h stretch) bool {
		i := sort.Search(len(s.Taken), func(i int) bool { return s.Taken[i].To.After(h.from) })
		for ; i < len(s.Taken) && s.Taken[i].From.Before(h.to); i++ {
			if s.Taken[i].From.After(h.from) && !visit(stretch{h.from, s.Taken[i].From}) {
				return false
			}
			h.from = s.Taken[i].To
		}
		return !h.to.After(h.from) || visit(h)
	})
}
