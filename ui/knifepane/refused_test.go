package knifepane

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"

	"chape/calc/length"
	"chape/ui/act"
	"chape/ui/part"
)

// read types what a calliper types: the digits and its Enter in one breath.
func (f *form) read(readings ...string) {
	f.t.Helper()
	for _, r := range readings {
		for _, c := range r {
			f.press(part.Press{KeyMsg: tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{c}}})
		}
		f.press(part.Press{KeyMsg: tea.KeyMsg{Type: tea.KeyEnter}, Near: true})
	}
}

// warned looks for words in the pane, wherever its lines break.
func (f *form) warned(words string) {
	f.t.Helper()
	if s := strings.Join(strings.Fields(f.screen()), " "); !strings.Contains(s, words) {
		f.t.Errorf("the pane does not say %q:\n%s", words, f.screen())
	}
}

// A reading out of range stays in hand with its error, and the next reading
// takes its place: they are never joined to one number.
func TestReadingsAfterARefusedOneAreNotJoined(t *testing.T) {
	f := open(t, defaults())
	f.read("142.5", "3000", "2500")
	if f.at() != "knife.outline.depth" || !act.Typing(f.pane) || f.pane.edit.text() != "2500" {
		t.Fatalf("at %s with %q", f.at(), f.pane.edit.text())
	}
	f.warned(`"2500" will not do: give 5, up to 200 mm`)
	f.warned("the next number replaces it; is the calliper in inches?")
	if err := f.unfit; err == nil || err.Error() != `blade depth: "2500" will not do: give 5, up to 200 mm` {
		t.Errorf("the plan says %v", err)
	}
	f.read("31.2", "3.8")
	o := f.project().Outline
	if o.Blade != 142.5 || o.Depth != 31.2 || o.Spine != 3.8 || act.Typing(f.pane) || f.at() != "knife.outline.grind" {
		t.Errorf("got %+v, at %s", o, f.at())
	}
}

// In the marks, too, where a wrong one is refused for its neighbours' sake.
func TestReadingsOfMarksAfterARefusedOne(t *testing.T) {
	f := open(t, withRows())
	f.goTo("knife.station.at", 3)
	f.read("1811", "0.5", "0.4")
	if f.at() != "knife.station.at" || f.pane.edit.text() != "0.4" {
		t.Fatalf("at %s", f.at())
	}
	f.warned(`"0.4" will not do: put the marks in order`)
	at := f.project().Knife.Stations[3].At + 0.5
	f.read(at.Exact(length.Millimetres), "2")
	if s := f.project().Knife.Stations[3]; s.At != at || s.Top != 2 {
		t.Errorf("mark %+v", s)
	}
}

// What is far from the old value is not answered for by more readings, nor are
// they lost: the next takes its place.
func TestReadingsAfterAQuestion(t *testing.T) {
	f := open(t, defaults())
	f.goTo("knife.outline.front_thick", -1)
	f.read("0.6", "0.65")
	if f.pane.edit == nil || f.pane.edit.text() != "0.65" || !f.pane.edit.asking {
		t.Fatalf("not asked about the second reading: %+v", f.pane.edit)
	}
	f.warned("the next number replaces it")
	f.read("16.5")
	if got := f.project().Outline.FrontThick; got != 16.5 || f.at() != "knife.outline.handle" {
		t.Errorf("got %v, at %s", got, f.at())
	}
}

func TestARefusedTextIsReplacedOrMended(t *testing.T) {
	for _, c := range []struct {
		keys []string
		want string
	}{
		{[]string{"7"}, "7"},
		{[]string{"7", "5"}, "75"},
		{[]string{"left", "7"}, "3x71"}, // mended where the cursor stands
		{[]string{"end", "7"}, "3x17"},
		{[]string{"home", "7"}, "73x1"},
		{[]string{"backspace", "7"}, "3x7"},
		{[]string{"right", "backspace", "backspace"}, "3"},
	} {
		for _, refuse := range []string{"enter", "tab", "shift+tab", "down", "up"} {
			f := open(t, defaults())
			f.keys("3x1", refuse)
			f.keys(c.keys...)
			if f.pane.edit == nil || f.pane.edit.text() != c.want {
				t.Errorf("after %s, %q: %+v, want %q", refuse, c.keys, f.pane.edit, c.want)
			}
		}
	}
	f := open(t, defaults())
	f.keys("3x1", "enter")
	f.press(part.Press{KeyMsg: tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("120"), Paste: true}})
	if f.pane.edit.text() != "120" {
		t.Errorf("pasted over a refused text: %q", f.pane.edit.text())
	}
}

func TestARefusedTextIsShownAsSelected(t *testing.T) {
	f := open(t, defaults())
	bracketed := lipgloss.NewStyle().SetString("»")
	f.pane.Styles.Chosen = bracketed
	f.keys("3x1")
	if strings.Contains(f.pane.View(), "» 3x1") {
		t.Error("selected before it was refused")
	}
	f.keys("enter")
	if !strings.Contains(f.pane.View(), "» 3x1") {
		t.Errorf("not shown as selected:\n%s", f.pane.View())
	}
}

// Notes that are too long are not wiped by the next letter.
func TestWordsThatAreRefusedAreMended(t *testing.T) {
	f := open(t, defaults())
	f.goTo("title", -1)
	long := strings.Repeat("n", 250)
	f.keys("enter", long, "enter", "x")
	if got := f.pane.edit.text(); !strings.HasSuffix(got, long+"x") {
		t.Errorf("the title became %q", got)
	}
}
