package panel

import (
	"path/filepath"
	"strings"
	"testing"
)

func TestFolderOf(t *testing.T) {
	home := t.TempDir()
	t.Setenv("HOME", home)
	t.Setenv("USERPROFILE", home)
	sub := filepath.Join(home, "my prints")
	for typed, want := range map[string]string{
		"": "", "~": home, "~/my prints": sub, sub: sub, sub + string(filepath.Separator): sub, "'" + sub + "'": sub, `"` + sub + `"`: sub,
	} {
		if got, err := folderOf(typed); err != nil || got != want {
			t.Errorf("%q: %q, %v; want %q", typed, got, err, want)
		}
	}
	for _, typed := range []string{"prints", "./prints", "~other/prints", "1"} {
		if got, err := folderOf(typed); err == nil || !strings.Contains(err.Error(), "~/prints") {
			t.Errorf("%q: %q, %v", typed, got, err)
		}
	}
	if got := tail("/home/somebody/documents", 10); got != "…documents" {
		t.Errorf("the end of a folder: %q", got)
	}
}
