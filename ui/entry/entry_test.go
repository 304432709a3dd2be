package entry

import (
	"reflect"
	"strings"
	"testing"
	"time"

	"chape/calc/length"
	"chape/project"
	"chape/ui/act"
	"chape/ui/part"
	"chape/ui/test/rig"
)

func fresh(u length.Unit) project.Project {
	p := project.New("Test", u, project.Defaults())
	p.Untouched = ""
	return p
}

// kept is the project with a text in a field, if that will do.
func kept(t *testing.T, p project.Project, key, text string) (project.Project, *Entry) {
	t.Helper()
	e := New(fieldOf(project.Fields, key), p, text, rig.Noon)
	if e.Err == nil {
		for _, m := range e.Commit() {
			if said, is := m.(act.Say); is { // of a fraction, or a day
				if !strings.Contains(said.Text, "read as inches") && !strings.Contains(said.Text, "is over already") {
					t.Errorf("%s %q: said %q", key, text, said.Text)
				}
				continue
			}
			if err := m.(act.Commit).Do(&p); err != nil {
				t.Errorf("%s %q: %v", key, text, err)
			}
		}
	}
	return p, e
}

// What is typed is read as people write it, and kept as a length to the last bit.
func TestWhatIsTyped(t *testing.T) {
	for _, c := range []struct {
		unit       length.Unit
		text       string
		want       length.Length
		complained string // "": it will do
	}{
		{length.Millimetres, "31.2", 31.2, ""},
		{length.Millimetres, "31,2", 31.2, ""},
		{length.Millimetres, " +031.20 mm ", 31.2, ""},
		{length.Millimetres, "1 1/4", 31.75, ""},
		{length.Millimetres, "1-1/4\"", 31.75, ""},
		{length.Millimetres, "1¼ in", 31.75, ""},
		{length.Inches, "1 3/8", 34.925, ""},
		{length.Inches, "1.375", 34.925, ""},
		{length.Inches, "1,375", 34.925, ""},
		{length.Inches, "30 mm", 30, ""},
		{length.Millimetres, "3000", 0, `"3000" will not do: give between 5 and 200 mm`},
		{length.Millimetres, "-3", 0, `"-3" will not do: give between 5 and 200 mm`},
		{length.Inches, "12", 0, `"12" will not do: give between 0.2 and 7.87 in`},
		{length.Millimetres, "1,234.5", 0, `"1,234.5" is not a length: write it with one decimal point and no thousands mark, as 1234.5`},
		{length.Millimetres, "30-31", 0, `"30-31" is not a length: a range will not do, write one figure`},
		{length.Millimetres, "1 9/8", 0, `"1 9/8" is not a length: the fraction after a whole number must be less than 1, try 1 3/8 in`},
		{length.Millimetres, "8 oz", 0, `"8 oz" is a leather weight: here try 3.2, 3.2 mm, 1/8 in`},
		{length.Millimetres, "thirty", 0, `"thirty" is not a length: try 3.2, 3.2 mm, 1/8 in`},
	} {
		is, e := kept(t, fresh(c.unit), "knife.outline.depth", c.text)
		switch {
		case c.complained == "" && (e.Err != nil || is.Outline.Depth != c.want):
			t.Errorf("%q in %v: %v, %v", c.text, c.unit, is.Outline.Depth, e.Err)
		case c.complained != "" && (e.Err == nil || e.Complaint() != c.complained && !strings.HasPrefix(e.Complaint(), c.complained+"; is the ")):
			t.Errorf("%q in %v: complained of %v, want %q", c.text, c.unit, e.Err, c.complained)
		}
	}
}

// A slip is asked about from ten times the old value on, or a tenth of it; an old value of 0
// never asks.
func TestSlips(t *testing.T) {
	for _, c := range []struct {
		unit      length.Unit
		key, text string
		question  string // "": none
	}{
		{length.Millimetres, "knife.outline.blade", "1100", "1100: is the point missing? Enter keeps it, Esc puts 110 back"},
		{length.Millimetres, "knife.outline.blade", "1099.9", ""},
		{length.Millimetres, "knife.outline.blade", "1100.0", "1100.0: is the point in its place? Enter keeps it, Esc puts 110 back"},
		{length.Millimetres, "knife.outline.depth", "3", "3: is the point in its place? Enter keeps it, Esc puts 30 back"},
		{length.Millimetres, "knife.outline.depth", "3.1", ""},
		{length.Millimetres, "knife.outline.depth", "1.18", "1.18: is the calliper in inches? Enter keeps it, Esc puts 30 back"},
		{length.Millimetres, "sheath.drain", "30", ""},
		{length.Inches, "knife.outline.depth", "29.97", "29.97: is the calliper in millimetres? Enter keeps it, Esc puts 1 1/4 back"},
		{length.Inches, "sheath.leather", "1 5/16", "1 5/16: is the fraction right? Enter keeps it, Esc puts 1/8 back"},
		{length.Inches, "sheath.leather", "1 1/8", "1 1/8: is the 1 too much? Enter keeps it, Esc puts 1/8 back"},
	} {
		p := fresh(c.unit)
		e := New(fieldOf(project.Fields, c.key), p, c.text, rig.Noon)
		got := ""
		if e.Far() {
			got = e.Question()
		}
		if got != c.question {
			t.Errorf("%s %q: asked %q, want %q", c.key, c.text, got, c.question)
		}
	}
}

// Days are typed in many ways, from now on; a figure of a calliper is none.
func TestDays(t *testing.T) {
	for text, want := range map[string]string{
		"24 Dec": "2026-12-24", "dec 24": "2026-12-24", "24.12.": "2026-12-24", "24 December 2027": "2027-12-24",
		"2026-12-24": "2026-12-24", "2026-1-2": "2026-01-02", "1 Mar": "2027-03-01", "": "none",
		"24.12": "", "12.34": "", "30 Feb": "", "soon": "", "24/12": "",
	} {
		p, e := kept(t, fresh(length.Millimetres), "customer.due", text)
		got := "none"
		if !p.Customer.Due.IsZero() {
			got = p.Customer.Due.Format(time.DateOnly)
		}
		if (e.Err == nil) != (want != "") || e.Err == nil && got != want {
			t.Errorf("%q is %s, %v, want %q", text, got, e.Err, want)
		}
		if e.Err != nil && !strings.Contains(e.Complaint(), "is not a date: try ") {
			t.Errorf("%q: %q", text, e.Complaint())
		}
	}
}

// Nothing is complained of while more keys can make it right, all of it once Enter refused it.
func TestWrong(t *testing.T) {
	for text, at := range map[string]bool{
		"1": false, "1 ": false, "1/": false, "1 1/": false, "-": false, ".": false, "11 m": false, "": false,
		"3x": true, "thirty": true, "1;2": true,
	} {
		p := fresh(length.Millimetres)
		e := New(fieldOf(project.Fields, "knife.outline.blade"), p, text, rig.Noon)
		if e.Wrong() != at {
			t.Errorf("%q: complained of is %v", text, e.Wrong())
		}
		e.Refuse(p)
		if text != "" && (!e.Wrong() || !e.Released() || !strings.Contains(e.Complaint(), "; the next number replaces it")) {
			t.Errorf("%q refused: %v, %q", text, e.Wrong(), e.Complaint())
		}
		if text == "" && e.Wrong() {
			t.Error("nothing typed is wrong")
		}
	}
}

// A key previews, or drops what was previewed, or says that it will not do.
func TestKeysPreview(t *testing.T) {
	p := fresh(length.Millimetres)
	e := New(fieldOf(project.Fields, "knife.outline.blade"), p, "", rig.Noon)
	kinds := func(out []act.Msg) (names []string) {
		for _, m := range out {
			names = append(names, reflect.TypeOf(m).Name())
		}
		return names
	}
	press := func(name string) []act.Msg { return e.Key(part.Press{KeyMsg: rig.Key(name)}) }
	for _, c := range []struct{ key, want string }{
		{"1", ""}, {"2", ""}, {"0", "Preview"}, {"x", "Unfit"}, {"backspace", "Preview"}, {"left", ""},
		{"backspace", ""}, {"end", ""}, {"backspace", ""}, {"backspace", "Drop"},
	} {
		if got := strings.Join(kinds(press(c.key)), " "); got != c.want {
			t.Errorf("%s makes %q: %s, want %s", c.key, e.Text(), got, c.want)
		}
	}
	press("1")
	press("3")
	out := press("0")
	out[0].(act.Preview).Do(&p)
	if p.Outline.Blade != 130 {
		t.Errorf("previewed is %v", p.Outline.Blade)
	}
}

// Notes have lines; what is pasted into them keeps its own, other texts are one line.
func TestTexts(t *testing.T) {
	p := fresh(length.Millimetres)
	notes := New(fieldOf(project.Fields, "notes"), p, "one\ntwo", rig.Noon)
	notes.NewLine()
	notes.Key(part.Press{KeyMsg: rig.Paste("three\r\nfour")})
	if got := notes.Text(); got != "one\ntwo\nthree\nfour" {
		t.Errorf("notes %q", got)
	}
	name := New(fieldOf(project.Fields, "customer.name"), p, "", rig.Noon)
	if out := name.NewLine(); out != nil || name.Text() != "" {
		t.Errorf("a new line in a name: %v, %q", out, name.Text())
	}
	name.Key(part.Press{KeyMsg: rig.Paste("Anna\r\nBerlin")})
	if got := name.Text(); got != "Anna" {
		t.Errorf("name %q", got)
	}
	if is, _ := kept(t, p, "customer.name", "Anna"); is.Customer.Name != "Anna" {
		t.Errorf("kept %q", is.Customer.Name)
	}
	name.Refuse(p)
	if name.Released() || name.Line.Fresh {
		t.Error("words are put at risk by the next key")
	}
}

// Several pasted figures are one change, or none.
func TestSeveral(t *testing.T) {
	fields := []project.Field{fieldOf(project.Fields, "knife.outline.blade"), fieldOf(project.Fields, "knife.outline.depth"), fieldOf(project.Fields, "knife.outline.spine")}
	for text, want := range map[string][]string{
		"142.5\n31,2\r\n3.8\n": {"142.5", "31,2", "3.8"}, "1\t2;3": {"1", "2", "3"}, "\n\n 5 1/2 in \n": {"5 1/2 in"}, "": nil, " \n": nil,
	} {
		if got := Figures(text); !reflect.DeepEqual(got, want) {
			t.Errorf("%q is %q", text, got)
		}
	}
	for _, c := range []struct {
		text, said string
		blade      length.Length // what is kept
	}{
		{"142.5\n31,2\n3.8", "3 numbers pasted, blade length to spine thickness", 142.5},
		{"5 1/2 in\n1 1/4 in\n1/8 in", "3 numbers pasted, blade length to spine thickness", 139.7},
		{"142.5\n3000\n3.8", "nothing was pasted: blade depth: ", 110},
		{"142.5\nx\n3.8", "nothing was pasted: blade depth: \"x\" is not a length: try 3.2, 3.2 mm, 1/8 in", 110},
		{"142.5\n31.2\n3.8\n4\n5", "3 numbers pasted, blade length to spine thickness; 2 more had no row", 142.5},
	} {
		p := fresh(length.Millimetres)
		said := ""
		for _, m := range Several(fields, p.Clone(), Figures(c.text)) {
			switch m := m.(type) {
			case act.Say:
				said = m.Text
			case act.Commit:
				if err := m.Do(&p); err != nil {
					t.Error(err)
				}
			}
		}
		if !strings.HasPrefix(said, c.said) || p.Outline.Blade != c.blade {
			t.Errorf("%q: said %q, blade %v", c.text, said, p.Outline.Blade)
		}
	}
}

// A row that went while its value was typed takes nothing.
func TestARowThatIsGone(t *testing.T) {
	p := fresh(length.Millimetres)
	p.Source = project.FromStations
	last := len(p.Knife.Stations) - 1
	e := New(fieldOf(project.MarkFields(last), "knife.station.thick"), p, "2", rig.Noon)
	p.Knife.Stations = p.Knife.Stations[:last]
	if err := e.Commit()[0].(act.Commit).Do(&p); err != ErrGone {
		t.Errorf("kept with %v", err)
	}
}

// What stood there says nothing, unless it is the new project's: then it was given now.
func TestUnchanged(t *testing.T) {
	p := fresh(length.Millimetres)
	f := fieldOf(project.Fields, "knife.outline.blade")
	for text, want := range map[string]bool{"110": true, "": true, "110.0": false, "111": false} {
		if got := New(f, p, text, rig.Noon).Unchanged(); got != want {
			t.Errorf("%q: %v", text, got)
		}
	}
	p.Untouched = "blade"
	if New(f, p, "110", rig.Noon).Unchanged() {
		t.Error("the new project's figure, typed, is no change")
	}
}

// A day promised that is over already is kept and said in a word; today and later are not.
func TestADayThatIsOver(t *testing.T) {
	now := time.Date(2026, 11, 26, 9, 0, 0, 0, time.UTC)
	for text, want := range map[string]string{"2026-11-24": "due: 24 Nov 2026 is over already; kept all the same", "2026-11-26": "", "27 Nov": "", "": ""} {
		e := New(fieldOf(project.Fields, "customer.due"), fresh(length.Millimetres), text, now)
		said := ""
		for _, m := range e.Commit() {
			if s, ok := m.(act.Say); ok {
				said = s.Text
			}
		}
		if said != want {
			t.Errorf("%q: said %q, want %q", text, said, want)
		}
	}
}
