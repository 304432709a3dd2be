package print

import (
	"fmt"
	"strings"

	"chape/calc/length"
	"chape/project/print/sheet"
)

// Measured is the correction that comes of two distances of 100 mm, across and along,
// that were measured on a sheet printed with the correction now: "99.5,100.2",
// "99,5 100,2". The word none takes the correction back. The very figures of now are
// the same measurement said twice: a corrected sheet can't be as far out as one
// without. The error is one line; now stands then.
func Measured(text string, now sheet.Correction) (sheet.Correction, error) {
	if text == "none" {
		return sheet.Correction{}, nil
	}
	var mm [2]float64
	parts := pricks(text)
	ok := len(parts) == len(mm)
	for i := range mm {
		if ok {
			l, err := length.Parse(parts[i], length.Millimetres)
			mm[i], ok = l.MM(), err == nil && l > 0
		}
	}
	if !ok {
		return now, fmt.Errorf("%.40q is not two measurements: try 99.5,100.2, or none", text)
	}
	c := sheet.Correction{X: mm[0], Y: mm[1]}
	if err := c.Check(); err != nil || c == now {
		return now, err
	}
	both, err := now.Then(c)
	if err != nil {
		return now, fmt.Errorf("with %s mm, for which sheets are corrected by now, that makes %s: no printer is so far out; "+
			"take the correction back with the word none, and measure a sheet anew", now, both)
	}
	return both, nil
}

// pricks takes apart what was measured: with a comma between, or a space where
// commas stand in the numbers.
func pricks(text string) []string {
	if strings.ContainsAny(strings.TrimSpace(text), " ;") {
		parts := strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == ';' })
		for i := range parts {
			parts[i] = strings.TrimSuffix(parts[i], ",")
		}
		return parts
	}
	return strings.Split(strings.TrimSpace(text), ",")
}
