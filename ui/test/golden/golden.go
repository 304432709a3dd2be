// Package golden holds what a screen or drawing shows against a file in the
// testdata folder of the package under test. Tests only.
package golden

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the golden files anew")

// Check fails t when text, the blanks at its lines' ends taken off, is not what
// testdata/name holds; with -update it writes that file instead. A last line
// without its newline is given one.
func Check(t testing.TB, name, text string) {
	t.Helper()
	Exact(t, name, trimmed(text))
}

// Exact is Check for text whose every byte counts.
func Exact(t testing.TB, name, text string) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		if err := write(path, text); err != nil {
			t.Errorf("golden file not written: %v", err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Errorf("no golden file to hold this against (-update writes it): %v", err)
		return
	}
	if d := diff(string(want), text); d != "" {
		t.Errorf("%s has changed (-update writes it anew); it had -, has now +\n%s", path, d)
	}
}

func write(path, text string) error {
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return err
	}
	return os.WriteFile(path, []byte(text), 0o644)
}

// diff is each line that differs as it was and as it is, under its number;
// nothing when the texts are one. Lines are matched by number, as a screen keeps
// its height, and quoted, so that blanks and control bytes show.
func diff(was, is string) string {
	olds, news := strings.SplitAfter(was, "\n"), strings.SplitAfter(is, "\n")
	var b strings.Builder
	for i := range max(len(olds), len(news)) {
		o, n := lineAt(olds, i), lineAt(news, i)
		if o == n {
			continue
		}
		fmt.Fprintf(&b, "line %d\n", i+1)
		if o != "" {
			fmt.Fprintf(&b, "- %q\n", o)
		}
		if n != "" {
			fmt.Fprintf(&b, "+ %q\n", n)
		}
	}
	return b.String()
}

// lineAt is nothing past the last line.
func lineAt(lines []string, i int) string {
	if i < len(lines) {
		return lines[i]
	}
	return ""
}
