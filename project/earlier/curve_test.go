package earlier

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"chape/calc"
	"chape/calc/compare"
	"chape/calc/length"
	"chape/project"
)

// measured is a row that the plan has a line for.
func measured(at, by float64) Row {
	return Row{Difference: compare.Difference{At: at, By: by}, Inside: true}
}

// By hand: of 1, 1 and 4 at one place the mean is 2, in any order; of 3 and 5 it is 4; what
// the plan has no line for counts nowhere.
func TestSeveralAtOnePlace(t *testing.T) {
	rows := []Row{measured(10, 3), measured(10, 5), measured(60, 1), measured(60, 1), measured(60, 4), {Difference: compare.Difference{At: 80, By: 99}}, measured(90, -2)}
	for range 6 {
		g := Curve(rows)
		if len(g.X) != 3 || math.Abs(g.At(10)-4) > 1e-12 || math.Abs(g.At(60)-2) > 1e-12 || g.At(90) != -2 {
			t.Errorf("curve %v", g)
		}
		if y := g.At(75); math.Abs(y) > 1e-12 { // half way from 2 to -2
			t.Errorf("between them %v", y)
		}
		rand.Shuffle(3, func(i, j int) { rows[2+i], rows[2+j] = rows[2+j], rows[2+i] })
	}
	if g := Curve(nil); len(g.X) != 0 {
		t.Errorf("of none %v", g)
	}
}

// Only short, only over, and both within what a ruler shows; the knife it was made for is
// named, lengths in the project's unit. 25.4 mm to the inch: 16 CFR 500.19.
func TestWords(t *testing.T) {
	p, plan := bar(t)
	k := Own(p, plan)
	for _, c := range []struct {
		rows  []Row
		u     length.Unit
		title string
		want  string
	}{
		{[]Row{measured(100, 4), measured(60, 0.2)}, length.Millimetres, "", "the plan is 4 mm short between"},
		{[]Row{measured(100, -6), measured(60, 0.2)}, length.Millimetres, "", "the plan is 6 mm over between"},
		{[]Row{measured(100, 0.24), measured(60, -0.24)}, length.Millimetres, "", "the plan is as wide as that sheath"},
		{[]Row{measured(100, 3.175)}, length.Inches, "Boning", "the plan of Boning is 1/8 in short between"},
		{[]Row{{Difference: compare.Difference{At: 300, By: 9}}}, length.Millimetres, "", ""},
	} {
		k.Title = c.title
		if got := Words(k, c.rows, c.u); !strings.HasPrefix(got, c.want) || c.want == "" && got != "" || strings.Contains(got, ";") {
			t.Errorf("%v: %q, want %q", c.rows, got, c.want)
		}
	}
}

// What is taken over stands in half tenths, says where it comes from, and a part of it is that
// part: over seeded random differences nothing is further off than is said.
func TestCorrectionsFollow(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 20))
	for range 40 {
		var rows []Row
		for x := 0.0; x <= 120; x += 20 {
			rows = append(rows, measured(x, r.Float64()*4-2))
		}
		g := Curve(rows)
		part := 0.25 + 0.75*r.Float64()
		fits, off := Corrections(g, part, 0, 120)
		var sum []calc.Fit
		for _, f := range fits {
			if math.Abs(f.By.MM()*20-math.Round(f.By.MM()*20)) > 1e-9 || f.Reach <= 0 || f.With != "finished" || f.Note != "from an earlier sheath" {
				t.Fatalf("correction %+v", f)
			}
			sum = append(sum, f.Fit)
		}
		for x := 0.0; x <= 120; x++ {
			if d := math.Abs(compare.Sum(sum, x) - part*g.At(x)); d > off+0.1 { // rounded to 0.05 each
				t.Fatalf("at %v it is %v off, said %v", x, d, off)
			}
		}
	}
}

// The knife that a sheath was made for is a copy: it stays as it was, is read back as it was,
// and keeps nothing of whom it was made for.
func TestKeepIsACopy(t *testing.T) {
	p, _ := bar(t, project.Half{At: 60, Wide: 40, Line: "edge"})
	p.Title, p.Customer.Name, p.Notes = "Short bar", "nobody", "words"
	m := Keep(p)
	p.Knife.Stations[1].At, p.Sheath.Mouth = 300, 240
	k, err := KnifeOf(m, calc.DefaultLimits())
	if err != nil || k.Title != "Short bar" || k.Project.Sheath.Mouth != 120 || k.Project.Knife.Length() != 160 || k.Plan == nil {
		t.Errorf("%+v, %v", k.Project, err)
	}
	if strings.Contains(m.Inputs, "nobody") || strings.Contains(m.Inputs, "words") || len(k.Project.Earlier) != 0 {
		t.Errorf("it keeps\n%s", m.Inputs)
	}
	if again := Keep(k.Project); again.Inputs != m.Inputs {
		t.Errorf("kept once more\n%s\nwas\n%s", again.Inputs, m.Inputs)
	}
	if k, err := KnifeOf(project.MadeFor{Inputs: m.Inputs}, calc.DefaultLimits()); err != nil || k.Title != "another knife" {
		t.Errorf("without a title %q, %v", k.Title, err)
	}
}
