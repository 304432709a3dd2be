package shelf

import (
	"path/filepath"
	"testing"
)

func TestNamed(t *testing.T) {
	dir := t.TempDir()
	put(t, dir, "a.toml", sheath("Drop point", 0), now)
	put(t, dir, "b.toml", sheath("Zoé's drop point", 0), now)
	put(t, dir, "c.toml", sheath("Twin", 0), now)
	put(t, dir, "d.toml", sheath("twin", 0), now)
	put(t, filepath.Join(dir, Away), "e.toml", sheath("Drop point", 3), now)
	put(t, filepath.Join(dir, Away), "f.toml", sheath("Old one", 3), now)
	putBytes(t, dir, "broken.toml", []byte("format = 99\n"), now)
	names := func(all []Entry) string {
		s := ""
		for _, e := range all {
			s += filepath.Base(e.Path) + " "
		}
		return s
	}
	for _, c := range []struct{ title, exact, near string }{
		{"drop POINT", "a.toml ", "b.toml "},
		{"zoe's Drop Point", "b.toml ", ""},
		{"zoe", "", "b.toml "},
		{"TWIN", "c.toml d.toml ", ""},
		{"old one", "f.toml ", ""},
		{"old", "", "f.toml "},
		{"Broken", "broken.toml ", ""},
		{"c", "c.toml ", ""},
		{"nothing", "", ""},
		{"", "", ""},
		{" ", "", ""},
	} {
		exact, near := open(dir).Named(c.title)
		if names(exact) != c.exact || c.exact == "" && names(near) != c.near {
			t.Errorf("Named(%q) = %q, %q; want %q, %q", c.title, names(exact), names(near), c.exact, c.near)
		}
	}
	if exact, near := open(filepath.Join(dir, "none")).Named("x"); exact != nil || near != nil {
		t.Errorf("on a shelf that is not there: %v, %v", exact, near)
	}
}
