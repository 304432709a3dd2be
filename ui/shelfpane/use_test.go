package shelfpane

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/file"
	"chape/project/shelf"
	"chape/project/steps"
	"chape/project/store"
	"chape/ui/act"
	"chape/ui/test/rig"
)

func load(t *testing.T, path string) project.Project {
	t.Helper()
	p, err := shelf.Open(store.OSLockingIn(""), filepath.Dir(path)).Load(path)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestKeyTable(t *testing.T) {
	r := newRig(t, full(t), 80, 24)
	rig.CheckKeys(t, r.Pane)
	r.keys("n")
	rig.CheckKeys(t, r.Pane)
}

func TestChooseAndOpen(t *testing.T) {
	dir := full(t)
	r := newRig(t, dir, 80, 24)
	r.keys("down", "down", "enter")
	if got := r.last(); got != (act.Open{Path: filepath.Join(dir, "orchard.toml")}) {
		t.Errorf("opens %v", got)
	}
	r.keys("end")
	if r.chosen() != "Old pattern" {
		t.Errorf("the last is %q", r.chosen())
	}
	r.keys("down", "pgup", "home")
	if r.chosen() != "Camp knife, second try" {
		t.Errorf("the first is %q", r.chosen())
	}
	for range 11 {
		r.keys("down")
	}
	r.keys("enter")
	if said, ok := r.last().(act.Say); !ok || !said.Warn || !strings.Contains(said.Text, "torn.toml:3: units") {
		t.Errorf("opening %q gives %v", r.chosen(), r.last())
	}
	r.keys("esc")
	if r.last() != (act.Leave{}) {
		t.Errorf("Esc gives %v", r.last())
	}
}

func TestFinding(t *testing.T) {
	r := newRig(t, full(t), 80, 24)
	r.keys("/", "bogli")
	if !act.Typing(r.Pane) || r.chosen()[:7] != "Éclair"[:7] || len(r.Pane.shown) != 1 {
		t.Errorf("bogli finds %q", r.titles())
	}
	r.keys("backspace", "backspace", "backspace", "backspace", "backspace", "spare 3")
	if r.titles() != "Spare 3" {
		t.Errorf("spare 3 finds %q", r.titles())
	}
	r.keys("backspace", "down", "down", "enter")
	if act.Typing(r.Pane) || len(r.Pane.shown) != 5 || r.chosen() != "Spare 2" || len(r.sent()) != 0 {
		t.Errorf("after Enter %q of %q, sent %v", r.chosen(), r.titles(), r.sent())
	}
	r.keys("enter")
	if _, ok := r.last().(act.Open); !ok {
		t.Errorf("the second Enter gives %v", r.last())
	}
	if len(r.Pane.shown) != 14 || r.chosen() != "Spare 2" {
		t.Errorf("after opening %d are shown, %q chosen", len(r.Pane.shown), r.chosen())
	}
	r.keys("esc")
	if r.last() != (act.Leave{}) {
		t.Errorf("one Esc after opening sends %v", r.last())
	}
	// A key of the list is a letter while finding.
	r.keys("/", "np", "esc")
	if len(r.Pane.shown) != 14 || r.Pane.question != nil || len(r.sent()) != 2 {
		t.Errorf("letters were commands: %v", r.sent())
	}
}

func TestNew(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "shelf")
	r := newRig(t, dir, 80, 24)
	r.keys("n", "enter")
	if r.Pane.question == nil || r.Pane.question.Err() == nil {
		t.Fatal("a project without a title")
	}
	r.keys("Bench: knife", "enter")
	if len(r.sent()) > 0 || !act.Typing(r.Pane) {
		t.Errorf("it is not asked how to begin: %v", r.sent())
	}
	r.keys("enter")
	path := filepath.Join(dir, "Bench- knife.toml")
	if r.last() != (act.Open{Path: path}) || act.Typing(r.Pane) {
		t.Fatalf("sent %v", r.sent())
	}
	if p := load(t, path); p.Title != "Bench: knife" || len(p.Steps) == 0 || p.Units != length.Millimetres || p.Steps[14].Short != "WRAP" {
		t.Errorf("begun with %+v", p)
	}
	if r.titles() != "Bench: knife" {
		t.Errorf("the list shows %q", r.titles())
	}
	info, _ := os.Stat(dir)
	if path, _ := os.Stat(path); os.Getenv("OS") != "Windows_NT" && (info.Mode().Perm() != 0o700 || path.Mode().Perm() != 0o600) {
		t.Errorf("others can read it: %v, %v", info.Mode(), path.Mode())
	}
	r.keys("n", "Second", "enter", "u", "s", "7", "enter")
	if p := load(t, filepath.Join(dir, "Second.toml")); p.Units != length.Inches || p.Steps[14].Short != "SAND" {
		t.Errorf("with u and s it begins in %v with %q", p.Units, p.Steps[14].Short)
	}
	r.keys("n", "x", "enter", "esc")
	if act.Typing(r.Pane) || len(r.Pane.entries) != 2 {
		t.Error("Esc at the second question begins it all the same")
	}
	r.keys("n", "x", "esc")
	if act.Typing(r.Pane) || len(r.Pane.entries) != 2 {
		t.Error("Esc keeps the question")
	}
}

// Steps of the user's own come first.
func TestNewWithOwnSteps(t *testing.T) {
	r := newRig(t, t.TempDir(), 80, 24)
	r.Pane.o.Begin = func(title string) project.Project {
		p := project.New(title, length.Inches, project.Defaults())
		p.Steps = []steps.Step{{Title: "All at once"}}
		return p
	}
	r.keys("n", "One", "enter")
	if view := ansi.Strip(r.Pane.View()); !strings.Contains(view, "[your own] Form, then sew  Sew, then form") || !strings.Contains(view, "mm [in]") {
		t.Errorf("no choices in\n%s", view)
	}
	r.keys("enter")
	path := r.last().(act.Open).Path
	if p := load(t, path); len(p.Steps) != 1 || p.Units != length.Inches {
		t.Errorf("begun in %v with %d steps", p.Units, len(p.Steps))
	}
}

// Who types a title and Enter fast is no measuring tool.
func TestFastEnter(t *testing.T) {
	for title, kept := range map[string]bool{"Bowie": true, "12.34": false, "+012.34 mm": false, "Bowie 12.34": true} {
		r := newRig(t, t.TempDir(), 80, 24)
		r.keys("n")
		r.Now = r.Now.Add(time.Second)
		for _, c := range title {
			r.Now = r.Now.Add(8 * time.Millisecond)
			r.Send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{c}})
		}
		r.Now = r.Now.Add(8 * time.Millisecond)
		r.Send(tea.KeyMsg{Type: tea.KeyEnter})
		if got := r.Pane.question.begin != nil; got != kept {
			t.Errorf("%q and Enter in one breath: kept %v, want %v", title, got, kept)
		}
	}
	r := newRig(t, t.TempDir(), 80, 24) // by hand, 100 ms from key to key
	r.keys("n")
	for _, c := range "Bowie 5" {
		r.Now = r.Now.Add(100 * time.Millisecond)
		r.Send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{c}})
	}
	r.Now = r.Now.Add(100 * time.Millisecond)
	if r.Send(tea.KeyMsg{Type: tea.KeyEnter}); r.Pane.question.begin == nil {
		t.Error("a title that ends in a digit, typed by hand, is not taken")
	}
}

// What is put away goes to its place before the disk has been read again, and stays.
func TestPutAwayMovesAtOnce(t *testing.T) {
	r := newRig(t, full(t), 80, 24)
	r.Pane.Choose(filepath.Join(r.Pane.o.Shelf.Dir(), "whittler.toml"))
	r.Hold = true
	r.keys("p")
	move := r.Work[0]
	r.Work = nil
	r.Send(move())
	if e, _ := r.Pane.Chosen(); e.Title != "Whittler" || !e.PutAway || r.Pane.list.At < len(r.Pane.shown)-2 {
		t.Errorf("%q is chosen at %d of %q", e.Title, r.Pane.list.At, r.titles())
	}
	r.Run()
	if e, _ := r.Pane.Chosen(); !e.PutAway || r.Pane.list.At < len(r.Pane.shown)-2 {
		t.Errorf("after looking: %+v at %d", e, r.Pane.list.At)
	}
}

func TestFromRenameAndAway(t *testing.T) {
	dir := t.TempDir()
	p := sheath("First", 6)
	p.Sheath.Leather, p.Customer.Name = 2.5, "Somebody"
	put(t, dir, "first.toml", file.Encode(p), noon)
	r := newRig(t, dir, 80, 24)

	r.keys("f", "Second", "enter", "enter")
	second := load(t, filepath.Join(dir, "Second.toml"))
	if second.Sheath.Leather != 2.5 || second.Customer.Name != "" || steps.Current(second.Steps) != 0 {
		t.Errorf("the second is %+v", second)
	}
	r.Pane.Choose(filepath.Join(dir, "first.toml"))
	r.keys("r", "ctrl+u", "Best one", "enter")
	if got := load(t, filepath.Join(dir, "Best one.toml")); got.Title != "Best one" {
		t.Errorf("renamed to %q", got.Title)
	}
	if r.chosen() != "Best one" {
		t.Errorf("after renaming %q is chosen", r.chosen())
	}
	r.keys("p")
	if r.titles() != "Second, Best one" || r.chosen() != "Best one" {
		t.Errorf("put away: %q of %q", r.chosen(), r.titles())
	}
	load(t, filepath.Join(dir, shelf.Away, "Best one.toml"))
	r.keys("p")
	load(t, filepath.Join(dir, "Best one.toml"))
	for _, m := range r.sent() {
		if said, ok := m.(act.Say); ok && said.Warn {
			t.Errorf("said %q", said.Text)
		}
	}
}

// A calliper's reading with its Enter does nothing in the list, and opens nothing
// while finding.
func TestCalliper(t *testing.T) {
	for _, end := range [][]tea.KeyType{{tea.KeyEnter}, {tea.KeyCtrlJ}, {tea.KeyEnter, tea.KeyCtrlJ}} {
		for _, before := range [][]string{nil, {"/"}, {"n"}} {
			r := newRig(t, full(t), 80, 24)
			r.keys(before...)
			typing := act.Typing(r.Pane)
			r.Now = r.Now.Add(time.Second)
			for _, c := range "-12.34" {
				r.Now = r.Now.Add(5 * time.Millisecond)
				r.Send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{c}})
			}
			for _, e := range end {
				r.Now = r.Now.Add(5 * time.Millisecond)
				r.Send(tea.KeyMsg{Type: e})
			}
			if len(r.sent()) != 0 || act.Typing(r.Pane) != typing {
				t.Errorf("a reading ended by %v after %v: sent %v, typing %v", end, before, r.sent(), act.Typing(r.Pane))
			}
		}
	}
}

// While the folder is read, keys work, the choice stays on its project, and a second
// look makes an end of the first.
func TestFillsBehind(t *testing.T) {
	dir := t.TempDir()
	for i := range 120 {
		put(t, dir, fmt.Sprintf("k%03d.toml", i), file.Encode(sheath(fmt.Sprintf("Knife %03d", i), 1)), noon.Add(-time.Duration(i)*time.Hour))
	}
	p := sheath("Rings", 11)
	p.Steps[11].Started = noon.Add(-99 * time.Hour)
	put(t, dir, "rings.toml", file.Encode(p), noon.Add(-999*time.Hour))
	r := newRig(t, dir, 80, 24)
	want := r.titles()

	r = newRig(t, t.TempDir(), 80, 24)
	r.Pane.o.Shelf = shelf.Open(store.OSLockingIn(""), dir)
	r.Hold = true
	r.Send(act.InHand{Is: true})
	first := r.Pane.scan.run
	step := func() {
		work := r.Work[0]
		r.Work = r.Work[1:]
		r.Send(work())
	}
	step()
	if len(r.Pane.shown) != 121 || r.Pane.scan.left != 121 || !strings.Contains(r.Pane.View(), "121 to read") {
		t.Fatalf("at first %d are shown, %d left", len(r.Pane.shown), r.Pane.scan.left)
	}
	r.keys("down", "down", "down")
	at := r.chosen()
	step()
	if e, _ := r.Pane.Chosen(); filepath.Base(e.Path) != at+".toml" || e.State != shelf.InHand {
		t.Errorf("the choice went from %q to %q", at, e.Path)
	}
	r.Send(act.InHand{Is: true})
	for len(r.Work) > 0 {
		step()
	}
	if r.titles() != want || r.Pane.scan.left != 0 || r.Pane.scan.run != first+1 {
		t.Errorf("in the end %q\nwant %q", r.titles(), want)
	}
	if !strings.HasPrefix(want, "Rings, Knife 000, Knife 001") {
		t.Errorf("sorted %q", want)
	}
}

func TestMouse(t *testing.T) {
	r := newRig(t, full(t), 80, 24)
	press := func(b tea.MouseButton, x, y int) {
		r.Send(tea.MouseMsg{Action: tea.MouseActionPress, Button: b, X: x, Y: y})
	}
	for _, c := range []struct {
		b    tea.MouseButton
		x, y int
		want string
	}{
		{tea.MouseButtonLeft, 5, 4, "Orchard knife"}, {tea.MouseButtonLeft, 5, 0, "Orchard knife"}, {tea.MouseButtonLeft, 5, 18, "Orchard knife"},
		{tea.MouseButtonLeft, 90, 3, "Orchard knife"}, {tea.MouseButtonLeft, -1, -1, "Orchard knife"},
		{tea.MouseButtonWheelDown, 0, 0, "Late promise"}, {tea.MouseButtonWheelUp, 0, 0, "Orchard knife"},
	} {
		if press(c.b, c.x, c.y); r.chosen() != c.want {
			t.Errorf("%v at %d,%d chooses %q, want %q", c.b, c.x, c.y, r.chosen(), c.want)
		}
	}
	if len(r.sent()) != 0 {
		t.Errorf("the mouse did %v", r.sent())
	}
}

// What comes along is asked: another knife has the corrections offered, the same one keeps
// them.
func TestWhatComesAlong(t *testing.T) {
	dir := t.TempDir()
	p := sheath("First", 6)
	p.Sheath.Leather = 2.5
	p.Fits = []project.Fit{{Fit: calc.Fit{At: 100, By: 1, Reach: 20}, With: "leather"}}
	put(t, dir, "first.toml", file.Encode(p), noon)
	r := newRig(t, dir, 80, 24)
	r.keys("f", "Other", "enter")
	check(t, "taking_80x24", r.Pane.View())
	r.keys("x", "enter") // a key that is none leaves the question
	if got := load(t, filepath.Join(dir, "Other.toml")); len(got.Fits) != 0 || len(got.Carried) != 1 || got.Sheath.Leather != 2.5 {
		t.Errorf("another knife: %+v", got)
	}
	r.Pane.Choose(filepath.Join(dir, "first.toml"))
	r.keys("f", "Again", "enter", "k", "h", "enter")
	if got := load(t, filepath.Join(dir, "Again.toml")); len(got.Fits) != 1 || len(got.Carried) != 0 || got.Sheath.Leather == 2.5 {
		t.Errorf("the same knife: %+v", got)
	}
	put(t, dir, "plain.toml", file.Encode(sheath("Plain", 6)), noon)
	r.keys("g")
	r.Pane.Choose(filepath.Join(dir, "plain.toml"))
	r.keys("f", "More", "enter")
	if view := r.Pane.View(); !strings.Contains(view, "comes along") || strings.Contains(view, "0 corrections") {
		t.Errorf("corrections are asked about where there are none:\n%s", view)
	}
	r.keys("esc")
	r.Pane.Choose(filepath.Join(dir, "first.toml"))
	r.keys("f", "No", "enter", "esc")
	if _, err := os.Stat(filepath.Join(dir, "No.toml")); err == nil || act.Typing(r.Pane) {
		t.Error("Esc begins it all the same")
	}
}
