package store

import (
	"os"

	"golang.org/x/sys/unix"
)

func renameFlag(from, to string, flag uint) error {
	err := notOffered(unix.Renameat2(unix.AT_FDCWD, from, unix.AT_FDCWD, to, flag))
	if err != nil {
		return &os.LinkError{Op: "renameat2", Old: from, New: to, Err: err}
	}
	return nil
}

func swap(a, b string) error          { return renameFlag(a, b, unix.RENAME_EXCHANGE) }
func renameNew(from, to string) error { return renameFlag(from, to, unix.RENAME_NOREPLACE) }
