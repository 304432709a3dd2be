package knifepane

import (
	"maps"
	"math/rand"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/store"
	"chape/ui/act"
	"chape/ui/document"
	"chape/ui/form"
	"chape/ui/part"
	"chape/ui/term/ink"
	"chape/ui/test/rig"
)

// desk is the pane on a document, without the rest of the screen.
type desk struct {
	t    testing.TB
	pane *Model
	doc  *document.Doc
	said []string

	unfit error // why what is typed will not do
}

func open(t testing.TB, p project.Project) *desk {
	f := &desk{t: t, pane: New(ink.New(ink.Middling, ink.None))}
	f.doc = document.New(p, "", store.Stamp{}, document.Options{
		Make:  calc.Compute,
		Check: project.Project.Validate, Limits: calc.DefaultLimits(),
	})
	f.pane.SetSize(78, 20)
	f.show()
	return f
}

func defaults() project.Project { return project.New("Test", length.Millimetres, project.Defaults()) }

func (f *desk) show() { f.pane.SetSnapshot(f.doc.Snapshot(time.Unix(0, 0))) }

// press hands the pane a message and does what it answers.
func (f *desk) press(msg tea.Msg) (out []act.Msg) {
	_, out = f.pane.Update(msg)
	for _, msg := range out {
		switch msg := msg.(type) {
		case act.Preview:
			f.doc.Preview(msg.Do)
			f.unfit = nil
		case act.Drop:
			f.doc.Drop()
			f.unfit = nil
		case act.Unfit:
			f.unfit = msg.Err
		case act.Choose:
			f.doc.Choose(msg.Mark)
		case act.Say:
			f.said = append(f.said, msg.Text)
		case act.Commit:
			f.unfit = nil
			if err := f.doc.Commit(msg.Label, msg.Do); err != nil {
				f.said = append(f.said, err.Error())
				f.doc.Drop()
			}
		}
	}
	f.show()
	return out
}

var named = map[string]tea.KeyType{
	"enter": tea.KeyEnter, "tab": tea.KeyTab, "esc": tea.KeyEsc, "up": tea.KeyUp, "down": tea.KeyDown,
	"left": tea.KeyLeft, "right": tea.KeyRight, "home": tea.KeyHome, "end": tea.KeyEnd,
	"backspace": tea.KeyBackspace, "shift+tab": tea.KeyShiftTab, "pgdown": tea.KeyPgDown, "pgup": tea.KeyPgUp,
}

// keys types named keys and, for any other word, its characters.
func (f *desk) keys(words ...string) {
	f.t.Helper()
	for _, w := range words {
		if k, ok := named[w]; ok {
			f.press(part.Press{KeyMsg: tea.KeyMsg{Type: k}})
			continue
		}
		for _, r := range w {
			k := tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}}
			if r == ' ' {
				k.Type = tea.KeySpace
			}
			f.press(part.Press{KeyMsg: k})
		}
	}
}

func (f *desk) at() string {
	c := f.pane.cell()
	if c == nil {
		return "nowhere"
	}
	return c.Key
}

func (f *desk) goTo(key string, index int) {
	f.t.Helper()
	if !f.pane.goTo(key, index) {
		f.t.Fatalf("there is no field %s of row %d", key, index)
	}
}

func (f *desk) project() project.Project { return f.doc.Committed() }

func (f *desk) screen() string { return ansi.Strip(f.pane.View()) }

func TestTypingShowsAtOnceAndEnterKeeps(t *testing.T) {
	f := open(t, defaults())
	if f.at() != "knife.outline.blade" {
		t.Fatalf("a new project starts at %s", f.at())
	}
	f.keys("1", "4", "0")
	if got := f.doc.Snapshot(time.Unix(0, 0)).Project.Outline.Blade; got != 140 {
		t.Errorf("shown while typing: %v", got)
	}
	if got := f.project().Outline.Blade; got != 110 {
		t.Errorf("kept while typing: %v", got)
	}
	f.keys("enter")
	if got := f.project().Outline.Blade; got != 140 || f.at() != "knife.outline.depth" {
		t.Errorf("after Enter: %v, at %s", got, f.at())
	}
	if label, ok := f.doc.Undo(); !ok || label != "blade length 140" {
		t.Errorf("Undo() = %q, %v", label, ok)
	}
	if _, ok := f.doc.Undo(); ok {
		t.Error("passing through 1 and 14 left entries of its own")
	}
}

func TestEscPutsTheOldValueBack(t *testing.T) {
	f := open(t, defaults())
	f.keys("1", "esc")
	if f.doc.Previewing() || act.Typing(f.pane) || f.doc.Snapshot(time.Unix(0, 0)).Project.Outline.Blade != 110 {
		t.Errorf("previewing %v, editing %v", f.doc.Previewing(), act.Typing(f.pane))
	}
}

func TestWhatWillNotDoStaysOpenAndSaysWhatWould(t *testing.T) {
	f := open(t, defaults())
	f.keys("140", "x", "enter")
	if f.pane.edit == nil || f.unfit == nil {
		t.Fatal("140x was let through")
	}
	if got := f.doc.Snapshot(time.Unix(0, 0)).Project.Outline.Blade; got != 140 {
		t.Errorf("the last good plan is of %v", got)
	}
	if s := f.screen(); !strings.Contains(s, `"140x" is not a length: try 3.2, 3.2 mm, 1/8 in`) {
		t.Errorf("the screen does not say what would do:\n%s", s)
	}
	out := f.press(act.InHand{})
	ok := !slices.Contains(out, act.Msg(act.Stay{}))
	if !ok || f.project().Outline.Blade != 110 || len(f.said) != 1 || !strings.Contains(f.said[0], "stays 110") {
		t.Errorf("left with ok %v, %v, said %q", ok, f.project().Outline.Blade, f.said)
	}
}

func TestCalliperInInches(t *testing.T) {
	f := open(t, defaults())
	f.goTo("knife.outline.front_thick", -1)
	was := f.project().Outline.FrontThick
	f.keys("0.6", "enter") // inches, against 17 mm
	if s := f.screen(); !strings.Contains(s, "is the calliper in inches?") {
		t.Fatalf("no question:\n%s", s)
	}
	f.press(part.Press{KeyMsg: tea.KeyMsg{Type: tea.KeyEnter}, Near: true})
	f.keys("0")
	if !act.Typing(f.pane) {
		t.Error("a second reading answered the question")
	}
	f.keys("esc")
	if got := f.project().Outline.FrontThick; got != was || act.Typing(f.pane) {
		t.Errorf("after Esc: %v, editing %v", got, act.Typing(f.pane))
	}
	f.goTo("knife.outline.depth", -1)
	f.keys("1.2", "enter")
	f.warned("give between 5 and 200 mm; the next number replaces it; is the calliper in inches?")
	f.keys("esc")
	f.goTo("knife.outline.grind", -1) // 0 before: nothing to compare with
	f.keys("12", "enter")
	if act.Typing(f.pane) {
		t.Error("asked with nothing to compare with")
	}
	f.goTo("sheath.gap", -1)
	f.keys("90", "enter", "enter")
	if got := f.project().Sheath.Gap; got != 90 {
		t.Errorf("after Enter and Enter: %v", got)
	}
}

// TestReadingsFillTheForm types what a calliper with a keyboard's plug types.
func TestReadingsFillTheForm(t *testing.T) {
	f := open(t, defaults())
	for _, r := range []string{"142.5", "31,2", "3.8", "14"} {
		f.press(part.Press{KeyMsg: tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(r)}})
		f.press(part.Press{KeyMsg: tea.KeyMsg{Type: tea.KeyEnter}, Near: true})
	}
	o := f.project().Outline
	if o.Blade != 142.5 || o.Depth != 31.2 || o.Spine != 3.8 || o.FrontLength != 14 {
		t.Errorf("got %+v", o)
	}
}

// TestReadingElsewhereDoesNoHarm types a reading at every field that takes no
// number.
func TestReadingElsewhereDoesNoHarm(t *testing.T) {
	f := open(t, withRows())
	for _, r := range f.pane.rows {
		for _, c := range r.Cells {
			if form.Numeric(c) {
				continue
			}
			before := f.project()
			f.goTo(c.Key, c.Index)
			for _, ch := range "12.34" {
				f.press(part.Press{KeyMsg: tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{ch}}})
			}
			f.press(part.Press{KeyMsg: tea.KeyMsg{Type: tea.KeyEnter}, Near: true})
			if act.Typing(f.pane) || !reflect.DeepEqual(f.project(), before) || len(f.said) > 0 {
				t.Errorf("%s: editing %v, said %q", c.Key, act.Typing(f.pane), f.said)
			}
		}
	}
}

func measured() project.Project {
	p := defaults()
	p.Source = project.FromStations
	return p
}

func withRows() project.Project {
	p := measured()
	p.Fits = []project.Fit{{Fit: calc.Fit{At: 50, By: 1, Reach: 20}, With: "paper"}}
	return p
}

func TestPasteOfANumber(t *testing.T) {
	f := open(t, defaults())
	f.press(part.Press{KeyMsg: tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(" 5 1/2 in\nand more"), Paste: true}})
	f.keys("enter")
	if got := f.project().Outline.Blade; got != 5.5*length.Inch {
		t.Errorf("got %v", got)
	}
	before := f.project()
	f.press(part.Press{KeyMsg: tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("q x a"), Paste: true}})
	if !reflect.DeepEqual(before, f.project()) || act.Typing(f.pane) {
		t.Error("a pasted word was taken for commands")
	}
}

// Space changes a choice and says what it was; the arrows change nothing.
func TestSpaceChangesAChoice(t *testing.T) {
	f := open(t, defaults())
	f.goTo("customer.edge", -1)
	f.keys("right", "left")
	if _, ok := f.doc.Undo(); ok || f.at() != "customer.edge" {
		t.Errorf("the arrows changed something, at %s", f.at())
	}
	f.keys(" ")
	if got := f.project().Customer.Edge; got != calc.EdgeFront || len(f.said) != 1 || f.said[0] != "edge to the: rear → front" {
		t.Errorf("%v, said %q", got, f.said)
	}
}

func TestMarks(t *testing.T) {
	f := open(t, measured())
	n := len(f.project().Knife.Stations)
	f.goTo("knife.station.at", 2)
	f.keys("a")
	p := f.project()
	if len(p.Knife.Stations) != n+1 || p.Source != project.FromStations || f.at() != "knife.station.at" || f.pane.row().Index != 3 {
		t.Fatalf("%d marks, source %v, at %s of %d, said %q", len(p.Knife.Stations), p.Source, f.at(), f.pane.row().Index, f.said)
	}
	if s := f.doc.Snapshot(time.Unix(0, 0)); s.Mark != 3 {
		t.Errorf("chosen mark %d", s.Mark)
	}
	f.keys("x")
	if got := len(f.project().Knife.Stations); got != n {
		t.Errorf("%d marks after taking one out", got)
	}
	f.keys("down", "j")
	s := f.project().Knife.Stations
	if i := f.pane.row().Index; len(s) != n+1 || s[i].At != s[i-1].At || f.at() != "knife.station.bottom" {
		t.Errorf("no pair: %+v, at %s, said %q", s, f.at(), f.said)
	}
	if out := f.press(part.Press{KeyMsg: rig.Key("f")}); len(out) != 1 || out[0] != (act.Go{Page: "Trial fit"}) || len(f.project().Fits) != 0 {
		t.Errorf("f answers %v; %d corrections", out, len(f.project().Fits))
	}
}

func TestChoosingAMarkElsewhereMovesTheCursor(t *testing.T) {
	f := open(t, withRows())
	f.goTo("knife.station.thick", 1)
	f.doc.Choose(3)
	f.show()
	if r := f.pane.row(); r.List != "mark" || r.Index != 3 || f.at() != "knife.station.thick" {
		t.Errorf("at %s of %d", f.at(), r.Index)
	}
}

// TestRowsGoneWhileTyping has the file changed by someone else under an edit.
func TestRowsGoneWhileTyping(t *testing.T) {
	f := open(t, withRows())
	last := len(f.project().Knife.Stations) - 1
	f.goTo("knife.station.thick", last)
	f.keys("2")
	f.doc.Commit("others", func(p *project.Project) error {
		p.Knife.Stations = p.Knife.Stations[:2]
		p.Sheath.Mouth = p.Knife.Stations[1].At
		return nil
	})
	f.show()
	f.keys("1", "enter")
	f.screen()
}

// TestRandomKeys presses anything anywhere: no panic, no line too wide.
func TestRandomKeys(t *testing.T) {
	r := rand.New(rand.NewSource(7))
	f := open(t, defaults())
	all := slices.Sorted(maps.Keys(named))
	for i := range 600 {
		if r.Intn(3) == 0 {
			f.keys(all[r.Intn(len(all))])
		} else {
			f.keys(string([]rune("0123456789.,/-+ aeojfx½\"mnüß日")[r.Intn(29)]))
		}
		if i%50 == 0 {
			f.pane.SetSize(r.Intn(90), r.Intn(30))
		}
		if i%10 == 0 {
			f.press(rig.Click(r.Intn(90), r.Intn(30)))
		}
		for _, l := range strings.Split(f.pane.View(), "\n") {
			if w := ansi.StringWidth(l); w > f.pane.width {
				t.Fatalf("step %d: a line of %d cells in %d: %q", i, w, f.pane.width, l)
			}
		}
		if err := f.project().Validate(); err != nil {
			t.Fatalf("step %d: committed what will not do: %v", i, err)
		}
	}
}

func TestNotesKeepTheirLines(t *testing.T) {
	p := defaults()
	p.Notes = "one\ntwo"
	f := open(t, p)
	f.goTo("notes", -1)
	f.keys("enter", "end", "x")
	f.press(part.Press{KeyMsg: tea.KeyMsg{Type: tea.KeyEnter, Alt: true}})
	f.keys("three", "enter")
	if got := f.project().Notes; got != "one\ntwox\nthree" {
		t.Errorf("notes %q", got)
	}
}
