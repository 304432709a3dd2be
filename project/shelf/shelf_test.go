package shelf

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"chape/project"
	"chape/project/file"
	"chape/project/steps"
	"chape/project/store"
)

var now = time.Date(2026, 11, 25, 12, 0, 0, 0, time.UTC)

// sheath is an invented project in the given step.
func sheath(title string, step int) project.Project {
	p := project.Defaults()
	p.Title = title
	p.Steps = steps.FormThenSew(steps.Whole)
	for i := range p.Steps[:step] {
		p.Steps[i].Done = now.Add(-time.Duration(100-i) * time.Hour)
	}
	return p
}

// put writes a project file, changed at the given time.
func put(t testing.TB, dir, name string, p project.Project, at time.Time) string {
	t.Helper()
	return putBytes(t, dir, name, file.Encode(p), at)
}

func putBytes(t testing.TB, dir, name string, data []byte, at time.Time) string {
	t.Helper()
	path := filepath.Join(dir, name)
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Chtimes(path, at, at); err != nil {
		t.Fatal(err)
	}
	return path
}

func open(dir string) *Shelf { return Open(store.OSLockingIn(""), dir) }

// all loads the whole shelf, sorted.
func all(t testing.TB, s *Shelf) []Entry {
	t.Helper()
	sc, err := s.Look()
	if err != nil {
		t.Fatal(err)
	}
	byPath := map[string]Entry{}
	for _, e := range sc.Entries() {
		byPath[e.Path] = e
	}
	for more := sc.Next(7); more != nil; more = sc.Next(7) {
		for _, e := range more {
			byPath[e.Path] = e
		}
	}
	var out []Entry
	for _, e := range byPath {
		out = append(out, e)
	}
	Sort(out, now)
	return out
}

func titles(entries []Entry) string {
	var out []string
	for _, e := range entries {
		out = append(out, e.Title)
	}
	return strings.Join(out, ", ")
}

func TestSort(t *testing.T) {
	dir := t.TempDir()
	ago := func(h int) time.Time { return now.Add(-time.Duration(h) * time.Hour) }

	put(t, dir, "plain new.toml", sheath("plain new", 3), ago(1))
	put(t, dir, "plain old.toml", sheath("plain old", 3), ago(9))
	put(t, dir, "done.toml", sheath("done", len(steps.FormThenSew(steps.Whole))), ago(0))
	soon := sheath("promised soon", 3)
	soon.Customer.Due = now.AddDate(0, 0, -1).Truncate(24 * time.Hour)
	put(t, dir, "soon.toml", soon, ago(50))
	later := sheath("promised later", 3)
	later.Customer.Due = now.AddDate(0, 1, 0).Truncate(24 * time.Hour)
	put(t, dir, "later.toml", later, ago(0))
	for _, c := range []struct {
		title string
		start time.Duration
	}{{"runs long", time.Hour}, {"runs", 10 * time.Hour}, {"due", 30 * time.Hour}, {"late", 90 * time.Hour}} {
		p := sheath(c.title, 16)
		p.Steps[16].Hold, p.Steps[16].Latest, p.Steps[16].Started = 24*time.Hour, 48*time.Hour, now.Add(-c.start)
		put(t, dir, c.title+".toml", p, ago(60))
	}
	putBytes(t, dir, "broken.toml", []byte("format = 1\nunits = \"cm\"\n"), ago(0))
	put(t, dir, "put away/resting.toml", sheath("resting", 3), ago(0))
	rings := sheath("rings away", 16)
	rings.Steps[16].Hold, rings.Steps[16].Started = time.Hour, ago(2)
	put(t, dir, "put away/rings.toml", rings, ago(0))
	putBytes(t, dir, "notes.txt", []byte("not ours"), ago(0))
	putBytes(t, dir, ".hidden.toml", []byte("not ours"), ago(0))

	got := all(t, open(dir))
	want := "late, due, rings away, runs, runs long, promised soon, promised later, plain new, plain old, broken, done, resting"
	if titles(got) != want {
		t.Errorf("in this order:\n%s\nwant\n%s", titles(got), want)
	}
	for _, e := range got {
		switch e.Title {
		case "broken":
			if e.State != Broken || e.Err != `broken.toml:2: units: found "cm": try mm or in (and 1 more)` {
				t.Errorf("the broken one says %q", e.Err)
			}
		case "runs":
			h, ok := e.NextDue()
			if !ok || !h.Due.Equal(now.Add(14*time.Hour)) || h.Project != "runs" || e.Short != sheath("", 0).Steps[16].ShortName() {
				t.Errorf("the running one: %+v", e)
			}
		case "done":
			if e.State != Finished || e.Step != "" {
				t.Errorf("the finished one: %+v", e)
			}
		case "resting":
			if !e.PutAway || e.State != InHand {
				t.Errorf("the one put away: %+v", e)
			}
		}
	}
}

func TestFind(t *testing.T) {
	dir := t.TempDir()
	for _, c := range []struct{ file, title, customer string }{
		{"a", "Straße", "Anna Bögli"}, {"b", "Éclair knife", ""}, {"c", "ORCHARD", "anna"},
	} {
		p := sheath(c.title, 0)
		p.Customer.Name = c.customer
		put(t, dir, c.file+".toml", p, now)
	}
	entries := all(t, open(dir))
	for _, c := range []struct{ query, want string }{
		{"", "Straße, Éclair knife, ORCHARD"}, {"anna", "Straße, ORCHARD"}, {"bogli", "Straße"}, {"ÉCLAIR", "Éclair knife"},
		{"eclair", "Éclair knife"}, {"orch AN", "ORCHARD"}, {"an bö", "Straße"}, {"zz", ""}, {"  ", "Straße, Éclair knife, ORCHARD"},
	} {
		q := ParseQuery(c.query)
		found := slices.DeleteFunc(slices.Clone(entries), func(e Entry) bool { return !q.Finds(e) })
		slices.SortFunc(found, func(a, b Entry) int { return strings.Compare(a.Path, b.Path) })
		if titles(found) != c.want {
			t.Errorf("%q finds %q, want %q", c.query, titles(found), c.want)
		}
	}
}

func TestNoShelf(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "none")
	s := open(dir)
	if got := all(t, s); len(got) != 0 || s.Holds(now) != nil {
		t.Errorf("a folder that is not there holds %v", got)
	}
	if _, err := os.Stat(dir); err == nil {
		t.Error("looking made the folder")
	}
}

func TestFolder(t *testing.T) {
	for _, c := range []struct{ goos, xdg, want string }{
		{"linux", "", "/home/me/.local/share/chape"}, {"linux", "/data", "/data/chape"}, {"linux", "relative", "/home/me/.local/share/chape"},
		{"darwin", "", "/home/me/Library/Application Support/chape"}, {"windows", "", "/home/me/AppData/Local/chape"},
	} {
		getenv := func(k string) string { return map[string]string{"XDG_DATA_HOME": c.xdg}[k] }
		if got := Folder(c.goos, "/home/me", getenv); filepath.ToSlash(got) != c.want {
			t.Errorf("Folder(%s, %q) = %q, want %q", c.goos, c.xdg, got, c.want)
		}
	}
}

// many fills a folder with n invented projects in all states.
func many(t testing.TB, n int) string {
	dir := t.TempDir()
	var data [][]byte
	for step := range 30 {
		p := sheath("Knife", step)
		if step%10 == 3 {
			p.Steps[step].Hold, p.Steps[step].Latest, p.Steps[step].Started = 24*time.Hour, 0, now.Add(-time.Duration(step)*time.Hour)
		}
		data = append(data, file.Encode(p))
	}
	for i := range n {
		text := strings.Replace(string(data[i%30]), `"Knife"`, fmt.Sprintf(`"Knife %d"`, i), 1)
		putBytes(t, dir, fmt.Sprintf("knife %d.toml", i), []byte(text), now.Add(-time.Duration(i)*time.Minute))
	}
	return dir
}

func TestMany(t *testing.T) {
	const n = 200
	s := open(many(t, n))
	sc, err := s.Look()
	if err != nil || len(sc.Entries()) != n || sc.Left() != n {
		t.Fatalf("%d of %d files, %d left, %v", len(sc.Entries()), n, sc.Left(), err)
	}
	for i, e := range sc.Next(30) {
		if e.Title != fmt.Sprintf("Knife %d", i) || e.State != InHand {
			t.Errorf("file %d is %s: the last changed come first", i, e.Title)
		}
	}
	if sc.Left() != n-30 {
		t.Errorf("%d left", sc.Left())
	}
	if got := all(t, s); len(got) != n || got[0].State != InHand {
		t.Errorf("%d of %d", len(got), n)
	}
	sc, err = s.Look()
	if err != nil || sc.Left() != 0 {
		t.Errorf("the second look reads %d files again (%v)", sc.Left(), err)
	}
	// A change shows, and only that file is read.
	path := put(t, s.Dir(), "knife 5.toml", sheath("changed", 1), now.Add(time.Minute))
	sc, _ = s.Look()
	if sc.Left() != 1 {
		t.Fatalf("%d files are read for one change", sc.Left())
	}
	if e := sc.Next(9)[0]; e.Path != path || e.Title != "changed" {
		t.Errorf("read %+v", e)
	}
	os.Remove(path)
	if sc, _ = s.Look(); len(sc.Entries()) != n-1 || len(s.cache) != n-1 {
		t.Errorf("%d entries, %d remembered after one was deleted", len(sc.Entries()), len(s.cache))
	}
}
