package command

import (
	"fmt"
	"os"
	"testing"
)

// TestMain has the tests see no settings and no shelf but their own.
func TestMain(m *testing.M) {
	home, err := os.MkdirTemp("", "home")
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	for _, name := range []string{"HOME", "USERPROFILE", "XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_CACHE_HOME", "AppData", "LocalAppData"} {
		os.Setenv(name, home)
	}
	code := m.Run()
	os.RemoveAll(home)
	os.Exit(code)
}
