package workbench

import (
	"slices"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
	"chape/ui/canvas"
	"chape/ui/knifepane"
	"chape/ui/part"
)

// This file dresses panes of the former shape as act.Pane. It goes as they change.

func keysOf(list []key.Binding, brief map[string]string, late ...string) []act.Key {
	var out []act.Key
	for _, b := range list {
		words := brief[b.Help().Key]
		out = append(out, act.Key{Binding: b, Brief: words, Late: slices.Contains(late, b.Help().Key)})
	}
	return out
}

// unwrap gives the values that a command of the former shape carries.
func unwrap(cmd tea.Cmd) (out []act.Msg) {
	if cmd == nil {
		return nil
	}
	msg := cmd()
	if batch, ok := msg.(tea.BatchMsg); ok {
		for _, c := range batch {
			out = append(out, unwrap(c)...)
		}
		return out
	}
	if msg == nil {
		return nil
	}
	return []act.Msg{msg}
}

type oldKnife struct{ knifepane.Model }

func knifePage(o *Options) act.Page {
	return act.Page{Name: "Knife", Room: act.InKnife, Root: act.AllKeys, New: func() act.Pane {
		return &oldKnife{knifepane.New(o.Styles)}
	}}
}

func (p *oldKnife) SetSnapshot(s act.Snapshot) {
	p.ASCII = s.Font.Glyphs == canvas.ASCII
	p.Model.SetSnapshot(s)
}

func (p *oldKnife) Update(msg tea.Msg) (act.Pane, []act.Msg) {
	var out []act.Msg
	switch msg := msg.(type) {
	case part.Press:
		out = unwrap(p.Key(msg.KeyMsg, msg.Tool()))
		if err := p.Problem(); err != nil {
			out = append(out, act.Unfit{Err: err})
		}
	case tea.MouseMsg:
		switch msg.Button {
		case tea.MouseButtonWheelUp:
			out = unwrap(p.Wheel(-1))
		case tea.MouseButtonWheelDown:
			out = unwrap(p.Wheel(1))
		default:
			out = unwrap(p.Click(msg.X, msg.Y))
		}
	case act.InHand:
		if !msg.Is {
			cmd, ok := p.Leave()
			if out = unwrap(cmd); !ok {
				out = append(out, act.Stay{})
			}
		}
	}
	return p, out
}

func (p *oldKnife) Keys() []act.Section {
	k, typing := p.Model.Keys, p.Editing()
	return []act.Section{
		{Title: "Knife", Now: !typing, Keys: keysOf(k.Bindings(), map[string]string{
			"Enter": "next number", "m": "marks", "a": "add a mark", "j": "make a step", "f": "trial fit",
		}, "m", "a", "j", "f")},
		{Title: "While a value is typed", Now: typing, Text: true, Keys: keysOf(k.Typing(), map[string]string{
			"Enter, Tab": "keep it, on to the next number", "Esc": "put the old value back",
		})},
	}
}
