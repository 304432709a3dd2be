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

func rows(p project.Project, plan *calc.Plan) []Row { return Rows(p.Earlier, Own(p, plan)) }

func TestRowsByHand(t *testing.T) {
	p, plan := bar(t, project.Half{At: 100, Wide: 44.65897, Line: "stitches"}, project.Half{At: 60, Wide: 45.65897, Line: "edge"},
		project.Half{At: 118, Wide: 39.65897, Line: "edge"}, project.Half{At: 500, Wide: 40, Line: "edge"})
	rows := rows(p, plan)
	for i, want := range []struct{ at, by float64 }{{60, 0}, {100, 4}, {118, -6}} {
		if rows[i].At != want.at || math.Abs(rows[i].By-want.by) > 1e-3 || !rows[i].Inside {
			t.Errorf("row %d: %+v, want %v", i, rows[i], want)
		}
	}
	if rows[3].Inside || rows[3].Index != 3 {
		t.Errorf("past the mouth: %+v", rows[3])
	}
	if w := Words(Own(p, plan), rows, p.Units); w != "the plan is 4 mm short between point, deepest place (mark 1) and mouth, at 100; 6 mm over between point, deepest place (mark 1) and mouth, at 118" {
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
	fits, off := Corrections(Curve(rows(p, plan)), 1, 0, 120)
	if len(fits) == 0 || off > Follow {
		t.Fatalf("%d corrections, off by %v", len(fits), off)
	}
	p.Fits = fits
	after, err := calc.Compute(p.Input(calc.DefaultLimits()))
	if err != nil || p.Validate() != nil {
		t.Fatal(err, p.Validate())
	}
	for _, r := range rows(p, after) {
		if math.Abs(r.By) > Follow+0.35 { // the edge is square to a sloping line
			t.Errorf("at %v still %v off", r.At, r.By)
		}
	}
	half, _ := Corrections(Curve(rows(p, plan)), 0.5, 0, 120)
	if len(half) == 0 || math.Abs(float64(half[len(half)/2].By)-float64(fits[len(fits)/2].By)/2) > 0.5 {
		t.Errorf("half of it: %v of %v", half, fits)
	}
	if none, _ := Corrections(Curve(rows(p, plan)[:1]), 1, 0, 120); none != nil {
		t.Errorf("of one place: %v", none)
	}
}

// By hand: a correction of 4 at 60 that reaches 20 adds 4·(1 + cos 45°)/2 = 3.41 at 55, 2 at
// 70, 0.29 at 76.5 and 0.22 at 77 (what a ruler shows is 0.25).
func TestRunsOut(t *testing.T) {
	fit := project.Fit{Fit: calc.Fit{At: 60, By: 4, Reach: 20}}
	over := fit
	over.By = -4
	for _, c := range []struct {
		fits   []project.Fit
		lo, hi float64
		mouth  float64
		want   string
	}{
		{[]project.Fit{fit}, 30, 60, 120, "it runs out past 60: 4 mm wider there, nothing left by 77"},
		{[]project.Fit{over}, 60, 100, 120, "it runs out before 60: 4 mm narrower there, nothing left by 43"},
		{[]project.Fit{fit}, 55, 70, 120, "it runs out before 55: 3.5 mm wider there, nothing left by 43, and past 70: 2 mm wider there, nothing left by 77"},
		{[]project.Fit{fit}, 30, 60, 70, "it runs out past 60: 4 mm wider there"},
		{[]project.Fit{fit}, 40, 80, 120, ""},
		{[]project.Fit{fit}, 0, 60, 60, ""},
		{nil, 30, 60, 120, ""},
	} {
		if got := RunsOut(c.fits, c.lo, c.hi, c.mouth, length.Millimetres); got != c.want {
			t.Errorf("from %v to %v: %q, want %q", c.lo, c.hi, got, c.want)
		}
	}
}

func TestNoRows(t *testing.T) {
	p, plan := bar(t)
	if rows := rows(p, plan); rows != nil || Words(Own(p, plan), rows, p.Units) != "" || len(Curve(rows).X) != 0 {
		t.Error("rows of nothing")
	}
	same, plan := bar(t, project.Half{At: 60, Wide: 45.7, Line: "edge"})
	if w := Words(Own(same, plan), rows(same, plan), same.Units); w != "the plan is as wide as that sheath" {
		t.Errorf("words %q", w)
	}
}

// A bar twice as long, its mouth at 240, by an earlier sheath of the shorter one, which had
// a correction of 1 at 60 already and was 3 wider there still, and as wide at both ends: at
// twice the places the longer bar is to take over 4, and 2 half way to it where the shorter
// one's correction, of reach 20, ends. Where it has a correction of 4 there nothing is left.
func TestForAnotherKnife(t *testing.T) {
	was, _ := bar(t)
	was.Title, was.Fits = "Short bar", []project.Fit{{Fit: calc.Fit{At: 60, By: 1, Reach: 20}, With: "leather"}}
	p, _ := bar(t)
	p.Knife.Stations[1].At, p.Sheath.Mouth = 300, 240
	p.MadeFor = Keep(was)
	p.Earlier = []project.Half{{At: 0, Wide: 40.65897, Line: "stitches"}, {At: 60, Wide: 44.65897, Line: "stitches"}, {At: 120, Wide: 40.65897, Line: "stitches"}}
	if err := p.Validate(); err != nil {
		t.Fatal(err)
	}
	k, err := KnifeOf(p.MadeFor, calc.DefaultLimits())
	if err != nil {
		t.Fatal(err)
	}
	rows := Rows(p.Earlier, k)
	if w := Words(k, rows, p.Units); !strings.HasPrefix(w, "the plan of Short bar is 3 mm short ") {
		t.Errorf("words %q", w)
	}
	take := func(x float64) float64 {
		g, err := ToTake(rows, k, p)
		if err != nil || g.X[0] != 0 || math.Abs(g.X[len(g.X)-1]-240) > 1e-9 {
			t.Fatalf("%v, %v", g.X, err)
		}
		return g.At(x)
	}
	for at, want := range map[float64]float64{0: 0, 80: 2, 120: 4, 160: 2, 240: 0} {
		if got := take(at); math.Abs(got-want) > 1e-3 {
			t.Errorf("at %v there is %v to take, want %v", at, got, want)
		}
	}
	p.Fits = []project.Fit{{Fit: calc.Fit{At: 120, By: 4, Reach: 40}, With: "finished"}}
	if got := take(120); math.Abs(got) > 1e-3 {
		t.Errorf("taken over, %v is left", got)
	}
	p.Fits = nil
	g, _ := ToTake(rows, k, p)
	if p.Fits, _ = Corrections(g, 1, 0, 240); len(p.Fits) == 0 {
		t.Fatal("nothing is taken over")
	}
	for x := 0.0; x <= 240; x += 10 {
		if got := take(x); math.Abs(got) > Follow+0.05 {
			t.Errorf("at %v %v is left to take", x, got)
		}
	}
}

func TestMadeForRefused(t *testing.T) {
	for _, m := range []project.MadeFor{{Title: "torn", Inputs: "format ="}, {Title: "bare", Inputs: "format = 1\n"}} {
		if _, err := KnifeOf(m, calc.DefaultLimits()); err == nil || strings.Contains(err.Error(), "\n") || !strings.Contains(err.Error(), m.Title) {
			t.Errorf("%+v: %v", m, err)
		}
	}
}
