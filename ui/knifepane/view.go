package knifepane

import (
	"strings"

	"github.com/charmbracelet/x/ansi"

	"chape/project"
	"chape/ui/layout"
	"chape/ui/term"
)

// Widths in cells.
const (
	nameWidth = 21
	wholes    = 6 // in front of the decimal point
	parts     = 5 // the point and what follows it
	gutter    = 1
)

// hintLines is how many lines at the foot tell how to measure what is in hand,
// or what will not do.
const hintLines = 3

// body is how many rows there is room for.
func (m *Model) body() int { return max(1, m.height-hintLines) }

// scroll keeps the row in hand in sight, with its heading if there is room.
func (m *Model) scroll() {
	n := m.body()
	if m.line < m.top {
		m.top = m.line
		if m.top > 0 && m.rows[m.top-1].isHeading() {
			m.top--
		}
	}
	if m.line >= m.top+n {
		m.top = m.line - n + 1
	}
	m.top = max(0, min(m.top, len(m.rows)-n))
}

// View draws the pane, as many lines as it is high, none wider than it.
func (m *Model) View() string {
	if m.width <= 0 || m.height <= 0 {
		return ""
	}
	lines := make([]string, 0, m.height)
	for i := m.top; i < len(m.rows) && len(lines) < m.body(); i++ {
		lines = append(lines, m.rowLine(i))
	}
	lines = layout.Fit(lines, m.width, min(m.body(), m.height))
	if m.height > m.body() {
		lines = append(lines, layout.Fit(m.foot(), m.width, m.height-m.body())...)
	}
	return strings.Join(lines, "\n")
}

func (m *Model) rowLine(i int) string {
	r := m.rows[i]
	switch {
	case r.heading != "":
		return m.Styles.Heading.Render(r.heading)
	case r.isHeading():
		return m.headsLine(r.list, r.heads)
	case r.list != "":
		return m.tableLine(i)
	}
	f := r.cells[0]
	inHand := i == m.line
	name := layout.Line(strings.Repeat(" ", gutter)+f.Name, nameWidth)
	if m.edit != nil && inHand {
		return name + m.Styles.Strong.Render(m.mark("› ", "> ")) + m.typed(m.inputWidth(f)) + " " + m.Styles.Quiet.Render(f.Unit(m.snap.Project))
	}
	value := m.valueText(f)
	if inHand {
		return m.Styles.Chosen.Render(name+value) + " " + m.Styles.Quiet.Render(f.Unit(m.snap.Project))
	}
	return name + value + " " + m.Styles.Quiet.Render(m.unitOf(f))
}

// unitOf leaves the unit out where a word stands instead of a figure.
func (m *Model) unitOf(f project.Field) string {
	if f.Get(m.snap.Project) == nil {
		return ""
	}
	return f.Unit(m.snap.Project)
}

// valueText is a value in the column of values: figures with their decimal
// points in one line, words from the left.
func (m *Model) valueText(f project.Field) string {
	text := term.Plain(strings.ReplaceAll(f.Show(m.snap.Project), "\n", " / "))
	if numeric(f) && f.Get(m.snap.Project) != nil {
		return aligned(text)
	}
	if cycles(f) {
		text = "‹" + text + "›"
		if m.ascii() {
			text = "<" + strings.Trim(text, "‹›") + ">"
		}
	}
	return layout.Line(text, max(wholes+parts, m.width-nameWidth-4))
}

// ascii tells whether the terminal has plain characters only.
func (m *Model) ascii() bool { return m.ASCII }

// aligned sets a figure so that its decimal point stands in the same column as
// any other's; inches with a fraction have their whole number there.
func aligned(text string) string {
	whole, part := text, ""
	if i := strings.IndexAny(text, ". "); i >= 0 {
		whole, part = text[:i], text[i:]
	} else if strings.Contains(text, "/") {
		whole, part = "", " "+text
	}
	if len(part) > parts && part[0] == '.' {
		part = part[:parts]
	}
	pad := max(0, wholes-ansi.StringWidth(whole))
	return layout.Line(strings.Repeat(" ", pad)+whole+part, max(wholes+parts, pad+ansi.StringWidth(whole+part)))
}

// inputWidth is the room for typing a value.
func (m *Model) inputWidth(f project.Field) int {
	room := m.width - nameWidth - 4
	if numeric(f) {
		room = min(room, wholes+parts+4)
	}
	return max(6, room)
}

// typed shows the text being typed on at most width cells.
func (m *Model) typed(width int) string {
	style := m.Styles.Strong
	if m.Problem() != nil || m.edit.asking {
		style = m.Styles.Warn
	}
	return m.edit.input.view(max(1, width), style, m.Styles.Chosen)
}

func (m *Model) mark(plain, ascii string) string {
	if m.ascii() {
		return ascii
	}
	return plain
}

// foot says what is wrong with what is typed, or how to measure what is in
// hand.
func (m *Model) foot() []string {
	f, ok := m.field()
	if !ok {
		return nil
	}
	if m.edit != nil {
		if m.edit.asking {
			return m.styled(m.edit.question(), true)
		}
		if m.Problem() != nil {
			return m.styled(m.edit.complaint(), true)
		}
	}
	text := f.Name
	if f.Hint != "" {
		text += ": " + f.Hint
	}
	return m.styled(text, false)
}

func (m *Model) styled(text string, warn bool) []string {
	text = term.Plain(text)
	if warn {
		text = "! " + text
	}
	lines := layout.Wrap(text, m.width)
	if len(lines) > hintLines {
		lines = append(lines[:hintLines-1], lines[hintLines-1]+"…")
	}
	for i, l := range lines {
		if warn {
			lines[i] = m.Styles.Warn.Render(l)
		} else {
			lines[i] = m.Styles.Quiet.Render(l)
		}
	}
	return lines
}
