package workbench

import (
	"errors"
	"path/filepath"
	"strings"

	"github.com/charmbracelet/bubbles/key"

	"chape/project/store"
	"chape/ui/doc"
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
	case m.bench.On():
		return m.benchView()
	case m.lay.TooSmall != "":
		return strings.Join(layout.Message(m.lay.TooSmall, m.width, m.height), "\n")
	}
	lines := layout.Fit([]string{m.head()}, m.width, 1)
	lines = append(lines, layout.Fit(m.holdsView(), m.width, m.lay.Holds.H)...)
	switch {
	case m.question != nil:
		lines = append(lines, m.questionView()...)
	case m.help != nil:
		lines = append(lines, m.helpView()...)
	case m.at == onShelf:
		lines = append(lines, m.placeView("Shelf: "+m.o.Shelf.Dir(), m.shelf.View())...)
	case m.at == onDrying:
		lines = append(lines, m.placeView("Drying", m.dry.View())...)
	default:
		lines = append(lines, m.panesView()...)
	}
	foot := m.foot()
	if more := len(foot) - 1; more > 0 { // a long message lies over the lowest lines
		lines = lines[:max(0, len(lines)-more)]
	}
	lines = append(lines, layout.Fit(foot, m.width, len(foot))...)
	return strings.Join(lines, "\n")
}

// benchView is the bench view with what must not be missed: a hold that has fallen
// due, and work that is not on the disk.
func (m *Model) benchView() string {
	lines := strings.Split(m.bench.View(), "\n")
	if m.alarm.ringing() && len(lines) > 0 {
		lines[0] = m.head()
	}
	if state := m.doc.State(); (state == doc.Failed || state == doc.Divided) && len(lines) > 0 {
		lines[len(lines)-1] = layout.Line(m.savedText(), m.width)
	}
	return strings.Join(lines, "\n")
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
	case doc.Saved:
		return st.Good.Render("saved")
	case doc.Saving:
		return st.Quiet.Render("saving…")
	case doc.Loose:
		return st.Note.Render("* a copy, not kept: Ctrl+S keeps it")
	case doc.Divided:
		return st.Warn.Render("! changed on both sides")
	case doc.Gone:
		return st.Warn.Render("! the file is gone: Ctrl+S makes it anew")
	case doc.Damaged:
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
	text := term.Plain(err.Error())
	if i := strings.Index(text, "\": "); strings.HasPrefix(text, "\"") && i > 0 {
		text = text[i+3:]
	} else if i := strings.Index(text, "saved: "); i >= 0 {
		text = text[i+len("saved: "):]
	}
	return text
}

func (m *Model) holdsView() []string {
	lines := m.holdLines()
	for i, l := range lines {
		lines[i] = m.o.Styles.Note.Render(l)
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

// mostWords is how many lines a message takes at most.
const mostWords = 3

// foot is the message of the last key, or the keys that matter now.
func (m *Model) foot() []string {
	if text := term.Plain(m.message.Text); text != "" {
		style := m.o.Styles.Text
		if m.message.Warn {
			style, text = m.o.Styles.Warn, "! "+text
		}
		lines := layout.Wrap(text, m.width)
		if len(lines) > mostWords {
			lines = append(lines[:mostWords-1], strings.Join(lines[mostWords-1:], " "))
		}
		for i := range lines {
			lines[i] = style.Render(lines[i])
		}
		return lines
	}
	var parts []string
	for _, b := range m.footKeys() {
		if h := b.Help(); b.Enabled() {
			parts = append(parts, m.plainKeys(h.Key)+" "+h.Desc)
		}
	}
	return []string{m.o.Styles.Quiet.Render(strings.Join(parts, "  "))}
}

// footKeys are the keys that matter where the user is, in few words.
func (m *Model) footKeys() []key.Binding {
	switch {
	case m.question != nil:
		return nil
	case m.help != nil:
		return []key.Binding{key.NewBinding(key.WithHelp("any key", "closes this"))}
	case m.at == onShelf:
		return m.shelfFoot()
	case m.at == onDrying && m.dry.Typing():
		return m.dry.KeyMap.QuestionHelp()
	case m.at == onDrying:
		return append(m.dry.KeyMap.ShortHelp(), m.Keys.Help)
	case m.editing() && m.focus == layout.Knife:
		return []key.Binding{m.knife.Keys.KeepNext, m.knife.Keys.Restore}
	case m.editing():
		return m.steps.KeyMap.QuestionHelp()
	}
	keys := []key.Binding{brief(m.Keys.NextPane, m.focus.Next().String())}
	switch m.focus {
	case layout.Knife:
		keys = append(keys, brief(m.knife.Keys.Next, "next number"))
	case layout.Plan:
		keys = append(keys, brief(m.plan.Keys.NextPage, "next page"), brief(m.plan.Keys.Closer, "closer"))
	default:
		keys = append(keys, brief(m.steps.KeyMap.Tick, "tick"), brief(m.steps.KeyMap.Start, "start hold"))
	}
	return append(keys, brief(m.Keys.Bench, "bench"), brief(m.Keys.Shelf, "shelf"), m.Keys.Undo, brief(m.Keys.Help, "keys"), m.Keys.Quit)
}

func (m *Model) shelfFoot() []key.Binding {
	k := m.shelf.KeyMap
	if m.shelf.Typing() {
		return k.QuestionHelp()
	}
	return []key.Binding{
		k.Open, brief(k.Find, "find"), brief(k.New, "new"), brief(k.From, "new from this"), k.Rename,
		brief(k.Away, "put away"), brief(m.Keys.Help, "keys"), m.Keys.Quit,
	}
}

// brief is a key with fewer words than the help has.
func brief(b key.Binding, does string) key.Binding {
	b.SetHelp(b.Help().Key, does)
	return b
}
