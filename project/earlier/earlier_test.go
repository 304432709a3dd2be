package earlier

import (
	"math"
	"strings"
	"testing"

	"chape/calc"
	"chape/calc/knife"
	"chape/calc/length"
	"chape/project"
)

// bar is the worked case of the geometry: stitch line 40.65897 from the fold all along, the
// finished edge its margin of 5 further out.
func bar(t *testing.T, halves ...project.Half) (project.Project, *calc.Plan) {
	t.Helper()
	p := project.Blank()
	at := func(x length.Length) knife.Station {
		return knife.Station{At: x, Bottom: 30, Thick: 6, Kind: knife.Slab, Bevel: 1}
	}
	p.Knife.Stations = []knife.Station{at(0), at(160)}
	s := &p.Sheath
	s.Mouth, s.Leather, s.Welt, s.Clearance, s.HandleClearance, s.PointRoom, s.Gap = 120, 3, 4, 1.5, 1.5, 0, 5
	s.Margin, s.Sanding, s.Blend = 5, 0, 12
	p.Belt.Loop = calc.NoLoop
	p.Earlier = halves
	plan, err := calc.Compute(p.Input(calc.DefaultLimits()))
	if err != nil {
		t.Fatal(err)
	}
	return p, plan
}

func TestRowsByHand(t *testing.T) {
	p, plan := bar(t, project.Half{At: 100, Wide: 44.65897, Line: "stitches"}, project.Half{At: 60, Wide: 45.65897, Line: "edge"},
		project.Half{At: 118, Wide: 39.65897, Line: "edge"}, project.Half{At: 500, Wide: 40, Line: "edge"})
	rows := Rows(p, plan)
	for i, want := range []struct{ at, by float64 }{{60, 0}, {100, 4}, {118, -6}} {
		if rows[i].At != want.at || math.Abs(rows[i].By-want.by) > 1e-3 || !rows[i].Inside {
			t.Errorf("row %d: %+v, want %v", i, rows[i], want)
		}
	}
	if rows[3].Inside || rows[3].Index != 3 {
		t.Errorf("past the mouth: %+v", rows[3])
	}
	if w := Words(p, rows); !strings.HasPrefix(w, "the plan is 4 mm short at 100, ") || !strings.Contains(w, "; 6 mm over at 118, ") {
		t.Errorf("words %q", w)
	}
	if g := Curve(rows); len(g.X) != 3 || math.Abs(g.At(80)-2) > 1e-3 {
		t.Errorf("curve %v", g)
	}
}

// What is taken over makes the plan as wide as the sheath was, within what is followed.
func TestTakenOver(t *testing.T) {
	var halves []project.Half
	for x := 0.0; x <= 120; x += 10 {
		halves = append(halves, project.Half{At: length.Length(x), Wide: length.Length(45.659 + 3*math.Sin(x/120*math.Pi)), Line: "edge"})
	}
	p, plan := bar(t, halves...)
	fits, off := Corrections(Rows(p, plan), 1, 0, 120)
	if len(fits) == 0 || off > Follow {
		t.Fatalf("%d corrections, off by %v", len(fits), off)
	}
	p.Fits = fits
	after, err := calc.Compute(p.Input(calc.DefaultLimits()))
	if err != nil || p.Validate() != nil {
		t.Fatal(err, p.Validate())
	}
	for _, r := range Rows(p, after) {
		if math.Abs(r.By) > Follow+0.35 { // the edge is square to a sloping line
			t.Errorf("at %v still %v off", r.At, r.By)
		}
	}
	half, _ := Corrections(Rows(p, plan), 0.5, 0, 120)
	if len(half) == 0 || math.Abs(float64(half[len(half)/2].By)-float64(fits[len(fits)/2].By)/2) > 0.5 {
		t.Errorf("half of it: %v of %v", half, fits)
	}
	if none, _ := Corrections(Rows(p, plan)[:1], 1, 0, 120); none != nil {
		t.Errorf("of one place: %v", none)
	}
}

func TestNoRows(t *testing.T) {
	p, plan := bar(t)
	if rows := Rows(p, plan); rows != nil || Words(p, rows) != "" || len(Curve(rows).X) != 0 {
		t.Error("rows of nothing")
	}
	same, plan := bar(t, project.Half{At: 60, Wide: 45.7, Line: "edge"})
	if w := Words(same, Rows(same, plan)); w != "the plan is as wide as that sheath" {
		t.Errorf("words %q", w)
	}
}
