package earlierpage

import (
	tea "github.com/charmbracelet/bubbletea"

	"chape/project"
	"chape/project/earlier"
	"chape/project/shelf"
	"chape/project/store"
	"chape/ui/act"
	"chape/ui/layout"
	"chape/ui/part"
	"chape/ui/term"
)

// pick is the knife that the earlier sheath was made for being chosen: this one first, then
// those of the shelf.
type pick struct {
	entries []shelf.Entry
	list    part.List
}

// mostOffered is how many projects of the shelf are offered, those changed last first.
const mostOffered = 200

type (
	listedMsg struct { // brings the projects of the shelf
		entries []shelf.Entry
		err     error
	}
	pickedMsg struct { // brings the one that was chosen
		project project.Project
		err     error
	}
)

// askKnife has the shelf listed.
func (m *Model) askKnife() []act.Msg {
	s := m.shelf
	if s == nil {
		return []act.Msg{act.Say{Text: "there is no shelf to choose another knife from"}}
	}
	m.asked = true
	return []act.Msg{act.Do(func() tea.Msg {
		entries, err := s.ByTitle(mostOffered)
		return listedMsg{entries, err}
	})}
}

// listed offers what was listed, unless the page was left or something else begun meanwhile.
func (m *Model) listed(msg listedMsg) []act.Msg {
	wanted := m.asked && m.entry == nil && m.photo == nil
	if m.asked = false; !wanted {
		return nil
	}
	if msg.err != nil {
		return []act.Msg{act.Say{Text: msg.err.Error(), Warn: true}}
	}
	m.pick = &pick{}
	for _, e := range msg.entries {
		if m.snap.Path == "" || store.FullPath(e.Path) != m.snap.Path { // not this one
			m.pick.entries = append(m.pick.entries, e)
		}
	}
	m.scroll()
	for i, e := range m.pick.entries {
		if m.of.Inputs != "" && e.Title == m.of.Title {
			m.pick.list.Choose(i + 1)
		}
	}
	return nil
}

// pickKeys are those while the knife is chosen.
func (m *Model) pickKeys() part.Keys {
	p := m.pick
	if p == nil { // for the help
		p = &pick{}
	}
	return append(part.Keys{
		part.Key("Enter", "it was made for this one", m.choose, "enter").Foot("made for it"),
		part.Key("Esc", "leave it as it is", part.Quiet(func() { m.pick = nil }), "esc").Foot("back"),
	}, p.list.Keys("knife")...)
}

// choose takes the knife in hand.
func (m *Model) choose() []act.Msg {
	at := m.pick.list.At - 1
	if at < 0 {
		m.pick = nil
		if m.snap.Project.MadeFor == (project.MadeFor{}) {
			return nil
		}
		return []act.Msg{act.Commit{Label: "the earlier sheath was made for this knife", Do: func(p *project.Project) error {
			p.MadeFor = project.MadeFor{}
			return nil
		}}}
	}
	s, path := m.shelf, m.pick.entries[at].Path
	return []act.Msg{act.Do(func() tea.Msg {
		p, err := s.Load(path)
		return pickedMsg{p, err}
	})}
}

// picked keeps a copy of the knife that was chosen; one that can't be planned is refused.
func (m *Model) picked(msg pickedMsg) []act.Msg {
	if m.pick == nil {
		return nil // left meanwhile
	}
	made := earlier.Keep(msg.project)
	if msg.err == nil && m.snap.Plan != nil {
		_, msg.err = earlier.KnifeOf(made, m.snap.Plan.Input.Limits)
	}
	if msg.err != nil {
		return []act.Msg{act.Say{Text: msg.err.Error(), Warn: true}}
	}
	m.pick = nil
	return []act.Msg{act.Commit{Label: "the earlier sheath was made for " + term.Short(made.Title, 40), Do: func(p *project.Project) error {
		p.MadeFor = made
		return p.Validate()
	}}}
}

// pickLines are the knives, the one in hand marked.
func (m *Model) pickLines() []string {
	var out []string
	from, to := m.pick.list.Shown()
	for i := from; i < to; i++ {
		name := "this knife"
		if t := m.snap.Project.Title; i == 0 && t != "" {
			name += ", " + term.Plain(t)
		}
		if i > 0 {
			name = term.Plain(m.pick.entries[i-1].Title)
		}
		if i == m.pick.list.At {
			out = append(out, m.Styles.Chosen.Render(layout.Line("> "+name, m.w)))
			continue
		}
		out = append(out, layout.Line("  "+name, m.w))
	}
	return out
}
