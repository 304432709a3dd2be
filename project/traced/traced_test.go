package traced

import (
	"slices"
	"testing"
	"time"

	"chape/calc"
	"chape/calc/curve"
	"chape/calc/knife"
	"chape/calc/length"
	"chape/calc/trace"
	"chape/calc/trace/axes"
	"chape/project"
)

// reading is the reading of a knife 200 mm long with a step at 100 mm.
func reading() trace.Reading {
	var r trace.Reading
	round := curve.Line{{X: 0, Y: 14}, {X: 40, Y: 27}, {X: 100, Y: 28}, {X: 100, Y: 31}, {X: 200, Y: 33}, {X: 200, Y: 10}, {X: 100, Y: 10}, {X: 30, Y: 10}}
	for i, a := range round { // as densely as a reading's
		b := round[(i+1)%len(round)]
		n := max(1, int(a.Dist(b)/0.5)+1)
		for k := range n {
			r.Outline = append(r.Outline, a.Add(b.Sub(a).Mul(float64(k)/float64(n))))
		}
	}
	r.Knife = axes.NewKnife(r.Outline, []curve.Vec{{X: 100, Y: 10}, {X: 100, Y: 31}})
	r.Residual.RMS = 0.0512
	return r
}

var day = time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC)

func mustTake(t *testing.T, p project.Project) project.Project {
	t.Helper()
	q, err := Take(p, reading(), "a\x1b.jpg", day)
	if err != nil {
		t.Fatal(err)
	}
	return q
}

// A knife that came of an outline was never measured: all marks are left, each once measured no more.
func TestLeftToMeasure(t *testing.T) {
	q := mustTake(t, project.Defaults())
	n := len(q.Knife.Stations)
	if got := q.Unmeasured(); len(got) != n || n < 6 {
		t.Fatalf("left %v of %d marks", got, n)
	}
	if q.Tracing.Picture != "a_.jpg" || q.Tracing.Residual != 0.051 || q.Source != project.FromStations {
		t.Errorf("noted %+v", q.Tracing)
	}
	unmeasured := func(p project.Project) float64 {
		plan, err := calc.Compute(p.Input(calc.DefaultLimits()))
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range plan.Checks {
			if c.Name == "unmeasured" && c.Level == calc.Note {
				return c.Value
			}
		}
		return 0
	}
	if got := unmeasured(q); got != float64(n) {
		t.Errorf("the plan notes %v marks that were not measured, of %d", got, n)
	}
	step := slices.IndexFunc(q.Knife.Stations, func(s knife.Station) bool { return s.At >= 99 })
	if s := q.Knife.Stations; s[step].At != s[step+1].At {
		t.Fatalf("no pair at the step: %v", s)
	}
	for _, f := range project.MarkFields(step) {
		if f.Key == "knife.station.thick" {
			if err := f.Set(&q, length.Length(4.2)); err != nil {
				t.Fatal(err)
			}
		}
	}
	got := q.Unmeasured()
	if len(got) != n-1 || slices.Contains(got, step) || !slices.Contains(got, step+1) {
		t.Errorf("after mark %d: left %v", step, got)
	}
	for _, i := range got {
		q.Measured(i)
	}
	if len(q.Unmeasured()) != 0 || len(q.Tracing.Left) != 0 {
		t.Errorf("all measured, and left %v", q.Tracing.Left)
	}
	if got := unmeasured(q); got != 0 {
		t.Errorf("all measured, and %v noted", got)
	}
	q.Measured(-1)
	q.Measured(n)
}

// Marks measured by hand keep what was measured: nothing is left but beside a mark that was left before.
func TestNothingLeftOfMeasuredMarks(t *testing.T) {
	p := project.Defaults()
	p.Source = project.FromStations
	p.Knife.Stations[0].Thick = 1.234
	q := mustTake(t, p)
	if got := q.Unmeasured(); got != nil {
		t.Errorf("left %v", got)
	}
	last := p.Knife.Stations[len(p.Knife.Stations)-1].At
	p.Tracing.Left = []length.Length{last}
	q = mustTake(t, p)
	got := q.Unmeasured()
	if len(got) == 0 || got[len(got)-1] != len(q.Knife.Stations)-1 || slices.Contains(got, 0) {
		t.Errorf("with the butt left: %v of %d", got, len(q.Knife.Stations))
	}
	p.Source = project.FromOutline
	if got := p.Unmeasured(); got != nil {
		t.Errorf("of an outline: %v", got)
	}
}

// Another step on the old knife: on its point's side everything is measured.
func TestLeftBesideAStep(t *testing.T) {
	marks := []knife.Station{{At: 0}, {At: 50}, {At: 50}, {At: 80}}
	left := map[int]bool{2: true, 3: true}
	for _, c := range []struct {
		x      float64
		before bool
		want   bool
	}{{0, false, false}, {25, false, false}, {50, true, false}, {50, false, true}, {60, false, true}, {80, false, true}} {
		if got := beside(marks, left, c.x, c.before); got != c.want {
			t.Errorf("beside %v, before %v: %v", c.x, c.before, got)
		}
	}
}
