package earlierpage

import (
	"errors"
	"math"
	"slices"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/earlier"
	"chape/project/plain"
	"chape/ui/act"
	"chape/ui/part"
)

// entry is a line being typed, and what keeping it does.
type entry struct {
	*part.Ask
	keep  func(text string) ([]act.Msg, error)
	typed func(text string) // after each key; nil: nothing
}

const longest = 60

func (m *Model) ask(label, text string, number bool, keep func(string) ([]act.Msg, error)) {
	a := part.NewAsk(label, text, longest)
	a.Number = number
	a.SetWidth(m.w)
	m.entry = &entry{Ask: a, keep: keep}
}

func (m *Model) drop() { m.entry, m.made, m.fits = nil, nil, nil }

// reply takes a key while a line is typed.
func (m *Model) reply(p part.Press) []act.Msg {
	e := m.entry
	switch e.Take(p) {
	case part.Typed:
		if e.typed != nil {
			e.typed(e.Text())
		}
	case part.Dropped:
		m.drop()
	case part.Kept:
		if p.Held {
			return nil
		}
		out, err := e.keep(e.Text())
		if err != nil {
			e.Refuse(err, p)
			return nil
		}
		if m.entry == e {
			m.drop()
		}
		return out
	}
	return nil
}

// parsed reads a field's text.
func (m *Model) parsed(i int, text string) (length.Length, error) {
	v, err := project.EarlierFields(0)[i].Parse(text, project.Project{Units: m.snap.Unit, Earlier: []project.Half{{}}})
	if err != nil {
		return 0, err
	}
	l, _ := v.(length.Length)
	return l, nil
}

// askAt begins a half-width: first its place.
func (m *Model) askAt(text string) []act.Msg {
	m.ask("Where along the fold, from the knife's point ("+m.snap.Unit.String()+")?", text, true, func(text string) ([]act.Msg, error) {
		at, err := m.parsed(0, text)
		if err != nil {
			return nil, err
		}
		m.askWide(at)
		return nil, nil
	})
	return nil
}

// askWide asks how wide it is there. It is measured to the line the one before was.
func (m *Model) askWide(at length.Length) {
	line, words := "edge", "finished edge"
	if n := len(m.snap.Project.Earlier); n > 0 {
		line = m.snap.Project.Earlier[n-1].Line
	}
	if line != "edge" {
		words = "stitch line"
	}
	m.ask("How far from the fold to the "+words+" at "+at.Short(m.snap.Unit)+"?", "", true, func(text string) ([]act.Msg, error) {
		wide, err := m.parsed(1, text)
		if err != nil {
			return nil, err
		}
		h := project.Half{At: at, Wide: wide, Line: line}
		label := "half-width " + wide.Short(m.snap.Unit) + " at " + at.Short(m.snap.Unit)
		return []act.Msg{act.Commit{Label: label, Do: func(p *project.Project) error {
			all := p.Clone().Earlier
			all = slices.DeleteFunc(all, func(o project.Half) bool { return o.At == at && o.Line == line }) // measured again
			p.Earlier = append(all, h)
			return p.Validate()
		}}}, nil
	})
}

var errOther = errors.New("the half-widths have changed meanwhile: choose again")

// change is a commit to the half-width of a row, if it is still what it was.
func (m *Model) change(label string, r earlier.Row, do func([]project.Half, int) []project.Half) []act.Msg {
	was := m.snap.Project.Earlier[r.Index]
	return []act.Msg{act.Commit{Label: label, Do: func(p *project.Project) error {
		if r.Index >= len(p.Earlier) || p.Earlier[r.Index] != was {
			return errOther
		}
		p.Earlier = do(p.Clone().Earlier, r.Index)
		return p.Validate()
	}}}
}

func (m *Model) turnLine(r earlier.Row) []act.Msg {
	line, words := "stitches", "stitch line"
	if r.Line == line {
		line, words = "edge", "finished edge"
	}
	return m.change("measured to the "+words, r, func(all []project.Half, i int) []project.Half {
		all[i].Line = line
		return all
	})
}

func (m *Model) remove(r earlier.Row) []act.Msg {
	return m.change("take out the half-width at "+length.Length(r.At).Short(m.snap.Unit), r, func(all []project.Half, i int) []project.Half {
		return slices.Delete(all, i, i+1)
	})
}

// askTake asks what of the difference is taken over; the drawing shows it.
func (m *Model) askTake() []act.Msg {
	g := m.toTake
	if m.wrong != nil {
		return []act.Msg{act.Say{Text: m.wrong.Error(), Warn: true}}
	}
	if len(g.X) < 2 {
		return []act.Msg{act.Say{Text: "two half-widths at least, at different places: type a place, Enter, the half-width, Enter"}}
	}
	u := m.snap.Unit
	lo, hi := math.Max(0, g.X[0]), g.X[len(g.X)-1]
	if m.knife.Title != "" { // carried places lie anywhere: as a ruler shows them, inside
		step := 0.5
		if u == length.Inches {
			step = (length.Inch / 32).MM()
		}
		lo, hi = math.Ceil(lo/step-1e-9)*step+0, math.Floor(hi/step+1e-9)*step
		if math.Max(g.Max(), g.Neg().Max()) <= earlier.Follow {
			return []act.Msg{act.Say{Text: "nothing is left to take over: with its corrections this plan follows that sheath within " + length.Length(earlier.Follow).Format(u, length.Ruler)}}
		}
	}
	hi = math.Min(hi, m.snap.Project.Sheath.Mouth.MM())
	m.offer = [2]float64{lo, hi}
	text := "100 % from " + length.Length(lo).Short(u) + " to " + length.Length(hi).Short(u)
	whose := "along the fold"
	if m.knife.Title != "" {
		whose = "along this knife, carried over by the landmarks of both"
	}
	m.ask("How much of the difference, and from where to where "+whose+" ("+u.String()+")? A share alone, as 50, leaves the stretch; ← goes into the line.", text, false, func(text string) ([]act.Msg, error) {
		fits, err := m.taken(text)
		if err != nil {
			return nil, err
		}
		return []act.Msg{act.Commit{Label: plain.Many(len(fits), "correction") + " from the earlier sheath", Do: func(p *project.Project) error {
			p.Fits = append(p.Clone().Fits, fits...)
			return p.Validate()
		}}, act.Say{Text: plain.Many(len(fits), "correction") + " taken over: see the trial fit page (T)"}}, nil
	})
	m.entry.typed, m.entry.Fresh = m.draw, true
	m.draw(text)
	return nil
}

// draw shows what a text would take over, as far as it can be read.
func (m *Model) draw(text string) {
	m.made, m.fits = nil, nil
	m.entry.Say("", nil)
	fits, err := m.taken(text)
	if err != nil || m.snap.Plan == nil {
		return
	}
	_, lo, hi, _ := m.extent(text)
	m.entry.Say(earlier.RunsOut(fits, lo, hi, m.snap.Project.Sheath.Mouth.MM(), m.snap.Unit), nil)
	p := m.snap.Project.Clone()
	p.Fits = append(p.Fits, fits...)
	if plan, err := calc.Compute(p.Input(m.snap.Plan.Input.Limits)); err == nil {
		m.made, m.fits = plan, fits
	}
}

// taken are the corrections of a text such as "50 % from 80 to 150".
func (m *Model) taken(text string) ([]project.Fit, error) {
	share, lo, hi, err := m.extent(text)
	if err != nil {
		return nil, err
	}
	fits, _ := earlier.Corrections(m.toTake, share, lo, hi)
	if len(fits) == 0 {
		return nil, errors.New("there is no difference to take over there: give a longer stretch, or Esc")
	}
	return fits, nil
}
