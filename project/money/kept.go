package money

import (
	"time"

	"chape/project/clock"
)

// Kept is a quote as a file keeps it: a copy of figures and prices, which
// stays as it is whatever becomes of the project and of the price list.
type Kept struct {
	Date     time.Time // the day it was made, UTC midnight
	Due      time.Time // the day promised with it, and then with the order; zero: none
	Until    time.Time // the last day on which it holds; zero: no end is set
	Accepted time.Time // the day it was accepted; zero: not yet
	What     string    // the sheath as it was quoted, for the customer
	Currency string    // put behind amounts; may be empty
	Unit     string    // the smallest amount, as Parse reads it; "": 0.01
	Lines    string    // as ParseBill reads them
}

// Keep keeps a quote with what it is for, and the day promised with it.
func Keep(q Quote, what string, due time.Time) Kept {
	out := Kept{Date: clock.DayOf(q.Date), Due: due, What: what, Currency: q.Bill.Currency.Sign, Lines: q.Bill.Text()}
	if u := q.Bill.Currency.Unit; u.IsPositive() {
		out.Unit = u.StringFixed(max(0, -u.Exponent())) // "0.10" has two decimals, "0.1" one
	}
	if !q.Accepted.IsZero() {
		out.Accepted = clock.DayOf(q.Accepted)
	}
	return out
}

// Hold has the quote hold for so many days from the day it was made on; 0: no end is set.
func (q *Kept) Hold(days int) {
	q.Until = time.Time{}
	if days > 0 {
		q.Until = q.Date.AddDate(0, 0, days)
	}
}

// Over tells whether the quote holds no more on a day.
func (q Kept) Over(day time.Time) bool {
	return !q.Until.IsZero() && clock.DayOf(day).After(q.Until)
}

// Money is the quote in exact decimals. The error is of a text that will not do, which
// project.Validate refuses.
func (q Kept) Money() (Quote, error) {
	unit, err := Parse(q.Unit)
	if err != nil {
		return Quote{}, err
	}
	b, err := ParseBill(q.Lines, Currency{Sign: q.Currency, Unit: unit.Decimal()})
	return Quote{Date: q.Date, Accepted: q.Accepted, Bill: b}, err
}
