package workbench

import (
	"errors"
	"path/filepath"
	"strings"

	"chape/project/steps"
	"chape/project/store"
	"chape/ui/layout"
	"chape/ui/session"
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
	case m.bench.On():
		return m.benchView()
	case m.lay.TooSmall != "":
		return m.smallView()
	}
	lines := layout.Fit([]string{m.head()}, m.width, 1)
	lines = append(lines, layout.Fit(m.holdsView(), m.width, m.lay.Holds.H)...)
	body := m.body()
	if m.alarm.list != nil {
		body = m.missedView(body)
	}
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
	case m.question != nil:
		return m.questionView()
	case m.help != nil:
		return m.helpView()
	case m.sheets != nil:
		return m.sheetsView()
	case m.at == onShelf:
		return m.placeView("Shelf: "+m.o.Shelf.Dir(), m.shelf.View())
	case m.at == onDrying:
		return m.placeView("Drying", m.dry.View())
	}
	return m.panesView()
}

// benchView is the bench view with what must not be missed: a hold that has fallen
// due, and work that is not on the disk.
func (m *Model) benchView() string {
	lines := strings.Split(m.bench.View(), "\n")
	if m.alarm.ringing() && len(lines) > 0 {
		lines[0] = m.head()
	}
	if within(m.now(), m.warned, sayTwice) { // nothing else is said of it there
		lines[len(lines)-1] = layout.Line(m.o.Styles.Warn.Render("! "+m.message.Text), m.width)
	}
	switch m.doc.State() {
	case session.Failed, session.Divided, session.Gone, session.Damaged:
		at := 0
		if m.alarm.ringing() { // the key that silences has no answer below
			at = len(lines) - 1
		}
		lines[at] = layout.Line(m.savedText(), m.width)
	}
	return strings.Join(lines, "\n")
}

// smallView is a screen with no room for more than what must not be missed.
func (m *Model) smallView() string {
	var text []string
	if m.alarm.ringing() {
		text = append(text, "! "+m.alarm.text)
	}
	text = append(text, m.lay.TooSmall)
	if h, ok := steps.Nearest(m.allHolds(), m.now()); ok && !m.alarm.ringing() {
		text = append(text, h.Line(m.now()))
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
	if m.alarm.ringing() {
		return st.Banner.Render(layout.Line("! "+m.alarm.text+" - any key silences it", m.width))
	}
	if m.bare {
		return st.Strong.Render("no project open")
	}
	title := term.Plain(m.doc.Committed().Title)
	if title == "" {
		title = "no title yet"
	}
	if m.doc.Path() != "" {
		title = st.Strong.Render(title) + st.Quiet.Render("  "+term.Plain(filepath.Base(m.doc.Path())))
	} else {
		title = st.Strong.Render(title)
	}
	return layout.Ends(title, m.savedText(), m.width)
}

func (m *Model) savedText() string {
	st := m.o.Styles
	switch m.doc.State() {
	case session.Saved:
		return st.Good.Render("saved")
	case session.Saving:
		return st.Quiet.Render("saving…")
	case session.Loose:
		return st.Note.Render("* a copy, not kept: Ctrl+S keeps it")
	case session.Divided:
		return st.Warn.Render("! changed on both sides")
	case session.Gone:
		return st.Warn.Render("! the file is gone: Ctrl+S makes it anew")
	case session.Damaged:
		var unread *store.Failure
		if errors.As(m.doc.Damage(), &unread) {
			return st.Warn.Render("! the file can't be read: " + unread.Why)
		}
		return st.Warn.Render("! the file was damaged by another program: Ctrl+S puts yours beside it")
	}
	return st.Warn.Render("! NOT SAVED: " + reason(m.doc.Failure()))
}

// reason is why a save failed, without the name of the file, which stands
// beside it.
func reason(err error) string {
	if err == nil {
		return "it will be tried again"
	}
	return term.Plain(store.Reason(err))
}

func (m *Model) holdsView() []string {
	var lines []string
	for _, l := range m.running {
		lines = append(lines, m.o.Styles.Note.Render(l))
	}
	return lines
}

// placeView frames what fills the room between head and foot.
func (m *Model) placeView(title, content string) []string {
	r := m.overlay()
	return layout.Frame(r.W, r.H, term.Plain(title), true, strings.Split(content, "\n"), m.edges())
}

func (m *Model) panesView() []string {
	var blocks [][]string
	for i, r := range m.lay.Panes {
		if !r.Empty() {
			blocks = append(blocks, m.paneView(layout.Pane(i), r))
		}
	}
	return layout.Beside(blocks...)
}

func (m *Model) paneView(p layout.Pane, r layout.Rect) []string {
	if m.drawn[p] == nil {
		m.drawn[p] = m.drawPane(p, r)
	}
	return m.drawn[p]
}

func (m *Model) drawPane(p layout.Pane, r layout.Rect) []string {
	content := ""
	switch p {
	case layout.Knife:
		content = m.knife.View()
	case layout.Plan:
		content = m.plan.View()
	default:
		content = m.steps.View()
	}
	return layout.Frame(r.W, r.H, p.String(), p == m.focus, strings.Split(content, "\n"), m.edges())
}

func (m *Model) edges() layout.Edges {
	st := m.o.Styles
	return layout.Edges{InHand: st.Edge, Plain: st.EdgePlain, Title: st.Heading, ASCII: m.o.ascii()}
}

// overlay is the room between head and foot.
func (m *Model) overlay() layout.Rect {
	y := m.lay.Holds.Y + m.lay.Holds.H
	return layout.Rect{X: 0, Y: y, W: m.width, H: max(0, m.height-y-1)}
}

func (m *Model) questionView() []string {
	r, q := m.overlay(), m.question
	var lines []string
	for _, t := range q.text {
		lines = append(lines, layout.Wrap(term.Plain(t), r.W-4)...)
	}
	lines = append(lines, "")
	for _, c := range q.choices {
		lines = append(lines, m.o.Styles.Strong.Render(c.key)+"  "+term.Plain(c.does))
	}
	if !q.stays {
		lines = append(lines, m.o.Styles.Strong.Render("Esc")+"  go back")
	}
	for i := range lines {
		lines[i] = " " + lines[i]
	}
	return layout.Frame(r.W, r.H, q.title, true, lines, m.edges())
}

func (m *Model) helpView() []string {
	r := m.overlay()
	lines := m.helpLines()
	m.help.top = max(0, min(m.help.top, len(lines)-r.Inner().H))
	title := "Keys"
	if len(lines) > r.Inner().H {
		title = "Keys: up and down for more"
	}
	return layout.Frame(r.W, r.H, title, true, lines[m.help.top:], m.edges())
}
