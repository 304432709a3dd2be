package knifepane

import (
	"fmt"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"

	"chape/calc/length"
	"chape/project"
)

// read types what a calliper types: the digits and its Enter in one breath.
func (f *form) read(readings ...string) {
	f.t.Helper()
	for _, r := range readings {
		for _, c := range r {
			f.take(f.pane.Key(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{c}}, false))
		}
		f.take(f.pane.Key(tea.KeyMsg{Type: tea.KeyEnter}, true))
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
	if f.at() != "knife.outline.depth" || !f.pane.Editing() || f.pane.edit.text() != "2500" {
		t.Fatalf("at %s with %q", f.at(), f.pane.edit.text())
	}
	f.warned(`"2500" will not do: give 5, up to 200 mm`)
	f.warned("the next number replaces it")
	f.read("31.2", "3.8")
	o := f.project().Outline
	if o.Blade != 142.5 || o.Depth != 31.2 || o.Spine != 3.8 || f.pane.Editing() || f.at() != "knife.outline.grind" {
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
	f.take(f.pane.Key(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("120"), Paste: true}, false))
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

func TestMeasuredMarksAreNotPutAwayUnasked(t *testing.T) {
	for _, by := range []string{"m", " ", "left", "right"} {
		f := open(t, defaults())
		f.keys("m") // the outline's marks, to be typed over
		if f.project().Source != project.FromStations || len(f.said) > 0 {
			t.Fatalf("source %v, said %q", f.project().Source, f.said)
		}
		f.goTo("knife.station.thick", 3)
		f.read("2.05")
		before := f.project()
		if by != "m" {
			f.goTo(sourceKey, -1)
		}
		f.keys(by)
		if p := f.project(); p.Source != project.FromStations || len(f.said) != 1 || f.said[0] != marksAtRisk {
			t.Fatalf("%q: source %v, said %q", by, p.Source, f.said)
		}
		f.keys("down", "up") // not the same key again
		f.keys(by)
		if f.project().Source != project.FromStations {
			t.Fatalf("%q: put away by an earlier key", by)
		}
		f.keys(by)
		if p := f.project(); p.Source != project.FromOutline || f.said[len(f.said)-1] != "your measured marks are put away: u brings them back" {
			t.Fatalf("%q twice: source %v, said %q", by, p.Source, f.said)
		}
		if label, _ := f.doc.Undo(); label != "marks from outline" || f.project().Knife.Stations[3] != before.Knife.Stations[3] {
			t.Errorf("undo of %q gives mark %+v", label, f.project().Knife.Stations[3])
		}
	}
}

func TestMarksAsTheOutlineGivesThemGoWithoutAsking(t *testing.T) {
	f := open(t, defaults())
	f.keys("m", "m")
	if f.project().Source != project.FromOutline || len(f.said) > 0 {
		t.Errorf("source %v, said %q", f.project().Source, f.said)
	}
}

func TestPastes(t *testing.T) {
	paste := func(f *form, s string) {
		f.take(f.pane.Key(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(s), Paste: true}, false))
	}
	for text, want := range map[string]length.Length{
		"120": 120, " 120,5 mm\r\n": 120.5, "\n4 1/2 in\n": 4.5 * length.Inch, "½ in": 0, "12 cm\tblade": 0,
	} {
		f := open(t, defaults())
		paste(f, text)
		if want == 0 {
			if f.pane.Problem() == nil {
				t.Errorf("%q is taken", text)
			}
			continue
		}
		f.keys("enter")
		if got := f.project().Outline.Blade; got != want || len(f.said) > 0 {
			t.Errorf("%q gives %v, said %q", text, got, f.said)
		}
	}
	f := open(t, defaults())
	for i, c := range []struct{ key, text, want string }{
		{"knife.outline.blade", "q x a\nmore", `blade length stays: what was pasted, "q x a", is not a number: paste one such as 3.2 mm`},
		{"knife.outline.point", "5", "point takes no text: Space goes through the choices"},
		{"title", "5", "Enter opens the text, then paste"},
	} {
		f.goTo(c.key, -1)
		paste(f, c.text)
		if len(f.said) != i+1 || f.said[i] != c.want || f.pane.Editing() {
			t.Errorf("%s: said %q, want %q", c.key, f.said, c.want)
		}
	}
}

func TestInchesAreTypedAndShownShort(t *testing.T) {
	p := defaults()
	p.Units = length.Inches
	f := open(t, p)
	f.goTo("sheath.leather", -1)
	f.warned("leather 1/8 in")
	f.keys("e")
	if got := f.pane.edit.text(); got != "1/8" {
		t.Errorf("e opens %q", got)
	}
	f.keys("enter")
	if got := f.project().Sheath.Leather; got != 3.2 {
		t.Errorf("left as it was it becomes %v", got)
	}
	f.goTo("knife.station.bottom", 4)
	f.keys("10000", "enter")
	f.warned(`"10000" will not do: give 0, up to 19.`)
	if s := f.screen(); strings.Contains(s, " mm") {
		t.Errorf("millimetres in a project in inches:\n%s", s)
	}
}

func TestFrontRows(t *testing.T) {
	f := open(t, defaults())
	for want, have := range map[string]bool{"bolster length": true, "bolster depth": true, "bolster thickness": true, "guard length": false} {
		if strings.Contains(f.screen(), want) != have {
			t.Errorf("%q is there: %v", want, !have)
		}
	}
	f.goTo("knife.outline.front", -1)
	f.keys("right")
	f.warned("guard length")
	f.keys("right")
	if s := f.screen(); strings.Contains(s, "guard l") || strings.Contains(s, "front l") {
		t.Errorf("without bolster or guard there are rows for it:\n%s", s)
	}
	f.keys("enter")
	if f.at() != "knife.outline.handle" {
		t.Errorf("Enter goes to %s", f.at())
	}
}

func TestCorrectionsAreShownWhole(t *testing.T) {
	f := open(t, withRows())
	f.goTo("fit.at", 0)
	f.keys("f")
	f.warned("at by reach stock note")
	f.warned("same thickness")
	f.pane.SetSize(30, 20)
	f.warned("same thickne…")
}

// The pane says that there is more, and where, on its first line.
func TestWhereTheRowsLie(t *testing.T) {
	f := open(t, withRows())
	n := len(f.pane.rows)
	f.keys("home")
	first := func() string { l, _, _ := strings.Cut(f.screen(), "\n"); return strings.Join(strings.Fields(l), " ") }
	if got, want := first(), fmt.Sprintf("Outline 1-19 of %d, PgDn", n); got != want {
		t.Errorf("first line %q, want %q", got, want)
	}
	if lines := strings.Split(f.screen(), "\n"); strings.TrimSpace(lines[18]) == "" || strings.TrimSpace(lines[19]) == "" {
		t.Errorf("lines are left empty:\n%s", f.screen())
	}
	f.goTo("knife.station.at", 14)
	f.keys("down", "up")
	f.goTo("sheath.mouth", -1)
	f.keys("up", "up")
	if got := first(); !strings.HasPrefix(got, "at gap depth") && !strings.HasPrefix(got, "Marks") || !strings.HasSuffix(got, "PgUp PgDn") {
		t.Errorf("first line %q", got)
	}
	f.keys("end")
	if got := first(); !strings.HasSuffix(got, fmt.Sprintf("-%d of %d, PgUp", n, n)) {
		t.Errorf("first line %q", got)
	}
	f.pane.SetSize(78, n+4)
	f.keys("home")
	if got := first(); got != "Outline" {
		t.Errorf("all rows are shown, and the first line is %q", got)
	}
}

// A click finds the row that is drawn on its line.
func TestClicksFindTheirRow(t *testing.T) {
	f := open(t, withRows())
	for _, start := range []string{"home", "pgdown", "pgdown", "end"} {
		f.keys(start)
		for y, l := range strings.Split(f.screen(), "\n") {
			i, ok := f.pane.rowAt(y)
			if !ok || f.pane.rows[i].isHeading() || f.pane.rows[i].list != "" {
				continue
			}
			if name := f.pane.rows[i].cells[0].Name; !strings.HasPrefix(l, " "+name) {
				t.Errorf("line %d is %q, a click there goes to %s", y, l, name)
			}
		}
	}
}
