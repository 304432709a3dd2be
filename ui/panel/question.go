package panel

import (
	"chape/ui/act"
	"chape/ui/layout"
	"chape/ui/part"
	"chape/ui/term"
)

// Question is a plain choice.
type Question struct {
	frame
	q act.Question
}

// NewQuestion gives the panel for q.
func NewQuestion(q act.Question, s Style) *Question { return &Question{frame: frame{style: s}, q: q} }

func (p *Question) keys() part.Keys {
	var keys part.Keys
	for _, c := range p.q.Choices {
		keys = append(keys, part.Key(c.Key, c.Does, p.ends(c.Do), c.Key))
	}
	if !p.q.Stays {
		keys = append(keys, p.leaving("go back", nil))
	}
	return keys
}

// Take takes the letters of the choices. A measuring tool types none.
func (p *Question) Take(k part.Press) (out []act.Msg, done bool) {
	return p.take(p.keys(), k.Answer())
}

// View is the question and its choices.
func (p *Question) View() []string {
	var lines []string
	for _, t := range p.q.Text {
		lines = append(lines, layout.Wrap(term.Plain(t), p.w-4)...)
	}
	lines = append(lines, "")
	for _, r := range p.keys() {
		h := r.Help()
		for i, does := range layout.Wrap(term.Plain(h.Desc), max(1, p.w-4-questionKey)) {
			name := ""
			if i == 0 {
				name = p.style.Strong.Render(h.Key)
			}
			lines = append(lines, layout.Line(name, questionKey)+does)
		}
	}
	return p.framed(p.q.Title, lines)
}

// questionKey is the column of the keys.
const questionKey = 5

// Keys implements Panel.
func (p *Question) Keys() []act.Section { return []act.Section{p.keys().Section(p.q.Title, true)} }
