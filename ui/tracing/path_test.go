package tracing

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"
)

// TestPath: the forms in which terminals paste the path of a file that is dropped on them.
// Backslashes and single quotes as POSIX 1003.1, 2.2 has them; URLs as RFC 8089.
func TestPath(t *testing.T) {
	t.Setenv("HOME", "/home/lea")
	const want = "/home/lea/my pictures/IMG (1) it's.jpg"
	for _, text := range []string{
		want,
		`/home/lea/my\ pictures/IMG\ \(1\)\ it\'s.jpg`,
		`'/home/lea/my pictures/IMG (1) it'\''s.jpg'`,
		`"/home/lea/my pictures/IMG (1) it's.jpg"`,
		"file:///home/lea/my%20pictures/IMG%20(1)%20it's.jpg",
		"file://localhost/home/lea/my%20pictures/IMG%20%281%29%20it%27s.jpg",
		`"file:///home/lea/my%20pictures/IMG%20(1)%20it's.jpg"`,
		"FILE:///home/lea/my%20pictures/IMG%20(1)%20it's.jpg",
		"~/my pictures/IMG (1) it's.jpg",
		"  " + want + " \r\n/another.jpg",
	} {
		if got := Path(text); got != want {
			t.Errorf("Path(%q) = %q", text, got)
		}
		if !Names(text) {
			t.Errorf("Names(%q): no", text)
		}
	}
	for _, text := range []string{"", "12.34", "IMG_1.jpg", "/home/lea/notes.txt", "hello / there.jpg", "file:", "file://%zz"} {
		if Names(text) {
			t.Errorf("Names(%q): yes", text)
		}
	}
	for _, text := range []string{"~", `"`, "'", `\`, "file:", "file://%zz", "~lea/x"} {
		Path(text) // does not fail
	}
}

func write(t *testing.T, folder string, names ...string) {
	t.Helper()
	for i, n := range names {
		path := filepath.Join(folder, n)
		if strings.HasSuffix(n, "/") {
			if err := os.Mkdir(path, 0o700); err != nil {
				t.Fatal(err)
			}
			continue
		}
		if err := os.WriteFile(path, nil, 0o600); err != nil {
			t.Fatal(err)
		}
		when := time.Date(2026, 11, 1+i, 0, 0, 0, 0, time.UTC)
		if err := os.Chtimes(path, when, when); err != nil {
			t.Fatal(err)
		}
	}
}

func TestComplete(t *testing.T) {
	d := t.TempDir() + "/"
	t.Setenv("HOME", d)
	write(t, d, "IMG_1.jpg", "IMG_22.JPG", "notes.txt", ".hidden.png", "Pictures/", "été.png", "êta.png")
	for _, c := range []struct {
		text, longer string
		names        []string
	}{
		{d + "I", d + "IMG_", []string{"IMG_1.jpg", "IMG_22.JPG"}},
		{d + "IMG_2", d + "IMG_22.JPG", []string{"IMG_22.JPG"}},
		{"~/Pi", "~/Pictures/", []string{"Pictures/"}},
		{"~", "~/", nil},
		{d + "n", d + "n", nil},
		{d + ".h", d + ".hidden.png", []string{".hidden.png"}},
		{d + "nowhere/x", d + "nowhere/x", nil},
		{d, d, []string{"IMG_1.jpg", "IMG_22.JPG", "Pictures/", "été.png", "êta.png"}}, // é and ê begin with the same byte
	} {
		longer, names := complete(c.text)
		slices.Sort(c.names)
		if longer != c.longer || !slices.Equal(names, c.names) {
			t.Errorf("complete(%q) = %q, %q", c.text, longer, names)
		}
	}
}

func TestNewest(t *testing.T) {
	d := t.TempDir()
	if got := newest(d); got != "" {
		t.Errorf("in an empty folder: %q", got)
	}
	write(t, d, "b.jpg", "c.png", "a.jpeg", "z.txt", ".y.jpg", "x.jpg/")
	if got := newest(d); got != filepath.Join(d, "a.jpeg") {
		t.Errorf("newest: %q", got)
	}
	if got := newest(filepath.Join(d, "none")); got != "" {
		t.Errorf("in no folder: %q", got)
	}
}
