package project

import (
	"testing"

	"chape/calc"
	"chape/calc/knife"
	"chape/project/steps"
)

func TestPartsFollowTheProject(t *testing.T) {
	p := Defaults()
	if got, want := p.Parts(), (steps.Parts{Loop: true, Front: true, Welt: true}); got != want {
		t.Errorf("a new project has %+v, want %+v", got, want)
	}
	p.Belt.Loop, p.Sheath.Welt = calc.NoLoop, 0
	for i := range p.Knife.Stations {
		p.Knife.Stations[i].Kind = knife.Blade
	}
	if got := p.Parts(); got != (steps.Parts{}) {
		t.Errorf("a bare blade has %+v", got)
	}
}

func TestChecklistFollows(t *testing.T) {
	before := Defaults()
	before.Steps = steps.FormThenSew(before.Parts())
	after := before.Clone()
	after.Belt.Loop = calc.NoLoop
	after.Follow(before)
	if got, want := len(after.Steps), len(before.Steps)-2; got != want {
		t.Errorf("without a loop %d steps, want %d", got, want)
	}
	back := after.Clone()
	back.Belt.Loop = calc.FoldedLoop
	back.Follow(after)
	if len(back.Steps) != len(before.Steps) {
		t.Errorf("with it again %d steps, want %d", len(back.Steps), len(before.Steps))
	}
}
