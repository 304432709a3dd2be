package leatherpage

import (
	"fmt"

	"chape/project/leather"
	"chape/project/plain"
	"chape/ui/act"
	"chape/ui/term"
)

// rack is the leather as the page has it, and how it stands to its file.
type rack struct {
	stock   leather.Stock
	before  []leather.Stock // what undo goes back to
	after   []leather.Stock // what redo goes on to
	saving  bool
	again   bool  // changed since that save began
	failed  error // the last save, or the reading: why
	unread  bool  // the file is there and can't be read: nothing is put over it
	arrived bool
}

// kind is whose a change is.
type kind uint8

const (
	ofRack kind = iota
	ofProject
)

// What comes of work with the disk.
type (
	readMsg struct {
		stock  leather.Stock
		err    error
		others []other
	}
	keptMsg struct{ err error }
)

// arrive reads the leather, and lists the shelf, each time the page is opened.
func (m *Model) arrive() []act.Msg {
	if m.rack.saving {
		return nil
	}
	file, sh := m.o.Rack, m.o.Shelf
	return []act.Msg{act.Do(func() teaMsg {
		s, err := file.Read()
		return readMsg{s, err, list(sh)}
	})}
}

// read takes on what was on the disk.
func (m *Model) read(msg readMsg) []act.Msg {
	m.takeOthers(msg.others)
	if m.rack.unread = msg.err != nil; msg.err != nil {
		m.rack.failed = msg.err
		return nil
	}
	if m.o.Rack.Path == "" && m.rack.arrived {
		return nil // it is nowhere but here
	}
	m.rack.failed, m.rack.arrived = nil, true
	m.rack.stock = msg.stock
	m.review()
	return nil
}

// change changes the leather: one step of undo, one save.
func (m *Model) change(do func(*leather.Stock) error) ([]act.Msg, error) {
	if m.rack.unread {
		return nil, fmt.Errorf("%w: nothing is changed until that is mended", m.rack.failed)
	}
	s := m.rack.stock.Clone()
	if err := do(&s); err != nil {
		return nil, err
	}
	if err := s.Validate(); err != nil {
		return nil, err
	}
	const most = 200
	m.rack.before = append(m.rack.before, m.rack.stock)
	if len(m.rack.before) > most {
		m.rack.before = m.rack.before[1:]
	}
	m.rack.after, m.rack.stock = nil, s
	m.done = append(m.done, ofRack)
	m.review()
	return m.save(), nil
}

// save keeps the leather as it is now, one save at a time.
func (m *Model) save() []act.Msg {
	if m.rack.saving {
		m.rack.again = true
		return nil
	}
	m.rack.saving, m.rack.again = true, false
	file, s := m.o.Rack, m.rack.stock.Clone()
	return []act.Msg{act.Do(func() teaMsg { return keptMsg{file.Keep(s)} })}
}

// kept hears how a save went.
func (m *Model) kept(msg keptMsg) []act.Msg {
	m.rack.saving = false
	m.rack.failed = msg.err
	if m.rack.again {
		return m.save()
	}
	if msg.err != nil {
		return []act.Msg{act.Say{Text: "the leather is NOT SAVED: " + term.Plain(msg.err.Error()), Warn: true}}
	}
	return nil
}

// undo takes the last change on this page back; changes of the project are the root's.
func (m *Model) undo() []act.Msg {
	n := len(m.done)
	if n == 0 || m.done[n-1] == ofProject || len(m.rack.before) == 0 {
		m.done = m.done[:max(n-1, 0)]
		return []act.Msg{act.Undo{}}
	}
	m.done = m.done[:n-1]
	last := len(m.rack.before) - 1
	m.rack.after = append(m.rack.after, m.rack.stock)
	m.rack.stock, m.rack.before = m.rack.before[last], m.rack.before[:last]
	return m.moved("undone: the change to the leather")
}

// redo makes it again.
func (m *Model) redo() []act.Msg {
	last := len(m.rack.after) - 1
	if last < 0 {
		return []act.Msg{act.Undo{Redo: true}}
	}
	m.rack.before = append(m.rack.before, m.rack.stock)
	m.rack.stock, m.rack.after = m.rack.after[last], m.rack.after[:last]
	m.done = append(m.done, ofRack)
	return m.moved("redone: the change to the leather")
}

func (m *Model) moved(text string) []act.Msg {
	if m.view != viewAll && m.view != viewPart && m.at >= len(m.rack.stock.Pieces) {
		m.home()
	}
	m.review()
	return append(m.save(), act.Say{Text: text})
}

// piece is the leather whose form is open.
func (m *Model) piece() leather.Leather {
	if m.at < len(m.rack.stock.Pieces) {
		return m.rack.stock.Pieces[m.at]
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
