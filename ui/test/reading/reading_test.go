// Package reading types the same readings of measuring tools at every pane and page of
// the workbench, and at their questions.
package reading

import (
	"fmt"
	"reflect"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project/example"
	"chape/project/shelf"
	"chape/project/store"
	"chape/ui/act"
	"chape/ui/bench"
	"chape/ui/drypane"
	"chape/ui/knifepane"
	"chape/ui/planpane"
	"chape/ui/shelfpane"
	"chape/ui/stepspane"
	"chape/ui/term/ink"
	"chape/ui/test/rig"
)

// user is a pane, the keys that open one of its texts or questions, and how many
// changes a reading may make there: one for each of its lines where numbers are asked.
type user struct {
	name    string
	keys    []string
	make    func(now func() time.Time) act.Pane
	changes int
}

func users(t *testing.T) []user {
	st := ink.New(ink.Dark, ink.None)
	dir := t.TempDir()
	steps := func(now func() time.Time) act.Pane { return stepspane.New(now, st) }
	dry := func(now func() time.Time) act.Pane { return drypane.New(now, st) }
	shelf := func(now func() time.Time) act.Pane {
		return shelfpane.New(shelfpane.Options{Shelf: shelf.Open(store.OSLockingIn(""), dir), Clock: now, Styles: st})
	}
	knife := func(func() time.Time) act.Pane { return knifepane.New(st) }
	list := []user{
		{"knife, on numbers", nil, knife, 1},
		{"knife, on a choice", []string{"home"}, knife, 0},
		{"plan", nil, func(func() time.Time) act.Pane { return planpane.New(st) }, 0},
		{"bench", nil, func(now func() time.Time) act.Pane { return bench.New(now, never, st) }, 0},
		{"steps", nil, steps, 0},
		{"weighings", nil, dry, 1},
		{"weighings, the time", []string{"t"}, dry, 0},
		{"weighings, temperature", []string{"r"}, dry, 0},
		{"shelf", nil, shelf, 0},
		{"shelf, finding", []string{"/"}, shelf, 0},
		{"shelf, a title", []string{"n"}, shelf, 0},
	}
	for _, k := range []string{"a", "c", "d", "e", "i", "l", "m", "r", "t", "x"} {
		list = append(list, user{"steps, " + k, []string{k}, steps, 0})
	}
	return list
}

// never is a timer that never rings.
func never(time.Duration, tea.Msg) tea.Cmd { return func() tea.Msg { return nil } }

// At every pace and with every kind of Enter a reading ticks nothing, opens nothing and
// answers nothing; where numbers are asked it is one number, and its second Enter none.
func TestReadingsEverywhere(t *testing.T) {
	ends := [][]string{{"enter"}, {"ctrl+j"}, {"enter", "ctrl+j"}, {"enter", "enter"}}
	for _, u := range users(t) {
		for _, pace := range []time.Duration{time.Millisecond, 150 * time.Millisecond} {
			for _, end := range ends {
				r := rig.New(t, example.Load(rig.Noon), 100, 30, u.make)
				r.Keys(u.keys...)
				sent := len(r.Sent)
				r.Tool("114.5", pace, end...)
				if what := changed(r, sent); len(what) > u.changes {
					t.Errorf("%s, %v, ended by %v: did %q", u.name, pace, end, what)
				}
			}
		}
	}
}

// A breath longer it is a hand: the Enter counts.
func TestOneMillisecondMoreIsAHand(t *testing.T) {
	st := ink.New(ink.Dark, ink.None)
	r := rig.New(t, example.Load(rig.Noon), 100, 30, func(now func() time.Time) *bench.Model { return bench.New(now, never, st) })
	was := r.Project.Steps
	r.Tool("114.5", 151*time.Millisecond, "enter")
	if reflect.DeepEqual(was, r.Project.Steps) {
		t.Error("an Enter 151 ms after a character ticks nothing")
	}
}

// A letter is no command within a second of a figure, anywhere.
func TestLettersAfterAFigure(t *testing.T) {
	for _, u := range users(t) {
		if len(u.keys) > 0 || u.changes > 0 {
			continue
		}
		for _, letter := range "abcdefghijklmnopqrstuvwxyz" {
			r := rig.New(t, example.Load(rig.Noon), 100, 30, u.make)
			r.Tool("4", time.Millisecond)
			sent := len(r.Sent)
			r.Wait(time.Second).Send(rig.Key(string(letter)))
			if what := changed(r, sent); len(what) > 0 || act.Typing(r.Pane) {
				t.Errorf("%s: %c a second after a digit did %q", u.name, letter, what)
			}
		}
	}
}

// changed names what was done beside previews and words.
func changed(r *rig.Rig[act.Pane], from int) (what []string) {
	for _, m := range r.Sent[from:] {
		switch m := m.(type) {
		case act.Commit:
			what = append(what, m.Label)
		case act.Preview, act.Drop, act.Unfit, act.Say, act.Choose:
		default:
			what = append(what, fmt.Sprintf("%T", m))
		}
	}
	return what
}
