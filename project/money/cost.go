package money

import (
	"cmp"
	"fmt"
	"strings"
	"time"

	"chape/calc/length"
	"github.com/shopspring/decimal"
)

// Prices is what a shop pays and charges. What is not known is shown as missing.
type Prices struct {
	Currency   Currency
	Leather    Amount      // by LeatherBy
	LeatherBy  length.Area // SquareMetre or length.SquareFoot; 0: SquareMetre
	Thread     Amount      // a metre
	Sundries   Amount      // a sheath: cement, dye, wax, finish
	Hour       Amount      // at the bench
	Overhead   decimal.Decimal
	Margin     decimal.Decimal // share of the price without the minimum, 0 to below 1
	OwnMinimum Amount          // the shop asks no less; not known: none
}

// SquareMetre is what leather is priced by where nothing else is said.
const SquareMetre length.Area = 1e6

// Leather is what a sheath takes of one leather.
type Leather struct {
	Name   string      // "2 mm added parts"; "" the sheath itself
	Cut    length.Area // what becomes parts
	Bought length.Area // with what is lost between them
	From   string      // where Bought comes from: "placed, yield 68 %", "25 % for offcuts"
	Price  Amount      // of this leather; not known: the shop's
	By     length.Area // what Price is by; 0: SquareMetre
}

// Item is hardware and whatever else is counted.
type Item struct {
	Name  string
	Count int
	Each  Amount
}

// Step is a step's minutes at the bench.
type Step struct {
	Title    string
	Expected time.Duration
	Spent    time.Duration // so far
	Done     bool
}

// Use is what a sheath takes.
type Use struct {
	Leather []Leather
	Thread  length.Length // waste and tails included
	Items   []Item
	Steps   []Step
	Spent   bool        // reckon with the minutes spent, not with those expected
	Unit    length.Unit // what leather and thread are shown in
}

// Kind is what a line is about.
type Kind uint8

// The kinds of lines, in their order.
const (
	LeatherLine Kind = iota
	ThreadLine
	ItemLine
	SundriesLine
	WorkLine
	OverheadLine
	MarginLine
	MinimumLine
	AgreedLine // what was agreed on, less what was reckoned; may be below 0
)

// Line is one line of what a sheath costs.
type Line struct {
	Kind   Kind
	Name   string
	From   string // what it came from: "0.1830 m² bought at 90.00 €, 25 % for offcuts"
	Amount Amount // rounded
}

// Bill is lines and their sum.
type Bill struct {
	Currency Currency
	Lines    []Line
}

// Total sums the lines; atLeast tells that some price is missing, so that it is that
// much at least.
func (b Bill) Total() (sum decimal.Decimal, atLeast bool) {
	for _, l := range b.Lines {
		sum = sum.Add(l.Amount.value)
		atLeast = atLeast || !l.Amount.known
	}
	return sum, atLeast
}

// Say is the sum in words: "at least 148.20 €".
func (b Bill) Say() string {
	sum, atLeast := b.Total()
	if atLeast {
		return "at least " + b.Currency.Format(sum)
	}
	return b.Currency.Format(sum)
}

// Cost reckons materials and work, without overhead and margin.
func Cost(u Use, p Prices) Bill {
	b := Bill{Currency: p.Currency}
	for _, l := range u.Leather {
		b.add(leatherLine(l, p, u.Unit))
	}
	if u.Thread > 0 {
		b.add(threadLine(u, p))
	}
	for _, i := range u.Items {
		if i.Count > 0 {
			b.add(times(ItemLine, i.Name, decimal.NewFromInt(int64(i.Count)), "", i.Each, p.Currency))
		}
	}
	b.add(Line{SundriesLine, "cement, dye, wax", "a sheath", p.Sundries})
	b.add(workLine(u, p))
	return b
}

// add rounds a line and takes it in.
func (b *Bill) add(l Line) {
	if l.Amount.known {
		l.Amount.value = b.Currency.Round(l.Amount.value)
	}
	b.Lines = append(b.Lines, l)
}

// times is a line of so many of something at a price.
func times(kind Kind, name string, n decimal.Decimal, unit string, each Amount, c Currency) Line {
	if unit != "" {
		unit = " " + unit
	}
	from := n.String() + unit
	if !each.known {
		return Line{kind, name, from, Amount{}}
	}
	return Line{kind, name, from + " at " + c.price(each), Of(n.Mul(each.value))}
}

// price shows a price as it was given, with two decimals at least where the unit
// has them: a price of 0.035 a metre is not 0.04.
func (c Currency) price(a Amount) string {
	s := a.value.String()
	_, decimals, _ := strings.Cut(s, ".")
	if least := max(0, -c.unit().Exponent()); len(decimals) < int(least) {
		s = a.value.StringFixed(least)
	}
	if c.Sign != "" {
		s += " " + c.Sign
	}
	return s
}

// metres are taken to the millimetre, square metres to the square centimetre: what is
// shown is what is reckoned with.
func metres(l length.Length) decimal.Decimal {
	return decimal.NewFromFloat(l.MM()).Div(decimal.New(1, 3)).Round(3)
}

// threadLine is priced by the metre; in inches it is shown in feet.
func threadLine(u Use, p Prices) Line {
	line := times(ThreadLine, "thread", metres(u.Thread), "m", p.Thread, p.Currency)
	if u.Unit == length.Inches {
		line.From = p.Currency.also(fmt.Sprintf("%.1f ft", u.Thread.In()/12), p.Thread, "a metre", foot, "ft")
	}
	return line
}

// foot is an international foot in metres, exactly.
var foot = decimal.RequireFromString("0.3048")

// also is a quantity shown in another unit than it is priced by, with the price by that unit,
// share of the other, to a thousandth: for the eye alone, nothing is reckoned with it.
func (c Currency) also(shown string, price Amount, by string, share decimal.Decimal, unit string) string {
	if !price.known {
		return shown
	}
	return shown + " at " + c.price(price) + " " + by + " (" + c.price(Of(price.value.Mul(share).Round(3))) + " a " + unit + ")"
}

func leatherLine(l Leather, p Prices, u length.Unit) Line {
	price, by := p.Leather, p.LeatherBy
	if l.Price.known {
		price, by = l.Price, l.By
	}
	unit := "m²"
	if by == 0 {
		by = SquareMetre
	}
	if by == length.SquareFoot {
		unit = "ft²"
	}
	name := cmp.Or(l.Name, "leather")
	n := decimal.NewFromFloat(float64(l.Bought)).DivRound(decimal.NewFromFloat(float64(by)), 4)
	line := times(LeatherLine, name, n, unit, price, p.Currency)
	if u == length.Inches && by == SquareMetre {
		line.From = p.Currency.also(feet(l.Bought), price, "a square metre", foot.Mul(foot), "ft²")
	}
	if l.From != "" {
		line.From += ", " + l.From
	}
	return line
}

// feet are square feet, small ones to a thousandth: they are read beside the price of one.
func feet(a length.Area) string {
	n := float64(a / length.SquareFoot)
	if n < 1 {
		return fmt.Sprintf("%.3f ft²", n)
	}
	return fmt.Sprintf("%.2f ft²", n)
}

// workLine is the minutes of all steps at the hour's price, by the minute.
func workLine(u Use, p Prices) Line {
	h := Hours(u.Steps)
	minutes, how := h.Expected, "expected"
	if u.Spent {
		minutes, how = h.Spent, "spent"
	}
	n := decimal.NewFromInt(int64(minutes.Round(time.Minute) / time.Minute))
	from := fmt.Sprintf("%s %s in %d steps", Minutes(minutes), how, len(u.Steps))
	if !p.Hour.known {
		return Line{WorkLine, "work", from, Amount{}}
	}
	return Line{WorkLine, "work", from + " at " + p.Currency.price(p.Hour) + " an hour", Of(n.Mul(p.Hour.value).DivRound(decimal.NewFromInt(60), 30))}
}

// Minutes says them as "5 h 20 min".
func Minutes(d time.Duration) string {
	m := int(d.Round(time.Minute) / time.Minute)
	if m < 60 {
		return fmt.Sprintf("%d min", m)
	}
	return fmt.Sprintf("%d h %d min", m/60, m%60)
}

// Price is the cost with overhead, margin and, where that comes to less, what is
// missing to the shop's own minimum.
func Price(u Use, p Prices) Bill {
	b := Cost(u, p)
	hundred := decimal.NewFromInt(100)
	sum, _ := b.Total()
	if p.Overhead.IsPositive() {
		b.add(Line{OverheadLine, "overhead", p.Overhead.Mul(hundred).String() + " % of the cost expected", Of(sum.Mul(p.Overhead))})
	}
	sum, _ = b.Total()
	one := decimal.NewFromInt(1)
	if p.Margin.IsPositive() && p.Margin.LessThan(one) {
		b.add(Line{MarginLine, "margin", p.Margin.Mul(hundred).String() + " % of the price", Of(sum.Mul(p.Margin).DivRound(one.Sub(p.Margin), 30))})
	}
	sum, _ = b.Total()
	if least := p.Currency.Round(p.OwnMinimum.value); p.OwnMinimum.known && sum.LessThan(least) {
		b.add(Line{MinimumLine, "up to the own minimum", "nothing leaves the shop below " + p.Currency.Format(least), Of(least.Sub(sum))})
	}
	return b
}
