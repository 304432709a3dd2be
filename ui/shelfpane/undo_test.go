package shelfpane

import (
	"os"
	"path/filepath"
	"testing"
)

// u takes back what was done on the shelf, the last first, wherever the files have gone
// meanwhile; what is refused can be tried again.
func TestUndo(t *testing.T) {
	dir := full(t)
	r := newRig(t, dir, 100, 30)
	is := func(name, title string) {
		t.Helper()
		path := filepath.Join(dir, name)
		if _, err := os.Stat(path); err != nil {
			t.Fatal(err)
		}
		if got := load(t, path).Title; got != title {
			t.Errorf("%s is %q, want %q", name, got, title)
		}
	}
	r.keys("u")
	if last := r.Said[len(r.Said)-1]; last != "nothing was changed here: there is nothing to undo" {
		t.Errorf("said %q", last)
	}
	r.keys("/", "whittler", "enter")
	r.keys("r")
	r.Answer("Carver")
	r.keys("esc", "/", "carver", "enter")
	is("Carver.toml", "Carver")
	r.keys("p")
	is("put away/Carver.toml", "Carver")

	away := filepath.Join(dir, "put away/Carver.toml")
	whole, err := os.ReadFile(away)
	if err != nil {
		t.Fatal(err)
	}
	put(t, dir, "put away/Carver.toml", []byte("half a fi"), noon) // such a file is left where it is
	r.keys("u")
	put(t, dir, "put away/Carver.toml", whole, noon)
	is("put away/Carver.toml", "Carver")

	r.keys("u")
	is("Carver.toml", "Carver")
	r.keys("u")
	is("Whittler.toml", "Whittler")
	if last := r.Said[len(r.Said)-1]; last != `undone: "Whittler" has its old title again` {
		t.Errorf("said %q", last)
	}
	r.keys("u")
	is("Whittler.toml", "Whittler")

	r.keys("esc", "/", "old pattern", "enter", "p")
	is("old.toml", "Old pattern")
	if err := os.Remove(filepath.Join(dir, "old.toml")); err != nil {
		t.Fatal(err)
	}
	r.keys("u") // it is gone
	if len(r.Pane.undos) != 0 {
		t.Errorf("what can't be undone any more is kept: %v", r.Pane.undos)
	}
}
