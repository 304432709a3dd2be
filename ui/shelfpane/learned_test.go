package shelfpane

import (
	"path/filepath"
	"strings"
	"testing"

	"chape/calc"
	"chape/project"
	"chape/project/file"
	"chape/ui/act"
)

// taught is a shelf with two finished sheaths of the usual leather, which had +1 and +2 at
// the same place, 10 mm before the mouth: their median is 1.5.
func taught(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	for name, by := range map[string]float64{"One": 1, "Two": 2} {
		p := sheath(name, len(sheath("", 0).Steps))
		f := project.Fit{Fit: calc.Fit{At: p.Sheath.Mouth - 10, Reach: 20}, With: "finished"}
		if f.By = 1; by == 2 {
			f.By = 2
		}
		p.Fits = []project.Fit{f}
		put(t, dir, name+".toml", file.Encode(p), noon)
	}
	return dir
}

// What finished sheaths needed is offered in the question how a project begins, with how many
// that rests on; Enter takes the offer, which counts for nothing yet, and one key declines it.
func TestLearned(t *testing.T) {
	dir := taught(t)
	r := newRig(t, dir, 80, 24)
	r.keys("n", "Third", "enter")
	var alive []string
	for _, k := range act.Alive(r.Pane) {
		alive = append(alive, k.Help().Key)
	}
	if got := strings.Join(alive, " "); got != "s u e Enter Esc" {
		t.Errorf("in the question are alive: %s", got)
	}
	r.Shows("e experience [1 on page T, from 2 finished sheaths of 3.2 mm] none")
	check(t, "learned_80x24", r.Pane.View())
	r.keys("enter")
	p := load(t, filepath.Join(dir, "Third.toml"))
	if len(p.Fits) != 0 || len(p.Carried) != 1 || p.Carried[0].By != 1.5 || p.Carried[0].From != "from 2 finished sheaths of 3.2 mm" {
		t.Errorf("begun with %+v, offered %+v", p.Fits, p.Carried)
	}
	r.keys("n", "Fourth", "enter", "e", "enter")
	if p := load(t, filepath.Join(dir, "Fourth.toml")); len(p.Carried) != 0 {
		t.Errorf("declined, yet offered %+v", p.Carried)
	}
	r.keys("n", "Fifth", "enter", "u").Shows("from 2 finished sheaths of 1/8 in")
	r.keys("esc")

	// From an earlier one its own corrections say more: these are offered when they are asked for.
	r.Pane.Choose(filepath.Join(dir, "One.toml"))
	r.keys("f", "Sixth", "enter").Shows("experience 1 on page T, from 2 finished sheaths of 3.2 mm [none]")
	r.keys("c", "e", "enter")
	if p := load(t, filepath.Join(dir, "Sixth.toml")); len(p.Carried) != 1 || p.Carried[0].By != 1.5 {
		t.Errorf("from an earlier one: %+v", p.Carried)
	}
	r.Pane.Choose(filepath.Join(dir, "Fourth.toml"))
	r.keys("f", "Seventh", "enter").Shows("[1 on page T, from 2 finished sheaths of 3.2 mm]")
	r.keys("esc")
}

// A look that ends when the question is answered already changes nothing.
func TestLearnedTooLate(t *testing.T) {
	dir := taught(t)
	r := newRig(t, dir, 80, 24)
	r.keys("n", "Third", "enter", "esc")
	r.Hold = true
	r.keys("n", "Fourth", "enter")
	if r.keys("esc"); act.Typing(r.Pane) {
		t.Fatal("the question stays")
	}
	if r.Run(); act.Typing(r.Pane) {
		t.Error("what came later asks again")
	}
	other := newRig(t, full(t), 80, 24)
	other.keys("n", "x", "enter").Lacks("experience")
}
