package config

import (
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"time"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/steps"
	"chape/project/store"
	"chape/project/store/storetest"
)

const mine = `# what I like
units = "in"   # the bench ruler
paper = "letter"
shelf = "~/knives"
glyphs = "blocks"
cell = 2.1
colours = "dark"
bell = false
notice = "osc 9"
on_due = ["ring", "twice"]
scale_step = 0.5

[printer]
x = 99.5

[limits]
drum = "1 1/2 in"
tight = 4

[price]
currency = "€"
leather_ft2 = 10
hour = 40

[sheath]
leather = "8 oz"
[belt]
offset = 9
[stitch]
method = "two needles"

[[step]]
title = "Tape the edge"
caution = "the edge cuts"
[[step]]
title = "Let it dry"
short = "DRY"
hold = "24h"
latest = "48h"
`

func load(t *testing.T, text string) (Config, error) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "config.toml")
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	c, err := Load(store.OSLockingIn(""), path)
	if after, _ := os.ReadFile(path); string(after) != text {
		t.Errorf("loading changed the file to %q", after)
	}
	return c, err
}

func TestDecodeMine(t *testing.T) {
	c, err := load(t, mine)
	if err != nil {
		t.Fatal(err)
	}
	if c.Units != length.Inches || c.Paper != "letter" || c.Glyphs != "blocks" || c.Cell != 2.1 || c.Colours != "dark" ||
		c.Scale != 0.5 || c.Bell || c.Notice != "osc 9" || !reflect.DeepEqual(c.OnDue, []string{"ring", "twice"}) || c.Printer.X != 99.5 || c.Printer.Y != 0 {
		t.Errorf("read %+v", c)
	}
	want := calc.DefaultLimits()
	want.Drum, want.Tight = 38.1, 4
	if c.Limits() != want {
		t.Errorf("limits %+v, want %+v", c.Limits(), want)
	}
	if s := c.Shop(); s.Prices.Hour.String() != "40" || s.Offcut != calc.DefaultOffcut || s.Prices.Currency.Sign != "€" || s.Prices.LeatherBy != length.SquareFoot {
		t.Errorf("rates %+v %q", s.Prices, s.Prices.Currency.Sign)
	}
	if got, want := c.ShelfFolder("/home/me", "/data"), filepath.FromSlash("/home/me/knives"); got != want {
		t.Errorf("the shelf is %q, want %q", got, want)
	}
	p := c.NewProject("Test")
	if p.Title != "Test" || p.Units != length.Inches || p.Sheath.Leather != 3.175 || p.Belt.Centred || p.Belt.Offset != 9 ||
		p.Stitch.Method != calc.TwoNeedles || math.Abs(p.Sheath.Margin.In()-3.0/16) > 1e-9 { // the default, in round inches
		t.Errorf("new project %+v", p)
	}
	if len(p.Steps) != 2 || p.Steps[0].Caution != "the edge cuts" || p.Steps[1].Hold != 24*time.Hour || p.Steps[1].Latest != 48*time.Hour {
		t.Errorf("steps %+v", p.Steps)
	}
	if err := p.Validate(); err != nil {
		t.Error(err)
	}
	p.Steps[0].Title = "changed"
	if c.Steps()[0].Title != "Tape the edge" {
		t.Error("a project shares its steps with the configuration")
	}
}

func TestNoFile(t *testing.T) {
	c, err := Load(store.OSLockingIn(""), filepath.Join(t.TempDir(), "none", "config.toml"))
	if err != nil || !reflect.DeepEqual(c, Defaults()) {
		t.Errorf("without a file: %+v, %v", c, err)
	}
	for name, text := range map[string]string{"empty": "", "comment": "# none yet\n", "sample": string(Sample())} {
		if c, err := load(t, text); err != nil || !reflect.DeepEqual(c, Defaults()) {
			t.Errorf("%s: %+v, %v", name, c, err)
		}
	}
	if got, want := Defaults().Steps(), steps.FormThenSew(project.Defaults().Parts()); !reflect.DeepEqual(got, want) {
		t.Errorf("the first list is %+v", got)
	}
	if c := Defaults(); c.ShelfFolder("/home/me", "/data") != "/data" {
		t.Error("the shelf is not the folder it should be without a file")
	}
}

func TestRefused(t *testing.T) {
	for _, c := range []struct {
		text, want string
	}{
		{"glyph = \"ascii\"", `:1: glyph: found a key this program does not know: did you mean glyphs? Change it or take it out`},
		{"hour = 3", ":1: hour: found a key this program does not know: hour belongs in [price]: move it or take it out"},
		{"\nunits = \"cm\"", `:2: units: found "cm": try mm or in`},
		{"units = 3", ":1: units: found 3: try mm or in"},
		{"cell = 9", ":1: cell: found 9: give between 1 and 4"},
		{"cell = nan", ":1: cell: found NaN: write a number, such as 0.5"},
		{"bell = 1", ":1: bell: found 1: write true or false"},
		{"paper = \"a9\"", `:1: paper: found "a9": try a4, a3, letter, legal, 210x297 or 8.5x11in`},
		{"shelf = \"knives\"", `:1: shelf: found "knives": give a full path, or one from the home folder on, as in "~/sheaths"`},
		{"on_due = \"beep\"", `:1: on_due: found "beep": write a list of texts, such as ["command", "word"], or [] for none`},
		{"on_due = [\"\", \"x\"]", `:1: on_due: found no command before its words: give it, as in ["command", "word"], or [] for none`},
		{"printer = 3", ":1: printer: found 3: write a table: [printer]"},
		{"[printer]\ny = 60", ":2: printer.y: found 60: give 95 to 105, or 0: print at 100 %, without fitting to the page, and measure again"},
		{"[limits]\ntight = 1", ":2: limits.tight: found 1 mm: give at least limits.snug, 1.5 mm"},
		{"[limits]\nlonger = 0.5", ":0: limits.longest"},
		{"[price]\nholds = 0.4", ":2: price.holds: found 0.4: give whole days, such as 30; 0: no end is set"},
		{"[price]\nleather_m2 = 80\nleather_ft2 = 9", ":3: price.leather_ft2: found a price by the square metre as well: give one of the two"},
		{"[price]\nhour = -1", ":2: price.hour: found -1: give between 0 and 1000000"},
		{"[sheath]\nmouth = 140", ":2: sheath.mouth: found a key this program does not know: it is of one knife alone: take it out"},
		{"[sheath]\ngap = 2", ":2: sheath.gap: found 2 mm"},
		{"[sheath.belt]\nx = 2", ":1: sheath.belt: found a key this program does not know"},
		{"[limit]\ndrum = 2", ":1: limit: found a key this program does not know: did you mean limits? Change it or take it out"},
		{"[[step]]\ntitle = \"x\"\ndone = 2026-01-01T00:00:00Z", ":3: step.done of step 1: found a key this program does not know"},
		{"[[step]]\nhold = \"1h\"", ":1: step.title of step 1: found nothing: give it: what is to be done"},
		{"list = \"own\"", `:1: list: found "own": give your steps in [[step]], or take form then sew or sew then form`},
		{"units =", ":1: found "},
		{"a = " + strings.Repeat("[", 20000), ":1: found values nested over 8 deep"},
	} {
		got, err := load(t, c.text)
		if err == nil || !strings.Contains(err.Error(), strings.Replace(c.want, ":0:", ":", 1)) {
			t.Errorf("%.60q:\n  got  %v\n  want …%s", c.text, err, c.want)
			continue
		}
		if strings.ContainsAny(err.Error(), "\n\x1b") || !strings.Contains(err.Error(), "config.toml") {
			t.Errorf("%.60q: not one line with the file: %q", c.text, err)
		}
		if !reflect.DeepEqual(got, Defaults()) {
			t.Errorf("%.60q: the defaults do not hold", c.text)
		}
	}
}

func TestRoundTrip(t *testing.T) {
	c, err := load(t, mine)
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]Config{"mine": c, "defaults": Defaults()} {
		got, err := Decode("again", Encode(want))
		if err != nil || !reflect.DeepEqual(got, want) {
			t.Errorf("%s:\ngot  %+v %v\nwant %+v", name, got, err, want)
		}
	}
}

// Every threshold of the checks can be changed.
func TestEveryLimit(t *testing.T) {
	c := Defaults()
	v := reflect.ValueOf(&c.limits).Elem()
	for i := range v.NumField() {
		before := string(Encode(c))
		v.Field(i).SetFloat(v.Field(i).Float() + 0.125)
		if string(Encode(c)) == before {
			t.Errorf("no key for limit %s", v.Type().Field(i).Name)
		}
	}
}

func FuzzDecode(f *testing.F) {
	f.Add([]byte(mine))
	f.Add(Encode(Defaults()))
	f.Add([]byte("[limits]\ndrum = \"⅛ in\"\n[[step]]\ntitle = \"\\u202e\""))
	f.Fuzz(func(t *testing.T, data []byte) {
		c, err := Decode("x", data)
		if err != nil {
			if strings.ContainsAny(err.Error(), "\n\x1b\x00") {
				t.Errorf("not one plain line: %q", err)
			}
			return
		}
		again, err := Decode("again", Encode(c))
		if err != nil || !reflect.DeepEqual(again, c) {
			t.Errorf("%q becomes\n%s\n%v", data, Encode(c), err)
		}
		if err := c.NewProject("x").Validate(); err != nil {
			t.Errorf("%q gives a project that will not do: %v", data, err)
		}
	})
}

// Errors about the settings speak of settings, not of a project's file.
func TestErrorsSpeakOfSettings(t *testing.T) {
	dir := t.TempDir()
	folder := filepath.Join(dir, "folder.toml")
	if err := os.Mkdir(folder, 0o700); err != nil {
		t.Fatal(err)
	}
	large := filepath.Join(dir, "large.toml")
	if err := os.WriteFile(large, make([]byte, store.MaxSize+1), 0o600); err != nil {
		t.Fatal(err)
	}
	good := filepath.Join(dir, "good.toml")
	if err := os.WriteFile(good, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	fsys := store.OSLockingIn("")
	loaded := func(path string) error { _, err := Load(fsys, path); return err }
	decoded := func(text string) error { _, err := Decode("config.toml", []byte(text)); return err }
	full, other := storetest.New(), storetest.New()
	full.Limited = true
	other.Before = func(_ int, call string) {
		if strings.HasPrefix(call, "swap ") {
			os.WriteFile(good, []byte("bell = false\n"), 0o600)
		}
	}
	for what, err := range map[string]error{
		"a folder":     loaded(folder),
		"too large":    loaded(large),
		"a device":     loaded(os.DevNull),
		"large text":   decoded(strings.Repeat("#", store.MaxSize+1)),
		"zero byte":    decoded("units = \x00"),
		"many values":  decoded("a = [" + strings.Repeat("1,", 200000) + "]"),
		"full disk":    Keep(full, good, Change{"cell", 2.5}),
		"keep in none": Keep(fsys, folder, Change{"cell", 2.5}),
		"changed":      Keep(other, good, Change{"cell", 2.5}),
	} {
		if err == nil {
			t.Errorf("%s: no error", what)
			continue
		}
		text := err.Error()
		if strings.Contains(text, "project") || strings.Contains(text, "another folder") || strings.Contains(text, "keep both") {
			t.Errorf("%s: %s", what, text)
		}
	}
}
