package bench

import (
	"fmt"
	"strings"
	"time"

	"github.com/charmbracelet/lipgloss"

	"chape/project/clock"
	"chape/project/steps"
	"chape/ui/term"
)

// shown is the hold whose digits stand large.
type shown struct {
	steps.Hold
	own bool // that of the step in hand
	ok  bool // there is one
}

// hold picks the hold whose digits are shown: that of the step in hand once it is
// started, else the next to fall due of any step and project.
func (m *Model) hold() shown { return m.holdAt(m.snap.Now) }

func (m *Model) holdAt(now time.Time) shown {
	all := steps.Holds(m.snap.Project.Steps, "")
	at := steps.Current(m.snap.Project.Steps)
	for _, h := range all {
		if h.Step == at {
			return shown{h, true, true}
		}
	}
	if h, ok := steps.Nearest(m.snap.Others, now); ok { // many, maybe: not copied
		all = append(all, h)
	}
	h, ok := steps.Nearest(all, now)
	return shown{h, false, ok}
}

// ending is the hold that h and Enter end: the one that stands large, for that is the one
// in view, while it runs; can is false for none, and for one of another project.
func (m *Model) ending(now time.Time) (h shown, can bool) {
	h = m.holdAt(now)
	return h, h.ok && h.Project == "" && h.State(now) == steps.HoldRunning
}

// noEnd says why h and Enter end nothing.
func (m *Model) noEnd(now time.Time) string {
	if h := m.holdAt(now); h.ok && h.Project != "" && h.State(now) == steps.HoldRunning {
		return "that hold is of " + term.Plain(h.Project) + ": end it there"
	}
	return "no hold runs here"
}

// digits is the time left, or a word.
func (m *Model) digits() string {
	h := m.hold()
	if !h.ok {
		return ""
	}
	switch h.State(m.snap.Now) {
	case steps.HoldDue:
		return "DUE"
	case steps.HoldLate:
		return "LATE"
	}
	return remaining(h.Due.Sub(m.snap.Now.Round(0)))
}

// leastLetters is how much of a name still tells something.
const leastLetters = 3

// largeWord is what stands large below the step's name: the digits and, before those of
// another hold, as much of the project's name as has room, for from afar they
// would be taken for the step's own.
func (m *Model) largeWord() string {
	word, h := m.digits(), m.hold()
	if word == "" || h.own {
		return word
	}
	name := steps.ShortFrom(h.Project)
	if h.Project == "" {
		name = h.Short
	}
	for ; len(name) >= leastLetters; name = name[:len(name)-1] {
		if both := name + " " + word; columns(both, squares) <= m.textWidth() {
			return both
		}
	}
	return word
}

// whose says above the digits of another hold which one it is, and when it is over.
func (m *Model) whose() string {
	h := m.hold()
	switch {
	case !h.ok || h.own:
		return ""
	case h.Project == "":
		return m.line(h.Hold) + " (another step)"
	}
	return m.line(h.Hold)
}

// line says a hold of another step in one line, its time never cut.
func (m *Model) line(h steps.Hold) string {
	return strings.Join(steps.HoldLines([]steps.Hold{h}, m.snap.Now, m.textWidth()), " ")
}

// remaining writes hours and minutes as "3:12 H", minutes and seconds below an hour as
// "9:59 M", so that from afar nobody takes one for the other. It rounds up.
func remaining(d time.Duration) string {
	if seconds := int64((d + time.Second - 1) / time.Second); seconds < 3600 {
		return fmt.Sprintf("%d:%02d M", seconds/60, seconds%60)
	}
	minutes := int64((d + time.Minute - 1) / time.Minute)
	return fmt.Sprintf("%d:%02d H", minutes/60, minutes%60)
}

func (m *Model) digitStyle() lipgloss.Style {
	if h := m.hold(); h.ok && h.State(m.snap.Now) != steps.HoldRunning {
		return m.Styles.Warn
	}
	return m.Styles.Figure
}

// ownHold says where the hold of the step in hand stands, and what Space will do
// with it.
func (m *Model) ownHold() string {
	step, now := m.step(), m.snap.Now
	at := func(t time.Time) string { return clock.Time(t, now) }
	switch state := step.HoldState(now); {
	case state == steps.NoHold:
		return ""
	case state == steps.HoldUnset:
		return "the data sheet says how long: set the time in Steps"
	case state == steps.HoldWaiting && step.Hold <= 0:
		return "space starts its hold: look at it within " + clock.Span(step.Latest)
	case state == steps.HoldWaiting:
		return "space starts its hold: " + clock.Window(step.Hold, step.Latest)
	case !step.Ended.IsZero():
		return "hold ended early, " + at(step.Ended) + ": space ticks the step"
	case state == steps.HoldRunning && step.Latest > 0:
		return fmt.Sprintf("not before %s, look by %s", at(step.NotBefore()), at(step.LookBy()))
	case state == steps.HoldRunning:
		return "not before " + at(step.NotBefore())
	}
	_, line, _ := strings.Cut(m.hold().Line(now), ": ") // whose it is stands large
	return line
}

// clockWrong doubts a hold that began later than now: the file came from elsewhere, or
// the clock was set.
func (m *Model) clockWrong() string {
	now, started := m.snap.Now, m.step().Started
	if m.step().HoldState(now) != steps.HoldRunning || !now.Before(started) {
		return ""
	}
	return "begun " + clock.Time(started, now) + ", after now: is the clock right?"
}

// anew says when a hold that was started anew was started first.
func (m *Model) anew() string {
	s, now := m.step(), m.snap.Now
	if s.First.IsZero() {
		return ""
	}
	return "started anew " + clock.Time(s.Started, now) + ", first " + clock.Time(s.First, now)
}

// dry says what the scale says of the drying step in hand, once its hold is over.
func (m *Model) dry() string {
	switch m.step().HoldState(m.snap.Now) {
	case steps.HoldDue, steps.HoldLate:
		return m.byWeight(m.step().ShortName())
	}
	return ""
}

// byWeight says what the scale says of the step of that name; "" of any but the drying.
func (m *Model) byWeight(short string) string {
	if short != steps.Drying {
		return ""
	}
	return m.drying.ByWeight(m.snap.Now)
}
