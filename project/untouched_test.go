package project

import (
	"slices"
	"testing"

	"chape/calc"
	"chape/calc/knife"
	"chape/calc/length"
)

// A figure of a new project is named until it was typed, be it as it stood.
func TestUntouchedUntilTyped(t *testing.T) {
	p := New("Test", length.Millimetres, Defaults())
	if got := p.Input(calc.DefaultLimits()).Untouched; len(got) != 10 || got[0] != "blade length" || !slices.Contains(got, "bolster depth") {
		t.Fatalf("a new project names %q", got)
	}
	blade, _ := FieldFor("knife.outline.blade")
	if !blade.IsUntouched(p) {
		t.Error("the blade counts as given")
	}
	if err := blade.Set(&p, blade.Get(p)); err != nil {
		t.Fatal(err)
	}
	if blade.IsUntouched(p) || len(p.Input(calc.DefaultLimits()).Untouched) != 9 {
		t.Error("the figure that stood there does not count as given")
	}
	depth, _ := FieldFor("knife.outline.depth")
	if err := depth.Set(&p, length.Length(31)); err != nil || depth.IsUntouched(p) {
		t.Errorf("typed, and still untouched, %v", err)
	}
	p.Outline.Front = knife.NoFront
	if got := p.Input(calc.DefaultLimits()).Untouched; slices.Contains(got, "bolster depth") {
		t.Errorf("there is no bolster: %q", got)
	}
	p.Source = FromStations
	if got := p.Input(calc.DefaultLimits()).Untouched; len(got) > 0 {
		t.Errorf("marks were measured, and it names %q", got)
	}
	p.Untouched = "blade saddle"
	if err := p.Validate(); err == nil || err.Error() != `knife.untouched: found "saddle": give some of: `+asNew+"; or nothing" {
		t.Errorf("a word that is none: %v", err)
	}
	if Blank().Untouched != "" {
		t.Error("a file without the key has figures that nobody gave")
	}
}

// What a guard stands out by, at the back and at the edge, is a maker's own measure; without
// them its depth says it.
func TestAGuardStandsOut(t *testing.T) {
	p := Defaults()
	set := func(key string, v any) {
		t.Helper()
		f, ok := FieldFor("knife.outline." + key)
		if !ok {
			t.Fatalf("no field %s", key)
		}
		if err := f.Set(&p, v); err != nil {
			t.Fatal(err)
		}
	}
	guard := func() (top, depth length.Length) {
		for i, s := range p.Knife.Stations {
			if s.Kind != knife.Blade {
				return p.Knife.Stations[i-1].Top - s.Top, s.Depth()
			}
		}
		return 0, 0
	}
	set("front", "guard")
	set("front_depth", length.Length(45))
	if back, depth := guard(); back != 3 || depth != 45 { // a fifth of what it is deeper than the blade
		t.Errorf("by its depth: %v out at the back, %v deep", back, depth)
	}
	set("front_back", length.Length(6))
	if back, depth := guard(); back != 6 || depth != 45 {
		t.Errorf("6 out at the back: %v, %v deep", back, depth)
	}
	set("front_edge", length.Length(12))
	if back, depth := guard(); back != 6 || depth != 48 {
		t.Errorf("12 out at the edge: %v, %v deep", back, depth)
	}
	set("front_back", nil)
	if back, depth := guard(); back != 3 || depth != 45 { // a fifth of both
		t.Errorf("at the edge alone: %v, %v deep", back, depth)
	}
	set("front", "bolster")
	if back, depth := guard(); back != 0 || depth != 45 {
		t.Errorf("a bolster: %v, %v", back, depth)
	}
}
