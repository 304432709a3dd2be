package golden

import (
	"strings"
	"testing"
)

// Of a screen with a drawing words and places count, and that there is a drawing; where
// its dots lie does not.
func TestScreen(t *testing.T) {
	t.Chdir(t.TempDir())
	updating(t, true)
	screen := "Plan\n" + strings.Repeat("⣿⣀⣀⠉ cut ⠤⠤⠤⠤⠤⠤\n", 4) + "49 holes \n"
	Screen(t, "plan.txt", screen)
	updating(t, false)
	for text, want := range map[string]string{
		screen: "", strings.ReplaceAll(screen, "⠤⠤⠤⠤⠤⠤", "⠤⠤⠤ ⠤⠤"): "", strings.ReplaceAll(screen, "⣀", "⣤"): "",
		strings.ReplaceAll(screen, "49", "50"): "49 holes", strings.ReplaceAll(screen, " cut", "cut "): "cut",
		strings.Map(blank, screen): "has a drawing of 40 characters, now it is one of 0",
		screen + screen:            "now it is one of 80", strings.Replace(screen, "Plan\n", "", 1): "Plan",
	} {
		e := &ear{}
		Screen(e, "plan.txt", text)
		if want == "" && e.heard != "" || !strings.Contains(e.heard, want) {
			t.Errorf("%q is answered with %q, want %q", text, e.heard, want)
		}
	}
	e := &ear{}
	Screen(e, "none.txt", "x")
	if !strings.Contains(e.heard, "no golden file") {
		t.Errorf("without a file: %q", e.heard)
	}
}
