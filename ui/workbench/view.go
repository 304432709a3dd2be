package workbench

import (
	"path/filepath"
	"strings"

	"chape/ui/book"
	"chape/ui/document"
	"chape/ui/layout"
	"chape/ui/term"
)

// View implements tea.Model. Bubble Tea asks after every message, of which some
// change nothing.
func (m *Model) View() string {
	if m.frame == "" {
		m.frame = m.screen()
		if m.o.ascii() {
			m.frame = strings.ReplaceAll(m.frame, "…", "~")
		}
	}
	return m.frame
}

func (m *Model) screen() string {
	switch {
	case m.width <= 0 || m.height <= 0:
		return "" // no size yet
	case m.mode == bench:
		return m.benchView()
	case m.lay.TooSmall != "":
		return m.smallView()
	}
	lines := layout.Fit([]string{m.head()}, m.width, 1)
	lines = append(lines, layout.Fit(m.holdsView(), m.width, m.lay.Holds.H)...)
	body := m.body()
	body = m.alarm.Over(body, m.width, m.edges())
	lines = append(lines, body...)
	foot := m.foot()
	if more := len(foot) - 1; more > 0 { // a long message lies over the lowest lines
		lines = lines[:max(0, len(lines)-more)]
	}
	lines = append(lines, layout.Fit(foot, m.width, len(foot))...)
	return strings.Join(lines, "\n")
}

// body is what stands between holds and foot.
func (m *Model) body() []string {
	switch {
	case m.panel != nil:
		return m.panel.View()
	case m.book.Cover != nil:
		return m.framed(m.book.Cover)
	}
	var blocks [][]string
	for i, l := range m.book.Standing {
		if !m.lay.Panes[i].Empty() {
			blocks = append(blocks, m.framed(l))
		}
	}
	return layout.Beside(blocks...)
}

// framed is a page in its frame.
func (m *Model) framed(l *book.Leaf) []string {
	r := m.rect(l)
	return l.Framed(r.W, r.H, l == m.book.InHand(), m.edgesOf(l))
}

// benchView is the bench view with what must not be missed: a hold that has fallen
// due, work that is not on the disk, what was refused or has failed.
func (m *Model) benchView() string {
	lines := strings.Split(m.book.Cover.Pane.View(), "\n")
	if m.alarm.Ringing() && len(lines) > 0 {
		lines[0] = m.head()
	}
	var low []string
	if m.message.Text != "" {
		low = m.foot()
	}
	switch m.session.Doc().State() {
	case document.Failed, document.Divided, document.Gone, document.Damaged:
		stands := strings.Replace(m.session.Stands(m.o.Styles), "Ctrl+S", "Esc, Ctrl+S", 1) // no key of this view
		if !m.alarm.Ringing() {
			lines[0] = stands
		} else {
			low = append([]string{stands}, low...)
		}
	}
	lines = append(lines[:max(0, len(lines)-len(low))], low...)
	return strings.Join(layout.Fit(lines, m.width, m.height), "\n")
}

// smallView is a screen with no room for more than what must not be missed.
func (m *Model) smallView() string {
	var text []string
	if m.alarm.Ringing() {
		text = append(text, "! "+m.alarm.Text())
	}
	text = append(text, m.lay.TooSmall)
	if line, _ := m.alarm.Nearest(); line != "" && !m.alarm.Ringing() {
		text = append(text, line)
	}
	var lines []string
	for _, t := range text {
		lines = append(lines, layout.Wrap(t, m.width)...)
	}
	return strings.Join(layout.Fit(lines, m.width, m.height), "\n")
}

// head says which project it is and how it stands to its file; while an alarm
// rings it is the banner.
func (m *Model) head() string {
	st := m.o.Styles
	if m.alarm.Ringing() {
		const silence = " - any key silences it"
		text := term.Short("! "+m.alarm.Text(), max(m.width-len(silence), m.width/2))
		return st.Banner.Render(layout.Line(text+silence, m.width))
	}
	if m.bare {
		return st.Strong.Render("no project open")
	}
	title := term.Plain(m.session.Doc().Committed().Title)
	if title == "" {
		title = "no title yet"
	}
	if m.session.Doc().Path() != "" {
		title = st.Strong.Render(title) + st.Quiet.Render("  "+term.Plain(filepath.Base(m.session.Doc().Path())))
	} else {
		title = st.Strong.Render(title)
	}
	return layout.Ends(title, m.session.Stands(m.o.Styles), m.width)
}

func (m *Model) holdsView() []string {
	var lines []string
	for _, l := range m.running {
		lines = append(lines, m.o.Styles.Note.Render(l))
	}
	return lines
}
