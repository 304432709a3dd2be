package stepspane

import (
	"slices"
	"strings"
	"testing"
	"time"

	"chape/calc"
	"chape/project"
	"chape/project/steps"
	"chape/ui/act"
)

// What is changed elsewhere is followed, in hand or not: a tick at the bench leads to the
// next step, undo to the step that it changed. The pane's own keys move nothing.
func TestFollowsChangesElsewhere(t *testing.T) {
	for _, focus := range []bool{false, true} {
		r := newRig(t, sheath(3), 60, 30)
		r.Send(act.InHand{Is: focus})
		before := r.Project.Steps
		r.Project.Steps, _ = steps.Tick(r.Project.Steps, 3, noon)
		r.Show()
		if r.Pane.Chosen() != 4 {
			t.Errorf("focus %v: chosen %d after a tick at the bench, want 4, the step in hand", focus, r.Pane.Chosen())
		}
		r.Project.Steps = before
		r.Show()
		if r.Pane.Chosen() != 3 {
			t.Errorf("focus %v: chosen %d after undo, want 3", focus, r.Pane.Chosen())
		}
	}
	r := newRig(t, sheath(3), 60, 30)
	r.Keys("end", " ")
	if r.Pane.Chosen() != 36 {
		t.Errorf("the pane's own tick moved the choice to %d", r.Pane.Chosen())
	}
	r.Keys("i").Answer("so")
	before := slices.Clone(r.Project.Steps)
	r.Keys("home")
	r.Project.Steps = slices.Clone(before)
	r.Project.Steps[36].Note = ""
	r.Show()
	if r.Pane.Chosen() != 36 {
		t.Errorf("undo of a note chose %d, want the step that lost it", r.Pane.Chosen())
	}
	r.Keys("home", "i") // while something is typed nothing moves
	r.Project.Steps = before
	r.Show()
	if r.Pane.Chosen() != 0 {
		t.Errorf("the choice moved to %d while typing", r.Pane.Chosen())
	}
	r.Keys("esc")
	r.Project = sheath(20) // another project
	r.Show()
	if r.Pane.Chosen() != 20 {
		t.Errorf("another project: chosen %d, want its step in hand", r.Pane.Chosen())
	}
}

// A list that only follows the sheath leaves the cursor on its step: a handle that now
// begins inside the mouth words the forming anew, a strap has steps of its own.
func TestStaysWhereTheListFollowsTheSheath(t *testing.T) {
	for _, c := range []struct {
		name   string
		chosen int
		change func(*project.Project)
	}{
		{"the step in hand, a strap", 0, func(p *project.Project) { p.Strap.Kind = calc.SnapStrap }},
		{"the step in hand, no loop", 0, func(p *project.Project) { p.Belt.Loop = calc.NoLoop }},
		{"the last step, no loop", -1, func(p *project.Project) { p.Belt.Loop = calc.NoLoop }},
		{"the step in hand, the front inside the mouth", 0, func(p *project.Project) { p.Sheath.Mouth = 200 }},
	} {
		p := project.Defaults()
		p.Strap.Kind, p.Sheath.Mouth = calc.NoStrap, 1
		p.Steps = steps.FormThenSew(p.Parts())
		r := newRig(t, p, 60, 30)
		at := c.chosen
		if at < 0 {
			r.Keys("end")
			at = len(p.Steps) - 1
		}
		title := p.Steps[at].Title
		before := r.Project
		c.change(&r.Project)
		r.Project.Follow(before)
		if slices.Equal(before.Steps, r.Project.Steps) {
			t.Fatalf("%s: the list did not follow", c.name)
		}
		r.Show()
		if got := r.Project.Steps[r.Pane.Chosen()].Title; got != title {
			t.Errorf("%s: the cursor went to %q, want it left on %q", c.name, got, title)
		}
	}
}

func TestCautionIsEdited(t *testing.T) {
	r := newRig(t, project.Project{Steps: []steps.Step{{Title: "Alpha"}}}, 60, 20)
	r.Keys("a").Answer("Beta")
	r.Keys("c").Answer(" Hot iron: tongs. ")
	if r.Project.Steps[1].Caution != "Hot iron: tongs." || !strings.Contains(r.Pane.View(), "! Hot iron: tongs.") {
		t.Errorf("caution %q:\n%s", r.Project.Steps[1].Caution, r.Pane.View())
	}
	r.Keys("c", "enter")
	if len(r.Commits) != 2 {
		t.Errorf("nothing typed changed something: %q", r.Commits)
	}
	r.Keys("c").Answer("")
	if r.Project.Steps[1].Caution != "" || r.Project.Steps[0].Caution != "" {
		t.Errorf("the caution was not taken out: %+v", r.Project.Steps)
	}
}

// A length of time is typed over the old one; Enter alone leaves it.
func TestTimesAreTypedOver(t *testing.T) {
	r := newRig(t, sheath(11), 60, 30) // in hand: the fold, held 2 h
	r.Keys("d").Type("3 h").Keys("enter")
	if got := r.Project.Steps[11].Hold; got != 3*time.Hour {
		t.Errorf("3 h typed over 2 h: %v\n%s", got, r.Pane.View())
	}
	r.Keys("d", "enter")
	if got := r.Project.Steps[11].Hold; got != 3*time.Hour || len(r.Commits) != 1 {
		t.Errorf("Enter alone: %v, %q", got, r.Commits)
	}
	r.Keys("m").Type("20").Keys("enter", "m").Type("5").Keys("enter")
	if got := r.Project.Steps[11].Spent; got != 5*time.Minute {
		t.Errorf("5 typed over 20 min: %v", got)
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

// Where Enter takes something out, the foot does not promise to keep it.
func TestTheFootOfAConfirmation(t *testing.T) {
	r := newRig(t, sheath(3), 60, 30)
	foot := func() string {
		for _, s := range r.Pane.Keys() {
			if s.Now {
				return s.Keys[0].Brief
			}
		}
		return ""
	}
	r.Keys("x")
	if got := foot(); got != "do it" {
		t.Errorf("asked whether to remove a step, Enter is said to %q", got)
	}
	r.Keys("esc", "r")
	if got := foot(); got != "keep it" {
		t.Errorf("while a title is typed Enter is said to %q", got)
	}
}
