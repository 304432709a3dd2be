package workbench

import (
	"slices"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
	"chape/ui/canvas"
	"chape/ui/knifepane"
	"chape/ui/part"
	"chape/ui/planpane"
	"chape/ui/shelfpane"
)

// This file dresses panes of the former shape as act.Pane. It goes as they change.

// raw is a pane that watches for readings itself, and wants keys as they come.
type raw interface{ rawKeys() }

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

type oldPlan struct{ planpane.Model }

func planPage(o *Options) act.Page {
	return act.Page{Name: "Plan", Room: act.InPlan, Root: act.AllKeys, New: func() act.Pane {
		return &oldPlan{planpane.New(o.Styles)}
	}}
}

func (p *oldPlan) SetSnapshot(s act.Snapshot) {
	p.SetRates(s.Prices.Rates, s.Prices.Currency)
	p.SetGlyphs(s.Font.Glyphs, s.Font.Aspect)
	p.Model.SetSnapshot(s)
}

func (p *oldPlan) Update(msg tea.Msg) (act.Pane, []act.Msg) {
	var cmd tea.Cmd
	switch msg := msg.(type) {
	case part.Press:
		p.Model, cmd = p.Model.Update(msg.KeyMsg)
	case tea.MouseMsg:
		p.Model, cmd = p.Model.Update(msg)
	}
	return p, unwrap(cmd)
}

func (p *oldPlan) Keys() []act.Section {
	return []act.Section{{Title: "Plan", Now: true, Keys: keysOf(p.Model.Keys.Bindings(), map[string]string{
		"→": "next page", "z": "closer", "v": "whole, half", "f": "all of it",
	}, "v", "f")}}
}

type oldShelf struct{ shelfpane.Model }

func shelfPage(o *Options) act.Page {
	if o.Shelf == nil {
		return act.Page{}
	}
	return act.Page{
		Name: "Shelf", Title: "Shelf: " + o.Shelf.Dir(), Room: act.Whole, Brief: "shelf", Lasts: true,
		Open: key.NewBinding(key.WithKeys("o"), key.WithHelp("o", "the shelf: open another project, begin one")),
		New: func() act.Pane {
			return &oldShelf{shelfpane.New(shelfpane.Options{Shelf: o.Shelf, Begin: o.Begin, Clock: o.Clock, Styles: o.Styles})}
		},
	}
}

func (p *oldShelf) rawKeys() {}

func (p *oldShelf) SetSnapshot(act.Snapshot) {}

func (p *oldShelf) Update(msg tea.Msg) (act.Pane, []act.Msg) {
	var cmd tea.Cmd
	switch msg := msg.(type) {
	case act.InHand:
		if msg.Is {
			cmd = p.Look()
		}
	default:
		p.Model, cmd = p.Model.Update(msg)
	}
	if cmd == nil {
		return p, nil
	}
	return p, []act.Msg{act.Do(cmd)}
}

func (p *oldShelf) Keys() []act.Section {
	typing := p.Typing()
	return []act.Section{
		{Title: "Shelf", Now: !typing, Keys: keysOf(slices.Concat(p.KeyMap.FullHelp()[:3]...), map[string]string{
			"enter": "open the project", "/": "find", "n": "new", "f": "new from this", "r": "rename", "p": "put away",
		})},
		{Title: "Shelf, in a question", Text: true, Keys: keysOf(p.KeyMap.FullHelp()[3], nil)},
		{Now: typing, Text: true, Keys: keysOf(p.KeyMap.QuestionHelp(), map[string]string{"enter": "keep it", "esc": "leave it as it was"})},
	}
}
