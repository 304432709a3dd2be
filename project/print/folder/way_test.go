package folder

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"chape/project/print/sheet"
)

// What stands in the way is said, with what would do, in one line: a link is told from a
// folder and from somebody's file, also when all is to be replaced.
func TestWhatIsInTheWay(t *testing.T) {
	dir := t.TempDir()
	path := func(name string) string { return filepath.Join(dir, name) }
	os.Mkdir(path("folder.pdf"), 0o755)
	os.WriteFile(path("theirs.pdf"), []byte("%PDF-1.4 theirs"), 0o644)
	os.Symlink(path("theirs.pdf"), path("link.pdf"))
	for name, want := range map[string][2]string{
		"folder.pdf": {"is no file", "is no file"}, "link.pdf": {"is a link to somewhere else", "is a link to somewhere else"},
		"theirs.pdf": {"was not printed by this program", ""}, "new.pdf": {"", ""},
	} {
		for i, force := range []bool{false, true} {
			err := replaceable(path(name), force)
			if (err == nil) != (want[i] == "") || err != nil && (!strings.Contains(err.Error(), want[i]) || strings.Contains(err.Error(), "\n") || strings.Count(err.Error(), name) != 1) {
				t.Errorf("%s, force %v: %v, want %q", name, force, err, want[i])
			}
		}
	}
}

// A file of somebody's that mentions our mark far down in it is theirs; ours begin with it.
func TestMarkStandsAtTheBeginning(t *testing.T) {
	mark := "<!-- " + sheet.Producer + " -->"
	for name, c := range map[string]struct {
		data string
		want bool
	}{
		"ours":            {"<?xml version=\"1.0\"?>\n<svg>\n" + mark + "</svg>", true},
		"far down":        {"<?xml version=\"1.0\"?>\n<svg>" + strings.Repeat(" ", 1024) + mark + "</svg>", false},
		"no XML":          {mark, false},
		"another program": {"<?xml version=\"1.0\"?>\n<!-- drawn by hand --><svg/>", false},
	} {
		if got := known([]byte(c.data)); got != c.want {
			t.Errorf("%s is ours: %v", name, got)
		}
	}
}

// If one of the files can't be written, those before it are, and are named; nothing half
// written is left.
func TestWriteStopsAtTheFirstFault(t *testing.T) {
	dir := t.TempDir()
	files := []File{{"a.pdf", []byte("a")}, {filepath.Join("nowhere", "b.pdf"), []byte("b")}, {"c.pdf", []byte("c")}}
	var heard []string
	paths, err := Write(dir, files, false, func(done, all int, path string) { heard = append(heard, filepath.Base(path)) })
	if err == nil || len(paths) != 1 || filepath.Base(paths[0]) != "a.pdf" || !strings.Contains(err.Error(), "can't be written") {
		t.Errorf("Write = %v, %v", paths, err)
	}
	if got := strings.Join(heard, " "); got != "a.pdf b.pdf" {
		t.Errorf("heard of %q", got)
	}
	if names, _ := os.ReadDir(dir); len(names) != 1 {
		t.Errorf("left are %v", names)
	}
	os.Mkdir(filepath.Join(dir, "taken"), 0o755) // a folder can't be renamed over
	os.WriteFile(filepath.Join(dir, "taken", "x"), nil, 0o644)
	if err := writeWhole(filepath.Join(dir, "taken"), []byte("x")); err == nil {
		t.Error("a file was written over a folder")
	}
	if names, _ := os.ReadDir(dir); len(names) != 2 {
		t.Errorf("left are %v", names)
	}
}

// Progress counts what is done, of how many, and names what is next; at the end all is done.
func TestProgressCounts(t *testing.T) {
	var done []int
	var names []string
	if _, err := Write(t.TempDir(), []File{{"a.pdf", nil}, {"b.pdf", nil}}, false, func(n, all int, path string) {
		done, names = append(done, n), append(names, filepath.Base(path))
		if all != 2 {
			t.Errorf("of %d", all)
		}
	}); err != nil {
		t.Fatal(err)
	}
	if len(done) != 3 || done[0] != 0 || done[1] != 1 || done[2] != 2 || strings.Join(names[:2], " ") != "a.pdf b.pdf" {
		t.Errorf("heard %v, %q", done, names)
	}
}

// What the system said is said without call and path: the line names the file once.
func TestBareErrors(t *testing.T) {
	plain := errors.New("no space left on device")
	for _, err := range []error{&os.PathError{Op: "open", Path: "/x", Err: plain}, &os.LinkError{Op: "rename", Old: "/x", New: "/y", Err: plain}, plain} {
		if got := bare(err); got != plain {
			t.Errorf("bare(%v) = %v", err, got)
		}
	}
}

// A shortened name has no blank or point before its hash, and the hash is of the whole name.
func TestShortenedNames(t *testing.T) {
	base := strings.Repeat("a", 235) + " . ." + strings.Repeat("b", 60)
	name := Name(base, ".pdf")
	before, _, cut := strings.Cut(name, "~")
	if !cut || strings.TrimRight(before, " .") != before || len(name) > 255 || Name(base+"c", ".pdf") == name {
		t.Errorf("%q", name)
	}
	for n := 250; n < 258; n++ { // the most that fits is whole
		s := strings.Repeat("a", n)
		if got := Name(s, ".pdf"); (got == s+".pdf") != (n+4 <= 255) || len(got) > 255 {
			t.Errorf("of %d letters: %d bytes", n, len(got))
		}
	}
	if !bytes.HasPrefix([]byte(name), []byte("aaa")) {
		t.Errorf("%q", name)
	}
}
