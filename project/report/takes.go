package report

import (
	"cmp"
	"fmt"
	"math"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	bill "chape/project/money"
	"chape/project/plain"
)

// Loss is the leather lost between the parts.
type Loss struct {
	Share float64 // of what is cut, bought on top of it
	From  string  // where that comes from
	laid  bool    // the parts were placed on a piece
	stale bool    // they were, but for an earlier pattern
}

// OffcutLoss is the share of the settings.
func OffcutLoss(share float64) Loss {
	return Loss{Share: share, From: fmt.Sprintf("%.0f %% for offcuts", 100*share)}
}

// Cut is what the parts take, those added too, mm²: by it a placing knows its pattern.
func Cut(p project.Project, plan *calc.Plan) float64 {
	sum := plan.Cost(calc.Rates{}).LeatherArea
	for _, a := range p.Added {
		if l, err := a.Outline(); err == nil {
			sum += math.Abs(l.Area()) * float64(a.Count)
		}
	}
	return math.Round(sum)
}

// Stale tells whether the placing that p keeps is of an earlier pattern.
func Stale(p project.Project, plan *calc.Plan) bool {
	return p.Hide.Placed && p.Hide.Cut > 0 && math.Abs(Cut(p, plan)-p.Hide.Cut) > 1
}

const earlier = ": the placing is of an earlier pattern"

// bought is what a plan takes with the loss, and where that comes from.
func (l Loss) bought(plan *calc.Plan) (calc.Cost, Loss) {
	c := plan.Cost(calc.Rates{Offcut: l.Share, Placed: l.laid})
	if c.ToBuy > c.LeatherArea*(1+l.Share)+1e-6 {
		if l.From = "the parts side by side"; l.stale {
			l.From += earlier
		}
	}
	return c, l
}

// LossOf is what p's own placing loses; without one, or once the pattern has changed, a
// share for offcuts.
func LossOf(p project.Project, plan *calc.Plan, offcut float64) Loss {
	l := OffcutLoss(offcut)
	switch {
	case Stale(p, plan):
		l.From, l.stale = l.From+earlier, true
	case p.Hide.Placed:
		l = Loss{p.Hide.Lost, fmt.Sprintf("placed, yield %.0f %%", 100/(1+p.Hide.Lost)), true, false}
	}
	return l
}

// Takes is what a sheath takes, for its cost: leather, thread and minutes. Steps that
// are skipped take none. Hardware is the caller's to add.
func Takes(p project.Project, plan *calc.Plan, loss Loss) bill.Use {
	c, loss := loss.bought(plan)
	hide := bill.Leather{Cut: length.Area(c.LeatherArea), Bought: length.Area(c.ToBuy), From: loss.From}
	if price, by, err := p.Hide.Price.Amount(); err == nil && price.Known() {
		hide.Price, hide.By = price, by
		hide.From += ", the price of " + cmp.Or(plain.Safe(p.Hide.Name), "this very leather")
	}
	u := bill.Use{
		Leather: []bill.Leather{hide},
		Thread:  length.Length(c.ThreadUsed),
		Unit:    p.Units,
	}
	for _, s := range p.Steps {
		if !s.Skipped {
			u.Steps = append(u.Steps, bill.Step{Title: s.Title, Expected: s.Expect, Spent: s.Spent, Done: !s.Done.IsZero()})
		}
	}
	return u
}
