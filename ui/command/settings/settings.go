// Package settings is what the user has chosen once for all projects: read, kept, watched,
// and put into the workbench.
package settings

import (
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"sync"

	"chape/calc"
	"chape/project"
	"chape/project/config"
	"chape/project/leather"
	"chape/project/print"
	"chape/project/print/sheet"
	"chape/project/shelf"
	"chape/project/store"
	"chape/ui/act"
	"chape/ui/alarm"
	"chape/ui/command/call"
	"chape/ui/document"
	"chape/ui/session"
	"chape/ui/term"
	"chape/ui/term/ink"
	"chape/ui/tracing"
	"chape/ui/workbench"
)

// Chosen is what the user has chosen once for all projects.
type Chosen struct {
	config.Config
	Path   string // of the file; "" where there is no folder for it
	Broken error  // why the file could not be used: the defaults hold
	seen   *seen
}

// seen is the file as it was read or written last, so that what others make of it is
// told from what was written here.
type seen struct {
	sync.Mutex
	stamp store.Stamp
}

// keep puts changes into the file. Where others have changed it since it was read, that
// still is news: what they wrote is not in the workbench yet.
func (s Chosen) keep(changes ...config.Change) error {
	s.seen.Lock()
	defer s.seen.Unlock()
	news, _, _ := store.Changed(store.OS(), s.Path, s.seen.stamp)
	err := config.Keep(store.OS(), s.Path, changes...)
	if err == nil && !news {
		_, s.seen.stamp, _ = store.Read(store.OS(), s.Path)
	}
	return err
}

// Load reads them. Where they can't be used the defaults hold, and Broken says why.
func Load() Chosen {
	path, err := config.Path()
	if err != nil {
		return Chosen{Config: config.Defaults(), Broken: err}
	}
	_, stamp, _ := store.Read(store.OS(), path) // none there: the zero stamp
	c, err := config.Load(store.OS(), path)
	return Chosen{Config: c, Path: path, Broken: err, seen: &seen{stamp: stamp}}
}

// For is Load for a plain command, which says at once when the defaults have to do, and
// who else may change them.
func For(w call.World) Chosen {
	set := Load()
	for _, line := range set.warnings() {
		fmt.Fprintf(w.Err, "chape: %s\n", term.Plain(line))
	}
	return set
}

// warnings are lines about the settings for whoever relies on them.
func (s Chosen) warnings() []string {
	var lines []string
	if s.Broken != nil {
		lines = append(lines, "your settings can't be used, the defaults hold: "+s.Broken.Error())
	}
	if s.Path != "" {
		lines = append(lines, Exposed("your settings", s.Path, filepath.Dir(s.Path))...)
	}
	return lines
}

// Exposed says which of the paths others may write to, and what would do. Settings name
// a command that is run; projects name customers.
func Exposed(what string, paths ...string) []string {
	for _, path := range paths {
		if store.OthersMayWrite(path) {
			return []string{fmt.Sprintf("others may write to %s: try chmod go-w %s", what, call.Typable(path))}
		}
	}
	return nil
}

// Document opens a project under the user's thresholds.
func (s Chosen) Document(p project.Project, path string, stamp store.Stamp) *document.Doc {
	return document.New(p, path, stamp, document.Options{Make: calc.Compute, Check: project.Project.Validate, Limits: s.Limits()})
}

// Workbench is what the settings, the machine and the environment say about
// the screen.
func (s Chosen) Workbench() workbench.Options {
	o := workbench.Options{
		Options: session.Options{
			FS:          store.OS(),
			Document:    s.Document,
			KeepPrinter: s.KeepPrinter,
			KeepPrints:  s.keepPrints(),
			KeepPaper:   s.keepPaper(),
			Documents:   documents(),
			Elsewhere:   elsewhere(),
		},
		Alarm:     alarm.Options{NoBell: !s.Bell, OnDue: s.OnDue},
		Styles:    s.styles(),
		Scale:     s.Scale,
		Shop:      s.Shop(),
		KeepPrice: s.keepPrice(),
		KeepWeek:  s.keepWeek(),
		Tracing:   tracing.Settings{Folder: s.Pictures, Standoff: s.Standoff},
		Begin:     s.NewProject,
		Print:     print.Options{Paper: s.Sheet(), Correction: s.Printer, Cutter: s.Cutter, Offcut: s.Shop().Offcut, Maker: s.Shop().Maker()},
		Suspends:  runtime.GOOS != "windows",
		Remember:  s.remember(),
		Leather:   s.Leather(),
	}
	// Both words were checked when the file was read.
	o.Font.Glyphs, _ = term.Glyphs(s.Glyphs, os.Getenv)
	o.Font.Aspect = s.Cell
	switch s.Notice {
	case "osc 9":
		o.Alarm.Notice = term.OSC9
	case "osc 777":
		o.Alarm.Notice = term.OSC777
	}
	if home, err := config.Home(); err == nil {
		o.Prints = s.PrintsFolder(home)
	}
	o.Greeting = strings.Join(s.warnings(), "; ")
	o.Reread = s.reread()
	return o
}

// reread looks whether the settings' file has changed since they were read.
func (s Chosen) reread() func() *workbench.Settings {
	if s.Path == "" {
		return nil
	}
	fsys := store.OS()
	return func() *workbench.Settings {
		s.seen.Lock()
		defer s.seen.Unlock()
		changed, now, err := store.Changed(fsys, s.Path, s.seen.stamp)
		if s.seen.stamp = now; err != nil || !changed {
			return nil
		}
		set := Load()
		set.seen = s.seen
		if set.Broken != nil {
			return &workbench.Settings{Say: act.Say{Text: "your settings were changed and can't be used, those of before hold: " + set.Broken.Error(), Warn: true}}
		}
		return &workbench.Settings{Put: set.put, Limits: set.Limits(), Say: act.Say{Text: "your settings were changed, and are read again"}}
	}
}

// put has them hold in a workbench that is open; its look and its shelf stay.
func (s Chosen) put(o *workbench.Options) {
	now := s.Workbench()
	now.Alarm.Voice, now.Alarm.Clock, now.Alarm.Shelf = o.Alarm.Voice, o.Alarm.Clock, o.Alarm.Shelf
	now.Alarm.Quiet = o.Alarm.Quiet
	o.Alarm, o.Scale, o.Begin, o.Print = now.Alarm, now.Scale, now.Begin, now.Print
	o.Document, o.KeepPrinter, o.Prints, o.Shop = now.Document, now.KeepPrinter, now.Prints, now.Shop
	o.Tracing = now.Tracing
}

// Leather is the leather on the rack, beside the settings.
func (s Chosen) Leather() *leather.File {
	if s.Path == "" {
		return &leather.File{}
	}
	return &leather.File{FS: store.OS(), Path: filepath.Join(filepath.Dir(s.Path), leather.Name)}
}

func (s Chosen) styles() ink.Styles {
	depth := ink.DepthOf(true, os.Getenv)
	word := s.Colours
	if word == "none" {
		word, depth = "auto", min(depth, ink.Mono)
	}
	ground, _ := ink.ParseGround(word, os.Getenv("COLORFGBG"))
	return ink.New(ground, depth)
}

// remember keeps how drawings are to be made.
func (s Chosen) remember() func(act.Font) error {
	if s.Path == "" {
		return nil
	}
	return func(f act.Font) error {
		return s.keep(config.Change{Key: "glyphs", Value: f.Glyphs.String()}, config.Change{Key: "cell", Value: f.Aspect})
	}
}

// KeepPrinter keeps what the pricks on a printed sheet measured.
func (s Chosen) KeepPrinter(c sheet.Correction) error {
	err := s.Broken
	if s.Path != "" {
		err = s.keep(config.Change{Key: "printer.x", Value: c.X}, config.Change{Key: "printer.y", Value: c.Y})
	}
	if err != nil {
		return fmt.Errorf("what the sheet measured can't be kept: %w", err)
	}
	return nil
}

// elsewhere lists folders for what can't be kept in its own.
func elsewhere() []string {
	if home, err := config.Home(); err == nil {
		return []string{home, os.TempDir()}
	}
	return []string{os.TempDir()}
}

// Folder is the folder of the user's projects. Without a home folder there may be none.
func (s Chosen) Folder() (string, error) {
	home, err := config.Home()
	folder := s.ShelfFolder(home, shelf.Folder(runtime.GOOS, home, os.Getenv))
	if err != nil && (strings.HasPrefix(s.Shelf, "~") || !filepath.IsAbs(folder)) {
		return "", fmt.Errorf("there is no shelf: %w, or name a folder: chape FOLDER", err)
	}
	return folder, nil
}
