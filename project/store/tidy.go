package store

import (
	"path/filepath"
	"strings"
	"time"
)

// staleAfter is the age at which a leftover of another process is taken for
// abandoned; generous, since the clocks of two machines on one share differ.
const staleAfter = 24 * time.Hour

// tidy deals with what killed or failed saves of the file left beside it. It
// deletes only what bears a name of this package and holds nothing that is
// not elsewhere. Its errors are no errors of the save: the next one tries
// again.
func tidy(fsys FS, target string, now Stamp) {
	dir, start := filepath.Dir(target), stem(filepath.Base(target))
	names, err := fsys.Names(dir)
	if err != nil {
		return
	}
	for _, name := range names {
		end, ours := strings.CutPrefix(name, start)
		if !ours {
			continue
		}
		if left, ok := parseLeftover(end); ok {
			tidyOne(fsys, target, filepath.Join(dir, name), left, now)
		}
	}
}

func tidyOne(fsys FS, target, name string, left leftover, now Stamp) {
	info, err := fsys.Lstat(name)
	if err != nil || !info.Mode().IsRegular() {
		return
	}
	if left.process == process {
		if _, busy := inUse.Load(name); busy {
			return
		}
	} else {
		// A hold's file time is that of the version in it, not of the save.
		made := info.ModTime()
		if left.whole {
			made = left.made
		}
		if fsys.Now().Sub(made) < staleAfter {
			return
		}
	}
	if !left.whole {
		fsys.Remove(name)
		return
	}
	tidyHold(fsys, target, name, left, info.ModTime(), now)
}

// tidyHold settles a whole version whose save did not end.
func tidyHold(fsys FS, target, name string, left leftover, written time.Time, now Stamp) {
	held, err := hashOf(fsys, name)
	switch {
	case err != nil:
	case held == short(now):
		fsys.Remove(name) // the file itself holds it
	case held == left.ours:
		// Never called saved: the save died before its exchange.
		fsys.Remove(name)
	case held == left.expect:
		// The version before: the backup, if no later save has made one.
		backup, err := fsys.Lstat(BackupName(target))
		if err == nil && backup.ModTime().After(written) {
			fsys.Remove(name)
			return
		}
		rename(fsys, name, BackupName(target))
	default:
		keepVisible(fsys, target, name)
	}
}

// keepVisible gives a version of others a name that people see, beside the
// file, and returns it; if that fails, the hidden name.
func keepVisible(fsys FS, target, hidden string) string {
	name, err := intoFreeName(target, "found", fsys.Now(), func(name string) error {
		return moveNew(fsys, hidden, name)
	})
	if err != nil {
		return hidden
	}
	return name
}
