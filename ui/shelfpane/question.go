package shelfpane

import (
	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
	"chape/ui/part"
)

// question stands at the foot of the screen until it is answered.
type question struct {
	*part.Ask
	begin *beginning // chosen instead of typed
	take  *taking    // the same
	learned
	answer func(text string) ([]act.Msg, error)
}

const longestTitle = 200

// ask opens a question with text to begin from.
func (m *Model) ask(label, text string, answer func(string) ([]act.Msg, error)) []act.Msg {
	return m.put(&question{Ask: part.NewAsk(label, text, longestTitle), answer: answer})
}

func (m *Model) put(q *question) []act.Msg {
	q.SetWidth(m.w)
	m.question = q
	m.scroll()
	return nil
}

func (m *Model) reply(p part.Press) (out []act.Msg) {
	defer m.scroll()
	q := m.question
	if q.begin != nil {
		if _, known := m.beginKeys().Take(p); known {
			return nil
		}
	}
	if q.take != nil {
		if _, known := m.takeKeys().Take(p); known {
			return nil
		}
	}
	switch q.Take(p) {
	case part.Dropped:
		if q.begin == nil && q.take == nil || p.Type == tea.KeyEsc { // another key than its own is none
			m.question = nil
			if m.visit {
				out = []act.Msg{act.Leave{}}
			}
		}
	case part.Kept:
		m.question = nil
		var err error
		if out, err = q.answer(q.Text()); err != nil {
			q.Refuse(err, p)
			m.question = q
		}
	}
	return out
}
