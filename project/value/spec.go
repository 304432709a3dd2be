// Package value is what a value of a file is, whatever the file is of: its kind and range,
// how it is shown, how what was typed is read, and how one that will not do is said.
package value

import (
	"chape/calc/length"
)

// Kind is what sort of value a field holds.
type Kind uint8

// LongestLine is how many letters a line of text may have.
const LongestLine = 200

// The kinds, with the Go type of their values.
const (
	Length  Kind = iota // length.Length
	Leather             // length.Length; leather weights may be typed
	Share               // float64
	Number              // float64, a plain figure such as grams
	Count               // int
	Choice              // string, one of Options
	Text                // string, one line
	Lines               // string, several lines
	Date                // time.Time at midnight UTC; zero: none
	Moment              // time.Time; zero: not yet
	Span                // time.Duration
	Flag                // bool
	Words               // []string; in a configuration alone
)

// Spec says what a field is: the reading and the writing of the file, the
// checks and the screens all go by it.
type Spec struct {
	Key     string          // in the file: "sheath.leather", "knife.station.at"
	Group   string          // "project", "customer", "knife", "outline", "sheath", "strap", "belt", "stitches", "room"
	Name    string          // the trade's plain words, for the screen
	Hint    string          // how to measure or choose it, one line
	Kind    Kind            //
	Fine    length.Fineness // the tool it is measured with
	In      string          // unit of a number: "g"
	Min     float64         // mm, or as the kind counts; texts: unused
	Max     float64         // texts: the most letters
	Above   bool            // Min itself is too little
	Options []string        // of a choice, as in the file
	Shown   []string        // the options as the screens say them; nil: as in the file
	Auto    string          // what the screen says where no value is given: "centred"
	Needed  bool            // the file must hold it: there is no default
}
