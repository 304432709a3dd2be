// Package project holds what a project is: one knife, one sheath, its steps,
// holds and corrections; and how it is read from and written to its file.
// Nothing here reads the clock: the time is passed in.
package project

import (
	"time"

	"chape/calc"
	"chape/calc/knife"
	"chape/calc/length"
	"chape/project/steps"
	"chape/project/weigh"
)

// Format is the newest file format this program reads and the one it writes.
const Format = 1

// Source tells where the marks come from.
type Source uint8

// The sources.
const (
	FromStations Source = iota // the marks stand as they are
	FromOutline                // the marks are filled from the outline
)

// Project is one knife and one sheath.
type Project struct {
	Title    string
	Units    length.Unit
	Revision int
	Notes    string
	Customer Customer
	Source   Source
	Outline  knife.Outline
	Knife    knife.Knife
	Tracing  Tracing
	Sheath   calc.Sheath
	Sold     Sold
	Strap    calc.Strap
	Belt     calc.Belt
	Stitch   calc.Stitch
	Room     weigh.Room
	Hide     Hide
	Added    []Part
	Fits     []Fit
	Carried  []Carried
	Earlier  []Half
	MadeFor  MadeFor
	Steps    []steps.Step
	Patterns []Pattern
	Quotes   []Quote
	Weigh    []weigh.Weighing

	// Untouched are the outline's figures that still are a new project's: "blade depth".
	Untouched string
}

// Sold holds the leathers that are sold as a range of ounces, as they were typed; "" where
// one figure was. What counts is the thicker end, which stands in Sheath and Strap.
type Sold struct{ Body, Welt, Strap string }

// Customer is who gets the knife; all of it may be empty.
type Customer struct {
	Name string
	Hand calc.Hand
	Edge calc.Edge
	Due  time.Time // a local date; zero: none
}

// Fit is a correction with how it was found.
type Fit struct {
	calc.Fit
	With string // what was folded: "paper", "same thickness", "leather", "finished"
	Note string
}

// Input is what calc needs of the project.
func (p Project) Input(limits calc.Limits) calc.Input {
	in := calc.Input{
		Knife: p.Knife, Sheath: p.Sheath, Belt: p.Belt, Strap: p.Strap, Stitch: p.Stitch, Limits: limits,
	}
	for _, f := range p.Fits {
		f.Paper = f.With == "paper"
		in.Fits = append(in.Fits, f.Fit)
	}
	if p.Source == FromOutline {
		in.Outline = &p.Outline
	}
	in.Untouched, in.Unmeasured = p.untouched(), p.Unmeasured()
	return in
}

// String gives the word the project file uses.
func (s Source) String() string {
	if s == FromOutline {
		return "outline"
	}
	return "stations"
}
