package places

import (
	"fmt"
	"strings"
	"testing"

	"chape/calc/knife"
	"chape/calc/length"
	"chape/project"
)

// stepped is a knife of our own invention: a blade of 100 mm, deepest at 60, a bolster of 12,
// a handle with a step at 150 and its swell at 180.
func stepped(mouth length.Length) project.Project {
	p := project.Defaults()
	p.Source = project.FromStations
	blade := func(at, bottom, thick length.Length) knife.Station {
		return knife.Station{At: at, Bottom: bottom, Thick: thick, Kind: knife.Blade, Bevel: 1}
	}
	slab := func(at, bottom, thick length.Length) knife.Station {
		return knife.Station{At: at, Bottom: bottom, Thick: thick, Kind: knife.Slab}
	}
	p.Knife.Stations = []knife.Station{blade(0, 5, 1), blade(60, 29, 3), blade(100, 28, 3.5), slab(100, 30, 12), slab(112, 30, 12), slab(112, 28, 15),
		slab(150, 28, 16), slab(150, 29, 17), slab(180, 31, 20), slab(215, 30, 18)}
	p.Sheath.Mouth = mouth
	return p
}

// list is places as they are said, a line each.
func list(all []Place) string {
	var out []string
	for _, p := range all {
		out = append(out, fmt.Sprintf("%g %s", p.At, p.Said()))
	}
	return strings.Join(out, "\n")
}

// From the point to the mouth every landmark and every mark has its place, marks counted from
// 1; what stands behind the mouth is left out.
func TestPlacesOfAKnife(t *testing.T) {
	for mouth, want := range map[length.Length]string{
		190: "0 point (mark 1)\n60 deepest place (mark 2)\n100 front of the handle (marks 3, 4)\n112 step (marks 5, 6)\n150 step (marks 7, 8)\n180 swell (mark 9)\n190 mouth",
		112: "0 point (mark 1)\n60 deepest place (mark 2)\n100 front of the handle (marks 3, 4)\n112 step, mouth (marks 5, 6)",
		130: "0 point (mark 1)\n60 deepest place (mark 2)\n100 front of the handle (marks 3, 4)\n112 step (marks 5, 6)\n130 mouth",
	} {
		if got := list(Of(stepped(mouth))); got != want {
			t.Errorf("with the mouth at %v:\n%s\nwant\n%s", mouth, got, want)
		}
	}
}

// Places within a quarter of a millimetre, the width of a pencil mark, are one; farther apart
// they are two.
func TestPlacesThatMeet(t *testing.T) {
	for off, want := range map[length.Length]string{0.2: "112 step, mouth (marks 5, 6)", -0.2: "111.8 mouth, step (marks 5, 6)", 0.3: "112 step (marks 5, 6)\n112.3 mouth"} {
		if got := list(Of(stepped(112 + off))); !strings.HasSuffix(got, want) {
			t.Errorf("with the mouth %v from a step:\n%s\nwant at its end\n%s", off, got, want)
		}
	}
}

// What stands in front of the handle is called as the maker called it: its first step behind
// is its back face, later ones are steps.
func TestFrontHasItsName(t *testing.T) {
	for front, want := range map[knife.Front]string{
		knife.Bolster: "100 bolster, front face (marks 3, 4)\n112 bolster, back face (marks 5, 6)\n150 step (marks 7, 8)",
		knife.Guard:   "100 guard, front face (marks 3, 4)\n112 guard, back face (marks 5, 6)\n150 step (marks 7, 8)",
		knife.NoFront: "100 front of the handle (marks 3, 4)\n112 step (marks 5, 6)\n150 step (marks 7, 8)",
	} {
		p := stepped(190)
		p.Source, p.Outline.Front = project.FromOutline, front
		if got := list(Of(p)); !strings.Contains(got, want) {
			t.Errorf("%s:\n%s\nwant in it\n%s", front, got, want)
		}
	}
}

// A step in the blade, as at a ricasso, is none of the bolster's faces.
func TestStepBeforeTheFront(t *testing.T) {
	p := stepped(190)
	p.Source, p.Outline.Front = project.FromOutline, knife.Bolster
	ricasso := p.Knife.Stations[1]
	ricasso.At, ricasso.Bottom = 90, 28.5
	second := ricasso
	second.Bottom = 27
	p.Knife.Stations = append(append(append([]knife.Station{}, p.Knife.Stations[:2]...), ricasso, second), p.Knife.Stations[2:]...)
	p.Knife.Stations[4].Bottom = 27
	want := "90 step (marks 3, 4)\n100 bolster, front face (marks 5, 6)\n112 bolster, back face (marks 7, 8)\n150 step (marks 9, 10)"
	if got := list(Of(p)); !strings.Contains(got, want) {
		t.Errorf("%s\nwant in it\n%s", got, want)
	}
}

// Anywhere along the knife is at a place, before the first, past the last or between two,
// named in their order.
func TestAt(t *testing.T) {
	all := []Place{{10, "point", []int{1}}, {60, "", []int{2, 3}}, {110, "mouth", nil}}
	for x, want := range map[float64]string{
		9.7: "before the point (mark 1)", 9.8: "point (mark 1)", 10.25: "point (mark 1)", 10.3: "between point (mark 1) and marks 2, 3", 60.1: "marks 2, 3",
		80: "between marks 2, 3 and mouth", 110: "mouth", 110.3: "past the mouth",
	} {
		if got := At(all, x); got != want {
			t.Errorf("at %v: %q, want %q", x, got, want)
		}
	}
}

// From place to place there and back one comes by all of them, and at the ends stays.
func TestNextThereAndBack(t *testing.T) {
	all := Of(stepped(190))
	x := -1.0
	for _, p := range all {
		if x = Next(all, x, 1); x != p.At {
			t.Errorf("next is %v, want %v", x, p.At)
		}
	}
	if Next(all, x, 1) != x {
		t.Error("past the last there is another")
	}
	for i := len(all) - 2; i >= 0; i-- {
		if x = Next(all, x, -1); x != all[i].At {
			t.Errorf("before that is %v, want %v", x, all[i].At)
		}
	}
	if Next(all, x, -1) != x || Next(nil, 5, 1) != 5 {
		t.Error("before the first there is another, or among none")
	}
}
