package store

import (
	"io"
	"io/fs"
	"time"
)

// FS is every call this package makes to the system, so that a test can make
// each of them fail in turn. Names are as for package os. Errors are those of
// package os; a call the file system does not offer returns an error that is
// errors.ErrUnsupported.
type FS interface {
	// Open opens for reading and never waits for the other end of a fifo.
	Open(name string) (File, error)
	// Create makes a new file for writing; one that exists is fs.ErrExist.
	Create(name string, perm fs.FileMode) (File, error)
	// CanWrite reports why an existing file may not be written, or nil. The
	// file is not changed.
	CanWrite(name string) error

	Stat(name string) (fs.FileInfo, error)
	Lstat(name string) (fs.FileInfo, error)
	// Resolve follows every symbolic link in name.
	Resolve(name string) (string, error)
	// Names lists a folder.
	Names(dir string) ([]string, error)

	// Rename replaces to, if there is one, in one step.
	Rename(from, to string) error
	// RenameNew is Rename, but a to that exists is fs.ErrExist.
	RenameNew(from, to string) error
	// Swap exchanges two existing files in one step.
	Swap(a, b string) error
	Link(from, to string) error
	Remove(name string) error
	// SyncDir makes renames in a folder last through a power cut. Where the
	// system has no such call it does nothing.
	SyncDir(dir string) error

	// TryLock takes an advisory lock on name for a purpose ("open", "save");
	// held is false if another has it. It never touches name itself.
	TryLock(name, purpose string) (release func(), held bool, err error)

	// Now and Sleep are the clock of the retries and of the age of leftovers.
	Now() time.Time
	Sleep(time.Duration)
}

// File is an open file of an FS.
type File interface {
	io.Reader
	io.Writer
	Chmod(mode fs.FileMode) error
	Stat() (fs.FileInfo, error)
	Sync() error
	Close() error
}
