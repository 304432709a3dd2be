package shelf

import (
	"maps"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"chape/project"
	"chape/project/store"
	"chape/project/store/storetest"
)

func held(title string, since time.Duration) project.Project {
	p := sheath(title, 9)
	p.Steps[9].Hold, p.Steps[9].Latest, p.Steps[9].Started = 24*time.Hour, 0, now.Add(-since)
	return p
}

func names(rs []Running) map[string]int {
	out := map[string]int{}
	for _, r := range rs {
		out[filepath.Base(r.Path)] = len(r.Holds)
	}
	return out
}

func TestHolds(t *testing.T) {
	dir := t.TempDir()
	old := now.Add(-time.Hour)
	a := put(t, dir, "a.toml", held("A", time.Hour), old)
	put(t, dir, "b.toml", sheath("B", 3), old)
	put(t, dir, "put away/c.toml", held("C", 2*time.Hour), old)
	disk := storetest.New()
	s := Open(disk, dir)
	at := disk.Now()

	got := s.Holds(at)
	if n := names(got); len(n) != 2 || n["a.toml"] != 1 || n["c.toml"] != 1 {
		t.Fatalf("holds of %v", n)
	}
	for _, r := range got {
		if h := r.Holds[0]; h.PutAway != (filepath.Base(r.Path) == "c.toml") {
			t.Errorf("%s: put away %v", r.Path, h.PutAway)
		}
		if h := r.Holds[0]; filepath.Base(r.Path) == "a.toml" && (h.Project != "A" || !h.Due.Equal(now.Add(23*time.Hour))) {
			t.Errorf("the hold is %+v", h)
		}
	}

	// Another file begins a hold: the folder changes with it.
	put(t, dir, "d.toml", held("D", 0), old)
	if n := names(s.Holds(at)); n["d.toml"] != 1 {
		t.Errorf("the new hold is not seen: %v", n)
	}
	// One is written in place by a program that does not replace the file.
	time1 := at.Add(time.Minute)
	put(t, dir, "a.toml", sheath("A", 12), old.Add(time.Second))
	if n := names(s.Holds(time1)); n["a.toml"] != 0 {
		t.Errorf("the ended hold is still told: %v", n)
	}
	// A copy kept beside a project rings once.
	data, _ := os.ReadFile(filepath.Join(dir, "d.toml"))
	putBytes(t, dir, "d (mine).toml", data, old)
	if n := names(s.Holds(time1.Add(time.Second))); len(n) != 2 || n["c.toml"] != 1 || n["d.toml"] != 1 {
		t.Errorf("holds of %v, want those of C and D", n)
	}
	os.Remove(a)
	os.RemoveAll(filepath.Join(dir, Away))
	os.Remove(filepath.Join(dir, "d (mine).toml"))
	if n := names(s.Holds(time1.Add(2 * time.Second))); len(n) != 1 || n["d.toml"] != 1 {
		t.Errorf("after deleting: %v", n)
	}
}

// A copy that was kept beside a project when both had changed does not ring for what
// the project has put off, ended or ticked since; it does for what only the copy has.
func TestHoldsOfConflictCopies(t *testing.T) {
	dir := t.TempDir()
	old := now.Add(-time.Hour)
	const copied = "a (mine 2026-11-25 14.03).toml"
	p := held("A", time.Hour)
	put(t, dir, copied, p, old)
	later := p.Clone()
	later.Steps[9].Hold = 30 * time.Hour
	ticked := p.Clone()
	ticked.Steps[9].Done = now
	never := p.Clone()
	never.Steps[9].Started = time.Time{}
	for name, c := range map[string]struct {
		original project.Project
		want     map[string]int
	}{
		"put off": {later, map[string]int{"a.toml": 1}}, "ticked": {ticked, nil}, "never started": {never, map[string]int{copied: 1}},
	} {
		put(t, dir, "a.toml", c.original, old)
		if got := names(Open(storetest.New(), dir).Holds(now)); !maps.Equal(got, c.want) {
			t.Errorf("%s: holds of %v, want %v", name, got, c.want)
		}
	}
	os.Remove(filepath.Join(dir, "a.toml"))
	if got := names(Open(storetest.New(), dir).Holds(now)); got[copied] != 1 {
		t.Errorf("without the project the copy does not ring: %v", got)
	}
}

// With nothing changed, asking every second touches the files with holds alone.
func TestHoldsIsCheap(t *testing.T) {
	dir := t.TempDir()
	old := now.Add(-time.Hour)
	for _, name := range []string{"a", "b", "c", "d"} {
		put(t, dir, name+".toml", sheath(name, 3), old)
	}
	put(t, dir, "held.toml", held("held", 0), old)
	os.Chtimes(dir, old, old)
	disk := storetest.New()
	s := Open(disk, dir)
	at := disk.Now()
	s.Holds(at)
	before := len(disk.Calls())
	s.Holds(at.Add(time.Second))
	var touched []string
	for _, c := range disk.Calls()[before:] {
		if strings.Contains(c, ".toml") {
			touched = append(touched, c)
		}
	}
	if len(touched) != 1 || !strings.Contains(touched[0], "held.toml") || !strings.Contains(touched[0], "stat") {
		t.Errorf("a second later it does %v", touched)
	}
	// A minute later, and after the clock was set back, it looks at everything.
	for _, later := range []time.Time{at.Add(fullEvery), at.Add(-time.Hour)} {
		before = len(disk.Calls())
		s.Holds(later)
		if n := len(disk.Calls()) - before; n < 7 {
			t.Errorf("at %v only %d calls", later, n)
		}
	}
}

// Of a large shelf a call reads no more than it may, and the next goes on.
func TestHoldsInParts(t *testing.T) {
	dir := many(t, mostAtOnce+20)
	put(t, dir, "oldest.toml", held("oldest", 0), now.Add(-9999*time.Hour))
	s := Open(store.OSLockingIn(""), dir)
	if n := names(s.Holds(now)); n["oldest.toml"] != 0 {
		t.Errorf("all were read at once")
	}
	if n := names(s.Holds(now.Add(time.Second))); n["oldest.toml"] != 1 {
		t.Errorf("the second call does not go on")
	}
}
