package project

import "chape/project/value"

// column is one key of a table of the file; T is what the table fills.
type column[T any] = value.Column[T]

// field binds the column to where row finds what it fills; i is the row of a list.
// What follows from a change is put right by then.
func field[T any](c column[T], row func(p *Project, i int) *T, then func(*Project) error) Field {
	f := Field{Spec: c.Spec, Index: -1, Default: c.Def, ranged: c.Seen == nil}
	f.kept = func(p *Project, i int) any { return c.Get(row(p, i)) }
	f.keep = func(p *Project, i int, v any) { c.Set(row(p, i), v) }
	f.written = func(p *Project, i int) bool { return c.Skip == nil || !c.Skip(row(p, i)) }
	f.get = f.kept
	if c.Seen != nil {
		f.get = func(p *Project, i int) any { return c.Seen.Get(row(p, i)) }
	}
	f.set = func(p *Project, i int, v any) error {
		t := row(p, i)
		if c.Seen != nil {
			if err := c.Seen.Set(t, v, p.Units); err != nil {
				return err
			}
		} else {
			c.Set(t, v)
		}
		if then == nil {
			return nil
		}
		return then(p)
	}
	return f
}
