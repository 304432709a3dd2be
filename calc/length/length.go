// Package length is the unit of everything that is measured: a length in
// millimetres, how people type one, and how it is shown to them.
package length

import "fmt"

// Length is a distance in millimetres. The zero value is no length at all,
// and a correction may be negative.
type Length float64

// Lengths to count in. The inch is exact: 16 CFR 500.19, and NBS Circular
// 572, addendum of 1959.
//
// Ounce is the leather trade's thickness, not a mass: one ounce is 1/64 in
// (common practice, no source). The trade also rounds it to 0.4 mm; here it
// is the 64th, so that 8 oz is 1/8 in.
const (
	Millimetre Length = 1
	Inch       Length = 25.4
	Ounce             = Inch / 64
)

// MM is the length in millimetres.
func (l Length) MM() float64 { return float64(l) }

// In is the length in inches.
func (l Length) In() float64 { return float64(l / Inch) }

// Unit is what a person measures in.
type Unit uint8

// The units.
const (
	Millimetres Unit = iota
	Inches
)

// String gives the unit's sign: "mm" or "in".
func (u Unit) String() string {
	if u == Inches {
		return "in"
	}
	return "mm"
}

// size is the length of one of the unit.
func (u Unit) size() ratio {
	if u == Inches {
		return inchSize
	}
	return mmSize
}

// ParseUnit reads what String writes.
func ParseUnit(s string) (Unit, error) {
	switch s {
	case "mm":
		return Millimetres, nil
	case "in":
		return Inches, nil
	}
	return Millimetres, fmt.Errorf("%s is not a unit: use mm or in", quote(s))
}

// MarshalText gives the unit's sign.
func (u Unit) MarshalText() ([]byte, error) { return []byte(u.String()), nil }

// UnmarshalText reads the unit's sign.
func (u *Unit) UnmarshalText(text []byte) error {
	v, err := ParseUnit(string(text))
	if err != nil {
		return err
	}
	*u = v
	return nil
}
