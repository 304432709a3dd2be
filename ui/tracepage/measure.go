package tracepage

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"chape/calc/knife"
	"chape/calc/length"
	"chape/project"
	"chape/ui/act"
	"chape/ui/part"
)

// The columns that are measured here.
const (
	thick = "knife.station.thick"
	grind = "knife.station.bevel"
)

// cell is one figure to be measured: a column of a mark.
type cell struct {
	mark int
	key  string
}

// leastDepth is where a grind height can be measured, mm.
const leastDepth = length.Length(2)

// measure begins the calliper's column.
func (m *Model) measure() []act.Msg {
	m.state, m.cell, m.total, m.entry = measuring, cell{}, 0, nil
	m.keepCell()
	return nil
}

// cells are what is still to be measured, from the point on.
func (m *Model) cells() []cell {
	p := m.snap.Project
	var out []cell
	for _, i := range p.Unmeasured() {
		out = append(out, cell{i, thick})
		if m.grinds && hasGrind(p.Knife.Stations[i]) {
			out = append(out, cell{i, grind})
		}
	}
	return out
}

func hasGrind(s knife.Station) bool { return s.Kind == knife.Blade && s.Depth() >= leastDepth }

// keepCell has the cell in hand be one that there is; with the first snapshot the column
// begins.
func (m *Model) keepCell() {
	all := m.cells()
	if m.total == 0 && len(all) > 0 {
		m.grinds = slices.ContainsFunc(m.snap.Project.Knife.Stations, func(s knife.Station) bool { return s.Kind == knife.Blade && s.Bevel < 1 })
		all = m.cells()
		m.total, m.cell = len(all), all[0]
	}
	m.total = max(m.total, len(all))
	if m.inHandIsGrind() || len(all) == 0 || slices.Contains(all, m.cell) {
		return
	}
	m.cell = m.behind(all)
}

// inHandIsGrind tells whether a grind height is in hand whose thickness is measured already.
func (m *Model) inHandIsGrind() bool {
	s := m.snap.Project.Knife.Stations
	return m.grinds && m.cell.key == grind && m.cell.mark < len(s) && hasGrind(s[m.cell.mark])
}

// behind is the first cell behind the one in hand, or the first of all.
func (m *Model) behind(all []cell) cell {
	for _, c := range all {
		if c.mark > m.cell.mark || c.mark == m.cell.mark && m.cell.key == thick && c.key == grind {
			return c
		}
	}
	return all[0]
}

// done tells whether nothing is left to measure.
func (m *Model) done() bool { return len(m.cells()) == 0 && !m.inHandIsGrind() }

// field is the figure in hand.
func (m *Model) field() (project.Field, bool) {
	if m.done() {
		return project.Field{}, false
	}
	for _, f := range project.MarkFields(m.cell.mark) {
		if f.Key == m.cell.key {
			return f, true
		}
	}
	return project.Field{}, false
}

// measureKeys are those of the column while nothing is typed. None is a digit or a sign.
func (m *Model) measureKeys() part.Keys {
	by := func(n int) func() []act.Msg { return part.Quiet(func() { m.goBy(n) }) }
	enter := part.Key("Enter", "it is right as it stands; on to the next", m.asItStands, "enter")
	if !m.done() {
		enter = enter.Foot("as it stands")
	}
	return part.Keys{
		part.Key("digits", "what the calliper reads", nil, "digits").Foot("the reading"),
		enter,
		part.Key("Esc", "back to the knife; what is left can be measured later", leave, "esc").Foot("back"),
		part.Key("→, ↓", "next place, without measuring", by(1), "right", "down"),
		part.Key("←, ↑", "place before", by(-1), "left", "up"),
		part.Key("g", "grind heights too, or thicknesses alone", part.Quiet(m.turnGrinds), "g").Late("grind heights"),
		part.Key("r", "read another picture", m.choose, "r").Late("another picture"),
	}
}

// goBy goes to another place without measuring.
func (m *Model) goBy(by int) {
	all := m.cells()
	i := slices.Index(all, m.cell)
	switch {
	case len(all) == 0:
	case i < 0:
		m.cell = m.behind(all)
	default:
		m.cell = all[(i+by+len(all))%len(all)]
	}
}

func (m *Model) turnGrinds() {
	m.grinds = !m.grinds
	all := m.cells()
	m.total = len(all)
	if len(all) > 0 && !slices.Contains(all, m.cell) {
		m.cell = m.behind(all)
	}
}

// measureKey is a key in the column.
func (m *Model) measureKey(p part.Press) []act.Msg {
	switch {
	case m.entry != nil:
		return m.reply(p)
	case !m.done() && part.StartsNumber(p.KeyMsg):
		if p.Paste {
			p.Runes = []rune(part.FirstLine(string(p.Runes)))
		}
		m.entry = part.NewAsk(m.title(), "", longestFigure)
		m.entry.Number = true
		m.entry.SetWidth(m.w)
		m.entry.Take(p)
		return nil
	case p.Type == tea.KeyEnter && p.Held:
		return nil
	}
	out, _ := m.measureKeys().Take(p)
	return out
}

// asItStands has the figure in hand count as measured.
func (m *Model) asItStands() []act.Msg {
	f, ok := m.field()
	if !ok {
		return leave()
	}
	return m.commit(f, f.Get(m.snap.Project), "as it stands")
}

const longestFigure = 40

// reply takes a key while a figure is typed.
func (m *Model) reply(p part.Press) []act.Msg {
	switch m.entry.Take(p) {
	case part.Dropped:
		m.entry = nil
	case part.Kept:
		return m.keep(p)
	}
	return nil
}

// keep puts the figure in, or says why not. One that is far from what stood there needs a
// second Enter, by hand.
func (m *Model) keep(p part.Press) []act.Msg {
	f, ok := m.field()
	if !ok {
		m.entry = nil
		return nil
	}
	text := m.entry.Text()
	v, err := f.Parse(text, m.snap.Project)
	if err == nil {
		q := m.snap.Project.Clone()
		err = f.Set(&q, v)
	}
	if err != nil {
		m.entry.Refuse(words(err, text), p)
		return nil
	}
	if why := m.doubt(f, v); why != "" && !m.entry.Doubt(why, p) {
		return nil
	}
	m.entry = nil
	return m.commit(f, v, strings.TrimSpace(text))
}

// words is why a figure will not do.
func words(err error, text string) error {
	var own project.Problem
	if errors.As(err, &own) {
		return errors.New(own.Typed(text))
	}
	return err
}

// doubt asks about a length of a tenth or less of what stood there, or of ten times it or more.
func (m *Model) doubt(f project.Field, v any) string {
	is, ok := v.(length.Length)
	was, known := f.Get(m.snap.Project).(length.Length)
	if !ok || !known || is == 0 || was == 0 || is > was/10 && is < was*10 {
		return ""
	}
	tool := "is the calliper in inches, or the point missing?"
	if m.snap.Unit == length.Inches {
		tool = "is the calliper in millimetres, or the point missing?"
	}
	return "far from " + f.Show(m.snap.Project) + ": " + tool + " Enter again: it is right"
}

// commit puts a figure into its mark and goes on to the next.
func (m *Model) commit(f project.Field, v any, said string) []act.Msg {
	c, at := m.cell, m.snap.Project.Knife.Stations[m.cell.mark].At
	label := fmt.Sprintf("%s at %s %.20s", f.Name, at.Format(m.snap.Unit, length.Ruler), said)
	if all := m.cells(); len(all) > 0 {
		if c.key == thick && m.grinds && hasGrind(m.snap.Project.Knife.Stations[c.mark]) {
			m.cell = cell{c.mark, grind}
		} else if next := m.behind(all); next != c {
			m.cell = next
		} else {
			m.cell = cell{}
		}
	} else {
		m.cell = cell{}
	}
	return []act.Msg{act.Commit{Label: label, Do: func(p *project.Project) error {
		if s := p.Knife.Stations; c.mark >= len(s) || s[c.mark].At != at {
			return errors.New("the marks have changed meanwhile: choose again")
		}
		return f.Set(p, v)
	}}}
}
