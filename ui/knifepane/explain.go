package knifepane

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"chape/calc"
	"chape/project"
	"chape/project/words"
	"chape/ui/draw"
	"chape/ui/layout"
	"chape/ui/term"
)

// leastExplained is how many lines a picture needs to be one.
const leastExplained = 6

// Explain implements act.Explainer: what the row in hand is, and where it is measured.
func (m *Model) Explain() (title string, body func(w, h int) []string, ok bool) {
	f, ok := m.field()
	if !ok {
		return "", nil, false
	}
	name := f.NameIn(m.snap.Project)
	text := meaning(f)
	row := m.snap.Mark
	if m.row().List == "fit" {
		row = f.Index
	}
	return name, func(w, h int) []string {
		lines := layout.Wrap(text, max(1, w))
		if high := h - len(lines) - 1; high >= leastExplained && m.snap.Plan != nil {
			if picture := m.measured(f.Key, row, name, w, high); picture != nil {
				lines = append(append(lines, ""), picture...)
			}
		}
		return lines
	}, true
}

// meaning is what a field means: the word list's words, which say all that the line on the
// form does, else that line.
func meaning(f project.Field) string {
	if w, listed := words.Of(f.Key); listed {
		return w.Text
	}
	first, size := utf8.DecodeRuneInString(f.Hint)
	return string(unicode.ToUpper(first)) + term.Plain(f.Hint[size:]) + "."
}

// measured is the drawing with the measure marked on it; nil: it can't be seen on one.
func (m *Model) measured(key string, row int, name string, w, h int) []string {
	at, ok := draw.MeasureOf(m.snap.Plan, key, row)
	if !ok {
		return nil
	}
	g, cust := m.snap.Font.Glyphs, m.snap.Project.Customer
	m.c.SetAspect(m.snap.Font.Aspect)
	m.c.Reset(w, h, g)
	at.Draw(m.c, g, m.snap.Plan, calc.BackIsRight(cust.Hand, cust.Edge, calc.GrainUp), strings.TrimSpace(name))
	return m.c.Render(m.Styles.Pens())
}
