package planpane

import (
	"fmt"
	"math"
	"strings"

	"chape/calc"
	"chape/calc/length"
	"chape/project/report"
	"chape/ui/draw"
	"chape/ui/layout"
	"chape/ui/term"
	"chape/ui/term/ink"
)

// warnings are the checks that warn, notes those that note; what is well is
// only counted.
func (m *Model) warnings(w int) []string { return m.checks(calc.Warn, w) }

func (m *Model) notes(w int) []string {
	out := m.checks(calc.Note, w)
	return append(out, m.fineLine()...)
}

// fineLine counts the checks that are fine, and says what lists them: c, or a press on it.
func (m *Model) fineLine() []string {
	fine := 0
	for _, c := range m.snap.Plan.Checks {
		if c.Level == calc.OK {
			fine++
		}
	}
	if fine == 0 {
		return nil
	}
	good := ink.Around(m.Styles.Good)
	return []string{good.Open + fineWords(fine) + good.Close}
}

func fineWords(fine int) string {
	if fine == 1 {
		return "1 check fine, c shows it"
	}
	return number(fine) + " checks fine, c lists them"
}

func (m *Model) openChecks() { m.page = Checks }

// checkList is every check, those to see to first.
func (m *Model) checkList(w int) []string {
	var out []string
	for _, g := range []struct {
		level   calc.Level
		heading string
	}{{calc.Warn, "to see to"}, {calc.Note, "to know"}, {calc.OK, "fine"}} {
		lines := m.checks(g.level, w)
		if len(lines) == 0 {
			continue
		}
		if len(out) > 0 {
			out = append(out, "")
		}
		out = append(append(out, m.Styles.Heading.Render(g.heading)), lines...)
	}
	return out
}

// checks are those of a level, each with its sign.
func (m *Model) checks(level calc.Level, w int) []string {
	sign, style := "* ", ink.Around(m.Styles.Note)
	switch level {
	case calc.Warn:
		sign, style = "! ", m.pens[ink.PenWarn]
	case calc.OK:
		sign, style = "  ", m.pens[ink.PenText]
	}
	var out []string
	for _, c := range m.snap.Plan.Checks {
		if c.Level == level {
			out = append(out, m.wrapped(sign+c.Text(m.snap.Unit), w, style)...)
		}
	}
	return out
}

// markLines say which mark is chosen and how wide the pattern is there.
func (m *Model) markLines(w int) []string {
	mark, i, ok := m.mark()
	if !ok {
		return nil
	}
	p, u := m.snap.Plan, m.snap.Unit
	say := func(mm float64) string { return length.Length(mm).Format(u, length.Ruler) }
	words := fmt.Sprintf("mark %d of %d, %s from the point", i+1, len(p.Input.Knife.Stations), say(mark.At))
	if mark.At > p.Input.Sheath.Mouth.MM() {
		words += ": past the mouth"
	} else {
		words += fmt.Sprintf(": stitch line %s, cut line %s from the fold",
			say(p.Flat.Stitch.Height(mark.At)), say(p.Flat.Cut.Height(mark.At)))
	}
	return m.wrapped(words, w, m.pens[ink.PenMark])
}

// sideWords say how the drawing lies and which half is the back.
func (m *Model) sideWords(s draw.Sheet) string {
	where := [...]string{"above", "below"}
	mouth := "mouth to the right"
	if s.Upright {
		where, mouth = [...]string{"left of", "right of"}, "mouth up"
	}
	side := where[0]
	if s.BackAfter() {
		side = where[1]
	}
	worn := report.Worn(m.snap.Project)
	if s.Shape == draw.Closed {
		return fmt.Sprintf("closed sheath seen from the front, %s, its seam %s the fold (%s)", mouth, side, worn)
	}
	tab := ""
	if m.snap.Plan.Body.TabLength > 0 {
		tab = ", with the tab,"
	}
	words := fmt.Sprintf("grain side up, %s: the back half%s lies %s the fold (%s)", mouth, tab, side, worn)
	if s.Shape == draw.Half {
		words += "; the front half is its mirror image without the tab"
		if tab == "" {
			words = strings.TrimSuffix(words, " without the tab")
		}
	}
	return words
}

// staleLines say that the plan does not follow the numbers, and why.
func (m *Model) staleLines() []string {
	if !m.snap.Stale || m.snap.Plan == nil {
		return nil
	}
	words := "! not yet following"
	if m.snap.Err != nil {
		words += ": " + term.Plain(m.snap.Err.Error())
	}
	lines := m.wrapped(words, m.width, m.pens[ink.PenWarn])
	return lines[:min(len(lines), max(1, m.height/8))]
}

// missingLines say what is needed before there is anything to draw.
func (m *Model) missingLines() []string {
	lines := m.wrapped("No pattern yet.", m.width, m.pens[ink.PenText])
	if missing := m.missing(); len(missing) > 0 {
		lines = append(lines, m.wrapped("It needs: "+strings.Join(missing, ", ")+".", m.width, m.pens[ink.PenText])...)
	}
	if m.snap.Err != nil {
		for _, l := range strings.Split(m.snap.Err.Error(), "\n") {
			lines = append(lines, m.wrapped("! "+l, m.width, m.pens[ink.PenWarn])...)
		}
	}
	return lines
}

// missing names the numbers without which nothing can be drawn.
func (m *Model) missing() []string {
	p := m.snap.Project
	var out []string
	need := func(lacks bool, name string) {
		if lacks {
			out = append(out, name)
		}
	}
	n := len(p.Knife.Stations)
	need(n == 0, "the knife's marks, or its outline")
	need(n == 1, "a second mark of the knife")
	need(p.Sheath.Mouth <= 0, "where the mouth is")
	need(p.Sheath.Leather <= 0, "the leather's thickness")
	need(p.Sheath.Gap <= 0, "the gap from knife to stitch line")
	need(p.Stitch.Pitch <= 0, "the pitch")
	need(p.Stitch.Thread <= 0, "the thread's thickness")
	return out
}

// sectionPicture is the section at the chosen mark.
func (m *Model) sectionPicture(w, h int) []string {
	mark, _, ok := m.mark()
	if !ok || w <= 0 || h <= 0 {
		return layout.Fit(nil, w, h)
	}
	m.c.Reset(w, h, m.glyphs)
	a := m.snap.Plan.Across(mark.At)
	below := draw.Section(m.c, m.glyphs, a)
	if words := m.room(a); h >= 6 && len(words) <= w {
		m.c.Text((w-len(words))/2, min(below, h-1), words, ink.PenText)
	}
	return m.render()
}

// room is the dimension under the section.
func (m *Model) room(a calc.Across) string {
	if !a.Sheathed {
		return "past the mouth"
	}
	return length.Length(math.Abs(a.Room-a.Need)).Format(m.snap.Unit, length.Calliper) + " " + report.Room(m.snap.Plan, a)
}

// sectionText says in words what the section shows.
func (m *Model) sectionText(w int) []string {
	mark, i, ok := m.mark()
	if !ok {
		return nil
	}
	p, u := m.snap.Plan, m.snap.Unit
	say := func(mm float64) string { return length.Length(mm).Format(u, length.Ruler) }
	by := func(mm float64) string { return length.Length(mm).Format(u, length.Calliper) }
	a := p.Across(mark.At)
	out := m.wrapped(fmt.Sprintf("mark %d of %d, %s from the point", i+1, len(p.Input.Knife.Stations), say(mark.At)), w, m.pens[ink.PenMark])
	add := func(words string) { out = append(out, m.wrapped(words, w, m.pens[ink.PenText])...) }
	if len(a.Knife) > 1 {
		add("a step: the sections on both sides of it are drawn")
	}
	if !a.Sheathed {
		add("past the mouth: here the sheath does not reach, this is what the hand holds")
		return out
	}
	add(fmt.Sprintf("fold to welt, a side: %s must pass on the way in, there is %s: %s", by(a.Need), by(a.Room), m.room(a)))
	add(fmt.Sprintf("on the closed sheath, from the fold: welt from %s, stitch line %s, finished edge %s",
		say(a.Welt), say(a.Stitch), say(a.Edge)))
	add(fmt.Sprintf("to sew through: %s, twice leather of %s and a welt of %s", by(p.Stitch.Stack), by(a.Leather), by(2*a.HalfWelt)))
	return out
}
