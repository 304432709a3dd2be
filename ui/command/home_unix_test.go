//go:build unix

package command

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"chape/project/config/configtest"
	"chape/ui/command/call"
	"chape/ui/command/settings"
)

// Without a home folder there is no shelf, above all none in a folder that all share,
// and one line says why; what needs no home goes on.
func TestNoHome(t *testing.T) {
	dir := t.TempDir()
	t.Setenv("XDG_CONFIG_HOME", "")
	file := filepath.Join(dir, "a.toml")
	for _, c := range []struct{ home, data, want string }{
		{"", "", "HOME is not set: set it to your own folder"},
		{"rel", "", `HOME is "rel", not a full path: set it to your own folder`},
		{"", "rel", "HOME is not set"},
		{"", dir, ""},
	} {
		t.Setenv("HOME", c.home)
		t.Setenv("XDG_DATA_HOME", c.data)
		set := settings.Load()
		folder, err := set.Folder()
		if c.data == dir {
			if err != nil || folder != filepath.Join(dir, "chape") {
				t.Errorf("%+v: shelf %q, %v", c, folder, err)
			}
			continue
		}
		if err == nil || folder != "" || !strings.Contains(err.Error(), c.want) || !strings.HasPrefix(err.Error(), "there is no shelf: ") {
			t.Errorf("%+v: shelf %q, %v", c, folder, err)
		}
		if set.Path != "" || set.Broken == nil || !strings.Contains(set.Broken.Error(), c.want) {
			t.Errorf("%+v: settings in %q, %v", c, set.Path, set.Broken)
		}
		os.Remove(file)
		var out, errs strings.Builder
		if err := Run(call.World{Out: &out, Err: &errs}, []string{"new", file}); err != nil || strings.Count(errs.String(), "\n") != 1 {
			t.Errorf("%+v: a new file: %v, said %q", c, err, errs.String())
		}
	}
	t.Setenv("HOME", dir)
	t.Setenv("XDG_CONFIG_HOME", "rel")
	if set := settings.Load(); set.Path != "" || fmt.Sprint(set.Broken) != `XDG_CONFIG_HOME is "rel", not a full path: set it to one, or not at all` {
		t.Errorf("settings in %q, %v", set.Path, set.Broken)
	}
}

// A shelf or a settings folder that others may write to is said.
func TestOthersMayWrite(t *testing.T) {
	configtest.Write(t, "")
	home := os.Getenv("HOME")
	t.Setenv("XDG_DATA_HOME", home)
	folder, err := settings.Load().Folder()
	if err != nil {
		t.Fatal(err)
	}
	own := filepath.Join(home, "chape") // the settings' folder, and the shelf
	if folder != own {
		t.Fatalf("the shelf is %q", folder)
	}
	said := func() string {
		var out, errs strings.Builder
		if err := Run(call.World{Out: &out, Err: &errs}, []string{"settings"}); err != nil {
			t.Fatal(err)
		}
		return errs.String()
	}
	for _, c := range []struct {
		mode os.FileMode
		want int
	}{{0o700, 0}, {0o755, 0}, {0o777, 2}, {0o702, 2}, {0o1777, 2}} {
		if err := os.Chmod(own, c.mode); err != nil {
			t.Fatal(err)
		}
		got := said()
		if strings.Count(got, "\n") != c.want || c.want > 0 && !strings.Contains(got, "others may write to your shelf: try chmod go-w ") {
			t.Errorf("mode %o: said %q, want %d lines", c.mode, got, c.want)
		}
	}
	os.Chmod(own, 0o700)
	if err := os.Chmod(filepath.Join(own, "config.toml"), 0o666); err != nil {
		t.Fatal(err)
	}
	if got := said(); !strings.Contains(got, "others may write to your settings: try chmod go-w ") {
		t.Errorf("settings that all may write: said %q", got)
	}
}
