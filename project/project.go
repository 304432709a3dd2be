// Package project holds what a project is: one knife, one sheath, its steps,
// holds and corrections; and how it is read from and written to its file.
// Nothing here reads the clock: the time is passed in.
package project

import (
	"time"

	"chape/calc"
	"chape/calc/knife"
	"chape/calc/length"
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
	Sheath   calc.Sheath
	Belt     calc.Belt
	Stitch   calc.Stitch
	Room     weigh.Room
	Fits     []Fit
	Steps    []Step
	Weigh    []weigh.Weighing
}

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

// Step is one line of the checklist. A hold is kept as due times by the wall
// clock: Started plus Hold, Started plus Latest.
type Step struct {
	Title   string
	Short   string        // at most 9 letters, for the bench view
	Caution string        // shown with the step that needs it
	Note    string        // the maker's own
	Hold    time.Duration // not before; 0: none
	Latest  time.Duration // look at it by then; 0: none
	Started time.Time     // when the hold was started; zero: not yet
	Ended   time.Time     // when the hold was ended early; zero: it was not
	Done    time.Time     // when it was ticked; zero: not yet
	Skipped bool
	Spent   time.Duration // work at the bench
}

// Input is what calc needs of the project.
func (p Project) Input(limits calc.Limits) calc.Input {
	in := calc.Input{
		Knife: p.Knife, Sheath: p.Sheath, Belt: p.Belt, Stitch: p.Stitch, Limits: limits,
	}
	for _, f := range p.Fits {
		in.Fits = append(in.Fits, f.Fit)
	}
	return in
}

// String gives the word the project file uses.
func (s Source) String() string {
	if s == FromOutline {
		return "outline"
	}
	return "stations"
}
