package command

import (
	"errors"
	"fmt"
	"strings"
	"testing"
)

// TestStatus: an error is said as it is, but for what a terminal would act on.
func TestStatus(t *testing.T) {
	for _, c := range []struct {
		err    error
		said   string
		status int
	}{
		{nil, "", good},
		{errors.New("no such file"), "chape: no such file\n", badFile},
		{misuse("which file?"), "chape: which file?\n", badUsage},
		{fmt.Errorf("because: %w", misuse("which file?")), "chape: because: which file?\n", badUsage},
		{errors.New("a fault\n\nstack\n\tframe"), "chape: a fault\n\nstack\n frame\n", badFile},
		{misuse("not defined: -\x1b[2J"), "chape: not defined: -␛[2J\n", badUsage},
	} {
		var b strings.Builder
		if got := Status(&b, c.err); got != c.status || b.String() != c.said {
			t.Errorf("Status(%v) = %d, said %q; want %d, %q", c.err, got, b.String(), c.status, c.said)
		}
	}
}

// TestHostileWords: whatever is typed in a call comes back as plain text.
func TestHostileWords(t *testing.T) {
	const word = "x\x1b]0;y\a\u202e"
	for _, args := range [][]string{
		{word}, {"--" + word}, {"help", word}, {"plan", "--" + word, "a"}, {"plan", word + ".toml"}, {"plan", "a", word},
		{"print", "--paper", word, "a.toml"}, {"print", "--measured", word, "a.toml"}, {"new", "--units", word, t.TempDir() + "/a.toml"},
	} {
		var b strings.Builder
		err := Run(World{Out: &b, Err: &b}, args)
		if err == nil {
			t.Errorf("%q is taken", args)
		}
		Status(&b, err)
		if said := b.String(); strings.ContainsAny(said, "\x1b\a\u202e") || strings.Count(said, "\n") != 1 {
			t.Errorf("%q: said %q", args, said)
		}
	}
}
