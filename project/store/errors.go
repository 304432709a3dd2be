package store

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
)

// ErrBusy is what an FS returns, wrapped, when another program holds a file
// and that will pass; the system's own errors of that kind count as well.
var ErrBusy = errors.New("held by another program")

// errMadeUp is the answer to opening what is on no disk, such as a file of /proc.
var errMadeUp = errors.New("it is an answer of the system, not a file on a disk")

// ErrChanged says that the file is not what the caller expects it to be: it
// was changed by someone else, and is left as they made it.
type ErrChanged struct {
	Path string
	Now  Stamp  // what is there now; zero if the file is gone
	Kept string // a file into which one more version of theirs was put; "" for none
}

func (e *ErrChanged) Error() string {
	verb := "was"
	if e.Now.IsZero() {
		verb = "is"
	}
	return fmt.Sprintf("%q %s %s", e.Path, verb, e.Reason())
}

// Reason is the line without the name of the file.
func (e *ErrChanged) Reason() string {
	s := "changed by another program: nothing was written to it: load it, or keep both"
	if e.Now.IsZero() {
		s = "gone, moved or deleted by another program: save again under its name or another"
	}
	if e.Kept != "" {
		s += fmt.Sprintf("; one more version of it is in %q", e.Kept)
	}
	return s
}

// ErrExists says that a new file would have replaced one.
type ErrExists struct{ Path string }

func (e *ErrExists) Error() string { return fmt.Sprintf("%q is %s", e.Path, e.Reason()) }

// Reason is the line without the name of the file.
func (e *ErrExists) Reason() string { return "there already: choose another name" }

// Unwrap makes it fs.ErrExist.
func (e *ErrExists) Unwrap() error { return fs.ErrExist }

// Failure is a file that could not be read or saved: one line that says which,
// why, and what would do.
type Failure struct {
	Path  string
	Doing string // "read" or "saved"
	Why   string
	Try   string
	Err   error // the system's error, or nil
}

func (e *Failure) Error() string {
	return fmt.Sprintf("%q can't be %s: %s", e.Path, e.Doing, e.Reason())
}

// Reason is the line without the name of the file.
func (e *Failure) Reason() string { return e.Why + ": " + e.Try }

// Unwrap gives the system's error.
func (e *Failure) Unwrap() error { return e.Err }

// failure turns the system's error into a line for people.
func failure(path, doing string, err error) error {
	f := &Failure{Path: path, Doing: doing, Err: err, Why: bare(err), Try: "try again, or save in another folder"}
	if doing == "read" {
		f.Try = "see whether the disk or the share is well, then try again"
	}
	switch {
	case diskFull(err) || errors.Is(err, syscall.ENOSPC):
		f.Why, f.Try = "the disk is full", "free some space, then save again"
	case readOnlyDisk(err) || errors.Is(err, syscall.EROFS):
		f.Why, f.Try = "the disk is read-only", "save in another folder"
	case errors.Is(err, errMadeUp):
		f.Try = "name a project file"
	case isBusy(err):
		f.Why, f.Try = "another program holds it", "close it there, then try again"
	case errors.Is(err, fs.ErrPermission) && doing == "read":
		f.Why, f.Try = "no permission", "ask its owner, or change its permissions"
	case errors.Is(err, fs.ErrPermission):
		f.Why = fmt.Sprintf("no permission in the folder %q", filepath.Dir(path))
		f.Try = "change its permissions, or save in another folder"
	case errors.Is(err, fs.ErrNotExist) && doing == "read":
		f.Why, f.Try = "there is no such file", "look at its name and folder"
	case errors.Is(err, fs.ErrNotExist):
		f.Why = fmt.Sprintf("the folder %q is gone", filepath.Dir(path))
		f.Try = "make it again, or save in another folder"
	}
	return f
}

// Reason is why something failed, for a screen that shows the name of the file
// already: the line of an error of this package without it, else the whole line.
func Reason(err error) string {
	var r interface{ Reason() string }
	if errors.As(err, &r) {
		return r.Reason()
	}
	return err.Error()
}

func isBusy(err error) bool { return errors.Is(err, ErrBusy) || busy(err) }

// bare takes the call and the paths off a system error: the line names the
// file once, quoted, and a path may hold anything.
func bare(err error) string {
	var p *fs.PathError
	var l *os.LinkError
	switch {
	case errors.As(err, &p):
		return p.Err.Error()
	case errors.As(err, &l):
		return l.Err.Error()
	}
	return err.Error()
}
