// Package configtest writes settings for tests.
package configtest

import (
	"os"
	"path/filepath"
	"testing"

	"chape/project/config"
)

// Write puts the user's settings into a home folder of the test's own.
func Write(t *testing.T, text string) {
	t.Helper()
	home := t.TempDir()
	for _, name := range []string{"HOME", "XDG_CONFIG_HOME", "AppData"} {
		t.Setenv(name, home)
	}
	path, err := config.Path()
	if err != nil {
		t.Fatal(err)
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
}
