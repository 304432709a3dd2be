//go:build !windows

package endtoend

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync/atomic"
	"syscall"
	"testing"
	"time"

	"chape/ui/test/ptytest"
)

// given back: the screen, the mouse, pasting, the cursor, the window's title.
var restored = []string{"\x1b[?1049l", "\x1b[?1002l", "\x1b[?2004l", "\x1b[?25h", "\x1b[23;0t"}

// givenBack checks that the terminal was left as it was found.
func givenBack(t *testing.T, s *ptytest.Screen) {
	t.Helper()
	for _, seq := range restored {
		if !strings.Contains(s.Raw(), seq) {
			t.Errorf("the terminal was not given %q", seq)
		}
	}
}

// TestEndedMidEdit: the user logs out, or the terminal goes away, while a number
// is being typed. What was committed is in the file; what was only typed is
// not; the terminal is given back.
func TestEndedMidEdit(t *testing.T) {
	for _, sig := range []syscall.Signal{syscall.SIGTERM, syscall.SIGHUP, syscall.SIGQUIT, syscall.SIGABRT} {
		h := newHome(t, aKnife())
		s := h.open(160, 45)
		s.Type(home_ + down + down + "142.5\r" + "31")
		s.Shows("› 31")
		s.Signal(sig)
		if code := s.Exit(); code != 0 {
			t.Errorf("%v: exit status %d\n%s", sig, code, s.Text())
		}
		givenBack(t, s)
		if o := h.read().Outline; o.Blade != 142.5 || o.Depth == 31 {
			t.Errorf("%v: in the file: %+v", sig, o)
		}
		h.orderly()
	}
}

// TestEndedAnyTime ends the program in good order at random moments: nothing is
// left over beside the file, and no second copy of the project.
func TestEndedAnyTime(t *testing.T) {
	t.Parallel()
	h := newHome(t, aKnife())
	r := rand.New(rand.NewPCG(*seed, 2))
	for i := range max(4, *kills/4) {
		sig := []syscall.Signal{syscall.SIGTERM, syscall.SIGHUP}[i%2]
		var w witness
		s := h.start(ptytest.Options{Width: 160, Height: 45, Watch: w.see})
		d := newDriver(r, s, stateOf(h.read()))
		if !d.settled() {
			t.Fatalf("the file and the screen differ at the start:\n%s", s.Text())
		}
		var fired atomic.Bool
		timer := time.AfterFunc(time.Duration(r.IntN(100_000))*time.Microsecond, func() {
			fired.Store(true)
			syscall.Kill(s.Pid(), sig)
		})
		for d.act() {
			if fired.Load() {
				break
			}
		}
		timer.Stop()
		code := s.Exit()
		after := h.read()
		if at := slices.Index(d.history[w.latest(d.history):], stateOf(after)); at < 0 {
			t.Errorf("seed %d: %v: in the file is %+v\ntyped: %s", *seed, sig, stateOf(after), &d.typed)
		}
		if code != 0 || len(h.leftovers()) > 0 {
			t.Errorf("seed %d: %v: exit status %d, left behind %q\n%s", *seed, sig, code, h.leftovers(), s.Text())
		}
		givenBack(t, s)
		h.orderly()
		if t.Failed() {
			return
		}
	}
}

// TestFolderGone moves the folder away under the open project and back again.
func TestFolderGone(t *testing.T) {
	t.Parallel()
	h := newHome(t, aKnife())
	s := h.open(160, 45)
	dir := filepath.Dir(h.path)
	if err := os.Rename(dir, dir+" away"); err != nil {
		t.Fatal(err)
	}
	s.Type(home_ + down + down + "142.5\r")
	s.Shows("NOT SAVED")
	s.Type("31.5\r") // work goes on
	showsFigure(s, 1, 31.5)
	s.Shows("NOT SAVED")
	if err := os.Rename(dir+" away", dir); err != nil {
		t.Fatal(err)
	}
	// Where the file was missed before, its return counts as a change by others.
	s.Until("an end", func(screen string) bool {
		st, ok := screenState(screen)
		return ok && st.figures[1] == 31.5 || strings.Contains(screen, question)
	})
	s.Lacks("NOT SAVED")
	if blade, depth := h.kept(); !blade || !depth {
		t.Errorf("in the folder %q, in the file %+v", h.names(), h.read().Outline)
	}
}

// TestSmallDisk runs the real program on a disk of a few blocks until it is
// full, where such a disk may be made; TestFullDisk does it without one.
func TestSmallDisk(t *testing.T) {
	t.Parallel()
	h := newHome(t, aKnife())
	dir := filepath.Dir(h.path)
	if err := smallDisk(dir); err != nil {
		t.Logf("no small disk can be made here: %v", err)
		return
	}
	t.Cleanup(func() { unmount(dir) })
	h.write(aKnife())
	s := h.open(160, 45)
	fill := filepath.Join(dir, "other things")
	os.WriteFile(fill, make([]byte, 1<<20), 0o600) // as much as there is room for
	s.Type(home_ + down + down + "142.5\r")
	s.Shows("NOT SAVED: the disk is full")
	s.Type("31.5\r")
	showsFigure(s, 1, 31.5)
	if got := h.read().Outline.Blade; got != 110 {
		t.Errorf("in the file: %v", got)
	}
	s.Type(ctrlC)
	s.Shows("Quitting puts your work into a file of its own")
	s.Type(escape)
	s.Shows(ready)
	if err := os.Remove(fill); err != nil {
		t.Fatal(err)
	}
	savedWith(s, 1, 31.5)
	if o := h.read().Outline; o.Blade != 142.5 || o.Depth != 31.5 {
		t.Errorf("in the file: %+v", o)
	}

	os.WriteFile(fill, make([]byte, 1<<20), 0o600)
	s.Type(home_ + down + down + pasted("150.5") + "\r")
	s.Shows("NOT SAVED: the disk is full")
	s.Type(ctrlC)
	s.Shows("Quitting puts your work into a file of its own")
	s.Type("q")
	s.Exit()
	s.Shows("your work is in")
	if found := blades(t, h.dir, dir); found[150.5] == "" || found[142.5] != "knife.toml" {
		t.Errorf("in the files: %v\n%s", found, s.Text())
	}
}
