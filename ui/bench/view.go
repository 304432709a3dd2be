package bench

import (
	"fmt"
	"slices"
	"strings"

	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"

	"chape/project/steps"
	"chape/ui/act"
	"chape/ui/canvas"
	"chape/ui/layout"
	"chape/ui/term"
	"chape/ui/term/ink"
)

// View draws exactly the size that was set. From 60×20 up the step's short name
// and the nearest hold's digits are each at least five rows and a quarter of
// the height; below it says what it needs.
func (m *Model) View() string {
	if tooSmall := layout.Bench(m.w, m.h); tooSmall != "" {
		return strings.Join(layout.Message("the bench view "+tooSmall, m.w, m.h), "\n")
	}
	if m.helps {
		return m.help()
	}
	p := m.page()
	text := func(lines []string) []string { return layout.Fit(lines, m.w, len(lines)) }
	lines := slices.Concat(text([]string{m.head()}), centred(p.name, m.w, m.Styles.Heading), text(p.title), text(p.whose),
		centred(p.digits, m.w, m.digitStyle()), text(p.below))
	return strings.Join(lines, "\n")
}

// page is what View stacks: the two large ones and the lines of text. Whose says whose
// hold the digits are of, when they are not of the step in hand.
type page struct {
	name, digits        []string
	title, whose, below []string
}

// page shares the rows out. Text comes first, for a caution that is cut off is
// none; what is left goes to the large letters, which then never fall below their
// least: the text is cut before that.
func (m *Model) page() page {
	least := max(squares, (m.h+3)/4)
	word := m.largeWord()
	large := 2
	if word == "" {
		large = 1
	}
	room := m.h - 1 - large*least // for text, the head line not counted
	p := m.text(room)
	tall := (m.h - 2 - len(p.title) - len(p.whose) - len(p.below)) / large // one row left as a gap, where there is one
	ink := '█'
	if m.snap.Font.Glyphs == canvas.ASCII {
		ink = '#'
	}
	p.name = big(m.shortName(), m.textWidth(), least, tall, ink)
	p.digits = big(word, m.textWidth(), least, tall, ink)
	return m.spread(p)
}

// spread puts the rows that are left between the parts, the last line at the foot.
func (m *Model) spread(p page) page {
	left := m.h - 1 - len(p.name) - len(p.title) - len(p.whose) - len(p.digits) - len(p.below)
	blank := func(n int) []string { return make([]string, max(n, 0)) }
	if left > 0 && len(p.digits) > 0 {
		p.title = append(p.title, "")
		left--
	}
	if last := len(p.below) - 1; left > 0 {
		foot := p.below[last]
		p.below = append(append([]string{""}, p.below[:last]...), blank(left-1)...)
		p.below = append(p.below, foot)
	}
	return p
}

// text sets the lines of text, at most room of them, in the order in which they are
// given up last: foot, title, whose digits, the own hold, one line of the other holds
// that are due, caution, the other holds, the next step.
func (m *Model) text(room int) page {
	var p page
	take := func(text string, most int, style lipgloss.Style) []string {
		lines := m.paragraph(text, min(most, room), style)
		room -= len(lines)
		return lines
	}
	step, next := m.step(), m.next()
	due, running, runs := m.rest()
	foot := take(m.foot(), 1, m.footStyle())
	title := take(term.Plain(step.Title), 1, m.Styles.Strong)
	p.whose = take(m.whose(), 1, m.digitStyle())
	hold := append(take(m.ownHold(), 1, m.Styles.Text), take(m.dry(), 1, m.Styles.Warn)...)
	caution := marked("! ", step.Caution)
	called := m.dueLines(due, max(min(room, 1), room-len(m.paragraph(caution, room, m.Styles.Warn))))
	called = m.styled(called, m.Styles.Warn)
	room -= len(called)
	warned := take(caution, room, m.Styles.Warn)
	wrong := append(take(m.clockWrong(), 1, m.Styles.Warn), take(m.anew(), 1, m.Styles.Text)...)
	if runs {
		called = append(called, take(m.line(running), 1, m.Styles.Text)...)
	}
	following := take(next, 1, m.Styles.Quiet)
	for _, long := range []struct {
		lines *[]string
		text  string
		style lipgloss.Style
	}{{&title, step.Title, m.Styles.Strong}, {&following, next, m.Styles.Quiet}} {
		if room > 0 { // a second line, where one is not enough
			room += len(*long.lines)
			*long.lines = take(term.Plain(long.text), 2, long.style)
		}
	}
	noted := take(marked("* ", step.Note), 2, m.Styles.Note)
	p.title = title
	p.below = slices.Concat(hold, wrong, called, following, warned, noted, foot)
	return p
}

// marked puts a mark before text, if there is any.
func marked(mark, text string) string {
	if text == "" {
		return ""
	}
	return mark + term.Plain(text)
}

// paragraph breaks text into at most so many lines.
func (m *Model) paragraph(text string, most int, style lipgloss.Style) []string {
	if text == "" || most <= 0 {
		return nil
	}
	width := m.textWidth()
	lines := layout.Wrap(text, width)
	if len(lines) > most {
		lines = append(lines[:most-1], term.Short(strings.Join(lines[most-1:], " "), width))
	}
	return m.styled(lines, style)
}

// styled sets lines of text off the edge.
func (m *Model) styled(lines []string, style lipgloss.Style) []string {
	for i := range lines {
		lines[i] = " " + style.Render(strings.TrimRight(lines[i], " "))
	}
	return lines
}

func (m *Model) textWidth() int { return m.w - 2 }

// step is the step in hand; the zero Step when all are done.
func (m *Model) step() steps.Step {
	list := m.snap.Project.Steps
	if at := steps.Current(list); at >= 0 {
		return list[at]
	}
	return steps.Step{Title: "Every step is done", Short: "DONE"}
}

func (m *Model) shortName() string { return m.step().ShortName() }

func (m *Model) next() string {
	list := m.snap.Project.Steps
	if next := steps.Next(list); next >= 0 {
		return "next: " + term.Plain(list[next].Title)
	}
	if steps.Current(list) >= 0 {
		return "this is the last step"
	}
	return ""
}

// head is the first line: the project, how far it is, the clock.
func (m *Model) head() string {
	list := m.snap.Project.Steps
	left := term.Plain(m.snap.Project.Title)
	if at := steps.Current(list); at >= 0 {
		left = fmt.Sprintf("%s, step %d of %d", left, at+1, len(list))
	}
	right := m.snap.Now.Format("15:04")
	return " " + m.Styles.Quiet.Render(layout.Line(left, m.w-3-len(right))) + " " + m.Styles.Quiet.Render(right) + " "
}

// foot is the last line: the answer to the last key, or as many keys as have room.
func (m *Model) foot() string {
	if m.said.text != "" {
		return "* " + m.said.text
	}
	line := ""
	for _, k := range act.Alive(m) {
		more := "  " + k.Help().Key + " " + k.Brief
		if k.Brief != "" && ansi.StringWidth(line+more) <= m.textWidth()+2 {
			line += more
		}
	}
	return strings.TrimSpace(line)
}

func (m *Model) footStyle() lipgloss.Style {
	if m.said.text != "" {
		return m.Styles.Banner
	}
	return m.Styles.Quiet
}

// onStep tells whether a touch is on the step: its large name or its title.
func (m *Model) onStep(x, y int) bool {
	if layout.Bench(m.w, m.h) != "" || x < 0 || x >= m.w {
		return false
	}
	p := m.page()
	return y >= 1 && y < 1+len(p.name)+len(p.title)
}

// centred sets a block, whose lines are equally wide, in the middle of lines of width
// cells. They are the most cells on the screen: measured once, not line by line.
func centred(block []string, width int, style lipgloss.Style) []string {
	if len(block) == 0 {
		return nil
	}
	wide := lipgloss.Width(block[0])
	indent := strings.Repeat(" ", max(0, (width-wide)/2))
	rest := strings.Repeat(" ", max(0, width-wide-len(indent)))
	around := ink.Around(style)
	out := make([]string, len(block))
	for i, line := range block {
		out[i] = indent + around.Open + line + around.Close + rest
	}
	return out
}
