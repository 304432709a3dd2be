package costpage

import (
	"errors"
	"fmt"
	"strings"
	"time"

	"github.com/shopspring/decimal"

	"chape/project"
	"chape/project/clock"
	"chape/project/money"
	"chape/project/plain"
	"chape/project/shop"
	"chape/ui/act"
	"chape/ui/part"
)

// entry is what is being typed or asked, at the foot of the page.
type entry struct {
	*part.Ask
	answer func(text string) ([]act.Msg, error)
	doubt  func(text string) string // asked once before it is done; nil: nothing is
}

const longestEntry = 30

// ask asks for what a change of the project needs; a Commit without Do is none.
func (m *Model) ask(a *part.Ask, do func(text string) (act.Commit, error)) []act.Msg {
	return m.askFor(a, func(text string) ([]act.Msg, error) {
		c, err := do(text)
		if err != nil || c.Do == nil {
			return nil, err
		}
		return []act.Msg{c}, nil
	})
}

func (m *Model) askFor(a *part.Ask, do func(text string) ([]act.Msg, error)) []act.Msg {
	a.SetWidth(m.w)
	m.entry = &entry{Ask: a, answer: do}
	return nil
}

// reply takes a key while there is an entry.
func (m *Model) reply(p part.Press) []act.Msg {
	switch m.entry.Take(p) {
	case part.Dropped:
		m.entry = nil
	case part.Kept:
		out, err := m.entry.answer(m.entry.Text())
		if err != nil {
			m.entry.Refuse(err, p)
			return nil
		}
		if m.entry.doubt != nil {
			if why := m.entry.doubt(m.entry.Text()); why != "" && !m.entry.Doubt(why, p) {
				return nil
			}
		}
		m.entry = nil
		return out
	}
	return nil
}

// askQuote asks for the price to quote: what was reckoned, unless it is set by hand.
func (m *Model) askQuote() []act.Msg {
	if m.snap.Plan == nil || m.snap.Stale {
		return []act.Msg{act.Say{Text: "nothing to quote: correct the numbers first", Warn: true}}
	}
	b := m.reckon.Price
	sum, atLeast := b.Total()
	label, text := "Quote this price, or set it by hand", b.Currency.Amount(sum)
	if atLeast {
		label, text = "Prices are missing: the price to quote is yours to set", ""
	}
	a := part.NewAsk(label, text, longestEntry)
	a.Fresh = text != ""
	out := m.ask(a, m.addQuote)
	m.entry.doubt = func(text string) string { return farPrice(text, b) }
	return out
}

// far is how many times the price reckoned, or which part of it, is asked about: the point
// may be in the wrong place.
const far = 5

// farPrice asks about a quote of nothing, or one far from what was reckoned.
func farPrice(text string, b money.Bill) string {
	price, err := amountOf(text)
	if err != nil || !price.Known() {
		return ""
	}
	typed, keeps := price.Decimal(), ": Enter again quotes it, Esc leaves it"
	sum, atLeast := b.Total()
	times := decimal.NewFromInt(far)
	switch {
	case typed.IsZero() && !sum.IsZero():
		return "for nothing, where " + b.Say() + " is reckoned" + keeps
	case sum.IsZero():
		return ""
	case !typed.LessThan(sum.Mul(times)) && !atLeast:
		return b.Currency.Format(typed) + " where " + b.Say() + " is reckoned: is the point in its place?" + strings.TrimPrefix(keeps, ":")
	case !typed.Mul(times).GreaterThan(sum):
		return b.Currency.Format(typed) + " where " + b.Say() + " is reckoned: is the point missing, or a digit?" + strings.TrimPrefix(keeps, ":")
	}
	return ""
}

// addQuote is the answer that makes the quote.
func (m *Model) addQuote(text string) (act.Commit, error) {
	price, err := amountOf(text)
	if err != nil {
		return act.Commit{}, err
	}
	if !price.Known() {
		return act.Commit{}, errors.New("no price: type one, as in 12.50")
	}
	q, err := money.Freeze(m.reckon.Price.Known().Agree(price.Decimal()), m.o.Clock())
	if err != nil {
		return act.Commit{}, err
	}
	made := money.Keep(q, shop.What(m.snap.Project), m.snap.Project.Customer.Due)
	made.Hold(m.snap.Shop.Holds)
	m.newest = true
	return act.Commit{Label: "quote " + q.Bill.Say(), Do: func(p *project.Project) error {
		p.Quotes = append(p.Clone().Quotes, made)
		return p.Validate()
	}}, nil
}

// errOther is said where the quote in question has changed meanwhile.
var errOther = errors.New("the quote was changed meanwhile: look at it and try again")

// change is a commit on the chosen quote.
func (m *Model) change(label string, do func(p *project.Project, i int) error) act.Commit {
	was, i, _ := m.quote()
	return act.Commit{Label: label, Do: func(p *project.Project) error {
		if i >= len(p.Quotes) || p.Quotes[i] != was {
			return errOther
		}
		*p = p.Clone()
		return do(p, i)
	}}
}

func field(i int, key string) project.Field {
	for _, f := range project.QuoteFields(i) {
		if f.Key == key {
			return f
		}
	}
	panic("no field " + key)
}

// askDay asks for a day; the first letter takes the place of the one that stands.
func (m *Model) askDay(label, text string, do func(text string) (act.Commit, error)) []act.Msg {
	a := part.NewAsk(label, text, longestEntry)
	a.Fresh = text != ""
	return m.ask(a, func(text string) (act.Commit, error) {
		c, err := do(text)
		var own project.Problem
		if errors.As(err, &own) { // in words, without the file's key
			err = errors.New(own.Typed(text))
		}
		return c, err
	})
}

// askAccepted asks for the day; none takes the acceptance back. What is promised with the
// order is the day that the project now says.
func (m *Model) askAccepted() []act.Msg {
	q, i, _ := m.quote()
	text := q.Accepted.Format("2006-01-02")
	if q.Accepted.IsZero() {
		text = m.o.Clock().Format("2006-01-02")
	}
	f := field(i, "quote.accepted")
	read := func(text string) (any, error) { return f.Parse(clock.PastDay(text, m.o.Clock()), m.snap.Project) }
	out := m.askDay("Accepted on; empty: not accepted", text, func(text string) (act.Commit, error) {
		v, err := read(text)
		if err != nil {
			return act.Commit{}, err
		}
		p := m.snap.Project.Clone()
		if err := f.Set(&p, v); err != nil {
			return act.Commit{}, err
		}
		label := "accepted " + p.Quotes[i].Accepted.Format(time.DateOnly)
		if p.Quotes[i].Accepted.IsZero() {
			label = "not accepted"
		}
		return m.change(label, func(p *project.Project, i int) error {
			if !v.(time.Time).IsZero() {
				p.Quotes[i].Due = p.Customer.Due
			}
			return f.At(i).Set(p, v)
		}), nil
	})
	m.entry.doubt = func(text string) string {
		v, err := read(text)
		day, ok := v.(time.Time)
		if err != nil || !ok || day.IsZero() {
			return ""
		}
		return m.lateYes(q, day)
	}
	return out
}

// lateYes is what a customer's late yes is asked about: the day promised, and how long the
// quote held. A quote that holds no more can be accepted all the same.
func (m *Model) lateYes(q project.Quote, day time.Time) string {
	due := m.snap.Project.Customer.Due
	promised := "that is after the day it is promised for, " + m.day(due)
	held := "the quote held until " + m.day(q.Until)
	late, over := !due.IsZero() && day.After(due), q.Over(day)
	const other = ": Esc, then give another day (due, on the Knife pane); or Enter again"
	switch {
	case late && over:
		return promised + ", and " + held + other
	case late:
		return promised + other
	case over:
		price := ""
		if b, err := q.Money(); err == nil {
			price = ", " + b.Bill.Say()
		}
		return held + ": Enter again takes it at the old price" + price + "; Esc, then " + quoteKey + " makes one of today"
	}
	return ""
}

// askUntil asks for the last day on which the quote holds; none sets no end.
func (m *Model) askUntil() []act.Msg {
	q, i, _ := m.quote()
	text := ""
	if !q.Until.IsZero() {
		text = q.Until.Format(time.DateOnly)
	}
	f := field(i, "quote.until")
	return m.askDay("It holds until; empty: no end is set", text, func(text string) (act.Commit, error) {
		v, err := f.Parse(clock.Day(text, m.o.Clock()), m.snap.Project)
		if err != nil {
			return act.Commit{}, err
		}
		p := m.snap.Project.Clone()
		if err := f.Set(&p, v); err != nil {
			return act.Commit{}, err
		}
		label := "the quote holds until " + m.day(p.Quotes[i].Until)
		if p.Quotes[i].Until.IsZero() {
			label = "the quote holds without an end"
		}
		return m.change(label, func(p *project.Project, i int) error { return f.At(i).Set(p, v) }), nil
	})
}

func (m *Model) askRemove() []act.Msg {
	q, _, _ := m.quote()
	c := m.change("quote taken out", func(p *project.Project, i int) error {
		p.Quotes = append(p.Quotes[:i], p.Quotes[i+1:]...)
		return nil
	})
	return m.ask(part.Confirm("Take the quote of "+q.Date.Format("2 Jan 2006")+" out? Enter does, u brings it back."),
		func(string) (act.Commit, error) { return c, nil })
}

// askLearn offers the minutes that finished sheaths took.
func (m *Model) askLearn() []act.Msg {
	lessons, list := m.lessons, m.snap.Project.Steps
	if len(lessons) == 0 {
		return []act.Msg{act.Say{Text: "nothing to learn: no finished sheath of the shelf counted other minutes for these steps"}}
	}
	label := fmt.Sprintf("expected minutes of %s, as finished sheaths took", plain.Many(len(lessons), "step"))
	return m.ask(part.Confirm(fmt.Sprintf("For %s, expect the minutes that finished sheaths took (the column others)? Enter does it.", plain.Many(len(lessons), "step"))),
		func(string) (act.Commit, error) {
			return act.Commit{Label: label, Do: func(p *project.Project) error {
				*p = p.Clone()
				for _, l := range lessons {
					if l.Step < len(p.Steps) && p.Steps[l.Step].Title == list[l.Step].Title {
						p.Steps[l.Step].Expect = l.To
					}
				}
				return p.Validate()
			}}, nil
		})
}
