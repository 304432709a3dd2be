package workbench

import (
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/x/ansi"

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
		return lines
	}
	return []string{m.o.Styles.Quiet.Render(m.keyLine(m.footKeys()))}
}

// keyLine names as many keys as fit, and always the last two: the help, and the
// way out.
func (m *Model) keyLine(keys []key.Binding) string {
	var parts []string
	for _, b := range keys {
		if h := b.Help(); b.Enabled() {
			parts = append(parts, panel.KeyName(h.Key, m.o.ascii())+" "+h.Desc)
		}
	}
	const gap = "  "
	for len(parts) > 2 && ansi.StringWidth(strings.Join(parts, gap)) > m.width {
		parts = slices.Delete(parts, len(parts)-3, len(parts)-2)
	}
	return strings.Join(parts, gap)
}

// footKeys are the keys that matter where the user is, in few words.
func (m *Model) footKeys() []key.Binding {
	switch {
	case m.panel != nil:
		return m.panel.Foot()
	case m.at == onShelf:
		return m.shelfFoot()
	case m.at == onDrying && m.dry.Typing():
		return m.dry.KeyMap.QuestionHelp()
	case m.at == onDrying:
		return append(m.dry.KeyMap.ShortHelp(), brief(m.Keys.Help, "keys"), m.Keys.Quit)
	case m.mode == editing && m.focus == layout.Knife:
		return []key.Binding{m.knife.Keys.KeepNext, m.knife.Keys.Restore}
	case m.mode == editing:
		return m.steps.KeyMap.QuestionHelp()
	}
	var more []key.Binding // as far as there is room
	keys := []key.Binding{brief(m.Keys.NextPane, m.focus.Next().String())}
	switch m.focus {
	case layout.Knife:
		k := m.knife.Keys
		more = []key.Binding{brief(k.Source, "marks"), brief(k.AddMark, "add a mark"), brief(k.AddStep, "make a step"), brief(k.AddFit, "trial fit")}
		keys = append(keys, brief(k.Next, "next number"))
	case layout.Plan:
		keys = append(keys, brief(m.plan.Keys.NextPage, "next page"), brief(m.plan.Keys.Closer, "closer"))
		more = []key.Binding{brief(m.plan.Keys.Shape, "whole, half"), brief(m.plan.Keys.All, "all of it")}
	default:
		more = []key.Binding{brief(m.steps.KeyMap.Add, "add"), brief(m.steps.KeyMap.Minutes, "minutes")}
		keys = append(keys, brief(m.steps.KeyMap.Tick, "tick"), brief(m.steps.KeyMap.Start, "start hold"))
	}
	keys = append(keys, brief(m.Keys.Bench, "bench"), brief(m.Keys.Shelf, "shelf"), m.Keys.Undo, brief(m.Keys.Print, "print"))
	return append(append(keys, more...), brief(m.Keys.Help, "keys"), m.Keys.Quit)
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

// sections collects every key from the tables that the parts themselves go by.
func (m *Model) sections() []panel.Section {
	return []panel.Section{
		{Title: "Everywhere, while nothing is typed", Keys: m.Keys.Bindings()},
		{Title: "Knife", Keys: m.knife.Keys.Bindings()},
		{Title: "While a value is typed", Keys: m.knife.Keys.Typing()},
		{Title: "Plan", Keys: m.plan.Keys.Bindings()},
		{Title: "Steps", Keys: slices.Concat(m.steps.KeyMap.FullHelp()...)},
		{Title: "Bench view", Keys: slices.Concat(m.bench.KeyMap.FullHelp()...)},
		{Title: "Shelf", Keys: slices.Concat(m.shelf.KeyMap.FullHelp()...)},
		{Title: "Weighings", Keys: slices.Concat(m.dry.KeyMap.FullHelp()...)},
	}
}

// inHand puts the keys of what is in hand first.
func (m *Model) inHand(all []panel.Section) []panel.Section {
	first := m.focus.String()
	switch m.at {
	case onShelf:
		first = "Shelf"
	case onDrying:
		first = "Weighings"
	}
	i := slices.IndexFunc(all, func(s panel.Section) bool { return s.Title == first })
	if i < 0 {
		return all
	}
	return append([]panel.Section{all[i]}, slices.Delete(slices.Clone(all), i, i+1)...)
}
