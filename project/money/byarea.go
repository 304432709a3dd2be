package money

import (
	"fmt"

	"chape/calc/length"
	"chape/project/plain"
)

// ByArea is what a leather costs, as an amount by one of two areas; "": not known.
type ByArea struct{ M2, Ft2 string }

// Found is what stands there, for an error.
func (p ByArea) Found() string {
	if p.M2 != "" && p.Ft2 != "" {
		return "both, " + plain.Quote(p.M2) + " and " + plain.Quote(p.Ft2)
	}
	return plain.Quote(p.M2 + p.Ft2)
}

// Amount is the price, and what it is by; not known where none is given. The error says
// what would do.
func (p ByArea) Amount() (Amount, length.Area, error) {
	text, by := p.M2, SquareMetre
	if text == "" {
		text, by = p.Ft2, length.SquareFoot
	}
	a, err := Parse(text)
	switch {
	case p.M2 != "" && p.Ft2 != "":
		err = fmt.Errorf("by the square metre and by the square foot: give one of the two")
	case err != nil:
		err = fmt.Errorf("write an amount as in 92.50, with a point, without currency")
	}
	return a, by, err
}
