package project

import (
	"slices"
	"time"

	"chape/calc/length"
)

// Pattern is what was printed under one number, and so may have been cut. A project
// keeps one for each.
type Pattern struct {
	Number  int       // the revision when it was printed
	Printed time.Time // the day, UTC midnight: the date on its sheets
	Inputs  string    // what it was drawn from, as a project file; package file reads it; may be empty
}

// Printed gives the pattern that was printed under a number.
func (p Project) Printed(number int) (Pattern, bool) {
	for _, q := range p.Patterns {
		if q.Number == number {
			return q, true
		}
	}
	return Pattern{}, false
}

// Note puts in what was printed, in the place of what was printed under its number before.
func (p *Project) Note(q Pattern) {
	p.Patterns = slices.Clone(p.Patterns) // earlier states of the project may hold the list
	for i := range p.Patterns {
		if p.Patterns[i].Number == q.Number {
			p.Patterns[i] = q
			return
		}
	}
	p.Patterns = append(p.Patterns, q)
}

// Drawn is what the pattern of p is drawn from, and nothing else: whoever it is for, the
// steps, the words, the leather on the rack and the parts of the maker's own, which stand on
// no sheet of it, are left out, and the unit of the screens is the millimetre. Its marks
// stand for themselves.
func (p Project) Drawn() Project {
	p = p.Clone()
	plain := Blank()
	p.Title, p.Units, p.Notes, p.Room = "", length.Millimetres, "", plain.Room
	p.Customer = Customer{Hand: p.Customer.Hand, Edge: p.Customer.Edge}
	p.Source, p.Outline, p.Tracing, p.Untouched = FromStations, plain.Outline, Tracing{}, ""
	p.Hide, p.Added = Hide{}, nil
	for i := range p.Fits {
		p.Fits[i].Note = ""
	}
	p.Steps, p.Weigh, p.Patterns, p.Quotes, p.Carried, p.Earlier, p.MadeFor = nil, nil, nil, nil, nil, nil, MadeFor{}
	return p
}
