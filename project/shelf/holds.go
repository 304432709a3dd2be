package shelf

import (
	"cmp"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"chape/project/steps"
	"chape/project/store"
)

// Running is a project with the holds that run or wait in it.
type Running struct {
	Path  string
	Holds []steps.Hold
}

// look is what a full look at the shelf has found.
type look struct {
	at      time.Time
	folders [2]time.Time // when the folders were last changed
	left    bool         // there was more than one look may read
}

const (
	// fullEvery is how often every file is looked at even though its folder has not
	// changed: some programs write into a file without replacing it.
	fullEvery = time.Minute
	// mostAtOnce bounds the files read by one call of Holds.
	mostAtOnce = 500
)

// Holds gives the holds of all projects, those put away too. Where two files tell of
// the same hold it is that of the one with the shorter name. A copy kept beside a
// project tells only of holds that the project never had: what was put off or is over
// there is so for the copy. It is cheap enough to ask every second: it looks at the files with
// holds, and at the others only when a folder has changed or a minute has passed. Of
// a large shelf it reads 500 files at a call, those changed last first.
//
// While one call is at work on a slow disk, another gives what is known.
func (s *Shelf) Holds(now time.Time) []Running {
	if s.asking.TryLock() {
		defer s.asking.Unlock()
		now = now.Round(0)
		if s.isStale(now) {
			s.lookAtAll(now)
		} else {
			s.lookAtHeld()
		}
	}
	return s.running()
}

// Read tells whether Holds has read every file once.
func (s *Shelf) Read() bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	return !s.full.at.IsZero() && !s.full.left
}

func (s *Shelf) folderTimes() (t [2]time.Time) {
	for i, dir := range []string{s.dir, filepath.Join(s.dir, Away)} {
		if info, err := s.fsys.Stat(dir); err == nil {
			t[i] = info.ModTime()
		}
	}
	return t
}

func (s *Shelf) isStale(now time.Time) bool {
	folders := s.folderTimes()
	s.mu.Lock()
	defer s.mu.Unlock()
	f := s.full
	since := now.Sub(f.at)
	if f.left || since < 0 || since >= fullEvery {
		return true
	}
	for i := range folders {
		if !folders[i].Equal(f.folders[i]) || f.at.Sub(folders[i]) <= settle {
			return true
		}
	}
	return false
}

func (s *Shelf) lookAtAll(now time.Time) {
	folders := s.folderTimes()
	sc, err := s.Look()
	if err != nil {
		return // the shelf's own screen says so
	}
	sc.Next(mostAtOnce)
	s.mu.Lock()
	defer s.mu.Unlock()
	s.full = look{now, folders, sc.Left() > 0}
}

// lookAtHeld reads those files with holds that have changed.
func (s *Shelf) lookAtHeld() {
	for _, c := range s.held() {
		info, err := s.fsys.Stat(c.entry.Path)
		if err != nil {
			continue // its folder has changed: the next call looks at everything
		}
		if !c.holds(info.Size(), info.ModTime()) {
			s.load(pending{c.entry.Path, c.entry.PutAway, info.Size(), info.ModTime()})
		}
	}
}

func (s *Shelf) held() []cached {
	s.mu.Lock()
	defer s.mu.Unlock()
	var out []cached
	for _, c := range s.cache {
		if len(c.entry.Holds) > 0 {
			out = append(out, c)
		}
	}
	// A copy kept beside a project has the longer name.
	slices.SortFunc(out, func(a, b cached) int {
		return cmp.Or(len(a.entry.Path)-len(b.entry.Path), cmp.Compare(a.entry.Path, b.entry.Path))
	})
	return out
}

// originalOf is the file that a copy was kept beside: "Heron (mine 2026-11-25
// 14.03).toml" is one of "Heron.toml". It is empty for other names.
func originalOf(path string) string {
	name := nameOf(path)
	at := strings.LastIndex(name, " (")
	if at <= 0 || !strings.Contains(name[at:], ")") {
		return ""
	}
	return filepath.Join(filepath.Dir(path), name[:at]+filepath.Ext(path))
}

func (s *Shelf) running() []Running {
	type same struct {
		project string
		steps.Begun
	}
	seen := map[same]bool{}
	var out []Running
	for _, c := range s.held() {
		r := Running{Path: c.entry.Path}
		original, _ := s.known(originalOf(c.entry.Path))
		for _, h := range c.entry.Holds {
			b := h.Begun()
			if k := (same{h.Project, b}); !seen[k] && !slices.Contains(original.entry.begun, b) {
				seen[k] = true
				h.PutAway, h.Key = c.entry.PutAway, store.FullPath(r.Path)
				r.Holds = append(r.Holds, h)
			}
		}
		if len(r.Holds) > 0 {
			out = append(out, r)
		}
	}
	return out
}
