package stepspane

import (
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"chape/project"
	"chape/project/steps"
	"chape/ui/act"
	"chape/ui/term/ink"
)

var noon = time.Date(2026, 11, 26, 12, 0, 0, 0, time.UTC) // a Thursday

// rig is the pane with a root of the least kind and a clock of its own.
type rig struct {
	m       Model
	p       project.Project
	now     *time.Time
	commits []string
	said    []string
}

func newRig(p project.Project, w, h int) *rig {
	now := noon
	r := &rig{p: p, now: &now}
	r.m = New(func() time.Time { return *r.now }, ink.New(ink.Dark, ink.None))
	r.m.SetSize(w, h)
	r.m.SetFocus(true)
	r.show()
	return r
}

func (r *rig) show() { r.m.SetSnapshot(act.Snapshot{Project: r.p, Now: *r.now}) }

func (r *rig) wait(d time.Duration) *rig {
	*r.now = r.now.Add(d)
	r.show()
	return r
}

func (r *rig) send(msg tea.Msg) *rig {
	m, cmd := r.m.Update(msg)
	r.m = m
	if cmd == nil {
		return r
	}
	switch msg := cmd().(type) {
	case act.Commit:
		if err := msg.Do(&r.p); err != nil {
			r.said = append(r.said, err.Error())
		}
		r.commits = append(r.commits, msg.Label)
		r.show()
	case act.Say:
		r.said = append(r.said, msg.Text)
	}
	return r
}

// keys presses keys by name, by hand: with time between them.
func (r *rig) keys(names ...string) *rig {
	for _, name := range names {
		r.wait(300 * time.Millisecond).send(keyMsg(name))
	}
	return r
}

// text types by hand, after emptying the input.
func (r *rig) text(s string) *rig {
	r.keys("ctrl+u")
	for _, c := range s {
		r.keys(string(c))
	}
	return r.keys("enter")
}

func keyMsg(name string) tea.KeyMsg {
	for kind := tea.KeyType(-120); kind < 128; kind++ {
		if kind != tea.KeyRunes && kind != tea.KeySpace && kind.String() == name {
			return tea.KeyMsg{Type: kind}
		}
	}
	if name == " " {
		return tea.KeyMsg{Type: tea.KeySpace, Runes: []rune{' '}}
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(name)}
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
	r := newRig(sheath(11), 60, 30) // in hand: the fold, held 2 h
	step := func() steps.Step { return r.p.Steps[11] }
	if r.m.Chosen() != 11 {
		t.Fatalf("chosen %d, want the step in hand", r.m.Chosen())
	}
	r.keys("t")
	if step().Started.IsZero() {
		t.Fatal("t did not start the hold")
	}
	r.keys(" ")
	if len(r.said) != 1 || r.said[0] != "not before 14:00" || !step().Done.IsZero() {
		t.Errorf("space while the hold runs: said %q", r.said)
	}
	r.keys("l").text("30")
	if step().Hold != 150*time.Minute {
		t.Errorf("put off to %v", step().Hold)
	}
	r.keys("e", "x")
	if !step().Ended.IsZero() || r.m.Typing() {
		t.Error("e and another key than enter ended the hold, or it still asks")
	}
	r.keys("e", "enter")
	if step().Ended.IsZero() {
		t.Error("e, enter did not end the hold")
	}
	r.keys(" ")
	if step().Done.IsZero() {
		t.Error("space did not tick")
	}
	r.keys(" ")
	if !step().Done.IsZero() {
		t.Error("space did not take the tick back")
	}
	r.keys("s")
	if !step().Skipped {
		t.Error("s did not skip")
	}
	r.keys("s", "n").text("tight at the bolster")
	r.keys("m").text("1 h 20 min")
	r.keys("d").text("3-4 h")
	if s := step(); s.Skipped || s.Note != "tight at the bolster" || s.Spent != 80*time.Minute || s.Hold != 3*time.Hour || s.Latest != 4*time.Hour {
		t.Errorf("after s, n, m, d: %+v", s)
	}
	r.keys("m").text("95")
	if step().Spent != 95*time.Minute {
		t.Errorf("95 without a unit gave %v", step().Spent)
	}
}

func TestListKeys(t *testing.T) {
	p := project.Project{Steps: []steps.Step{{Title: "Alpha"}, {Title: "Beta"}, {Title: "Gamma"}}}
	r := newRig(p, 60, 30)
	order := func() string {
		var names []string
		for _, s := range r.p.Steps {
			names = append(names, s.ShortName())
		}
		return strings.Join(names, " ")
	}
	r.keys("a").text("Delta")
	if order() != "ALPHA DELTA BETA GAMMA" || r.m.Chosen() != 1 {
		t.Errorf("a: %s, chosen %d", order(), r.m.Chosen())
	}
	r.keys("J", "J", "J")
	if order() != "ALPHA BETA GAMMA DELTA" || r.m.Chosen() != 3 {
		t.Errorf("J: %s, chosen %d", order(), r.m.Chosen())
	}
	r.keys("shift+up")
	if order() != "ALPHA BETA DELTA GAMMA" || r.m.Chosen() != 2 {
		t.Errorf("shift+up: %s, chosen %d", order(), r.m.Chosen())
	}
	r.keys("r").text("Epsilon").text("EPS")
	if order() != "ALPHA BETA EPS GAMMA" || r.p.Steps[2].Title != "Epsilon" {
		t.Errorf("r: %s", order())
	}
	r.keys("r").text("Zeta").text("a  b")
	if !r.m.Typing() || r.p.Steps[2].Title != "Epsilon" || !strings.Contains(r.m.View(), "! short name") {
		t.Errorf("a short name that will not do was taken:\n%s", r.m.View())
	}
	r.keys("esc", "end", "x", "esc", "x", "enter")
	if order() != "ALPHA BETA EPS" || r.m.Chosen() != 2 {
		t.Errorf("x: %s, chosen %d", order(), r.m.Chosen())
	}
	for range 3 {
		r.keys("x", "enter")
	}
	if len(r.p.Steps) != 0 || r.m.Chosen() != -1 {
		t.Errorf("removed all: %s", order())
	}
	r.keys(" ", "x", "s", "up", "end", "a").text("First")
	if order() != "FIRST" {
		t.Errorf("a in an empty list: %s", order())
	}
}

// What is only looked at is not changed: times are shown rounded.
func TestNothingTyped(t *testing.T) {
	p := sheath(8)
	p.Steps[8].Hold, p.Steps[8].Spent, p.Steps[8].Note = 2*time.Hour+7*time.Second, 61*time.Second, "so"
	r := newRig(p, 60, 30)
	before := slices.Clone(r.p.Steps)
	r.keys("d", "enter", "m", "enter", "n", "enter", "r", "esc", "a", "esc")
	if !reflect.DeepEqual(before, r.p.Steps) || len(r.commits) > 0 {
		t.Errorf("changed by %q", r.commits)
	}
}

// A calliper's reading does nothing, in the list and in every question, whether it comes
// in one piece or character by character.
func TestReadings(t *testing.T) {
	for _, reading := range []string{"12.34\r\n", "12.34\r", "+012.34 mm\r\n", "-0.125 in\n", "0.1250 x e d s t\r"} {
		for _, key := range []string{"", "l", "d", "m", "n", "r", "a", "e", "x", "t"} {
			for _, split := range []bool{false, true} {
				r := newRig(sheath(9), 60, 30)
				r.p.Steps[9].Started, r.p.Steps[9].Ended = noon, time.Time{}
				r.show()
				before := slices.Clone(r.p.Steps)
				if key != "" {
					r.keys(key)
				}
				r.wait(2 * time.Second)
				r.burst(reading, split)
				if !reflect.DeepEqual(before, r.p.Steps) {
					t.Errorf("%q after %q, split %v, did %q", reading, key, split, r.commits)
				}
			}
		}
	}
}

// burst is what a tool types, at the pace of a fast keyboard.
func (r *rig) burst(s string, split bool) {
	var run []rune
	flush := func() {
		if len(run) > 0 {
			r.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: run})
		}
		run = nil
	}
	for _, c := range s {
		r.wait(8 * time.Millisecond)
		special := map[rune]string{'\r': "enter", '\n': "ctrl+j", ' ': " "}[c]
		switch {
		case special != "":
			flush()
			r.send(keyMsg(special))
		case split:
			r.send(keyMsg(string(c)))
		default:
			run = append(run, c)
		}
	}
	flush()
}

// The list may change while a question stands: then nothing is done to the wrong step.
func TestChangedMeanwhile(t *testing.T) {
	r := newRig(sheath(3), 60, 30)
	r.keys("n")
	_, cmd := r.m.Update(keyMsg("y"))
	if cmd != nil {
		t.Fatal("a letter sent something")
	}
	r.m, _ = r.m.Update(keyMsg("y"))
	*r.now = r.now.Add(time.Second)
	_, cmd = r.m.Update(keyMsg("enter"))
	other := sheath(3)
	other.Steps = other.Steps[2:]
	if err := cmd().(act.Commit).Do(&other); err == nil {
		t.Error("a note went to another step")
	}
}

func TestMouse(t *testing.T) {
	r := newRig(sheath(0), 60, 30)
	click := func(y int) {
		r.send(tea.MouseMsg{X: 5, Y: y, Action: tea.MouseActionPress, Button: tea.MouseButtonLeft})
	}
	click(2)
	if r.m.Chosen() != 2 {
		t.Errorf("a click on the third row chose %d", r.m.Chosen())
	}
	click(29)
	r.send(tea.MouseMsg{X: 5, Y: 1, Action: tea.MouseActionRelease, Button: tea.MouseButtonLeft})
	if r.m.Chosen() != 2 {
		t.Errorf("a click on the caution, or a release, chose %d", r.m.Chosen())
	}
	for range 100 {
		r.send(tea.MouseMsg{X: 5, Y: 1, Action: tea.MouseActionPress, Button: tea.MouseButtonWheelDown})
	}
	if r.m.Chosen() != 36 || !strings.Contains(r.m.View(), "Write the care card") {
		t.Errorf("the wheel went to %d:\n%s", r.m.Chosen(), r.m.View())
	}
	click(0)
	if r.m.Chosen() != r.m.top {
		t.Errorf("a click on the first row chose %d, want %d", r.m.Chosen(), r.m.top)
	}
	if len(r.commits) > 0 {
		t.Errorf("the mouse changed something: %q", r.commits)
	}
}

// Keys come from one table: each is listed in the help, none twice, none is a digit or sign.
func TestKeyTable(t *testing.T) {
	k := DefaultKeyMap()
	listed := map[string]bool{}
	for _, column := range k.FullHelp() {
		for _, b := range column {
			if b.Help().Key == "" || b.Help().Desc == "" {
				t.Errorf("%v has no help", b.Keys())
			}
			for _, name := range b.Keys() {
				if listed[name] {
					t.Errorf("key %q twice", name)
				}
				listed[name] = true
				if strings.ContainsAny(name, "0123456789.,-") || name == "+" {
					t.Errorf("a calliper types %q", name)
				}
			}
		}
	}
	table := reflect.ValueOf(k)
	for i := range table.NumField() {
		for _, name := range table.Field(i).Interface().(key.Binding).Keys() {
			if !listed[name] {
				t.Errorf("key %q is not in the help", name)
			}
		}
	}
}

// Whatever is pressed, nothing is wider or higher than the pane and nothing panics.
func TestRandomKeysAndSizes(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 4))
	names := []string{"up", "down", "pgup", "pgdown", "home", "end", " ", "s", "t", "e", "l", "d", "a", "r", "x", "K", "J", "n", "m", "c",
		"enter", "esc", "ctrl+j", "q", "7", "刀", "backspace", "left", "tab", "ctrl+v", "ctrl+k"}
	r := newRig(sheath(5), 60, 30)
	for i := range 6_000 {
		if rnd.IntN(20) == 0 {
			r.m.SetSize(rnd.IntN(90), rnd.IntN(40))
		}
		r.wait(time.Duration(rnd.IntN(2000)) * time.Millisecond)
		r.send(keyMsg(names[rnd.IntN(len(names))]))
		lines := strings.Split(r.m.View(), "\n")
		if len(lines) > max(r.m.h, 1) {
			t.Fatalf("event %d: %d lines, height %d", i, len(lines), r.m.h)
		}
		for _, l := range lines {
			if ansi.StringWidth(l) > r.m.w {
				t.Fatalf("event %d: %d wide in %d: %q", i, ansi.StringWidth(l), r.m.w, l)
			}
		}
	}
	if len(r.commits) < 150 {
		t.Errorf("only %d changes", len(r.commits))
	}
}
