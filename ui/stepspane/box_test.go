package stepspane

import (
	"testing"
	"time"

	"chape/project"
	"chape/project/steps"
	"chape/ui/act"
	"chape/ui/test/rig"
)

// A press on a step's box ticks it, another one takes the tick back; a double press counts
// once; one on the words chooses only.
func TestBox(t *testing.T) {
	p := project.Project{Steps: []steps.Step{{Title: "Cut"}, {Title: "Sew"}, {Title: "Dye", Sheet: true}}}
	r := newRig(t, p, 60, 20)
	done := func(i int) bool { return !r.Project.Steps[i].Done.IsZero() }
	r.Wait(time.Minute).Send(rig.Click(8, 1))
	if done(1) || r.Pane.Chosen() != 1 {
		t.Errorf("a press on the words: ticked %v, chosen %d", done(1), r.Pane.Chosen())
	}
	for x := range box {
		r.Wait(time.Minute).Send(rig.Click(x, 1))
		if !done(1) {
			t.Errorf("cell %d of the box ticks nothing", x)
		}
		r.Wait(200 * time.Millisecond).Send(rig.Click(x, 1))
		if !done(1) {
			t.Errorf("cell %d: a double press took the tick back", x)
		}
		r.Wait(time.Minute).Send(rig.Click(x, 1))
		if done(1) {
			t.Errorf("cell %d: the tick stays", x)
		}
	}
	r.Wait(time.Minute).Send(rig.Click(1, 2))
	if !act.Typing(r.Pane) {
		t.Error("a step whose hold nobody has set does not ask for it")
	}
	r.Send(rig.Click(1, 0))
	if done(0) {
		t.Error("ticked under a question")
	}
}
