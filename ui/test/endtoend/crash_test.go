//go:build !windows

package endtoend

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync/atomic"
	"syscall"
	"testing"
	"time"

	"chape/project/store"
	"chape/ui/test/ptytest"
)

// witness remembers the newest state that the screen has called saved.
type witness struct {
	seen   []state // in the order seen, without repeats
	frames int
}

func (w *witness) see(screen string) {
	if s, ok := screenState(screen); ok {
		w.frames++
		if len(w.seen) == 0 || w.seen[len(w.seen)-1] != s {
			w.seen = append(w.seen, s)
		}
	}
}

// latest follows the states that were seen through those that were to come and
// gives the place of the last. A frame that was read in two halves may show a
// state that never was: it counts for nothing.
func (w *witness) latest(history []state) int {
	at := 0
	for _, s := range w.seen {
		if i := slices.IndexFunc(history[at:], func(h state) bool { return h.shown() == s }); i >= 0 {
			at += i
		}
	}
	return at
}

// TestKill types at random and takes the program away at random moments, mostly
// in the midst of a save. What the screen had called saved is in the file each
// time, and the next run goes on from there.
func TestKill(t *testing.T) {
	h := newHome(t, aKnife())
	r := rand.New(rand.NewPCG(*seed, 0))
	var sum tally
	for range *kills {
		h.killed(r, &sum)
		if t.Failed() {
			return
		}
	}
	t.Logf("%d kills: %d keystroke groups, %d changes, %d frames that said saved, %d times the file was ahead of the screen, %d leftovers",
		*kills, sum.groups, sum.changes, sum.frames, sum.ahead, len(h.leftovers()))
	if sum.changes < *kills || sum.frames < *kills {
		t.Error("too little happened to prove anything")
	}
	h.tidied()
}

// tally is what happened in all rounds.
type tally struct{ groups, changes, frames, ahead int }

// killed is one round: open, type, kill, look.
func (h *home) killed(r *rand.Rand, sum *tally) {
	t := h.t
	before := h.read()
	var w witness
	s := h.start(ptytest.Options{Width: 160, Height: 45, Watch: w.see})
	d := newDriver(r, s, stateOf(before))
	if !d.settled() {
		t.Fatalf("seed %d: the file and the screen differ at the start:\n%s", *seed, s.Text())
	}
	var fired atomic.Bool
	timer := time.AfterFunc(time.Duration(r.IntN(150_000))*time.Microsecond, func() {
		fired.Store(true)
		syscall.Kill(s.Pid(), syscall.SIGKILL)
	})
	defer timer.Stop()
	for d.act() {
		sum.groups++
	}
	if !fired.Load() {
		t.Fatalf("seed %d: after %s the screen is not what it should be: want %+v\n%s", *seed, &d.typed, d.now(), s.Text())
	}
	s.Kill()
	sum.changes += len(d.history) - 1
	sum.frames += w.frames

	after := h.read() // whole and valid
	saved := w.latest(d.history)
	at := slices.Index(d.history[saved:], stateOf(after))
	if at < 0 {
		t.Fatalf("seed %d: the screen had called this saved:\n%+v\nin the file is\n%+v\ntyped: %s\n%s",
			*seed, d.history[saved], stateOf(after), &d.typed, s.Text())
	}
	if at > 0 {
		sum.ahead++
	}
	if rest(after) != rest(before) {
		t.Fatalf("seed %d: something else has changed:\n%s\nwas\n%s", *seed, rest(after), rest(before))
	}
	h.orderly()
}

var leftover = regexp.MustCompile(`^\.knife\.toml\.[0-9a-f]+-.*\.(new|hold)$`)

func (h *home) leftovers() []string {
	return slices.DeleteFunc(h.names(), func(n string) bool { return !leftover.MatchString(n) })
}

// orderly checks that the folder has nothing that a person would see but the
// project, a backup that can be read, and what the next saves clear away.
func (h *home) orderly() {
	h.t.Helper()
	backup := store.BackupName(h.path)
	for _, n := range h.names() {
		switch name := filepath.Join(filepath.Dir(h.path), n); {
		case name == backup:
			decode(h.t, name)
		case name != h.path && !leftover.MatchString(n):
			h.t.Errorf("in the folder is %q", n)
		}
	}
}

// tidied makes the leftovers look a week old: then one save clears them away.
func (h *home) tidied() {
	h.t.Helper()
	old := time.Now().Add(-7 * 24 * time.Hour)
	for _, n := range h.leftovers() {
		name := filepath.Join(filepath.Dir(h.path), n)
		if err := os.Chtimes(name, old, old); err != nil {
			h.t.Fatal(err)
		}
		if aged := ageHold(n, old); aged != n {
			if err := os.Rename(name, filepath.Join(filepath.Dir(h.path), aged)); err != nil {
				h.t.Fatal(err)
			}
		}
	}
	s := h.open(160, 45)
	d := newDriver(rand.New(rand.NewPCG(*seed, 1)), s, stateOf(h.read()))
	for len(d.history) == 1 {
		d.number()
	}
	if !d.settled() {
		h.t.Fatalf("not saved:\n%s", s.Text())
	}
	s.Type(ctrlC)
	if code := s.Exit(); code != 0 {
		h.t.Errorf("exit status %d", code)
	}
	if left := h.leftovers(); len(left) > 0 {
		h.t.Errorf("left behind: %q", left)
	}
	h.orderly()
}

// ageHold sets back the time in the name of a version that a save held.
func ageHold(name string, to time.Time) string {
	parts := strings.Split(name, "-")
	if len(parts) != 5 {
		return name
	}
	parts[2] = strconv.FormatInt(to.Unix(), 16)
	return strings.Join(parts, "-")
}
