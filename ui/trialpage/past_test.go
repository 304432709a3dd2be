package trialpage

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"chape/calc"
	"chape/project"
	"chape/project/file"
	"chape/project/shelf"
	"chape/project/steps"
	"chape/project/store"
	"chape/ui/act"
	"chape/ui/canvas"
	"chape/ui/term/ink"
	"chape/ui/test/rig"
)

// TestExperience: what finished sheaths needed is offered when it is asked for, counts for
// nothing until it is kept, and asked again stands once.
func TestExperience(t *testing.T) {
	dir := t.TempDir()
	done := knifeProject()
	done.Steps = []steps.Step{{Title: "All at once", Done: rig.Noon}}
	done.Fits = []project.Fit{{Fit: calc.Fit{At: done.Sheath.Mouth - 10, By: 1, Reach: 20}, With: "finished"}}
	if err := os.WriteFile(filepath.Join(dir, "done.toml"), file.Encode(done), 0o600); err != nil {
		t.Fatal(err)
	}
	s := shelf.Open(store.OSLockingIn(""), dir)
	r := rig.New(t, knifeProject(), 78, 24, func(func() time.Time) *Model { return New(ink.New(ink.Dark, ink.None), s) })
	r.Plan = true
	r.Snap.Font = act.Font{Glyphs: canvas.Braille, Aspect: 2}
	r.Show().Keys("m").Shows("from 1 finished sheath of 3.2")
	if len(r.Project.Carried) != 1 || len(r.Project.Fits) != 0 {
		t.Fatalf("offered %+v, kept %+v", r.Project.Carried, r.Project.Fits)
	}
	r.Keys("m")
	if len(r.Project.Carried) != 1 {
		t.Errorf("asked twice it stands %d times", len(r.Project.Carried))
	}
	r.Keys("end", "enter")
	if len(r.Project.Carried) != 0 || len(r.Project.Fits) != 1 || r.Project.Fits[0].By != 1 || r.Project.Fits[0].At != done.Sheath.Mouth-10 {
		t.Errorf("kept %+v", r.Project.Fits)
	}
	done.Fits = nil
	if err := os.WriteFile(filepath.Join(dir, "done.toml"), file.Encode(done), 0o600); err != nil {
		t.Fatal(err)
	}
	r.Keys("m")
	if said := r.Said[len(r.Said)-1]; said != "1 finished sheath of 3.2 mm leather needed no correction in leather" {
		t.Errorf("said %q", said)
	}
	other := r.Project
	other.Sheath.Leather = 4
	r.Project = other
	r.Show().Keys("m")
	if said := r.Said[len(r.Said)-1]; said != "no finished sheath of 4 mm leather on the shelf yet" {
		t.Errorf("said %q", said)
	}
	none := newRig(t, knifeProject(), 78, 24).Keys("m")
	if len(none.Said) == 0 {
		t.Error("without a shelf nothing is said")
	}
}
