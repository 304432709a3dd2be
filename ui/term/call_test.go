package term

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

var be = flag.String("be", "", "what TestBeTheCommand does")

// TestBeTheCommand is the user's command of TestCall: the test's own binary.
func TestBeTheCommand(t *testing.T) {
	switch *be {
	case "failing":
		fmt.Fprintln(os.Stderr, "\n  no \x1b[31mdevice for "+os.Getenv("CHAPE_DUE")+"\nmore of it"+strings.Repeat("\nand on", 1000))
		os.Exit(3)
	case "silent":
		os.Exit(1)
	case "good":
		fmt.Fprintln(os.Stderr, "a warning")
		os.Exit(0)
	case "endless":
		os.Stdin.Close()
		select {}
	}
}

func TestCall(t *testing.T) {
	self := os.Args[0]
	missing := filepath.Join(t.TempDir(), "missing")
	for _, c := range []struct {
		be, want string
	}{
		{"good", ""},
		{"silent", fmt.Sprintf("on_due %q: exit status 1", self)},
		{"failing", fmt.Sprintf("on_due %q: exit status 3: no \u241b[31mdevice for DRY; $HOME", self)},
	} {
		err := Call([]string{self, "-test.run", "^TestBeTheCommand$", "-be", c.be}, "DRY; $HOME")
		if got := fmt.Sprint(err); got != c.want && (err != nil || c.want != "") {
			t.Errorf("%s: %q, want %q", c.be, got, c.want)
		}
	}
	if err := Call([]string{"no-such-command-of-ours"}, ""); err == nil ||
		err.Error() != `on_due "no-such-command-of-ours": there is no such command: give its full path` {
		t.Errorf("a missing command: %v", err)
	}
	if err := Call([]string{missing}, ""); err == nil || strings.Contains(err.Error(), "\n") {
		t.Errorf("a missing file: %v", err)
	}
	err := call([]string{self, "-test.run", "^TestBeTheCommand$", "-be", "endless"}, "", time.Millisecond)
	if err == nil || !strings.HasSuffix(err.Error(), "stopped after 1ms: let it end sooner") {
		t.Errorf("one that does not end: %v", err)
	}
}
