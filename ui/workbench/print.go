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

type (
	printedMsg struct { // what was written
		paths []string
		err   error
	}
	printingMsg struct { // what is being drawn
		what string
		more <-chan string
	}
)

// askPrint opens the panel, if there is something to print.
func (m *Model) askPrint() tea.Cmd {
	s := m.doc.Snapshot(m.now())
	switch {
	case m.printing:
		m.message = act.Say{Text: "printing still: wait for it"}
	case m.doc.Path() == "":
		m.message = act.Say{Text: "keep this copy first (Ctrl+S): the sheets are written beside its file", Warn: true}
	case s.Plan == nil || s.Stale:
		m.message = act.Say{Text: "there is no plan of these numbers to print: mend them first", Warn: true}
	default:
		m.askSheets()
	}
	return nil
}

// print writes the pattern beside the project's file, as chape print does, and says
// what it is at.
func (m *Model) print(o print.Options) tea.Cmd {
	s := m.doc.Snapshot(m.now())
	m.message, m.printing = act.Say{Text: "printing…"}, true
	fsys, path := m.o.FS, m.doc.Path()
	dir, base := filepath.Dir(path), strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	news := make(chan string, 1)
	o.Progress = func(what string) {
		select {
		case news <- what:
		default: // nobody has looked since: the next will do
		}
	}
	draw := func() tea.Msg {
		defer close(news)
		o.Date = dateOf(fsys, path)
		files, err := print.Files(s.Project, s.Plan, o, base, []string{"pdf", "svg"})
		if err != nil {
			return printedMsg{err: err}
		}
		paths, err := print.Write(dir, files, false, nil)
		return printedMsg{paths, err}
	}
	return tea.Batch(draw, listen(news))
}

// listen waits for what is drawn next.
func listen(news <-chan string) tea.Cmd {
	return func() tea.Msg {
		if what, ok := <-news; ok {
			return printingMsg{what, news}
		}
		return nil
	}
}

// printsOn says what is being drawn, until all is.
func (m *Model) printsOn(msg printingMsg) tea.Cmd {
	if m.printing {
		m.message = act.Say{Text: "printing: " + msg.what}
	}
	return listen(msg.more)
}

// keepPrinter has it remembered what a sheet measured.
func (m *Model) keepPrinter(c print.Correction) tea.Cmd {
	keep := m.o.KeepPrinter
	if keep == nil {
		m.message = act.Say{Text: "for this time only: there is nowhere to keep it", Warn: true}
		return nil
	}
	return func() tea.Msg {
		if err := keep(c); err != nil {
			return act.Say{Text: "for this time only: " + err.Error(), Warn: true}
		}
		return act.Say{Text: "kept in your settings, for all sheets from now on"}
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
	m.printing = false
	if msg.err != nil {
		m.message = act.Say{Text: "not printed: " + msg.err.Error(), Warn: true}
		return
	}
	m.message = act.Say{Text: "written: " + strings.Join(msg.paths, ", ")}
}
