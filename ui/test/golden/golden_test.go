package golden

import (
	"fmt"
	"os"
	"strings"
	"testing"
)

// ear hears what a check complains of.
type ear struct {
	testing.TB
	heard string
}

func (e *ear) Helper() {}

func (e *ear) Errorf(format string, args ...any) { e.heard += fmt.Sprintf(format, args...) }

// updating sets the flag for the length of one test.
func updating(t *testing.T, on bool) {
	before := *update
	*update = on
	t.Cleanup(func() { *update = before })
}

func TestWrittenAndReadBack(t *testing.T) {
	t.Chdir(t.TempDir())
	updating(t, true)
	Check(t, "screen.txt", "ab  \n\n c ")
	Exact(t, "cells.txt", "ab  \n")
	updating(t, false)
	for name, want := range map[string]string{"screen.txt": "ab\n\n c\n", "cells.txt": "ab  \n"} {
		got, err := os.ReadFile("testdata/" + name)
		if err != nil || string(got) != want {
			t.Errorf("%s holds %q, want %q (%v)", name, got, want, err)
		}
	}
	Check(t, "screen.txt", "ab \n   \n c")
	Exact(t, "cells.txt", "ab  \n")
}

func TestComplains(t *testing.T) {
	t.Chdir(t.TempDir())
	updating(t, true)
	Exact(t, "a.txt", "one\ntwo\nthree\n")
	updating(t, false)
	for _, c := range []struct{ name, text, want string }{
		{"a.txt", "one\ntwo\nthree\n", ""},
		{"a.txt", "one\ntoo\nthree\n", "line 2\n- \"two\\n\"\n+ \"too\\n\"\n"},
		{"a.txt", "one\ntwo\n", "line 3\n- \"three\\n\"\n"},
		{"a.txt", "one\ntwo\nthree\nfour\n", "line 4\n+ \"four\\n\"\n"},
		{"a.txt", "one\ntwo\nthree", "line 3\n- \"three\\n\"\n+ \"three\"\n"},
		{"a.txt", "one\ntwo\nthree \n", "line 3\n- \"three\\n\"\n+ \"three \\n\"\n"},
		{"b.txt", "one\n", "-update writes it"},
	} {
		e := &ear{TB: t}
		Exact(e, c.name, c.text)
		if !strings.Contains(e.heard, c.want) || (e.heard == "") != (c.want == "") {
			t.Errorf("%q against %s: said %q, want %q in it", c.text, c.name, e.heard, c.want)
		}
	}
}
