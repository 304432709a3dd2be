package store

import (
	"os"

	"golang.org/x/sys/unix"
)

func renameFlag(from, to string, flag uint32) error {
	if err := notOffered(unix.RenamexNp(from, to, flag)); err != nil {
		return &os.LinkError{Op: "renamex_np", Old: from, New: to, Err: err}
	}
	return nil
}

func swap(a, b string) error          { return renameFlag(a, b, unix.RENAME_SWAP) }
func renameNew(from, to string) error { return renameFlag(from, to, unix.RENAME_EXCL) }
