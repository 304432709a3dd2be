package workbench

import (
	"path/filepath"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project/print"
	"chape/project/store"
	"chape/ui/act"
)

// printedMsg tells what was written.
type printedMsg struct {
	paths []string
	err   error
}

// print writes the pattern beside the project's file, as chape print does.
func (m *Model) print() tea.Cmd {
	s := m.doc.Snapshot(m.now())
	switch {
	case m.doc.Path() == "":
		m.message = act.Say{Text: "keep this copy first (Ctrl+S): the sheets are written beside its file", Warn: true}
		return nil
	case s.Plan == nil || s.Stale:
		m.message = act.Say{Text: "there is no plan of these numbers to print: mend them first", Warn: true}
		return nil
	}
	m.message = act.Say{Text: "printing…"}
	o, fsys, path := m.o.Print, m.o.FS, m.doc.Path()
	dir, base := filepath.Dir(path), strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	return func() tea.Msg {
		o.Date = dateOf(fsys, path)
		files, err := print.Files(s.Project, s.Plan, o, base, []string{"pdf", "svg"})
		if err != nil {
			return printedMsg{err: err}
		}
		paths, err := print.Write(dir, files, false, nil)
		return printedMsg{paths, err}
	}
}

// dateOf is the date of the project's file, which the sheets bear.
func dateOf(fsys store.FS, path string) time.Time {
	info, err := fsys.Stat(path)
	if err != nil {
		return time.Time{}
	}
	return info.ModTime()
}

func (m *Model) printed(msg printedMsg) {
	if msg.err != nil {
		m.message = act.Say{Text: "not printed: " + msg.err.Error(), Warn: true}
		return
	}
	m.message = act.Say{Text: "written: " + strings.Join(msg.paths, ", ")}
}
