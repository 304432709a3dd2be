package knifepane

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/ui/act"
	"chape/ui/form"
	"chape/ui/part"
	"chape/ui/test/rig"
)

func TestMeasuredMarksAreNotPutAwayUnasked(t *testing.T) {
	for _, by := range []string{"m", " "} {
		f := open(t, defaults())
		f.keys("m", "m") // the outline's marks, to be typed over
		if f.project().Source != project.FromStations || f.said[0] != outlineAtRisk {
			t.Fatalf("source %v, said %q", f.project().Source, f.said)
		}
		f.said = nil
		f.goTo("knife.station.thick", 3)
		f.read("2.05")
		before := f.project()
		if by != "m" {
			f.goTo(form.SourceKey, -1)
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
	f := open(t, measured())
	f.keys("m")
	if f.project().Source != project.FromOutline {
		t.Errorf("source %v, said %q", f.project().Source, f.said)
	}
}

func TestPastes(t *testing.T) {
	paste := func(f *desk, s string) {
		f.press(part.Press{KeyMsg: tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(s), Paste: true}})
	}
	for text, want := range map[string]length.Length{
		"120": 120, " 120,5 mm\r\n": 120.5, "\n4 1/2 in\n": 4.5 * length.Inch, "½ in": 0, "12 cm\tblade": 0,
	} {
		f := open(t, defaults())
		paste(f, text)
		if want == 0 {
			if f.keys("enter"); f.unfit == nil {
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

// The foot names the key that the row in hand wants.
func TestTheFootIsOfTheRow(t *testing.T) {
	f := open(t, defaults())
	for _, c := range []struct{ row, name, brief string }{
		{"knife.outline.blade", "Enter", "next number"}, {"customer.name", "Enter", "open it"}, {"customer.name", "letters", "type it"},
		{"customer.hand", "Space", "next choice"}, {"knife.outline.blade", "Space", ""},
	} {
		f.goTo(c.row, -1)
		for _, k := range f.pane.Keys()[0].Keys {
			if k.Help().Key == c.name && k.Brief != c.brief {
				t.Errorf("on %s the foot says %q of %s, want %q", c.row, k.Brief, c.name, c.brief)
			}
		}
	}
}

// The row that says where the marks come from names the key that reads them off a photograph.
func TestThePhotographIsNamed(t *testing.T) {
	f := open(t, defaults())
	f.goTo(form.SourceKey, -1)
	f.warned("marks from: outline: its figures; measured: mark by mark; I: off a photograph")
}

// Space on a number changes nothing, and says what would.
func TestSpaceOnANumberSaysWhatWouldDo(t *testing.T) {
	f := open(t, defaults())
	f.goTo("knife.outline.blade", -1)
	was := f.project()
	f.keys(" ")
	if want := "Space goes through choices; blade length is typed"; len(f.said) != 1 || f.said[0] != want || f.project().Outline != was.Outline {
		t.Errorf("said %q, want %q", f.said, want)
	}
}

func TestInchesAreTypedAndShownShort(t *testing.T) {
	p := defaults()
	p.Units = length.Inches
	f := open(t, p)
	f.goTo("sheath.leather", -1)
	f.warned("leather 1/8 in")
	f.keys("e")
	if got := f.pane.edit.Text(); got != "1/8" {
		t.Errorf("e opens %q", got)
	}
	f.keys("enter")
	if got := f.project().Sheath.Leather; got != 3.2 {
		t.Errorf("left as it was it becomes %v", got)
	}
	f.keys("m", "m")
	f.goTo("knife.station.bottom", 4)
	f.keys("10000", "enter")
	f.warned(`"10000" will not do: give between 0 and 19.`)
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
	f.keys(" ")
	f.warned("guard length")
	f.keys(" ")
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
	f.doc.Commit("another", func(p *project.Project) error {
		p.Fits = append(p.Fits, project.Fit{Fit: calc.Fit{At: 80, By: 1, Reach: 20}, With: "same thickness"})
		return nil
	})
	f.show()
	f.warned("at by reach stock note")
	f.warned("same thickness")
	f.pane.SetSize(30, 20)
	f.warned("same thickne…")
}

// The pane says that there is more, and where, over the rows.
func TestWhereTheRowsLie(t *testing.T) {
	f := open(t, measured())
	n := len(f.pane.rows)
	f.pane.SetSize(78, 14)
	f.keys("home")
	second := func() string { return strings.Join(strings.Fields(strings.Split(f.screen(), "\n")[1]), " ") }
	if got, want := second(), fmt.Sprintf("1-11 of %d, PgDn", n); !strings.HasPrefix(got, want) {
		t.Errorf("second line %q, want %q", got, want)
	}
	f.keys("end")
	if got := second(); !strings.Contains(got, fmt.Sprintf("-%d of %d, PgUp", n, n)) {
		t.Errorf("second line %q", got)
	}
	f.keys("home")
	f.goTo("knife.station.at", 14)
	if got := second(); !strings.HasPrefix(got, "at gap depth") {
		t.Errorf("second line %q", got)
	}
	f.pane.SetSize(78, n+5)
	if f.keys("home"); strings.Contains(f.screen(), "PgDn") {
		t.Errorf("all rows are shown:\n%s", f.screen())
	}
}

// Each page fits a window of 24 lines or nearly: at most two of its rows are out of sight.
func TestPagesFitASmallWindow(t *testing.T) {
	f := open(t, defaults())
	f.pane.SetSize(78, 20)
	for p := range form.Page(form.Pages) {
		f.pane.show(p)
		if over := len(f.pane.rows) - f.pane.body(); over > 2 {
			t.Errorf("%v has %d rows more than fit:\n%s", p, over, f.screen())
		}
	}
}

// The arrows go through the pages and change nothing; a click on a name goes there.
func TestTurningPages(t *testing.T) {
	f := open(t, defaults())
	before := f.project()
	f.goTo("customer.edge", -1)
	for range form.Pages {
		f.keys("right")
	}
	if f.at() != "customer.edge" || !reflect.DeepEqual(before, f.project()) {
		t.Errorf("round the pages it comes to %s", f.at())
	}
	for _, w := range []int{78, 54, 40, 30} {
		f.pane.SetSize(w, 20)
		for x := range w {
			f.press(rig.Click(x, 0))
			if first, _, _ := strings.Cut(f.screen(), "\n"); !strings.Contains(first, "["+f.pane.page.Short()) && !strings.Contains(first, "["+f.pane.page.String()) {
				t.Fatalf("%d cells: %v is in hand, the line says %q", w, f.pane.page, first)
			}
		}
	}
}

// Enter by hand stops once at each choice on the way; a measuring tool's goes on to the
// next number.
func TestEnterStopsAtChoicesOnce(t *testing.T) {
	var met []string
	walk := func(f *desk) {
		for range 80 {
			f.keys("enter")
			if c := f.pane.cell(); c != nil && form.Cycles(*c) {
				met = append(met, c.Key)
			}
			if c := f.pane.cell(); c != nil && !form.Cycles(*c) && !form.Numeric(*c) {
				f.keys("esc", "down")
			}
		}
	}
	f := open(t, defaults())
	walk(f)
	for _, key := range []string{"knife.outline.point", "knife.outline.front", "knife.outline.section", "belt.loop", "stitch.method"} {
		if n := len(slices.DeleteFunc(slices.Clone(met), func(k string) bool { return k != key })); n != 1 {
			t.Errorf("%s is stopped at %d times", key, n)
		}
	}
	f = open(t, defaults())
	for range 30 {
		f.press(part.Press{KeyMsg: tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("9")}})
		f.read(f.pane.cell().Show(f.project()))
		if c := f.pane.cell(); !form.Numeric(*c) {
			t.Fatalf("a reading's Enter goes to %s", c.Key)
		}
		f.pane.edit = nil
	}
}

// Several readings in one paste fill as many rows, or none where one will not do.
func TestPasteOfSeveral(t *testing.T) {
	paste := func(f *desk, s string) {
		f.press(part.Press{KeyMsg: tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(s), Paste: true}})
	}
	f := open(t, defaults())
	paste(f, "142.5\n31,2\r\n3.8\n14\n")
	o := f.project().Outline
	if o.Blade != 142.5 || o.Depth != 31.2 || o.Spine != 3.8 || o.FrontLength != 14 || f.said[0] != "4 numbers pasted, blade length to bolster length" {
		t.Errorf("got %+v, said %q", o, f.said)
	}
	if label, _ := f.doc.Undo(); label != "4 pasted numbers" || f.project().Outline.Blade != 110 {
		t.Errorf("undo of %q", label)
	}
	f = open(t, defaults())
	before := f.project()
	paste(f, "142.5\n3000")
	if !reflect.DeepEqual(before, f.project()) || !strings.HasPrefix(f.said[0], "nothing was pasted: blade depth: ") {
		t.Errorf("said %q", f.said)
	}
	f = open(t, measured())
	f.goTo("knife.station.thick", 1)
	paste(f, "1.15\n1.75\n2.55")
	if s := f.project().Knife.Stations; s[1].Thick != 1.15 || s[2].Thick != 1.75 || s[3].Thick != 2.55 {
		t.Errorf("down a column: %+v, said %q", s[:4], f.said)
	}
}

func TestADayIsADate(t *testing.T) {
	f := open(t, defaults())
	f.goTo("customer.due", -1)
	f.keys("enter", "24 Dec", "enter")
	if got := f.project().Customer.Due.Format("01-02"); got != "12-24" {
		t.Errorf("24 Dec is %s, said %q", got, f.said)
	}
}

// A click finds the row that is drawn on its line.
func TestClicksFindTheirRow(t *testing.T) {
	f := open(t, withRows())
	for _, start := range []string{"home", "pgdown", "pgdown", "end"} {
		f.keys(start)
		for y, l := range strings.Split(f.screen(), "\n") {
			i, ok := f.pane.rowAt(y)
			if !ok || f.pane.rows[i].IsHeading() || f.pane.rows[i].List != "" {
				continue
			}
			if name := f.pane.rows[i].Cells[0].Name; !strings.HasPrefix(l, " "+name) {
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

// Corrections that are offered are no reason to say that there are none.
func TestOfferedCorrectionsAreNamed(t *testing.T) {
	p := defaults()
	p.Carried = make([]project.Carried, 3)
	f := open(t, p)
	f.pane.show(form.Trial)
	f.warned("3 offered: T shows them")
	if strings.Contains(f.screen(), "No corrections") {
		t.Error(f.screen())
	}
}

// Gone through for the first time the order page is gone through whole: Enter comes to the
// day it is due, the title and the notes, too, and to each of them once. A reading's Enter
// passes them over.
func TestEnterComesToTheTexts(t *testing.T) {
	f := open(t, defaults())
	f.goTo("customer.name", -1)
	f.keys("A", "n", "n", "a", "enter")
	var met []string
	for range 24 {
		if c := f.pane.cell(); c != nil && !form.Numeric(*c) && !form.Cycles(*c) {
			met = append(met, c.Key)
			f.keys("enter") // opens it
		}
		f.keys("enter")
	}
	if n := min(3, len(met)); !slices.Equal(met[:n], []string{"customer.due", "title", "notes"}) || slices.Contains(met[n:], "title") {
		t.Errorf("Enter comes to %q", met)
	}
	if got := f.project().Customer.Name; got != "Anna" {
		t.Errorf("for %q", got)
	}
	f = open(t, defaults())
	f.goTo("sheath.mouth", -1)
	for range 40 {
		f.read(f.pane.cell().Show(f.project()))
		if c := f.pane.cell(); !form.Numeric(*c) {
			t.Fatalf("a reading's Enter goes to %s", c.Key)
		}
	}
}
