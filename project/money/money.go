// Package money reckons what a sheath costs and what is asked for it, in exact
// decimals: every line is rounded half up to the currency's unit, and a sum is
// that of the rounded lines. Nothing here reads a clock or a file.
package money

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"
)

// Amount is money in a currency, or a price by some measure. The zero value is
// one that is not known.
type Amount struct {
	value decimal.Decimal
	known bool
}

// Of is a known amount.
func Of(d decimal.Decimal) Amount { return Amount{d, true} }

// mostMoney keeps slips of the keys and amounts of a thousand digits out.
var mostMoney = decimal.New(1, 9)

// Parse reads an amount as a file has it: "12.50"; "" is one not known. The error
// is one line that says what would do.
func Parse(text string) (Amount, error) {
	s := strings.TrimSpace(text)
	if s == "" {
		return Amount{}, nil
	}
	d, err := decimal.NewFromString(s)
	if err != nil || len(s) > 20 || strings.ContainsAny(s, "eE") || d.IsNegative() || d.GreaterThan(mostMoney) {
		return Amount{}, fmt.Errorf("%q is not an amount: try 12.50, with a point, without currency; empty if it is not known", text)
	}
	return Of(d), nil
}

// FromNumber takes a number of the settings, where 0 stands for a price not given.
// It is exact: the shortest decimal that is that number.
func FromNumber(f float64) Amount {
	if f == 0 {
		return Amount{}
	}
	return Of(decimal.NewFromFloat(f))
}

// Known tells whether there is an amount.
func (a Amount) Known() bool { return a.known }

// Decimal is the amount; 0 where it is not known.
func (a Amount) Decimal() decimal.Decimal { return a.value }

// String writes the amount as Parse reads it.
func (a Amount) String() string {
	if !a.known {
		return ""
	}
	return a.value.String()
}

// Equal tells whether both are the same, 12.5 and 12.50 as well.
func (a Amount) Equal(b Amount) bool { return a.known == b.known && a.value.Equal(b.value) }

// Currency is what amounts are in.
type Currency struct {
	Sign string          // put behind amounts; may be empty
	Unit decimal.Decimal // the smallest there is: 0.01, 0.05, 1; 0: 0.01
}

func (c Currency) unit() decimal.Decimal {
	if c.Unit.IsPositive() {
		return c.Unit
	}
	return decimal.New(1, -2)
}

// Round rounds half up to the unit.
func (c Currency) Round(d decimal.Decimal) decimal.Decimal {
	half := decimal.New(5, -1)
	return d.DivRound(c.unit(), 30).Add(half).Floor().Mul(c.unit())
}

// Amount shows an amount rounded, with the unit's decimals: "12.50".
func (c Currency) Amount(d decimal.Decimal) string {
	return c.Round(d).StringFixed(max(0, -c.unit().Exponent()))
}

// Format shows an amount rounded, with the unit's decimals and the sign: "12.50 €".
func (c Currency) Format(d decimal.Decimal) string {
	s := c.Amount(d)
	if c.Sign != "" {
		s += " " + c.Sign
	}
	return s
}

// Show is Format for an amount that may not be known: "price missing".
func (c Currency) Show(a Amount) string {
	if !a.known {
		return "price missing"
	}
	return c.Format(a.value)
}
