package steps

import (
	"slices"
	"time"
)

// Refit makes a checklist follow a sheath that has come to have other parts: steps of a
// part that is gone go, unless something was done or noted in them, those of a new part
// come in at their place, and the words of the others follow. Only steps that stand as
// the lists have them are touched; the list given is not changed.
func Refit(steps []Step, before, after Parts) []Step {
	if before == after {
		return steps
	}
	out := slices.Clone(steps)
	known := -1 // where the last row that is in the list stands
	for _, r := range rowsOf(steps) {
		was, is := r.step(before), r.step(after)
		at := slices.IndexFunc(out, func(s Step) bool { return s.Title == was.Title && s.Short == was.Short })
		switch had, has := before.part(r.part), after.part(r.part); {
		case had && has && at >= 0:
			out[at] = reworded(out[at], was, is)
		case had && !has && at >= 0 && out[at].untouched():
			out = slices.Delete(out, at, at+1)
			continue
		case !had && has && !slices.ContainsFunc(out, func(s Step) bool { return s.Short == is.Short }) && len(out) < Most:
			at = known + 1
			out = slices.Insert(out, at, is)
		}
		if at >= 0 {
			known = at
		}
	}
	return out
}

// rowsOf is the order of the list that steps was made from.
func rowsOf(steps []Step) []row {
	at := func(short string) int { return slices.IndexFunc(steps, func(s Step) bool { return s.Short == short }) }
	if sand, wrap := at("SAND"), at("WRAP"); sand >= 0 && sand < wrap {
		return sewThenForm()
	}
	return formThenSew()
}

func reworded(s, was, is Step) Step {
	s.Title = is.Title
	if s.Caution == was.Caution {
		s.Caution = is.Caution
	}
	return s
}

// untouched tells whether nothing was done in the step yet.
func (s Step) untouched() bool {
	return s.open() && !s.Skipped && s.Started.IsZero() && s.Note == "" && s.Spent == time.Duration(0)
}

// Fresh is the list for the next sheath: the same steps, waits and expected minutes,
// with nothing done, started, noted or spent.
func Fresh(steps []Step) []Step {
	out := slices.Clone(steps)
	for i, s := range out {
		out[i] = Step{Title: s.Title, Short: s.Short, Caution: s.Caution, Hold: s.Hold, Latest: s.Latest,
			From: s.From, Sheet: s.Sheet, Expect: s.Expect}
	}
	return out
}
