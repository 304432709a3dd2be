package store

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"time"
)

// MaxSize is the largest file that is read or saved, in bytes.
const MaxSize = 1 << 20

// settle is how long after a write a file's time may still hide a second one:
// FAT counts time in steps of 2 s.
const settle = 3 * time.Second

// Stamp says which version of a file was seen. The zero Stamp is no file.
type Stamp struct {
	Size    int64
	ModTime time.Time
	Sum     [sha256.Size]byte
	Taken   time.Time // when it was seen, by the clock of this machine
}

// IsZero reports that the Stamp is of no file.
func (s Stamp) IsZero() bool { return s.Taken.IsZero() && s.Sum == [sha256.Size]byte{} }

// Same reports that both are of the same bytes, whatever their times.
func (s Stamp) Same(o Stamp) bool {
	return s.IsZero() == o.IsZero() && s.Size == o.Size && s.Sum == o.Sum
}

// settled reports that a later write must show in the file's time.
func (s Stamp) settled() bool { return s.Taken.Sub(s.ModTime) > settle }

// Read reads a whole file of at most MaxSize bytes, following symbolic links.
// Anything but a plain file is refused without waiting for it. A file that is
// not there is fs.ErrNotExist.
func Read(fsys FS, path string) ([]byte, Stamp, error) {
	data, stamp, err := read(fsys, path)
	var f *Failure
	if err != nil && !errors.As(err, &f) {
		err = failure(path, "read", err)
	}
	return data, stamp, err
}

func read(fsys FS, path string) ([]byte, Stamp, error) {
	// Asked before opening, since to open a device may already do something.
	info, err := fsys.Stat(path)
	if err != nil {
		return nil, Stamp{}, err
	}
	if err := plain(path, info); err != nil {
		return nil, Stamp{}, err
	}
	f, err := fsys.Open(path)
	if err != nil {
		return nil, Stamp{}, err
	}
	defer f.Close()
	// And again, since the name may have come to mean something else.
	if info, err = f.Stat(); err != nil {
		return nil, Stamp{}, err
	}
	if err := plain(path, info); err != nil {
		return nil, Stamp{}, err
	}
	var buf bytes.Buffer
	buf.Grow(int(info.Size()) + bytes.MinRead)
	if _, err := io.Copy(&buf, io.LimitReader(f, MaxSize+1)); err != nil {
		return nil, Stamp{}, err
	}
	if buf.Len() > MaxSize {
		return nil, Stamp{}, tooLarge(path, "read")
	}
	return buf.Bytes(), stampOf(buf.Bytes(), info.ModTime(), fsys.Now()), nil
}

func stampOf(data []byte, mod, now time.Time) Stamp {
	return Stamp{Size: int64(len(data)), ModTime: mod, Sum: sha256.Sum256(data), Taken: now}
}

// plain refuses all but plain files of a size that can be a project.
func plain(path string, info fs.FileInfo) error {
	mode := info.Mode()
	if mode.IsRegular() {
		if info.Size() > MaxSize {
			return tooLarge(path, "read")
		}
		return nil
	}
	kind := "not a plain file"
	switch {
	case mode.IsDir():
		kind = "a folder"
	case mode&fs.ModeNamedPipe != 0:
		kind = "a named pipe"
	case mode&fs.ModeSocket != 0:
		kind = "a socket"
	case mode&fs.ModeDevice != 0:
		kind = "a device"
	}
	return &Failure{Path: path, Doing: "used", Why: "it is " + kind, Try: "name a project file"}
}

func tooLarge(path, doing string) error {
	try := "name a project file, which is far smaller"
	if doing == "saved" {
		try = "shorten its notes"
	}
	return &Failure{Path: path, Doing: doing, Why: fmt.Sprintf("it is over %d KiB", MaxSize/1024), Try: try}
}

// Changed reports whether the file differs from what was seen, and what is
// there now: the zero Stamp if it is gone. It is cheap enough to ask every
// second: it reads the file only if its size or time differ, or if it was
// written so shortly before it was seen that its time could hide a second
// write. Keep the Stamp it returns for the next question.
func Changed(fsys FS, path string, seen Stamp) (bool, Stamp, error) {
	info, err := fsys.Stat(path)
	if errors.Is(err, fs.ErrNotExist) {
		return !seen.IsZero(), Stamp{}, nil
	}
	if err != nil {
		return false, seen, failure(path, "read", err)
	}
	if !seen.IsZero() && seen.settled() && info.Size() == seen.Size && info.ModTime().Equal(seen.ModTime) {
		return false, seen, nil
	}
	_, now, err := Read(fsys, path)
	if errors.Is(err, fs.ErrNotExist) {
		return !seen.IsZero(), Stamp{}, nil
	}
	if err != nil {
		return false, seen, err
	}
	return !now.Same(seen), now, nil
}
