package shelfpane

import (
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chape/calc/length"
	"chape/project"
	"chape/project/steps"
)

// beginning is the question how a new project begins: with which steps, in which units.
// Enter at once is as the user has configured it.
type beginning struct {
	from  project.Project // by the user's defaults
	lists []list
	at    int
	units length.Unit
}

type list struct {
	name  string
	steps []steps.Step
}

// newBeginning offers what the configuration gives, and the lists that come with it.
func newBeginning(p project.Project) beginning {
	b := beginning{from: p, units: p.Units, lists: []list{{"Form, then sew", steps.FormThenSew(p.Parts())}, {"Sew, then form", steps.SewThenForm(p.Parts())}}}
	b.at = slices.IndexFunc(b.lists, func(l list) bool { return slices.Equal(l.steps, p.Steps) })
	if b.at < 0 {
		b.lists, b.at = append([]list{{"your own", p.Steps}}, b.lists...), 0
	}
	return b
}

func (b beginning) key(msg tea.KeyMsg, k KeyMap) beginning {
	switch {
	case msg.Paste:
	case key.Matches(msg, k.List):
		b.at = (b.at + 1) % len(b.lists)
	case key.Matches(msg, k.Units) && b.units == length.Inches:
		b.units = length.Millimetres
	case key.Matches(msg, k.Units):
		b.units = length.Inches
	}
	return b
}

// project is the new one.
func (b beginning) project() (project.Project, error) {
	p := b.from.Clone()
	p.Units, p.Steps = b.units, slices.Clone(b.lists[b.at].steps)
	return p, nil
}

// lines are the choices, the chosen ones in brackets.
func (b beginning) lines(k KeyMap) []string {
	var titles, units []string
	for i, l := range b.lists {
		titles = append(titles, picked(l.name, i == b.at))
	}
	for _, u := range []length.Unit{length.Millimetres, length.Inches} {
		units = append(units, picked(u.String(), u == b.units))
	}
	return []string{k.List.Help().Key + " steps " + strings.Join(titles, ""), k.Units.Help().Key + " units " + strings.Join(units, "")}
}

func picked(name string, chosen bool) string {
	if chosen {
		return "[" + name + "]"
	}
	return " " + name + " "
}

// askBegin asks how a project of the user's defaults begins.
func (m Model) askBegin(p project.Project) Model {
	b := newBeginning(p)
	m.question = &question{label: "How does it begin? Enter takes what is in brackets", begin: &b}
	m.scroll()
	return m
}
