package knifepane

import (
	"errors"
	"fmt"
	"slices"

	"chape/calc/knife"
	"chape/project"
	"chape/ui/act"
	"chape/ui/entry"
	"chape/ui/form"
)

// turnSource goes over to the outline's marks, or to those that were measured.
func (m *Model) turnSource() []act.Msg {
	source, ok := project.FieldFor(form.SourceKey)
	if !ok {
		return nil
	}
	if ask := m.givesUpOutline(); ask != nil {
		return ask
	}
	return m.cycle(source, 1)
}

const outlineAtRisk = "then the marks stand by themselves and the outline fills them no longer: the same key again does it, any other leaves it"

// givesUpOutline asks before the outline form is given up by a letter; nil: it was asked
// and meant, or there is nothing to give up.
func (m *Model) givesUpOutline() []act.Msg {
	if m.snap.Project.Source != project.FromOutline || m.meant {
		return nil
	}
	m.warned = true
	return []act.Msg{act.Say{Text: outlineAtRisk, Warn: true}}
}

// addMark puts a mark half-way to the next one, with the figures that lie
// between; behind the last mark, a little further on.
func (m *Model) addMark() []act.Msg {
	if ask := m.givesUpOutline(); ask != nil {
		return ask
	}
	r := m.row()
	i := m.snap.Mark
	if r.List == "mark" {
		i = r.Index
	}
	if s := m.snap.Project.Knife.Stations; i+1 < len(s) && s[i+1].At == s[i].At {
		i++ // behind the pair
	}
	m.aim("knife.station.at", i+1)
	return []act.Msg{act.Commit{Label: "add a mark", Do: func(p *project.Project) error {
		marks := p.Knife.Stations
		if i >= len(marks) {
			return entry.ErrGone
		}
		p.Source = project.FromStations
		p.Knife.Stations = slices.Insert(slices.Clone(marks), i+1, knife.Between(marks, i, p.Units))
		return p.Validate()
	}}, act.Choose{Mark: i + 1}}
}

// addStep doubles the mark in hand: two marks at one place are a step.
func (m *Model) addStep() []act.Msg {
	if ask := m.givesUpOutline(); ask != nil {
		return ask
	}
	r := m.row()
	i := m.snap.Mark // from the outline there are no rows of marks
	switch {
	case r.List == "mark":
		i = r.Index
	case m.snap.Project.Source != project.FromOutline:
		return []act.Msg{act.Say{Text: "choose a mark first: the step is made there", Warn: true}}
	}
	m.aim("knife.station.bottom", i+1)
	return []act.Msg{act.Commit{Label: "make a step", Do: func(p *project.Project) error {
		if i >= len(p.Knife.Stations) {
			return entry.ErrGone
		}
		p.Source = project.FromStations
		p.Knife.Stations = slices.Insert(slices.Clone(p.Knife.Stations), i+1, p.Knife.Stations[i])
		return p.Validate()
	}}, act.Choose{Mark: i + 1}}
}

// remove takes the mark or the correction in hand out.
func (m *Model) remove() []act.Msg {
	r := m.row()
	i := r.Index
	switch r.List {
	case "mark":
		return []act.Msg{act.Commit{Label: fmt.Sprintf("take out mark %d", i+1), Do: func(p *project.Project) error {
			if i >= len(p.Knife.Stations) {
				return entry.ErrGone
			}
			if len(p.Knife.Stations) <= 2 {
				return errors.New("a knife has two marks at least: add another before taking this one out")
			}
			p.Source = project.FromStations
			p.Knife.Stations = slices.Delete(slices.Clone(p.Knife.Stations), i, i+1)
			return p.Validate()
		}}}
	case "fit":
		return []act.Msg{act.Commit{Label: "take out a correction", Do: func(p *project.Project) error {
			if i >= len(p.Fits) {
				return entry.ErrGone
			}
			p.Fits = slices.Delete(slices.Clone(p.Fits), i, i+1)
			return nil
		}}}
	}
	return []act.Msg{act.Say{Text: "only marks and corrections can be taken out", Warn: true}}
}

// aim puts the cursor on a field as soon as it is there.
func (m *Model) aim(key string, index int) { m.wanted = &place{key, index} }

type place struct {
	key   string
	Index int
}
