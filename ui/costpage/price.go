package costpage

import (
	"errors"
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/shopspring/decimal"

	"chape/calc/length"
	"chape/project/money"
	"chape/project/shop"
	"chape/ui/act"
	"chape/ui/part"
)

// price is one of the settings that a line of the bill is reckoned with.
type price struct {
	key  string // in the settings
	name string // "thread, a metre"
	now  money.Amount
	some bool  // 0 counts as not known
	most int64 // of a share, which is typed and shown in percent, as the settings allow; 0: it is none
}

// pricedMsg tells that a price was kept in the settings, or why not.
type pricedMsg struct {
	shop shop.Shop
	said string
	err  error
}

// priceOf is what line i of today's bill is reckoned with; why says where it stands
// instead, of a line that no setting is behind.
func (m *Model) priceOf(i int) (p price, why string) {
	s, l := m.snap.Shop, m.reckon.Price.Lines[i]
	known := func(d decimal.Decimal) money.Amount { return money.Of(d.Mul(decimal.NewFromInt(100))) }
	switch l.Kind {
	case money.LeatherLine:
		if i < len(m.reckon.Use.Leather) && m.reckon.Use.Leather[i].Price.Known() {
			return price{}, "this leather has a price of its own, with the piece: R, the rack"
		}
		if s.Prices.LeatherBy == length.SquareFoot || !s.Prices.Leather.Known() && m.snap.Unit == length.Inches {
			return price{key: "price.leather_ft2", name: "leather, a square foot", now: s.Prices.Leather, some: true}, ""
		}
		return price{key: "price.leather_m2", name: "leather, a square metre", now: s.Prices.Leather, some: true}, ""
	case money.ThreadLine:
		return price{key: "price.thread", name: "thread, a metre", now: s.Prices.Thread, some: true}, ""
	case money.SundriesLine:
		return price{key: "price.sundries", name: "cement, dye and wax, a sheath", now: s.Prices.Sundries, some: true}, ""
	case money.WorkLine:
		return price{key: "price.hour", name: "an hour at the bench", now: s.Prices.Hour, some: true}, ""
	case money.OverheadLine:
		return price{key: "price.overhead", name: "overhead, % of the cost expected", now: known(s.Prices.Overhead), most: 500}, ""
	case money.MarginLine:
		return price{key: "price.margin", name: "margin, % of the price", now: known(s.Prices.Margin), most: 90}, ""
	case money.MinimumLine:
		return price{key: "price.minimum", name: "the least you ask", now: s.Prices.OwnMinimum}, ""
	case money.ItemLine:
		switch l.Name {
		case "snap":
			return price{key: "price.snap", name: "a snap", now: s.Snap}, ""
		case "rivet":
			return price{key: "price.rivet", name: "a rivet", now: s.Rivet}, ""
		}
	}
	return price{}, "the price of " + l.Name + " stands in the project, not in your settings"
}

// askPrice asks for the price of the line in hand.
func (m *Model) askPrice() []act.Msg {
	if m.snap.Plan == nil || m.line >= len(m.reckon.Price.Lines) {
		return nil
	}
	p, why := m.priceOf(m.line)
	switch {
	case why != "":
		return []act.Msg{act.Say{Text: why}}
	case m.o.Keep == nil:
		return []act.Msg{act.Say{Text: "there is nowhere to keep a price", Warn: true}}
	}
	label := "Your price for " + p.name
	if p.most > 0 {
		label = strings.ToUpper(p.name[:1]) + p.name[1:]
	} else if sign := m.snap.Shop.Prices.Currency.Sign; sign != "" {
		label += ", in " + sign
	}
	text := ""
	if p.now.Known() {
		text = p.now.Decimal().String()
	}
	a := part.NewAsk(label+", for all projects; nothing: not known", text, longestEntry)
	a.Fresh = text != ""
	return m.askFor(a, func(text string) ([]act.Msg, error) { return m.setPrice(p, text) })
}

// setPrice is the answer that puts a price into the settings.
func (m *Model) setPrice(p price, text string) ([]act.Msg, error) {
	if p.most > 0 {
		text = strings.TrimSuffix(strings.TrimSpace(text), "%")
	}
	a, err := amountOf(text)
	if err != nil {
		return nil, err
	}
	if p.some && a.Known() && a.Decimal().IsZero() {
		return nil, errors.New("0 counts as not known: leave it empty, or type a small one, as in 0.01")
	}
	if p.most > 0 && a.Decimal().GreaterThan(decimal.NewFromInt(p.most)) {
		return nil, fmt.Errorf("%s %% is too much to reckon with: give at most %d", a.Decimal(), p.most)
	}
	if a.Known() == p.now.Known() && a.Decimal().Equal(p.now.Decimal()) {
		return nil, nil
	}
	said := fmt.Sprintf("%s: %s, before it was %s; kept in your settings", p.name, sayPrice(a), sayPrice(p.now))
	if p.most > 0 {
		a = money.Of(a.Decimal().Div(decimal.NewFromInt(100)))
	}
	keep := m.o.Keep
	return []act.Msg{act.Do(func() tea.Msg {
		s, err := keep(p.key, a)
		return pricedMsg{s, said, err}
	})}, nil
}

func sayPrice(a money.Amount) string {
	if !a.Known() {
		return "not known"
	}
	return a.Decimal().String()
}

// amountOf reads a price as it is typed, with a comma or a point.
func amountOf(text string) (money.Amount, error) {
	a, err := money.Parse(strings.Replace(strings.TrimSpace(text), ",", ".", 1))
	if err != nil {
		return a, fmt.Errorf("%q is no price: type one, as in 12.50", text)
	}
	return a, nil
}

// priced has a new price hold, and goes on to the next line whose price is missing.
func (m *Model) priced(msg pricedMsg) []act.Msg {
	if msg.err != nil {
		return []act.Msg{act.Say{Text: "the price is not kept: " + msg.err.Error(), Warn: true}}
	}
	for i, l := range m.reckon.Price.Lines {
		if i > m.line && !l.Amount.Known() {
			m.line = i
			break
		}
	}
	return []act.Msg{act.Priced{Shop: msg.shop}, act.Say{Text: msg.said}}
}

// toQuote brings the chosen quote into sight.
func (m *Model) toQuote() {
	if len(m.snap.Project.Quotes) == 0 || m.snap.Plan == nil {
		return
	}
	if m.w < wide {
		m.hours = false
	}
	_, _, at := m.moneyAt(m.columns()[0].w)
	room := m.h - len(m.head()) - len(m.foot())
	m.top = max(min(m.top, at-1), at-room+3) // its heading above it, two lines behind it
	m.roll(0)
}

// move goes to another line of today's bill or, at its ends and where none of it is in
// sight, on in the text.
func (m *Model) move(by int) {
	c := m.columns()[0]
	_, at, _ := m.moneyAt(c.w)
	to := m.line + by
	if m.hours && m.w < wide || to < 0 || to >= len(at) || at[m.line] < m.top {
		m.roll(by)
		return
	}
	m.line = to
	room := m.h - len(m.head()) - len(m.foot())
	m.top = min(m.top, at[to])
	if to == 0 {
		m.top = 0
	}
	m.top = max(m.top, at[to]-room+3) // the line behind it, and how many follow
	m.roll(0)
}
