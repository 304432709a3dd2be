package workbench

import (
	"chape/calc"
	"chape/ui/act"
	"path/filepath"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
)

// shelve puts projects on the shelf of a screen.
func (s *screen) shelve(titles ...string) {
	s.t.Helper()
	for _, title := range titles {
		p := fresh()
		p.Title = title
		if _, err := s.m.o.Shelf.Create(p); err != nil {
			s.t.Fatal(err)
		}
	}
}

func TestOpenAnotherProject(t *testing.T) {
	s := filed(t, 120, 40, fresh())
	s.shelve("Heron", "Badger")
	s.keys("1", "4", "0", "o") // the shelf is a letter of the text, not a command
	if s.m.mode != editing {
		t.Fatal("a letter ended the edit")
	}
	s.keys("backspace", "enter", "o")
	s.shows("Heron")
	s.shows("Badger")
	s.keys("/", "heron", "enter", "enter")
	s.shows("Heron  Heron.toml")
	if got := s.onDisk().Title; got != "Heron" {
		t.Errorf("open is %q", got)
	}
	if _, ok := s.m.session.Doc().Undo(); ok {
		t.Error("the other project's changes can be undone in this one")
	}
	s.keys("9", "9", "enter")
	if got := s.onDisk().Outline.Blade; got != 99 {
		t.Errorf("a change went elsewhere: %v", got)
	}
	if got := s.readFile(s.path).Outline.Blade; got != 140 {
		t.Errorf("the first project has %v", got)
	}
	s.keys("o", "esc") // all are shown: one leaves
	s.shows("Knife")
}

func TestBeginOnTheShelf(t *testing.T) {
	s := filed(t, 120, 40, fresh())
	s.keys("o", "n", "Otter", "enter", "enter") // the second: as configured
	s.shows("Otter  Otter.toml")
	if got := filepath.Dir(s.m.session.Doc().Path()); got != s.m.o.Shelf.Dir() {
		t.Errorf("it is in %q", got)
	}
}

func TestHoldsOfTheOthers(t *testing.T) {
	s := filed(t, 120, 40, fresh())
	p := fresh()
	p.Title = "Heron"
	p.Steps[1].Started = morning.Add(-30 * time.Minute)
	if _, err := s.m.o.Shelf.Create(p); err != nil {
		t.Fatal(err)
	}
	s.wait(2 * time.Second)
	s.shows("Heron DRY: ")
	s.wait(31 * time.Minute)
	s.shows("! Heron DRY fell due")
	rung := s.voice.bells
	s.keys("f1", "o", "enter") // over to it: it is not announced again
	s.shows("Heron  Heron.toml")
	s.wait(time.Minute)
	if s.voice.bells != rung {
		t.Errorf("%d bells more after going over", s.voice.bells-rung)
	}
	if n := strings.Count(s.text(), "DRY: due since"); n != 1 {
		t.Errorf("the hold is shown %d times:\n%s", n, s.text())
	}
}

func TestChangedCopyAsksBeforeAnotherIsOpened(t *testing.T) {
	s := loose(t, 120, 40)
	s.shelve("Heron")
	s.keys("f1", "a", "o", "enter")
	s.shows("This copy is not kept")
	s.keys("k")
	s.shows("Heron  Heron.toml")
	if kept, _ := filepath.Glob(filepath.Join(s.m.o.Shelf.Dir(), "Example*.toml")); len(kept) != 1 {
		t.Errorf("kept: %q", kept)
	}
}

func TestUnsavedIsNotLeft(t *testing.T) {
	full := true
	s := filed(t, 120, 40, fresh())
	s.shelve("Heron")
	s.m.o.FS = fullDisk{disk, &full}
	s.keys("1", "4", "0", "enter", "o", "enter")
	s.shows("the other project is not opened")
	if s.m.session.Doc().Path() != s.path {
		t.Error("left with something unsaved")
	}
	full = false
	s.keys("enter")
	s.shows("Heron  Heron.toml")
	if got := s.readFile(s.path).Outline.Blade; got != 140 {
		t.Errorf("the first project has %v", got)
	}
}

func TestWeighings(t *testing.T) {
	s := filed(t, 120, 40, fresh())
	s.keys("w")
	s.shows("Drying")
	s.keys("1", "4", "1", ".", "5", "enter")
	if got := s.onDisk().Weigh; len(got) != 1 || got[0].Grams != 141.5 {
		t.Fatalf("weighings %+v", got)
	}
	s.keys("u")
	if got := s.onDisk().Weigh; len(got) != 0 {
		t.Errorf("after undo %+v", got)
	}
	s.keys("esc")
	s.shows("blade length")
}

// TestCtrlCLeadsOut: wherever one is, a few of them end the program.
func TestCtrlCLeadsOut(t *testing.T) {
	for name, keys := range map[string][]string{
		"an edit": {"1"}, "a step": {"shift+tab", "a", "x"}, "a weighing": {"w", "1"}, "the help": {"?"},
		"finding": {"o", "/", "x"}, "a title": {"o", "n", "x"}, "the bench": {"b"}, "the plan": {"tab"},
	} {
		s := filed(t, 120, 40, fresh())
		s.keys(keys...)
		for range 4 {
			s.keys("ctrl+c")
		}
		if !s.quit {
			t.Errorf("no way out of %s:\n%s", name, s.text())
		}
	}
}

// TestLettersTogether: on a slow line letters come in one message; each does what it
// does alone, wherever one is.
func TestLettersTogether(t *testing.T) {
	together := func(s *screen, text string) {
		s.now = s.now.Add(time.Second)
		s.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text)})
	}
	s := filed(t, 120, 40, fresh())
	s.keys("1", "4", "0", "enter", "1", "5", "0", "enter")
	together(s, "uu")
	if got := s.onDisk().Outline.Blade; got != 110 {
		t.Errorf("uu: %v", got)
	}
	together(s, "Uw")
	s.shows("Drying")
	together(s, "uu")
	if got := s.onDisk().Outline.Blade; got != 110 {
		t.Errorf("uu at the weighings: %v", got)
	}
	s.keys("esc")
	together(s, "o/ott")
	s.shows("ott")
	s.lacks("/ott")
}

// TestUndoOverTheShelf: changes can be taken back after another project was open.
func TestUndoOverTheShelf(t *testing.T) {
	s := filed(t, 120, 40, fresh())
	first := s.path
	s.keys("1", "4", "0", "enter")
	s.send(s.heron())
	s.shows("Heron  Heron.toml")
	s.send(act.Open{Path: first})
	s.shows("Test knife")
	s.keys("u")
	if got := s.readFile(first).Outline.Blade; got != 110 {
		t.Errorf("undone: %v", got)
	}
	// What others made of it meanwhile is taken as it is.
	s.send(act.Open{Path: filepath.Join(s.m.o.Shelf.Dir(), "Heron.toml")})
	theirs := fresh()
	theirs.Outline.Blade = 99
	s.write(theirs)
	s.send(act.Open{Path: first})
	s.keys("u")
	if got := s.readFile(first).Outline.Blade; got != 99 {
		t.Errorf("changed meanwhile: %v", got)
	}
}

// TestHelpScrolls and is left by Esc, q and ?.
func TestHelpScrolls(t *testing.T) {
	s := filed(t, 80, 24, fresh())
	for _, key := range []string{"esc", "q", "?"} {
		s.keys("?", "?", "end")          // over what the row in hand means
		s.shows("back without printing") // the last section
		s.lacks("Everywhere, while nothing is typed")
		s.keys("home", "x")
		s.shows("Knife")
		s.lacks("back without printing")
		if s.keys(key); s.m.mode != browsing || s.quit {
			t.Errorf("%s: mode %v, quit %v", key, s.m.mode, s.quit)
		}
	}
}

// TestNothingOpen: the window is called after the program.
func TestNothingOpen(t *testing.T) {
	s := filed(t, 120, 40, fresh())
	if s.m.bare = true; s.m.title() != "chape" {
		t.Errorf("title %q", s.m.title())
	}
}

// TestFootIsNeverCut: it names fewer keys where there is less room, and always these.
func TestFootIsNeverCut(t *testing.T) {
	s := filed(t, 80, 24, fresh())
	for w := 40; w <= 200; w += 5 {
		s.send(tea.WindowSizeMsg{Width: w, Height: 24})
		for _, keys := range []string{"tab", "tab", "tab", "o", "esc", "w"} {
			s.keys(keys)
			if foot := s.m.foot(); keys != "esc" && (!strings.Contains(foot[0], "? keys  q quit") || len(foot) != 1 || ansi.StringWidth(foot[0]) > w) {
				t.Errorf("%d: %q", w, foot)
			}
		}
		s.keys("esc")
	}
}

// TestKeysOfNoUseHere: on a page that a key of the panes does nothing on, it says where it
// would; while no project is open, what opens one.
func TestKeysOfNoUseHere(t *testing.T) {
	s := filed(t, 80, 24, fresh())
	for _, k := range []string{"E", "N", "P"} {
		s.keys("o", k)
		s.shows(k + " is a key of Knife, Plan and Steps: Esc leads back to them")
		s.keys("esc")
	}
	s = start(t, 80, 24, fresh(), "", calc.Compute, func(o *Options) { o.OnShelf = true })
	for _, k := range []string{"E", "N", "P"} {
		s.keys(k)
		s.shows("Enter opens a project, n begins one, q quits")
	}
	for _, sec := range s.m.sections() {
		if strings.Contains(sec.Title, "where Esc leads") {
			t.Error("Esc is said to lead to panes that there are not yet")
		}
	}
}

// TestKeysOnPages: what the help says is alive on a page is, and what is not says what is
// to be pressed first.
func TestKeysOnPages(t *testing.T) {
	for _, c := range []struct{ page, key, shows string }{
		{"w", "b", "step 1 of 3"},
		{"w", "P", "into the folder"},
		{"w", "N", "pattern"},
		{"w", "C", "What it comes to today"},
		{"T", "N", "pattern"},
		{"T", "w", "weigh"},
		{"C", "b", "step 1 of 3"},
		{"N", "T", "Trial fit"},
		{"E", "N", "pattern"},
		{"D", "b", "b is a key of Knife, Plan and Steps: Esc leads back to them"},
	} {
		s := filed(t, 100, 30, fresh())
		s.keys(c.page)
		was := s.m.book.InHand()
		s.keys(c.key)
		s.shows(c.shows)
		if s.m.book.InHand() == was && c.key != "P" && c.page != "D" {
			t.Errorf("%s, %s: still on %s", c.page, c.key, was.Name)
		}
	}
	s := filed(t, 100, 30, fresh())
	s.keys("w", "?")
	all := s.text()
	for range 40 {
		s.keys("down")
		all += s.text()
	}
	for _, line := range []string{"Weighings", "Here too, while nothing is typed", "the bench view", "pattern numbers", "On Knife, Plan and Steps, where Esc leads"} {
		if !strings.Contains(all, line) {
			t.Errorf("the help lacks %q", line)
		}
	}
}
