package bench

import (
	"strings"
	"testing"
	"time"

	"chape/project"
	"chape/project/steps"
)

// twoHolds has a hold of a later step running that counts from the tick of the first, and a
// step without one in hand.
func twoHolds(t *testing.T) *desk {
	return newDesk(t, project.Project{Title: "Test knife", Steps: []steps.Step{
		{Title: "Cut the body", Short: "CUT", Done: noon.Add(-time.Hour)},
		{Title: "Sew", Short: "SEW"},
		{Title: "Let it dry", Short: "DRY", Hold: 24 * time.Hour, From: "CUT", Started: noon.Add(-time.Hour)},
	}}, 80, 24)
}

// The hold that stands large is the one that is meant, whichever step it is of.
func TestEndTheLargeHold(t *testing.T) {
	r := twoHolds(t)
	if !strings.Contains(r.text(), "h Enter end hold") {
		t.Errorf("the foot names no way to end the hold:\n%s", r.text())
	}
	r.keys("h")
	if !strings.Contains(r.text(), "Enter ends the hold of DRY early") {
		t.Errorf("it is not said which hold:\n%s", r.text())
	}
	r.wait(time.Second).keys("\r")
	if s := r.Project.Steps; s[2].Ended.IsZero() || r.done() != 1 {
		t.Errorf("h, Enter: %+v", s)
	}
	if strings.Contains(r.text(), "end hold") {
		t.Errorf("nothing runs any more:\n%s", r.text())
	}
}

// A hold of another project is ended there.
func TestEndElsewhere(t *testing.T) {
	r := newDesk(t, plainSteps(3), 80, 24)
	r.holds([]steps.Hold{gum(time.Hour)})
	if strings.Contains(r.text(), "end hold") {
		t.Errorf("the foot offers what it can't do:\n%s", r.text())
	}
	r.keys("h")
	if !strings.Contains(r.text(), "that hold is of Gum: end it there") {
		t.Errorf("%s", r.text())
	}
	r.wait(time.Second).keys("\r")
	if r.done() != 0 {
		t.Error("h, Enter ticked a step")
	}
}

// What falls due between h and Enter was what was meant: no other hold is ended for it.
func TestEndOverDue(t *testing.T) {
	r := twoHolds(t)
	r.Project.Steps[1].Hold, r.Project.Steps[1].Started = time.Hour, noon.Add(-time.Hour+2*time.Second)
	r.Show()
	r.wait(time.Second).keys("h").wait(2 * time.Second).keys("\r")
	if s := r.Project.Steps; !s[1].Ended.IsZero() || !s[2].Ended.IsZero() || r.done() != 1 {
		t.Errorf("%+v", s)
	}
}

// An Enter that comes too late for its h ticks nothing, however late; the one after it does.
func TestTooLateToEnd(t *testing.T) {
	for _, late := range []time.Duration{armTime + 1, 10 * time.Second, time.Hour, -time.Minute} {
		r := newDesk(t, plainSteps(3), 80, 24)
		r.keys("h").wait(late).keys("\r")
		if r.done() != 0 {
			t.Errorf("%v after h Enter ticked a step", late)
		}
		if !strings.Contains(r.text(), "too late: h, then Enter within 3 s") {
			t.Errorf("%v: it is not said:\n%s", late, r.text())
		}
		if r.wait(4 * time.Second).keys("\r"); r.done() != 1 {
			t.Errorf("%v: the next Enter ticks nothing", late)
		}
	}
	r := newDesk(t, plainSteps(3), 80, 24)
	if r.keys("h").wait(time.Minute).keys(" "); r.done() != 1 {
		t.Error("Space after h ticks nothing")
	}
}

// ? shows the keys; whatever puts them away does nothing else, held down or not.
func TestKeysOfTheBench(t *testing.T) {
	for _, size := range [][2]int{{60, 20}, {80, 24}, {160, 45}} {
		for _, key := range []string{" ", "\r", "?", "\x1b", "h", "\x03", "4"} {
			r := newDesk(t, plainSteps(3), size[0], size[1])
			was := r.text()
			r.keys("?")
			for _, say := range []string{"Space or Enter", "Backspace", "h Enter", "Esc", "Ctrl+C twice", "Ctrl+Z twice", "any key puts this away"} {
				if !strings.Contains(r.text(), say) {
					t.Errorf("at %v: no %q in\n%s", size, say, r.text())
				}
			}
			r.wait(2 * time.Second)
			for range 20 {
				r.keys(key).wait(30 * time.Millisecond)
				if strings.Contains("?\x1b\x03", key) { // which tick nothing
					break
				}
			}
			if r.done() != 0 || len(r.asked()) > 0 {
				t.Errorf("at %v: %q did something: %v", size, key, r.asked())
			}
			if got := r.wait(11 * time.Second).text(); got != was && strings.Contains(got, "puts this away") {
				t.Errorf("at %v: %q does not put them away:\n%s", size, key, got)
			}
		}
	}
}
