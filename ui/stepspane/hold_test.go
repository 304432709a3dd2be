package stepspane

import (
	"testing"
	"time"

	"chape/project"
	"chape/project/steps"
	"chape/ui/act"
)

// A hold by data sheet asks for its time when it is reached, by the key that would tick
// and by the one that would start it; 0 is an answer, and ticks it where that was asked for.
func TestHoldBySheet(t *testing.T) {
	for _, key := range []string{" ", "t", "d"} {
		p := project.Project{Steps: []steps.Step{{Title: "Dye", Sheet: true}, {Title: "Buff"}}}
		r := newRig(t, p, 60, 30)
		r.Shows("hold by data sheet", "d sets how long")
		r.Keys(key)
		r.Shows("How long does the data sheet say it has to wait?")
		r.Keys("enter")
		if !act.Typing(r.Pane) || len(r.Commits) > 0 {
			t.Errorf("%q: nothing typed did %q", key, r.Commits)
		}
		r.Answer("4 h")
		if s := r.Project.Steps[0]; s.Hold != 4*time.Hour || !s.Started.IsZero() {
			t.Errorf("%q: %+v", key, s)
		}
		r.Keys("t", " ")
		if s := r.Project.Steps[0]; s.Started.IsZero() || !s.Done.IsZero() {
			t.Errorf("%q, t, space: %+v", key, s)
		}
		r = newRig(t, p, 60, 30)
		r.Keys(key).Answer("0")
		if s := r.Project.Steps[0]; s.Sheet || s.Done.IsZero() == (key == " ") {
			t.Errorf("%q, 0: %+v", key, s)
		}
		if key != " " {
			r.Keys(" ")
		}
		if s := r.Project.Steps[0]; s.Done.IsZero() {
			t.Errorf("%q, 0, space: %+v", key, s)
		}
	}
}

// A hold that was never started is asked about before its step is ticked, once: a second
// Space ticks nothing, Enter does.
func TestTickWithoutItsHold(t *testing.T) {
	r := newRig(t, project.Project{Steps: []steps.Step{{Title: "Cement", Hold: 12 * time.Hour}, {Title: "Sew"}}}, 60, 30)
	for _, key := range []string{" ", "esc"} {
		r.Keys(" ").Shows("Its hold of 12 h was not started")
		r.Keys(key).Lacks("not started:")
		if s := r.Project.Steps[0]; !s.Done.IsZero() || len(r.Commits) > 0 {
			t.Errorf("space, %q: %+v", key, s)
		}
	}
	other := newRig(t, r.Project, 60, 30).Keys(" ", "t")
	if s := other.Project.Steps[0]; !s.Done.IsZero() || s.Started.IsZero() || act.Typing(other.Pane) {
		t.Errorf("space, t: %+v", s)
	}
	r.Keys(" ", "enter")
	if s := r.Project.Steps[0]; s.Done.IsZero() || !s.Started.IsZero() {
		t.Errorf("space, enter: %+v", s)
	}
}

// A hold that is started anew says when it was first.
func TestStartedAnewIsSaid(t *testing.T) {
	r := newRig(t, project.Project{Steps: []steps.Step{{Title: "Dry", Hold: 3 * time.Hour}}}, 60, 30)
	r.Keys("t").Lacks("anew")
	first := r.Project.Steps[0].Started
	r.Wait(time.Hour).Keys("t", "enter")
	if s := r.Project.Steps[0]; !s.First.Equal(first) || s.Started.Equal(first) {
		t.Errorf("%+v", s)
	}
	r.Shows("started 13:00 (anew; first 12:00)")
}

// What the work takes is shown beside what it took, and can be changed.
func TestMinutesExpected(t *testing.T) {
	p := project.Project{Steps: []steps.Step{{Title: "Sew", Expect: time.Hour}, {Title: "Dye", Expect: 10 * time.Minute}}}
	r := newRig(t, p, 60, 30)
	r.Shows("expected 1 h of 1 h 10 min in all")
	r.Keys("M").Answer("90")
	if got := r.Project.Steps[0].Expect; got != 90*time.Minute {
		t.Errorf("expected %v", got)
	}
	r.Keys("m").Answer("75")
	r.Shows("expected 1 h 30 min of 1 h 40 min in all; spent 1 h 15 min, all steps 1 h 15 min")
}

// A hold that does not run can't be put off: nothing is asked that would then be refused.
func TestNothingToPutOff(t *testing.T) {
	r := newRig(t, sheath(0), 60, 30)
	r.Keys("l")
	if act.Typing(r.Pane) || len(r.Said) != 1 || r.Said[0] != "no hold runs here: there is nothing to put off" {
		t.Errorf("asks %v, said %q", act.Typing(r.Pane), r.Said)
	}
}
