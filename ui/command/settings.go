package command

import (
	"errors"
	"fmt"
	"os"
	"runtime"

	"chape/calc"
	"chape/project"
	"chape/project/config"
	"chape/project/print"
	"chape/project/shelf"
	"chape/project/store"
	"chape/ui/session"
	"chape/ui/term"
	"chape/ui/term/ink"
	"chape/ui/workbench"
)

// settings is what the user has chosen once for all projects.
type settings struct {
	config.Config
	path   string // of the file; "" where the system has no such folder
	broken error  // why the file could not be used: the defaults hold
}

func loadSettings() settings {
	path, err := config.Path()
	if err != nil {
		return settings{Config: config.Defaults()} // no such folder: nothing can be kept
	}
	c, err := config.Load(store.OS(), path)
	return settings{Config: c, path: path, broken: err}
}

// settingsFor is loadSettings for a plain command, which says at once when the
// defaults have to do.
func settingsFor(w World) settings {
	set := loadSettings()
	if set.broken != nil {
		fmt.Fprintf(w.Err, "chape: your settings can't be used, the defaults hold: %s\n", term.Plain(set.broken.Error()))
	}
	return set
}

// document opens a project under the user's thresholds.
func (s settings) document(p project.Project, path string, stamp store.Stamp) *session.Doc {
	return session.NewDoc(p, path, stamp, session.DocOptions{Make: calc.Compute, Check: project.Project.Validate, Limits: s.Limits()})
}

// workbench is what the settings, the machine and the environment say about
// the screen.
func (s settings) workbench() workbench.Options {
	o := workbench.Options{
		FS:          store.OS(),
		Styles:      s.styles(),
		Rates:       s.Rates(),
		Currency:    s.Currency(),
		Document:    s.document,
		Begin:       s.NewProject,
		NoBell:      !s.Bell,
		OnDue:       s.OnDue,
		Print:       print.Options{Paper: s.Sheet(), Correction: s.Printer, Offcut: s.Rates().Offcut},
		Suspends:    runtime.GOOS != "windows",
		Remember:    s.remember(),
		KeepPrinter: s.keepPrinter,
		Elsewhere:   []string{homeFolder(), os.TempDir()},
	}
	// Both words were checked when the file was read.
	o.Looks.Glyphs, o.Ask, _ = term.Glyphs(s.Glyphs, os.Getenv("TERM"))
	o.Looks.Aspect = s.Cell
	switch s.Notice {
	case "osc 9":
		o.Notice = term.OSC9
	case "osc 777":
		o.Notice = term.OSC777
	}
	if s.broken != nil {
		o.Greeting = "your settings can't be used, the defaults hold: " + s.broken.Error()
	}
	return o
}

func (s settings) styles() ink.Styles {
	depth := ink.DepthOf(true, os.Getenv)
	word := s.Colours
	if word == "none" {
		word, depth = "auto", min(depth, ink.Mono)
	}
	ground, _ := ink.ParseGround(word, os.Getenv("COLORFGBG"))
	return ink.New(ground, depth)
}

// remember keeps what was answered about the font.
func (s settings) remember() func(workbench.Looks) error {
	if s.path == "" {
		return nil
	}
	return func(l workbench.Looks) error {
		return config.Keep(store.OS(), s.path, config.Change{Key: "glyphs", Value: l.Glyphs.String()}, config.Change{Key: "cell", Value: l.Aspect})
	}
}

// keepPrinter keeps what the pricks on a printed sheet measured.
func (s settings) keepPrinter(c print.Correction) error {
	err := errors.New("this system has no folder for settings: set HOME")
	if s.path != "" {
		err = config.Keep(store.OS(), s.path, config.Change{Key: "printer.x", Value: c.X}, config.Change{Key: "printer.y", Value: c.Y})
	}
	if err != nil {
		return fmt.Errorf("what the sheet measured can't be kept: %w", err)
	}
	return nil
}

func homeFolder() string {
	home, err := os.UserHomeDir()
	if err != nil {
		return os.TempDir()
	}
	return home
}

// shelf is the folder of the user's projects.
func (s settings) shelf() string {
	return s.ShelfFolder(homeFolder(), shelf.Folder(runtime.GOOS, homeFolder(), os.Getenv))
}
