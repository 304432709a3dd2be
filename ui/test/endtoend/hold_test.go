//go:build !windows

package endtoend

import (
	"strings"
	"syscall"
	"testing"
	"time"
)

// TestKilledMidHold starts a hold, kills the program, lets the hold fall due and
// opens it again. The time that passes is taken off the start in the file: the
// program knows no other clock than the machine's.
func TestKilledMidHold(t *testing.T) {
	t.Parallel()
	h := newHome(t, aKnife())
	s := h.open(120, 40)
	s.Type(backTab + home_ + strings.Repeat(down, 3) + "t")
	s.Shows("STEPD: 10 h to go")
	s.Until("saved", func(string) bool { return !h.read().Steps[3].Started.IsZero() })
	s.Signal(syscall.SIGKILL)
	s.Exit()
	started := h.read().Steps[3].Started
	if ago := time.Since(started); ago < 0 || ago > time.Minute {
		t.Fatalf("the hold was started at %v", started)
	}

	s = h.open(120, 40) // before it is due
	s.Shows("STEPD: ")
	s.Until("when STEPD is over", func(screen string) bool {
		st, ok := screenState(screen)
		return ok && st.steps[3].started
	})
	if s.Bells() > 0 {
		t.Error("it rings too early")
	}
	s.Signal(syscall.SIGKILL)
	s.Exit()

	p := h.read()
	p.Steps[3].Started = p.Steps[3].Started.Add(-11 * time.Hour)
	h.write(p)
	due := p.Steps[3].Started.Add(10 * time.Hour).UTC()
	s = h.start(wide)
	s.Shows("STEPD fell due meanwhile, at ")
	s.Shows(due.Format("15:04"))
	if s.Bells() == 0 || !strings.Contains(s.Title(), "STEPD") {
		t.Errorf("%d bells, title %q", s.Bells(), s.Title())
	}
	s.Type("x")
	s.Lacks("any key silences it")
	if got := h.read().Steps[3]; !got.Started.Equal(p.Steps[3].Started) || !got.Done.IsZero() {
		t.Errorf("the key that silences changed the step: %+v", got)
	}
}

// TestHoldFallsDue has a hold of one second run out before one's eyes, in the
// bench view too.
func TestHoldFallsDue(t *testing.T) {
	p := aKnife()
	p.Steps[0].Hold = time.Second
	h := newHome(t, p)
	s := h.open(120, 40)
	s.Type("b")
	s.Shows("Esc leave")
	s.Type(" ")
	s.Shows("STEPA is due")
	s.Shows("due since")
	if s.Bells() == 0 || !strings.Contains(s.Title(), "STEPA is due") {
		t.Errorf("%d bells, title %q", s.Bells(), s.Title())
	}
	s.Signal(syscall.SIGKILL)
	s.Exit()
	if got := h.read().Steps[0]; got.Started.IsZero() || !got.Done.IsZero() {
		t.Errorf("in the file: %+v", got)
	}
}
