package folder

import (
	"bytes"
	"chape/calc/curve"
	"chape/project/print/pdf"
	"chape/project/print/sheet"
	"chape/project/print/svg"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
	"unicode/utf8"
)

// printed is a file of one page.
func printed(t *testing.T, title string) []byte {
	t.Helper()
	data, err := pdf.Document{Paper: sheet.Papers[0], Date: pdf.DateOr(time.Time{}), Title: title, Pages: []sheet.Page{{Name: title}}}.Bytes(true)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// known tells whether a file of these bytes is taken for one of ours.
func known(data []byte) bool {
	n := min(len(data), endSize)
	return ours(data[:n], data[len(data)-n:])
}

func TestWrite(t *testing.T) {
	pdf, svg := printed(t, "bar"), svg.Write(&sheet.Drawing{Paths: []sheet.Path{{Pts: curve.Line{{}, {X: 9}}}}}, "bar", "", svg.Look{})
	if !known(pdf) || !known(svg) {
		t.Errorf("own files known: PDF %v, SVG %v", known(pdf), known(svg))
	}
	dir := filepath.Join(t.TempDir(), "new", "folder")
	files := []File{{"bar.pdf", pdf}, {"bar.svg", svg}}
	var said int
	paths, err := Write(dir, files, false, func(done, all int, _ string) { said += done + all })
	if err != nil || len(paths) != 2 || said != 0+2+1+2+2+2 {
		t.Fatalf("Write = %v, %v, progress %d", paths, err, said)
	}
	if info, err := os.Stat(paths[0]); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("mode of a new file: %v, %v, want 0600", info.Mode(), err)
	}
	if _, err := Write(dir, files, false, nil); err != nil {
		t.Errorf("own files are not replaced: %v", err)
	}

	// The second is someone else's: neither is touched.
	foreign := []byte("%PDF-1.3 someone else's")
	os.WriteFile(paths[1], foreign, 0o640)
	os.Chmod(paths[1], 0o640)
	half := printed(t, "half")
	os.WriteFile(paths[0], half, 0o644)
	var want *ErrForeign
	if _, err := Write(dir, files, false, nil); !errors.As(err, &want) || want.Path != paths[1] {
		t.Errorf("Write over a foreign file: %v", err)
	}
	if got, _ := os.ReadFile(paths[0]); !bytes.Equal(got, half) {
		t.Error("one file was written although the other was refused")
	}
	if got, _ := os.ReadFile(paths[1]); string(got) != string(foreign) {
		t.Error("a foreign file was changed")
	}
	if _, err := Write(dir, files, true, nil); err != nil {
		t.Errorf("Write when told to replace: %v", err)
	}
	if info, err := os.Stat(paths[1]); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("mode of a replaced file that the group could read: %v, %v, want 0600", info.Mode(), err)
	}
	if left, _ := os.ReadDir(dir); len(left) != 2 {
		t.Errorf("%d names in the folder, want 2: %v", len(left), left)
	}
}

func TestWriteNowhere(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "file")
	os.WriteFile(file, nil, 0o644)
	os.Mkdir(filepath.Join(dir, "x.pdf"), 0o755)
	kept := filepath.Join(dir, "kept.txt")
	os.WriteFile(kept, []byte("mine"), 0o644)
	os.Symlink("x.pdf", filepath.Join(dir, "to folder.pdf"))
	os.Symlink(kept, filepath.Join(dir, "to file.pdf"))
	os.Symlink("nothing", filepath.Join(dir, "to nothing.pdf"))
	defer func() {
		if got, _ := os.ReadFile(kept); string(got) != "mine" {
			t.Errorf("written through a link: %q", got)
		}
		if names, _ := os.ReadDir(dir); len(names) != 6 {
			t.Errorf("the folder holds %v", names)
		}
	}()
	for _, c := range []struct{ dir, name string }{
		{file, "a.pdf"}, {dir, "x.pdf"}, {dir, "to folder.pdf"}, {dir, "to file.pdf"}, {dir, "to nothing.pdf"},
	} {
		if _, err := Write(c.dir, []File{{c.name, []byte("x")}}, true, nil); err == nil {
			t.Errorf("Write(%q, %q): want an error", c.dir, c.name)
		} else {
			t.Log(err)
		}
	}
}

// A file in the way is known by its ends, however large, and one that a program has
// put notes into is somebody's.
func TestOurs(t *testing.T) {
	pdf := printed(t, "bar")
	old := pdf[:bytes.Index(pdf, []byte("%%EOF\n"))+len("%%EOF\n")] // as the library leaves it
	for _, c := range []struct {
		name string
		data []byte
		want bool
	}{
		{"ours", pdf, true},
		{"of before they were marked", old, true},
		{"with notes written into it", append(bytes.Clone(pdf), "9 0 obj\n<<>>\nendobj\nstartxref\n99\n%%EOF\n"...), false},
		{"an old one with notes", append(bytes.Clone(old), "9 0 obj\n<<>>\nendobj\nstartxref\n99\n%%EOF\n"...), false},
		{"cut off", pdf[:len(pdf)-7], false},
		{"empty", nil, false},
		{"another's", []byte("%PDF-1.4\nstartxref\n9\n%%EOF\n"), false},
	} {
		if got := known(c.data); got != c.want {
			t.Errorf("known(%s) = %v, want %v", c.name, got, c.want)
		}
	}

	path := filepath.Join(t.TempDir(), "large.pdf")
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	f.WriteString("%PDF-1.4\n")
	if err := f.Truncate(1 << 40); err != nil { // a tebibyte of nothing
		t.Fatal(err)
	}
	var foreign *ErrForeign
	if err := replaceable(path, false); !errors.As(err, &foreign) {
		t.Errorf("a large file: %v", err)
	}
}

// Long names are cut between letters, fit the usual 255 bytes, stay apart and can be
// written.
func TestFileName(t *testing.T) {
	long := strings.Repeat("ü", 124) // 248 bytes, as a file's name without its ending can be
	a, b := Name(long+"a", " pattern 3 half.pdf"), Name(long+"b", " pattern 3 half.pdf")
	if a == b || len(a) > 255 || !utf8.ValidString(a) || !strings.HasSuffix(a, " pattern 3 half.pdf") || !strings.HasPrefix(a, "üüü") {
		t.Errorf("Name = %q and %q", a, b)
	}
	paths, err := Write(t.TempDir(), []File{{a, []byte("x")}}, false, nil)
	if err != nil {
		t.Fatal(err)
	}
	if got, err := os.ReadFile(paths[0]); err != nil || string(got) != "x" {
		t.Errorf("read back %q, %v", got, err)
	}
	for n := range 300 {
		if s := Name(strings.Repeat("木", n), " pattern 12.svg"); len(s) > 255 || !utf8.ValidString(s) {
			t.Errorf("Name of %d letters: %d bytes, %q", n, len(s), s)
		}
	}
	if got := Name("orchard", ".pdf"); got != "orchard.pdf" {
		t.Errorf("Name = %q", got)
	}
}
