package print

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"

	"chape/calc"
	"chape/project"
)

// File is a printed file that is to be written.
type File struct {
	Name string // without folder: "orchard.pdf"
	Data []byte
}

// Files prints what is asked for, "pdf" or "svg", under a name without
// ending. A trial and a half pattern have names of their own, so that neither
// replaces the pattern that leather is cut by. The same kind twice is printed
// once.
func Files(p project.Project, plan *calc.Plan, o Options, base string, kinds []string) ([]File, error) {
	if o.Half {
		base += " half"
	}
	if o.Trial != 0 {
		base += " trial"
	}
	if err := CheckKinds(kinds); err != nil {
		return nil, err
	}
	var out []File
	for i, kind := range kinds {
		if slices.Contains(kinds[:i], kind) {
			continue
		}
		draw := PDF
		if kind == "svg" {
			draw = SVG
		}
		data, err := draw(p, plan, o)
		if err != nil {
			return nil, err
		}
		out = append(out, File{base + "." + kind, data})
	}
	return out, nil
}

// CheckKinds says which of the kinds can't be printed.
func CheckKinds(kinds []string) error {
	for _, kind := range kinds {
		if kind != "pdf" && kind != "svg" {
			return fmt.Errorf("%.40q is nothing to print as: try pdf, svg or pdf,svg", kind)
		}
	}
	return nil
}

// ErrForeign says that a file there was not written by this program.
type ErrForeign struct{ Path string }

func (e *ErrForeign) Error() string {
	return fmt.Sprintf("%q is there and was not printed by this program: name another folder with --out, or say --force to replace it", e.Path)
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
		return nil, fmt.Errorf("folder %q can't be made: %w: name another with --out", dir, bare(err))
	}
	for i, f := range files {
		if progress != nil {
			progress(i, len(files), paths[i])
		}
		if err := writeWhole(paths[i], f.Data); err != nil {
			return paths[:i], fmt.Errorf("%q can't be written: %w: see to the disk, or name another folder with --out", paths[i], bare(err))
		}
	}
	if progress != nil {
		progress(len(files), len(files), "")
	}
	return paths, nil
}

// replaceable refuses a path that holds something of someone else's.
func replaceable(path string, force bool) error {
	info, err := os.Lstat(path)
	if err == nil && info.Mode()&fs.ModeSymlink != 0 {
		if to, err := os.Stat(path); err == nil {
			info = to // a link to a pipe is not to be waited for
		}
	}
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return fmt.Errorf("%q can't be looked at: %w: name another folder with --out", path, bare(err))
	case !info.Mode().IsRegular() && info.Mode()&fs.ModeSymlink == 0:
		return fmt.Errorf("%q is there and is no file: name another folder with --out", path)
	case force:
		return nil
	}
	data, err := os.ReadFile(path)
	if err != nil || !Ours(data) {
		return &ErrForeign{path}
	}
	return nil
}

// Ours tells whether this program printed a file, by the mark inside.
func Ours(data []byte) bool {
	switch {
	case bytes.HasPrefix(data, []byte("%PDF-")):
		return bytes.Contains(data, []byte("/Producer ("+producer+")"))
	case bytes.HasPrefix(data, []byte("<?xml")):
		return bytes.Contains(data[:min(len(data), 1024)], []byte("<!-- "+producer+" -->"))
	}
	return false
}

// writeWhole writes beside path and renames. A link is followed. (Saving as
// project files are saved would keep a backup of every print.)
func writeWhole(path string, data []byte) (err error) {
	if real, e := filepath.EvalSymlinks(path); e == nil {
		path = real
	}
	f, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+".*.tmp")
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
	if err = f.Chmod(mode(path)); err != nil {
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

// mode keeps that of a file that is replaced. A new one is the user's alone, as the
// project is: the cards name the customer.
func mode(path string) fs.FileMode {
	if info, err := os.Stat(path); err == nil {
		return info.Mode().Perm()
	}
	return 0o600
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
