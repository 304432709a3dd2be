package trialpage

import (
	"errors"
	"fmt"
	"slices"

	"chape/calc/length"
	"chape/project"
	"chape/ui/act"
	"chape/ui/part"
)

// The lines of a draft, in their order.
const (
	lineAt = iota
	lineTight
	lineBy
	lineRound
	lineReach
	lineWith
	lineNote
	lineKeep
	lines
)

// field is the field of the file behind a line that is typed; false for the others.
func field(line int) (project.Field, bool) {
	key, ok := map[int]string{lineAt: "fit.at", lineBy: "fit.by", lineReach: "fit.reach", lineNote: "fit.note", lineWith: "fit.with"}[line]
	if !ok {
		return project.Field{}, false
	}
	fs := project.FitFields(0)
	return fs[slices.IndexFunc(fs, func(f project.Field) bool { return f.Key == key })], true
}

// chosen is the correction in hand; false on a line of the draft.
func (m *Model) chosen() (int, bool) {
	i := m.list.At - lines
	return i, i >= 0 && i < len(m.snap.Project.Fits)
}

// offered is the offer in hand; false on another line.
func (m *Model) offered() (int, bool) {
	i := m.list.At - lines - len(m.snap.Project.Fits)
	return i, i >= 0 && i < len(m.offers)
}

// value is what stands on a line, without its unit.
func (m *Model) value(line int) string {
	u := m.snap.Unit
	switch line {
	case lineAt:
		return m.draft.at.Short(u)
	case lineBy:
		return m.draft.by.Short(u)
	case lineReach:
		return m.draft.reach.Short(u)
	case lineNote:
		return m.draft.note
	}
	return ""
}

// typed tells whether a line is typed.
func typed(line int) bool {
	return line == lineAt || line == lineBy || line == lineReach || line == lineNote
}

// typeNumber begins a number on the line in hand, or on the one below a choice.
func (m *Model) typeNumber(text string) []act.Msg {
	line := m.list.At
	if line == lineTight || line == lineRound {
		line++
	}
	if line == lineNote {
		return []act.Msg{act.Say{Text: "Enter opens the note, then a figure can be typed"}}
	}
	if !typed(line) {
		return []act.Msg{act.Say{Text: "no number stands here: ↑ or ↓ goes to a line with one"}}
	}
	m.open(line, text, false)
	return nil
}

// open begins to type on a line.
func (m *Model) open(line int, text string, fresh bool) {
	m.list.Choose(line)
	const longest = 200
	m.entry = part.NewAsk("", text, longest)
	m.entry.Number, m.entry.Fresh = line != lineNote, fresh
	if !fresh {
		m.preview()
	}
}

// change opens the line in hand, or takes the correction in hand up again.
func (m *Model) change() []act.Msg {
	if i, ok := m.chosen(); ok {
		if m.unkept() {
			return []act.Msg{act.Say{Text: "first the one you drew, " + m.words() + ": ↑ leads to what keeps it, Esc drops it", Warn: true}}
		}
		m.draft = taken(m.snap.Project.Fits[i], i)
		m.list.Choose(lineBy)
		m.propose()
		return []act.Msg{act.Say{Text: fmt.Sprintf("correction %d is in hand: change it and keep it, or Esc", i+1)}}
	}
	if i, ok := m.offered(); ok {
		return m.takeOffer(i, true)
	}
	if line := m.list.At; typed(line) {
		m.open(line, m.value(line), true)
		return nil
	}
	return m.space()
}

// unkept tells whether a correction is drawn that is not among those kept.
func (m *Model) unkept() bool {
	d, fits := m.draft, m.snap.Project.Fits
	return d.by != 0 && (d.instead < 0 || d.instead >= len(fits) || d.fit() != fits[d.instead])
}

// words are the draft in short: "-0.5 mm at 40".
func (m *Model) words() string {
	return signed(m.draft.fit().By, m.snap.Unit) + " at " + m.draft.at.Short(m.snap.Unit)
}

// enter goes on to the next line, opens the note, keeps what is ready.
func (m *Model) enter() []act.Msg {
	switch line := m.list.At; line {
	case lineKeep:
		return m.keep()
	case lineNote:
		m.open(line, m.draft.note, true)
	default:
		if line >= lines {
			return m.change()
		}
		m.list.Choose(line + 1)
	}
	return nil
}

var errOther = errors.New("the corrections have changed meanwhile: choose again")

// takeOffer keeps the offer in hand as a correction of this sheath, or lets it go.
func (m *Model) takeOffer(i int, keep bool) []act.Msg {
	was, here := m.snap.Project.Carried[i], m.offers[i]
	m.took = true
	label := "let go the correction " + was.From
	if keep {
		label = "keep the correction " + was.From
		if m.made.err != nil {
			return []act.Msg{act.Say{Text: m.made.err.Error(), Warn: true}}
		}
	}
	return []act.Msg{act.Commit{Label: label, Do: func(p *project.Project) error {
		if i >= len(p.Carried) || p.Carried[i] != was {
			return errOther
		}
		q := p.Clone()
		p.Carried = slices.Delete(q.Carried, i, i+1)
		if keep {
			p.Fits = append(q.Fits, here)
		}
		return p.Validate()
	}}}
}

// space turns a choice.
func (m *Model) space() []act.Msg {
	if i, ok := m.offered(); ok {
		return m.takeOffer(i, true)
	}
	d := &m.draft
	switch m.list.At {
	case lineTight:
		d.loose = !d.loose
	case lineRound:
		d.round = !d.round
	case lineWith:
		f, _ := field(lineWith)
		d.with = f.Options[(slices.Index(f.Options, d.with)+1)%len(f.Options)]
	default:
		return []act.Msg{act.Say{Text: "nothing to choose here: Enter goes on, a number is typed"}}
	}
	m.propose()
	return nil
}

// reply takes a key while a line is typed.
func (m *Model) reply(p part.Press) []act.Msg {
	line := m.list.At
	switch m.entry.Take(p) {
	case part.Typed:
		m.preview()
	case part.Dropped:
		m.entry = nil
		m.propose()
	case part.Kept:
		if p.Held {
			return nil
		}
		d, err := m.read(line, m.entry.Text())
		if err != nil {
			m.entry.Refuse(err, p)
			return nil
		}
		if why := m.slip(line, d); why != "" && !m.entry.Doubt(why+" Enter takes it all the same, Esc puts the old one back", p) {
			return nil
		}
		m.draft, m.entry = d, nil
		if m.list.Choose(line + 1); p.Tool() { // its readings are numbers, and keep nothing
			m.list.Choose(nextNumber[line])
		}
		m.propose()
	}
	return nil
}

// slip is what looks wrong about a number that would do; "": nothing does.
func (m *Model) slip(line int, d draft) string {
	share := float64(d.reach / m.draft.reach)
	switch {
	case line == lineBy && d.by > muchBy:
		return "that is a lot: is the point missing?"
	case line == lineReach && m.draft.reach > 0 && share <= 0.1:
		return "a tenth of what it was, or less: is it the reach that you mean?"
	case line == lineReach && m.draft.reach > 0 && share >= 10:
		return "ten times what it was, or more: is the point missing?"
	}
	return ""
}

// muchBy is more than a trial fit mostly finds, mm: common practice, no source.
const muchBy length.Length = 10

// nextNumber is the line that a measuring tool's Enter goes on to; behind the last number it is
// one without.
var nextNumber = map[int]int{lineAt: lineBy, lineBy: lineReach, lineReach: lineWith, lineNote: lineKeep}

// preview shows what the number so far would make, as long as it will do.
func (m *Model) preview() {
	was := m.draft
	if d, err := m.read(m.list.At, m.entry.Text()); err == nil {
		m.draft = d
	}
	m.propose()
	m.draft = was
}

// read is the draft with what was typed on a line.
func (m *Model) read(line int, text string) (draft, error) {
	d := m.draft
	f, _ := field(line)
	if text == m.value(line) { // to the last digit, as it is
		return d, nil
	}
	if line == lineNote {
		d.note = text
		p := m.snap.Project
		d.put(&p)
		return d, p.Validate()
	}
	v, err := f.Parse(text, project.Project{Units: m.snap.Unit, Fits: []project.Fit{{}}})
	if err != nil {
		return d, err
	}
	l, _ := v.(length.Length)
	switch line {
	case lineAt:
		if to := length.Length(m.within(l.MM())); to != l {
			return d, fmt.Errorf("the fold runs from the point to the mouth: give 0 to %s", m.snap.Project.Sheath.Mouth.Format(m.snap.Unit, length.Ruler))
		}
		d.at = l
	case lineBy:
		if l < 0 {
			d.loose, l = true, -l
		}
		d.by = l
	case lineReach:
		d.reach = l
	}
	return d, nil
}

// keep puts the draft among the corrections.
func (m *Model) keep() []act.Msg {
	d := m.draft
	switch {
	case d.by == 0:
		m.list.Choose(lineBy)
		return []act.Msg{act.Say{Text: "by how much was it tight or loose? Type it, then Enter"}}
	case m.made.err != nil:
		return []act.Msg{act.Say{Text: m.made.err.Error(), Warn: true}}
	}
	label := "correction " + m.words()
	m.draft = m.fresh(d)
	m.list.Choose(lineAt) // the next one is mostly somewhere else
	return []act.Msg{act.Commit{Label: label, Do: func(p *project.Project) error {
		d.put(p)
		return p.Validate()
	}}}
}

// remove takes the correction in hand out.
func (m *Model) remove() []act.Msg {
	if i, ok := m.offered(); ok {
		return m.takeOffer(i, false)
	}
	i, ok := m.chosen()
	if !ok {
		return []act.Msg{act.Say{Text: "↓ goes to the corrections: " + removeKey + " takes the one in hand out"}}
	}
	was := m.snap.Project.Fits[i]
	m.took = true
	return []act.Msg{act.Commit{Label: "take out the correction at " + was.At.Short(m.snap.Unit), Do: func(p *project.Project) error {
		if i >= len(p.Fits) || p.Fits[i] != was {
			return errOther
		}
		p.Fits = slices.Delete(p.Clone().Fits, i, i+1)
		return nil
	}}}
}

// signed is a length with its sign.
func signed(l length.Length, u length.Unit) string {
	if l < 0 {
		return "-" + (-l).Format(u, length.Calliper)
	}
	return "+" + l.Format(u, length.Calliper)
}
