package project

import (
	"fmt"
	"strings"

	"chape/calc/length"
	"chape/project/plain"
	"chape/project/value"
)

// What the values of a project are said in, under the names of this package as well: who
// works on a project has them at hand.
type (
	Spec     = value.Spec
	Kind     = value.Kind
	Problem  = value.Problem
	Problems = value.Problems
)

// The kinds.
const (
	Length  = value.Length
	Leather = value.Leather
	Share   = value.Share
	Number  = value.Number
	Count   = value.Count
	Choice  = value.Choice
	Text    = value.Text
	Lines   = value.Lines
	Date    = value.Date
	Moment  = value.Moment
	Span    = value.Span
	Flag    = value.Flag
	Words   = value.Words
)

// Field is one value of a project: the screens edit it, the file keeps it.
type Field struct {
	Spec
	Index   int  // of the row it belongs to, -1: none
	Default any  // what a key that the file lacks stands for; nil: nothing given
	ranged  bool // Min and Max are of what the screens show, too
	get     func(p *Project, i int) any
	set     func(p *Project, i int, v any) error
	kept    func(p *Project, i int) any
	keep    func(p *Project, i int, v any)
	written func(p *Project, i int) bool
}

// At is the column of a list in row i.
func (f Field) At(i int) Field {
	f.Index = i
	return f
}

// Kept gives the value as the file holds it, of the type Kind says; nil where none is
// given.
func (f Field) Kept(p *Project) any { return f.kept(p, f.Index) }

// Keep puts a value into p as it comes from a file. Nothing is checked and nothing
// follows from it: Validate p when it is filled.
func (f Field) Keep(p *Project, v any) { f.keep(p, f.Index, v) }

// Written tells whether the file needs the key: some say nothing where they are empty.
func (f Field) Written(p *Project) bool { return f.written(p, f.Index) }

// Get gives the value as the screens show it, of the type Kind says; nil
// where none is given and Auto is shown.
func (f Field) Get(p Project) any { return f.get(&p, f.Index) }

// Set puts a value that Parse gave into p. When the project would no longer
// do, it is left as it was and the error is a Problem.
func (f Field) Set(p *Project, v any) error {
	q := p.Clone()
	if err := f.set(&q, f.Index, v); err != nil {
		if bad, ok := err.(Problem); ok {
			bad.Index = f.Index
			return bad
		}
		return err
	}
	if err := q.Validate(); err != nil {
		ps := err.(Problems)
		if own, ok := ps.For(f.Key, f.Index); ok {
			return own
		}
		return ps[0]
	}
	*p = q
	return nil
}

// Show gives the text for the screen and its edit field, without a unit. Parse
// takes it for the value as it is, to the last digit.
func (f Field) Show(p Project) string { return f.Spec.Show(f.Get(p), p.Units) }

// Text is a value as Show would give it.
func (f Field) Text(v any, p Project) string { return f.Spec.Show(v, p.Units) }

// Parse reads what was typed. The error is one line that says what would do.
// An empty text is no value where Auto says what then holds; the text that
// Show gives is the value as it is, to the last digit.
func (f Field) Parse(text string, p Project) (any, error) {
	if text == f.Show(p) {
		return f.Get(p), nil
	}
	v, err := f.Spec.Parse(strings.TrimSpace(text), p.Units)
	if err != nil || !f.ranged {
		return v, err
	}
	if bad, ok := f.Outside(v, p.Units); ok {
		switch v.(type) {
		case length.Length, length.Sold:
			bad.Found = plain.Quote(strings.TrimSpace(text))
		}
		return nil, fmt.Errorf("%s will not do: %s", bad.Found, bad.Remedy)
	}
	return v, nil
}

// Unit is what stands behind the value on the screen.
func (f Field) Unit(p Project) string {
	switch f.Kind {
	case Length, Leather:
		if sold, ok := f.Get(p).(length.Sold); ok { // both are shown
			return "counts as " + sold.Thick.Format(p.Units, length.Calliper)
		}
		return p.Units.String()
	}
	return f.In
}
