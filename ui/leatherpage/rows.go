package leatherpage

import (
	"fmt"
	"slices"

	"chape/calc/length"
	"chape/project/leather"
	"chape/project/takes"
	"chape/ui/act"
	"chape/ui/term"
)

// row is a line of the page: a value that is typed, a choice, or something to be done.
type row struct {
	group  string // stands in the margin, before the first of its group
	name   string
	value  string
	unit   string
	hint   string
	text   string // what is typed over; "": value
	number bool   // a measuring tool may type here
	words  bool   // letters begin the text anew
	places bool   // figures begin it: a list of places
	below  bool   // a number typed here is the next row's
	why    string // no number can be typed here; "": as elsewhere
	stays  bool   // what is typed adds to the list above: there may be more of it
	set    func(text string) ([]act.Msg, error)
	enter  func() []act.Msg
	space  func() []act.Msg
	remove func() []act.Msg
}

// row is the one in hand.
func (m *Model) row() (row, bool) {
	rows := m.rows()
	if m.list.At >= len(rows) {
		return row{}, false
	}
	return rows[m.list.At], true
}

// rows are the lines of the view that is open.
func (m *Model) rows() []row {
	switch m.view {
	case viewPiece:
		return m.pieceRows()
	case viewPart:
		return m.partRows()
	case viewFold:
		return m.foldRows()
	case viewPull:
		return m.pullRows()
	case viewPhoto:
		return nil
	}
	return slices.Concat(m.rackRows(), m.cutRows(), m.placeRows())
}

// tick is a box, ticked or not.
func tick(on bool) string {
	if on {
		return "[x] "
	}
	return "[ ] "
}

// rackRows are the pieces of leather.
func (m *Model) rackRows() []row {
	var rows []row
	u := m.snap.Unit
	for i, l := range m.rack.Stock().Pieces {
		r := row{group: "from", name: tick(l.Sized() && !l.Aside) + term.Plain(l.Name), value: l.Size(u),
			hint:  "Space: cut from it, or not; Enter: its size, flaws, grain, bend; " + removeKey + " takes it out; " + upKey + ": use it earlier",
			enter: func() []act.Msg { m.enterView(viewPiece, i); return nil },
			remove: func() []act.Msg {
				return m.say(m.change(func(s *leather.Stock) error { s.Pieces = slices.Delete(s.Pieces, i, i+1); return nil }))
			},
		}
		if l.Name == m.snap.Project.Hide.Name {
			r.value += ", this sheath's"
		}
		r.space = func() []act.Msg {
			return m.say(m.change(func(s *leather.Stock) error { s.Pieces[i].Aside = !l.Aside; return nil }))
		}
		rows = append(rows, r)
	}
	return append(rows, row{group: "from", name: "another piece of leather", hint: "Enter: a new piece, to be measured", enter: m.addPiece})
}

// addPiece adds a piece and opens its form.
func (m *Model) addPiece() []act.Msg {
	out, err := m.change(func(s *leather.Stock) error {
		l := leather.New(s.Free("offcut"))
		if m.snap.Unit == length.Inches { // round figures there
			l.Width, l.Height = 304.8, 203.2 // 12 × 8
		}
		l.Thickness = m.snap.Project.Sheath.Leather
		s.Pieces = append(s.Pieces, l)
		return nil
	})
	if err == nil {
		m.enterView(viewPiece, len(m.rack.Stock().Pieces)-1)
		m.added = len(m.done)
	}
	return m.say(out, err)
}

// takeBack takes a piece out again that was added and left as it was.
func (m *Model) takeBack() []act.Msg {
	if m.view != viewPiece || m.added == 0 || m.added != len(m.done) {
		return nil
	}
	out, ok := m.rack.Undo()
	if !ok {
		return nil
	}
	m.done = m.done[:m.added-1]
	return append(append(out, m.chose(false)...), act.Say{Text: "no new piece: nothing was typed of it"})
}

// say puts an error in the place of what was to be done.
func (m *Model) say(out []act.Msg, err error) []act.Msg {
	if err != nil {
		return []act.Msg{act.Say{Text: term.Plain(err.Error()), Warn: true}}
	}
	return out
}

// earlier has a piece used before the one above it.
func (m *Model) earlier() []act.Msg {
	i := m.list.At
	if m.view != viewAll || i == 0 || i >= len(m.rack.Stock().Pieces) {
		return nil
	}
	out, err := m.change(func(s *leather.Stock) error {
		s.Pieces[i-1], s.Pieces[i] = s.Pieces[i], s.Pieces[i-1]
		return nil
	})
	if err == nil {
		m.list.Move(-1)
	}
	return m.say(out, err)
}

// cutRows are what is to be cut: this project with the parts added to it, and others.
func (m *Model) cutRows() []row {
	p := m.snap.Project
	value := "no plan yet"
	if m.snap.Plan != nil {
		value = leather.PartsOf(m.snap.Plan)
	}
	rows := []row{{group: "cut", name: "[x] " + term.Plain(p.Title), value: value, hint: "the parts of this sheath"}}
	for i, a := range p.Added {
		rows = append(rows, row{group: "cut", name: "    " + term.Plain(leather.Added(a)), value: leather.SizeOf(a, m.snap.Unit),
			hint:   "Enter: its size; " + removeKey + " takes it out",
			enter:  func() []act.Msg { m.enterView(viewPart, i); return nil },
			remove: func() []act.Msg { return m.dropPart(i) }})
	}
	rows = append(rows, row{group: "cut", name: "    another part of this sheath", hint: "Enter: a part of your own, by length and width or by half-widths", enter: m.addPart})
	for _, o := range m.others {
		if o.Is(m.snap.Path) {
			continue
		}
		flip := func() []act.Msg { return m.tickOther(o.Path) }
		value := ""
		if o.On && o.Work.Plan == nil {
			value = "being read"
		}
		rows = append(rows, row{group: "cut", name: tick(o.On) + term.Plain(o.Title), value: value,
			hint: "Space: cut it from the same leather, or not", space: flip, enter: flip})
	}
	return rows
}

// placeRows are the gap, the search and what comes of it.
func (m *Model) placeRows() []row {
	u := m.snap.Unit
	gap := m.rack.Stock().Gap
	rows := []row{
		{group: "place", name: "gap", value: shown(gap, u), unit: u.String(), number: true, hint: "the least there is between two parts: room for the knife",
			set: func(text string) ([]act.Msg, error) {
				l, err := lengthOr(gap, text, u)
				if err != nil {
					return nil, err
				}
				return m.change(func(s *leather.Stock) error { s.Gap = l; return nil })
			}},
		{group: "place", name: "place the parts", hint: "Enter: look for a good way to lay them; Esc breaks it off and keeps the best so far", enter: m.search},
	}
	h := m.snap.Project.Hide
	if m.laid == nil || len(m.laid.Result.Placements) == 0 {
		if !h.Placed {
			return rows
		}
		r := row{group: "place", name: "the cost is reckoned with", value: m.kept(), remove: m.forgetYield,
			hint: "as the parts were placed; " + removeKey + " goes back to the settings' share for offcuts"}
		if m.stale() {
			r.name = "an earlier pattern's"
			r.hint = "the pattern has changed since its parts were placed, so the settings' share for offcuts counts: place them again; " + removeKey + " takes the old yield out"
		}
		return append(rows, r)
	}
	cost := row{group: "place", name: "reckon the cost with it", value: fmt.Sprintf("yield %.0f %%", 100*m.laid.Result.Yield()), enter: m.keepYield,
		hint: "Enter: the leather to buy is reckoned with what this placing loses, not with a share for offcuts"}
	if h.Placed {
		cost.value += ", so far " + m.kept()
		cost.remove = m.forgetYield
	}
	return append(rows, cost, row{group: "place", name: "print it", enter: m.print, hint: "Enter: a PDF at 1:4, or smaller, with dimensions, and an SVG at true size"})
}

// kept says the yield that the cost is reckoned with.
func (m *Model) kept() string {
	s := fmt.Sprintf("yield %.0f %%", 100/(1+m.snap.Project.Hide.Lost))
	if m.stale() {
		s += ", not counted"
	}
	return s
}

// stale tells whether that yield is of an earlier pattern.
func (m *Model) stale() bool {
	return m.snap.Plan != nil && takes.Stale(m.snap.Project, m.snap.Plan)
}

// shown is a length as it stands on a line, in inches as a rule or a gauge has them.
func shown(l length.Length, u length.Unit) string {
	if u == length.Inches {
		return l.Figure(u, length.Calliper)
	}
	return l.Short(u)
}

// lengthOr reads a length; the text that stands is the value as it is.
func lengthOr(now length.Length, text string, u length.Unit) (length.Length, error) {
	if text == shown(now, u) {
		return now, nil
	}
	return length.ParseLeather(text, u)
}
