package tracepage

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"chape/calc/knife"
	"chape/calc/length"
	"chape/project"
	"chape/ui/act"
	"chape/ui/canvas"
	"chape/ui/test/photo"
	"chape/ui/test/rig"
)

func TestGoldens(t *testing.T) {
	for _, size := range []struct {
		name string
		w, h int
	}{{"78x20", 78, 20}, {"158x41", 158, 41}} {
		check := func(what string, r *rig.Rig[*Model]) {
			t.Helper()
			r.Golden(t, what+"_"+size.name)
		}
		r := newRig(t, project.Defaults(), size.w, size.h)
		check("choosing", r)
		check("refused", drop(r, "open.jpg"))
		check("looking", drop(r, "IMG_1.jpg").Keys("right", "right", "right", "right", "right"))
		check("measuring", r.Keys("enter", "down", "down"))
		check("typing", r.Keys("3", "0", "0", "enter"))
	}
	r := newRig(t, project.Defaults(), 78, 20)
	r.Snap.Font.Glyphs = canvas.ASCII
	drop(r.Show(), "IMG_1.jpg").Golden(t, "looking_ascii")
}

func TestSizesAndKeys(t *testing.T) {
	r := newRig(t, project.Defaults(), 78, 20)
	steps := [][]string{nil, {"/"}, {"esc"}, nil, {"enter"}, {"1"}}
	for i, keys := range steps {
		if i == 3 {
			drop(r, "IMG_1.jpg")
		}
		r.Keys(keys...)
		rig.CheckSizes(t, r.Pane, 130, 44)
		rig.CheckKeys(t, r.Pane)
	}
}

// Nothing is taken before it was seen; Enter is one change, and the file has the picture's
// name, how true it was read, and the day.
func TestTaken(t *testing.T) {
	r := newRig(t, project.Defaults(), 78, 20)
	drop(r, "IMG_1.jpg")
	if len(r.Commits) != 0 {
		t.Fatalf("taken before it was seen: %q", r.Commits)
	}
	r.Shows("read to about 0.1 mm; sheet flat; one gap of 1.2 mm bridged")
	r.Shows("steps at 95 mm, 109 mm")
	r.Shows("length 232 mm to 200 mm")
	r.Keys("enter")
	if len(r.Commits) != 1 || r.Commits[0] != "marks from IMG_1.jpg" {
		t.Fatalf("commits %q", r.Commits)
	}
	p := r.Project
	want := project.Tracing{Picture: "IMG_1.jpg", Residual: 0.052, Read: time.Date(2026, 11, 26, 0, 0, 0, 0, time.UTC)}
	if got := p.Tracing; got.Picture != want.Picture || got.Residual != want.Residual || !got.Read.Equal(want.Read) {
		t.Errorf("noted %+v", got)
	}
	prof, err := knife.NewProfile(photo.Knife)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range p.Knife.Stations { // the marks are the knife's that was traced
		best := math.Inf(1)
		for _, c := range prof.Sections(nil, min(s.At.MM(), 200)) {
			best = min(best, math.Abs(c.Bottom-c.Top-s.Depth().MM()))
		}
		if best > 0.3 && s.At > 1 {
			t.Errorf("at %v the depth is %v, %v off", s.At, s.Depth(), best)
		}
	}
}

// A picture read to two hundredths is not said to be true to nothing.
func TestSaysHowTrueTheMarksAre(t *testing.T) {
	p := project.Defaults()
	p.Tracing = project.Tracing{Picture: "IMG_1.jpg", Residual: 0.02, Read: time.Date(2026, 11, 26, 0, 0, 0, 0, time.UTC)}
	newRig(t, p, 158, 41).Shows("read from IMG_1.jpg on 26 November 2026, to about 0.1 mm.")
}

func TestLeftAsItWas(t *testing.T) {
	r := newRig(t, project.Defaults(), 78, 20)
	drop(r, "IMG_1.jpg").Keys("e", "b", "]", "esc")
	if _, gone := r.Last().(act.Leave); gone || !strings.HasPrefix(r.Said[len(r.Said)-1], "nothing is taken yet: Enter takes these marks, Esc again") {
		t.Errorf("work is dropped unasked, said %q", r.Said)
	}
	r.Keys("right", "esc") // not the same key again
	if _, gone := r.Last().(act.Leave); gone {
		t.Error("dropped by an earlier Esc")
	}
	r.Keys("esc")
	if len(r.Commits) != 0 {
		t.Errorf("Esc leaves %q", r.Commits)
	}
	if _, ok := r.Sent[len(r.Sent)-1].(act.Leave); !ok {
		t.Errorf("Esc sends %v", r.Sent[len(r.Sent)-1])
	}
	if len(r.Project.Knife.Stations) != len(project.Defaults().Knife.Stations) {
		t.Error("the marks have changed")
	}
}

// A picture that was only looked at is left at once.
func TestLeftUntouched(t *testing.T) {
	r := newRig(t, project.Defaults(), 78, 20)
	drop(r, "IMG_1.jpg").Keys("right", "esc")
	if _, gone := r.Last().(act.Leave); !gone {
		t.Errorf("Esc sends %v", r.Last())
	}
}

func TestRefused(t *testing.T) {
	r := newRig(t, project.Defaults(), 78, 20)
	drop(r, "bad.jpg")
	r.Shows("! bad.jpg: no tracing sheet is in the picture: photograph the whole sheet")
	if len(r.Commits) != 0 || r.Pane.state != choosing {
		t.Errorf("commits %q, state %v", r.Commits, r.Pane.state)
	}
	drop(r, "open.jpg").Shows("here")
	drop(r, "IMG_1.jpg").Shows("read to about")
	drop(r, "bad.jpg").Shows("! bad.jpg") // another picture, while one is looked at
}

// Turned over both ways, and back: the marks are those of the knife as it lies then.
func TestTurnedOver(t *testing.T) {
	r := newRig(t, project.Defaults(), 78, 20)
	drop(r, "IMG_1.jpg")
	was := r.Pane.reading.Knife
	r.Keys("e")
	k := r.Pane.reading.Knife
	if !k.Turns.Ends || math.Abs(k.Length()-was.Length()) > 1 || k.Marks[0].Depth < 5 {
		t.Errorf("ends turned: %+v, first mark %v", k.Turns, k.Marks[0])
	}
	r.Keys("b")
	if k := r.Pane.reading.Knife; !k.Turns.Ends || !k.Turns.Back {
		t.Errorf("back turned: %+v", k.Turns)
	}
	r.Keys("e", "b")
	if k := r.Pane.reading.Knife; !slices.Equal(k.Marks, was.Marks) {
		t.Errorf("turned back: %v, was %v", k.Marks, was.Marks)
	}
}

func TestStepMoved(t *testing.T) {
	r := newRig(t, project.Defaults(), 78, 20)
	drop(r, "IMG_1.jpg")
	for range 60 {
		if _, ok := r.Pane.step(); ok {
			break
		}
		r.Keys("right")
	}
	r.Shows("step 1 of 2, 95 mm from the point")
	r.Keys("]", "]", "}")
	r.Shows("step 1 of 2, 96.1 mm from the point")
	r.Keys("[", "{")
	if got := r.Pane.reading.Knife.Steps; math.Abs(got[0]-95.5) > 1e-9 || len(got) != 2 {
		t.Errorf("steps %v", got)
	}
	r.Keys("x")
	if got := r.Pane.reading.Knife.Steps; len(got) != 1 || got[0] != 109 {
		t.Errorf("without the first step: %v", got)
	}
	n := len(r.Pane.reading.Knife.Marks)
	r.Keys("home", "left", "a")
	if got := len(r.Pane.reading.Knife.Marks); got != n+1 {
		t.Errorf("%d marks after one was added to %d", got, n)
	}
	r.Keys("x")
	if got := len(r.Pane.reading.Knife.Marks); got != n {
		t.Errorf("%d marks after it was taken out again, of %d", got, n)
	}
	for range 60 {
		r.Keys("left")
	}
	r.Keys("x", "j")
	if len(r.Said) != 2 {
		t.Errorf("the first mark: said %q", r.Said)
	}
	r.Keys("right", "right", "j")
	if got := r.Pane.reading.Knife.Steps; len(got) != 2 {
		t.Errorf("a step made: %v", got)
	}
}

// The calliper's readings and nothing else: every thickness that is missing is asked, once.
func TestCalliper(t *testing.T) {
	r := newRig(t, project.Defaults(), 78, 20)
	drop(r, "IMG_1.jpg").Keys("enter")
	n := len(r.Project.Knife.Stations)
	if got := r.Project.Unmeasured(); len(got) != n {
		t.Fatalf("left %v of %d", got, n)
	}
	for i := range n {
		r.Tool([]string{"2.50", "3.10", "4.05"}[i%3], 5*time.Millisecond, "enter", "ctrl+j")
	}
	if got := r.Project.Unmeasured(); len(got) != 0 {
		t.Errorf("left %v", got)
	}
	for i, s := range r.Project.Knife.Stations {
		if want := []length.Length{2.5, 3.1, 4.05}[i%3]; s.Thick != want {
			t.Errorf("mark %d is %v thick, want %v", i+1, s.Thick, want)
		}
	}
	r.Shows("All thicknesses are measured")
	r.Tool("7.77", 5*time.Millisecond, "enter")
	if len(r.Commits) != n+1 {
		t.Errorf("%d commits", len(r.Commits))
	}
}

// What was left comes first when the page is opened again, with the grind heights where the
// blade's grind is not full.
func TestLeftForLater(t *testing.T) {
	p := project.Defaults()
	p.Outline.Grind = 12
	if err := p.FillMarks(); err != nil {
		t.Fatal(err)
	}
	r := newRig(t, p, 78, 20)
	drop(r, "IMG_1.jpg").Keys("enter", "enter", "1", "5", "enter")
	r.Send(act.InHand{}).Send(act.InHand{Is: true})
	left := r.Project.Unmeasured()
	if left[0] != 2 {
		t.Fatalf("left %v", left)
	}
	at := r.Project.Knife.Stations[2].At.Format(length.Millimetres, length.Ruler)
	r.Shows("thickness at " + at)
	r.Keys("2", ".", "9", "enter")
	r.Shows("grind height at " + at)
	r.Keys("1", "1", "enter")
	if s := r.Project.Knife.Stations[2]; s.Thick != 2.9 || math.Abs(s.Bevel*s.Depth().MM()-11) > 0.1 {
		t.Errorf("mark 3: %+v", s)
	}
	r.Keys("g", "right", "left")
	if c := r.Pane.cell; r.Pane.grinds || c.key != thick || slices.ContainsFunc(r.Pane.cells(), func(c cell) bool { return c.key == grind }) {
		t.Errorf("after g: %+v of %+v", c, r.Pane.cells())
	}
}

// A figure far from what stood there is asked about; one that will not do is refused.
func TestDoubted(t *testing.T) {
	r := newRig(t, project.Defaults(), 78, 20)
	drop(r, "IMG_1.jpg").Keys("enter", "right", "right")
	done := len(r.Commits)
	r.Keys("0", ".", "1", "enter")
	r.Shows("is the calliper in inches")
	if len(r.Commits) != done {
		t.Fatalf("kept at once: %q", r.Commits)
	}
	r.Keys("esc", "9", "9", "9", "9", "enter")
	r.Shows("! ")
	r.Keys("esc", "3", "enter")
	if len(r.Commits) != done+1 {
		t.Errorf("commits %q", r.Commits)
	}
}

// The project may change under the page: what is in hand stays one that there is.
func TestChangedBelow(t *testing.T) {
	r := newRig(t, project.Defaults(), 78, 20)
	drop(r, "IMG_1.jpg").Keys("enter", "right", "right", "right")
	r.Project = project.Defaults()
	r.Show()
	r.Shows("All thicknesses are measured")
	r.Keys("3", "enter")
	rig.CheckSizes(t, r.Pane, 90, 30)
}

// Whatever is pressed, what is shown has its size, and nothing is taken but by Enter.
func TestAnyKeys(t *testing.T) {
	r := newRig(t, project.Defaults(), 78, 20)
	drop(r, "IMG_1.jpg")
	rnd := rand.New(rand.NewPCG(1, 2))
	keys := []string{"right", "left", "right", "left", "]", "[", "}", "{", "a", "j", "x", "x", "up", "down", "P", "1", "z", " "}
	for range 250 {
		r.Keys(keys[rnd.IntN(len(keys))])
		if n := len(r.Pane.reading.Knife.Marks); r.Pane.at >= n || n < 2 {
			t.Fatalf("mark %d of %d", r.Pane.at, n)
		}
		r.Pane.View()
	}
	rig.CheckSizes(t, r.Pane, 80, 24)
	if len(r.Commits) != 0 {
		t.Errorf("taken: %q", r.Commits)
	}
	r.Keys("enter")
	if len(r.Commits) != 1 || r.Pane.state != measuring {
		t.Errorf("after Enter: %q, state %v", r.Commits, r.Pane.state)
	}
}
