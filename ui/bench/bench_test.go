package bench

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"chape/project"
	"chape/project/steps"
	"chape/ui/act"
	"chape/ui/part"
	"chape/ui/term/ink"
	"chape/ui/test/rig"
)

var noon = rig.Noon

// desk is the bench view on its rig, with timers.
type desk struct {
	*rig.Rig[*Model]
	passed time.Duration // by the timers' clock, which nobody sets
	timers []timer
	idle   bool // the minutes are not saved every few minutes
}

type timer struct {
	at  time.Duration
	msg tea.Msg
}

func newDesk(t testing.TB, p project.Project, w, h int) *desk {
	r := &desk{}
	wait := func(d time.Duration, msg tea.Msg) tea.Cmd {
		return func() tea.Msg {
			if _, minutes := msg.(minutesMsg); !minutes || !r.idle {
				r.timers = append(r.timers, timer{r.passed + d, msg})
			}
			return nil
		}
	}
	r.Rig = rig.New(t, p, w, h, func(now func() time.Time) *Model { return New(now, wait, ink.New(ink.Dark, ink.None)) })
	return r
}

// wait lets time pass, and timers ring; a negative one sets the clock back.
func (r *desk) wait(d time.Duration) *desk {
	for until := r.passed + max(d, 0); d > 0; {
		first := -1
		for i, t := range r.timers {
			if t.at <= until && (first < 0 || t.at < r.timers[first].at) {
				first = i
			}
		}
		if first < 0 {
			break
		}
		t := r.timers[first]
		r.timers = slices.Delete(r.timers, first, first+1)
		r.Wait(t.at - r.passed)
		d -= t.at - r.passed
		r.passed = t.at
		r.Send(t.msg)
	}
	r.passed += max(d, 0)
	r.Wait(d)
	return r
}

func (r *desk) send(msg tea.Msg) *desk {
	r.Send(msg)
	return r
}

func (r *desk) holds(h []steps.Hold) {
	r.Snap.Others = h
	r.Show()
}

// asked is what the root was asked for.
func (r *desk) asked() (out []act.Msg) {
	for _, m := range r.Sent {
		switch m.(type) {
		case act.Commit, act.Record, act.Do:
		default:
			out = append(out, m)
		}
	}
	return out
}

// keys types what stands in text: \r is Enter, \n LF, \b Backspace, \x1b Esc; runs of
// letters arrive as one message each, as they do from a terminal.
func (r *desk) keys(text string) *desk {
	run := func(s string) {
		if s != "" {
			r.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(s)})
		}
	}
	from := 0
	for i, c := range text {
		kind, special := map[rune]tea.KeyType{
			'\r': tea.KeyEnter, '\n': tea.KeyCtrlJ, '\b': tea.KeyCtrlH, 0x7f: tea.KeyBackspace, 0x1b: tea.KeyEsc, ' ': tea.KeySpace,
			3: tea.KeyCtrlC, 26: tea.KeyCtrlZ,
		}[c]
		if !special {
			continue
		}
		run(text[from:i])
		from = i + 1
		key := tea.KeyMsg{Type: kind}
		if kind == tea.KeySpace {
			key.Runes = []rune{' '}
		}
		r.send(key)
	}
	run(text[from:])
	return r
}

func (r *desk) done() (n int) {
	for _, s := range r.Project.Steps {
		if !s.Done.IsZero() {
			n++
		}
	}
	return n
}

func plainSteps(n int) project.Project {
	p := project.Project{Title: "Test knife"}
	for i := range n {
		p.Steps = append(p.Steps, steps.Step{Title: fmt.Sprintf("Step number %d", i), Short: fmt.Sprintf("STEP%d", i)})
	}
	return p
}

func held(hold, latest time.Duration) project.Project {
	p := plainSteps(3)
	p.Steps[0].Hold, p.Steps[0].Latest = hold, latest
	return p
}

const second = time.Second

func TestTickAndTakeBack(t *testing.T) {
	for _, c := range []struct {
		name string
		do   func(*desk)
		want int
	}{
		{"space", func(r *desk) { r.keys(" ") }, 1},
		{"enter", func(r *desk) { r.keys("\r") }, 1},
		{"line feed alone", func(r *desk) { r.keys("\n") }, 1},
		{"CR and LF", func(r *desk) { r.keys("\r\n") }, 1},
		{"two with a second between", func(r *desk) { r.keys(" ").wait(second).keys(" ") }, 2},
		{"double press", func(r *desk) { r.keys(" ").wait(200 * time.Millisecond).keys(" ") }, 1},
		{"held key", func(r *desk) {
			for range 500 {
				r.keys(" ").wait(33 * time.Millisecond)
			}
		}, 1},
		{"held, let go, pressed", func(r *desk) {
			for range 50 {
				r.keys(" ").wait(33 * time.Millisecond)
			}
			r.wait(second).keys(" ")
		}, 2},
		{"another key within the second", func(r *desk) {
			r.keys(" ").wait(600 * time.Millisecond).keys("x").wait(600 * time.Millisecond).keys(" ")
		}, 1},
		{"backspace", func(r *desk) { r.keys(" ").wait(second).keys(" ").wait(second).keys("\x7f") }, 1},
		{"^H at once", func(r *desk) { r.keys(" \b") }, 0},
		{"held backspace", func(r *desk) { r.keys(" ").wait(second).keys(" ").wait(second).keys("\b\b\b\b") }, 1},
		{"letters", func(r *desk) { r.keys("abcdefgijklmnopqrstuvwxyzABCDEFG") }, 0},
		{"reading and CR LF", func(r *desk) { r.keys("12.34\r\n") }, 0},
		{"reading and LF", func(r *desk) { r.keys("12.34\n") }, 0},
		{"reading in millimetres", func(r *desk) { r.keys("12.34 mm\r\n") }, 0},
		{"readings all day", func(r *desk) {
			for range 300 {
				r.keys("+012.34\r\n").wait(700 * time.Millisecond)
			}
		}, 0},
		{"enter after a letter, in time", func(r *desk) { r.keys("x").wait(151 * time.Millisecond).keys("\r") }, 1},
		{"enter after a letter, too soon", func(r *desk) { r.keys("x").wait(150 * time.Millisecond).keys("\r") }, 0},
		{"slow reading, its LF in time", func(r *desk) {
			r.keys("7").wait(140 * time.Millisecond).keys("\r").wait(150 * time.Millisecond).keys("\n")
		}, 0},
		{"an LF of its own", func(r *desk) {
			r.keys("7").wait(140 * time.Millisecond).keys("\r").wait(151 * time.Millisecond).keys("\n")
		}, 1},
		{"paste", func(r *desk) { r.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(" "), Paste: true}) }, 0},
		{"alt and enter", func(r *desk) { r.send(tea.KeyMsg{Type: tea.KeyEnter, Alt: true}) }, 0},
		{"clock set back after a tick", func(r *desk) { r.keys(" ").wait(-time.Hour).keys(" ") }, 2},
		{"a key that silenced, held down", func(r *desk) {
			r.send(act.Silenced{})
			r.wait(33 * time.Millisecond).keys(" ").wait(33 * time.Millisecond).keys(" ")
		}, 0},
	} {
		r := newDesk(t, plainSteps(5), 80, 24)
		c.do(r)
		r.wait(quietTime)
		if r.done() != c.want || len(r.Said) > 0 {
			t.Errorf("%s: %d ticks, want %d, errors %q", c.name, r.done(), c.want, r.Said)
		}
	}
}

func TestHoldFromStartToTick(t *testing.T) {
	r := newDesk(t, held(2*time.Hour+20*time.Minute, 0), 80, 24)
	r.keys(" ")
	if got := r.Project.Steps[0]; !got.Started.Equal(noon) || !got.Done.IsZero() {
		t.Fatalf("space on a waiting hold: %+v", got)
	}
	r.wait(time.Minute).keys("\r")
	if got := ansi.Strip(r.Pane.View()); !strings.Contains(got, "not before 14:20") || r.done() != 0 {
		t.Errorf("while it runs:\n%s", got)
	}
	r.wait(2 * time.Hour).keys(" ")
	if r.done() != 0 {
		t.Error("ticked while the hold ran")
	}
	r.wait(19 * time.Minute).keys(" ")
	if r.done() != 1 {
		t.Error("not ticked when due")
	}
}

// A key that is stuck from before the hold falls due does not tick.
func TestStuckOverDue(t *testing.T) {
	r := newDesk(t, held(time.Minute, 0), 80, 24)
	for range 3 * 60 * 10 {
		r.keys(" ").wait(100 * time.Millisecond)
	}
	if r.Project.Steps[0].Started.IsZero() || r.done() != 0 {
		t.Errorf("after three minutes of a stuck key: %+v", r.Project.Steps[0])
	}
}

func TestEndEarly(t *testing.T) {
	for _, c := range []struct {
		name string
		do   func(*desk)
		want bool
	}{
		{"h, enter", func(r *desk) { r.keys("h").wait(400 * time.Millisecond).keys("\r") }, true},
		{"fast", func(r *desk) { r.keys("h").wait(90 * time.Millisecond).keys("\r") }, true},
		{"capital", func(r *desk) { r.keys("H").wait(second).keys("\r") }, true},
		{"at three seconds", func(r *desk) { r.keys("h").wait(3 * second).keys("\r") }, true},
		{"too late", func(r *desk) { r.keys("h").wait(3*second + 1).keys("\r") }, false},
		{"space", func(r *desk) { r.keys("h").wait(second).keys(" ") }, false},
		{"a key between", func(r *desk) { r.keys("h").wait(second).keys("x").wait(second).keys("\r") }, false},
		{"enter alone", func(r *desk) { r.keys("\r") }, false},
		{"mashed", func(r *desk) {
			r.keys("x").wait(50 * time.Millisecond).keys("h").wait(50 * time.Millisecond).keys("\r")
		}, false},
		{"in one burst", func(r *desk) { r.keys("gh\r") }, false},
	} {
		r := newDesk(t, held(2*time.Hour, 0), 80, 24)
		r.keys(" ").wait(time.Minute)
		c.do(r)
		if ended := !r.Project.Steps[0].Ended.IsZero(); ended != c.want || r.done() != 0 {
			t.Errorf("%s: ended %v, want %v; %d ticks", c.name, ended, c.want, r.done())
		}
	}
}

func TestLeaveQuitSuspend(t *testing.T) {
	for keys, want := range map[string]act.Msg{"\x1b": act.Leave{}, "\x03\x03": act.Quit{}, "\x1a\x1a": act.Suspend{}, "\x03\x1a": nil, "\x03x\x03": nil, "\x03": nil} {
		sent := newDesk(t, plainSteps(3), 80, 24).keys(keys).asked()
		if want == nil && len(sent) > 0 || want != nil && (len(sent) != 1 || sent[0] != want) {
			t.Errorf("%q sent %v, want %v", keys, sent, want)
		}
	}
	if sent := newDesk(t, plainSteps(3), 80, 24).keys("\x03").wait(3 * second).keys("\x03").asked(); len(sent) > 0 {
		t.Error("Ctrl+C twice in three seconds left the program")
	}
}

func TestStale(t *testing.T) {
	r := newDesk(t, plainSteps(3), 80, 24)
	_, out := r.Pane.Update(part.Press{KeyMsg: rig.Key("enter")})
	r.Project.Steps = r.Project.Steps[1:] // someone else was faster
	if err := out[0].(act.Commit).Do(&r.Project); err == nil || r.done() != 0 {
		t.Errorf("%d ticks, error %v", r.done(), err)
	}
}

func TestMinutes(t *testing.T) {
	r := newDesk(t, held(time.Hour, 0), 80, 24)
	minutes := func(n int) {
		for range n * 60 {
			r.wait(second)
		}
	}
	minutes(10)
	r.keys(" ") // the hold
	minutes(60)
	r.keys(" ") // ticks
	minutes(7)
	r.send(act.InHand{})
	minutes(30)
	r.send(act.InHand{Is: true})
	minutes(5)
	r.keys(" ")
	minutes(2)
	r.send(act.InHand{})
	for i, want := range []time.Duration{10 * time.Minute, 12 * time.Minute, 2 * time.Minute} {
		if got := r.Project.Steps[i].Spent; got != want {
			t.Errorf("step %d: %v at the bench, want %v", i, got, want)
		}
	}
}

func TestTouch(t *testing.T) {
	r := newDesk(t, plainSteps(5), 80, 24)
	at := func(y int, a tea.MouseAction, b tea.MouseButton) {
		r.wait(second).send(tea.MouseMsg{X: 40, Y: y, Action: a, Button: b})
	}
	at(5, tea.MouseActionPress, tea.MouseButtonLeft)
	if r.done() != 1 {
		t.Fatal("a touch on the name did nothing")
	}
	at(5, tea.MouseActionRelease, tea.MouseButtonLeft)
	at(5, tea.MouseActionPress, tea.MouseButtonRight)
	at(5, tea.MouseActionPress, tea.MouseButtonWheelDown)
	at(5, tea.MouseActionMotion, tea.MouseButtonLeft)
	at(23, tea.MouseActionPress, tea.MouseButtonLeft)
	at(0, tea.MouseActionPress, tea.MouseButtonLeft)
	if r.done() != 1 {
		t.Errorf("%d ticks, want 1", r.done())
	}
}
