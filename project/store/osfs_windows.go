package store

import (
	"errors"
	"os"

	"golang.org/x/sys/windows"
)

// nonBlock: opening a named pipe for reading does not wait here.
const nonBlock = 0

// swap: there is no exchange of two names here.
func swap(a, b string) error { return errors.ErrUnsupported }

func renameNew(from, to string) error {
	f, err := windows.UTF16PtrFromString(from)
	if err != nil {
		return err
	}
	t, err := windows.UTF16PtrFromString(to)
	if err != nil {
		return err
	}
	// Without the flag to replace, an existing name is refused.
	if err := windows.MoveFileEx(f, t, windows.MOVEFILE_WRITE_THROUGH); err != nil {
		return &os.LinkError{Op: "rename", Old: from, New: to, Err: err}
	}
	return nil
}

// syncDir: there is no such call here; NTFS journals its names itself.
func syncDir(string) error { return nil }

// busy reports that another program (a virus scanner, a sync program) holds
// the file, which passes. Replacing a file held open gives access denied.
func busy(err error) bool {
	return errors.Is(err, windows.ERROR_SHARING_VIOLATION) ||
		errors.Is(err, windows.ERROR_LOCK_VIOLATION) ||
		errors.Is(err, windows.ERROR_ACCESS_DENIED)
}

func diskFull(err error) bool {
	return errors.Is(err, windows.ERROR_DISK_FULL) || errors.Is(err, windows.ERROR_HANDLE_DISK_FULL)
}

func readOnlyDisk(err error) bool { return errors.Is(err, windows.ERROR_WRITE_PROTECT) }

// OthersMayWrite is not known here: access lists decide.
func OthersMayWrite(string) bool { return false }
