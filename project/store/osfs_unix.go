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

// OthersMayWrite tells whether somebody beside the user and the machine's owner may
// change a file or what is in a folder. A group that has the user's own number is the
// user's alone, as most systems set it up. What can't be looked at is nobody's.
func OthersMayWrite(path string) bool {
	info, err := os.Stat(path)
	if err != nil {
		return false
	}
	own, ok := info.Sys().(*syscall.Stat_t)
	if !ok {
		return false
	}
	foreign := own.Uid != 0 && int(own.Uid) != os.Getuid()
	group := info.Mode()&0o020 != 0 && own.Gid != own.Uid
	return foreign || group || info.Mode()&0o002 != 0
}
