package leatherpage

import (
	"fmt"
	"path/filepath"

	"chape/calc"
	"chape/project/leather"
	"chape/project/plain"
	"chape/ui/act"
	"chape/ui/leatherpage/jobs"
	"chape/ui/term"
)

// kind is whose a change is.
type kind uint8

const (
	ofRack kind = iota
	ofProject
)

// read takes on what was on the disk.
func (m *Model) read(msg jobs.Read) []act.Msg {
	m.others = m.others.Renewed(msg.Others)
	m.rack.Take(msg)
	out := m.chose(true)
	for _, path := range m.rack.Stock().With {
		if m.o.Shelf != nil && !m.others.Have(path) {
			out = append(out, act.Say{Text: term.Plain(filepath.Base(path)) + " was to be cut from the same leather: it can't be read on the shelf, and is left out", Warn: true})
		}
	}
	return out
}

// change changes the leather: one step of undo, one save.
func (m *Model) change(do func(*leather.Stock) error) ([]act.Msg, error) {
	out, err := m.rack.Change(do)
	if err == nil {
		m.done = append(m.done, ofRack)
		out = append(out, m.chose(false)...)
	}
	return out, err
}

// chose follows the leather in what else is cut from it.
func (m *Model) chose(again bool) []act.Msg {
	limits := calc.DefaultLimits()
	if m.snap.Plan != nil {
		limits = m.snap.Plan.Input.Limits // the user's
	}
	out := m.others.Choose(m.rack.Stock().With, m.snap.Path, again, m.o.Shelf, limits)
	m.review()
	return out
}

// undo takes the last change on this page back; changes of the project are the root's.
func (m *Model) undo() []act.Msg {
	n := len(m.done)
	if n > 0 && m.done[n-1] == ofRack {
		if out, ok := m.rack.Undo(); ok {
			m.done = m.done[:n-1]
			return m.moved(out, "undone: the change to the leather")
		}
	}
	m.done = m.done[:max(n-1, 0)]
	return []act.Msg{act.Undo{}}
}

// redo makes it again.
func (m *Model) redo() []act.Msg {
	out, ok := m.rack.Redo()
	if !ok {
		return []act.Msg{act.Undo{Redo: true}}
	}
	m.done = append(m.done, ofRack)
	return m.moved(out, "redone: the change to the leather")
}

func (m *Model) moved(out []act.Msg, text string) []act.Msg {
	if m.view != viewAll && m.view != viewPart && m.at >= len(m.rack.Stock().Pieces) {
		m.home()
	}
	return append(append(out, m.chose(false)...), act.Say{Text: text})
}

// tickOther takes another project along, or not.
func (m *Model) tickOther(path string) []act.Msg {
	return m.say(m.change(func(s *leather.Stock) error { s.Take(path); return nil }))
}

// worked takes on another project that was read; one that can't be cut is not taken along.
func (m *Model) worked(msg jobs.Planned) []act.Msg {
	failed, out := m.others.Take(msg)
	if failed != "" {
		out = append(m.rack.Forget(failed), out...)
		return append(out, m.chose(false)...)
	}
	m.review()
	return out
}

// works are the projects to be cut: the one in hand, as it stands here, first.
func (m *Model) works() []leather.Work {
	var out []leather.Work
	if m.snap.Plan != nil {
		out = append(out, leather.Work{Project: m.snap.Project, Plan: m.snap.Plan})
	}
	return append(out, m.others.Works(m.snap.Path)...)
}

// piece is the leather whose form is open.
func (m *Model) piece() leather.Leather {
	if m.at < len(m.rack.Stock().Pieces) {
		return m.rack.Stock().Pieces[m.at]
	}
	return leather.Leather{}
}

// setPiece changes it.
func (m *Model) setPiece(do func(*leather.Leather) error) ([]act.Msg, error) {
	i := m.at
	return m.change(func(s *leather.Stock) error {
		if i >= len(s.Pieces) {
			return fmt.Errorf("this leather is gone: Esc goes back")
		}
		if err := do(&s.Pieces[i]); err != nil {
			return err
		}
		if err := s.Pieces[i].Validate(); err != nil {
			return err
		}
		if j := s.Find(s.Pieces[i].Name); j != i {
			return fmt.Errorf("%s is another's name: give each its own", plain.Quote(s.Pieces[i].Name))
		}
		return nil
	})
}
