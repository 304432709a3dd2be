package file

import (
	"bytes"
	"os"
	"path/filepath"
	"reflect"
	"testing"

	"github.com/BurntSushi/toml"

	"chape/calc"
)

// ours lists the project files of the repository.
func ours(t testing.TB) []string {
	files, err := filepath.Glob("../../testdata/*.toml")
	if err != nil || len(files) < 3 {
		t.Fatalf("testdata has %d project files (%v), want 3 or more", len(files), err)
	}
	return append(files, "../example/example.toml")
}

func read(t testing.TB, file string) []byte {
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func TestOurFilesLoadAndCanBePlanned(t *testing.T) {
	for _, file := range ours(t) {
		p, n, err := Decode(file, read(t, file))
		if err != nil {
			t.Errorf("Decode(%s) = %v", file, err)
			continue
		}
		if n.OldFormat || n.Refilled {
			t.Errorf("Decode(%s) notices %+v", file, n)
		}
		if _, err := calc.Compute(p.Input(calc.DefaultLimits())); err != nil {
			t.Errorf("Compute(%s) = %v", file, err)
		}
	}
}

// Whatever the bytes: refused, or the same after a save. A second save writes
// the same bytes.
func FuzzDecode(f *testing.F) {
	for _, file := range ours(f) {
		f.Add(read(f, file))
	}
	f.Add([]byte(small))
	f.Add([]byte("format = 1\nknife.source = \"outline\"\nsheath.mouth = 100\nnotes = \"\"\"\n\\r\\n\\u0000 \\\\ \\\"\"\"\"\nrevision = 0"))
	f.Add([]byte(small + "[room]\ntemperature = -0.0\nhumidity = 100\n"))
	f.Add([]byte(small + "[[pattern]]\nnumber = 2\nprinted = 2026-11-25\ninputs = \"\"\"\nformat = 1\ntitle = \"\\\"\n\"\"\"\n"))
	f.Add([]byte(small + "[[quote]]\ndate = 2026-11-25\nunit = \"0.05\"\nlines = \"\"\"\nwork | 80 | work | 2 h\nagreed | -5 | as agreed |\n\"\"\"\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		p, _, err := Decode("f.toml", data)
		if err != nil {
			return
		}
		saved := Encode(p)
		q, n, err := Decode("f.toml", saved)
		if err != nil {
			t.Fatalf("what was loaded can't be loaded again: %v\n%s", err, saved)
		}
		if n != (Notices{}) {
			t.Errorf("our own file notices %+v", n)
		}
		if !reflect.DeepEqual(p, q) {
			t.Errorf("after a save:\n%+v\nwant\n%+v", q, p)
		}
		if again := Encode(q); !bytes.Equal(again, saved) {
			t.Errorf("a second save writes\n%s\nwant\n%s", again, saved)
		}
	})
}

// What the decoder takes and is not nested deep, the scanner must follow: else
// good files would be refused.
func FuzzScan(f *testing.F) {
	for _, file := range ours(f) {
		f.Add(string(read(f, file)))
	}
	for _, data := range hostile() {
		if len(data) < 1000 {
			f.Add(data)
		}
	}
	f.Add("a.'b'.\"c\\\"\" = [1, [2, # x\n {d = '''\n''''' }], ]\n[[x]]\n[x.y]\nz={}")
	f.Fuzz(func(t *testing.T, data string) {
		if len(data) > 2000 || guard([]byte(data), aProject) != nil {
			return
		}
		if bytes.ContainsAny([]byte(data), "\r") {
			return // made \n before the scan, or refused by the decoder
		}
		_, bad := scan([]byte(data))
		if bad == nil || bad.Remedy[:3] == "no " { // a limit of ours
			return
		}
		if _, err := toml.Decode(data, &map[string]any{}); err == nil {
			t.Errorf("the scanner refuses what is TOML: %v\n%s", bad, data)
		}
	})
}

// The scanner finds the lines of everything, however it is written.
func TestScanFindsLines(t *testing.T) {
	x, bad := scan([]byte(`# one
title = """
two to
four"""
knife.back = "blunt" # five
[[knife.station]] # six
at = 0
[[knife.station]]
at = [ # nine
  1,
  2 ]
[sheath]
"mouth" = 3 # thirteen
[[step]]
[step.inner]
key = { a = 1, b = { c = 2 } }
[[step]]
title = 'eighteen'
`))
	if bad != nil {
		t.Fatal(bad)
	}
	for path, want := range map[string]int{
		"title": 2, "knife.back": 5, "knife.station[0]": 6, "knife.station[0].at": 7, "knife.station[1].at": 9,
		"knife.station[1].at[1]": 11, "sheath.mouth": 13, "sheath.leather": 12, "step[0].inner.key.b.c": 16,
		"step[1].title": 18, "step[1].done": 17, "step": 14, "nowhere": 0,
	} {
		if got := x.line(path); got != want {
			t.Errorf("line(%q) = %d, want %d", path, got, want)
		}
	}
}
