// Package storetest has a file layer that fails where a test wants it to.
package storetest

import (
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"sync"
	"syscall"
	"time"

	"chape/project/store"
)

// ErrCrashed is every call's error once the disk has crashed.
var ErrCrashed = errors.New("crashed")

// ErrFault is the error of a failing call, unless Disk.Err says otherwise.
var ErrFault = errors.New("fault")

// Disk is a file layer over another, usually the real one on a temporary
// folder. Calls are counted from 1; those of the clock are not counted. The
// zero values of its fields change nothing. Set them before use; several
// goroutines may then use it.
type Disk struct {
	Under store.FS

	FailAt  int    // this call fails and does nothing
	FailOn  string // every call of this name fails, such as "syncdir"
	CrashAt int    // this call and all after it do nothing: the disk stays as it is
	Err     error  // what FailAt and FailOn give instead of ErrFault

	Limited bool // writes stop after Room bytes with ENOSPC, having written what fits
	Room    int

	NoSwap, NoLink, NoRenameNew, NoLocks bool // calls that are not offered

	// Before is called before each call, with its number and its text.
	Before func(n int, call string)

	mu      sync.Mutex
	calls   []string
	crashed bool
	slept   time.Duration
}

// New gives a Disk over the real file system without locks.
func New() *Disk { return &Disk{Under: store.OSLockingIn("")} }

// Calls lists the calls made so far, such as "rename .a.new a".
func (d *Disk) Calls() []string {
	d.mu.Lock()
	defer d.mu.Unlock()
	return append([]string(nil), d.calls...)
}

// Crashed reports whether CrashAt was reached.
func (d *Disk) Crashed() bool {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.crashed
}

// step counts a call and gives its error, nil to go on.
func (d *Disk) step(name string, paths ...string) error {
	text := name
	for _, p := range paths {
		text += " " + filepath.Base(p)
	}
	d.mu.Lock()
	d.calls = append(d.calls, text)
	n := len(d.calls)
	d.crashed = d.crashed || n == d.CrashAt
	crashed, before := d.crashed, d.Before
	d.mu.Unlock()
	if before != nil {
		before(n, text)
	}
	switch {
	case crashed:
		return ErrCrashed
	case n == d.FailAt || name == d.FailOn:
		if d.Err != nil {
			return fmt.Errorf("%s: %w", name, d.Err)
		}
		return fmt.Errorf("%s: %w", name, ErrFault)
	}
	return nil
}

// take gives how many of n bytes still fit.
func (d *Disk) take(n int) (int, error) {
	d.mu.Lock()
	defer d.mu.Unlock()
	if !d.Limited {
		return n, nil
	}
	if n > d.Room {
		n = d.Room
		d.Room = 0
		return n, &fs.PathError{Op: "write", Path: "disk", Err: syscall.ENOSPC}
	}
	d.Room -= n
	return n, nil
}

// Now is the time of the layer below plus what was slept.
func (d *Disk) Now() time.Time {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.Under.Now().Add(d.slept)
}

// Sleep only moves the clock.
func (d *Disk) Sleep(t time.Duration) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.slept += t
}

// Slept is how far Sleep has moved the clock.
func (d *Disk) Slept() time.Duration {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.slept
}
