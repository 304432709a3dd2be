package session

import (
	"fmt"
	"path/filepath"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"chape/calc/length"
	"chape/project"
	"chape/project/file"
	"chape/project/print"
	"chape/project/print/folder"
	"chape/project/print/pair"
	"chape/project/print/sheet"
	"chape/project/print/tracing"
	"chape/project/store"
	"chape/project/versions"
	"chape/ui/act"
)

type (
	printedMsg struct { // what was written
		paths []string
		err   error
		path  string           // of the project
		note  *project.Pattern // what is now printed; nil: nothing new
	}
	printingMsg struct { // what is being drawn
		what string
		more <-chan string
	}
)

// Printable tells whether there is a pattern to print; else why not.
func (s *Session) Printable() (why act.Say, ok bool) {
	snap := s.Snapshot()
	switch {
	case s.printing:
		return s.Idle()
	case s.doc.Path() == "":
		return act.Say{Text: "keep this copy first (Ctrl+S): its file notes which pattern was printed", Warn: true}, false
	case snap.Plan == nil || snap.Stale:
		return act.Say{Text: "nothing to print: correct the numbers first", Warn: true}, false
	}
	return act.Say{}, true
}

// SheetsTaken says how many sheets the pattern takes so, and what would save one: ": 3 sheets;
// lap 6 mm shorter: 2"; "" where there is no pattern.
func (s *Session) SheetsTaken(o print.Options) string {
	snap := s.Snapshot()
	if snap.Plan == nil || snap.Stale {
		return ""
	}
	n, shorter, fewer, err := print.Sheets(snap.Project, snap.Plan, o)
	if err != nil {
		return ""
	}
	text := ": " + print.SheetCount(n)
	if shorter > 0 {
		text += fmt.Sprintf("; lap %s shorter: %d", shorter.Format(snap.Unit, length.Ruler), n-fewer)
	}
	return text
}

// Idle tells whether nothing is being printed; else what to do.
func (s *Session) Idle() (why act.Say, ok bool) {
	if s.printing {
		return act.Say{Text: "still printing: wait for it"}, false
	}
	return act.Say{}, true
}

// PrintFolder is where the sheets go, as a full path: beside a project that was named by
// its path, unless another folder was chosen since; else where the settings say.
func (s *Session) PrintFolder() string {
	path := s.doc.Path()
	named := s.named()
	switch {
	case s.o.Prints != "" && (s.moved || !named):
		return s.o.Prints
	case s.o.Documents != "" && !named:
		return s.o.Documents
	}
	return filepath.Dir(store.FullPath(path))
}

// named tells whether the project in hand was named by its path.
func (s *Session) named() bool { return s.o.Named != "" && samePath(s.doc.Path(), s.o.Named) }

// SetPrints has the sheets go into another folder from now on; "": where they would go
// by themselves.
func (s *Session) SetPrints(dir string) []act.Msg {
	s.o.Prints, s.moved = dir, true
	keep := s.o.KeepPrints
	if keep == nil {
		return onceOnly("there is nowhere to keep it")
	}
	whose := "for the sheets of all projects"
	if s.named() {
		whose = "for all projects that you do not name by their path, and for this one till you quit"
	}
	return remembered(whose, func() error { return keep(dir) })
}

// write puts files into the folder of the sheets. Where it refuses them another folder
// would do, and here a key takes one.
func write(dir string, files ...folder.File) ([]string, error) {
	paths, err := folder.Write(dir, files, false, nil)
	if err != nil {
		err = fmt.Errorf("%w: P, then d", err)
	}
	return paths, err
}

// PrintTracing writes a sheet to trace a knife on into PrintFolder. It is of no project.
func (s *Session) PrintTracing(o print.Options) []act.Msg {
	s.printing = true
	dir := s.PrintFolder()
	return append(say("printing…"), act.Do(func() tea.Msg {
		f, err := tracing.File(tracing.Options{Paper: o.Paper, Correction: o.Correction, Date: o.Date})
		if err != nil {
			return printedMsg{err: err}
		}
		paths, err := write(dir, f)
		return printedMsg{paths: paths, err: err}
	}))
}

// Print writes the pattern into PrintFolder and says what it is at. The project notes what
// was printed, unless it is a trial.
func (s *Session) Print(o print.Options) []act.Msg {
	snap := s.Snapshot()
	s.printing = true
	path := s.doc.Path()
	dir, base := s.PrintFolder(), strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	news := make(chan string, 1)
	o.Progress = func(what string) {
		select {
		case news <- what:
		default: // nobody has looked since: the next will do
		}
	}
	p, note := snap.Project, (*project.Pattern)(nil)
	if o.Trial == 0 {
		var isNews bool
		if p, isNews = file.Printed(p, s.now()); isNews {
			q, _ := p.Printed(p.Revision)
			note = &q
		}
	}
	o.Date = file.DateOf(p)
	draw := func() tea.Msg {
		defer close(news)
		files, err := print.Files(snap.Project, snap.Plan, o, base, []string{"pdf", "svg"})
		if err != nil {
			return printedMsg{err: err}
		}
		paths, err := write(dir, files...)
		return printedMsg{paths: paths, err: err, path: path, note: note}
	}
	return append(say("printing…"), act.Do(draw), act.Do(listen(news)))
}

// PrintPair writes two patterns laid over each other into PrintFolder.
func (s *Session) PrintPair(p versions.Pair, o print.Options) []act.Msg {
	if why, ok := s.Printable(); !ok {
		return []act.Msg{why}
	}
	s.printing = true
	path, u := s.doc.Path(), s.doc.Unit()
	dir, base := s.PrintFolder(), strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	draw := func() tea.Msg {
		f, err := pair.File(p, pair.Options{Paper: o.Paper, Correction: o.Correction}, base, u)
		if err != nil {
			return printedMsg{err: err}
		}
		paths, err := write(dir, f)
		return printedMsg{paths: paths, err: err, path: path}
	}
	return append(say("printing…"), act.Do(draw))
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
	s.written = strings.Join(msg.paths, ", ")
	out := []act.Msg{act.Say{Text: "written: " + s.written, Lasts: true}}
	if msg.note != nil && msg.path == s.doc.Path() {
		s.doc.Record(func(p *project.Project) { p.Note(*msg.note) })
		out = append(out, Changed{})
	}
	return out
}

// Written is what was printed last, while this project is open; "": nothing.
func (s *Session) Written() string { return s.written }

// KeepPaper has it remembered which paper lies in the printer. Only a failure is said.
func (s *Session) KeepPaper(p sheet.Paper) []act.Msg {
	keep := s.o.KeepPaper
	if keep == nil {
		return nil
	}
	return do(func() tea.Msg {
		if err := keep(p); err != nil {
			return act.Say{Text: "the paper is not kept for the next time: " + err.Error(), Warn: true}
		}
		return nil
	})
}

// KeepPrinter has it remembered what a sheet measured.
func (s *Session) KeepPrinter(c sheet.Correction) []act.Msg {
	keep := s.o.KeepPrinter
	if keep == nil {
		return onceOnly("there is nowhere to keep it")
	}
	return remembered("for all sheets from now on", func() error { return keep(c) })
}

// remembered puts something into the settings, and says so.
func remembered(what string, keep func() error) []act.Msg {
	return do(func() tea.Msg {
		if err := keep(); err != nil {
			return act.Say{Text: "for this time only: " + err.Error(), Warn: true}
		}
		return act.Say{Text: "kept in your settings, " + what}
	})
}

func onceOnly(why string) []act.Msg { return warn("for this time only: " + why) }
