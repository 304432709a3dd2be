package shelfpane

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"chape/calc/length"
	"chape/project"
	"chape/project/file"
	"chape/project/shelf"
	"chape/project/steps"
	"chape/project/store"
	"chape/ui/act"
)

func load(t *testing.T, path string) project.Project {
	t.Helper()
	p, err := shelf.Open(store.OSLockingIn(""), filepath.Dir(path)).Load(path)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// Every key is documented once, and no two commands share one.
func TestKeyTable(t *testing.T) {
	k := DefaultKeyMap()
	inHelp := map[string]int{}
	for _, column := range k.FullHelp() {
		for _, b := range column {
			inHelp[fmt.Sprint(b.Keys(), b.Help())]++
		}
	}
	v := reflect.ValueOf(k)
	seen := map[string]string{}
	for i := range v.NumField() {
		name, b := v.Type().Field(i).Name, v.Field(i).Interface().(key.Binding)
		if inHelp[fmt.Sprint(b.Keys(), b.Help())] != 1 || b.Help().Desc == "" {
			t.Errorf("%s is in the help %d times", name, inHelp[fmt.Sprint(b.Keys(), b.Help())])
		}
		if name == "Keep" || name == "Drop" { // of a question
			continue
		}
		for _, key := range b.Keys() {
			if other, ok := seen[key]; ok {
				t.Errorf("%q is both %s and %s", key, other, name)
			}
			seen[key] = name
			if len(key) == 1 && strings.ContainsAny(key, "0123456789.,+-") {
				t.Errorf("%q is a command: a calliper types it", key)
			}
		}
	}
}

func TestChooseAndOpen(t *testing.T) {
	dir := full(t)
	r := newRig(t, dir, 80, 24)
	r.keys("down", "down", "enter")
	if got := r.last(); got != (OpenMsg{filepath.Join(dir, "orchard.toml")}) {
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
	for range 5 {
		r.keys("down")
	}
	r.keys("enter")
	if said, ok := r.last().(act.Say); !ok || !said.Warn || !strings.Contains(said.Text, "torn.toml:3: units") {
		t.Errorf("opening %q gives %v", r.chosen(), r.last())
	}
	r.keys("esc")
	if r.last() != (LeaveMsg{}) {
		t.Errorf("Esc gives %v", r.last())
	}
}

func TestFinding(t *testing.T) {
	r := newRig(t, full(t), 80, 24)
	r.keys("/", "bogli")
	if !r.m.Typing() || r.chosen()[:7] != "Éclair"[:7] || len(r.m.shown) != 1 {
		t.Errorf("bogli finds %q", r.titles())
	}
	r.keys("backspace", "backspace", "backspace", "backspace", "backspace", "spare 3")
	if r.titles() != "Spare 3" {
		t.Errorf("spare 3 finds %q", r.titles())
	}
	r.keys("backspace", "down", "down", "enter")
	if r.m.Typing() || len(r.m.shown) != 5 || r.chosen() != "Spare 2" || len(r.sent) != 0 {
		t.Errorf("after Enter %q of %q, sent %v", r.chosen(), r.titles(), r.sent)
	}
	r.keys("enter")
	if _, ok := r.last().(OpenMsg); !ok {
		t.Errorf("the second Enter gives %v", r.last())
	}
	if len(r.m.shown) != 14 || r.chosen() != "Spare 2" {
		t.Errorf("after opening %d are shown, %q chosen", len(r.m.shown), r.chosen())
	}
	r.keys("esc")
	if r.last() != (LeaveMsg{}) {
		t.Errorf("one Esc after opening sends %v", r.last())
	}
	// A key of the list is a letter while finding.
	r.keys("/", "np", "esc")
	if len(r.m.shown) != 14 || r.m.question != nil || len(r.sent) != 2 {
		t.Errorf("letters were commands: %v", r.sent)
	}
}

func TestNew(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "shelf")
	r := newRig(t, dir, 80, 24)
	r.keys("n", "enter")
	if r.m.question == nil || r.m.question.err == "" {
		t.Fatal("a project without a title")
	}
	r.keys("Bench: knife", "enter")
	if len(r.sent) > 0 || !r.m.Typing() {
		t.Errorf("it is not asked how to begin: %v", r.sent)
	}
	r.keys("enter")
	path := filepath.Join(dir, "Bench- knife.toml")
	if r.last() != (OpenMsg{path}) || r.m.Typing() {
		t.Fatalf("sent %v", r.sent)
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
	if r.m.Typing() || len(r.m.entries) != 2 {
		t.Error("Esc at the second question begins it all the same")
	}
	r.keys("n", "x", "esc")
	if r.m.Typing() || len(r.m.entries) != 2 {
		t.Error("Esc keeps the question")
	}
}

// Steps of the user's own come first.
func TestNewWithOwnSteps(t *testing.T) {
	r := newRig(t, t.TempDir(), 80, 24)
	r.m.o.Begin = func(title string) project.Project {
		p := project.New(title, length.Inches, project.Defaults())
		p.Steps = []steps.Step{{Title: "All at once"}}
		return p
	}
	r.keys("n", "One", "enter")
	if view := ansi.Strip(r.m.View()); !strings.Contains(view, "[your own] Form, then sew  Sew, then form") || !strings.Contains(view, "mm [in]") {
		t.Errorf("no choices in\n%s", view)
	}
	r.keys("enter")
	path := r.last().(OpenMsg).Path
	if p := load(t, path); len(p.Steps) != 1 || p.Units != length.Inches {
		t.Errorf("begun in %v with %d steps", p.Units, len(p.Steps))
	}
}

// Who types a title and Enter fast is no measuring tool.
func TestFastEnter(t *testing.T) {
	for title, kept := range map[string]bool{"Bowie": true, "12.34": false, "+012.34 mm": false, "Bowie 12.34": false} {
		r := newRig(t, t.TempDir(), 80, 24)
		r.keys("n")
		r.now = r.now.Add(time.Second)
		for _, c := range title {
			r.now = r.now.Add(8 * time.Millisecond)
			r.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{c}})
		}
		r.now = r.now.Add(8 * time.Millisecond)
		r.send(tea.KeyMsg{Type: tea.KeyEnter})
		if got := r.m.question.begin != nil; got != kept {
			t.Errorf("%q and Enter in one breath: kept %v, want %v", title, got, kept)
		}
	}
	r := newRig(t, t.TempDir(), 80, 24) // by hand, 100 ms from key to key
	r.keys("n")
	for _, c := range "Bowie 5" {
		r.now = r.now.Add(100 * time.Millisecond)
		r.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{c}})
	}
	r.now = r.now.Add(100 * time.Millisecond)
	if r.send(tea.KeyMsg{Type: tea.KeyEnter}); r.m.question.begin == nil {
		t.Error("a title that ends in a digit, typed by hand, is not taken")
	}
}

// What is put away goes to its place before the disk has been read again, and stays.
func TestPutAwayMovesAtOnce(t *testing.T) {
	r := newRig(t, full(t), 80, 24)
	r.m.Choose(filepath.Join(r.m.o.Shelf.Dir(), "whittler.toml"))
	r.hold = true
	r.keys("p")
	move := r.held[0]
	r.held = nil
	r.send(move())
	if e, _ := r.m.Chosen(); e.Title != "Whittler" || !e.PutAway || r.m.at < len(r.m.shown)-2 {
		t.Errorf("%q is chosen at %d of %q", e.Title, r.m.at, r.titles())
	}
	r.hold = false
	for _, cmd := range r.held {
		r.run(cmd)
	}
	if e, _ := r.m.Chosen(); !e.PutAway || r.m.at < len(r.m.shown)-2 {
		t.Errorf("after looking: %+v at %d", e, r.m.at)
	}
}

func TestFromRenameAndAway(t *testing.T) {
	dir := t.TempDir()
	p := sheath("First", 6)
	p.Sheath.Leather, p.Customer.Name = 2.5, "Somebody"
	put(t, dir, "first.toml", file.Encode(p), noon)
	r := newRig(t, dir, 80, 24)

	r.keys("f", "Second", "enter")
	second := load(t, filepath.Join(dir, "Second.toml"))
	if second.Sheath.Leather != 2.5 || second.Customer.Name != "" || steps.Current(second.Steps) != 0 {
		t.Errorf("the second is %+v", second)
	}
	r.m.Choose(filepath.Join(dir, "first.toml"))
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
	for _, m := range r.sent {
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
			typing := r.m.Typing()
			r.now = r.now.Add(time.Second)
			for _, c := range "-12.34" {
				r.now = r.now.Add(5 * time.Millisecond)
				r.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{c}})
			}
			for _, e := range end {
				r.now = r.now.Add(5 * time.Millisecond)
				r.send(tea.KeyMsg{Type: e})
			}
			if len(r.sent) != 0 || r.m.Typing() != typing {
				t.Errorf("a reading ended by %v after %v: sent %v, typing %v", end, before, r.sent, r.m.Typing())
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

	r = &rig{t: t, now: noon, hold: true}
	r.m = New(r.options(dir))
	r.m.SetSize(80, 24)
	r.run(r.m.Init())
	step := func() {
		cmd := r.held[0]
		r.held = r.held[1:]
		r.send(cmd())
	}
	step()
	if len(r.m.shown) != 121 || r.m.scan.left != 121 || !strings.Contains(r.m.View(), "121 to read") {
		t.Fatalf("at first %d are shown, %d left", len(r.m.shown), r.m.scan.left)
	}
	r.keys("down", "down", "down")
	at := r.chosen()
	step()
	if e, _ := r.m.Chosen(); filepath.Base(e.Path) != at+".toml" || e.State != shelf.InHand {
		t.Errorf("the choice went from %q to %q", at, e.Path)
	}
	run := r.m.scan.run
	r.run(r.m.Look())
	for len(r.held) > 0 {
		step()
	}
	if r.titles() != want || r.m.scan.left != 0 || r.m.scan.run != run+1 {
		t.Errorf("in the end %q\nwant %q", r.titles(), want)
	}
	if !strings.HasPrefix(want, "Rings, Knife 000, Knife 001") {
		t.Errorf("sorted %q", want)
	}
}

func TestMouse(t *testing.T) {
	r := newRig(t, full(t), 80, 24)
	press := func(b tea.MouseButton, x, y int) {
		r.send(tea.MouseMsg{Action: tea.MouseActionPress, Button: b, X: x, Y: y})
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
	if len(r.sent) != 0 {
		t.Errorf("the mouse did %v", r.sent)
	}
}
