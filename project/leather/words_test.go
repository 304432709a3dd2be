package leather

import (
	"encoding/json"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"chape/calc/curve"
	"chape/calc/length"
	"chape/calc/nest"
	"chape/project"
)

// laid is a placing made by hand: a strip of 80 × 20 in two copies and a leaf, on a piece whose
// lower left corner is not at 0; the second copy of the strip lies grain side down.
func laid() Laid {
	return Laid{
		Task: nest.Task{Gap: 3,
			Parts: []nest.Part{{Name: "strip", Kind: nest.Welt, Outline: nest.Rect(80, 20), Count: 2, Thickness: 3.2},
				{Name: "leaf", Kind: nest.Added, Outline: curve.Line{{X: 0}, {X: 30}, {X: 30, Y: 40}}, Count: 3, Thickness: 2}},
			Pieces: []nest.Piece{{Name: "offcut", Outline: curve.Line{{X: 10, Y: 20}, {X: 310, Y: 20}, {X: 310, Y: 220}, {X: 10, Y: 220}}}, {Name: "belly", Outline: nest.Rect(300, 300)}}},
		Whose: []string{"Orchard", "Orchard"}, Folds: []curve.Line{{{X: 0}, {X: 80}}, nil},
		Result: nest.Result{
			Placements: []nest.Placement{{Part: 0, Piece: 0, At: curve.Vec{X: 10, Y: 20}}, {Part: 0, Copy: 1, Piece: 1, At: curve.Vec{X: 100, Y: 50}, Angle: math.Pi / 2, Turned: true},
				{Part: 1, Piece: 0, At: curve.Vec{X: 100.12345, Y: 60}}},
			Missing: []nest.Missing{{Part: 1, Count: 2}},
			Uses: []nest.Use{{Piece: 0, Lo: curve.Vec{X: 10, Y: 20}, Hi: curve.Vec{X: 130, Y: 100}, Parts: 2200, Leather: 60000},
				{Piece: 1, Lo: curve.Vec{X: 100, Y: 50}, Hi: curve.Vec{X: 120, Y: 130}, Parts: 1600, Leather: 90000}},
		},
	}
}

// In a line: all, some, one or nothing; how well, and whether the search was broken off. By
// hand: 3800 mm² of 9600 + 1600 are 33.9 %.
func TestVerdict(t *testing.T) {
	one := func(placed bool) Laid {
		l := Laid{Task: nest.Task{Parts: []nest.Part{{Name: "body", Count: 1, Outline: nest.Rect(9, 9)}}}}
		if placed {
			l.Result.Placements = []nest.Placement{{}}
			l.Result.Uses = []nest.Use{{Hi: curve.Vec{X: 9, Y: 10}, Parts: 81}}
		} else {
			l.Result.Missing = []nest.Missing{{Count: 1}}
		}
		return l
	}
	all := laid()
	all.Result.Missing, all.Task.Parts[1].Count = nil, 1
	stopped := laid()
	stopped.Result.Stopped = true
	for want, l := range map[string]Laid{
		"only 3 of 5 parts fit, yield 34 %":                              laid(),
		"only 3 of 5 parts fit, yield 34 %; broken off, the best so far": stopped,
		"3 parts have their place, yield 34 %":                           all,
		"the part has its place, yield 90 %":                             one(true),
		"nothing fits":                                                   one(false),
	} {
		if got := l.Verdict(); got != want {
			t.Errorf("said %q, want %q", got, want)
		}
	}
	// What is lost between the parts: 11200 of 3800 are 1.947 more; nothing of nothing.
	if lost := laid().Lost(); math.Abs(lost-(11200.0/3800-1)) > 1e-12 || (Laid{}).Lost() != 0 {
		t.Errorf("lost %v", lost)
	}
}

// What a piece comes to: 120 × 80 mm used, 2200 of 9600 mm² are 23 %; in inches 4 23/32 × 3 5/32.
func TestUsed(t *testing.T) {
	l := laid()
	if got := l.Used(l.Result.Uses[0], length.Millimetres); got != "offcut: a rectangle of 120 mm × 80 mm is used, 23 % of it becomes parts" {
		t.Errorf("said %q", got)
	}
	if got := l.Used(l.Result.Uses[1], length.Inches); got != "belly: a rectangle of 25/32 in × 3 5/32 in is used, 100 % of it becomes parts" {
		t.Errorf("said %q", got)
	}
}

// What found no room is named with how many and why; with its project where there are several.
func TestMissingInWords(t *testing.T) {
	l := laid()
	l.Result.Missing = append(l.Result.Missing, nest.Missing{Part: 0, Count: 1, Thickness: true})
	if got := l.Missing(length.Millimetres); !slices.Equal(got, []string{"missing: leaf × 2, no room", "missing: strip, no piece is 3.2 mm thick"}) {
		t.Errorf("said %q", got)
	}
	l.Whose[1] = "Boning"
	if got := l.Missing(length.Inches); !slices.Equal(got, []string{"missing: Boning: leaf × 2, no room", "missing: Orchard: strip, no piece is 1/8 in thick"}) || !l.Several() {
		t.Errorf("of two projects: %q", got)
	}
	if (Laid{}).Several() || laid().Several() || laid().Copies() != 5 {
		t.Error("one project is several")
	}
}

// By hand: the fold of the strip, (0, 0) to (80, 0), lies at the piece's corner as it is; grain
// down and turned by a quarter at (100, 50) it runs up to (100, 130). The leaf has no fold: the
// middle of its length, at half its height.
func TestWhere(t *testing.T) {
	l := laid()
	for i, want := range []string{
		"strip: fold from 0.0, 0.0 to 80.0, 0.0; turned by 0°", "strip: fold from 100.0, 50.0 to 100.0, 130.0; turned by 90°; grain side down",
		"leaf: middle from 90.0, 60.0 to 120.0, 60.0; turned by 0°",
	} {
		if got := l.Where(l.Result.Placements[i], length.Millimetres); got != want {
			t.Errorf("placement %d lies %q, want %q", i, got, want)
		}
	}
	down := l.Result.Placements[2] // its middle lies 20 below its origin then
	down.Turned = true
	if got := l.Where(down, length.Millimetres); got != "leaf: middle from 90.0, 20.0 to 120.0, 20.0; turned by 0°; grain side down" {
		t.Errorf("grain side down it lies %q", got)
	}
	if on := l.On(0); len(on) != 2 || on[0].Part != 0 || on[1].Part != 1 || len(l.On(1)) != 1 || len(l.On(2)) != 0 {
		t.Errorf("on the first %+v", on)
	}
}

// What another program reads: figures of the placing, copies from 1, angles in degrees, outlines
// where they lie, to a thousandth.
func TestPlacingJSON(t *testing.T) {
	data, err := laid().JSON()
	var got map[string]any
	if err != nil || json.Unmarshal(data, &got) != nil {
		t.Fatalf("%s, %v", data, err)
	}
	placed, pieces := got["placements"].([]any), got["pieces"].([]any)
	for key, want := range map[string]any{"fits": false, "gap": 3.0, "stopped": false, "rectangle": 11200.0, "yield": 3800.0 / 11200,
		"missing": []any{map[string]any{"part": "leaf", "project": "Orchard", "count": 2.0, "no_thickness": false}}} {
		if !reflect.DeepEqual(got[key], want) {
			t.Errorf("%s: %v, want %v", key, got[key], want)
		}
	}
	second := placed[1].(map[string]any)
	for key, want := range map[string]any{"part": "strip", "project": "Orchard", "kind": "welt", "copy": 2.0, "leather": "belly", "x": 100.0, "y": 50.0, "angle": 90.0, "grain_down": true} {
		if second[key] != want {
			t.Errorf("the second: %s is %v, want %v", key, second[key], want)
		}
	}
	if first := placed[2].(map[string]any)["outline"].([]any); len(placed) != 3 || !reflect.DeepEqual(first[1], []any{130.123, 60.0}) {
		t.Errorf("%d placed; the leaf's second corner lies at %v", len(placed), first[1])
	}
	if want := map[string]any{"leather": "offcut", "width": 120.0, "height": 80.0, "parts": 2200.0, "leather_area": 60000.0, "yield": 2200.0 / 9600}; len(pieces) != 2 || !reflect.DeepEqual(pieces[0], want) {
		t.Errorf("pieces %v, want %v", pieces, want)
	}
	if data, err := (Laid{}).JSON(); err != nil || strings.Contains(string(data), "null") {
		t.Errorf("of nothing %s, %v", data, err)
	}
}

// A piece in words, with what it has.
func TestSize(t *testing.T) {
	fixed := odd()
	fixed.Fixed, fixed.Grain, fixed.Within, fixed.Flaws = true, 90, 15, fixed.Flaws[:1]
	bare := Leather{Name: "hide", Thickness: 3.175}
	for want, c := range map[string]struct {
		l Leather
		u length.Unit
	}{
		"3.2 mm, 300 mm × 200 mm":                                            {New("a"), length.Millimetres},
		"3.2 mm, 420 mm × 340 mm, 5 corners, 2 flaws":                        {odd(), length.Millimetres},
		"3.2 mm, 420 mm × 340 mm, 5 corners, 1 flaw, fold within 15° of 90°": {fixed, length.Millimetres},
		"1/8 in, no size given: for its bend and stretch alone":              {bare, length.Inches},
		"1/8 in, 11 13/16 in × 7 7/8 in":                                     {New("a"), length.Inches},
	} {
		if got := c.l.Size(c.u); got != want {
			t.Errorf("said %q, want %q", got, want)
		}
	}
}

// What is asked of the search: pieces without a size take no part, an added part without a
// thickness is as thick as the body, one that has no outline is refused; two flat pieces of
// one hide are two pieces.
func TestAsk(t *testing.T) {
	w := works(t)[2:]
	w[0].Project.Added[1].Thickness = 2
	l, err := Ask(4, []Leather{New("a"), {Name: "figures alone", Thickness: 3}, odd()}, w)
	if err != nil || len(l.Task.Pieces) != 2 || l.Task.Pieces[1].Name != "offcut" || len(l.Task.Pieces[1].Flaws) != 2 || l.Task.Gap != 4 {
		t.Fatalf("%+v, %v", l.Task.Pieces, err)
	}
	thick := map[string]float64{}
	for i, p := range l.Task.Parts {
		thick[p.Name] = p.Thickness
		if (l.Folds[i] != nil) != (p.Kind == nest.Body) || l.Whose[i] != "Field" {
			t.Errorf("%s: fold %v, of %s", p.Name, l.Folds[i], l.Whose[i])
		}
	}
	if body := w[0].Project.Sheath.Leather.MM(); thick["firesteel loop"] != body || thick["leaf"] != 2 || thick["body"] != body {
		t.Errorf("thicknesses %v", thick)
	}
	w[0].Project.Added = []project.Part{{Name: "x", Count: 1}}
	if _, err := Ask(4, []Leather{New("a")}, w); !refused(err, "give its length and its width") {
		t.Errorf("a part without an outline: %v", err)
	}
}
