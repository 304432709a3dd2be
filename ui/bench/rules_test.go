package bench

import (
	"fmt"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project/steps"
	"chape/project/weigh"
	"chape/ui/act"
)

const ms = time.Millisecond

// A key that is held down counts once, whenever its repeat begins and however fast it is;
// Backspace and a key that silenced an alarm as well.
func TestHeldKeyCountsOnce(t *testing.T) {
	for first := 200 * ms; first <= 2500*ms; first += 50 * ms {
		for _, pace := range []time.Duration{25 * ms, 33 * ms, 100 * ms, 500 * ms} {
			for _, c := range []struct {
				key         string
				silence     bool
				ticks, want int
			}{{" ", false, 0, 1}, {"\r", false, 0, 1}, {"\b", false, 3, 2}, {" ", true, 0, 0}, {"\b", true, 3, 3}} {
				p := plainSteps(6)
				for i := range c.ticks {
					p.Steps[i].Done = noon.Add(-time.Hour)
				}
				r := newDesk(t, p, 80, 24)
				if c.silence {
					r.send(act.Silenced{})
				} else {
					r.keys(c.key)
				}
				r.wait(first)
				for range 60 {
					r.keys(c.key).wait(pace)
				}
				r.wait(2 * second)
				if r.done() != c.want {
					t.Fatalf("%q repeated from %v every %v, silenced %v: %d ticks, want %d", c.key, first, pace, c.silence, r.done(), c.want)
				}
			}
		}
	}
}

// Two presses by hand count twice, the second when no more has come for 600 ms; what
// comes between takes it back.
func TestPressedTwice(t *testing.T) {
	for _, c := range []struct {
		name string
		do   func(*desk)
		want int
	}{
		{"not yet", func(r *desk) { r.wait(quietTime - 1) }, 1},
		{"then", func(r *desk) { r.wait(quietTime) }, 2},
		{"another key between", func(r *desk) { r.wait(quietTime - 1).keys("x").wait(second) }, 1},
		{"backspace between", func(r *desk) { r.wait(quietTime - 1).keys("\b").wait(second) }, 1},
		{"left between", func(r *desk) { r.send(act.InHand{}); r.wait(second) }, 1},
		{"clock set back between", func(r *desk) { r.wait(-time.Hour).wait(second) }, 1},
	} {
		r := newDesk(t, plainSteps(5), 80, 24)
		r.keys(" ").wait(1200 * ms).keys(" ")
		pressed := r.Now
		c.do(r)
		if r.done() != c.want {
			t.Errorf("%s: %d ticks, want %d", c.name, r.done(), c.want)
		}
		if c.want == 2 && !r.Project.Steps[1].Done.Equal(pressed.Truncate(second)) {
			t.Errorf("%s: ticked at %v, want when it was pressed, %v", c.name, r.Project.Steps[1].Done, pressed)
		}
	}
	r := newDesk(t, plainSteps(5), 80, 24)
	r.keys(" ").wait(1200 * ms).keys("\r")
	if r.done() != 2 {
		t.Errorf("another key than the first had to wait: %d ticks", r.done())
	}
	r.keys("").wait(3*second + 1).keys("\r")
	if r.done() != 3 {
		t.Errorf("after three seconds it had to wait: %d ticks", r.done())
	}
}

// No reading of a measuring tool ticks, at any pace and however it ends.
func TestReadingsAtAnyPace(t *testing.T) {
	for pace := ms; pace <= 150*ms; pace += 7 * ms {
		for _, end := range []string{"\r", "\n", "\r\n", "\r\r"} {
			r := newDesk(t, plainSteps(5), 80, 24)
			for range 6 {
				for _, c := range "+012.34 mm" + end {
					r.keys(string(c)).wait(pace)
				}
				r.wait(2 * second)
			}
			if r.done() > 0 {
				t.Fatalf("readings at %v ending with %q: %d ticks", pace, end, r.done())
			}
		}
	}
}

// Backspace takes back the start of a hold, then the one before, and only then a tick.
func TestStartIsTakenBackFirst(t *testing.T) {
	p := held(2*time.Hour, 0)
	p.Steps = append([]steps.Step{{Title: "Before", Short: "BEFORE", Done: noon.Add(-time.Minute)}}, p.Steps...)
	r := newDesk(t, p, 80, 24)
	r.keys(" ").wait(4 * second)
	r.Project.Steps, _ = steps.StartHold(r.Project.Steps, 1, r.Now)
	r.Show()
	if text := r.text(); !strings.Contains(text, "started anew 12:00, first 12:00") {
		t.Errorf("started anew: %s", text)
	}
	for _, want := range []string{
		"the hold counts from its first start, 12:00", "the start of the hold is taken back", "the tick of BEFORE is taken back", "no step is ticked",
	} {
		if r.done() != 1 && !strings.Contains(want, "no step") {
			t.Errorf("%d ticks before %q", r.done(), want)
		}
		r.keys("\b")
		if text := r.text(); !strings.Contains(text, want) {
			t.Errorf("no %q in %s", want, text)
		}
		r.wait(4 * second)
	}
	if s := r.Project.Steps; r.done() != 0 || !s[1].Started.IsZero() || len(r.Said) > 0 {
		t.Errorf("%d ticks, %+v, said %q", r.done(), s[1], r.Said)
	}
}

// The holds that the tick of FORM started go with that tick, and are said.
func TestHoldsOfTheForming(t *testing.T) {
	r := newDesk(t, sheath("FORM"), 80, 24)
	r.keys(" ")
	if text := r.text(); !strings.Contains(text, "started: LOOSEN 1 till 13:00, LOOSEN 2 till 15:00") {
		t.Errorf("not said: %s", text)
	}
	r.wait(4 * second).keys("\b")
	if at := steps.Current(r.Project.Steps); r.Project.Steps[at].Short != "FORM" || len(steps.Holds(r.Project.Steps, "")) > 0 {
		t.Errorf("in hand %s, holds %v", r.Project.Steps[at].Short, steps.Holds(r.Project.Steps, ""))
	}
}

// A hold by data sheet is asked for in Steps; till then nothing is ticked.
func TestDataSheetFirst(t *testing.T) {
	r := newDesk(t, sheath("DYE"), 60, 20)
	if text := r.text(); !strings.Contains(text, "set the time in Steps") {
		t.Errorf("not said: %s", text)
	}
	before := r.done()
	r.keys(" ").wait(5 * second)
	if text := r.text(); !strings.Contains(text, "* the data sheet says how long: set the time in Steps") || r.done() != before {
		t.Errorf("%d ticks, %s", r.done()-before, text)
	}
}

// Every hold that is due or late, of every project, is named in the smallest window:
// where there are more than have room, one after the other.
func TestEveryDueHoldIsNamed(t *testing.T) {
	for _, n := range []int{1, 2, 3, 7, 30} {
		for _, step := range []string{"DRILL", "CURE", "DRY"} {
			r := newDesk(t, sheath(step), 60, 20)
			if step != "DRILL" {
				r.Project.Steps[steps.Current(r.Project.Steps)].Started = noon.Add(-30 * time.Hour)
			}
			var others []steps.Hold
			for i := range n {
				h := steps.Hold{Project: fmt.Sprintf("Knife %d", i), Key: fmt.Sprint(i), Short: "CEMENT 1", Started: noon.Add(-time.Hour), Due: noon.Add(-50 * time.Minute)}
				if i%2 == 0 {
					h.LookBy = noon.Add(-45 * time.Minute)
				}
				others = append(others, h)
			}
			others = append(others, gum(time.Hour)) // runs
			r.holds(others)
			var seen strings.Builder
			for range 4 * 35 {
				seen.WriteString(r.text())
				checkSize(t, r.Pane.View(), 60, 20)
				r.wait(second)
			}
			for _, h := range others[:n] {
				if !strings.Contains(seen.String(), h.Project+" CEMENT 1: ") {
					t.Errorf("%d due, %s in hand: %s is never named", n, step, h.Project)
				}
			}
		}
	}
}

// The scale is heard beside a drying hold that is due.
func TestDryByWeight(t *testing.T) {
	r := newDesk(t, sheath("DRY"), 80, 24)
	r.Project.Steps[steps.Current(r.Project.Steps)].Started = noon.Add(-25 * time.Hour)
	r.Project.Weigh = []weigh.Weighing{{When: noon.Add(-25 * time.Hour), Grams: 130, State: weigh.Before}}
	for i, g := range []float64{230, 199, 176.5, 160} {
		r.Project.Weigh = append(r.Project.Weigh, weigh.Weighing{When: noon.Add(time.Duration(i-3) * 3 * time.Hour), Grams: g, State: "drying"})
	}
	r.Show()
	if text := r.text(); !strings.Contains(text, "not dry by weight: about Fri ") && !strings.Contains(text, "not dry by weight: about 2") {
		t.Errorf("the scale is not heard: %s", text)
	}
	r.Project.Steps[steps.Current(r.Project.Steps)].Started = noon
	r.Show()
	if text := r.text(); strings.Contains(text, "by weight") {
		t.Errorf("the scale is heard while the hold runs: %s", text)
	}
}

// Minutes are saved every five minutes, and are no change that undo takes back.
func TestMinutesAreSaved(t *testing.T) {
	r := newDesk(t, plainSteps(3), 80, 24)
	for range 11 * 60 {
		r.wait(second)
	}
	if got := r.Project.Steps[0].Spent; got != 10*time.Minute || len(r.Commits) > 0 {
		t.Errorf("%v saved after 11 minutes, commits %q", got, r.Commits)
	}
	r.send(act.InHand{})
	for range 11 * 60 {
		r.wait(second)
	}
	if got := r.Project.Steps[0].Spent; got != 11*time.Minute {
		t.Errorf("%v once left", got)
	}
}

// A tick a few seconds after the bench was opened counts no minutes; half a minute of work does.
func TestSecondsAreNoMinutes(t *testing.T) {
	for _, c := range []struct{ wait, want time.Duration }{{1 * time.Second, 0}, {28 * time.Second, 0}, {30 * time.Second, 31 * time.Second}} {
		r := newDesk(t, plainSteps(3), 80, 24)
		for range c.wait / time.Second {
			r.wait(second)
		}
		r.Keys(" ")
		if s := r.Project.Steps[0]; s.Done.IsZero() || s.Spent != c.want {
			t.Errorf("ticked a second after %v: %+v", c.wait, s)
		}
	}
}

// A message for an earlier bench view is nothing to a later one.
func TestTimersOfAnother(t *testing.T) {
	r, other := newDesk(t, plainSteps(3), 80, 24), newDesk(t, plainSteps(3), 80, 24)
	for _, msg := range []tea.Msg{quietMsg{other.Pane, spaceKey, noon}, minutesMsg{other.Pane, 1}, minutesMsg{r.Pane, 0}} {
		if _, out := r.Pane.Update(msg); len(out) > 0 {
			t.Errorf("%T did %v", msg, out)
		}
	}
}
