//go:build !linux && !windows

package endtoend

import "errors"

func smallDisk(string) error { return errors.ErrUnsupported }

func unmount(string) {}
