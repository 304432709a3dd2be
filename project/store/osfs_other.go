//go:build unix && !linux && !darwin

package store

import "errors"

func swap(a, b string) error          { return errors.ErrUnsupported }
func renameNew(from, to string) error { return errors.ErrUnsupported }
