package money

import (
	"fmt"
	"time"

	"chape/project/plain"
	"chape/project/value"
)

const longestBill = 20000

// Columns are the keys of a quote in a file.
var Columns = []value.Column[Kept]{
	value.At(value.Spec{Key: "quote.date", Group: "quotes", Name: "quoted", Kind: value.Date, Needed: true,
		Hint: "the day it was made"}, time.Time{}, func(q *Kept) *time.Time { return &q.Date }),
	value.At(value.Spec{Key: "quote.until", Group: "quotes", Name: "holds until", Kind: value.Date,
		Hint: "the last day on which it holds"}, time.Time{}, func(q *Kept) *time.Time { return &q.Until }).UnlessEmpty(),
	value.At(value.Spec{Key: "quote.due", Group: "quotes", Name: "promised", Kind: value.Date,
		Hint: "the day promised with it, and then with the order"}, time.Time{}, func(q *Kept) *time.Time { return &q.Due }).UnlessEmpty(),
	value.At(value.Spec{Key: "quote.accepted", Group: "quotes", Name: "accepted", Kind: value.Date,
		Hint: "the day the customer said yes"}, time.Time{}, func(q *Kept) *time.Time { return &q.Accepted }).UnlessEmpty(),
	value.At(value.Spec{Key: "quote.what", Group: "quotes", Name: "what it is for", Kind: value.Lines, Max: 2000,
		Hint: "the sheath in the customer's words"}, "", func(q *Kept) *string { return &q.What }).UnlessEmpty(),
	value.At(value.Spec{Key: "quote.currency", Group: "quotes", Name: "currency", Kind: value.Text, Max: 10,
		Hint: "put behind amounts"}, "", func(q *Kept) *string { return &q.Currency }).UnlessEmpty(),
	value.At(value.Spec{Key: "quote.unit", Group: "quotes", Name: "smallest amount", Kind: value.Text, Max: 20,
		Hint: `as in "0.01"`}, "", func(q *Kept) *string { return &q.Unit }).UnlessEmpty(),
	value.At(value.Spec{Key: "quote.lines", Group: "quotes", Name: "lines", Kind: value.Lines, Max: longestBill, Needed: true,
		Hint: "kind | amount | name | what it came from"}, "", func(q *Kept) *string { return &q.Lines }),
}

// Check looks at what the ranges of its columns do not tell, and names each key that will
// not do.
func (q Kept) Check(add func(key, found, remedy string)) {
	unit, err := Parse(q.Unit)
	if err != nil || unit.Known() && !unit.Decimal().IsPositive() {
		add("quote.unit", plain.Quote(q.Unit), `give the smallest amount there is, as in "0.01"`)
		return
	}
	for _, d := range []struct {
		key string
		day time.Time
	}{{"quote.accepted", q.Accepted}, {"quote.until", q.Until}} {
		if !d.day.IsZero() && d.day.Before(q.Date) {
			add(d.key, d.day.Format(time.DateOnly), "give the day it was made, "+q.Date.Format("2 Jan 2006")+", or a later one")
		}
	}
	m, err := q.Money()
	if err != nil {
		add("quote.lines", "what is no bill", err.Error())
		return
	}
	if sum, atLeast := m.Bill.Total(); len(m.Bill.Lines) == 0 || atLeast || sum.IsNegative() {
		add("quote.lines", fmt.Sprintf("%d lines that come to %s", len(m.Bill.Lines), m.Bill.Say()),
			"give an amount for each line, of 0 or more together, or take the quote out")
	}
}
