//go:build unix

package store

import (
	"errors"
	"os"
	"syscall"
)

// nonBlock keeps an open from waiting for the other end of a fifo.
const nonBlock = syscall.O_NONBLOCK

func syncDir(dir string) error {
	d, err := os.Open(dir)
	if err != nil {
		return err
	}
	defer d.Close()
	err = d.Sync()
	if errors.Is(err, syscall.EINVAL) || errors.Is(err, errors.ErrUnsupported) {
		return nil // this file system has no such call
	}
	return err
}

// busy: a name here can be replaced while others hold the file open.
func busy(error) bool { return false }

func diskFull(err error) bool {
	return errors.Is(err, syscall.ENOSPC) || errors.Is(err, syscall.EDQUOT)
}

func readOnlyDisk(err error) bool { return errors.Is(err, syscall.EROFS) }

// notOffered turns the answers of file systems without a flag of rename into
// errors.ErrUnsupported.
func notOffered(err error) error {
	switch {
	case err == nil:
		return nil
	case errors.Is(err, syscall.EINVAL), errors.Is(err, syscall.ENOSYS), errors.Is(err, errors.ErrUnsupported):
		return errors.ErrUnsupported
	}
	return err
}
