package value

import (
	"fmt"
	"time"

	"chape/calc/length"
)

// Column is one key of a table of the file: T is what the table fills.
type Column[T any] struct {
	Spec
	Def  any // what a missing key stands for; nil: nothing given
	Get  func(*T) any
	Set  func(*T, any) // takes what get gives
	Skip func(*T) bool // not written; nil: written always
	Seen *View[T]      // how the screens show it, where they do not show what the file holds
}

// View is a value as the maker measures it, made from what the file holds.
type View[T any] struct {
	Get func(*T) any
	Set func(*T, any, length.Unit) error // the unit: for the error
}

// At makes a column for the value p points to.
func At[T, V any](s Spec, def V, p func(*T) *V) Column[T] {
	return Column[T]{
		Spec: s, Def: def,
		Get: func(t *T) any { return *p(t) },
		Set: func(t *T, v any) { *p(t) = v.(V) },
	}
}

// LengthAt makes a column for a length given in mm.
func LengthAt[T any](s Spec, def length.Length, p func(*T) *length.Length) Column[T] {
	if s.Kind != Leather {
		s.Kind = Length
	}
	return At(s, def, p)
}

// RowLength makes a column for a length of a row; def nil: there is no row without it.
func RowLength[T any](s Spec, def any, p func(*T) *length.Length) Column[T] {
	s.Needed = def == nil
	c := LengthAt(s, 0, p)
	c.Def = def
	return c
}

// Optional makes a column for a length that need not be given.
func Optional[T any](s Spec, p func(*T) *length.Length, given func(*T) *bool, on bool) Column[T] {
	s.Kind = Length
	return Column[T]{
		Spec: s,
		Get: func(t *T) any {
			if *given(t) != on {
				return nil
			}
			return *p(t)
		},
		Set: func(t *T, v any) {
			*p(t), *given(t) = 0, !on
			if l, ok := v.(length.Length); ok {
				*p(t), *given(t) = l, on
			}
		},
		Skip: func(t *T) bool { return *given(t) != on },
	}
}

// ChoiceAt makes a column for one of a few words; the first is the default.
func ChoiceAt[T any, E interface {
	~uint8
	fmt.Stringer
}](s Spec, p func(*T) *E, all ...E) Column[T] {
	s.Kind = Choice
	for _, e := range all {
		s.Options = append(s.Options, e.String())
	}
	return Column[T]{
		Spec: s, Def: s.Options[0],
		Get: func(t *T) any { return (*p(t)).String() },
		Set: func(t *T, v any) {
			for _, e := range all {
				if e.String() == v {
					*p(t) = e
				}
			}
		},
	}
}

// UnlessEmpty leaves the key out of the file where it says nothing.
func (c Column[T]) UnlessEmpty() Column[T] {
	c.Skip = func(t *T) bool {
		switch v := c.Get(t).(type) {
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

// ShownAs sets how the screens show it.
func (c Column[T]) ShownAs(get func(*T) any, set func(*T, any, length.Unit) error) Column[T] {
	c.Seen = &View[T]{Get: get, Set: set}
	return c
}

// Only writes the key where it says something.
func (c Column[T]) Only(written func(*T) bool) Column[T] {
	c.Skip = func(t *T) bool { return !written(t) }
	return c
}

// OptionalNumber makes a column for a figure that need not be given.
func OptionalNumber[T any](s Spec, p func(*T) *float64, given func(*T) *bool) Column[T] {
	s.Kind = Number
	return Column[T]{
		Spec: s,
		Get: func(t *T) any {
			if !*given(t) {
				return nil
			}
			return *p(t)
		},
		Set: func(t *T, v any) {
			*p(t), *given(t) = 0, false
			if f, ok := v.(float64); ok {
				*p(t), *given(t) = f, true
			}
		},
		Skip: func(t *T) bool { return !*given(t) },
	}
}

// ZeroAs has the screens say a word in place of 0, which stands for it in the file.
func ZeroAs[T any](word string, c Column[T]) Column[T] {
	c.Auto = word
	return c.ShownAs(func(t *T) any {
		if v := c.Get(t).(length.Length); v != 0 {
			return v
		}
		return nil
	}, func(t *T, v any, _ length.Unit) error {
		l, _ := v.(length.Length)
		c.Set(t, l)
		return nil
	})
}
