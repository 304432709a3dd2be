package project

import (
	"fmt"
	"time"

	"chape/calc/length"
)

// column is one key of a table of the file: T is what the table fills.
type column[T any] struct {
	Spec
	def  any // what a missing key stands for; nil: nothing given
	get  func(*T) any
	set  func(*T, any) // takes what get gives
	skip func(*T) bool // not written; nil: written always
	seen *view[T]      // how the screens show it, where they do not show what the file holds
}

// view is a value as the maker measures it, made from what the file holds.
type view[T any] struct {
	get func(*T) any
	set func(*T, any, length.Unit) error // the unit: for the error
}

// at makes a column for the value p points to.
func at[T, V any](s Spec, def V, p func(*T) *V) column[T] {
	return column[T]{
		Spec: s, def: def,
		get: func(t *T) any { return *p(t) },
		set: func(t *T, v any) { *p(t) = v.(V) },
	}
}

// lengthAt makes a column for a length given in mm.
func lengthAt[T any](s Spec, def length.Length, p func(*T) *length.Length) column[T] {
	if s.Kind != Leather {
		s.Kind = Length
	}
	return at(s, def, p)
}

// optional makes a column for a length that need not be given.
func optional[T any](s Spec, p func(*T) *length.Length, given func(*T) *bool, on bool) column[T] {
	s.Kind = Length
	return column[T]{
		Spec: s,
		get: func(t *T) any {
			if *given(t) != on {
				return nil
			}
			return *p(t)
		},
		set: func(t *T, v any) {
			*p(t), *given(t) = 0, !on
			if l, ok := v.(length.Length); ok {
				*p(t), *given(t) = l, on
			}
		},
		skip: func(t *T) bool { return *given(t) != on },
	}
}

// choiceAt makes a column for one of a few words; the first is the default.
func choiceAt[T any, E interface {
	~uint8
	fmt.Stringer
}](s Spec, p func(*T) *E, all ...E) column[T] {
	s.Kind = Choice
	for _, e := range all {
		s.Options = append(s.Options, e.String())
	}
	return column[T]{
		Spec: s, def: s.Options[0],
		get: func(t *T) any { return (*p(t)).String() },
		set: func(t *T, v any) {
			for _, e := range all {
				if e.String() == v {
					*p(t) = e
				}
			}
		},
	}
}

// unlessEmpty leaves the key out of the file where it says nothing.
func (c column[T]) unlessEmpty() column[T] {
	c.skip = func(t *T) bool {
		switch v := c.get(t).(type) {
		case string:
			return v == ""
		case time.Time:
			return v.IsZero()
		case time.Duration:
			return v == 0
		case bool:
			return !v
		}
		return false
	}
	return c
}

// shownAs sets how the screens show it.
func (c column[T]) shownAs(get func(*T) any, set func(*T, any, length.Unit) error) column[T] {
	c.seen = &view[T]{get: get, set: set}
	return c
}

// field binds the column to where row finds what it fills; i is the row of a list.
// What follows from a change is put right by then.
func field[T any](c column[T], row func(p *Project, i int) *T, then func(*Project) error) Field {
	f := Field{Spec: c.Spec, Index: -1, Default: c.def, ranged: c.seen == nil}
	f.kept = func(p *Project, i int) any { return c.get(row(p, i)) }
	f.keep = func(p *Project, i int, v any) { c.set(row(p, i), v) }
	f.written = func(p *Project, i int) bool { return c.skip == nil || !c.skip(row(p, i)) }
	f.get = f.kept
	if c.seen != nil {
		f.get = func(p *Project, i int) any { return c.seen.get(row(p, i)) }
	}
	f.set = func(p *Project, i int, v any) error {
		t := row(p, i)
		if c.seen != nil {
			if err := c.seen.set(t, v, p.Units); err != nil {
				return err
			}
		} else {
			c.set(t, v)
		}
		if then == nil {
			return nil
		}
		return then(p)
	}
	return f
}
