// Package takes is what a sheath takes: leather with what is lost between the parts, thread
// and minutes. Plan and cost say it by the same reckoning.
package takes

import (
	"cmp"
	"fmt"
	"math"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/money"
	"chape/project/plain"
)

// Loss is the leather lost between the parts.
type Loss struct {
	Share float64 // of what is cut, bought on top of it
	From  string  // where that comes from
	laid  bool    // the parts were placed on a piece
	stale bool    // they were, but for an earlier pattern
}

// Offcut is the share of the settings.
func Offcut(share float64) Loss {
	return Loss{Share: share, From: fmt.Sprintf("%.0f %% for offcuts", 100*share)}
}

// Cut is what the parts take, those added too, mm²: by it a placing knows its pattern.
func Cut(p project.Project, plan *calc.Plan) float64 {
	sum := length.Area(plan.Cost(calc.Rates{}).LeatherArea)
	for _, l := range added(p, Loss{}) {
		sum += l.Cut
	}
	return math.Round(float64(sum))
}

// added is what the parts take that the maker added: a leather for each thickness of theirs,
// in their order. As much is lost between them as between the parts of the sheath.
func added(p project.Project, loss Loss) []money.Leather {
	var out []money.Leather
	rows := map[length.Length]int{}
	for _, a := range p.Added {
		line, err := a.Outline()
		if err != nil {
			continue // refused where it is typed
		}
		thick := cmp.Or(a.Thickness, p.Sheath.Leather)
		i, there := rows[thick]
		if !there {
			i, rows[thick] = len(out), len(out)
			out = append(out, money.Leather{Name: thick.Format(p.Units, length.Calliper) + " added parts", From: loss.From})
			if thick == p.Sheath.Leather { // of the body's leather
				ownPrice(&out[i], p.Hide)
			}
		}
		cut := length.Area(math.Abs(line.Area()) * float64(a.Count))
		out[i].Cut += cut
		out[i].Bought += cut * length.Area(1+loss.Share)
	}
	return out
}

// ToBuy is the leather of a plan as cut and bought, and what it says of what is bought
// beyond, in unit u: the added parts come on top.
func ToBuy(p project.Project, plan *calc.Plan, loss Loss, u length.Unit) (c calc.Cost, words string) {
	c, own := loss.bought(plan)
	words = "with " + own.From
	if own.laid {
		words = "as " + own.From
	}
	var more length.Area
	for _, l := range added(p, loss) {
		more += l.Bought
	}
	if more > 0 {
		words += "; the added parts take " + more.Format(u) + " more"
	}
	return c, words
}

// ownPrice puts the price of the leather that was chosen in the place of the shop's.
func ownPrice(l *money.Leather, h project.Hide) {
	if price, by, err := h.Price.Amount(); err == nil && price.Known() {
		l.Price, l.By = price, by
		l.From += ", the price of " + cmp.Or(plain.Safe(h.Name), "this very leather")
	}
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
	l := Offcut(offcut)
	switch {
	case Stale(p, plan):
		l.From, l.stale = l.From+earlier, true
	case p.Hide.Placed:
		l = Loss{p.Hide.Lost, fmt.Sprintf("placed, yield %.0f %%", 100/(1+p.Hide.Lost)), true, false}
	}
	return l
}

// Use is what a sheath takes, for its cost: leather, the parts added on rows of their
// own, thread and minutes. Steps that
// are skipped take none. Hardware is the caller's to add.
func Use(p project.Project, plan *calc.Plan, loss Loss) money.Use {
	c, own := loss.bought(plan)
	hide := money.Leather{Cut: length.Area(c.LeatherArea), Bought: length.Area(c.ToBuy), From: own.From}
	ownPrice(&hide, p.Hide)
	u := money.Use{
		Leather: append([]money.Leather{hide}, added(p, loss)...),
		Thread:  length.Length(c.ThreadUsed),
		Unit:    p.Units,
	}
	for _, s := range p.Steps {
		if !s.Skipped {
			u.Steps = append(u.Steps, money.Step{Title: s.Title, Expected: s.Expect, Spent: s.Spent, Done: !s.Done.IsZero()})
		}
	}
	return u
}
