package store

import (
	"sync"
	"time"
)

// guardFor is how long a save waits for another save of the same file on this
// machine.
const guardFor = time.Second

// Lock says that a project is open. It only serves to warn: nothing relies on
// it, since not every file system, and no sync program, knows locks.
type Lock struct{ release func() }

// TakeLock notes that path is open here. elsewhere reports that another
// window on this machine has it open. Where there are no locks it notes
// nothing. Release the Lock, also one of a file open elsewhere.
func TakeLock(fsys FS, path string) (lock *Lock, elsewhere bool) {
	if target, err := fsys.Resolve(path); err == nil {
		path = target
	}
	release, held, err := fsys.TryLock(path, "open")
	if err != nil || !held {
		return &Lock{}, err == nil
	}
	return &Lock{release: sync.OnceFunc(release)}, false
}

// Release ends the note. It may be called twice.
func (l *Lock) Release() {
	if l.release != nil {
		l.release()
	}
}

// guard keeps the saves of one file on this machine apart while it can: they
// would not lose anything, but one of them would find a change.
func guard(fsys FS, target string) (release func()) {
	end := fsys.Now().Add(guardFor)
	for {
		release, held, err := fsys.TryLock(target, "save")
		if held {
			return release
		}
		if err != nil || fsys.Now().After(end) {
			return func() {}
		}
		fsys.Sleep(5 * time.Millisecond)
	}
}
