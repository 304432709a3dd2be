package knifepane

import (
	"strconv"
	"strings"

	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"

	"chape/project"
	"chape/ui/canvas"
	"chape/ui/form"
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

// Most lines at the foot: how to measure what is in hand, or what will not do.
const (
	hintLines = 3
	warnLines = 4
)

// View draws the pane, as many lines as it is high, none wider than it.
func (m *Model) View() string {
	if m.width <= 0 || m.height <= 0 {
		return ""
	}
	foot := m.foot()
	lines := []string{m.names()}
	if m.scrolls() {
		lines = append(lines, m.headLine())
	}
	body := layout.Fit(m.listed(), m.wide(), max(0, m.height-len(lines)-len(foot)))
	lines = append(lines, m.withPicture(body)...)
	lines = layout.Fit(lines, m.width, m.height-len(foot))
	return strings.Join(append(lines, layout.Fit(foot, m.width, len(foot))...), "\n")
}

// listed are the rows in sight.
func (m *Model) listed() []string {
	var lines []string
	from, to := m.window()
	for i := from; i < to; i++ {
		lines = append(lines, m.rowLine(i))
	}
	return lines
}

func (m *Model) rowLine(i int) string {
	r := m.rows[i]
	switch {
	case r.Heading != "":
		return m.Styles.Heading.Render(r.Heading)
	case r.IsHeading():
		return m.headsLine(r.List, r.Heads)
	case r.List != "":
		return m.tableLine(i)
	}
	f := r.Cells[0]
	inHand := i == m.line
	name := layout.Line(strings.Repeat(" ", gutter)+f.NameIn(m.snap.Project), nameWidth)
	if m.edit != nil && inHand {
		return name + m.Styles.Strong.Render(m.mark("› ", "> ")) + m.typed(m.inputWidth(f)) + " " + m.Styles.Quiet.Render(f.Unit(m.snap.Project))
	}
	value := m.valueText(f)
	if e := m.doubted(f); e != nil {
		value = m.Styles.Warn.Render(layout.Line(aligned(e.Text()+"?"), wholes+parts+1))
	}
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
	if form.Numeric(f) && f.Get(m.snap.Project) != nil {
		return aligned(text)
	}
	if form.Cycles(f) {
		text = "‹" + text + "›"
		if m.ascii() {
			text = "<" + strings.Trim(text, "‹›") + ">"
		}
	}
	return layout.Line(text, max(wholes+parts, m.wide()-nameWidth-4))
}

// ascii tells whether the terminal has plain characters only.
func (m *Model) ascii() bool { return m.snap.Font.Glyphs == canvas.ASCII }

// aligned sets a figure so that its decimal point stands in the same column as
// any other's; inches with a fraction have their whole number there.
func aligned(text string) string {
	whole, part := text, ""
	if i := strings.IndexAny(text, ". "); i >= 0 {
		whole, part = text[:i], text[i:]
	} else if strings.Contains(text, "/") {
		whole, part = "", " "+text
	}
	pad := max(0, wholes-ansi.StringWidth(whole))
	return layout.Line(strings.Repeat(" ", pad)+whole+part, max(wholes+parts, pad+ansi.StringWidth(whole+part)))
}

// inputWidth is the room for typing a value.
func (m *Model) inputWidth(f project.Field) int {
	room := m.wide() - nameWidth - 4
	if form.Numeric(f) {
		room = min(room, wholes+parts+4)
	}
	return max(6, room)
}

// typed shows the text being typed on at most width cells.
func (m *Model) typed(width int) string {
	style := m.Styles.Strong
	switch {
	case m.edit.Line.Fresh:
		style = m.Styles.Chosen // all of it will be replaced
	case m.edit.Wrong() || m.edit.Asking:
		style = m.Styles.Warn
	}
	return m.edit.Line.Short(max(1, width), style)
}

func (m *Model) mark(plain, ascii string) string {
	if m.ascii() {
		return ascii
	}
	return plain
}

const noFits = "No corrections yet. T takes up what a folded trial shows: where it is tight or loose, and by how much."

// foot says what is wrong with what is typed, or how to measure what is in
// hand; the rows have the rest of the pane, one line at least.
func (m *Model) foot() []string {
	f, ok := m.field()
	switch {
	case len(m.rows) == 0 && len(m.snap.Project.Carried) > 0:
		return m.styled(strconv.Itoa(len(m.snap.Project.Carried))+" offered: T shows them, each to be kept or let go", m.Styles.Note, hintLines)
	case len(m.rows) == 0: // the trial page, before a trial
		return m.styled(noFits, m.Styles.Quiet, hintLines)
	case !ok:
		return nil
	case m.edit != nil && m.edit.Asking:
		return m.styled("! "+m.edit.Question(), m.Styles.Warn, warnLines)
	case m.edit != nil && m.edit.Wrong():
		return m.styled("! "+m.edit.Complaint(), m.Styles.Warn, warnLines)
	case m.edit != nil && m.edit.ReadAs() != "":
		return m.styled(m.edit.ReadAs(), m.Styles.Note, hintLines)
	case f.Hint == "":
		return nil
	}
	hint := f.NameIn(m.snap.Project) + ": " + f.Hint
	if f.Key == form.SourceKey {
		hint += "; I: off a photograph"
	}
	return m.styled(hint, m.Styles.Quiet, hintLines)
}

func (m *Model) styled(text string, style lipgloss.Style, most int) []string {
	lines := layout.Wrap(term.Plain(text), m.width)
	most = max(0, min(most, m.height-1))
	if len(lines) > most {
		lines = lines[:most]
		if most > 0 {
			lines[most-1] = ansi.Truncate(lines[most-1], m.width-1, "") + "…"
		}
	}
	for i, l := range lines {
		lines[i] = style.Render(l)
	}
	return lines
}
