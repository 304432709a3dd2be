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
	rows := m.rootKeys()
	named := func(is func(rootKey) bool) (keys []key.Binding) {
		for _, r := range rows {
			if r.Brief != "" && is(r) && m.alive(r) {
				b := panel.In(r.Binding, r.Brief)
				b.SetHelp(r.Name(b.Keys()[0]), r.Brief) // its other name is for rows of text
				keys = append(keys, b)
			}
		}
		return keys
	}
	of := func(on act.RootKeys) []key.Binding {
		return named(func(r rootKey) bool { return r.on == on && r.in == nil && !r.yields })
	}
	var keys, opens []key.Binding
	if m.session.Doc().State() == document.Loose && !m.bare && l.Room < act.Whole {
		keys = named(func(r rootKey) bool { return r.yields })
	}
	turn, print := of(act.Turn), of(act.Printing)
	if print != nil {
		print = append(print, of(act.Changes)...)
	}
	if l.Room < act.Whole {
		opens = of(act.Openers)
	}
	if n := min(1, len(first)); turn != nil && l.Room != act.InSteps {
		keys = slices.Concat(keys, first[:n], turn, print, first[n:], opens)
	} else { // the bench is nearer than the printer
		keys = slices.Concat(keys, first, turn, opens, print)
	}
	keys = slices.Concat(keys, late, of(0))
	if act.Writing(l.Pane) {
		keys = append(panel.WithoutLetters(keys), named(func(r rootKey) bool { return r.in != nil })...)
	}
	return keys
}

// sections are the keys of the root and of all pages, those of the page in hand first.
func (m *Model) sections() []panel.Section {
	here, panes := panel.Section{Title: "Here too, while nothing is typed"}, panel.Section{Title: "On Knife, Plan and Steps, where Esc leads"}
	if m.bare {
		panes.Title = "On Knife, Plan and Steps, once a project is open"
	}
	for _, r := range m.rootKeys() {
		if m.alive(r) {
			here.Keys = append(here.Keys, r.Binding)
		} else {
			panes.Keys = append(panes.Keys, r.Binding)
		}
	}
	all := []panel.Section{here}
	if len(panes.Keys) > 0 {
		all = append(all, panes)
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
