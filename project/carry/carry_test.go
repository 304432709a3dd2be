package carry

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"chape/calc"
	"chape/calc/compare"
	"chape/calc/knife"
	"chape/calc/length"
	"chape/project"
)

// bar is an invented knife whose marks are known without reckoning: its blade is as deep at
// the point as anywhere, so the deepest place is 0; then comes the front of the handle, and
// the mouth where it is put.
func bar(front, mouth length.Length) project.Project {
	p := project.Defaults()
	p.Source = project.FromStations
	p.Knife.Stations = []knife.Station{
		{At: 0, Bottom: 30, Thick: 4, Bevel: 1}, {At: front, Bottom: 30, Thick: 4, Bevel: 1},
		{At: front, Bottom: 30, Thick: 18, Kind: knife.Oval, Bevel: 1}, {At: front + 120, Bottom: 30, Thick: 18, Kind: knife.Oval, Bevel: 1},
	}
	p.Sheath.Mouth = mouth
	return p
}

func fit(at, by, reach length.Length) project.Fit {
	return project.Fit{Fit: calc.Fit{At: at, By: by, Reach: reach}, With: "leather", Note: "tight"}
}

// What is taken along is the correction as it was, with the marks it belongs to.
func TestAlong(t *testing.T) {
	fits := []project.Fit{fit(108, 1.5, 20), fit(-3, -2, 9)}
	got, err := Along(fits, bar(100, 140), "from Boning knife")
	if err != nil || len(got) != 2 {
		t.Fatalf("%+v, %v", got, err)
	}
	for i, c := range got {
		if want := (project.Carried{Fit: fits[i], From: "from Boning knife", Deepest: 0, Front: 100, Mouth: 140}); c != want {
			t.Errorf("correction %d: %+v, want %+v", i, c, want)
		}
	}
	if none, err := Along(nil, bar(100, 140), "x"); err != nil || len(none) != 0 {
		t.Errorf("of none: %v, %v", none, err)
	}
	torn := bar(100, 140)
	torn.Knife.Stations = torn.Knife.Stations[:1]
	if got, err := Along(fits, torn, "x"); err == nil || got != nil {
		t.Errorf("of marks that make no knife: %v, %v", got, err)
	}
}

// By hand: marks 0, 60, 100, 140 onto 0, 0, 120, 170. 80 is half way from 60 to 100, so half
// way from 0 to 120; its reach of 8 covered 72 to 88, 36 to 84 by now: 24. 120 is half way to
// the mouth, 145; 110 to 130 becomes 132.5 to 157.5: 12.5. 10 past the mouth stays 10 past it.
// 62 with a reach of 1 covers 61 to 63, 3 to 9: 3, and no correction reaches less than 5.
func TestPlacedByHand(t *testing.T) {
	to := bar(120, 170)
	for _, c := range []struct{ in, want project.Fit }{
		{fit(80, 1.5, 8), fit(60, 1.5, 24)},
		{fit(120, -0.75, 10), fit(145, -0.75, 12.5)},
		{fit(150, 2, 10), fit(180, 2, 10)},
		{fit(62, 1, 1), fit(6, 1, 5)},
		{fit(-12, 1, 10), fit(-12, 1, 10)},
	} {
		got, err := Placed(project.Carried{Fit: c.in, Deepest: 60, Front: 100, Mouth: 140}, to)
		if err != nil || got != c.want {
			t.Errorf("%+v lies at %+v, %v, want %+v", c.in, got, err, c.want)
		}
	}
	to.Knife.Stations = nil
	if got, err := Placed(project.Carried{Fit: fit(80, 1, 8), Front: 100, Mouth: 140}, to); err == nil || got != (project.Fit{}) {
		t.Errorf("on marks that make no knife: %+v, %v", got, err)
	}
}

// On the knife it comes from a correction lies where it was, to half a millimetre by the
// ruler; in inches to 1/32.
func TestPlacedByTheRuler(t *testing.T) {
	p := bar(100, 140)
	for _, c := range []struct{ at, want length.Length }{{80.2, 80}, {80.25, 80.5}, {80.74, 80.5}, {80.75, 81}, {-0.1, 0}} {
		got, err := Placed(project.Carried{Fit: fit(c.at, 1, 20.1), Front: 100, Mouth: 140}, p)
		if err != nil || got.At != c.want || got.Reach != 20 || math.Signbit(got.At.MM()) {
			t.Errorf("%v lies at %v (reach %v), %v, want %v", c.at, got.At, got.Reach, err, c.want)
		}
	}
	p.Units = length.Inches
	for _, c := range []struct {
		at   length.Length
		want string
	}{{80, "3 5/32"}, {108, "4 1/4"}, {-0.1, "0"}} { // 80 mm are 100.79 of 32, 108 are 136.06
		got, err := Placed(project.Carried{Fit: fit(c.at, 1, 20), Front: 100, Mouth: 140}, p)
		if err != nil || got.At.Short(length.Inches) != c.want || got.Reach.Short(length.Inches) != "25/32" { // 25.2
			t.Errorf("%v lies at %s in (reach %s), %v, want %s", c.at, got.At.Short(length.Inches), got.Reach.Short(length.Inches), err, c.want)
		}
	}
}

// Whatever is carried to a neighbouring knife and back comes back, within what the ruler
// takes off on both ways, and never changes its height, its stock or its note.
func TestThereAndBack(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 26))
	for range 300 {
		a := bar(length.Length(90+r.IntN(40)), length.Length(140+r.IntN(30)))
		b := bar(length.Length(90+r.IntN(40)), length.Length(140+r.IntN(30)))
		f := fit(length.Length(10+r.IntN(120)), length.Length(r.IntN(9)-4)/2, length.Length(12+r.IntN(10)))
		out, err := Along([]project.Fit{f}, a, "there")
		if err != nil {
			t.Fatal(err)
		}
		there, err := Placed(out[0], b)
		if err != nil {
			t.Fatal(err)
		}
		back, err := Along([]project.Fit{there}, b, "back")
		if err != nil {
			t.Fatal(err)
		}
		again, err := Placed(back[0], a)
		if err != nil {
			t.Fatal(err)
		}
		if off := math.Abs((again.At - f.At).MM()); off > 1.5 || again.By != f.By || again.With != f.With || again.Note != f.Note {
			t.Fatalf("from %v/%v to %v/%v and back: %+v became %+v", a.Knife.Stations[1].At, a.Sheath.Mouth, b.Knife.Stations[1].At, b.Sheath.Mouth, f, again)
		}
	}
}

func tried(fits ...calc.Fit) compare.Tried {
	return compare.Tried{Marks: compare.Marks{Front: 100, Mouth: 140}, Fits: fits}
}

// By hand: of four sheaths of 3.2 mm three had 1, 2 and 4 in all between handle and mouth, at
// 110, 120 and 130: a quarter, a half and three quarters of the way. The median of 0, 1, 2 and
// 4 is 1.5, the places' half way; on this knife, 120 to 170, that is 145; the reaches 10, 16
// and 12 have the median 12. Before the handle three of four had none: nothing is offered.
func TestExperienceByHand(t *testing.T) {
	past := []compare.Tried{
		tried(calc.Fit{At: 110, By: 1, Reach: 10}), tried(calc.Fit{At: 120, By: 2, Reach: 16}, calc.Fit{At: 50, By: 3, Reach: 20}), tried(calc.Fit{At: 130, By: 4, Reach: 12}), tried(),
	}
	p := bar(120, 170)
	p.Sheath.Leather = 3.2
	got, err := Experience(past, p)
	want := []project.Carried{{Fit: project.Fit{Fit: calc.Fit{At: 145, By: 1.5, Reach: 12}, With: "leather", Note: "median of 4, 3 had one, from the handle to the mouth"},
		From: "from 4 finished sheaths of 3.2 mm", Front: 120, Mouth: 170}}
	if err != nil || !slices.Equal(got, want) {
		t.Fatalf("offered %+v, %v\nwant %+v", got, err, want)
	}
	p.Carried = got
	if err := p.Validate(); err != nil {
		t.Errorf("what is offered will not do: %v", err)
	}
	if f, err := Placed(got[0], p); err != nil || f != got[0].Fit {
		t.Errorf("placed on its own knife it is %+v, %v", f, err)
	}
	p.Units, p.Sheath.Leather = length.Inches, 3.175
	one, err := Experience(past[:1], p)
	if err != nil || len(one) != 1 || one[0].From != "from 1 finished sheath of 1/8 in" || one[0].Note != "median of 1, 1 had one, from the handle to the mouth" {
		t.Errorf("of one: %+v, %v", one, err)
	}
}

// Where sheaths tend to need nothing, nothing is offered.
func TestNoExperience(t *testing.T) {
	p := bar(120, 170)
	none, mixed := tried(), tried(calc.Fit{At: 110, By: 2, Reach: 10}, calc.Fit{At: 120, By: -2, Reach: 10})
	for i, past := range [][]compare.Tried{nil, {none}, {none, none, tried(calc.Fit{At: 110, By: 2, Reach: 10})}, {mixed}} {
		if got, err := Experience(past, p); err != nil || len(got) != 0 {
			t.Errorf("case %d: offered %+v, %v", i, got, err)
		}
	}
	p.Knife.Stations = p.Knife.Stations[:1]
	if got, err := Experience([]compare.Tried{mixed}, p); err == nil || got != nil {
		t.Errorf("for marks that make no knife: %+v, %v", got, err)
	}
}
