package earlierpage

import (
	"slices"
	"testing"
	"time"

	"chape/project"
	"chape/ui/act"
	"chape/ui/canvas"
	"chape/ui/term/ink"
	"chape/ui/test/rig"
)

// old is a sheath that was wider over the bolster and narrower at the mouth.
func old() []project.Half {
	return []project.Half{{At: 0, Wide: 30, Line: "edge"}, {At: 60, Wide: 47.5, Line: "edge"}, {At: 110, Wide: 54.5, Line: "edge"}, {At: 150, Wide: 50, Line: "edge"}}
}

func newRig(t *testing.T, halves []project.Half, w, h int) *rig.Rig[*Model] {
	p := project.Defaults()
	p.Title, p.Earlier = "Bench knife", halves
	r := rig.New(t, p, w, h, func(func() time.Time) *Model { return New(ink.New(ink.Dark, ink.None)) })
	r.Plan = true
	r.Snap.Font = act.Font{Glyphs: canvas.Braille, Aspect: 2}
	return r.Show()
}

func TestGolden(t *testing.T) {
	newRig(t, nil, 78, 19).Golden(t, "empty_78x19")
	newRig(t, old(), 78, 19).Golden(t, "old_78x19")
	newRig(t, old(), 158, 40).Keys("down", "t").Golden(t, "taking_158x40")
	newRig(t, old(), 78, 19).Keys("8", "0", "enter").Golden(t, "typing_78x19")
	newRig(t, old(), 78, 19).Keys("v", "down", "down").Golden(t, "curve_78x19")
	newRig(t, old(), 158, 40).Golden(t, "curve_158x40")
}

func TestEverySize(t *testing.T) {
	rig.CheckSizes(t, newRig(t, old(), 78, 19).Pane, 170, 50)
	rig.CheckSizes(t, newRig(t, old(), 78, 19).Keys("t").Pane, 100, 40)
	rig.CheckSizes(t, newRig(t, nil, 78, 19).Pane, 100, 40)
	bare := newRig(t, nil, 78, 19)
	bare.Pane.SetSnapshot(act.Snapshot{Font: bare.Snap.Font})
	rig.CheckSizes(t, bare.Pane, 100, 40)
}

func TestKeys(t *testing.T) { rig.CheckKeys(t, newRig(t, old(), 78, 19).Pane) }

// A measuring tool types a place and a half-width, one reading each.
func TestTyped(t *testing.T) {
	for _, end := range [][]string{{"enter"}, {"ctrl+j"}, {"enter", "ctrl+j"}} {
		r := newRig(t, nil, 78, 19)
		r.Tool("100", 5*time.Millisecond, end...).Tool("52.5", 5*time.Millisecond, end...)
		r.Tool("120", 5*time.Millisecond, end...).Tool("50", 5*time.Millisecond, end...)
		want := []project.Half{{At: 100, Wide: 52.5, Line: "edge"}, {At: 120, Wide: 50, Line: "edge"}}
		if len(r.Project.Earlier) != 2 || r.Project.Earlier[0] != want[0] || r.Project.Earlier[1] != want[1] {
			t.Errorf("%v: %+v", end, r.Project.Earlier)
		}
	}
	r := newRig(t, old(), 78, 24)
	r.Keys("6", "0", "enter", "4", "9", "enter") // measured again
	if len(r.Project.Earlier) != 4 || r.Project.Earlier[3] != (project.Half{At: 60, Wide: 49, Line: "edge"}) {
		t.Errorf("measured again: %+v", r.Project.Earlier)
	}
	r.Keys("6", "0", "enter", "9", "9", "9", "9", "enter").Shows("will not do")
	r.Keys("esc", "5", "esc")
	if len(r.Project.Earlier) != 4 {
		t.Errorf("Esc kept it: %+v", r.Project.Earlier)
	}
	r.Keys("home", "l").Shows("the stitch line").Keys("x")
	if len(r.Project.Earlier) != 3 {
		t.Errorf("not taken out: %+v", r.Project.Earlier)
	}
}

func TestTakenOver(t *testing.T) {
	r := newRig(t, old(), 78, 24).Shows("the plan is", "4 mm short over the bolster, at 110")
	r.Keys("t").Shows("100 % from 0 to 150")
	if r.Pane.made == nil {
		t.Error("what would be taken over is not drawn")
	}
	r.Keys("enter")
	if len(r.Project.Fits) == 0 || r.Project.Fits[0].With != "finished" || r.Pane.made != nil {
		t.Fatalf("taken over: %+v", r.Project.Fits)
	}
	if r.Keys("t"); r.Pane.entry.Asked() { // from point to mouth nothing lies outside
		t.Errorf("%q", r.Pane.View())
	}
	r.Keys("esc", "t", "ctrl+u", "9", "9", " ", "%", " ", "f", "r", "o", "m", " ", "8", "0", " ", "t", "o", " ", "1", "1", "0").Shows("it runs out past 110", "nothing left by").Keys("esc")
	before := len(r.Project.Fits)
	r.Keys("t").Answer("50 % from 80 to 140")
	for _, f := range r.Project.Fits[before:] {
		if f.At < 80 || f.At > 140 {
			t.Errorf("%+v lies outside of 80 to 140", f)
		}
	}
	for _, bad := range []string{"", "half", "0", "0.5", "101", "1e2 5", "10050 % from 1 to 50", "100 % from 12.5 to 11450", "50 % from -1 to 50", "50 % from 60 to 60", "0 % from 1 to 50", "120 % from 1 to 50", "50 % from 60", "50 % from 60 to 20", "50 % from a to b", "50 % from 200 to 300"} {
		n := len(r.Project.Fits)
		if r.Keys("t").Answer(bad); len(r.Project.Fits) != n || r.Pane.entry == nil || r.Pane.entry.Err() == nil {
			t.Errorf("%q was taken", bad)
		}
		r.Keys("esc")
	}
	one := newRig(t, old()[:1], 78, 24).Keys("t")
	if len(one.Said) == 0 || one.Pane.entry != nil {
		t.Errorf("of one place: said %q", one.Said)
	}
}

// What is typed takes the place of what is offered, as in the other fields with a figure
// in them: 50 typed is half, not a 50 behind the offered stretch. Its figures are reached
// by the arrows.
func TestTypedTakesThePlaceOfTheOffer(t *testing.T) {
	r := newRig(t, old(), 78, 24).Keys("t", "5", "0", "enter")
	want := newRig(t, old(), 78, 24).Keys("t").Answer("50 % from 0 to 150").Project.Fits
	if len(want) == 0 || !slices.Equal(r.Project.Fits, want) {
		t.Fatalf("50 took over %+v, half of it is %+v", r.Project.Fits, want)
	}
	r = newRig(t, old(), 78, 24).Keys("t", "left", "left", "left", "8").Shows("100 % from 0 to 8150")
	r.Keys("enter").Shows("the fold runs from the point to the mouth: give places from 0 to 177")
	if len(r.Project.Fits) != 0 {
		t.Errorf("past the mouth: %+v", r.Project.Fits)
	}
	r.Keys("esc", "t").Answer("from 80 to 140")
	for _, f := range r.Project.Fits {
		if f.At < 80 || f.At > 140 {
			t.Errorf("%+v lies outside of 80 to 140", f)
		}
	}
	if len(r.Project.Fits) == 0 {
		t.Error("a stretch alone takes nothing over")
	}
}

// What has been read from a picture takes the place of what stands.
func TestRead(t *testing.T) {
	r := newRig(t, old(), 78, 24)
	r.Send(Halves{Halves: old()[1:3], From: "half-widths from a photograph"})
	if len(r.Project.Earlier) != 2 || len(r.Commits) != 1 {
		t.Errorf("read: %+v, done %q", r.Project.Earlier, r.Commits)
	}
}
