package costpage

import (
	"chape/ui/act"
	"chape/ui/part"
)

// Keys that the page names in its text.
const (
	quoteKey  = "m"
	acceptKey = "a"
	learnKey  = "l"
	hoursKey  = "v"
	printKey  = "P"
	untilKey  = "h"
	weekKey   = "t"
	dropKey   = "x"
)

// keys are those of the page while nothing is being typed. None is a digit or a sign.
func (m *Model) keys() part.Keys {
	roll := func(by func() int) func() []act.Msg { return part.Quiet(func() { m.roll(by()) }) }
	move := func(by int) func() []act.Msg { return part.Quiet(func() { m.move(by) }) }
	return part.Keys{
		part.Key(quoteKey, "make a quote of what it comes to today", m.askQuote, quoteKey).Foot("new quote"),
		part.Key("Enter", "the price of the line in hand, kept in your settings", m.askPrice, "enter").Foot("price"),
		part.Key(acceptKey, "the day the customer accepted the quote", m.ofQuote(m.askAccepted), acceptKey).Foot("accepted"),
		part.Key(printKey, "the quote or order on paper, for the customer", m.ofQuote(m.print), printKey).Foot("order sheet"),
		part.Key("Esc", "back", leave, "esc").Foot("back"),
		part.Key(hoursKey, "the price, or the minutes, where one fits", part.Quiet(m.turn), hoursKey).Foot("minutes"),
		part.Key(learnKey, "expect the minutes that finished sheaths took", m.askLearn, learnKey).Late("learn"),
		part.Key(untilKey, "until when the quote holds", m.ofQuote(m.askUntil), untilKey).Late("holds until"),
		part.Key(weekKey, "your hours at the bench, kept in your settings", m.askWeek, weekKey).Late("hours"),
		part.Key("]", "next quote", part.Quiet(func() { m.choose(1) }), "]"),
		part.Key("[", "quote before", part.Quiet(func() { m.choose(-1) }), "["),
		part.Key(dropKey, "take the quote out", m.ofQuote(m.askRemove), dropKey),
		part.Key("↑", "line of the price, or text, up", move(-1), "up"),
		part.Key("↓", "line of the price, or text, down", move(1), "down"),
		part.Key("PgUp", "a page up", roll(func() int { return -m.h }), "pgup"),
		part.Key("PgDn", "a page down", roll(func() int { return m.h / 2 }), "pgdown"),
	}
}

func leave() []act.Msg { return []act.Msg{act.Leave{}} }

// ofQuote says where there is no quote.
func (m *Model) ofQuote(do func() []act.Msg) func() []act.Msg {
	return func() []act.Msg {
		if len(m.snap.Project.Quotes) == 0 {
			return []act.Msg{act.Say{Text: "no quote yet: " + quoteKey + " makes one"}}
		}
		out := do()
		m.toQuote() // nothing is done to one that is out of sight; what is asked takes room too
		return out
	}
}

func (m *Model) turn() { m.hours, m.top = !m.hours, 0 }

func (m *Model) choose(by int) {
	m.list.Move(by)
	m.toQuote()
}

func (m *Model) print() []act.Msg {
	_, i, _ := m.quote()
	return []act.Msg{act.PrintOrder{Quote: i}}
}

// Keys implements act.Pane.
func (m *Model) Keys() []act.Section {
	ask := part.AskKeys()
	if m.entry != nil && m.entry.Plain {
		ask = part.ConfirmKeys()
	}
	ask.Now = m.entry != nil
	return []act.Section{m.keys().Section("Cost and quotes", m.entry == nil), ask}
}
