package session

import (
	"path/filepath"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project/print"
	"chape/project/print/sheet"
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

// Printable tells whether there is something to print; else why not.
func (s *Session) Printable() (why act.Say, ok bool) {
	snap := s.Snapshot()
	switch {
	case s.printing:
		return act.Say{Text: "still printing: wait for it"}, false
	case s.doc.Path() == "":
		return act.Say{Text: "keep this copy first (Ctrl+S): the sheets are written beside its file", Warn: true}, false
	case snap.Plan == nil || snap.Stale:
		return act.Say{Text: "nothing to print: correct the numbers first", Warn: true}, false
	}
	return act.Say{}, true
}

// Print writes the pattern beside the project's file, as chape print does, and says
// what it is at.
func (s *Session) Print(o print.Options) []act.Msg {
	snap := s.Snapshot()
	s.printing = true
	fsys, path := s.o.FS, s.doc.Path()
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
		files, err := print.Files(snap.Project, snap.Plan, o, base, []string{"pdf", "svg"})
		if err != nil {
			return printedMsg{err: err}
		}
		paths, err := print.Write(dir, files, false, nil)
		return printedMsg{paths, err}
	}
	return append(say("printing…"), act.Do(draw), act.Do(listen(news)))
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
func (s *Session) printsOn(msg printingMsg) []act.Msg {
	out := do(listen(msg.more))
	if s.printing {
		out = append(out, act.Say{Text: "printing: " + msg.what})
	}
	return out
}

func (s *Session) printed(msg printedMsg) []act.Msg {
	s.printing = false
	if msg.err != nil {
		return warn("not printed: " + msg.err.Error())
	}
	return say("written: " + strings.Join(msg.paths, ", "))
}

// KeepPrinter has it remembered what a sheet measured.
func (s *Session) KeepPrinter(c sheet.Correction) []act.Msg {
	keep := s.o.KeepPrinter
	if keep == nil {
		return warn("for this time only: there is nowhere to keep it")
	}
	return do(func() tea.Msg {
		if err := keep(c); err != nil {
			return act.Say{Text: "for this time only: " + err.Error(), Warn: true}
		}
		return act.Say{Text: "kept in your settings, for all sheets from now on"}
	})
}

// dateOf is the date of the project's file, which the sheets bear.
func dateOf(fsys store.FS, path string) time.Time {
	info, err := fsys.Stat(path)
	if err != nil {
		return time.Time{}
	}
	return info.ModTime()
}
