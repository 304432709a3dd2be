package shelf

import (
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// Scan is one look at the shelf: at once every file by its name, then in batches
// what is in them. A Scan belongs to one goroutine at a time.
type Scan struct {
	shelf   *Shelf
	entries []Entry
	todo    []pending
}

// pending is a file that is still to be read.
type pending struct {
	path string
	away bool
	size int64
	mod  time.Time
}

// Look lists the shelf without reading a file that is known already. A folder that
// is not there is an empty shelf.
func (s *Shelf) Look() (*Scan, error) {
	sc := &Scan{shelf: s}
	there := map[string]bool{}
	for _, d := range []struct {
		path string
		away bool
	}{{s.dir, false}, {filepath.Join(s.dir, Away), true}} {
		names, err := s.fsys.Names(d.path)
		if errors.Is(err, fs.ErrNotExist) {
			continue
		}
		if err != nil {
			return nil, fmt.Errorf("the shelf %q can't be read: %s: see to its permissions, or name another folder", d.path, reason(err))
		}
		sc.entries = slices.Grow(sc.entries, len(names))
		for _, name := range names {
			if ours(name) {
				path := filepath.Join(d.path, name)
				there[path] = true
				sc.add(path, d.away)
			}
		}
	}
	s.forget(there)
	// What was changed last is most likely what is looked for.
	slices.SortFunc(sc.todo, func(a, b pending) int { return b.mod.Compare(a.mod) })
	return sc, nil
}

// ours tells whether a name is one of a project file.
func ours(name string) bool {
	return len(name) > len(ending) && name[0] != '.' && strings.EqualFold(name[len(name)-len(ending):], ending)
}

func reason(err error) string {
	var p *fs.PathError
	if errors.As(err, &p) {
		return p.Err.Error()
	}
	return err.Error()
}

func (sc *Scan) add(path string, away bool) {
	var size int64
	var mod time.Time
	if info, err := sc.shelf.fsys.Stat(path); err == nil { // reading it says what is wrong
		size, mod = info.Size(), info.ModTime()
		if c, ok := sc.shelf.known(path); ok && c.holds(size, mod) {
			sc.entries = append(sc.entries, c.entry)
			return
		}
	}
	sc.entries = append(sc.entries, unread(path, away, mod))
	sc.todo = append(sc.todo, pending{path, away, size, mod})
}

// Entries is every file, by name; State is Unread for those Next has not given yet.
// The list is the caller's.
func (sc *Scan) Entries() []Entry { return slices.Clone(sc.entries) }

// Left is how many files Next has still to read.
func (sc *Scan) Left() int { return len(sc.todo) }

// Next reads up to n more files, those changed last first. It returns nil when
// there are none left.
func (sc *Scan) Next(n int) []Entry {
	n = min(n, len(sc.todo))
	if n <= 0 {
		return nil
	}
	out := make([]Entry, n)
	for i, p := range sc.todo[:n] {
		out[i] = sc.shelf.load(p)
	}
	sc.todo = sc.todo[n:]
	return out
}

// load reads a file, unless another look has read it meanwhile, and remembers what it
// said. A time of a moment before is not trusted afterwards, see settle.
func (s *Shelf) load(p pending) Entry {
	if c, ok := s.known(p.path); ok && c.holds(p.size, p.mod) {
		return c.entry
	}
	taken := s.fsys.Now()
	e := unread(p.path, p.away, p.mod).read(s.fsys)
	s.mu.Lock()
	defer s.mu.Unlock()
	s.cache[e.Path] = cached{p.size, e.Modified, taken, e}
	return e
}

func (s *Shelf) known(path string) (cached, bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	c, ok := s.cache[path]
	return c, ok
}

// forget drops what is no longer there.
func (s *Shelf) forget(there map[string]bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	for path := range s.cache {
		if !there[path] {
			delete(s.cache, path)
		}
	}
}
