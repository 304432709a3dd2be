package panel

import (
	"github.com/charmbracelet/bubbles/key"

	"chape/ui/act"
	"chape/ui/part"
)

// Explain says what the row in hand is, with a picture where there is one.
type Explain struct {
	frame
	title string
	body  func(w, h int) []string
	help  key.Binding // the list of keys
	close []key.Binding
}

// NewExplain gives the explanation; body fills a room of w by h cells, help leads on to
// the list of keys, those of close take it away, as Esc does.
func NewExplain(title string, body func(w, h int) []string, s Style, help key.Binding, close ...key.Binding) *Explain {
	return &Explain{frame: frame{style: s}, title: title, body: body, help: help, close: close}
}

func (p *Explain) keys() part.Keys {
	list := func() []act.Msg { return []act.Msg{act.Help{}} }
	return part.Keys{
		part.Key(p.help.Help().Key, "all keys", p.ends(list), p.help.Keys()...).Foot("all keys"),
		p.leaving("close the explanation", p.close).Foot("closes this"),
		part.Key("Enter, Space", "close the explanation", p.ends(nil), "enter", " "),
	}
}

// Take closes it; a measuring tool does not. The key of the help leads on.
func (p *Explain) Take(k part.Press) (out []act.Msg, done bool) { return p.take(p.keys(), k) }

// View is the explanation in its frame.
func (p *Explain) View() []string {
	in := p.inner()
	return p.framed(p.title, p.body(in.W-2, in.H))
}

// Keys implements Panel.
func (p *Explain) Keys() []act.Section {
	return []act.Section{p.keys().Section("What a row means", true)}
}
