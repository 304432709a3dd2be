package shelfpane

import (
	"slices"
	"strings"

	"chape/calc/length"
	"chape/project"
	"chape/project/steps"
	"chape/ui/act"
	"chape/ui/part"
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

// beginKeys are the keys of the question.
func (m *Model) beginKeys() part.Keys {
	of := func(do func(*beginning)) func() []act.Msg {
		return part.Quiet(func() {
			if m.question != nil && m.question.begin != nil {
				do(m.question.begin)
			}
		})
	}
	return part.Keys{
		part.Key(listKey, "other steps", of((*beginning).turnList), listKey),
		part.Key(unitsKey, "other units", of((*beginning).turnUnits), unitsKey),
		m.turnLearned(),
	}
}

const listKey, unitsKey = "s", "u"

func (b *beginning) turnList() { b.at = (b.at + 1) % len(b.lists) }

func (b *beginning) turnUnits() {
	if b.units == length.Inches {
		b.units = length.Millimetres
	} else {
		b.units = length.Inches
	}
}

// project is the new one.
func (b beginning) project() (project.Project, error) {
	p := b.from.Clone()
	p.BeginIn(b.units)
	p.Steps = slices.Clone(b.lists[b.at].steps)
	return p, nil
}

// lines are the choices, the chosen ones in brackets.
func (b beginning) lines() []string {
	var titles, units []string
	for i, l := range b.lists {
		titles = append(titles, picked(l.name, i == b.at))
	}
	for _, u := range []length.Unit{length.Millimetres, length.Inches} {
		units = append(units, picked(u.String(), u == b.units))
	}
	return []string{listKey + " steps " + strings.Join(titles, ""), unitsKey + " units " + strings.Join(units, "")}
}

func picked(name string, chosen bool) string {
	if chosen {
		return "[" + name + "]"
	}
	return " " + name + " "
}

// askBegin asks how a project of the user's defaults begins.
func (m *Model) askBegin(p project.Project) []act.Msg {
	b := newBeginning(p)
	q := &question{Ask: part.Confirm("How does it begin? Enter takes what is in brackets"), begin: &b}
	q.answer = func(string) ([]act.Msg, error) {
		return m.create(func() (project.Project, error) {
			p, err := b.project()
			q.learned.put(&p)
			return p, err
		}), nil
	}
	other := b
	other.turnUnits()
	round, _ := other.project() // its leather in round figures of the other unit
	return append(m.put(q), m.learn(q, p.Sheath.Leather, round.Sheath.Leather)...)
}
