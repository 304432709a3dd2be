package stepspane

import (
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"chape/project"
	"chape/project/steps"
	"chape/ui/act"
	"chape/ui/part"
	"chape/ui/term/ink"
	"chape/ui/test/rig"
)

var noon = rig.Noon

func newRig(t *testing.T, p project.Project, w, h int) *rig.Rig[*Model] {
	return rig.New(t, p, w, h, func(now func() time.Time) *Model { return New(now, ink.New(ink.Dark, ink.None)) })
}

func choose(r *rig.Rig[*Model], i int) {
	r.Pane.list.At = i
	r.Pane.scroll()
}

// sheath is an example whose first steps are done.
func sheath(done int) project.Project {
	p := project.Project{Title: "Example skinner", Steps: steps.FormThenSew(steps.Whole)}
	for i := range done {
		p.Steps[i].Done = noon.Add(time.Duration(i-done) * time.Hour)
	}
	return p
}

func TestKeysDo(t *testing.T) {
	r := newRig(t, sheath(11), 60, 30) // in hand: the fold, held 2 h
	step := func() steps.Step { return r.Project.Steps[11] }
	if r.Pane.Chosen() != 11 {
		t.Fatalf("chosen %d, want the step in hand", r.Pane.Chosen())
	}
	r.Keys("t")
	if step().Started.IsZero() {
		t.Fatal("t did not start the hold")
	}
	r.Keys(" ")
	if len(r.Said) != 1 || r.Said[0] != "not before 14:00" || !step().Done.IsZero() {
		t.Errorf("space while the hold runs: said %q", r.Said)
	}
	r.Keys("l").Answer("30")
	if step().Hold != 150*time.Minute {
		t.Errorf("put off to %v", step().Hold)
	}
	r.Keys("e", "x")
	if !step().Ended.IsZero() || act.Typing(r.Pane) {
		t.Error("e and another key than enter ended the hold, or it still asks")
	}
	r.Keys("e", "enter")
	if step().Ended.IsZero() {
		t.Error("e, enter did not end the hold")
	}
	r.Keys(" ")
	if step().Done.IsZero() {
		t.Error("space did not tick")
	}
	r.Keys(" ")
	if !step().Done.IsZero() {
		t.Error("space did not take the tick back")
	}
	r.Keys("s")
	if !step().Skipped {
		t.Error("s did not skip")
	}
	r.Keys("s", "i").Answer("tight at the bolster")
	r.Keys("m").Answer("1 h 20 min")
	r.Keys("d").Answer("3-4 h")
	if s := step(); s.Skipped || s.Note != "tight at the bolster" || s.Spent != 80*time.Minute || s.Hold != 3*time.Hour || s.Latest != 4*time.Hour {
		t.Errorf("after s, n, m, d: %+v", s)
	}
	r.Keys("m").Answer("95")
	if step().Spent != 95*time.Minute {
		t.Errorf("95 without a unit gave %v", step().Spent)
	}
}

func TestListKeys(t *testing.T) {
	p := project.Project{Steps: []steps.Step{{Title: "Alpha"}, {Title: "Beta"}, {Title: "Gamma"}}}
	r := newRig(t, p, 60, 30)
	order := func() string {
		var names []string
		for _, s := range r.Project.Steps {
			names = append(names, s.ShortName())
		}
		return strings.Join(names, " ")
	}
	r.Keys("a").Answer("Delta")
	if order() != "ALPHA DELTA BETA GAMMA" || r.Pane.Chosen() != 1 {
		t.Errorf("a: %s, chosen %d", order(), r.Pane.Chosen())
	}
	r.Keys("J", "J", "J")
	if order() != "ALPHA BETA GAMMA DELTA" || r.Pane.Chosen() != 3 {
		t.Errorf("J: %s, chosen %d", order(), r.Pane.Chosen())
	}
	r.Keys("shift+up")
	if order() != "ALPHA BETA DELTA GAMMA" || r.Pane.Chosen() != 2 {
		t.Errorf("shift+up: %s, chosen %d", order(), r.Pane.Chosen())
	}
	r.Keys("r").Answer("Epsilon").Answer("EPS")
	if order() != "ALPHA BETA EPS GAMMA" || r.Project.Steps[2].Title != "Epsilon" {
		t.Errorf("r: %s", order())
	}
	r.Keys("r").Answer("Zeta").Answer("a  b")
	if !act.Typing(r.Pane) || r.Project.Steps[2].Title != "Epsilon" || !strings.Contains(r.Pane.View(), "! short name") {
		t.Errorf("a short name that will not do was taken:\n%s", r.Pane.View())
	}
	r.Keys("esc", "end", "x", "esc", "x", "enter")
	if order() != "ALPHA BETA EPS" || r.Pane.Chosen() != 2 {
		t.Errorf("x: %s, chosen %d", order(), r.Pane.Chosen())
	}
	for range 3 {
		r.Keys("x", "enter")
	}
	if len(r.Project.Steps) != 0 || r.Pane.Chosen() != -1 {
		t.Errorf("removed all: %s", order())
	}
	r.Keys(" ", "x", "s", "up", "end", "a").Answer("First")
	if order() != "FIRST" {
		t.Errorf("a in an empty list: %s", order())
	}
}

// What is only looked at is not changed: times are shown rounded.
func TestNothingTyped(t *testing.T) {
	p := sheath(8)
	p.Steps[8].Hold, p.Steps[8].Spent, p.Steps[8].Note = 2*time.Hour+7*time.Second, 61*time.Second, "so"
	r := newRig(t, p, 60, 30)
	before := slices.Clone(r.Project.Steps)
	r.Keys("d", "enter", "m", "enter", "i", "enter", "r", "esc", "a", "esc")
	if !reflect.DeepEqual(before, r.Project.Steps) || len(r.Commits) > 0 {
		t.Errorf("changed by %q", r.Commits)
	}
}

// A calliper's reading does nothing, in the list and in every question, whether it comes
// in one piece or character by character.
func TestReadings(t *testing.T) {
	for _, reading := range []string{"12.34", "+012.34 mm", "-0.125 in", "0.1250"} {
		for _, key := range []string{"", "l", "d", "m", "i", "r", "a", "e", "x", "t"} {
			for _, pace := range []time.Duration{time.Millisecond, 80 * time.Millisecond, 150 * time.Millisecond} {
				r := newRig(t, sheath(9), 60, 30)
				r.Project.Steps[9].Started, r.Project.Steps[9].Ended = noon, time.Time{}
				r.Show()
				before := slices.Clone(r.Project.Steps)
				if key != "" {
					r.Keys(key)
				}
				r.Tool(reading, pace, "enter", "ctrl+j")
				if !reflect.DeepEqual(before, r.Project.Steps) {
					t.Errorf("%q after %q, at %v, did %q", reading, key, pace, r.Commits)
				}
			}
		}
	}
	r := newRig(t, sheath(9), 60, 30)
	r.Tool("0.1250 xedst", 8*time.Millisecond, "enter")
	if len(r.Commits) > 0 || act.Typing(r.Pane) {
		t.Errorf("letters within a reading did %q", r.Commits)
	}
}

// The list may change while a question stands: then nothing is done to the wrong step.
func TestChangedMeanwhile(t *testing.T) {
	r := newRig(t, sheath(3), 60, 30)
	r.Keys("i")
	r.Type("yy").Wait(time.Second)
	_, out := r.Pane.Update(part.Press{KeyMsg: rig.Key("enter")})
	other := sheath(3)
	other.Steps = other.Steps[2:]
	if err := out[0].(act.Commit).Do(&other); err == nil {
		t.Error("a note went to another step")
	}
}

func TestMouse(t *testing.T) {
	r := newRig(t, sheath(0), 60, 30)
	click := func(y int) {
		r.Send(tea.MouseMsg{X: 5, Y: y, Action: tea.MouseActionPress, Button: tea.MouseButtonLeft})
	}
	click(2)
	if r.Pane.Chosen() != 2 {
		t.Errorf("a click on the third row chose %d", r.Pane.Chosen())
	}
	click(29)
	r.Send(tea.MouseMsg{X: 5, Y: 1, Action: tea.MouseActionRelease, Button: tea.MouseButtonLeft})
	if r.Pane.Chosen() != 2 {
		t.Errorf("a click on the caution, or a release, chose %d", r.Pane.Chosen())
	}
	for range 100 {
		r.Send(tea.MouseMsg{X: 5, Y: 1, Action: tea.MouseActionPress, Button: tea.MouseButtonWheelDown})
	}
	if r.Pane.Chosen() != 36 || !strings.Contains(r.Pane.View(), "Write the care card") {
		t.Errorf("the wheel went to %d:\n%s", r.Pane.Chosen(), r.Pane.View())
	}
	click(0)
	if r.Pane.Chosen() != r.Pane.list.Top {
		t.Errorf("a click on the first row chose %d, want %d", r.Pane.Chosen(), r.Pane.list.Top)
	}
	if len(r.Commits) > 0 {
		t.Errorf("the mouse changed something: %q", r.Commits)
	}
}

func TestKeyTable(t *testing.T) {
	rig.CheckKeys(t, newRig(t, sheath(0), 60, 30).Pane)
}

func TestSizes(t *testing.T) {
	r := newRig(t, sheath(12), 60, 30)
	rig.CheckSizes(t, r.Pane, 90, 40)
	r.Keys("d")
	rig.CheckSizes(t, r.Pane, 90, 40)
}

// Whatever is pressed, nothing is wider or higher than the pane and nothing panics.
func TestRandomKeysAndSizes(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 4))
	names := []string{"up", "down", "pgup", "pgdown", "home", "end", " ", "s", "t", "e", "l", "d", "a", "r", "x", "K", "J", "i", "m", "c",
		"enter", "esc", "ctrl+j", "q", "7", "刀", "backspace", "left", "tab", "ctrl+v", "ctrl+k"}
	r := newRig(t, sheath(5), 60, 30)
	for i := range 6_000 {
		if rnd.IntN(20) == 0 {
			r.Pane.SetSize(rnd.IntN(90), rnd.IntN(40))
		}
		r.Wait(time.Duration(rnd.IntN(2000)) * time.Millisecond)
		r.Send(rig.Key(names[rnd.IntN(len(names))]))
		lines := strings.Split(r.Pane.View(), "\n")
		if len(lines) > max(r.Pane.h, 1) {
			t.Fatalf("event %d: %d lines, height %d", i, len(lines), r.Pane.h)
		}
		for _, l := range lines {
			if ansi.StringWidth(l) > r.Pane.w {
				t.Fatalf("event %d: %d wide in %d: %q", i, ansi.StringWidth(l), r.Pane.w, l)
			}
		}
	}
	if len(r.Commits) < 150 {
		t.Errorf("only %d changes", len(r.Commits))
	}
}
