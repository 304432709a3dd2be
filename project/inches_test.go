package project

import (
	"reflect"
	"strings"
	"testing"

	"chape/calc"
	"chape/calc/knife"
	"chape/calc/length"
)

// In a project in inches every error is in inches alone, and what it says will
// do does.
func TestErrorsAreInTheShownUnit(t *testing.T) {
	for _, c := range []struct {
		key, text string
		change    func(*Project)
		want      string
	}{
		{"knife.station.bottom", "10000", nil, "knife.station.bottom of mark 4: found 10000 in: give between 0 and 19.519 in"},
		{"knife.station.bevel", "9", nil, "knife.station.bevel of mark 4: found 9 in: give 0 up to the depth there, 0.688 in"},
		{"knife.station.at", "3/64", nil, "knife.station.at of mark 4: found 3/64 in: put the marks in order: the one before stands at 0.4331 in"},
		{"sheath.blend", "0", nil, "sheath.blend: found 0 in: give more than 0 and at most 78.228 in"},
		{"sheath.leather", "40", nil, `"40" will not do: give between 0.01 and 0.59 in`},
		{"knife.outline.front_length", "0.001", func(p *Project) { p.Source = FromOutline },
			"knife.outline.front_length: found 0.001 in: give 0.04 in or more"},
		{"knife.outline.grind", "2", func(p *Project) { p.Source = FromOutline },
			"knife.outline.grind: found 2 in: give at most the blade's depth, 1.181 in, or 0 for a full grind"},
	} {
		p := full()
		p.Units = length.Inches
		if c.change != nil {
			c.change(&p)
		}
		before := p.Clone()
		err := set(t, &p, named(t, c.key), c.text)
		if err == nil || err.Error() != c.want {
			t.Errorf("%s %q: %v, want %s", c.key, c.text, err, c.want)
		}
		if !reflect.DeepEqual(p, before) {
			t.Errorf("%s %q: refused, but the project was changed", c.key, c.text)
		}
	}
}

// The remedies of errors in inches are taken when typed.
func TestRemediesInInchesWillDo(t *testing.T) {
	p := full()
	p.Units = length.Inches
	for key, text := range map[string]string{"knife.station.bottom": "19.519", "knife.station.bevel": "0.688", "sheath.blend": "78.228"} {
		q := p.Clone()
		if err := set(t, &q, named(t, key), text); err != nil {
			t.Errorf("%s %q: %v", key, text, err)
		}
	}
	p.Source = FromOutline
	for key, text := range map[string]string{"knife.outline.front_length": "0.04", "knife.outline.grind": "1.181"} {
		q := p.Clone()
		if err := set(t, &q, named(t, key), text); err != nil {
			t.Errorf("%s %q: %v", key, text, err)
		}
	}
}

func TestInchesAreShownShort(t *testing.T) {
	p := full()
	p.Units = length.Inches
	f := named(t, "sheath.gap") // 7.5 mm
	if got := f.Show(p); got != "19/64" {
		t.Errorf("7.5 mm shows as %q", got)
	}
	if err := set(t, &p, f, f.Show(p)); err != nil || p.Sheath.Gap != 7.5 {
		t.Errorf("left as shown it becomes %v, %v", p.Sheath.Gap, err)
	}
	for _, f := range all() {
		if text := f.Show(p); f.Get(p) != nil && f.Kind == Length && len(text[strings.IndexByte(text+".", '.'):]) > 5 {
			t.Errorf("%s shows %q", f.Key, text)
		}
	}
}

func TestTheFrontIsNamedAsChosen(t *testing.T) {
	p := Defaults()
	f := named(t, "knife.outline.front_depth")
	for front, want := range map[knife.Front]string{knife.Bolster: "bolster depth", knife.Guard: "guard depth", knife.NoFront: "front depth"} {
		p.Outline.Front = front
		if got, counts := f.NameIn(p), f.Counts(p); got != want || counts != (front != knife.NoFront) {
			t.Errorf("%v: %q, counts %v", front, got, counts)
		}
	}
}

// A bolster that is chosen anew is never refused for dimensions that were not on
// the screen.
func TestChoosingAFrontGivesItDimensions(t *testing.T) {
	p := Defaults()
	p.Outline.Front, p.Outline.FrontLength, p.Outline.FrontDepth, p.Outline.FrontThick = knife.NoFront, 0, 44, 0
	if err := p.refill(); err != nil {
		t.Fatal(err)
	}
	p.Sheath.Mouth = calc.ProposeMouth(p.Knife, length.Millimetres)
	if err := set(t, &p, named(t, "knife.outline.front"), "guard"); err != nil {
		t.Fatal(err)
	}
	if o := p.Outline; o.FrontLength != 12 || o.FrontDepth != 44 || o.FrontThick != 17 {
		t.Errorf("length %v, depth %v, thickness %v", o.FrontLength, o.FrontDepth, o.FrontThick)
	}
}

func TestMarksDiffer(t *testing.T) {
	p := Defaults()
	if p.MarksDiffer() {
		t.Error("the outline's own marks differ from it")
	}
	if err := set(t, &p, MarkFields(2)[3], "2"); err != nil || !p.MarksDiffer() {
		t.Errorf("a measured mark does not differ (%v)", err)
	}
}
