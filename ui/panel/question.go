package panel

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
	"chape/ui/layout"
	"chape/ui/term"
)

// Question is a plain choice.
type Question struct {
	frame
	q act.Question
}

// NewQuestion gives the panel for q.
func NewQuestion(q act.Question, s Style) *Question { return &Question{frame: frame{style: s}, q: q} }

// Key takes the letters of the choices. A measuring tool types none.
func (p *Question) Key(k tea.KeyMsg, _ bool) (out []act.Msg, done bool) {
	if k.Type == tea.KeyEsc && !p.q.Stays {
		return nil, true
	}
	if k.Type != tea.KeyRunes || k.Paste {
		return nil, false
	}
	for _, c := range p.q.Choices {
		if string(k.Runes) != c.Key {
			continue
		}
		if c.Do != nil {
			out = c.Do()
		}
		return out, true
	}
	return nil, false
}

// View is the question and its choices.
func (p *Question) View() []string {
	var lines []string
	for _, t := range p.q.Text {
		lines = append(lines, layout.Wrap(term.Plain(t), p.w-4)...)
	}
	lines = append(lines, "")
	for _, c := range p.q.Choices {
		lines = append(lines, p.style.Strong.Render(c.Key)+"  "+term.Plain(c.Does))
	}
	if !p.q.Stays {
		lines = append(lines, p.style.Strong.Render("Esc")+"  go back")
	}
	return p.framed(p.q.Title, lines)
}

// Foot is empty: the choices say themselves.
func (p *Question) Foot() []key.Binding { return nil }

// Typing is never so.
func (p *Question) Typing() bool { return false }
