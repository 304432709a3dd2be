package workbench

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
	"chape/ui/backpage"
	benchview "chape/ui/bench"
	"chape/ui/comparepage"
	"chape/ui/costpage"
	"chape/ui/drypane"
	"chape/ui/earlierpage"
	"chape/ui/knifepane"
	"chape/ui/layout"
	"chape/ui/leatherpage"
	"chape/ui/lookpage"
	"chape/ui/planpane"
	"chape/ui/shelfpane"
	"chape/ui/stepspane"
	"chape/ui/tracepage"
	"chape/ui/tracing"
	"chape/ui/trialpage"
)

// pages are all panes and pages, in the order of the help. This list is the only place
// that knows which there are: a new one is a line here.
func pages(o *Options) []act.Page {
	settings := func() tracing.Settings { return o.Tracing } // of the moment
	return []act.Page{
		knifepane.AsPage(o.Styles),
		planpane.AsPage(o.Styles),
		stepspane.AsPage(o.Clock, o.Styles),
		trialpage.AsPage(o.Styles, o.Shelf),
		earlierpage.AsPage(settings, o.Styles, o.Shelf),
		comparepage.AsPage(o.Styles),
		benchview.AsPage(o.Clock, o.wait, o.Styles),
		shelfpane.AsPage(shelfpane.Options{Shelf: o.Shelf, Begin: o.Begin, Clock: o.Clock, Styles: o.Styles}),
		tracepage.AsPage(o.Clock, settings, o.Styles),
		costpage.AsPage(costpage.Options{Shelf: o.Shelf, Clock: o.Clock, Keep: o.KeepPrice, Styles: o.Styles}),
		backpage.AsPage(backpage.Options{Shelf: o.Shelf, Styles: o.Styles}),
		leatherpage.AsPage(leatherpage.Options{Rack: o.Leather, Shelf: o.Shelf, Print: o.paper, Trace: func() tracing.Settings { return o.Tracing }, Styles: o.Styles}),
		drypane.AsPage(o.Clock, o.Styles),
		lookpage.AsPage(o.Styles),
	}
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
		if l != m.inHand() && matches(l.Open) {
			return l
		}
	}
	return nil
}

// taker is the page that a key opens and goes to.
func (m *Model) taker(k tea.KeyMsg) *leaf {
	if m.inHand().Room >= act.Whole { // it may have another use for it
		return nil
	}
	for _, l := range m.pages {
		if l.Takes != nil && l.Takes(k) {
			return l
		}
	}
	return nil
}

// openers are the keys that open pages other than the one in hand.
func (m *Model) openers() []key.Binding {
	var keys []key.Binding
	for _, l := range m.pages {
		if l != m.inHand() && len(l.Open.Keys()) > 0 {
			keys = append(keys, l.Open)
		}
	}
	return keys
}
