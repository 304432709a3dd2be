package golden

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Screen is Check for a screen with a drawing on it: where the drawing's dots lie is for the
// tests of what draws them, here it counts that there is one of about that size. So one dash
// that is drawn otherwise is held against a few drawings, not against every page.
func Screen(t testing.TB, name, text string) {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("testdata", name))
	if *update || err != nil {
		Check(t, name, text)
		return
	}
	want, text := trimmed(string(data)), trimmed(text)
	was, is := dots(want), dots(text)
	if 4*is < 3*was || 3*is > 4*was+6 {
		t.Errorf("testdata/%s has a drawing of %d characters, now it is one of %d (-update writes it anew)", name, was, is)
	}
	if d := diff(trimmed(strings.Map(blank, want)), trimmed(strings.Map(blank, text))); d != "" {
		t.Errorf("testdata/%s has changed (-update writes it anew); it had -, has now +\n%s", name, d)
	}
}

// blank takes away the dots of a drawing.
func blank(r rune) rune {
	if r >= '⠀' && r <= '⣿' || strings.ContainsRune("▘▝▀▖▌▞▛▗▚▐▜▄▙▟█", r) {
		return ' '
	}
	return r
}

func dots(text string) (n int) {
	for _, r := range text {
		if r != blank(r) {
			n++
		}
	}
	return n
}

// trimmed takes the blanks at the lines' ends off.
func trimmed(text string) string {
	var b strings.Builder
	for line := range strings.Lines(text) {
		b.WriteString(strings.TrimRight(line, " \n") + "\n")
	}
	return b.String()
}
