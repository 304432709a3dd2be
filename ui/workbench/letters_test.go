package workbench

import (
	"reflect"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/calc/length"
	"chape/project"
	"chape/ui/act"
	"chape/ui/layout"
)

// soon presses letters by hand, well within a second of what came before.
func (s *screen) soon(letters string) {
	for _, r := range letters {
		s.now = s.now.Add(300 * time.Millisecond)
		s.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}})
	}
}

// typed types a number and its Enter by hand, at a brisk pace.
func (s *screen) typed(figure string) {
	s.now = s.now.Add(2 * time.Second)
	for _, r := range figure {
		s.now = s.now.Add(200 * time.Millisecond)
		s.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}})
	}
	s.now = s.now.Add(300 * time.Millisecond)
	s.send(tea.KeyMsg{Type: tea.KeyEnter})
}

// A letter right behind a number is no command, and that is said: it is not a dead key.
func TestALetterRightBehindANumberIsSaid(t *testing.T) {
	for _, letter := range []string{"n", "q", "u", "b", "o", "P", "T", "A", "m", "a", "x", "f"} {
		s := filed(t, 80, 24, fresh())
		s.typed("140")
		before := s.onDisk()
		s.soon(letter)
		if want := letter + " came right behind a number and did nothing: press it again"; s.m.message.Text != want {
			t.Errorf("%s: said %q", letter, s.m.message.Text)
		}
		if !reflect.DeepEqual(before, s.onDisk()) || s.quit || s.m.mode != browsing || s.m.book.Cover != nil {
			t.Errorf("%s did something", letter)
		}
	}
	s := filed(t, 80, 24, fresh())
	s.typed("140")
	s.soon("u")
	s.keys("u") // again, a second on
	s.shows("undone: blade length 140")
	s.typed("140")
	s.soon("k") // no command: nothing to say
	if s.m.message.Text != "" {
		t.Errorf("k: said %q", s.m.message.Text)
	}
}

// The unit behind a tool's reading, in its breath or slower, belongs to it.
func TestAUnitBehindAReadingIsNoCommand(t *testing.T) {
	for _, unit := range []string{"mm", " mm", "in", " in"} {
		s := filed(t, 80, 24, fresh())
		s.keys("tab") // the plan: nothing is typed there
		for _, pace := range []time.Duration{time.Millisecond, 60 * time.Millisecond, 150 * time.Millisecond, 250 * time.Millisecond} {
			s.now = s.now.Add(2 * time.Second)
			for _, r := range "12.34" + unit {
				s.now = s.now.Add(pace)
				k := tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}}
				if r == ' ' {
					k.Type = tea.KeySpace
				}
				s.send(k)
			}
			if s.m.message.Text != "" || s.m.book.Cover != nil || s.m.book.Focus != layout.Plan {
				t.Errorf("%q at %v: said %q", unit, pace, s.m.message.Text)
			}
			s.now = s.now.Add(pace)
			s.send(tea.KeyMsg{Type: tea.KeyEnter})
		}
	}
}

// A name typed on a row of text is a name, whatever its letters do elsewhere.
func TestLettersOnATextAreTheText(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {160, 45}} {
		s := filed(t, size[0], size[1], fresh())
		was := s.onDisk()
		s.m.seek(seekTo("customer.name"))
		s.keys("A", "n", "n", "a")
		s.shows("keep it, on to the next number")
		s.keys("enter")
		is := s.onDisk()
		if is.Customer.Name != "Anna" {
			t.Fatalf("for %q", is.Customer.Name)
		}
		is.Customer.Name = ""
		if !reflect.DeepEqual(is, was) || s.m.book.Cover != nil || s.quit || s.m.panel != nil {
			t.Error("something else happened")
		}
		s.keys("u") // the next row is a choice: letters are commands there
		s.shows("undone: for whom Anna")
		if got := s.onDisk().Customer.Name; got != "" {
			t.Errorf("undone it is %q", got)
		}
	}
}

// On such a row the foot names no letters, undo has a key that is none, and another
// project's letters that come together go into the text whole.
func TestARowOfTextAndItsFoot(t *testing.T) {
	s := filed(t, 160, 45, fresh())
	s.keys("1", "4", "0", "enter")
	s.m.seek(seekTo("notes"))
	foot := s.text()[strings.LastIndex(s.text(), "\n")+1:]
	for _, named := range []string{"letters type it", "Enter open it", "Tab Plan", "Ctrl+U undo", "? keys", "Ctrl+C quit"} {
		if !strings.Contains(foot, named) {
			t.Errorf("the foot does not name %q: %s", named, foot)
		}
	}
	for _, dead := range []string{" n ", "P print", "b bench", "o shelf", "q quit"} {
		if strings.Contains(foot, dead) {
			t.Errorf("the foot names %q: %s", dead, foot)
		}
	}
	s.now = s.now.Add(2 * time.Second)
	s.send(tea.KeyMsg{Type: tea.KeyCtrlU})
	if got := s.onDisk().Outline.Blade; got != 110 {
		t.Errorf("Ctrl+U leaves %v", got)
	}
	s.m.seek(seekTo("notes"))
	s.now = s.now.Add(2 * time.Second)
	s.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("quench in oil")})
	s.keys("enter")
	if got := s.onDisk().Notes; got != "quench in oil" || s.quit {
		t.Errorf("notes %q, quit %v", got, s.quit)
	}
	s.m.seek(seekTo("notes"))
	s.keys("b", "y", "enter")
	if got := s.onDisk().Notes; got != "quench in oil\nby" {
		t.Errorf("notes %q", got)
	}
}

// A day is typed as it is said; a calliper's reading there is none, and holds nobody up.
func TestADayIsTypedAtOnce(t *testing.T) {
	s := filed(t, 80, 24, fresh())
	for _, day := range []string{"24 Dec", "Dec 24", "24.12."} {
		s.m.seek(seekTo("customer.due"))
		for _, r := range day {
			s.keys(string(r))
		}
		s.keys("enter")
		if got := s.onDisk().Customer.Due.Format("2 Jan"); got != "24 Dec" {
			t.Fatalf("%s is %s", day, got)
		}
		s.m.seek(seekTo("customer.due"))
		s.reading("12.34", "enter", "lf")
		if got := s.onDisk().Customer.Due.Format("2 Jan"); got != "24 Dec" || s.m.mode != browsing {
			t.Errorf("a reading makes it %s, mode %v", got, s.m.mode)
		}
		s.keys("u")
	}
}

// f leads to the trial page, at the mark in hand.
func TestTrialFitAtTheMark(t *testing.T) {
	p := fresh()
	p.Source = project.FromStations
	s := filed(t, 80, 24, p)
	for _, mark := range []int{4, 9} {
		s.m.seek(act.Seek{Key: "knife.station.thick", Index: mark})
		s.keys("f")
		if at := p.Knife.Stations[mark].At; s.m.book.InHand().Name != "Trial fit" || !strings.Contains(s.text(), at.Format(length.Millimetres, length.Ruler)+" from the point") {
			t.Errorf("mark %d: %s is in hand:\n%s", mark, s.m.book.InHand().Name, s.text())
		}
		s.keys("esc")
	}
}

// So it is on the page of a trial fit: behind a reach, or on the note, u takes nothing back.
func TestLettersOnATrialFit(t *testing.T) {
	s := filed(t, 80, 24, fresh())
	s.keys("T", "1", "enter", "enter")
	s.typed("35")
	s.soon("u")
	s.shows("u came right behind a number and did nothing: press it again")
	was := s.onDisk()
	s.keys("down", "s", "l", "i", "g", "h", "t", " ", "r", "u", "b", "enter", "enter")
	if s.m.mode != browsing || len(s.onDisk().Fits) != len(was.Fits)+1 {
		t.Fatalf("kept %+v", s.onDisk().Fits)
	}
	if f := s.onDisk().Fits[len(was.Fits)]; f.Note != "slight rub" || f.Reach != 35 {
		t.Errorf("kept %+v", f)
	}
	s.keys("1", ".", "5", "enter")
	s.shows("1.5 mm from the point")
}
