package project

import (
	"math"
	"reflect"
	"testing"

	"chape/calc/length"
)

// A new project in inches is written with round inches; a maker's own default stays.
func TestBeginInInches(t *testing.T) {
	start := Defaults()
	start.Sheath.Gap = 8 // the maker's own
	p := New("Test knife", length.Inches, start)
	for name, c := range map[string]struct{ got, want length.Length }{
		"tail":      {p.Stitch.Tail, 6 * length.Inch},
		"leather":   {p.Sheath.Leather, length.Inch / 8},
		"belt":      {p.Belt.Width, 1.5 * length.Inch},
		"clearance": {p.Sheath.Clearance, length.Inch / 8},
		"sanding":   {p.Sheath.Sanding, length.Inch / 16},
		"blade":     {p.Outline.Blade, 4.5 * length.Inch},
		"own gap":   {p.Sheath.Gap, 8},
	} {
		if math.Abs(float64(c.got-c.want)) > 1e-9 {
			t.Errorf("%s is %v mm, want %v", name, c.got, c.want)
		}
	}
	if eighths := float64(p.Sheath.Mouth / (length.Inch / 8)); math.Abs(eighths-math.Round(eighths)) > 1e-9 || p.Sheath.Mouth != p.ProposedMouth() {
		t.Errorf("the mouth is at %v in", p.Sheath.Mouth.In())
	}
	if err := p.Validate(); err != nil {
		t.Error(err)
	}
	// Every default is a whole number of 64ths, and no further off than a 64th or 6 %.
	metric := Defaults()
	for _, c := range scalars {
		if _, ok := c.Def.(length.Length); !ok || c.Get(&metric) != c.Def {
			continue
		}
		mm, in := metric, New("", length.Inches, metric)
		was, is := c.Get(&mm).(length.Length), c.Get(&in).(length.Length)
		if parts := is.In() * 64; math.Abs(parts-math.Round(parts)) > 1e-9 {
			t.Errorf("%s is %v in", c.Key, is.In())
		}
		if off := math.Abs(float64(is - was)); off > max(0.06*float64(was), length.Inch.MM()/128) {
			t.Errorf("%s went from %v to %v mm", c.Key, was, is)
		}
	}
	again := p.Clone()
	again.BeginIn(length.Millimetres)
	if again.Stitch.Tail != start.Stitch.Tail || again.Sheath.Mouth != again.ProposedMouth() || again.Sheath.Gap != 8 {
		t.Errorf("back in millimetres: tail %v, mouth %v", again.Stitch.Tail, again.Sheath.Mouth)
	}
	if got := New("", length.Millimetres, start); got.Stitch.Tail != start.Stitch.Tail || got.Sheath != start.Sheath {
		t.Error("in millimetres something was rounded")
	}
}

// A new project of which nobody has given a figure goes over to round figures with its unit,
// and back; a figure of the maker's own stays, and so does a project that is worked on.
func TestUnitOfAnUntouchedProject(t *testing.T) {
	units, _ := FieldFor("units")
	p := New("Test knife", length.Millimetres, Defaults())
	p.Sheath.Gap = 8
	was := p.Clone()
	if err := units.Set(&p, "in"); err != nil || p.Outline.Blade != 114.3 || p.Belt.Width != 38.1 || p.Sheath.Gap != 8 || p.Sheath.Mouth != p.ProposedMouth() {
		t.Errorf("in inches: %v, blade %v, belt %v, own gap %v, mouth %v", err, p.Outline.Blade, p.Belt.Width, p.Sheath.Gap, p.Sheath.Mouth)
	}
	if err := units.Set(&p, "mm"); err != nil || !reflect.DeepEqual(p, was) {
		t.Errorf("and back: %v, %+v, want %+v", err, p, was)
	}
	blade, _ := FieldFor("knife.outline.blade")
	if err := blade.Set(&p, 110*length.Millimetre); err != nil {
		t.Fatal(err)
	}
	touched := p.Clone()
	touched.Units = length.Inches
	if err := units.Set(&p, "in"); err != nil || !reflect.DeepEqual(p, touched) {
		t.Errorf("once a figure was given: %v, %+v", err, p)
	}
}
