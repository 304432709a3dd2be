package command

import (
	"fmt"
	"os"
	"strings"
	"time"

	"github.com/charmbracelet/x/term"

	"chape/project/example"
	"chape/project/file"
	"chape/project/shelf"
	"chape/project/steps"
	"chape/project/store"
	"chape/ui/command/call"
	"chape/ui/command/settings"
	"chape/ui/workbench"
)

// Workbench shows the workbench: on a file, on a folder as the shelf, or with
// "" on the user's own shelf; on a copy of the example while that is empty. Named: the
// path was given, not found by a title.
func Workbench(path string, named bool) error {
	if !term.IsTerminal(os.Stdin.Fd()) || !term.IsTerminal(os.Stdout.Fd()) {
		return call.Misuse("the workbench needs a terminal: for a file or a pipe try \"chape plan FILE\"")
	}
	set := settings.Load()
	o := set.Workbench()
	folder, noShelf := set.Folder()
	switch {
	case path == "" && noShelf != nil:
		return noShelf
	case path == "":
		path = folder
	}
	if info, err := os.Stat(path); path == folder || err == nil && info.IsDir() {
		return openShelf(set, o, path)
	}
	if noShelf == nil {
		o.Shelf = shelf.Open(o.FS, folder)
	}
	if err := load(set, &o, path); err != nil {
		return err
	}
	if named {
		o.Named = path // found by its title it may be in a folder that nobody looks into
	}
	lock, elsewhere := store.TakeLock(o.FS, path)
	o.Lock = lock // the workbench gives it back
	if elsewhere {
		greet(&o, "this project is open in another window as well: changes made there show here")
	}
	return workbench.Run(o)
}

// openShelf starts on the shelf of a folder or, while that is empty, on a copy of
// the example.
func openShelf(set settings.Chosen, o workbench.Options, folder string) error {
	if info, err := os.Stat(folder); err == nil && !info.IsDir() {
		return fmt.Errorf("the shelf %q is no folder: name another one in your settings, or call chape FOLDER", folder)
	}
	o.Shelf = shelf.Open(o.FS, folder)
	greet(&o, strings.Join(settings.Exposed("your shelf", folder), ""))
	if o.OnShelf = holdsAny(folder); o.OnShelf {
		o.Doc = set.Document(set.NewProject(""), "", store.Stamp{})
	} else {
		p := example.Load(time.Now())
		o.Doc = set.Document(p, "", store.Stamp{})
		for _, h := range steps.Holds(p.Steps, "") {
			o.Alarm.Quiet = append(o.Alarm.Quiet, h.Begun())
		}
		greet(&o, welcome(set))
	}
	return workbench.Run(o)
}

// welcome is the first line that a newcomer reads.
func welcome(set settings.Chosen) string {
	text := "n your own knife. This one is an invented example; it touches no file until you keep it."
	if set.Glyphs == "" {
		text += " D other drawings, if this one looks broken."
	}
	return text
}

// holdsAny tells whether there is a project in a folder, put away or not. It does not
// list the folder: the shelf will.
func holdsAny(folder string) bool {
	f, err := os.Open(folder)
	if err != nil {
		return false
	}
	defer f.Close()
	for {
		names, err := f.Readdirnames(100)
		for _, name := range names {
			if strings.HasSuffix(strings.ToLower(name), ".toml") && !strings.HasPrefix(name, ".") || name == shelf.Away {
				return true
			}
		}
		if err != nil {
			return false
		}
	}
}

// greet says something at the start unless something worse is said already.
func greet(o *workbench.Options, text string) {
	if o.Greeting == "" {
		o.Greeting = text
	}
}

// load opens a project file.
func load(set settings.Chosen, o *workbench.Options, path string) error {
	data, stamp, err := store.Read(o.FS, path)
	if err != nil {
		return call.Missing(path, err)
	}
	p, notices, err := file.Decode(path, data)
	if err != nil {
		return err
	}
	o.Doc, o.Notices = set.Document(p, path, stamp), notices
	return nil
}
