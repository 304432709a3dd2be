package folder

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"regexp"

	"chape/project/print/pdf"
	"chape/project/print/sheet"
)

// ErrForeign says that a file there was not written by this program.
type ErrForeign struct{ Path string }

func (e *ErrForeign) Error() string {
	return fmt.Sprintf("%q is there and was not printed by this program: move it away, or choose another folder", e.Path)
}

// replaceable refuses a path that holds something of someone else's. A link is never
// written through, nor replaced: what it leads to, or the link, is somebody's.
func replaceable(path string, force bool) error {
	info, err := os.Lstat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return fmt.Errorf("%q can't be looked at: %w: choose another folder", path, bare(err))
	case info.Mode()&fs.ModeSymlink != 0:
		return fmt.Errorf("%q is a link to somewhere else: remove it, or choose another folder", path)
	case !info.Mode().IsRegular():
		return fmt.Errorf("%q is there and is no file: choose another folder", path)
	case force:
		return nil
	}
	head, tail, err := ends(path, info)
	if err != nil || !ours(head, tail) {
		return &ErrForeign{path}
	}
	return nil
}

// endSize is how much is read of either end of a file, in bytes.
const endSize = 16 << 10

// ends reads the beginning and the end of a file; of a short one both are all of it.
// seen is what the path was a moment ago: that it is opened for reading is no harm.
func ends(path string, seen fs.FileInfo) (head, tail []byte, err error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, nil, err
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil || !os.SameFile(seen, info) {
		return nil, nil, errors.Join(err, fs.ErrInvalid)
	}
	n := min(info.Size(), endSize)
	head, tail = make([]byte, n), make([]byte, n)
	if _, err = f.ReadAt(head, 0); err == nil || errors.Is(err, io.EOF) {
		_, err = f.ReadAt(tail, info.Size()-n)
	}
	if errors.Is(err, io.EOF) {
		err = nil
	}
	return head, tail, err
}

// ours knows a file by its ends. A PDF that something was put behind, as programs do
// that write notes into it, is somebody's work.
func ours(head, tail []byte) bool {
	switch {
	case bytes.HasPrefix(head, []byte("%PDF-")):
		_, end, ok := bytes.Cut(tail, []byte("\n"+pdf.Mark+"\nstartxref\n"))
		if !ok { // printed before they were marked
			var before []byte
			before, end, ok = bytes.Cut(tail, []byte("startxref\n"))
			ok = ok && bytes.Contains(before, []byte("/Producer ("+sheet.Producer+")"))
		}
		return ok && endRE.Match(end)
	case bytes.HasPrefix(head, []byte("<?xml")):
		return bytes.Contains(head[:min(len(head), 1024)], []byte("<!-- "+sheet.Producer+" -->"))
	}
	return false
}

var endRE = regexp.MustCompile(`^\d+\n%%EOF\n$`)
