// Package shop is what one maker's shop pays, asks and has time for: what a sheath comes
// to there, what is said of it to a customer, and when it can be ready. Nothing here
// reads a clock or a file.
package shop

import (
	"strings"

	"chape/calc"
	"chape/calc/calendar"
	"chape/project"
	"chape/project/money"
	"chape/project/takes"
)

// Shop is a maker's shop as the settings have it. The zero value knows no price and no
// hours.
type Shop struct {
	Prices  money.Prices
	Snap    money.Amount
	Rivet   money.Amount
	Offcut  float64       // share of leather bought on top of what is cut
	Holds   int           // days that a quote holds; 0: no end is set
	Week    calendar.Week // hours at the bench
	Name    string        // of the maker, for the customer's papers
	Address []string      // lines of it
	Broken  string        // why the settings can't be read, so that nothing is known; "": they can
}

// Maker is who the maker is, a line each, as customers' papers say it; none where the
// settings do not say.
func (s Shop) Maker() []string {
	var out []string
	for _, l := range append([]string{s.Name}, s.Address...) {
		if strings.TrimSpace(l) != "" {
			out = append(out, l)
		}
	}
	return out
}

// Takes is what a sheath takes here: leather, thread and minutes, and a snap and a rivet
// where there is a strap, one for each hole that the plan punches in it.
func (s Shop) Takes(p project.Project, plan *calc.Plan) money.Use {
	u := takes.Use(p, plan, takes.LossOf(p, plan, s.Offcut))
	if plan.Strap != nil {
		u.Items = append(u.Items, money.Item{Name: "snap", Count: 1, Each: s.Snap}, money.Item{Name: "rivet", Count: 1, Each: s.Rivet})
	}
	return u
}

// Reckoning is what a sheath comes to.
type Reckoning struct {
	Use   money.Use
	Price money.Bill // by the minutes expected, with overhead, margin and minimum
	Cost  money.Bill // the same minutes, without those
	Taken money.Bill // the cost by the minutes spent so far
}

// Reckon reckons with the prices of today.
func (s Shop) Reckon(p project.Project, plan *calc.Plan) Reckoning {
	u := s.Takes(p, plan)
	r := Reckoning{Use: u, Price: money.Price(u, s.Prices), Cost: money.Cost(u, s.Prices)}
	u.Spent = true
	r.Taken = money.Cost(u, s.Prices)
	return r
}
