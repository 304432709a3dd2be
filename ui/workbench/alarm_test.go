package workbench

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

var mark = flag.String("mark", "", "a file that TestBeTheCommand makes")

// TestBeTheCommand is the user's command of TestOwnCommand: the test's own binary.
func TestBeTheCommand(t *testing.T) {
	if *mark == "" {
		return // not called as a command
	}
	if err := os.WriteFile(*mark, []byte(os.Getenv("CHAPE_DUE")), 0o600); err != nil {
		t.Fatal(err)
	}
}

// TestOwnCommand runs what the user has named for a hold that falls due: without a
// shell, its failure shown and harmless.
func TestOwnCommand(t *testing.T) {
	p := fresh()
	p.Steps[1].Started = morning.Add(-time.Hour + 2*time.Second)
	mark := filepath.Join(t.TempDir(), "rang; exit")
	s := filed(t, 100, 30, p)
	s.m.o.OnDue = []string{os.Args[0], "-test.run", "^TestBeTheCommand$", "-mark", mark}
	s.wait(3 * time.Second)
	if text, err := os.ReadFile(mark); err != nil || !strings.HasPrefix(string(text), "DRY is due") {
		t.Errorf("the command was told %q, %v", text, err)
	}

	s = filed(t, 100, 30, p)
	s.m.o.OnDue = []string{filepath.Join(t.TempDir(), "missing")}
	s.m.o.NoBell = true
	s.wait(3 * time.Second)
	s.shows("on_due")
	s.shows("DRY is due")
	if s.voice.bells != 0 {
		t.Errorf("%d bells, though none are wanted", s.voice.bells)
	}
}

// TestClockSetBack: the bell is not silent for as long as the clock was set back.
func TestClockSetBack(t *testing.T) {
	p := fresh()
	p.Steps[1].Started = morning.Add(-time.Hour + 2*time.Second)
	s := filed(t, 100, 30, p)
	s.wait(3 * time.Second)
	rung := s.voice.bells
	s.now = s.now.Add(-5 * time.Hour)
	s.send(tickMsg{})
	s.wait(30 * time.Second)
	if s.voice.bells <= rung {
		t.Errorf("%d bells before, %d after", rung, s.voice.bells)
	}
}
