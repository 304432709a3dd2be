package jobs

import (
	"cmp"
	"fmt"
	"path/filepath"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project/leather"
	"chape/project/print/folder"
	"chape/project/print/layout"
	"chape/ui/act"
	"chape/ui/term"
)

// Printed is what came of printing.
type Printed struct {
	paths []string
	err   error
}

// Print writes a placing into a folder, under a name.
func Print(l leather.Laid, base, title, dir string, o layout.Options) act.Msg {
	return act.Do(func() tea.Msg {
		files, err := layout.Files(l, base, title, o)
		if err != nil {
			return Printed{err: err}
		}
		paths, err := folder.Write(cmp.Or(dir, "."), files, false, nil)
		if err != nil {
			err = fmt.Errorf("%w: Esc, P, then d", err)
		}
		return Printed{paths, err}
	})
}

// Say tells where it is.
func (p Printed) Say() []act.Msg {
	if p.err != nil {
		return []act.Msg{act.Say{Text: term.Plain(p.err.Error()), Warn: true}}
	}
	var names []string
	for _, path := range p.paths {
		names = append(names, filepath.Base(path))
	}
	text := "printed: " + strings.Join(names, ", ")
	if len(p.paths) > 0 {
		text += " in " + filepath.Dir(p.paths[0])
	}
	return []act.Msg{act.Say{Text: term.Plain(text)}}
}
