package command

import (
	"os"
	"path/filepath"
	"runtime"
	"time"

	"github.com/charmbracelet/x/term"

	"chape/calc"
	"chape/project"
	"chape/project/example"
	"chape/project/store"
	"chape/ui/doc"
	chapeterm "chape/ui/term"
	"chape/ui/term/ink"
	"chape/ui/workbench"
)

// Workbench shows the workbench: on a file, on a folder as the shelf, or with
// "" on the user's own shelf; on a copy of the example while that is empty.
func Workbench(path string) error {
	if !term.IsTerminal(os.Stdin.Fd()) || !term.IsTerminal(os.Stdout.Fd()) {
		return misuse("the workbench needs a terminal: for a file or a pipe try \"chape plan FILE\"")
	}
	o, err := options()
	if err != nil {
		return err
	}
	if path == "" {
		path = o.Shelf
	}
	if info, statErr := os.Stat(path); path == o.Shelf || statErr == nil && info.IsDir() {
		o.Shelf = path
		o.Doc = doc.New(example.Load(time.Now()), "", store.Stamp{}, docOptions())
		o.Greeting = "an invented example to try things on: it touches no file until you keep it"
		return workbench.Run(o)
	}
	if err := load(&o, path); err != nil {
		return err
	}
	lock, elsewhere := store.TakeLock(o.FS, path)
	defer lock.Release()
	if elsewhere {
		o.Greeting = "this project is open in another window as well: changes made there show here"
	}
	return workbench.Run(o)
}

// load opens a project file.
func load(o *workbench.Options, path string) error {
	data, stamp, err := store.Read(o.FS, path)
	if err != nil {
		return err
	}
	p, notices, err := project.Decode(path, data)
	if err != nil {
		return err
	}
	o.Doc, o.Notices = doc.New(p, path, stamp, docOptions()), notices
	return nil
}

func docOptions() doc.Options {
	return doc.Options{Make: calc.Compute, Check: project.Project.Validate, Limits: calc.DefaultLimits()}
}

// options are what the machine and the environment say.
func options() (workbench.Options, error) {
	ground, err := ink.ParseGround("auto", os.Getenv("COLORFGBG"))
	if err != nil {
		return workbench.Options{}, err
	}
	glyphs, ask, err := chapeterm.Glyphs("", os.Getenv("TERM"))
	if err != nil {
		return workbench.Options{}, err
	}
	shelf, home := folders()
	return workbench.Options{
		FS:        store.OS(),
		Styles:    ink.New(ground, ink.DepthOf(true, os.Getenv)),
		Looks:     workbench.Looks{Glyphs: glyphs},
		Ask:       ask,
		Shelf:     shelf,
		Elsewhere: []string{home, os.TempDir()},
		Suspends:  runtime.GOOS != "windows",
	}, nil
}

// folders gives the shelf, in the data folder of the user's system, and the home
// folder.
func folders() (shelf, home string) {
	home, err := os.UserHomeDir()
	if err != nil {
		home = os.TempDir()
	}
	data := os.Getenv("XDG_DATA_HOME")
	switch {
	case filepath.IsAbs(data):
	case runtime.GOOS == "windows" && os.Getenv("LOCALAPPDATA") != "":
		data = os.Getenv("LOCALAPPDATA")
	case runtime.GOOS == "darwin":
		data = filepath.Join(home, "Library", "Application Support")
	default:
		data = filepath.Join(home, ".local", "share")
	}
	return filepath.Join(data, "chape"), home
}
