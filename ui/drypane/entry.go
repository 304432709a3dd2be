package drypane

import (
	"chape/ui/act"
	"chape/ui/part"
)

// entry is what is being typed or asked, at the foot of the page.
type entry struct {
	*part.Ask
	answer func(text string) (answer, error)
}

// answer is what keeping an entry does.
type answer struct {
	commit act.Commit // nothing is done where Do is nil
	doubt  string     // asked once before it is done
	last   bool       // the last row is to be chosen then
}

const longestEntry = 60

// ask begins an entry.
func (m *Model) ask(a *part.Ask, do func(text string) (answer, error)) []act.Msg {
	a.SetWidth(m.w)
	m.entry = &entry{a, do}
	return nil
}

// line is an entry of text; fresh: the first character takes its place.
func line(label, text string, fresh bool) *part.Ask {
	a := part.NewAsk(label, text, longestEntry)
	a.Fresh = fresh
	return a
}

// scale is one that a scale may type into: its own Enter counts.
func scale(label, text string, fresh bool) *part.Ask {
	a := line(label, text, fresh)
	a.Number = true
	return a
}

// reply takes a key while there is an entry.
func (m *Model) reply(p part.Press) []act.Msg {
	e := m.entry
	switch e.Take(p) {
	case part.Dropped:
		m.entry = nil
		if part.StartsNumber(p.KeyMsg) { // a scale goes on typing
			return m.command(p)
		}
	case part.Kept:
		return m.keep(p)
	}
	return nil
}

// keep does what was typed, or says why not. What is in doubt needs a second
// Enter, and that by hand.
func (m *Model) keep(p part.Press) []act.Msg {
	a, err := m.entry.answer(m.entry.Text())
	switch {
	case err != nil:
		m.entry.Refuse(err, p)
		return nil
	case a.doubt != "" && !m.entry.Doubt(a.doubt, p):
		return nil
	}
	m.entry = nil
	if a.commit.Do == nil {
		return nil
	}
	m.toLast = a.last
	return []act.Msg{a.commit}
}
