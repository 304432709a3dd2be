package comparepage

import (
	"testing"
	"time"

	"chape/calc"
	"chape/project"
	"chape/project/file"
	"chape/project/versions"
	"chape/ui/act"
	"chape/ui/canvas"
	"chape/ui/term/ink"
	"chape/ui/test/rig"
)

// three is a project with patterns 1 and 2 printed, and a third that stands.
func three() project.Project {
	p := project.Defaults()
	p.Title, p.Revision = "Bench knife", 1
	p, _ = file.Printed(p, rig.Noon.AddDate(0, 0, -20))
	p.Fits = []project.Fit{{Fit: calc.Fit{At: 110, By: 2, Reach: 25}, With: "leather"}}
	versions.Raise(&p)
	p, _ = file.Printed(p, rig.Noon.AddDate(0, 0, -6))
	p.Sheath.Mouth += 6
	p.Sheath.Leather = 2.8
	versions.Raise(&p)
	return p
}

func newRig(t *testing.T, p project.Project, w, h int) *rig.Rig[*Model] {
	r := rig.New(t, p, w, h, func(func() time.Time) *Model { return New(ink.New(ink.Dark, ink.None)) })
	r.Plan = true
	r.Snap.Font = act.Font{Glyphs: canvas.Braille, Aspect: 2}
	return r.Show()
}

func TestGolden(t *testing.T) {
	newRig(t, three(), 78, 19).Golden(t, "two_78x19")
	newRig(t, three(), 158, 40).Keys("left").Golden(t, "first_and_third_158x40")
	newRig(t, three(), 78, 19).Keys("pgdown").Golden(t, "rolled_78x19")
	newRig(t, project.Defaults(), 78, 19).Golden(t, "one_78x19")
	newRig(t, three(), 78, 19).Keys("left", "v").Golden(t, "curve_78x19")
	newRig(t, three(), 158, 40).Keys("left", "v").Golden(t, "curve_158x40")
}

func TestEverySize(t *testing.T) {
	rig.CheckSizes(t, newRig(t, three(), 78, 19).Pane, 170, 50)
	rig.CheckSizes(t, newRig(t, three(), 78, 19).Keys("v").Pane, 100, 40)
	rig.CheckSizes(t, newRig(t, project.Defaults(), 78, 19).Pane, 100, 40)
	rig.CheckSizes(t, newRig(t, project.Blank(), 78, 19).Pane, 100, 40)
}

func TestKeys(t *testing.T) { rig.CheckKeys(t, newRig(t, three(), 78, 19).Pane) }

func TestAnyTwo(t *testing.T) {
	r := newRig(t, three(), 78, 24).Shows("thin: pattern 2, printed 20 Nov 2026; heavy: pattern 3 as it is now")
	r.Keys("left").Shows("thin: pattern 1, printed 6 Nov 2026")
	r.Keys("[").Shows("heavy: pattern 2")
	r.Shows("wider a side at")
	r.Keys("p")
	if m, ok := r.Last().(act.PrintPair); !ok || m.Pair.Was.Number != 1 || m.Pair.Is.Number != 2 {
		t.Errorf("p sends %v", r.Last())
	}
	r.Keys("right").Shows("twice pattern 2")
	if r.Keys("p"); len(r.Said) == 0 || r.Said[len(r.Said)-1] != "twice the same pattern: ← or → takes another one" {
		t.Errorf("said %q", r.Said)
	}
	one := newRig(t, project.Defaults(), 78, 24).Keys("p", "right", "[", "v")
	if n := len(one.Pane.Keys()[0].Keys); len(one.Said) != 0 || n != 1 {
		t.Errorf("with one pattern there are %d keys; said %q", n, one.Said)
	}
}
