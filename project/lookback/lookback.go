package lookback

import (
	"path/filepath"
	"slices"
	"strings"
	"time"

	"github.com/shopspring/decimal"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/money"
	"chape/project/shelf"
	"chape/project/shop"
	"chape/project/steps"
)

// Sheath is what one project of the shelf took.
type Sheath struct {
	File     string // its name in the shelf's folder
	Title    string
	Customer string
	Due      time.Time // UTC midnight; zero: none
	Finished bool
	PutAway  bool
	Steps    []money.Step // those not skipped
	Hours    money.Sum
	Open     steps.Open
	Err      string // why it can't be read or planned; what follows is 0 then

	Leather length.Area // what becomes parts
	Bought  length.Area // with what is lost between them
	Thread  length.Length
	Cost    money.Bill // by the minutes spent, at today's prices
	Price   money.Bill // what it comes to by those expected
	Quote   *money.Quote
	Until   time.Time // the last day on which the quote holds; zero: no end is set
}

// Yield is the share of the leather bought that became parts; 0 where none is known.
func (s Sheath) Yield() float64 {
	if s.Bought <= 0 {
		return 0
	}
	return float64(s.Leather / s.Bought)
}

// Left is what the quote leaves when the sheath has cost so much; ok is false before it is
// finished, without a plan, without a quote in the currency of today, and where a price is
// missing.
func (s Sheath) Left() (left decimal.Decimal, ok bool) {
	if !s.Finished || s.Err != "" || s.Quote == nil || s.Quote.Bill.Currency.Sign != s.Cost.Currency.Sign {
		return decimal.Zero, false
	}
	_, atLeast := s.Cost.Total()
	return s.Quote.Against(s.Cost), !atLeast
}

// Of looks at one project.
func Of(p project.Project, sh shop.Shop) Sheath {
	s := Sheath{Title: p.Title, Customer: p.Customer.Name, Due: p.Customer.Due, Finished: shop.Finished(p.Steps), Open: steps.StillOpen(p.Steps)}
	if i := p.Standing(); i >= 0 {
		if q, err := p.Quotes[i].Money(); err == nil {
			s.Quote, s.Until = &q, p.Quotes[i].Until
		}
	}
	for _, st := range p.Steps {
		if !st.Skipped {
			s.Steps = append(s.Steps, money.Step{Title: st.Title, Expected: st.Expect, Spent: st.Spent, Done: !st.Done.IsZero()})
		}
	}
	s.Hours = money.Hours(s.Steps)
	// Whatever the checks say, leather and thread are the same.
	plan, err := calc.Compute(p.Input(calc.DefaultLimits()))
	if err != nil {
		s.Err = "no plan: " + err.Error()
		return s
	}
	r := sh.Reckon(p, plan)
	for _, l := range r.Use.Leather {
		s.Leather += l.Cut
		s.Bought += l.Bought
	}
	s.Thread, s.Cost, s.Price = r.Use.Thread, r.Taken, r.Price
	return s
}

// Look is one look over a shelf. It belongs to one goroutine at a time.
type Look struct {
	shelf *shelf.Shelf
	shop  shop.Shop
	todo  []shelf.Entry
}

// Over begins a look: nothing is read yet but the names. The error is one line.
func Over(s *shelf.Shelf, sh shop.Shop) (*Look, error) {
	scan, err := s.Look()
	if err != nil {
		return nil, err
	}
	entries := scan.Entries()
	slices.SortFunc(entries, func(a, b shelf.Entry) int { return strings.Compare(a.Path, b.Path) })
	return &Look{s, sh, entries}, nil
}

// Left is how many sheaths Next has still to read.
func (l *Look) Left() int { return len(l.todo) }

// Next reads up to n more sheaths, by the names of their files.
func (l *Look) Next(n int) []Sheath {
	n = min(n, len(l.todo))
	var out []Sheath
	for _, e := range l.todo[:n] {
		s := Sheath{Title: e.Title}
		p, err := l.shelf.Load(e.Path)
		if err == nil {
			s = Of(p, l.shop)
		} else {
			s.Err = err.Error()
		}
		s.File, s.PutAway = filepath.Base(e.Path), e.PutAway
		if s.PutAway {
			s.File = filepath.Join(shelf.Away, s.File)
		}
		out = append(out, s)
	}
	l.todo = l.todo[n:]
	return out
}
