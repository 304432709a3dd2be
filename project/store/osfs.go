package store

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"github.com/gofrs/flock"
)

// osFS is the real file system. Its locks are files in the folder locks, ""
// for none.
type osFS struct{ locks string }

// OS is the real file system, with its lock files in the user's cache folder.
func OS() FS {
	cache, err := os.UserCacheDir()
	if err != nil || !filepath.IsAbs(cache) { // HOME may be anything
		return OSLockingIn("")
	}
	return OSLockingIn(filepath.Join(cache, "chape", "locks"))
}

// OSLockingIn is the real file system with its lock files in dir; with "" it
// has no locks.
func OSLockingIn(dir string) FS { return osFS{locks: dir} }

func (osFS) Open(name string) (File, error) {
	if madeUp(name) {
		return nil, &fs.PathError{Op: "open", Path: name, Err: errMadeUp}
	}
	f, err := os.OpenFile(name, os.O_RDONLY|nonBlock, 0)
	if err != nil {
		return nil, err
	}
	return f, nil
}

func (osFS) Create(name string, perm fs.FileMode) (File, error) {
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, perm)
	if err != nil {
		return nil, err
	}
	return f, nil
}

func (osFS) CanWrite(name string) error {
	if info, err := os.Stat(name); err == nil && info.Mode().Perm()&0o222 == 0 { // root may, and yet it is not meant to be written
		return &fs.PathError{Op: "open", Path: name, Err: fs.ErrPermission}
	}
	f, err := os.OpenFile(name, os.O_WRONLY|nonBlock, 0)
	if err != nil {
		return err
	}
	return f.Close()
}

func (osFS) Stat(name string) (fs.FileInfo, error)  { return os.Stat(name) }
func (osFS) Lstat(name string) (fs.FileInfo, error) { return os.Lstat(name) }
func (osFS) Resolve(name string) (string, error)    { return filepath.EvalSymlinks(name) }
func (osFS) Rename(from, to string) error           { return os.Rename(from, to) }
func (osFS) RenameNew(from, to string) error        { return renameNew(from, to) }
func (osFS) Swap(a, b string) error                 { return swap(a, b) }
func (osFS) Link(from, to string) error             { return os.Link(from, to) }
func (osFS) Remove(name string) error               { return os.Remove(name) }
func (osFS) SyncDir(dir string) error               { return syncDir(dir) }
func (osFS) Now() time.Time                         { return time.Now() }
func (osFS) Sleep(d time.Duration)                  { time.Sleep(d) }

func (osFS) Names(dir string) ([]string, error) {
	d, err := os.Open(dir)
	if err != nil {
		return nil, err
	}
	defer d.Close()
	return d.Readdirnames(-1)
}

// TryLock locks a file named after the hash of the whole path: the cache
// folder is local even when the project is on a share without locks, and no
// lock file litters the shelf or is carried about by a sync program.
func (o osFS) TryLock(name, purpose string) (func(), bool, error) {
	if o.locks == "" {
		return nil, false, errors.ErrUnsupported
	}
	abs, err := filepath.Abs(name)
	if err != nil {
		return nil, false, err
	}
	if err := os.MkdirAll(o.locks, 0o700); err != nil {
		return nil, false, err
	}
	sum := sha256.Sum256([]byte(abs))
	l := flock.New(filepath.Join(o.locks, hex.EncodeToString(sum[:12])+"."+purpose), flock.SetPermissions(0o600))
	held, err := l.TryLock()
	if err != nil || !held {
		l.Close()
		return nil, false, err
	}
	// The lock file stays: removing it would let two hold "the" lock.
	return func() { l.Close() }, true, nil
}
