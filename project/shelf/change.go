package shelf

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"chape/project"
	"chape/project/carry"
	"chape/project/file"
	"chape/project/steps"
	"chape/project/store"
)

// Take is what a new project takes along from an earlier one.
type Take struct {
	Knife  bool // its measurements and its mouth: the same knife again
	Sheath bool // sheath, strap, belt and stitches
	Fits   bool // the corrections: kept with the knife, else offered one by one
	Steps  bool // the checklist with its hold times and cautions
}

// From is a project that starts from an earlier one, in its unit. What is of that sheath
// alone is not taken along: its measured stitch line, customer and notes; nothing is
// done, started, skipped, spent or weighed, nothing was printed or quoted, and the pattern is number
// 1. For another knife the corrections are placed by its landmarks once it is measured,
// and each is offered, not kept.
func From(earlier project.Project, title string, start project.Project, take Take) project.Project {
	p := project.New(title, earlier.Units, start)
	e, had := earlier.Clone(), p.Parts()
	p.Notes, p.Customer, p.Weigh, p.Patterns, p.Carried, p.Earlier, p.MadeFor, p.Fits = "", project.Customer{}, nil, nil, nil, nil, project.MadeFor{}, nil
	if take.Sheath {
		mouth := p.Sheath.Mouth
		p.Sheath, p.Sold, p.Strap, p.Belt, p.Stitch = e.Sheath, e.Sold, e.Strap, e.Belt, e.Stitch
		p.Sheath.Mouth, p.Stitch.Measured = mouth, 0
	}
	if take.Knife {
		p.Source, p.Outline, p.Knife, p.Tracing, p.Sheath.Mouth = e.Source, e.Outline, e.Knife, e.Tracing, e.Sheath.Mouth
	}
	switch {
	case take.Fits && take.Knife:
		p.Fits = e.Fits
	case take.Fits:
		p.Carried, _ = carry.Along(e.Fits, e, "from "+e.Title) // marks that make no knife have no corrections
	}
	if take.Steps && len(e.Steps) > 0 {
		p.Steps, had = slices.DeleteFunc(e.Steps, func(s steps.Step) bool { return s.Title == steps.WeighAgain }), earlier.Parts()
	}
	p.Steps = steps.Refit(steps.Fresh(p.Steps), had, p.Parts())
	return p
}

// Load reads a project of the shelf. The error is one line.
func (s *Shelf) Load(path string) (project.Project, error) {
	p, _, _, err := s.read(path)
	return p, err
}

func (s *Shelf) read(path string) (project.Project, file.Notices, store.Stamp, error) {
	data, stamp, err := store.Read(s.fsys, path)
	if err != nil {
		return project.Project{}, file.Notices{}, stamp, err
	}
	p, n, err := file.Decode(path, data)
	return p, n, stamp, err
}

// Create makes a file for a new project, named after its title, with a number
// behind it where that name is taken. The shelf is made where there is none, for
// the user alone: it may hold customers' names.
func (s *Shelf) Create(p project.Project) (path string, err error) {
	if err := p.Validate(); err != nil {
		return "", err
	}
	if err := makeFolder(s.dir); err != nil {
		return "", err
	}
	data := file.Encode(p)
	return intoFreeName(s.dir, store.SafeName(p.Title), func(path string) error {
		_, err := store.SaveNew(s.fsys, path, data)
		return err
	})
}

func makeFolder(dir string) error {
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return fmt.Errorf("the folder %q can't be made: %s: name another one", dir, reason(err))
	}
	return nil
}

// intoFreeName does something with the first name that is free.
func intoFreeName(dir, name string, do func(path string) error) (string, error) {
	return store.FirstFree(func(n int) string {
		if n > 1 {
			return filepath.Join(dir, fmt.Sprintf("%s %d%s", name, n, ending))
		}
		return filepath.Join(dir, name+ending)
	}, do)
}

// Rename gives a project another title, and its file the name that goes with it, or
// the next free one. It returns the file's path, also where only the title could be
// changed and the error says why. A project that is open is refused.
func (s *Shelf) Rename(path, title string, now time.Time) (string, error) {
	title = strings.TrimSpace(title)
	if title == "" {
		return path, errors.New("a project needs a title: type one")
	}
	done, err := s.alone(path)
	if err != nil {
		return path, err
	}
	defer done()
	p, notices, stamp, err := s.read(path)
	if err != nil {
		return path, err
	}
	if title != p.Title {
		p.Title = title
		if err := p.Validate(); err != nil {
			return path, err
		}
		if notices.Comments || notices.OldFormat { // which the save would not keep
			if err := s.copyBeside(path, stamp, now); err != nil {
				return path, err
			}
		}
		if _, err := store.Save(s.fsys, path, file.Encode(p), stamp); err != nil {
			return path, err
		}
	}
	name := store.SafeName(title)
	if strings.EqualFold(name, nameOf(path)) { // the same file where capitals do not count
		return path, nil
	}
	to, err := intoFreeName(filepath.Dir(path), name, func(to string) error { return s.move(path, to) })
	if err != nil {
		return path, fmt.Errorf("the title is changed, the file's name is not: %w", err)
	}
	return to, nil
}

// copyBeside keeps the file as it was.
func (s *Shelf) copyBeside(path string, seen store.Stamp, now time.Time) error {
	data, stamp, err := store.Read(s.fsys, path)
	if err != nil {
		return err
	}
	if !stamp.Same(seen) {
		return &store.ErrChanged{Path: path, Now: stamp}
	}
	_, err = store.SaveBeside(s.fsys, path, data, "before renaming", now)
	return err
}

// PutAway moves a project into the folder Away and returns its path there. Its holds
// go on.
func (s *Shelf) PutAway(path string) (string, error) {
	return s.moveTo(path, filepath.Join(s.dir, Away))
}

// TakeOut moves a project back.
func (s *Shelf) TakeOut(path string) (string, error) { return s.moveTo(path, s.dir) }

func (s *Shelf) moveTo(path, dir string) (string, error) {
	if filepath.Dir(path) == filepath.Clean(dir) {
		return path, nil
	}
	done, err := s.alone(path)
	if err != nil {
		return path, err
	}
	defer done()
	if _, err := s.Load(path); err != nil { // such a file is left where it is
		return path, err
	}
	if err := makeFolder(dir); err != nil {
		return path, err
	}
	to, err := intoFreeName(dir, nameOf(path), func(to string) error { return s.move(path, to) })
	if err != nil {
		return path, err
	}
	return to, nil
}

// alone refuses a project that is open, here or in another window: that window
// would go on saving to its old place.
func (s *Shelf) alone(path string) (done func(), err error) {
	lock, elsewhere := store.TakeLock(s.fsys, path)
	if elsewhere {
		lock.Release()
		return nil, fmt.Errorf("%q is open: go over to another project, or close its window, first", filepath.Base(path))
	}
	return lock.Release, nil
}

// move gives a file another name, which must be free, and its backup with it.
func (s *Shelf) move(path, to string) error {
	err := s.fsys.RenameNew(path, to)
	if errors.Is(err, errors.ErrUnsupported) {
		err = s.moveBySteps(path, to)
	}
	if err != nil {
		if errors.Is(err, fs.ErrExist) {
			return &store.ErrExists{Path: to}
		}
		return fmt.Errorf("%q can't be moved: %s: see to the permissions of its folder", path, reason(err))
	}
	// A backup that can't follow stays where it is; nothing relies on it.
	_ = s.fsys.RenameNew(store.BackupName(path), store.BackupName(to))
	s.fsys.SyncDir(filepath.Dir(to))
	s.fsys.SyncDir(filepath.Dir(path))
	return nil
}

// moveBySteps is for file systems that can't rename to a free name in one step: a
// second name first or, where there is no such thing, a copy.
func (s *Shelf) moveBySteps(path, to string) error {
	if err := s.fsys.Link(path, to); err != nil {
		if errors.Is(err, fs.ErrExist) {
			return err
		}
		data, seen, err := store.Read(s.fsys, path)
		if err != nil {
			return err
		}
		if _, err := store.SaveNew(s.fsys, to, data); err != nil {
			return err
		}
		if changed, now, err := store.Changed(s.fsys, path, seen); err != nil || changed {
			return errors.Join(err, &store.ErrChanged{Path: path, Now: now}) // both are kept
		}
	}
	return s.fsys.Remove(path)
}
