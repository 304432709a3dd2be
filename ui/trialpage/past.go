package trialpage

import (
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"chape/calc/compare"
	"chape/calc/length"
	"chape/project"
	"chape/project/carry"
	"chape/project/plain"
	"chape/ui/act"
)

// pastMsg brings the finished sheaths of the shelf, of leather of that thickness.
type pastMsg struct {
	past    []compare.Tried
	leather length.Length
	err     error
}

// askPast has the shelf looked through for finished sheaths of the same leather.
func (m *Model) askPast() []act.Msg {
	if m.shelf == nil {
		return []act.Msg{act.Say{Text: "there is no shelf to learn from"}}
	}
	s, leather := m.shelf, m.snap.Project.Sheath.Leather
	return []act.Msg{act.Do(func() tea.Msg {
		past, err := s.Experience(leather, "")
		return pastMsg{past, leather, err}
	})}
}

// offerPast puts what they tend to need among the offers, in place of what was offered so
// before.
func (m *Model) offerPast(msg pastMsg) []act.Msg {
	of := msg.leather.Format(m.snap.Unit, length.Calliper)
	switch {
	case msg.err != nil:
		return []act.Msg{act.Say{Text: msg.err.Error(), Warn: true}}
	case msg.leather != m.snap.Project.Sheath.Leather:
		return nil // another project by now, or another leather
	case len(msg.past) == 0:
		return []act.Msg{act.Say{Text: "no finished sheath of " + of + " leather on the shelf yet"}}
	}
	offers, err := carry.Experience(msg.past, m.snap.Project)
	switch {
	case err != nil:
		return []act.Msg{act.Say{Text: err.Error(), Warn: true}}
	case len(offers) == 0:
		text := plain.Many(len(msg.past), "finished sheath") + " of " + of + " leather"
		if len(msg.past) == 1 {
			return []act.Msg{act.Say{Text: text + " needed no correction in leather"}}
		}
		return []act.Msg{act.Say{Text: text + ": mostly no correction was needed in leather"}}
	}
	return []act.Msg{act.Commit{Label: "offer what finished sheaths needed", Do: func(p *project.Project) error {
		p.Carried = slices.DeleteFunc(p.Clone().Carried, func(c project.Carried) bool { return c.From == offers[0].From })
		p.Carried = append(p.Carried, offers...)
		return p.Validate()
	}}, act.Say{Text: "offered, not kept: ↓ goes to them"}}
}
