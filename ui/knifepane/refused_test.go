package knifepane

import (
	"reflect"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"

	"chape/calc/length"
	"chape/project"
	"chape/ui/act"
	"chape/ui/part"
)

// read types what a calliper types: the digits and its Enter in one breath.
func (f *desk) read(readings ...string) {
	f.t.Helper()
	for _, r := range readings {
		for _, c := range r {
			f.press(part.Press{KeyMsg: tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{c}}})
		}
		f.press(part.Press{KeyMsg: tea.KeyMsg{Type: tea.KeyEnter}, Near: true})
	}
}

// warned looks for words in the pane, wherever its lines break.
func (f *desk) warned(words string) {
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
	if f.at() != "knife.outline.depth" || f.pane.edit == nil || f.pane.edit.Text() != "2500" {
		t.Fatalf("at %s with %q", f.at(), f.pane.edit.Text())
	}
	f.warned(`"2500" will not do: give between 5 and 200 mm`)
	f.warned("the next number replaces it; is the point missing?")
	if err := f.unfit; err == nil || err.Error() != `blade depth: "2500" will not do: give between 5 and 200 mm` {
		t.Errorf("the plan says %v", err)
	}
	f.read("31.2", "3.8")
	o := f.project().Outline
	if o.Blade != 142.5 || o.Depth != 31.2 || o.Spine != 3.8 || act.Typing(f.pane) || f.at() != "knife.outline.front_length" {
		t.Errorf("got %+v, at %s", o, f.at())
	}
}

// In the marks, too, where a wrong one is refused for its neighbours' sake.
func TestReadingsOfMarksAfterARefusedOne(t *testing.T) {
	f := open(t, withRows())
	f.goTo("knife.station.at", 3)
	f.read("1811", "0.5", "0.4")
	if f.at() != "knife.station.at" || f.pane.edit.Text() != "0.4" {
		t.Fatalf("at %s", f.at())
	}
	f.warned(`"0.4" will not do: put the marks in order`)
	at := f.project().Knife.Stations[3].At + 0.5
	f.read(at.Exact(length.Millimetres), "2")
	if s := f.project().Knife.Stations[3]; s.At != at || s.Top != 2 {
		t.Errorf("mark %+v", s)
	}
}

// What is far from the old value is not answered for by more readings, nor are they lost:
// the question stays on its row, each reading goes to the next number.
func TestReadingsAfterAQuestion(t *testing.T) {
	f := open(t, defaults())
	f.goTo("knife.outline.front_thick", -1)
	was := f.project().Outline
	f.read("0.6", "104", "26.5")
	o := f.project().Outline
	if o.FrontThick != was.FrontThick || o.Handle != 104 || o.HandleDepth != 26.5 || act.Typing(f.pane) || len(f.said) != 1 {
		t.Fatalf("got %+v, said %q", o, f.said)
	}
	f.warned("0.6?")
	f.goTo("knife.outline.front_depth", -1)
	f.keys("down") // back on the row that asks
	f.warned("0.6: is the calliper in inches? Enter keeps it, Esc puts 17 back")
	f.read("108") // the handle's
	if o = f.project().Outline; o.FrontThick != was.FrontThick || o.Handle != 108 {
		t.Fatalf("a reading answered: %+v", o)
	}
	f.goTo("knife.outline.front_depth", -1)
	f.keys("down", "enter")
	if o = f.project().Outline; o.FrontThick != 0.6 || f.pane.edit != nil {
		t.Errorf("a hand's Enter does not keep it: %+v", o)
	}
}

// A hand that types a slip is asked at once, in words that fit; it may go on without an
// answer.
func TestASlipOfTheFinger(t *testing.T) {
	for _, c := range []struct{ key, old, text, asks string }{
		{"knife.outline.blade", "114", "1140", "1140: is the point missing? Enter keeps it, Esc puts 114 back"},
		{"knife.outline.front_thick", "16.2", "0.64", "0.64: is the calliper in inches? Enter keeps it, Esc puts 16.2 back"},
		{"knife.outline.blade", "114", "1140.0", "is the point in its place?"},
		{"knife.outline.swell", "4", "40", "40: is the point missing?"},
		{"knife.outline.swell", "1/8", "1 7/8", "1 7/8: is the fraction right?"},
	} {
		f := open(t, defaults())
		f.goTo(c.key, -1)
		f.keys(c.old, "enter")
		f.goTo(c.key, -1)
		before := f.project()
		f.keys(c.text, "enter")
		f.warned(c.asks)
		if !reflect.DeepEqual(before, f.project()) {
			t.Errorf("%s was taken without a word", c.text)
		}
		f.keys("down", "up")
		f.warned(c.asks)
		f.keys("esc")
		if !reflect.DeepEqual(before, f.project()) || f.pane.edit != nil {
			t.Errorf("%s: Esc does not put the old value back", c.text)
		}
	}
}

// A whole inch too much is asked about beside its row; a reading goes on to the next number
// and answers nothing, Esc puts the old value back, and nobody is held up.
func TestAWholeInchTooMuchAsks(t *testing.T) {
	p := measured()
	p.Units = length.Inches
	f := open(t, p)
	f.goTo("knife.station.bottom", 6)
	was := f.project().Knife.Stations[6]
	slip := (was.Depth() + length.Inch).Short(length.Inches)
	asks := slip + ": is it " + was.Depth().Short(length.Inches) + "? Enter keeps it, Esc puts " + was.Depth().Short(length.Inches) + " back"
	f.keys(slip, "enter")
	f.warned(asks)
	if f.project().Knife.Stations[6] != was {
		t.Fatal("taken without a word")
	}
	f.keys("esc")
	if f.project().Knife.Stations[6] != was || f.pane.edit != nil {
		t.Fatal("Esc does not put the old value back")
	}
	f.goTo("knife.station.bottom", 6)
	f.read(slip, "0.13") // the next is a thickness
	if s := f.project().Knife.Stations; s[6].Depth() != was.Depth() || s[6].Thick != 3.302 || act.Typing(f.pane) {
		t.Errorf("a reading answered: %+v", s[6])
	}
	f.goTo("knife.station.bottom", 6)
	f.keys("left", "right")
	f.warned(asks)
	f.keys("enter")
	if got := f.project().Knife.Stations[6].Depth(); got < was.Depth()+24 {
		t.Errorf("a hand's Enter does not keep it: %v", got)
	}
}

// While a number can still become right there is no error.
func TestNoErrorOnTheWay(t *testing.T) {
	for _, text := range []string{"1", "11", "1/", "1 1/", "-", ".", "114 m"} {
		f := open(t, defaults())
		f.keys(text)
		if f.unfit != nil || strings.Contains(f.screen(), "will not do") || strings.Contains(f.screen(), "is not a length") {
			t.Errorf("%q is complained of: %v\n%s", text, f.unfit, f.screen())
		}
	}
	f := open(t, defaults())
	f.keys("11", "enter")
	f.warned(`"11" will not do: give between 20 and 1500 mm`)
}

// A refused number holds nobody up: leaving its row puts the old value back and says so,
// and the keys of the root are alive at once.
func TestARefusedNumberNeverTraps(t *testing.T) {
	for _, away := range []string{"up", "down", "tab", "shift+tab"} {
		f := open(t, defaults())
		f.keys("11", "enter", away)
		if f.pane.edit != nil || f.project().Outline.Blade != 110 || len(f.said) != 1 || !strings.HasPrefix(f.said[0], "blade length stays 110: ") {
			t.Errorf("%s: said %q", away, f.said)
		}
	}
	f := open(t, defaults())
	f.keys("120", "enter", "2", "enter")
	if act.Typing(f.pane) {
		t.Fatal("a refused number keeps u and Tab back")
	}
	f.keys("x", "a", "m")
	if f.project().Source != project.FromOutline || f.pane.edit.Text() != "2" {
		t.Error("a letter does something else by accident")
	}
	if label, _ := f.doc.Undo(); label != "blade length 120" {
		t.Fatalf("undo takes back %q", label)
	}
	f.show()
	if f.pane.edit != nil {
		t.Error("the refused number stands over what was undone")
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
		for _, refuse := range []string{"enter"} {
			f := open(t, defaults())
			f.keys("3x1", refuse)
			f.keys(c.keys...)
			if f.pane.edit == nil || f.pane.edit.Text() != c.want {
				t.Errorf("after %s, %q: %+v, want %q", refuse, c.keys, f.pane.edit, c.want)
			}
		}
	}
	f := open(t, defaults())
	f.keys("3x1", "enter")
	f.press(part.Press{KeyMsg: tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("120"), Paste: true}})
	if f.pane.edit.Text() != "120" {
		t.Errorf("pasted over a refused text: %q", f.pane.edit.Text())
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
	if got := f.pane.edit.Text(); !strings.HasSuffix(got, long+"x") {
		t.Errorf("the title became %q", got)
	}
}

// A stream of readings ends with its page: what is left over is named, not taken for the next
// page's. A hand's Enter goes on, and what it types on the last row is kept.
func TestReadingsEndWithThePage(t *testing.T) {
	f := open(t, defaults())
	f.goTo("knife.outline.swell", -1)
	was := f.project().Sheath
	f.read("4.5", "25", "1.2") // swell, butt, grind
	if want := "the last number of the page: → leads to the sheath page"; f.said[len(f.said)-1] != want {
		t.Errorf("said %q, want %q", f.said, want)
	}
	f.read("9.9")
	if want := "the page is full, not taken: 9.9; → leads to the sheath page"; f.said[len(f.said)-1] != want {
		t.Errorf("said %q, want %q", f.said, want)
	}
	f.read("5.5")
	if want := "the page is full, not taken: 9.9, 5.5; → leads to the sheath page"; f.said[len(f.said)-1] != want {
		t.Errorf("said %q, want %q", f.said, want)
	}
	o := f.project().Outline
	if o.Swell != 4.5 || o.Butt != 25 || o.Grind != 1.2 || f.project().Sheath != was || f.at() != "knife.outline.grind" || act.Typing(f.pane) {
		t.Fatalf("at %s: %+v, said %q", f.at(), o, f.said)
	}
	f.keys("7.7", "enter")
	if f.project().Outline.Grind != 7.7 || f.at() == "knife.outline.grind" {
		t.Errorf("by hand, at %s: %v", f.at(), f.project().Outline.Grind)
	}
	f.goTo("knife.outline.grind", -1)
	f.read("8.8") // the page was left meanwhile
	if f.project().Outline.Grind != 8.8 {
		t.Errorf("after another key: %v", f.project().Outline.Grind)
	}
}

// A question on the page's last number stays while readings go on.
func TestAQuestionOnThePagesLastNumber(t *testing.T) {
	f := open(t, defaults())
	f.goTo("knife.outline.grind", -1)
	f.keys("25", "enter")
	f.goTo("knife.outline.grind", -1)
	f.read("0.9")
	f.warned("0.9: is the calliper in inches?")
	f.read("12")
	f.warned("0.9: is the calliper in inches?")
	if want := "the page is full, not taken: 12; → leads to the sheath page"; f.said[len(f.said)-1] != want || f.project().Outline.Grind != 25 {
		t.Errorf("%v, said %q", f.project().Outline.Grind, f.said)
	}
}

// A number that is typed on a choice is the next number's; where none follows on the page
// that is said.
func TestANumberOnAChoice(t *testing.T) {
	f := open(t, defaults())
	f.goTo("knife.outline.front", -1)
	f.keys("1", "4", "enter")
	if o := f.project().Outline; o.FrontLength != 14 {
		t.Errorf("%+v, said %q", o, f.said)
	}
	f.keys("end")
	if f.at() != "knife.back" {
		t.Fatalf("at %s", f.at())
	}
	was := f.project()
	f.keys("7")
	if want := "no number here: back is a choice, Space changes it"; f.said[len(f.said)-1] != want || act.Typing(f.pane) || !reflect.DeepEqual(was, f.project()) {
		t.Errorf("said %q, want %q", f.said, want)
	}
}
