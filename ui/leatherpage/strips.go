package leatherpage

import (
	"fmt"

	"chape/calc/bend"
	"chape/calc/length"
	"chape/project/leather"
	"chape/project/report"
	"chape/ui/act"
)

// reading is a row of a strip: a length that stands nowhere but here until it is kept.
func (m *Model) reading(name, hint string, at *float64) row {
	u := m.snap.Unit
	value := ""
	if *at > 0 {
		value = shown(length.Length(*at), u)
	}
	return row{group: "strip", name: name, value: value, unit: u.String(), number: true, hint: hint, set: func(text string) ([]act.Msg, error) {
		if text == value && value != "" {
			return nil, nil
		}
		l, err := length.ParseLeather(text, u)
		switch {
		case err != nil:
			return nil, err
		case l < 0 || l > 2000:
			return nil, fmt.Errorf("%s is no length of a strip: measure again", l.Format(u, length.Ruler))
		}
		*at = l.MM()
		return nil, nil
	}}
}

func (m *Model) openFold() []act.Msg {
	m.fold = bend.Fold{Leather: m.piece().Thickness.MM()}
	m.enterView(viewFold, m.at)
	return nil
}

// foldRows are the readings of a strip folded over a bar.
func (m *Model) foldRows() []row {
	f := &m.fold
	rows := []row{
		m.reading("whole strip", "its whole length, measured flat before it is folded", &f.Strip),
		m.reading("one leg", "from the tangent, where the leather leaves the bar, to its end", &f.LegA),
		m.reading("other leg", "the same on the other side", &f.LegB),
		m.reading("bar", "its diameter, with the calliper", &f.Bar),
		m.reading("leather", "thickness of the strip itself, with the calliper", &f.Leather),
	}
	n, err := f.Neutral()
	value := ""
	if err == nil && n.Believable() && m.fold.Missing() == "" {
		value = fmt.Sprintf("neutral fibre at %.2f ± %.2f of the thickness", n.K, n.Plus)
	}
	keep := func(with bool) func() []act.Msg {
		return func() []act.Msg { return m.keepFold(with) }
	}
	name := "keep it"
	if before := m.piece(); before.Bent() {
		rows = append(rows, row{group: "keep", name: "keep it with those before", value: value, enter: keep(true),
			hint: "Enter: the mean of all strips; before: " + before.Bend()})
		name = "keep it alone"
	}
	return append(rows, row{group: "keep", name: name, value: value, enter: keep(false), hint: "Enter: keep it by the leather's name; two or three strips more make it surer"})
}

// keepFold keeps what the strip tells.
func (m *Model) keepFold(with bool) []act.Msg {
	if name := m.fold.Missing(); name != "" {
		return []act.Msg{act.Say{Text: "not all is measured yet: give " + name, Warn: true}}
	}
	n, err := m.fold.Neutral()
	if err == nil && !n.Believable() {
		err = fmt.Errorf("the neutral fibre would lie outside the leather, at %.2f: measure both legs from the tangent, and look whether the strip lay close on the bar", n.K)
	}
	if err != nil {
		return []act.Msg{act.Say{Text: err.Error(), Warn: true}}
	}
	n.K = min(max(n.K, 0), 1) // as far as the readings can tell
	out, err := m.setPiece(func(l *leather.Leather) error {
		if !with {
			l.Neutral = bend.Neutral{}
		}
		l.Add(n)
		return nil
	})
	if err == nil {
		m.enterView(viewPiece, m.at)
		out = append(out, act.Say{Text: "kept: " + m.piece().Bend() + "; the last line has this sheath reckoned with it"})
	}
	return m.say(out, err)
}

func (m *Model) openPull() []act.Msg {
	m.pull = bend.Strip{Before: bend.Apart(m.snap.Unit).MM()}
	m.enterView(viewPull, m.at)
	return nil
}

// pullRows are the readings of a strip that is pulled.
func (m *Model) pullRows() []row {
	s := &m.pull
	rows := []row{
		m.reading("before", "between the two marks, dry", &s.Before),
		m.reading("pulled", "between the same marks, soaked and while you pull", &s.Pulled),
		m.reading("dried", "between the same marks, dry again and let go; leave it out until it is", &s.Dried),
	}
	value := ""
	if st, err := s.Stretch(); err == nil {
		value = leather.Shares(st)
	}
	return append(rows, row{group: "keep", name: "keep it", value: value, enter: m.keepPull, hint: "Enter: keep it by the leather's name"})
}

func (m *Model) keepPull() []act.Msg {
	st, err := m.pull.Stretch()
	if err != nil {
		return []act.Msg{act.Say{Text: err.Error(), Warn: true}}
	}
	out, err := m.setPiece(func(l *leather.Leather) error {
		l.Stretch, l.Stretched = st, true
		return nil
	})
	if err == nil {
		m.enterView(viewPiece, m.at)
		out = append(out, act.Say{Text: "kept: " + leather.Shares(st)})
	}
	return m.say(out, err)
}

// howTo says what is to be done with a strip, and what comes of it for this sheath.
func (m *Model) howTo() []string {
	switch m.view {
	case viewFold:
		return []string{bend.HowToFold(m.snap.Unit)}
	case viewPull:
		out := []string{bend.HowToStretch(m.snap.Unit)}
		if st, err := m.pull.Stretch(); err == nil {
			out = append(out, m.eased(st))
		}
		return out
	case viewPiece:
		if l := m.piece(); l.Stretched {
			return []string{m.eased(l.Stretch)}
		}
	}
	return nil
}

// eased says what a stretch does to this sheath.
func (m *Model) eased(st bend.Stretch) string {
	if m.snap.Plan == nil {
		return ""
	}
	return report.Eased(m.snap.Plan, st, m.snap.Unit)
}
