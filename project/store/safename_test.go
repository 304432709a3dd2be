package store_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"chape/project/store"
	"chape/project/store/storetest"
)

// The reserved names and characters are those of Microsoft, "Naming Files,
// Paths, and Namespaces".
func TestSafeName(t *testing.T) {
	for _, c := range []struct{ title, want string }{
		{"Kitchen knife, 3 1/2 in", "Kitchen knife, 3 1-2 in"},
		{"  two   words\n", "two words"},
		{"Jürgens Nähmesser № 7", "Jürgens Nähmesser № 7"},
		{"小刀", "小刀"},
		{"../../etc/passwd", "etc-passwd"},
		{`C:\knives`, "C--knives"},
		{`a*b?c"d<e>f|g`, "a-b-c-d-e-f-g"},
		{"red\x1b[31m\x07\x00bell", "red [31m bell"},
		{"left\u202eright\u200b", "left right"},
		{"bad \xff utf-8", "bad utf-8"},
		{".hidden", "hidden"},
		{"-rf", "rf"},
		{"ends in dots. . .", "ends in dots"},
		{"", "untitled"},
		{" . / \n", "untitled"},
		{"CON", "_CON"},
		{"nul.txt", "_nul.txt"},
		{"Aux .x.y", "_Aux .x.y"},
		{"com1", "_com1"},
		{"LPT².a", "_LPT².a"},
		{"COM10", "COM10"},
		{"conical", "conical"},
		{strings.Repeat("a", 300), strings.Repeat("a", 119)},
		{strings.Repeat("ä", 300), strings.Repeat("ä", 59)},
		{strings.Repeat("a", 118) + " b", strings.Repeat("a", 118)},
	} {
		if got := store.SafeName(c.title); got != c.want {
			t.Errorf("SafeName(%q) = %q, want %q", c.title, got, c.want)
		}
	}
}

func FuzzSafeName(f *testing.F) {
	for _, s := range []string{"", "a/b", "NUL", "com¹.x", "\xff\x00", strings.Repeat("€", 99), "LPT1 . "} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, title string) {
		got := store.SafeName(title)
		if got == "" || len(got) > 120 || !utf8.ValidString(got) || got != strings.TrimRight(got, ". ") ||
			strings.ContainsAny(got, `/\:*?"<>|`) || strings.IndexFunc(got, unicode.IsControl) >= 0 {
			t.Errorf("SafeName(%q) = %q", title, got)
		}
		if again := store.SafeName(got); again != got {
			t.Errorf("SafeName(%q) = %q, whose SafeName is %q", title, got, again)
		}
		path := filepath.Join(t.TempDir(), got)
		if _, err := store.SaveNew(storetest.New(), path, nil); err != nil {
			t.Errorf("a file can't be named %q: %v", got, err)
		}
	})
}

func BenchmarkSave(b *testing.B) {
	for _, c := range []struct {
		name string
		fsys store.FS
	}{
		{"all", store.OSLockingIn(b.TempDir())},
		{"no swap", &storetest.Disk{Under: store.OSLockingIn(""), NoSwap: true}},
	} {
		b.Run(c.name, func(b *testing.B) {
			path, stamp := saved(b)
			// A shelf with many projects.
			for i := range 500 {
				put(b, filepath.Join(filepath.Dir(path), strings.Repeat("x", i%50)+string(rune('a'+i/50))), nil)
			}
			data := []byte(strings.Repeat("length = 123\n", 1000))
			var err error
			for i := 0; b.Loop(); i++ {
				data[0] = byte('a' + i%26)
				if stamp, err = store.Save(c.fsys, path, data, stamp); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkChanged(b *testing.B) {
	path, _ := saved(b)
	d := store.OSLockingIn("")
	_, stamp, err := store.Read(d, path)
	if err != nil {
		b.Fatal(err)
	}
	long := stamp.ModTime.Add(-1e12)
	if err := os.Chtimes(path, long, long); err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		changed, now, err := store.Changed(d, path, stamp)
		if err != nil || changed {
			b.Fatal(changed, err)
		}
		stamp = now
	}
}
