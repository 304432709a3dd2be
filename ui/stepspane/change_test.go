package stepspane

import (
	"slices"
	"strings"
	"testing"
	"time"

	"chape/project"
	"chape/project/steps"
)

// What is changed elsewhere is followed, in hand or not: a tick at the bench leads to the
// next step, undo to the step that it changed. The pane's own keys move nothing.
func TestFollowsChangesElsewhere(t *testing.T) {
	for _, focus := range []bool{false, true} {
		r := newRig(sheath(3), 60, 30)
		r.m.SetFocus(focus)
		before := r.p.Steps
		r.p.Steps, _ = steps.Tick(r.p.Steps, 3, noon)
		r.show()
		if r.m.Chosen() != 4 {
			t.Errorf("focus %v: chosen %d after a tick at the bench, want 4, the step in hand", focus, r.m.Chosen())
		}
		r.p.Steps = before
		r.show()
		if r.m.Chosen() != 3 {
			t.Errorf("focus %v: chosen %d after undo, want 3", focus, r.m.Chosen())
		}
	}
	r := newRig(sheath(3), 60, 30)
	r.keys("end", " ")
	if r.m.Chosen() != 36 {
		t.Errorf("the pane's own tick moved the choice to %d", r.m.Chosen())
	}
	r.keys("n").text("so")
	before := slices.Clone(r.p.Steps)
	r.keys("home")
	r.p.Steps = slices.Clone(before)
	r.p.Steps[36].Note = ""
	r.show()
	if r.m.Chosen() != 36 {
		t.Errorf("undo of a note chose %d, want the step that lost it", r.m.Chosen())
	}
	r.keys("home", "n") // while something is typed nothing moves
	r.p.Steps = before
	r.show()
	if r.m.Chosen() != 0 {
		t.Errorf("the choice moved to %d while typing", r.m.Chosen())
	}
	r.keys("esc")
	r.p = sheath(20) // another project
	r.show()
	if r.m.Chosen() != 20 {
		t.Errorf("another project: chosen %d, want its step in hand", r.m.Chosen())
	}
}

func TestCautionIsEdited(t *testing.T) {
	r := newRig(project.Project{Steps: []steps.Step{{Title: "Alpha"}}}, 60, 20)
	r.keys("a").text("Beta")
	r.keys("c").text(" Hot iron: tongs. ")
	if r.p.Steps[1].Caution != "Hot iron: tongs." || !strings.Contains(r.m.View(), "! Hot iron: tongs.") {
		t.Errorf("caution %q:\n%s", r.p.Steps[1].Caution, r.m.View())
	}
	r.keys("c", "enter")
	if len(r.commits) != 2 {
		t.Errorf("nothing typed changed something: %q", r.commits)
	}
	r.keys("c").text("")
	if r.p.Steps[1].Caution != "" || r.p.Steps[0].Caution != "" {
		t.Errorf("the caution was not taken out: %+v", r.p.Steps)
	}
}

func TestHoldTimesAsTyped(t *testing.T) {
	for _, c := range []struct {
		text         string
		hold, latest time.Duration
		err          string
	}{
		{"1:30", 90 * time.Minute, 0, ""}, {"1:30 - 2:00", 90 * time.Minute, 2 * time.Hour, ""}, {"24-48 h", 24 * time.Hour, 48 * time.Hour, ""},
		{"0", 0, 0, ""}, {"90", 0, 0, "give the unit: 90 min, 2 h"}, {"1,5", 0, 0, "give the unit"}, {"1:75", 0, 0, "try"},
	} {
		hold, latest, err := windowText(c.text)
		if hold != c.hold || latest != c.latest || (err == nil) != (c.err == "") || err != nil && !strings.Contains(err.Error(), c.err) {
			t.Errorf("windowText(%q) = %v, %v, %v", c.text, hold, latest, err)
		}
	}
	if d, err := minutesText("1:20"); d != 80*time.Minute || err != nil {
		t.Errorf("minutesText(1:20) = %v, %v", d, err)
	}
}
