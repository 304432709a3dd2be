package report

import (
	"fmt"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	bill "chape/project/money"
)

// Loss is the leather lost between the parts.
type Loss struct {
	Share float64 // of what is cut, bought on top of it
	From  string  // where that comes from
	laid  bool    // the parts were placed on a piece
}

// OffcutLoss is the share of the settings.
func OffcutLoss(share float64) Loss {
	return Loss{Share: share, From: fmt.Sprintf("%.0f %% for offcuts", 100*share)}
}

// Placed are the rates with what placing the parts of p loses, where they were placed.
func Placed(p project.Project, r calc.Rates) calc.Rates {
	if p.Hide.Placed {
		r.Offcut, r.Placed = p.Hide.Lost, true
	}
	return r
}

// LossOf is what p's own placing loses; without one, a share for offcuts.
func LossOf(p project.Project, offcut float64) Loss {
	if !p.Hide.Placed {
		return OffcutLoss(offcut)
	}
	return Loss{p.Hide.Lost, fmt.Sprintf("placed, yield %.0f %%", 100/(1+p.Hide.Lost)), true}
}

// Takes is what a sheath takes, for its cost: leather, thread and minutes. Steps that
// are skipped take none. Hardware is the caller's to add.
func Takes(p project.Project, plan *calc.Plan, loss Loss) bill.Use {
	c := plan.Cost(calc.Rates{Offcut: loss.Share, Placed: loss.laid})
	if c.ToBuy > c.LeatherArea*(1+loss.Share)+1e-6 {
		loss.From = "the parts side by side"
	}
	u := bill.Use{
		Leather: []bill.Leather{{Cut: length.Area(c.LeatherArea), Bought: length.Area(c.ToBuy), From: loss.From}},
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
