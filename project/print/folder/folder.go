// Package folder puts printed files into a folder, over nothing that is somebody's.
package folder

import (
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"unicode/utf8"
)

// File is a printed file that is to be written.
type File struct {
	Name string // without folder: "orchard.pdf"
	Data []byte
}

// nameMost is the longest name of a file that the usual file systems take, in bytes.
const nameMost = 255

// Name puts an ending on a name. One that grows too long is shortened, with the
// beginning of its hash, so that two that begin alike stay two.
func Name(base, end string) string {
	if len(base)+len(end) <= nameMost {
		return base + end
	}
	sum := sha256.Sum256([]byte(base))
	end = fmt.Sprintf("~%x", sum[:4]) + end
	n := nameMost - len(end)
	for n > 0 && !utf8.RuneStart(base[n]) {
		n--
	}
	return strings.TrimRight(base[:n], " .") + end
}

// Write puts the files into a folder, which it makes if there is none, and
// gives their paths. It replaces only files that it printed itself, unless
// force is set; if one is in the way nothing at all is written. Each file is
// whole or not there: it is written beside its place, then renamed. progress,
// which may be nil, hears how many of how many are written, and which is next.
func Write(dir string, files []File, force bool, progress func(done, all int, path string)) ([]string, error) {
	paths := make([]string, len(files))
	for i, f := range files {
		paths[i] = filepath.Join(dir, f.Name)
		if err := replaceable(paths[i], force); err != nil {
			return nil, err
		}
	}
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return nil, fmt.Errorf("folder %q can't be made: %w: choose another", dir, bare(err))
	}
	for i, f := range files {
		if progress != nil {
			progress(i, len(files), paths[i])
		}
		if err := writeWhole(paths[i], f.Data); err != nil {
			return paths[:i], fmt.Errorf("%q can't be written: %w: see to the disk, or choose another folder", paths[i], bare(err))
		}
	}
	if progress != nil {
		progress(len(files), len(files), "")
	}
	return paths, nil
}

// writeWhole writes beside path and renames, which replaces a link and never follows
// one. The file is the user's alone, as the project is: the cards name the customer.
// (Saving as project files are saved would keep a backup of every print.)
func writeWhole(path string, data []byte) (err error) {
	f, err := os.CreateTemp(filepath.Dir(path), ".chape-*.tmp") // 0600
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			f.Close()
			os.Remove(f.Name())
		}
	}()
	if _, err = f.Write(data); err != nil {
		return err
	}
	if err = f.Sync(); err != nil {
		return err
	}
	if err = f.Close(); err != nil {
		return err
	}
	return os.Rename(f.Name(), path)
}

// bare takes the call and the path off a system error: the line names the
// file once.
func bare(err error) error {
	var p *fs.PathError
	var l *os.LinkError
	switch {
	case errors.As(err, &p):
		return p.Err
	case errors.As(err, &l):
		return l.Err
	}
	return err
}
