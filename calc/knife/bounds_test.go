package knife

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"chape/calc/length"
)

// At each bound a figure is taken, a hair below it is refused with its key, what was
// found and what would do.
func TestBoundsOfAnOutline(t *testing.T) {
	for key, c := range map[string]struct {
		least length.Length
		of    func(*Outline) *length.Length
	}{
		"blade": {20, func(o *Outline) *length.Length { return &o.Blade }}, "depth": {5, func(o *Outline) *length.Length { return &o.Depth }},
		"spine": {0.1, func(o *Outline) *length.Length { return &o.Spine }}, "front_length": {1, func(o *Outline) *length.Length { return &o.FrontLength }},
		"front_depth": {1, func(o *Outline) *length.Length { return &o.FrontDepth }}, "front_thick": {0.1, func(o *Outline) *length.Length { return &o.FrontThick }},
		"handle": {20, func(o *Outline) *length.Length { return &o.Handle }}, "handle_depth": {1, func(o *Outline) *length.Length { return &o.HandleDepth }},
		"handle_thick": {0.1, func(o *Outline) *length.Length { return &o.HandleThick }}, "swell": {0, func(o *Outline) *length.Length { return &o.Swell }},
		"butt": {0, func(o *Outline) *length.Length { return &o.Butt }},
	} {
		o := Usual()
		*c.of(&o) = c.least
		if err := o.Validate(); err != nil {
			t.Errorf("%s of %v: %v", key, c.least, err)
		}
		for _, bad := range []length.Length{c.least - 0.001, -1e9, 1e5 + 1, length.Length(math.NaN()), length.Length(math.Inf(-1))} {
			*c.of(&o) = bad
			want := fmt.Sprintf("%s: found %v mm: give %v mm or more", key, float64(bad), float64(c.least))
			if err := o.Validate(); err == nil || err.Error() != want {
				t.Errorf("%s of %v: %v, want %q", key, bad, err, want)
			}
		}
	}
	o := Usual()
	o.Grind = 30
	if err := o.Validate(); err != nil {
		t.Errorf("a grind as high as the blade is deep: %v", err)
	}
	o.Grind = 30.001
	if err := o.Validate(); err == nil || !strings.Contains(err.Error(), "give at most the blade's depth, 30 mm, or 0 for a full grind") {
		t.Errorf("a grind higher than the blade is deep: %v", err)
	}
}

// Just double, or just half, of the usual proportion passes; a hair more does not, and
// the oddity names the figure with what it would usually be.
func TestOddAtItsBounds(t *testing.T) {
	for _, c := range []struct {
		key    string
		usual  length.Length
		change func(*Outline, length.Length)
	}{
		{"blade", 110, func(o *Outline, l length.Length) { o.Blade = l }}, {"spine", 4, func(o *Outline, l length.Length) { o.Spine = l }},
		{"front_length", 12, func(o *Outline, l length.Length) { o.FrontLength = l }}, {"front_depth", 31, func(o *Outline, l length.Length) { o.FrontDepth = l }},
		{"front_thick", 17, func(o *Outline, l length.Length) { o.FrontThick = l }}, {"handle", 110, func(o *Outline, l length.Length) { o.Handle = l }},
		{"butt", 27, func(o *Outline, l length.Length) { o.Butt = l }},
	} {
		for f, odd := range map[float64]bool{2: false, 0.5: false, 2.001: true, 0.499: true, 1: false} {
			o := Usual()
			c.change(&o, length.Length(f)*c.usual)
			got := o.Odd(2)
			if (len(got) > 0) != odd || odd && (got[0].Key != c.key || math.Abs(float64(got[0].Usual-c.usual)) > 1e-9 || got[0].Value != length.Length(f)*c.usual) {
				t.Errorf("%s %v times as usual: %+v", c.key, f, got)
			}
		}
	}
	// A guard's usual length is 6, not a bolster's 12; a butt goes by the handle it ends.
	for _, c := range []struct {
		change func(*Outline)
		odd    bool
	}{
		{func(o *Outline) { o.Front, o.FrontLength = Guard, 12 }, false}, {func(o *Outline) { o.Front, o.FrontLength = Guard, 12.01 }, true},
		{func(o *Outline) { o.Front, o.FrontLength = Guard, 2.99 }, true},
		{func(o *Outline) { o.HandleDepth, o.HandleThick, o.FrontThick, o.Butt, o.Handle = 50, 30, 30, 99, 200 }, false},
		{func(o *Outline) { o.HandleDepth, o.HandleThick, o.FrontThick, o.Butt, o.Handle = 50, 30, 30, 101, 200 }, true},
	} {
		o := Usual()
		if c.change(&o); len(o.Odd(2)) > 0 != c.odd {
			t.Errorf("%+v: odd is %v", o, o.Odd(2))
		}
	}
	o := Usual()
	o.Grind, o.Swell, o.Butt = 1, 15, 0
	if odd := o.Odd(2); len(odd) > 0 {
		t.Errorf("grind, swell and a butt of 0 may be anything: %+v", odd)
	}
}

// Every choice has a word of its own, as it stands in the file.
func TestWords(t *testing.T) {
	words := map[string]bool{}
	for _, k := range Kinds {
		words["kind "+k.String()] = true
	}
	for _, p := range Points {
		words["point "+p.String()] = true
	}
	for _, f := range Fronts {
		words["front "+f.String()] = true
	}
	words["back "+Blunt.String()], words["back "+Sharp.String()] = true, true
	for _, w := range []string{"kind blade", "kind slab", "kind oval", "point drop", "point straight", "point clip", "point spear", "point sheepsfoot",
		"front bolster", "front guard", "front none", "back blunt", "back sharp"} {
		if !words[w] {
			t.Errorf("no %s", w)
		}
	}
	if len(words) != 13 {
		t.Errorf("%d words, want 13: %v", len(words), words)
	}
}

// A mark that an outline filled follows from the figure of the part it lies on.
func TestMakes(t *testing.T) {
	for _, front := range Fronts {
		o := Usual()
		o.Front = front
		marks, err := o.Stations()
		if err != nil {
			t.Fatal(err)
		}
		count := map[string]int{}
		for i, s := range marks {
			key, _ := o.Makes(i, "thickness")
			count[key]++
			if blade := s.Kind == Blade; blade != (key == "spine") {
				t.Errorf("%s: mark %d, a %s, follows from %s", front, i+1, s.Kind, key)
			}
		}
		want := 2
		if front == NoFront {
			want = 0
		}
		if count["front_thick"] != want || count["handle_thick"] != len(handleMarks) {
			t.Errorf("%s: %v", front, count)
		}
		if key, name := o.Makes(len(marks)-1, "depth"); key != "handle_depth" || name != "handle depth" {
			t.Errorf("%s: the last mark's depth is %s", front, key)
		}
		o.Butt = 20
		if key, _ := o.Makes(len(marks)-1, "depth"); key != "butt" {
			t.Errorf("%s: with a thin butt the last mark's depth is %s", front, key)
		}
	}
}
