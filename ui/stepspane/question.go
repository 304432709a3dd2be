package stepspane

import (
	"fmt"
	"regexp"
	"strings"
	"time"

	"chape/project/clock"
	"chape/ui/act"
	"chape/ui/part"
)

// question stands at the foot of the pane until it is answered.
type question struct {
	*part.Ask
	// answer does what was typed, or says why it will not do; the question then stays.
	answer func(text string) ([]act.Msg, error)
	starts bool // it names the key that starts the hold: that does so at once
}

const (
	longestTitle = 200
	longestNote  = 2000
)

// ask opens a question with text to begin from.
func (m *Model) ask(label, text string, limit int, answer func(string) ([]act.Msg, error)) []act.Msg {
	m.question = &question{Ask: part.NewAsk(label, text, limit), answer: answer}
	m.question.SetWidth(m.w)
	m.scroll()
	return nil
}

// askSpan is ask for a length of time: what is typed takes the place of the old one, as
// in the numbers of the knife.
func (m *Model) askSpan(label, text string, limit int, answer func(string) ([]act.Msg, error)) []act.Msg {
	out := m.ask(label, text, limit, answer)
	m.question.Fresh = text != ""
	return out
}

// confirm asks for Enter alone.
func (m *Model) confirm(label string, do func() ([]act.Msg, error)) []act.Msg {
	m.question = &question{Ask: part.Confirm(label), answer: func(string) ([]act.Msg, error) { return do() }}
	m.scroll()
	return nil
}

// reply takes a key while a question stands.
func (m *Model) reply(p part.Press) (out []act.Msg) {
	defer m.scroll()
	q := m.question
	if q.starts && !p.Echo && p.String() == startKey {
		m.question = nil
		return m.start()
	}
	switch q.Take(p) {
	case part.Dropped:
		m.question = nil
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

// windowText reads hold times, and h:mm for them too. A bare number could be minutes
// or hours, and a hold that is 60 times too short spoils the work: it is asked about.
func windowText(text string) (hold, latest time.Duration, err error) {
	if plain := strings.TrimSpace(text); bare.MatchString(plain) && strings.Trim(plain, "0") != "" {
		return 0, 0, fmt.Errorf("%q: give the unit: %s min, 2 h", text, plain)
	}
	return clock.ParseWindow(clockSpan.ReplaceAllString(text, "$1 h $2 min"))
}

var (
	bare      = regexp.MustCompile(`^[0-9]+([.,][0-9]+)?$`)
	clockSpan = regexp.MustCompile(`\b([0-9]{1,4}):([0-5][0-9])\b`)
)

// minutesText reads minutes where no unit is given.
func minutesText(text string) (time.Duration, error) {
	text = clockSpan.ReplaceAllString(text, "$1 h $2 min")
	if d, err := clock.ParseSpan(text + " min"); err == nil {
		return d, nil
	}
	return clock.ParseSpan(text)
}
