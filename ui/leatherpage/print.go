package leatherpage

import (
	"fmt"
	"path/filepath"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project/print/folder"
	"chape/project/print/layout"
	"chape/ui/act"
	"chape/ui/term"
)

// printedMsg is what came of printing.
type printedMsg struct {
	paths []string
	err   error
}

// print writes the placing into the folder that sheets go to.
func (m *Model) print() []act.Msg {
	if m.laid == nil {
		return nil
	}
	l, title, dir, date := *m.laid, m.snap.Project.Title, m.snap.Prints, m.snap.Now
	base := strings.TrimSuffix(filepath.Base(m.snap.Path), filepath.Ext(m.snap.Path))
	if m.snap.Path == "" {
		base = "sheath"
	}
	o := layout.Options{}
	if m.o.Print != nil {
		o = m.o.Print()
	}
	o.Unit, o.Date = m.snap.Unit, date
	if dir == "" {
		dir = "."
	}
	return []act.Msg{act.Do(func() tea.Msg {
		files, err := layout.Files(l, base, title, o)
		if err != nil {
			return printedMsg{err: err}
		}
		paths, err := folder.Write(dir, files, false, nil)
		if err != nil {
			err = fmt.Errorf("%w: Esc, P, then d", err)
		}
		return printedMsg{paths, err}
	})}
}

func printed(msg printedMsg) []act.Msg {
	if msg.err != nil {
		return []act.Msg{act.Say{Text: term.Plain(msg.err.Error()), Warn: true}}
	}
	text := "printed: "
	for i, p := range msg.paths {
		if i > 0 {
			text += ", "
		}
		text += filepath.Base(p)
	}
	if len(msg.paths) > 0 {
		text += fmt.Sprintf(" in %s", filepath.Dir(msg.paths[0]))
	}
	return []act.Msg{act.Say{Text: term.Plain(text)}}
}
