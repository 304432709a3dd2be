// Package shelf is the folder of project files: what is in it, what needs
// attention, and how projects are begun, renamed and put away. Nothing is ever
// deleted, nothing replaced, and a file that can't be loaded is left as it is.
package shelf

import (
	"path/filepath"
	"sync"
	"time"

	"chape/project/store"
)

// Away is the folder within the shelf for projects that are put away.
const Away = "put away"

// ending is what names of project files end in; other files are not looked at.
const ending = ".toml"

// Shelf is one folder. Its methods do disk work, and may be called from several
// goroutines.
type Shelf struct {
	fsys store.FS
	dir  string

	asking sync.Mutex // held by the call of Holds that looks at the disk

	mu    sync.Mutex
	cache map[string]cached // by path
	full  look              // the last look at every file, for Holds
}

// cached is what a file said when it had this size and time.
type cached struct {
	size  int64
	mod   time.Time
	taken time.Time
	entry Entry
}

// settle is how long after a write a file's time may still hide a second one: FAT
// counts time in steps of 2 s.
const settle = 3 * time.Second

func (c cached) holds(size int64, mod time.Time) bool {
	return c.size == size && c.mod.Equal(mod) && c.taken.Sub(c.mod) > settle
}

// Open gives the shelf in a folder, which need not be there yet.
func Open(fsys store.FS, dir string) *Shelf {
	return &Shelf{fsys: fsys, dir: dir, cache: map[string]cached{}}
}

// Dir is the shelf's folder.
func (s *Shelf) Dir() string { return s.dir }

// Folder is where the shelf is unless the user says otherwise: chape in the data
// folder of the system (XDG Base Directory Specification 0.8; the folders of macOS and
// Windows are those their makers name for it). getenv is os.Getenv, goos runtime.GOOS.
func Folder(goos, home string, getenv func(string) string) string {
	data := getenv("XDG_DATA_HOME")
	switch {
	case filepath.IsAbs(data):
	case goos == "windows" && getenv("LOCALAPPDATA") != "":
		data = getenv("LOCALAPPDATA")
	case goos == "windows":
		data = filepath.Join(home, "AppData", "Local")
	case goos == "darwin":
		data = filepath.Join(home, "Library", "Application Support")
	default:
		data = filepath.Join(home, ".local", "share")
	}
	return filepath.Join(data, "chape")
}
