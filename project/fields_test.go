package project

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"chape/calc"
	"chape/calc/knife"
	"chape/calc/length"
	"chape/project/steps"
	"chape/project/weigh"
)

// full is a project with one row of everything.
func full() Project {
	p := Defaults()
	p.Source = FromStations
	p.Fits = []Fit{{With: "paper"}}
	p.Fits[0].Reach = 20
	p.Steps = []steps.Step{{Title: "x"}}
	p.Quotes = []Quote{{Date: time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC), Lines: "work | 80.00 | work | 2 h"}}
	p.Weigh = []weigh.Weighing{{When: time.Date(2026, 11, 25, 9, 30, 0, 0, time.UTC), Grams: 100, State: "drying"}}
	return p
}

func all() []Field {
	return slices.Concat(Fields, MarkFields(3), FitFields(0), StepFields(0), QuoteFields(0), WeighFields(0))
}

func TestEveryFieldIsNamedAndHasItsOwnKey(t *testing.T) {
	seen := map[string]bool{}
	for _, f := range all() {
		if seen[f.Key] {
			t.Errorf("%s stands twice", f.Key)
		}
		seen[f.Key] = true
		if f.Name == "" || f.Group == "" || strings.Contains(f.Name, "_") {
			t.Errorf("%s: name %q, group %q", f.Key, f.Name, f.Group)
		}
		if f.Hint == "" && f.Kind != Moment && f.Kind != Flag {
			t.Errorf("%s has no hint", f.Key)
		}
		if n := len(f.Auto); n > 12 { // of 80 columns the value has so many
			t.Errorf("%s: %q is cut", f.Key, f.Auto)
		}
		if f.Kind == Choice && len(f.Options) < 2 {
			t.Errorf("%s offers %q", f.Key, f.Options)
		}
	}
	if _, ok := FieldFor("sheath.leather"); !ok {
		t.Error("no sheath.leather")
	}
	if _, ok := FieldFor("sheath.nothing"); ok {
		t.Error("there is a sheath.nothing")
	}
}

// What is shown for editing and left as it is changes nothing.
func TestShowParseSetChangesNothing(t *testing.T) {
	for _, u := range []length.Unit{length.Millimetres, length.Inches} {
		p := full()
		p.Units = u
		for _, f := range all() {
			text := f.Show(p)
			v, err := f.Parse(text, p)
			if err != nil {
				t.Errorf("%s: Parse(%q) = %v", f.Key, text, err)
				continue
			}
			q := p.Clone()
			if err := f.Set(&q, v); err != nil {
				t.Errorf("%s: Set(%v) = %v", f.Key, v, err)
			} else if !reflect.DeepEqual(f.Get(q), f.Get(p)) {
				t.Errorf("%s: %q turns %v into %v", f.Key, text, f.Get(p), f.Get(q))
			}
		}
	}
}

// set types text into a field.
func set(t *testing.T, p *Project, f Field, text string) error {
	t.Helper()
	v, err := f.Parse(text, *p)
	if err != nil {
		return err
	}
	return f.Set(p, v)
}

func named(t *testing.T, key string) Field {
	t.Helper()
	for _, f := range all() {
		if f.Key == key {
			return f
		}
	}
	t.Fatalf("no field %q", key)
	return Field{}
}

func TestTypedIntoAField(t *testing.T) {
	for _, c := range []struct{ key, text, show, err string }{
		{"sheath.leather", "8 oz", "3.175", ""},
		{"sheath.leather", "3,2 mm", "3.2", ""},
		{"sheath.leather", "40", "", `"40" will not do: give between 0.2 and 15 mm`},
		{"sheath.mouth", "8 oz", "", `"8 oz" is a leather weight: here try 3.2, 3.2 mm, 1/8 in`},
		{"sheath.mouth", "500", "", "sheath.mouth: found 500 mm: the knife ends at 232 mm: give less"},
		{"sheath.gap", "3", "", "sheath.gap: found 3 mm: give more than clearance, 3 mm"},
		{"sheath.clearance", "9", "", "sheath.gap: found 7.5 mm: give more than clearance, 9 mm"},
		{"sheath.blend", "100", "100", ""},
		{"sheath.blend", "0", "", "sheath.blend: found 0 mm: give more than 0 and at most 1987 mm"},
		{"sheath.plies", "2", "2", ""},
		{"sheath.plies", "two", "", `"two" is not a whole number: try 2`},
		{"sheath.neutral", "0,4", "0.4", ""},
		{"stitch.waste", "7 %", "0.07", ""},
		{"stitch.waste", "much", "", `"much" is not a share: try 0.05 or 5 %`},
		{"stitch.needle", "", "1.5 threads", ""},
		{"stitch.needle", "1.1", "1.1", ""},
		{"belt.offset", "8", "8", ""},
		{"belt.offset", "Centred", "centred", ""},
		{"belt.loop", "n", "none", ""},
		{"knife.source", "Measured", "measured", ""},
		{"knife.source", "o", "outline", ""},
		{"knife.source", "stations", "measured", ""}, // the file's word
		{"knife.source", "x", "", `"x" is not one of them: try measured or outline`},
		{"belt.loop", "x", "", `"x" is not one of them: try folded or none`},
		{"stitch.method", "Two", "two needles", ""},
		{"customer.due", "2026-12-18", "2026-12-18", ""},
		{"customer.due", "", "", ""},
		{"customer.due", "18.12.", "", `"18.12." is not a date: try 2026-12-18`},
		{"step.hold", "24h", "24h", ""},
		{"step.hold", "1h30m", "1h30m", ""},
		{"step.hold", "1", "", `"1" is not a duration: try 24h or 15m`},
		{"step.short", "RETENTIONS", "", "10 letters will not do: give at most 9 letters"},
		{"step.title", "  ", "", `"" will not do: give it some words`},
		{"step.started", "2026-11-25T09:30:00+01:00", "2026-11-25T09:30:00+01:00", ""},
		{"step.started", "yesterday", "", `"yesterday" is not a time: try 2026-11-25T09:30:00+01:00`},
		{"step.started", "1815-06-18T12:00:00Z", "", "1815-06-18T12:00:00Z will not do: give a time between the years 1970 and 2200"},
		{"step.skipped", "Y", "yes", ""},
		{"step.skipped", "maybe", "", `"maybe" is neither: try yes or no`},
		{"knife.outline.blade", "12", "", `"12" will not do: give between 20 and 1500 mm`},
		{"knife.outline.front_length", "0.5", "", "knife.outline.front_length: found 0.5 mm: give 1 mm or more"},
		{"fit.by", "-1.5", "-1.5", ""},
		{"weigh.grams", "141,5", "141.5", ""},
		{"room.temperature", "-2,5", "-2.5", ""},
		{"room.temperature", "", "not known", ""},
		{"room.temperature", "64", "", "64 will not do: give between -30 and 60"},
		{"room.humidity", "55", "55", ""},
		{"room.humidity", "0", "0", ""},
		{"room.humidity", "Not known", "not known", ""},
		{"room.humidity", "damp", "", `"damp" is not a number: try 3.5`},
	} {
		p := full()
		if strings.HasPrefix(c.key, "knife.outline.") {
			p.Source = FromOutline
		}
		before := p.Clone()
		f := named(t, c.key)
		err := set(t, &p, f, c.text)
		switch {
		case c.err != "":
			if err == nil || err.Error() != c.err {
				t.Errorf("%s %q: %v, want %s", c.key, c.text, err, c.err)
			}
			if !reflect.DeepEqual(p, before) {
				t.Errorf("%s %q: refused, but the project was changed", c.key, c.text)
			}
		case err != nil || f.Show(p) != c.show:
			t.Errorf("%s %q: shows %q (%v), want %q", c.key, c.text, f.Show(p), err, c.show)
		}
	}
}

// The screens take what a maker measures: gap, depth, grind height.
func TestMarksAreTypedAsMeasured(t *testing.T) {
	p := full()
	p.Knife.Stations[5] = knife.Station{At: p.Knife.Stations[5].At, Top: 1, Bottom: 29, Thick: 3, Bevel: 0.75}
	columns := map[string]Field{}
	for _, f := range MarkFields(5) {
		columns[f.Name] = f
	}
	for _, c := range []struct {
		column, text      string
		gap, depth, grind string
	}{
		{"gap", "2.5", "2.5", "28", "21"},           // the depth stays
		{"depth", "30", "2.5", "30", "21"},          // gap and grind height stay
		{"grind height", "12", "2.5", "30", "12"},   //
		{"depth", "10.1", "2.5", "10.1", "full"},    // shallower than the grind was high
		{"depth", "24", "2.5", "24", "full"},        // a full grind stays full
		{"grind height", "24", "2.5", "24", "full"}, // up to the spine
		{"grind height", "0.1", "2.5", "24", "0.1"},
		{"grind height", "", "2.5", "24", "full"},
	} {
		if err := set(t, &p, columns[c.column], c.text); err != nil {
			t.Fatalf("%s %s: %v", c.column, c.text, err)
		}
		if g, d, h := columns["gap"].Show(p), columns["depth"].Show(p), columns["grind height"].Show(p); g != c.gap || d != c.depth || h != c.grind {
			t.Errorf("%s %s: gap, depth, grind height = %s, %s, %s, want %s, %s, %s", c.column, c.text, g, d, h, c.gap, c.depth, c.grind)
		}
	}
	if got := p.Knife.Stations[5].Bottom; got != 26.5 {
		t.Errorf("bottom = %v, want gap + depth, 26.5", got)
	}
	for column, want := range map[string]string{
		"depth":        "knife.station.bottom of mark 6: found -1 mm: give between 0 and 497.5 mm",
		"grind height": "knife.station.bevel of mark 6: found -1 mm: give 0 up to the depth there, 24 mm",
		"gap":          "knife.station.top of mark 6: found -1 mm: give between 0 and 300 mm",
	} {
		if err := set(t, &p, columns[column], "-1"); err == nil || err.Error() != want {
			t.Errorf("%s -1: %v, want %s", column, err, want)
		}
	}
}

func TestAMarkThatIsTypedStandsForItself(t *testing.T) {
	p := Defaults()
	shared := p
	if err := set(t, &p, MarkFields(2)[3], "2"); err != nil {
		t.Fatal(err)
	}
	if p.Source != FromStations {
		t.Error("the outline would fill over the mark that was typed")
	}
	if shared.Knife.Stations[2].Thick == 2 {
		t.Error("an earlier state of the project was changed as well")
	}
}

func TestMarksAndMouthFollowTheOutline(t *testing.T) {
	p := Defaults()
	if err := set(t, &p, named(t, "knife.outline.blade"), "90"); err != nil {
		t.Fatal(err)
	}
	if got := p.Knife.Length(); got != 212 {
		t.Errorf("the knife is %v long, want 90 + 12 + 110", got)
	}
	if got, want := p.Sheath.Mouth, calc.ProposeMouth(p.Knife, length.Millimetres); got != want {
		t.Errorf("mouth = %v, want it to follow: %v", got, want)
	}
	if err := set(t, &p, named(t, "sheath.mouth"), "130"); err != nil {
		t.Fatal(err)
	}
	if err := set(t, &p, named(t, "knife.outline.blade"), "100"); err != nil {
		t.Fatal(err)
	}
	if p.Sheath.Mouth != 130 {
		t.Errorf("a mouth that was typed moved to %v", p.Sheath.Mouth)
	}
	if err := set(t, &p, named(t, "knife.outline.grind"), "31"); err == nil {
		t.Error("a grind higher than the blade is deep was taken")
	}
}

// A believable knife takes at most 14 numbers.
func TestTheOutlineIsShort(t *testing.T) {
	n := 0
	for _, f := range Fields {
		if f.Group == "outline" && f.Kind == Length && f.Counts(Defaults()) {
			n++
		}
	}
	if n+1 > 14 { // the mouth as well
		t.Errorf("outline and mouth are %d numbers, want 14 at most", n+1)
	}
}

func TestProposeMouth(t *testing.T) {
	long, short, guard, bare := Defaults().Outline, Defaults().Outline, Defaults().Outline, Defaults().Outline
	long.Handle, short.Handle = 130, 60
	guard.Front, guard.FrontDepth = knife.Guard, 50
	bare.Front = knife.NoFront
	for _, c := range []struct {
		name string
		o    knife.Outline
		want length.Length
	}{
		{"half the handle", long, 110 + 12 + 65},
		{"50 mm left to hold", short, 110 + 12 + 10},
		{"no bolster", bare, 110 + 55},
		{"before a guard that stands proud", guard, 109},
	} {
		s, err := c.o.Stations()
		if err != nil {
			t.Fatal(err)
		}
		if got := calc.ProposeMouth(knife.Knife{Stations: s}, length.Millimetres); got != c.want {
			t.Errorf("%s: ProposeMouth = %v, want %v", c.name, got, c.want)
		}
	}
	if got := calc.ProposeMouth(knife.Knife{}, length.Millimetres); got != 0 {
		t.Errorf("without marks ProposeMouth = %v, want 0", got)
	}
	one := knife.Knife{Stations: []knife.Station{{}, {At: 200, Bottom: 20, Thick: 2}}}
	if got := calc.ProposeMouth(one, length.Millimetres); got != 150 {
		t.Errorf("on a blade alone ProposeMouth = %v, want 150", got)
	}
}

func TestUnitsBehindTheValues(t *testing.T) {
	p := full()
	p.Units = length.Inches
	for key, want := range map[string]string{"sheath.mouth": "in", "sheath.leather": "in", "weigh.grams": "g", "room.temperature": "°C", "room.humidity": "%", "sheath.plies": "", "title": ""} {
		if got := named(t, key).Unit(p); got != want {
			t.Errorf("%s: Unit = %q, want %q", key, got, want)
		}
	}
}

func TestTooManyRowsAreRefused(t *testing.T) {
	p := full()
	p.Knife.Stations = make([]knife.Station, mostMarks+1)
	want := "knife.station: found 201 of them: give at most 200"
	if err := p.Validate(); err == nil || err.Error() != want {
		t.Errorf("Validate = %v, want %s", err, want)
	}
}

func TestNewSharesNothing(t *testing.T) {
	d := Defaults()
	p := New("Second", length.Inches, d)
	p.Knife.Stations[1].Thick = 99
	if d.Knife.Stations[1].Thick == 99 || p.Title != "Second" || p.Units != length.Inches || p.Revision != 1 {
		t.Errorf("New = %q, %v, %d; defaults changed: %v", p.Title, p.Units, p.Revision, d.Knife.Stations[1].Thick == 99)
	}
}

func TestValidateTakesNoNonsense(t *testing.T) {
	var zero Project
	err := zero.Validate()
	ps, ok := err.(Problems)
	if !ok || len(ps) == 0 {
		t.Fatalf("the zero Project is valid: %v", err)
	}
	for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e300, -1e300} {
		for _, c := range scalars {
			d := Defaults()
			if _, ok := c.Get(&d).(length.Length); !ok {
				continue
			}
			p := Defaults()
			c.Set(&p, length.Length(bad))
			ps, _ := p.Validate().(Problems)
			if _, ok := ps.For(c.Key, -1); !ok {
				t.Errorf("%s = %v: Validate = %v", c.Key, bad, ps)
			}
		}
		for i, c := range marks {
			p := full()
			if _, ok := c.Get(&p.Knife.Stations[3]).(string); ok {
				continue
			}
			if c.Kind == Share {
				p.Knife.Stations[3].Bevel = bad
			} else {
				c.Set(&p.Knife.Stations[3], length.Length(bad))
			}
			ps, _ := p.Validate().(Problems)
			if _, ok := ps.For(c.Key, 3); !ok {
				t.Errorf("column %d (%s) = %v: Validate = %v", i, c.Key, bad, ps)
			}
		}
	}
}
