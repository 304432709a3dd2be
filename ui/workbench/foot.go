package workbench

import (
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"

	"chape/ui/act"
	"chape/ui/document"
	"chape/ui/layout"
	"chape/ui/panel"
	"chape/ui/term"
)

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
		if m.message.Lasts {
			lines = append(lines, m.keyFoot())
		}
		return lines
	}
	return []string{m.keyFoot()}
}

func (m *Model) keyFoot() string {
	return m.o.Styles.Quiet.Render(panel.KeyLine(m.footKeys(), m.width, m.o.ascii()))
}

// footKeys are the keys that matter where the user is, in few words: what a newcomer looks
// for stands in front, as the last are left out where there is no room.
func (m *Model) footKeys() []key.Binding {
	if m.panel != nil {
		keys, _ := panel.Brief(act.Alive(m.panel))
		return keys
	}
	l := m.book.InHand()
	first, late := panel.Brief(act.Alive(l.Pane))
	if m.mode == editing {
		return first
	}
	var keys []key.Binding
	if m.session.Doc().State() == document.Loose && !m.bare && l.Room < act.Whole {
		keys = append(keys, panel.In(m.Keys.New, "your own knife"))
	}
	var turn, print, opens []key.Binding
	if l.Root&act.Turn != 0 {
		turn = []key.Binding{panel.In(m.Keys.NextPane, m.book.Focus.Next().String())}
	}
	if l.Root&act.Printing != 0 {
		print = []key.Binding{panel.In(m.Keys.Print, "print"), m.Keys.Undo}
		print[1].SetHelp("u", "undo") // its other name is for rows of text
	}
	for _, p := range m.book.Leaves {
		if l.Room < act.Whole && p.Brief != "" {
			opens = append(opens, panel.In(p.Open, p.Brief))
		}
	}
	if n := min(1, len(first)); turn != nil && l.Room != act.InSteps {
		keys = slices.Concat(keys, first[:n], turn, print, first[n:], opens)
	} else { // the bench is nearer than the printer
		keys = slices.Concat(keys, first, turn, opens, print)
	}
	keys = append(append(keys, late...), panel.In(m.Keys.Help, "keys"), m.Keys.Quit)
	if act.Writing(l.Pane) {
		keys = append(panel.WithoutLetters(keys), panel.In(m.Keys.Break, "quit"))
	}
	return keys
}

// sections are the keys of the root and of all pages, those of the page in hand first.
func (m *Model) sections() []panel.Section {
	here, panes := m.rootKeys(m.book.InHand().Root)
	all := []panel.Section{{Title: "Here too, while nothing is typed", Keys: here}}
	if len(panes) > 0 {
		all = append(all, panel.Section{Title: "On Knife, Plan and Steps, where Esc leads", Keys: panes})
	}
	for _, l := range m.book.Leaves {
		if own := panel.Sections(l.Pane); l == m.book.InHand() {
			all = append(own, all...)
		} else {
			all = append(all, own...)
		}
	}
	return append(all, panel.Sections(m.printPanel())...)
}

// rootKeys are the root's own keys and those that open other pages, in the order of the
// help: those that are alive on such a page, and those that are not.
func (m *Model) rootKeys(on act.RootKeys) (alive, not []key.Binding) {
	k := m.Keys
	add := func(r act.RootKeys, keys ...key.Binding) {
		if on&r == r {
			alive = append(alive, keys...)
		} else {
			not = append(not, keys...)
		}
	}
	add(act.Turn, k.NextPane, k.LastPane)
	add(act.Openers, m.book.Openers()...)
	add(0, k.New)
	add(act.Changes, k.Undo, k.Redo)
	add(act.Openers, k.Concern)
	add(act.Saving, k.Keep)
	add(act.Printing, k.Print, k.Raise)
	add(0, k.Help, k.Suspend, k.Quit, k.Break)
	return alive, not
}
