package costpage

import (
	"fmt"
	"strings"
	"time"

	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"

	"chape/project"
	"chape/project/money"
	"chape/project/plain"
	"chape/project/shop"
	"chape/ui/layout"
	"chape/ui/term"
)

// verdict is the price of today, and what was quoted.
func (m *Model) verdict() string {
	if why := m.snap.Shop.Broken; why != "" {
		return "! no price is known, and no day: " + term.Plain(why)
	}
	if m.snap.Plan == nil {
		return "no price without a plan: correct the numbers first"
	}
	text := "it comes to " + m.reckon.Price.Say() + " today"
	if sum, atLeast := m.reckon.Price.Total(); atLeast && sum.IsZero() {
		text = "no price is known yet"
	}
	i := m.snap.Project.Standing()
	if i < 0 {
		return text
	}
	q, err := m.snap.Project.Quotes[i].Money()
	if err != nil {
		return text
	}
	text += "; quoted " + q.Bill.Say() + " on " + m.day(q.Date)
	kept := m.snap.Project.Quotes[i]
	switch {
	case !q.Accepted.IsZero():
		text += ", accepted on " + m.day(q.Accepted)
	case kept.Over(m.snap.Now):
		text += ", which held until " + m.day(kept.Until)
	case !kept.Until.IsZero():
		text += ", holds until " + m.day(kept.Until)
	}
	return text
}

// day is "25 Oct", with its year where that is another.
func (m *Model) day(t time.Time) string {
	if t.Year() != m.snap.Now.Year() {
		return t.Format("2 Jan 2006")
	}
	return t.Format("2 Jan")
}

// money is the price with where each line came from, and the quotes.
func (m *Model) money(w int) []string {
	out, _, _ := m.moneyAt(w)
	return out
}

// moneyAt is money with the number of the line at which each line of the bill begins, and
// of that of the chosen quote.
func (m *Model) moneyAt(w int) (out []string, at []int, quote int) {
	st := m.o.Styles
	if m.snap.Plan == nil {
		return nil, nil, 0
	}
	out = []string{st.Heading.Render("What it comes to today")}
	b := m.reckon.Price
	for i, l := range b.Lines {
		if l.Kind >= money.OverheadLine && (i == 0 || b.Lines[i-1].Kind < money.OverheadLine) {
			out = append(out, m.row(sumRow("cost expected", m.reckon.Cost), w, st.Strong)...)
		}
		at = append(at, len(out))
		lead := "  "
		if i == m.line {
			lead = inHand
		}
		out = append(out, m.lineRow(lead, l, b.Currency, w)...)
	}
	out = append(out, m.row(sumRow("price", b), w, st.Strong)...)
	if _, atLeast := b.Total(); atLeast {
		out = append(out, layout.Paragraph("* prices are missing: Enter on a line gives its price; all stand in your settings, [price]", w, 3, st.Note)...)
	}
	taken, by := sumRow("cost so far", m.reckon.Taken), ", all materials, minutes spent"
	if !m.reckon.Use.Spends() {
		by = ", all materials; no minutes spent yet"
	}
	taken[2] = strings.TrimPrefix(taken[2]+by, ", ")
	out = append(out, m.row(taken, w, st.Text)...)
	quotes, chosen := m.quotes(w)
	return append(out, quotes...), at, len(out) + chosen
}

func sumRow(name string, b money.Bill) [3]string {
	sum, atLeast := b.Total()
	from := ""
	if atLeast {
		from = "at least"
	}
	return [3]string{name, b.Currency.Format(sum), from}
}

// lineRow is a line of a bill; lead marks those that can be in hand.
func (m *Model) lineRow(lead string, l money.Line, c money.Currency, w int) []string {
	style := m.o.Styles.Text
	amount := c.Show(l.Amount)
	if !l.Amount.Known() {
		style, amount = m.o.Styles.Note, "* missing"
	}
	if lead == inHand {
		style = m.o.Styles.Chosen
	}
	return m.row([3]string{lead + l.Name, amount, l.From}, w, style)
}

// The line of the price that Enter is for, and the quote that is chosen.
const inHand, chosenQuote = "> ", "=> "

// The widths of name and amount.
const nameW, amountW = 22, 13

// row is a name, an amount and what it came from, on as many lines as that takes.
func (m *Model) row(cells [3]string, w int, style lipgloss.Style) []string {
	amount := cells[1]
	if pad := amountW - ansi.StringWidth(amount); pad > 0 {
		amount = strings.Repeat(" ", pad) + amount
	}
	first := layout.Line(term.Plain(cells[0]), nameW) + " " + term.Plain(amount)
	room := w - nameW - amountW - 3
	if room < 12 {
		return []string{style.Render(layout.Line(first, w))}
	}
	var out []string
	for i, text := range layout.Wrap(term.Plain(cells[2]), room) {
		lead := strings.Repeat(" ", nameW+amountW+1)
		if i == 0 {
			lead = first
		}
		out = append(out, style.Render(layout.Line(strings.TrimRight(lead+"  "+text, " "), w)))
	}
	return out
}

// quotes are those made, and the chosen one as it was made; at is the line of the chosen one.
func (m *Model) quotes(w int) (out []string, at int) {
	st := m.o.Styles
	all := m.snap.Project.Quotes
	if len(all) == 0 {
		out = []string{"", st.Heading.Render("Quotes")}
		return append(out, layout.Paragraph(quoteKey+" makes one of what it comes to today. It stays as it is, whatever prices do.", w, 3, st.Text)...), 0
	}
	out = []string{"", st.Heading.Render("Quotes; " + chosenQuote + "is the one that " + strings.Join([]string{acceptKey, untilKey, printKey}, ", ") + " and " + dropKey + " are for")}
	_, chosen, _ := m.quote()
	for i, q := range all {
		lead, style := strings.Repeat(" ", len(chosenQuote)), st.Text
		if i == chosen {
			lead, style, at = chosenQuote, st.Chosen, len(out)
		}
		row := m.quoteRow(q)
		row[0] = lead + row[0]
		out = append(out, m.row(row, w, style)...)
	}
	q, err := all[chosen].Money()
	if err != nil {
		return out, at
	}
	out = append(out, "", st.Heading.Render("As quoted on "+m.day(q.Date)))
	for _, l := range q.Bill.Lines {
		out = append(out, m.lineRow("", l, q.Bill.Currency, w)...)
	}
	out = append(out, m.row(sumRow("price", q.Bill), w, st.Strong)...)
	if m.reckon.Use.Spends() && q.Bill.Currency.Sign == m.reckon.Taken.Currency.Sign {
		leaves := [3]string{"leaves", q.Bill.Currency.Format(q.Against(m.reckon.Taken)), "after the cost so far, " + m.reckon.Taken.Say()}
		out = append(out, m.row(leaves, w, st.Text)...)
	}
	return out, at
}

// quoteRow is a quote in a row: its day, its price, and what became of it.
func (m *Model) quoteRow(q project.Quote) [3]string {
	total := ""
	if b, err := q.Money(); err == nil {
		total = b.Bill.Say()
	}
	var words []string
	if !q.Due.IsZero() {
		words = append(words, "promised "+m.day(q.Due))
	}
	switch {
	case !q.Accepted.IsZero():
		words = append(words, "accepted "+m.day(q.Accepted))
	case q.Over(m.snap.Now):
		words = append(words, "held until "+m.day(q.Until)+", not accepted: "+acceptKey)
	case !q.Until.IsZero():
		words = append(words, "holds until "+m.day(q.Until)+", not accepted yet: "+acceptKey)
	default:
		words = append(words, "not accepted yet: "+acceptKey)
	}
	return [3]string{m.day(q.Date), total, strings.Join(words, ", ")}
}

// minutes are those of each step: expected, spent, and what finished sheaths took.
func (m *Model) minutes(w int) []string {
	st := m.o.Styles
	cells := func(name, expected, spent, others string) string {
		return layout.Line(layout.Line(name, max(8, w-36))+fmt.Sprintf(" %11s %11s %11s", expected, spent, others), w)
	}
	learned := map[int]shop.Lesson{}
	for _, l := range m.lessons {
		learned[l.Step] = l
	}
	out := []string{st.Heading.Render(cells("Minutes by step", "expected", "spent", "others"))}
	for i, s := range m.snap.Project.Steps {
		if s.Skipped {
			continue
		}
		mark, others, style := "  ", "", st.Text
		if !s.Done.IsZero() {
			mark, style = "x ", st.Quiet
		}
		if l, ok := learned[i]; ok {
			others, style = fmt.Sprintf("%s of %d", minutes(l.To), l.Of), st.Note
		}
		out = append(out, style.Render(cells(mark+term.Plain(s.Title), minutes(s.Expect), minutes(s.Spent), others)))
	}
	h := money.Hours(m.reckon.Use.Steps)
	out = append(out, st.Strong.Render(cells("together", minutes(h.Expected), minutes(h.Spent), "")))
	out = append(out, layout.Paragraph("still to do: "+money.Minutes(h.Left), w, 1, st.Text)...)
	if n := len(m.lessons); n > 0 {
		out = append(out, layout.Paragraph(fmt.Sprintf("* for %s finished sheaths took other minutes (others: the median, of how many): %s takes them over", plain.Many(n, "step"), learnKey), w, 3, st.Note)...)
	}
	return out
}

// minutes shows a time at the bench; "" where there is none.
func minutes(d time.Duration) string {
	if d <= 0 {
		return ""
	}
	return money.Minutes(d)
}
