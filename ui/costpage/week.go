package costpage

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"chape/calc/calendar"
	"chape/project/shop"
	"chape/ui/act"
	"chape/ui/part"
)

// longestWeek is how many letters the hours of a week may have, as in the settings.
const longestWeek = 300

// weekMsg tells that the hours at the bench were kept in the settings, or why not.
type weekMsg struct {
	shop shop.Shop
	err  error
}

// askWeek asks for the hours at the bench.
func (m *Model) askWeek() []act.Msg {
	if m.o.KeepWeek == nil {
		return []act.Msg{act.Say{Text: "there is nowhere to keep hours", Warn: true}}
	}
	was := ""
	if week := m.snap.Shop.Week; week.Any() {
		was = week.String()
	}
	a := part.NewAsk("Your hours at the bench, for all projects, as in mon-fri 18-21, sat 9-13; nothing: not said", was, longestWeek)
	return m.askFor(a, func(text string) ([]act.Msg, error) {
		week, err := calendar.ParseWeek(text)
		if err != nil {
			return nil, err
		}
		if text = strings.TrimSpace(text); text == was {
			return nil, nil
		}
		if !week.Any() {
			text = ""
		}
		keep := m.o.KeepWeek
		return []act.Msg{act.Do(func() tea.Msg {
			s, err := keep(text)
			return weekMsg{s, err}
		})}, nil
	})
}

// weekKept has other hours hold.
func (m *Model) weekKept(msg weekMsg) []act.Msg {
	if msg.err != nil {
		return []act.Msg{act.Say{Text: "the hours are not kept: " + msg.err.Error(), Warn: true}}
	}
	said := "hours at the bench: " + msg.shop.Week.String() + "; kept in your settings"
	if !msg.shop.Week.Any() {
		said = "no hours at the bench any more; kept in your settings"
	}
	return []act.Msg{act.Priced{Shop: msg.shop}, act.Say{Text: said}}
}
