package workbench

import (
	"github.com/charmbracelet/bubbles/key"

	"chape/ui/act"
	benchview "chape/ui/bench"
	"chape/ui/drypane"
	"chape/ui/knifepane"
	"chape/ui/layout"
	"chape/ui/planpane"
	"chape/ui/shelfpane"
	"chape/ui/stepspane"
)

// pages are all panes and pages, in the order of the help. This list is the only place
// that knows which there are: a new one is a line here.
func pages(o *Options) []act.Page {
	return []act.Page{
		knifePage(o),
		planPage(o),
		stepsPage(o),
		benchPage(o),
		shelfPage(o),
		dryPage(o),
	}
}

func stepsPage(o *Options) act.Page {
	return act.Page{Name: "Steps", Room: act.InSteps, Root: act.AllKeys, Ticks: true, New: func() act.Pane {
		return stepspane.New(o.Clock, o.Styles)
	}}
}

func benchPage(o *Options) act.Page {
	return act.Page{
		Name: "Bench view", Room: act.Screen, Brief: "bench", Ticks: true,
		Open: key.NewBinding(key.WithKeys("b"), key.WithHelp("b", "the bench view: one step, one hold, seen from afar")),
		New:  func() act.Pane { return benchview.New(o.Clock, o.Styles) },
	}
}

func dryPage(o *Options) act.Page {
	return act.Page{
		Name: "Drying", Room: act.Whole, Root: act.Changes,
		Open: key.NewBinding(key.WithKeys("w"), key.WithHelp("w", "weighings: when the sheath will be dry")),
		New:  func() act.Pane { return drypane.New(o.Clock, o.Styles) },
	}
}

func shelfPage(o *Options) act.Page {
	if o.Shelf == nil {
		return act.Page{}
	}
	return act.Page{
		Name: "Shelf", Title: "Shelf: " + o.Shelf.Dir(), Room: act.Whole, Brief: "shelf", Lasts: true,
		Open: key.NewBinding(key.WithKeys("o"), key.WithHelp("o", "the shelf: open another project, begin one")),
		New: func() act.Pane {
			return shelfpane.New(shelfpane.Options{Shelf: o.Shelf, Begin: o.Begin, Clock: o.Clock, Styles: o.Styles})
		},
	}
}

func planPage(o *Options) act.Page {
	return act.Page{Name: "Plan", Room: act.InPlan, Root: act.AllKeys, New: func() act.Pane {
		return planpane.New(o.Styles)
	}}
}

func knifePage(o *Options) act.Page {
	return act.Page{Name: "Knife", Room: act.InKnife, Root: act.AllKeys, New: func() act.Pane {
		return knifepane.New(o.Styles)
	}}
}

// leaf is a page as it stands.
type leaf struct {
	act.Page
	pane  act.Pane
	fresh bool     // it has the newest snapshot
	drawn []string // as last drawn; nil: it has to be drawn anew
}

// makePages makes the pages anew, for a project that has just been opened.
func (m *Model) makePages() {
	first := m.pages == nil
	if first {
		for _, p := range pages(&m.o) {
			if p.New != nil {
				m.pages = append(m.pages, &leaf{Page: p})
			}
		}
	}
	m.standing = [layout.Panes]*leaf{}
	for _, l := range m.pages {
		if first || !l.Lasts {
			l.pane = l.New()
		}
		if l.Room < act.Whole && m.standing[l.Room] == nil {
			m.standing[l.Room] = l
		}
	}
	for _, l := range m.standing {
		l.show(m.snapshot()) // before its size: what is in hand comes to stand first
	}
	m.lay = layout.Layout{} // so that all hear their size
	m.stale()
}

// page is the page of a name; nil: there is none.
func (m *Model) page(name string) *leaf {
	for _, l := range m.pages {
		if l.Name == name {
			return l
		}
	}
	return nil
}

// inHand is the page that the keyboard belongs to.
func (m *Model) inHand() *leaf {
	if m.cover != nil {
		return m.cover
	}
	return m.standing[m.focus]
}

// seen tells whether a page is on the screen.
func (m *Model) seen(l *leaf) bool {
	if m.cover != nil {
		return l == m.cover
	}
	return l.Room < act.Whole && m.standing[l.Room] == l && !m.lay.Panes[l.Room].Empty()
}

// stale has every page shown the project anew when it is seen.
func (m *Model) stale() {
	for _, l := range m.pages {
		l.fresh, l.drawn = false, nil
	}
}

// show gives a page the newest snapshot.
func (l *leaf) show(s act.Snapshot) {
	l.pane.SetSnapshot(s)
	l.fresh, l.drawn = true, nil
}

// opener is the page that a key opens.
func (m *Model) opener(matches func(...key.Binding) bool) *leaf {
	for _, l := range m.pages {
		if matches(l.Open) {
			return l
		}
	}
	return nil
}

// openers are the keys that open pages.
func (m *Model) openers() []key.Binding {
	var keys []key.Binding
	for _, l := range m.pages {
		if len(l.Open.Keys()) > 0 {
			keys = append(keys, l.Open)
		}
	}
	return keys
}
