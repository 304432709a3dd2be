package shelf

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"reflect"
	"runtime"
	"strings"
	"testing"
	"time"

	"chape/calc"
	"chape/project"
	"chape/project/file"
	"chape/project/steps"
	"chape/project/store"
	"chape/project/store/storetest"
	"chape/project/weigh"
)

func mustLoad(t *testing.T, path string) project.Project {
	t.Helper()
	p, err := open(filepath.Dir(path)).Load(path)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestFrom(t *testing.T) {
	e := sheath("First", 9)
	e.Revision, e.Notes = 4, "for the fair"
	e.Customer = project.Customer{Name: "Somebody", Hand: calc.LeftHand, Due: now}
	e.Sheath.Leather, e.Sheath.Mouth, e.Stitch.Measured, e.Belt.Width = 2.5, 99, 210, 50
	e.Fits = []project.Fit{{Fit: calc.Fit{At: 108, By: 1.5, Reach: 20}, With: "leather", Note: "tight"}}
	e.Weigh = []weigh.Weighing{{When: now, Grams: 140, State: "before"}}
	e.Outline.Blade = 200
	e.Steps = e.Steps[:12]
	e.Steps[3].Title, e.Steps[3].Note, e.Steps[3].Spent = "My own step", "thin", time.Hour
	e.Steps[8].Started, e.Steps[8].Ended = now, now
	e.Steps[10].Skipped = true
	e.Steps[5].From, e.Steps[6].Sheet, e.Steps[7].Expect = "CUT", true, time.Hour
	e.Steps = append(e.Steps, steps.Step{Title: steps.WeighAgain, Short: "WEIGH"}) // of that drying alone
	before := e.Clone()

	start := sheath("", 0)
	another := Take{Sheath: true, Fits: true, Steps: true}
	p := From(e, "Second", start, another)
	if p.Title != "Second" || p.Revision != 1 || p.Notes != "" || p.Customer != (project.Customer{}) || p.Weigh != nil {
		t.Errorf("what was of the first sheath alone is carried: %+v", p)
	}
	if p.Outline != start.Outline || p.Sheath.Mouth != start.Sheath.Mouth || p.Stitch.Measured != 0 {
		t.Errorf("what was of the first knife alone is carried: %+v", p)
	}
	if p.Sheath.Leather != 2.5 || p.Belt.Width != 50 || p.Fits != nil || len(p.Carried) != 1 || p.Carried[0].Fit != e.Fits[0] || p.Carried[0].From != "from First" {
		t.Errorf("sheath, belt or corrections are lost: %+v", p)
	}
	if p.Steps[5].From != "CUT" || !p.Steps[6].Sheet || p.Steps[7].Expect != time.Hour {
		t.Errorf("what a hold counts from, or who says how long, is lost: %+v", p.Steps[5:8])
	}
	if len(p.Steps) != 12 || p.Steps[3].Title != "My own step" || p.Steps[9].Hold != e.Steps[9].Hold {
		t.Errorf("the checklist is lost: %+v", p.Steps)
	}
	for i, s := range p.Steps {
		if !s.Done.IsZero() || !s.Started.IsZero() || !s.Ended.IsZero() || s.Skipped || s.Spent != 0 || s.Note != "" {
			t.Errorf("step %d is not as new: %+v", i, s)
		}
	}
	if err := p.Validate(); err != nil {
		t.Error(err)
	}
	p.Carried[0].By, p.Steps[0].Title = 9, "x"
	if !reflect.DeepEqual(e, before) {
		t.Error("the earlier project was changed")
	}
	same := From(e, "Again", start, Take{Knife: true, Sheath: true, Fits: true})
	if same.Outline != e.Outline || same.Sheath.Mouth != 99 || !reflect.DeepEqual(same.Fits, e.Fits) || same.Carried != nil || len(same.Steps) != len(start.Steps) {
		t.Errorf("the same knife again: %+v", same)
	}
	if bare := From(e, "Bare", start, Take{}); bare.Sheath != start.Sheath || bare.Belt != start.Belt || bare.Fits != nil || bare.Carried != nil {
		t.Errorf("nothing along: %+v", bare)
	}
	e.Steps = nil
	if p := From(e, "Third", start, another); len(p.Steps) != len(start.Steps) {
		t.Errorf("without steps it has %d", len(p.Steps))
	}
}

// The checklist speaks of the parts the new sheath has, whatever came along: the strap of
// an earlier one brings its steps, and without the strap they stay behind.
func TestFromHasTheStepsOfItsParts(t *testing.T) {
	e := project.Defaults()
	e.Strap.Kind, e.Sheath.Mouth = calc.SnapStrap, e.Outline.Blade/2 // the handle stays outside
	e.Steps = steps.FormThenSew(e.Parts())
	start := project.Defaults()
	start.Steps = steps.FormThenSew(start.Parts())
	if e.Parts().Front || !start.Parts().Front {
		t.Fatalf("the two have parts alike: %+v, %+v", e.Parts(), start.Parts())
	}
	for _, take := range []Take{{}, {Sheath: true}, {Steps: true}, {Knife: true}, {Sheath: true, Steps: true}, {Knife: true, Sheath: true, Steps: true}} {
		p := From(e, "Second", start, take)
		if want := steps.FormThenSew(p.Parts()); !reflect.DeepEqual(p.Steps, want) {
			t.Errorf("%+v: %d steps, want the %d of %+v", take, len(p.Steps), len(want), p.Parts())
		}
	}
}

func TestCreate(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "a", "shelf")
	s := open(dir)
	for _, want := range []string{"CON- a knife.toml", "CON- a knife 2.toml", "CON- a knife 3.toml"} {
		path, err := s.Create(sheath("CON: a knife", 0))
		if err != nil || filepath.Base(path) != want {
			t.Errorf("%q, %v; want %q", path, err, want)
		}
	}
	if runtime.GOOS != "windows" {
		for name, want := range map[string]fs.FileMode{dir: 0o700, filepath.Join(dir, "CON- a knife.toml"): 0o600} {
			if info, err := os.Stat(name); err != nil || info.Mode().Perm() != want {
				t.Errorf("%s: %v, %v; want %v", name, info.Mode(), err, want)
			}
		}
	}
	if _, err := s.Create(project.Project{Title: "x"}); err == nil {
		t.Error("a project that will not do was saved")
	}
	blocked := filepath.Join(t.TempDir(), "file")
	os.WriteFile(blocked, nil, 0o600)
	if _, err := open(filepath.Join(blocked, "shelf")).Create(sheath("x", 0)); err == nil || strings.Contains(err.Error(), "\n") {
		t.Errorf("a shelf within a file: %v", err)
	}
}

func TestRename(t *testing.T) {
	dir := t.TempDir()
	s := open(dir)
	one := put(t, dir, "one.toml", sheath("One", 3), now)
	put(t, dir, "two.toml", sheath("Two", 4), now)
	at, err := s.Rename(one, " Two ", now)
	if err != nil || at != filepath.Join(dir, "Two.toml") && at != filepath.Join(dir, "Two 2.toml") {
		t.Fatalf("%q, %v", at, err)
	}
	if p := mustLoad(t, at); p.Title != "Two" || steps.Current(p.Steps) != 3 {
		t.Errorf("renamed it is %q in step %d", p.Title, steps.Current(p.Steps))
	}
	if p := mustLoad(t, filepath.Join(dir, "two.toml")); steps.Current(p.Steps) != 4 {
		t.Error("the other one was replaced")
	}
	if _, err := os.Lstat(one); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("the old name is still there: %v", err)
	}
	if _, err := os.Lstat(store.BackupName(at)); err != nil {
		t.Errorf("the backup has not followed: %v", err)
	}
	again, err := s.Rename(at, "TWO 2", now)
	if err != nil {
		t.Fatal(err)
	}
	if p := mustLoad(t, again); p.Title != "TWO 2" {
		t.Errorf("other capitals: %q", p.Title)
	}
	for title, want := range map[string]string{"  ": "a project needs a title", strings.Repeat("x", 201): "at most 200 letters"} {
		if _, err := s.Rename(again, title, now); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("renamed to %.10q: %v", title, err)
		}
	}
}

func TestRenameKeepsComments(t *testing.T) {
	dir := t.TempDir()
	text := append([]byte("# mine\n"), file.Encode(sheath("One", 3))...)
	path := putBytes(t, dir, "one.toml", text, now)
	at, err := open(dir).Rename(path, "Other", now)
	if err != nil {
		t.Fatal(err)
	}
	kept, err := os.ReadFile(filepath.Join(dir, "one (before renaming 2026-11-25 12.00).toml"))
	if err != nil || string(kept) != string(text) {
		t.Errorf("the file with its comments is lost: %v", err)
	}
	mustLoad(t, at)
}

func TestPutAway(t *testing.T) {
	dir := t.TempDir()
	s := open(dir)
	a := put(t, dir, "a.toml", sheath("A", 3), now)
	put(t, filepath.Join(dir, Away), "a.toml", sheath("earlier", 4), now)
	there, err := s.PutAway(a)
	if err != nil || there != filepath.Join(dir, Away, "a 2.toml") {
		t.Fatalf("%q, %v", there, err)
	}
	if mustLoad(t, there).Title != "A" || mustLoad(t, filepath.Join(dir, Away, "a.toml")).Title != "earlier" {
		t.Error("one replaced the other")
	}
	if again, err := s.PutAway(there); err != nil || again != there {
		t.Errorf("put away twice: %q, %v", again, err)
	}
	back, err := s.TakeOut(there)
	if err != nil || back != filepath.Join(dir, "a 2.toml") {
		t.Errorf("taken out: %q, %v", back, err)
	}
	torn := putBytes(t, dir, "torn.toml", []byte("format = 1\n"), now)
	if at, err := s.PutAway(torn); err == nil || at != torn {
		t.Errorf("a broken file was moved: %q, %v", at, err)
	}
}

func TestOpenElsewhere(t *testing.T) {
	dir, locks := t.TempDir(), t.TempDir()
	path := put(t, dir, "a.toml", sheath("A", 3), now)
	lock, _ := store.TakeLock(store.OSLockingIn(locks), path)
	s := Open(store.OSLockingIn(locks), dir)
	if _, err := s.Rename(path, "B", now); err == nil || !strings.Contains(err.Error(), `"a.toml" is open: go over to another project`) {
		t.Errorf("renamed while open: %v", err)
	}
	if _, err := s.PutAway(path); err == nil {
		t.Error("put away while open")
	}
	lock.Release()
	if _, err := s.Rename(path, "B", now); err != nil {
		t.Error(err)
	}
}

// Whichever call fails, and on file systems that can do less, the project is there
// once at least and whole, and no other file is replaced.
func TestMovesFail(t *testing.T) {
	for name, set := range map[string]func(*storetest.Disk){
		"all": func(*storetest.Disk) {}, "no rename to a free name": func(d *storetest.Disk) { d.NoRenameNew = true },
		"no second name": func(d *storetest.Disk) { d.NoRenameNew, d.NoLink = true, true },
	} {
		for failAt := 0; ; failAt++ {
			dir := t.TempDir()
			path := put(t, dir, "a.toml", sheath("A", 3), now)
			taken := put(t, dir, "b.toml", sheath("taken", 5), now)
			disk := storetest.New()
			set(disk)
			disk.FailAt = failAt
			at, err := Open(disk, dir).Rename(path, "b", now)
			if failAt == 0 && err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			if p := mustLoad(t, at); p.Title != "A" && p.Title != "b" || steps.Current(p.Steps) != 3 {
				t.Errorf("%s, call %d fails: %q at %s", name, failAt, p.Title, at)
			}
			if mustLoad(t, taken).Title != "taken" {
				t.Errorf("%s, call %d fails: the other file was replaced", name, failAt)
			}
			if err == nil && failAt > len(disk.Calls()) {
				break
			}
		}
	}
}
