//go:build !windows

package settings

import (
	"os"
	"path/filepath"
	"testing"

	"chape/project/config/configtest"
	"chape/ui/act"
	"chape/ui/canvas"
)

// Sheets go among the documents where there is such a folder, else into the home folder;
// without one they go beside the project.
func TestDocuments(t *testing.T) {
	home := t.TempDir()
	t.Setenv("HOME", home)
	t.Setenv("XDG_DOCUMENTS_DIR", "")
	if got := documents(); got != home {
		t.Errorf("no documents: %q", got)
	}
	folder := filepath.Join(home, "Documents")
	if err := os.Mkdir(folder, 0o700); err != nil {
		t.Fatal(err)
	}
	if got := documents(); got != folder {
		t.Errorf("documents: %q", got)
	}
	t.Setenv("HOME", "")
	if got := documents(); got != "" {
		t.Errorf("no home: %q", got)
	}
}

// What the workbench itself puts into the settings is no news to it, and stands there.
func TestOwnSettingsAreNoNews(t *testing.T) {
	configtest.Write(t, "bell = true\n")
	set := Load()
	look := set.reread()
	if err := set.remember()(act.Font{Glyphs: canvas.Blocks, Aspect: 2.1}); err != nil {
		t.Fatal(err)
	}
	if err := set.keepPrints()("/mine"); err != nil {
		t.Fatal(err)
	}
	if news := look(); news != nil {
		t.Errorf("%+v", news)
	}
	again := Load()
	if o := again.Workbench(); o.Font.Glyphs != canvas.Blocks || o.Font.Aspect != 2.1 || o.Prints != "/mine" || again.Broken != nil {
		t.Errorf("%+v, %q, %v", o.Font, o.Prints, again.Broken)
	}
	if err := os.WriteFile(set.Path, []byte("bell = false\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if look() == nil {
		t.Error("what others make of it is no news either")
	}
}
