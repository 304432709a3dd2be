//go:build unix

package shelf

import (
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"chape/project/file"
)

// What is no plain project file stands in the list with its error; nothing waits.
func TestOddFiles(t *testing.T) {
	dir, other := t.TempDir(), t.TempDir()
	put(t, dir, "good.toml", sheath("Good", 1), now)
	os.Mkdir(filepath.Join(dir, "folder.toml"), 0o700)
	if err := syscall.Mkfifo(filepath.Join(dir, "pipe.toml"), 0o600); err != nil {
		t.Fatal(err)
	}
	put(t, other, "linked.toml", sheath("Linked", 1), now)
	os.Symlink(filepath.Join(other, "linked.toml"), filepath.Join(dir, "linked.toml"))
	os.Symlink(filepath.Join(other, "gone.toml"), filepath.Join(dir, "dangling.toml"))
	os.Symlink(filepath.Join(dir, "loop.toml"), filepath.Join(dir, "loop.toml"))
	os.Symlink("/dev/zero", filepath.Join(dir, "device.toml"))
	os.Chmod(put(t, dir, "shut.toml", sheath("Shut", 1), now), 0)
	putBytes(t, dir, "huge.toml", make([]byte, file.MaxSize+1), now)
	putBytes(t, dir, "zeros.toml", make([]byte, 100), now)
	putBytes(t, dir, "deep.toml", []byte("format = 1\na = "+strings.Repeat("[", 100000)), now)
	putBytes(t, dir, "newer.toml", []byte("format = 99\n"), now)
	putBytes(t, dir, "empty.toml", nil, now)

	want := map[string]string{
		"good": "", "linked": "", "folder": "it is a folder: name a project file", "pipe": "it is a named pipe: name a project file",
		"dangling": "there is no such file: look at its name and folder", "loop": "", "device": "it is a device: name a project file",
		"shut": "no permission: ask its owner, or change its permissions", "huge": "it is over 1024 KiB",
		"zeros": "zeros.toml:1: found a zero byte", "deep": "deep.toml:2: found values nested", "newer": "newer chape", "empty": "a project file has a format",
	}
	got := all(t, open(dir))
	if len(got) != len(want) {
		t.Errorf("%d entries, want %d", len(got), len(want))
	}
	for _, e := range got {
		name := nameOf(e.Path)
		broken := name != "good" && name != "linked"
		if name == "shut" && os.Geteuid() == 0 {
			continue // nothing is shut to root
		}
		if (e.State == Broken) != broken || broken && e.Err == "" || !strings.Contains(e.Err, want[name]) || strings.Contains(e.Err, "\n") {
			t.Errorf("%s: state %v, %q; want …%q", name, e.State, e.Err, want[name])
		}
	}
	if info, err := os.Lstat(filepath.Join(dir, "pipe.toml")); err != nil || info.Mode()&os.ModeNamedPipe == 0 {
		t.Errorf("the pipe is gone: %v", err)
	}
}

func TestShelfThatIsAFile(t *testing.T) {
	path := putBytes(t, t.TempDir(), "shelf", nil, now)
	if _, err := open(path).Look(); err == nil || !strings.Contains(err.Error(), "can't be read") || strings.Contains(err.Error(), "\n") {
		t.Errorf("a file as shelf: %v", err)
	}
}
