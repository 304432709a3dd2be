package workbench

import (
	"maps"
	"math/rand"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/steps"
	"chape/ui/act"
	"chape/ui/layout"
)

func fresh() project.Project {
	p := project.New("Test knife", length.Millimetres, project.Defaults())
	p.Steps = []steps.Step{
		{Title: "Cut the body", Short: "CUT"},
		{Title: "Let it dry", Short: "DRY", Hold: time.Hour, Latest: 2 * time.Hour},
		{Title: "Sew", Short: "SEW"},
	}
	return p
}

func TestACommitIsOnTheDisk(t *testing.T) {
	s := filed(t, 120, 40, fresh())
	s.keys("1", "4", "0")
	if got := s.onDisk().Outline.Blade; got == 140 {
		t.Error("a preview was saved")
	}
	s.keys("enter")
	if got := s.onDisk().Outline.Blade; got != 140 {
		t.Errorf("on the disk: %v", got)
	}
	s.shows("saved")
	s.keys("u")
	if got := s.onDisk().Outline.Blade; got != 110 {
		t.Errorf("undone on the disk: %v", got)
	}
	s.shows("undone: blade length 140")
	s.keys("U")
	if got := s.onDisk().Outline.Blade; got != 140 {
		t.Errorf("done again on the disk: %v", got)
	}
	s.keys("q")
	if !s.quit {
		t.Error("q does not quit")
	}
}

func TestStalePlanIsMarked(t *testing.T) {
	s := filed(t, 160, 45, fresh())
	before := s.text()
	s.keys("1", "4", "x")
	if strings.Count(s.text(), "is not a length") < 1 {
		t.Errorf("no complaint:\n%s", s.text())
	}
	if s.text() == before {
		t.Error("nothing shows that the plan is old")
	}
}

// TestReadingAnywhere types a calliper's reading, with all three ends, into
// every pane, overlay and question: only a number in hand takes it.
func TestReadingAnywhere(t *testing.T) {
	states := map[string]func(s *screen){
		"plan":  func(s *screen) { s.keys("tab") },
		"steps": func(s *screen) { s.keys("shift+tab") },
		"help":  func(s *screen) { s.keys("?") },
		"question": func(s *screen) {
			s.m.ask(act.Question{Title: "Which?", Text: []string{"One of two."}, Choices: []act.Choice{{Key: "y", Does: "this"}}})
		},
		"bench":  func(s *screen) { s.keys("b") },
		"choice": func(s *screen) { s.keys("home") },
		"shelf":  func(s *screen) { s.keys("o") },
	}
	for name, enter := range states {
		s := filed(t, 120, 40, fresh())
		enter(s)
		before := s.onDisk()
		for _, ends := range [][]string{{"enter"}, {"lf"}, {"enter", "lf"}} {
			s.reading("12.34", ends...)
		}
		if got := s.onDisk(); !reflect.DeepEqual(got, before) || s.quit || s.m.mode == editing {
			t.Errorf("%s: a reading changed something; quit %v, editing %v", name, s.quit, s.m.mode == editing)
		}
	}
	s := filed(t, 120, 40, fresh())
	s.reading("142.5", "enter", "lf")
	s.reading("31.2", "lf")
	s.reading("3.8", "enter")
	if o := s.onDisk().Outline; o.Blade != 142.5 || o.Depth != 31.2 || o.Spine != 3.8 {
		t.Errorf("the form was filled with %+v", o)
	}
}

func TestAlarm(t *testing.T) {
	s := filed(t, 100, 30, fresh())
	s.keys("shift+tab", "down", "t") // start the hold
	s.shows("DRY: 1 h to go, 10:30")
	if s.onDisk().Steps[1].Started.IsZero() {
		t.Fatal("the hold is not on the disk")
	}
	s.wait(59 * time.Minute)
	if s.voice.bells != 0 {
		t.Fatalf("%d bells too early", s.voice.bells)
	}
	s.wait(2 * time.Minute)
	if s.voice.bells < 1 || !strings.Contains(s.voice.title, "DRY") || len(s.voice.said) != 1 {
		t.Fatalf("%d bells, title %q, notices %q", s.voice.bells, s.voice.title, s.voice.said)
	}
	s.shows("DRY is due, 10:30")
	s.wait(19 * time.Second)
	rung := s.voice.bells
	s.wait(21 * time.Second)
	if s.voice.bells <= rung {
		t.Error("the bell does not ring again")
	}
	before := s.onDisk()
	s.keys(" ") // silences, and does nothing else
	if !reflect.DeepEqual(before, s.onDisk()) {
		t.Error("the key that silences did something as well")
	}
	if strings.Contains(s.voice.title, "DRY") {
		t.Errorf("title still %q", s.voice.title)
	}
	s.lacks("any key silences it")
	rung = s.voice.bells
	s.wait(time.Minute)
	if s.voice.bells != rung {
		t.Error("it rings on after a key")
	}
	s.keys(" ")
	if s.onDisk().Steps[1].Done.IsZero() {
		t.Error("the next key does not tick")
	}
}

func TestAlarmLeavesAnEditAlone(t *testing.T) {
	p := fresh()
	p.Steps[1].Started = morning.Add(-time.Hour + 30*time.Second)
	s := filed(t, 100, 30, p)
	s.keys("1")
	s.wait(time.Minute)
	if s.voice.bells == 0 {
		t.Fatal("no bell")
	}
	s.keys("4", "0", "enter")
	if got := s.onDisk().Outline.Blade; got != 140 {
		t.Errorf("a key was lost: blade %v", got)
	}
}

func TestFellDueMeanwhile(t *testing.T) {
	p := fresh()
	p.Steps[1].Started = morning.Add(-90 * time.Minute)
	s := filed(t, 100, 30, p)
	s.shows("DRY fell due meanwhile, at 09:00")
}

// TestHostileText: nothing that a file holds reaches the terminal raw.
func TestHostileText(t *testing.T) {
	evil := "a\x1b]0;x\x07b\x1b[2Jc\nd\u202ee\u009b31m"
	p := fresh()
	p.Title, p.Notes, p.Customer.Name = evil, evil, evil
	p.Fits = []project.Fit{{Fit: calc.Fit{At: 50, Reach: 20}, With: "paper", Note: evil}}
	for i := range p.Steps {
		p.Steps[i].Title, p.Steps[i].Note, p.Steps[i].Caution, p.Steps[i].Short = evil, evil, evil, "A\x1bB"
	}
	p.Steps[1].Started = morning.Add(-2 * time.Hour)
	s := start(t, 120, 60, p, "", calc.Compute)
	look := func() {
		t.Helper()
		for _, bad := range []string{"\x1b]", "\x07", "\x1b[2J", "\u202e", "\u009b"} {
			if strings.Contains(s.m.View(), bad) || strings.Contains(s.voice.title, bad) {
				t.Fatalf("%q is on the screen", bad)
			}
		}
		s.fits()
	}
	look()
	for _, k := range []string{"f1", "end", "tab", "right", "right", "right", "tab", "b", "esc", "w", "esc", "o"} {
		s.keys(k)
		look()
	}
}

func TestMouse(t *testing.T) {
	s := filed(t, 160, 45, fresh())
	press := func(x, y int) {
		s.send(tea.MouseMsg{X: x, Y: y, Action: tea.MouseActionPress, Button: tea.MouseButtonLeft})
	}
	for p, r := range s.m.lay.Panes {
		press(r.X+3, r.Y+3)
		if s.m.book.Focus != layout.Pane(p) {
			t.Errorf("a click into %v leaves %v in hand", layout.Pane(p), s.m.book.Focus)
		}
	}
	r := s.m.lay.Panes[layout.Knife]
	press(r.X+3, r.Y+5)
	s.keys("3", "1")
	press(r.X+3, r.Y+4) // leaving the row keeps the value
	if got := s.onDisk().Outline.Depth; got != 31 {
		t.Errorf("depth %v", got)
	}
}

// TestAnythingAnywhere presses ten thousand keys, mouse buttons and sizes at
// random.
func TestAnythingAnywhere(t *testing.T) {
	plan, err := calc.Compute(fresh().Input(calc.DefaultLimits()))
	if err != nil {
		t.Fatal(err)
	}
	p := fresh()
	s := start(t, 120, 40, p, "", func(calc.Input) (*calc.Plan, error) { return plan, nil })
	r := rand.New(rand.NewSource(3))
	names := slices.DeleteFunc(slices.Sorted(maps.Keys(named)), func(n string) bool {
		return n == "ctrl+s" // the disk is not what this is about
	})
	letters := []rune("0123456789.,/-+ aeojfxbuUqtdnrlsmZzvhHKJL[]?½\"üß日")
	for i := range 10000 {
		switch r.Intn(20) {
		case 0:
			s.send(tea.MouseMsg{X: r.Intn(130), Y: r.Intn(45), Action: tea.MouseActionPress, Button: tea.MouseButton(r.Intn(6))})
		case 1, 2, 3, 4, 5, 6:
			s.keys(names[r.Intn(len(names))])
		case 7:
			s.reading("12.34", "enter", "lf")
		case 8:
			s.now = s.now.Add(time.Duration(r.Intn(3000)) * time.Second)
			s.send(tickMsg{})
		default:
			s.keys(string(letters[r.Intn(len(letters))]))
		}
		if i%500 == 0 {
			s.send(tea.WindowSizeMsg{Width: 1 + r.Intn(200), Height: 1 + r.Intn(60)})
		}
		if i%25 == 0 {
			s.fits()
		}
		if t.Failed() {
			t.Fatalf("at event %d", i)
		}
	}
	if err := s.m.session.Doc().Committed().Validate(); err != nil {
		t.Errorf("committed what will not do: %v", err)
	}
}
