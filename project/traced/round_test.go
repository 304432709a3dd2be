package traced

import (
	"math"
	"testing"

	"chape/calc"
	"chape/calc/curve"
	"chape/calc/length"
	"chape/calc/trace"
	"chape/calc/trace/axes"
	"chape/project"
)

// roundButt is the reading of a knife 200 mm long whose butt is half an ellipse so long.
func roundButt(long float64) trace.Reading {
	var r trace.Reading
	line := curve.Line{{X: 0, Y: 14}, {X: 12, Y: 21}, {X: 40, Y: 27}, {X: 100, Y: 28}, {X: 100, Y: 31}, {X: 200 - long, Y: 33}}
	for k := 1; k < 60; k++ {
		a := math.Pi * float64(k) / 60
		line = append(line, curve.Vec{X: 200 - long + long*math.Sin(a), Y: 21.5 + 11.5*math.Cos(a)})
	}
	line = append(line, curve.Vec{X: 200 - long, Y: 10}, curve.Vec{X: 100, Y: 10}, curve.Vec{X: 30, Y: 10})
	for i, a := range line {
		b := line[(i+1)%len(line)]
		n := max(1, int(a.Dist(b)/0.5)+1)
		for k := range n {
			r.Outline = append(r.Outline, a.Add(b.Sub(a).Mul(float64(k)/float64(n))))
		}
	}
	r.Knife = axes.NewKnife(r.Outline, []curve.Vec{{X: 100, Y: 10}, {X: 100, Y: 31}})
	return r
}

// A butt that rounds off is less deep than thick at its end, and that is no slip of the
// finger; a slip at the last mark of a knife that does not is one.
func TestARoundButtIsNoSlip(t *testing.T) {
	for _, long := range []float64{3, 6, 11.5, 20} {
		q, err := Take(project.Defaults(), roundButt(long), "a.jpg", day)
		if err != nil {
			t.Fatal(err)
		}
		s := q.Knife.Stations
		if last := s[len(s)-1]; last.Thick < 2*last.Depth() {
			t.Errorf("round over %v mm it ends %v deep and %v thick", long, last.Depth(), last.Thick)
		}
		plan, err := calc.Compute(q.Input(calc.DefaultLimits()))
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range plan.Checks {
			if c.Name == "thickness" && c.Level != calc.OK {
				t.Errorf("a butt round over %v mm: %s", long, c.Text(length.Millimetres))
			}
		}
	}
}

func TestASlipAtTheButtIsFound(t *testing.T) {
	q := project.Defaults()
	q.Source = project.FromStations
	last := &q.Knife.Stations[len(q.Knife.Stations)-1]
	last.Bottom = last.Top + 3
	plan, err := calc.Compute(q.Input(calc.DefaultLimits()))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range plan.Checks {
		if c.Name == "thickness" && c.Level == calc.Note {
			return
		}
	}
	t.Error("a handle 3 mm deep at its end is taken without a word")
}
