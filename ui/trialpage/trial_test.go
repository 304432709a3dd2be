package trialpage

import (
	"math"
	"strings"
	"testing"
	"time"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/ui/act"
	"chape/ui/canvas"
	"chape/ui/term/ink"
	"chape/ui/test/rig"
)

func knifeProject() project.Project {
	p := project.Defaults()
	p.Title, p.Revision = "Bench knife", 1
	return p
}

func newRig(t *testing.T, p project.Project, w, h int) *rig.Rig[*Model] {
	r := rig.New(t, p, w, h, func(func() time.Time) *Model { return New(ink.New(ink.Dark, ink.None), nil) })
	r.Plan = true
	r.Snap.Font = act.Font{Glyphs: canvas.Braille, Aspect: 2}
	r.Snap.Mark = 0
	return r.Show()
}

func TestGolden(t *testing.T) {
	withFits := knifeProject()
	withFits.Fits = []project.Fit{
		{Fit: calc.Fit{At: 122, By: 1.5, Reach: 20}, With: "paper", Note: "tight over the bolster"},
		{Fit: calc.Fit{At: 60, By: -1, Reach: 30}, With: "leather"},
	}
	for _, c := range []struct {
		name string
		p    project.Project
		w, h int
		keys []string
	}{
		{"empty_78x19", knifeProject(), 78, 19, nil},
		{"drafted_78x19", knifeProject(), 78, 19, []string{"2", "enter"}},
		{"kept_78x19", withFits, 78, 19, []string{"2", "enter", "end"}},
		{"drafted_158x40", withFits, 158, 40, []string{"right", "up", " ", "2", "enter"}},
		{"closer_158x40", withFits, 158, 40, []string{"2", "enter", "z", "z", "z"}},
		{"narrow_38x20", withFits, 38, 20, nil},
		{"refused_78x19", knifeProject(), 78, 19, []string{"7", "7", "enter"}},
	} {
		r := newRig(t, c.p, c.w, c.h)
		r.Keys(c.keys...)
		r.Golden(t, c.name)
	}
}

// Each word of a correction is to be read beside the draft at 80 columns.
func TestCorrectionsAreReadWhole(t *testing.T) {
	p := knifeProject()
	p.Fits = []project.Fit{{Fit: calc.Fit{At: 122, By: 1.5, Reach: 20}, With: "paper", Note: "tight over the bolster"}}
	for _, w := range []int{78, 98, 158} {
		r := newRig(t, p, w, 19)
		var beside []string
		for _, line := range strings.Split(r.Screen(), "\n") {
			if p := r.Pane.arrange(); len([]rune(line)) > p.kept.X {
				beside = append(beside, string([]rune(line)[p.kept.X:]))
			}
		}
		all := strings.Join(strings.Fields(strings.Join(beside, " ")), " ")
		if want := "1 +1.5 mm at 122, reach 20, in paper: counts as +3.95 mm: tight over the bolster"; !strings.Contains(all, want) {
			t.Errorf("%d columns: %q lacks %q", w, all, want)
		}
	}
}

// The cursor stands where a rule can show it, with the name of the landmark that it is on.
func TestPlacesAreARules(t *testing.T) {
	for _, c := range []struct {
		unit length.Unit
		at   length.Length
		says string
	}{
		{length.Millimetres, 104.28, "104.5 mm from the point: mark 2"},
		{length.Inches, 104.28, "4 7/64 in from the point: mark 2"},
	} {
		p := knifeProject()
		p.Units, p.Source = c.unit, project.FromStations
		end := p.Knife.Stations[len(p.Knife.Stations)-1]
		p.Knife.Stations[1].At = c.at
		p.Knife.Stations = append(p.Knife.Stations[:2:2], end)
		r := newRig(t, p, 78, 19)
		r.Snap.Mark = 1
		r.Show()
		r.Shows(c.says)
		if strings.Contains(r.Screen(), "104.28") || strings.Contains(r.Screen(), "4.1055") {
			t.Errorf("no rule shows that:\n%s", r.Screen())
		}
		r.Keys("left")
		r.Keys("right")
		r.Shows(c.says)
	}
}

func TestEverySize(t *testing.T) {
	p := knifeProject()
	p.Fits = []project.Fit{{Fit: calc.Fit{At: 60, By: 1, Reach: 20}, With: "paper"}}
	r := newRig(t, p, 78, 19)
	r.Keys("2", "enter")
	rig.CheckSizes(t, r.Pane, 170, 50)
	r.Keys("9")
	rig.CheckSizes(t, r.Pane, 100, 30)
	bare := newRig(t, project.Blank(), 78, 19)
	rig.CheckSizes(t, bare.Pane, 100, 30)
}

func TestKeys(t *testing.T) { rig.CheckKeys(t, newRig(t, knifeProject(), 78, 19).Pane) }

// Tight by 3 in all at the front of the handle is 1.5 added to each half there.
func TestInAll(t *testing.T) {
	r := newRig(t, knifeProject(), 78, 19)
	r.Keys("down", " ", "up", "3", "enter", "end", "enter")
	if len(r.Project.Fits) != 1 {
		t.Fatalf("corrections %v, said %q", r.Project.Fits, r.Said)
	}
	want := project.Fit{Fit: calc.Fit{At: 110, By: 1.5, Reach: 20}, With: "same thickness"}
	if got := r.Project.Fits[0]; got != want {
		t.Errorf("correction %+v, want %+v", got, want)
	}
	// The line that is drawn before it is kept is the one that stands after.
	if r.Pane.made.plan != nil {
		t.Error("a draft stands after it is kept")
	}
}

// What is drawn before it is kept is the pattern that stands after.
func TestDrawnIsKept(t *testing.T) {
	r := newRig(t, knifeProject(), 78, 19)
	r.Keys("up", " ", "1", "enter")
	drawn := r.Pane.made.plan
	if drawn == nil {
		t.Fatal("nothing drawn")
	}
	before := r.Snap.Plan.Flat.Stitch.Height(110)
	if d := drawn.Flat.Stitch.Height(110) - before; d >= 0 || d < -1.001 {
		t.Errorf("loose by 1 changes the half-width by %v", d)
	}
	r.Keys("end", "enter")
	if len(r.Project.Fits) != 1 || r.Project.Fits[0].By != -1 {
		t.Fatalf("corrections %v", r.Project.Fits)
	}
	for _, x := range []float64{60, 100, 110, 120, 140} {
		if got, want := r.Snap.Plan.Flat.Stitch.Height(x), drawn.Flat.Stitch.Height(x); math.Abs(got-want) > 1e-9 {
			t.Errorf("at %v the plan has %v, the drawing had %v", x, got, want)
		}
	}
}

// geometry.md: in paper a half hangs loose by (π/2)·k·(t − 0.1): 2.43 mm for leather of
// 3.2 mm and k = 0.5, so that tight by 0.5 in paper counts as +2.95 to 0.05 mm.
func TestPaperCounts(t *testing.T) {
	r := newRig(t, knifeProject(), 120, 30)
	r.Pane.draft.with = "paper"
	r.Keys("0", ".", "5", "enter").Shows("in paper: counts as +2.95 mm")
	r.Keys("end", "enter").Shows("1 +0.5 mm at 110, reach 20, in paper: counts as +2.95 mm")
}

func TestCursorSnaps(t *testing.T) {
	r := newRig(t, knifeProject(), 78, 19)
	r.Shows("110 mm from the point: bolster, front face")
	r.Keys("right").Shows("122 mm from the point: bolster, back face")
	r.Keys("L").Shows("123 mm from the point: between bolster, back face")
	r.Keys("left", "left", "left").Lacks("bolster, front face (")
	for range 30 {
		r.Keys("left")
	}
	r.Shows("0 mm from the point: point")
	for range 30 {
		r.Keys("right")
	}
	r.Shows("mouth")
	if at, mouth := r.Pane.draft.at, r.Project.Sheath.Mouth; math.Abs((at - mouth).MM()) > 0.01 {
		t.Errorf("at the end the cursor stands at %v, the mouth at %v", at, mouth)
	}
	r.Keys("L")
	if r.Pane.draft.at > r.Project.Sheath.Mouth {
		t.Error("the cursor is past the mouth")
	}
}

func TestEscDropsThenLeaves(t *testing.T) {
	r := newRig(t, knifeProject(), 78, 19)
	r.Keys("2", "enter", "esc")
	if r.Pane.draft.by != 0 || r.Last() == (act.Leave{}) {
		t.Errorf("the first Esc: %v", r.Last())
	}
	r.Keys("esc")
	if r.Last() != (act.Leave{}) || len(r.Commits) != 0 {
		t.Errorf("the second Esc: %v, done %v", r.Last(), r.Commits)
	}
	r.Keys("2", "esc", "esc")
	if r.Last() != (act.Leave{}) {
		t.Error("what was typed stands after Esc")
	}
}

func TestTakenUpAndOut(t *testing.T) {
	p := knifeProject()
	p.Fits = []project.Fit{{Fit: calc.Fit{At: 60, By: -1.25, Reach: 30}, With: "leather", Note: "loose"}, {Fit: calc.Fit{At: 90, By: 1, Reach: 20}, With: "paper"}}
	r := newRig(t, p, 78, 24)
	r.Keys("end", "up", "e", "2", "enter", "end", "enter")
	want := project.Fit{Fit: calc.Fit{At: 60, By: -2, Reach: 30}, With: "leather", Note: "loose"}
	if len(r.Project.Fits) != 2 || r.Project.Fits[0] != want {
		t.Errorf("corrections %+v", r.Project.Fits)
	}
	r.Keys("end", "x")
	if len(r.Project.Fits) != 1 || r.Project.Fits[0] != want {
		t.Errorf("after taking out %+v", r.Project.Fits)
	}
}

// A reading and its Enter fill the number in hand and keep nothing.
func TestReadings(t *testing.T) {
	for _, end := range [][]string{{"enter"}, {"ctrl+j"}, {"enter", "ctrl+j"}} {
		r := newRig(t, knifeProject(), 78, 19)
		r.Tool("1.25", 5*time.Millisecond, end...).Tool("35", 5*time.Millisecond, end...).Tool("12.70", 5*time.Millisecond, end...)
		if len(r.Commits) != 0 || r.Pane.draft.by != 1.25 || r.Pane.draft.reach != 35 {
			t.Errorf("%v: by %v, reach %v, done %v", end, r.Pane.draft.by, r.Pane.draft.reach, r.Commits)
		}
	}
}

func TestRefused(t *testing.T) {
	r := newRig(t, knifeProject(), 78, 19)
	r.Keys("7", "7", "enter").Shows("will not do")
	r.Keys("esc", "1", "2", "enter").Shows("is the point missing?")
	r.Keys("enter")
	if r.Pane.draft.by != 12 {
		t.Errorf("asked and meant: by %v", r.Pane.draft.by)
	}
	r.Keys("esc", "home", "9", "9", "9", "enter").Shows("give 0 to")
	r.Keys("esc", "home", "0", "enter", "-", "4", "5", "enter", "enter").Shows("leave nothing between fold and welt")
	r.Keys("end", "enter")
	if len(r.Project.Fits) != 0 {
		t.Error("what can't be planned was kept")
	}
}

func TestInches(t *testing.T) {
	p := knifeProject()
	p.Units = length.Inches
	r := newRig(t, p, 100, 30)
	if reach := r.Pane.draft.reach.In(); math.Abs(reach-0.75) > 1e-9 {
		t.Errorf("a reach of %v in is proposed, want 3/4", reach)
	}
	r.Type("1/16").Keys("enter", "end", "enter")
	if len(r.Project.Fits) != 1 || math.Abs(r.Project.Fits[0].By.MM()-25.4/16) > 1e-9 {
		t.Errorf("corrections %+v", r.Project.Fits)
	}
}

// By hand, for a knife whose marks are 60, 110 and 150 from the point: a correction 10 before
// its mouth stands 10 before this mouth, is drawn while it is in hand, and counts once kept.
func TestOffered(t *testing.T) {
	p := knifeProject()
	mouth := p.Sheath.Mouth
	p.Carried = []project.Carried{
		{Fit: project.Fit{Fit: calc.Fit{At: 150, By: 1.5, Reach: 20}, With: "leather"}, From: "from Heron", Deepest: 60, Front: 110, Mouth: 150},
		{Fit: project.Fit{Fit: calc.Fit{At: 0, By: -1, Reach: 20}, With: "leather"}, From: "from Heron", Deepest: 60, Front: 110, Mouth: 150},
	}
	r := newRig(t, p, 78, 24).Shows("from Heron: keep?")
	before := r.Snap.Plan.Body.MouthStitch
	r.Keys("end", "up").Shows("mouth", "Enter keeps it here")
	if r.Pane.made.plan == nil || math.Abs(r.Pane.made.plan.Body.MouthStitch-before-1.5) > 0.01 {
		t.Errorf("the offer in hand is not drawn")
	}
	r.Golden(t, "offered_78x24")
	if r.Snap.Plan.Body.MouthStitch != before {
		t.Error("an offer counts before it is kept")
	}
	r.Keys("enter")
	if len(r.Project.Fits) != 1 || r.Project.Fits[0].At != mouth || len(r.Project.Carried) != 1 {
		t.Errorf("kept: %+v, offered still %+v", r.Project.Fits, r.Project.Carried)
	}
	r.Keys("end", "x")
	if len(r.Project.Fits) != 1 || len(r.Project.Carried) != 0 {
		t.Errorf("let go: %+v, %+v", r.Project.Fits, r.Project.Carried)
	}
}
