package leatherpage

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"chape/calc/length"
	"chape/project"
	"chape/project/leather"
	"chape/project/money"
	"chape/project/value"
	"chape/ui/act"
	"chape/ui/term"
)

const figureInText = "Enter opens the text, then a figure can be typed"

// lengthRow is a length of the piece in hand.
func (m *Model) lengthRow(name, hint string, at func(*leather.Leather) *length.Length) row {
	u, l := m.snap.Unit, m.piece()
	now := *at(&l)
	return row{group: "piece", name: name, value: shown(now, u), unit: u.String(), number: true, hint: hint, set: func(text string) ([]act.Msg, error) {
		v, err := lengthOr(now, text, u)
		if err != nil {
			return nil, err
		}
		return m.setPiece(func(l *leather.Leather) error { *at(l) = v; return nil })
	}}
}

// degreesRow is an angle of the piece in hand.
func (m *Model) degreesRow(name, hint string, at func(*leather.Leather) *float64) row {
	l := m.piece()
	now := strconv.FormatFloat(*at(&l), 'f', -1, 64)
	return row{group: "grain", name: name, value: now, unit: "degrees", number: true, hint: hint, set: func(text string) ([]act.Msg, error) {
		v, err := strconv.ParseFloat(strings.Replace(strings.TrimRight(strings.TrimSpace(text), "°"), ",", ".", 1), 64)
		if err != nil || math.IsNaN(v) {
			return nil, fmt.Errorf("%.20q is no angle: give degrees, such as 15", text)
		}
		return m.setPiece(func(l *leather.Leather) error { *at(l) = v; return nil })
	}}
}

// pieceRows are the form of a piece.
func (m *Model) pieceRows() []row {
	l := m.piece()
	rows := []row{
		{group: "piece", name: "name", value: term.Plain(l.Name), text: l.Name, words: true, why: figureInText, hint: "what you call it: what is measured of the hide is kept by this name",
			set: func(text string) ([]act.Msg, error) {
				return m.setPiece(func(l *leather.Leather) error { l.Name = strings.TrimSpace(text); return nil })
			}},
		m.lengthRow("thickness", "with a gauge, at several places; only parts as thick as that are cut from it; 8 oz will do", func(l *leather.Leather) *length.Length { return &l.Thickness }),
	}
	if len(l.Corners) == 0 {
		rows = append(rows,
			m.lengthRow("length", "along its lower edge, as it lies grain side up; 0: no piece, its bend and stretch alone", func(l *leather.Leather) *length.Length { return &l.Width }),
			m.lengthRow("width", "up from there", func(l *leather.Leather) *length.Length { return &l.Height }))
	}
	rows = append(rows, m.cornersRow(l), row{group: "piece", name: "from a photograph", enter: m.openPhoto,
		hint: "Enter: lay the piece grain side up on a tracing sheet, photograph it from above, and have its edge read"})
	rows = append(rows, m.flawRows(l)...)
	rows = append(rows, m.grainRows(l)...)
	return append(rows, m.hideRows(l)...)
}

// cornersRow is the edge of an odd piece.
func (m *Model) cornersRow(l leather.Leather) row {
	u := m.snap.Unit
	text := value.SayPairs(l.Corners, u)
	example := "0 20; 300 0; 420 60; 410 330"
	if u == length.Inches {
		example = "0 3/4; 12 0; 16-1/2 2-1/2; 16 13"
	}
	return row{group: "piece", name: "corners", value: text, places: true,
		hint: `an odd piece: square to two rules, how far along and how far up each corner is, in their order round it: "` + example + `"; empty: a rectangle`,
		set: func(typed string) ([]act.Msg, error) {
			if typed == text {
				return nil, nil
			}
			at, err := value.Pairs(typed, u)
			if err != nil {
				return nil, err
			}
			return m.setPiece(func(l *leather.Leather) error {
				l.Corners = at
				if len(at) > 0 {
					l.Width, l.Height = 0, 0
				}
				return nil
			})
		}}
}

// flawRows are the places to keep off.
func (m *Model) flawRows(l leather.Leather) []row {
	u := m.snap.Unit
	hint := `how far along, how far up its middle is, and how far it is across: "330 300 30"; or corners: "0 0; 30 0; 30 40"`
	if u == length.Inches {
		hint = `how far along, how far up its middle is, and how far it is across: "12 10-1/2 1"; or corners: "0 0; 1 0; 1 1-1/2"`
	}
	var rows []row
	for i, f := range l.Flaws {
		text := f.Say(u)
		rows = append(rows, row{group: "flaws", name: fmt.Sprintf("flaw %d", i+1), value: text, places: true, hint: hint + "; " + removeKey + " takes it out",
			set: func(typed string) ([]act.Msg, error) {
				if typed == text {
					return nil, nil
				}
				f, err := l.ReadFlaw(typed, u)
				if err != nil {
					return nil, err
				}
				return m.setPiece(func(l *leather.Leather) error { l.Flaws[i] = f; return nil })
			},
			remove: func() []act.Msg {
				return m.say(m.setPiece(func(l *leather.Leather) error { l.Flaws = slices.Delete(l.Flaws, i, i+1); return nil }))
			}})
	}
	return append(rows, row{group: "flaws", name: "another flaw", text: " ", stays: true, places: true, hint: hint, set: func(typed string) ([]act.Msg, error) {
		if strings.TrimSpace(typed) == "" {
			return nil, nil
		}
		f, err := l.ReadFlaw(typed, u)
		if err != nil {
			return nil, err
		}
		return m.setPiece(func(l *leather.Leather) error { l.Flaws = append(l.Flaws, f); return nil })
	}})
}

// grainRows are which way the piece stretches.
func (m *Model) grainRows(l leather.Leather) []row {
	word := "free: any turn"
	if l.Fixed {
		word = "counts: the fold lies along it"
	}
	turn := func() []act.Msg {
		return m.say(m.setPiece(func(l *leather.Leather) error { l.Fixed = !l.Fixed; return nil }))
	}
	rows := []row{{group: "grain", name: "grain", value: word, space: turn, enter: turn, below: l.Fixed, why: "Enter first: the grain counts; then type which way it runs",
		hint: "Space: whether it matters which way the fold lies; a sheath is to stretch least along its fold"}}
	if l.Fixed {
		rows = append(rows,
			m.degreesRow("runs at", "the way it stretches least, from its lower edge, counter-clockwise", func(l *leather.Leather) *float64 { return &l.Grain }),
			m.degreesRow("within", "so far may the fold lie off it", func(l *leather.Leather) *float64 { return &l.Within }))
	}
	return rows
}

// hideRows are the hide's own figures, and whether this sheath is cut from it.
func (m *Model) hideRows(l leather.Leather) []row {
	bent, gives := "not measured", "not measured"
	if l.Bent() {
		bent = l.Bend()
	}
	if l.Stretched {
		gives = leather.Shares(l.Stretch)
	}
	forget := func(do func(*leather.Leather)) func() []act.Msg {
		return func() []act.Msg {
			return m.say(m.setPiece(func(l *leather.Leather) error { do(l); return nil }))
		}
	}
	return []row{
		m.priceRow(l),
		{group: "hide", name: "bend", value: bent, hint: "Enter: measure it on a strip folded over a bar; " + removeKey + " forgets it",
			enter: m.openFold, remove: forget(func(l *leather.Leather) { l.Neutral.Of = 0 })},
		{group: "hide", name: "stretch", value: gives, hint: "Enter: measure it on a strip wetted and pulled; " + removeKey + " forgets it",
			enter: m.openPull, remove: forget(func(l *leather.Leather) { l.Stretched = false })},
		{group: "hide", name: "cut this sheath from it", value: l.HeldBy(m.snap.Project), enter: m.choose,
			hint: "Enter: the project takes its name, thickness and price and, where it was measured, its bend; u takes it back"},
	}
}

// priceRow is what the piece costs, by the area of its price, else by that of the unit.
func (m *Model) priceRow(l leather.Leather) row {
	text, unit, feet := l.Price.M2, "a m²", l.Price.Ft2 != "" || l.Price.M2 == "" && m.snap.Unit == length.Inches
	if feet {
		text, unit = l.Price.Ft2, "a ft²"
	}
	r := row{group: "hide", name: "price", value: cmp.Or(text, "that of the settings"), text: cmp.Or(text, " "), number: true,
		hint: "what this leather cost, " + unit + ", as in 92.50; empty: the price of your settings; the last line takes it into this sheath",
		set: func(typed string) ([]act.Msg, error) {
			typed = strings.ReplaceAll(strings.TrimSpace(typed), ",", ".")
			return m.setPiece(func(l *leather.Leather) error {
				l.Price = money.ByArea{M2: typed}
				if feet {
					l.Price = money.ByArea{Ft2: typed}
				}
				return nil
			})
		}}
	if text != "" {
		r.unit = unit
	}
	return r
}

// choose has the sheath cut from the piece in hand.
func (m *Model) choose() []act.Msg {
	l := m.piece()
	label := "leather " + term.Plain(l.Name)
	if l.Bent() {
		label += fmt.Sprintf(", bend %.3g", l.Allowance())
	}
	return m.commit(label, func(p *project.Project) error {
		l.Onto(p)
		return p.Validate()
	})
}

// addPart adds a part to the project and opens its form.
func (m *Model) addPart() []act.Msg {
	n := len(m.snap.Project.Added)
	long, wide := length.Length(60), length.Length(30)
	if m.snap.Unit == length.Inches { // round figures there
		long, wide = 2.5*length.Inch, 1.25*length.Inch
	}
	out := m.commit("another part", func(p *project.Project) error {
		p.Added = append(p.Clone().Added, project.Part{Name: fmt.Sprintf("part %d", n+1), Count: 1, Length: long, Width: wide})
		return p.Validate()
	})
	if _, added := out[0].(act.Commit); added {
		m.enterView(viewPart, n)
	}
	return out
}

func (m *Model) dropPart(i int) []act.Msg {
	was := m.snap.Project.Added[i]
	return m.commit("take out "+term.Plain(was.Name), func(p *project.Project) error {
		if i >= len(p.Added) || p.Added[i] != was {
			return fmt.Errorf("the parts have changed meanwhile: choose again")
		}
		p.Added = slices.Delete(p.Clone().Added, i, i+1)
		return nil
	})
}

// partRows are the form of an added part, by the fields of the project.
func (m *Model) partRows() []row {
	p := m.snap.Project
	if m.at >= len(p.Added) {
		return nil
	}
	var rows []row
	for _, f := range project.AddedFields(m.at) {
		r := row{group: "part", name: f.Name, value: term.Plain(f.Show(p)), text: f.Show(p), unit: f.Unit(p), hint: f.Hint,
			number: f.Kind == project.Length || f.Kind == project.Leather || f.Kind == project.Count}
		halves := f.Key == "part.halves"
		if r.places = halves; halves && m.snap.Unit == length.Inches {
			r.hint = `in place of length and width: places along its middle and half-widths there, "0 3/8; 1-1/2 3/4; 3 1/4"`
		}
		if f.Key == "part.name" {
			r.words, r.why = true, figureInText
		}
		if halves && p.Added[m.at].Halves != "" {
			at, _ := value.Pairs(p.Added[m.at].Halves, length.Millimetres)
			r.value = value.SayPairs(at, m.snap.Unit)
			r.text = r.value
		}
		if f.Key == "part.thickness" && p.Added[m.at].Thickness == 0 {
			r.value, r.unit = "the body's", ""
		}
		r.set = func(text string) ([]act.Msg, error) {
			if halves && text != r.text {
				at, err := value.Pairs(text, m.snap.Unit)
				if err != nil {
					return nil, err
				}
				text = value.SayPairs(at, length.Millimetres)
			} else if halves {
				return nil, nil
			}
			v, err := f.Parse(text, p)
			if err != nil {
				return nil, err
			}
			q := p.Clone()
			if err := f.Set(&q, v); err != nil {
				return nil, err
			}
			return m.commit(f.Name+" of "+term.Plain(p.Added[m.at].Name), func(p *project.Project) error { return f.Set(p, v) }), nil
		}
		rows = append(rows, r)
	}
	return rows
}
