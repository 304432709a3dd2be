package project

import (
	"fmt"
	"time"

	"chape/project/money"
	"chape/project/plain"
	"chape/project/value"
)

// Quote is a price that was told to a customer, as the file keeps it.
type Quote = money.Kept

// Standing is the quote that counts, by its place: the accepted one last accepted, else
// the one made last; -1 where there is none.
func (p Project) Standing() int {
	at := len(p.Quotes) - 1
	for i, q := range p.Quotes {
		if at < 0 || !q.Accepted.IsZero() && !q.Accepted.Before(p.Quotes[at].Accepted) {
			at = i
		}
	}
	return at
}

// quote checks what the ranges of its fields do not tell.
func (c *checker) quote(i int, q Quote) {
	unit, err := money.Parse(q.Unit)
	if err != nil || unit.Known() && !unit.Decimal().IsPositive() {
		c.add("quote.unit", i, plain.Quote(q.Unit), `give the smallest amount there is, as in "0.01"`)
		return
	}
	if !q.Accepted.IsZero() && q.Accepted.Before(q.Date) {
		c.add("quote.accepted", i, q.Accepted.Format(time.DateOnly), "give the day it was made or a later one: it was made on "+q.Date.Format(time.DateOnly))
	}
	m, err := q.Money()
	if err != nil {
		c.add("quote.lines", i, "what is no bill", err.Error())
		return
	}
	if sum, atLeast := m.Bill.Total(); len(m.Bill.Lines) == 0 || atLeast || sum.IsNegative() {
		c.add("quote.lines", i, fmt.Sprintf("%d lines that come to %s", len(m.Bill.Lines), m.Bill.Say()),
			"give an amount for each line, of 0 or more together, or take the quote out")
	}
}

const longestBill = 20000

var quotes = []column[Quote]{
	value.At(Spec{Key: "quote.date", Group: "quotes", Name: "quoted", Kind: Date, Needed: true,
		Hint: "the day it was made"}, time.Time{}, func(q *Quote) *time.Time { return &q.Date }),
	value.At(Spec{Key: "quote.due", Group: "quotes", Name: "promised", Kind: Date,
		Hint: "the day promised with it, and then with the order"}, time.Time{}, func(q *Quote) *time.Time { return &q.Due }).UnlessEmpty(),
	value.At(Spec{Key: "quote.accepted", Group: "quotes", Name: "accepted", Kind: Date,
		Hint: "the day the customer said yes"}, time.Time{}, func(q *Quote) *time.Time { return &q.Accepted }).UnlessEmpty(),
	value.At(Spec{Key: "quote.what", Group: "quotes", Name: "what it is for", Kind: Lines, Max: 2000,
		Hint: "the sheath in the customer's words"}, "", func(q *Quote) *string { return &q.What }).UnlessEmpty(),
	value.At(Spec{Key: "quote.currency", Group: "quotes", Name: "currency", Kind: Text, Max: 10,
		Hint: "put behind amounts"}, "", func(q *Quote) *string { return &q.Currency }).UnlessEmpty(),
	value.At(Spec{Key: "quote.unit", Group: "quotes", Name: "smallest amount", Kind: Text, Max: 20,
		Hint: `as in "0.01"`}, "", func(q *Quote) *string { return &q.Unit }).UnlessEmpty(),
	value.At(Spec{Key: "quote.lines", Group: "quotes", Name: "lines", Kind: Lines, Max: longestBill, Needed: true,
		Hint: "kind | amount | name | what it came from"}, "", func(q *Quote) *string { return &q.Lines }),
}
