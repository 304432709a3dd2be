package store_test

import (
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"chape/project/store"
)

// What /proc and /sys show calls itself a plain file, and is refused unread; a link
// there to a file on a disk is that file.
func TestReadRefusesTheSystem(t *testing.T) {
	fsys := store.OSLockingIn("")
	link := filepath.Join(t.TempDir(), "a.toml")
	if err := os.Symlink("/proc/self/status", link); err != nil {
		t.Fatal(err)
	}
	for _, path := range []string{"/proc/self/status", "/proc/kmsg", link} {
		data, _, err := store.Read(fsys, path)
		if err == nil || data != nil || !strings.Contains(err.Error(), "an answer of the system, not a file on a disk: name a project file") {
			t.Errorf("Read(%q) = %d bytes, %v", path, len(data), err)
		}
	}
	f, err := os.Create(filepath.Join(t.TempDir(), "real.toml"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	f.WriteString("x")
	if data, _, err := store.Read(fsys, "/proc/self/fd/"+strconv.Itoa(int(f.Fd()))); err != nil || string(data) != "x" {
		t.Errorf("a file by way of /proc: %q, %v", data, err)
	}
}
