package trialpage

import (
	"strings"
	"testing"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/ui/act"
)

// Enter goes from line to line, opens the note and keeps at the end, once.
func TestEnterGoesLineByLine(t *testing.T) {
	r := newRig(t, knifeProject(), 78, 24)
	r.Keys("home")
	for line := lineAt; line < lineNote; line++ {
		if r.Pane.list.At != line {
			t.Fatalf("Enter goes to line %d, want %d", r.Pane.list.At, line)
		}
		if line == lineBy {
			r.Keys("1")
		}
		r.Keys("enter")
	}
	r.Keys("enter", "w", "e", "t", "enter", "enter")
	if len(r.Project.Fits) != 1 || r.Project.Fits[0].Note != "wet" || r.Project.Fits[0].By != 1 {
		t.Errorf("kept %+v, said %q", r.Project.Fits, r.Said)
	}
}

// What is drawn and not kept stays until it is kept or Esc drops it: End leads to what keeps
// it, and another correction is not taken up over it.
func TestUnkeptStays(t *testing.T) {
	p := knifeProject()
	p.Fits = []project.Fit{{Fit: calc.Fit{At: 60, By: 1, Reach: 20}, With: "leather"}}
	r := newRig(t, p, 78, 24)
	r.Keys("home", "4", "0", "enter", " ", "0", ".", "5", "enter", "end")
	if r.Pane.list.At != lineKeep {
		t.Errorf("End leads to line %d", r.Pane.list.At)
	}
	for _, again := range []string{"enter", "e", "enter"} {
		r.Keys("end", again)
		if d := r.Pane.draft; d.at != 40 || d.by != 0.5 || !d.loose || d.instead >= 0 {
			t.Fatalf("%s: the draft is %+v", again, d)
		}
		if want := "first the one you drew, -0.5 mm at 40: ↑ leads to what keeps it, Esc drops it"; r.Said[len(r.Said)-1] != want {
			t.Errorf("%s: said %q", again, r.Said)
		}
	}
	r.Keys("up", "enter")
	if len(r.Project.Fits) != 2 || r.Project.Fits[1].At != 40 || r.Project.Fits[1].By != -0.5 {
		t.Fatalf("kept %+v", r.Project.Fits)
	}
	r.Keys("end", "e")
	if r.Pane.draft.instead != 1 {
		t.Errorf("once kept it can't be taken up: %q", r.Said)
	}
}

// A key held down takes one only, be it an offer or a correction.
func TestOneAtATime(t *testing.T) {
	for _, key := range []string{"x", "e", "enter", " "} {
		p := knifeProject()
		p.Fits = []project.Fit{{Fit: calc.Fit{At: 60, By: 1, Reach: 20}, With: "leather"}}
		for i := range 3 {
			p.Carried = append(p.Carried, project.Carried{Fit: project.Fit{Fit: calc.Fit{At: 150, By: length.Length(1 + i), Reach: 20}, With: "leather"}, From: "from Heron", Deepest: 60, Front: 110, Mouth: 150})
		}
		r := newRig(t, p, 78, 24)
		r.Keys("end", key, key, key, key, key)
		if n := len(r.Project.Carried); n != 2 {
			t.Errorf("%q held leaves %d offers, said %q", key, n, r.Said)
		}
		r.Keys("up", key)
		if n := len(r.Project.Carried); n != 1 {
			t.Errorf("%q after another key leaves %d offers", key, n)
		}
	}
	p := knifeProject()
	for i := range 3 {
		p.Fits = append(p.Fits, project.Fit{Fit: calc.Fit{At: 60, By: length.Length(1 + i), Reach: 20}, With: "leather"})
	}
	r := newRig(t, p, 78, 24)
	if r.Keys("end", "x", "x", "x"); len(r.Project.Fits) != 2 {
		t.Errorf("x held leaves %d corrections", len(r.Project.Fits))
	}
}

// On the note letters begin it, whatever they are commands for elsewhere; Esc brings back
// what stood there.
func TestLettersBeginTheNote(t *testing.T) {
	for _, note := range []string{"slight rub", "bolster", "extra tight", "mouth", "Hard to draw", "zip"} {
		r := newRig(t, knifeProject(), 78, 24)
		r.Keys("1", "enter")
		for r.Pane.list.At != lineNote {
			r.Keys("down")
		}
		if !act.Writing(r.Pane) {
			t.Fatal("the root's keys are alive on the note")
		}
		r.Type(note).Keys("enter", "enter")
		if len(r.Project.Fits) != 1 || r.Project.Fits[0].Note != note {
			t.Errorf("%q: kept %+v, said %q", note, r.Project.Fits, r.Said)
		}
	}
	r := newRig(t, knifeProject(), 78, 24)
	r.Pane.draft.note = "wet"
	r.Pane.list.Choose(lineNote)
	if r.Type("xe").Keys("esc"); r.Pane.draft.note != "wet" || act.Typing(r.Pane) {
		t.Errorf("after Esc the note is %q", r.Pane.draft.note)
	}
	if r.Keys("3"); r.Pane.entry != nil || len(r.Said) == 0 || !strings.Contains(r.Said[len(r.Said)-1], "Enter opens the note") {
		t.Errorf("a figure on the note: said %q", r.Said)
	}
	if r.Keys("up"); act.Writing(r.Pane) {
		t.Error("letters are no commands above the note")
	}
}

// Once a correction is kept the next number is the next one's place, and a reach of a
// tenth of what it was, or ten times that, is asked about.
func TestAfterOneTheNext(t *testing.T) {
	r := newRig(t, knifeProject(), 78, 24)
	if r.Keys("1", "enter", "end", "enter"); r.Pane.list.At != lineAt {
		t.Errorf("once kept the cursor stands on line %d", r.Pane.list.At)
	}
	for _, c := range []struct {
		typed string
		asks  string
	}{{"1.5", "is it the reach that you mean?"}, {"2", "is it the reach that you mean?"}, {"2.5", ""}, {"35", ""}, {"200", "is the point missing?"}} {
		r := newRig(t, knifeProject(), 78, 24)
		r.Pane.list.Choose(lineReach)
		r.Type(c.typed).Keys("enter")
		if asked := r.Pane.entry != nil && r.Pane.entry.Asked(); asked != (c.asks != "") {
			t.Errorf("%s: asked %v", c.typed, asked)
		}
		if c.asks == "" {
			continue
		}
		if r.Shows(c.asks); r.Pane.draft.reach != 20 {
			t.Errorf("%s: unasked the reach is %v", c.typed, r.Pane.draft.reach)
		}
		r.Keys("enter").Lacks(c.asks)
		if got := r.Pane.draft.reach.Short(length.Millimetres); got != c.typed {
			t.Errorf("%s: asked and meant: the reach is %s", c.typed, got)
		}
	}
}
