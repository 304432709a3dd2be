package panel

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
)

// Explain says what the row in hand is, with a picture where there is one.
type Explain struct {
	frame
	title string
	body  func(w, h int) []string
	keys  key.Binding // the list of keys
	close []key.Binding
}

// NewExplain gives the explanation; body fills a room of w by h cells, keys leads on to
// the list of keys, those of close take it away, as Esc does.
func NewExplain(title string, body func(w, h int) []string, s Style, keys key.Binding, close ...key.Binding) *Explain {
	return &Explain{frame: frame{style: s}, title: title, body: body, keys: keys, close: close}
}

// Key closes it; a measuring tool does not. The key of the help leads on.
func (p *Explain) Key(k tea.KeyMsg, reading bool) (out []act.Msg, done bool) {
	if key.Matches(k, p.keys) {
		return []act.Msg{act.Help{}}, true
	}
	switch k.Type {
	case tea.KeyEsc, tea.KeyCtrlC:
		return nil, true
	case tea.KeyEnter, tea.KeySpace:
		return nil, !reading
	}
	return nil, key.Matches(k, p.close...)
}

// View is the explanation in its frame.
func (p *Explain) View() []string {
	in := p.inner()
	return p.framed(p.title, p.body(in.W-2, in.H))
}

// Foot names the keys.
func (p *Explain) Foot() []key.Binding {
	return []key.Binding{
		key.NewBinding(key.WithKeys(p.keys.Keys()...), key.WithHelp(p.keys.Help().Key, "all keys")),
		key.NewBinding(key.WithKeys("esc"), key.WithHelp("Esc", "closes this")),
	}
}

// Typing is never so.
func (p *Explain) Typing() bool { return false }
