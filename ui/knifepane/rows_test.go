package knifepane

import (
	"fmt"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"chape/calc/length"
	"chape/project"
	"chape/ui/act"
	"chape/ui/part"
	"chape/ui/test/rig"
)

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
		f.press(part.Press{KeyMsg: tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(s), Paste: true}})
	}
	for text, want := range map[string]length.Length{
		"120": 120, " 120,5 mm\r\n": 120.5, "\n4 1/2 in\n": 4.5 * length.Inch, "½ in": 0, "12 cm\tblade": 0,
	} {
		f := open(t, defaults())
		paste(f, text)
		if want == 0 {
			if f.unfit == nil {
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
		{"knife.outline.blade", "q x a\nmore", `"q x a" is not a number: paste a figure, with its unit or without; blade length stays`},
		{"knife.outline.point", "5", "point takes no text: Space goes through the choices"},
		{"title", "5", "Enter opens the text, then paste"},
	} {
		f.goTo(c.key, -1)
		paste(f, c.text)
		if len(f.said) != i+1 || f.said[i] != c.want || act.Typing(f.pane) {
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

func TestKeyTable(t *testing.T) {
	f := open(t, defaults())
	rig.CheckKeys(t, f.pane)
	rig.CheckSizes(t, f.pane, 90, 40)
}
