package trace

import (
	"context"
	"errors"
	"math"
	"reflect"
	"testing"

	"chape/calc/curve"
	"chape/calc/trace/raster"
	"chape/calc/trace/sheettest"
)

// tool is a knife-like thing of 80 mm, lying along the sheet: a wedge of a blade, a step, a handle.
var tool = curve.Line{{X: 45, Y: 18}, {X: 45, Y: 60}, {X: 46.5, Y: 60}, {X: 46.5, Y: 98}, {X: 62, Y: 98}, {X: 62, Y: 60}, {X: 66, Y: 60}, {X: 64, Y: 40}, {X: 56, Y: 26}}

// around is how far a place is from a closed line.
func around(l curve.Line) far {
	return func(v curve.Vec) float64 {
		least := math.Inf(1)
		for i, a := range l {
			least = min(least, segment(a, l[(i+1)%len(l)])(v))
		}
		return least
	}
}

// A knife drawn round, with strokes at its step, from picture to marks: size, length, step, each stage once in its order; the same again; and what the sheet's own 100 mm
// measure stretches it.
func TestReadKnife(t *testing.T) {
	line, strokes := around(tool), []far{segment(curve.Vec{X: 44.7, Y: 60}, curve.Vec{X: 39.5, Y: 60}), segment(curve.Vec{X: 66.2, Y: 60}, curve.Vec{X: 71.5, Y: 60})}
	c := shotOf(func(x, y float64) (sheettest.Light, bool) {
		v := curve.Vec{X: x, Y: y}
		if x < 38 || x > 73 || y < 16 || y > 100 {
			return sheettest.Light{}, false
		}
		return sheettest.Light{0.3, 0.3, 0.3}, line(v) < 0.3 || strokes[0](v) < 0.3 || strokes[1](v) < 0.3
	})
	p := c.Take()
	var stages []Stage
	r, err := Read(context.Background(), p, Options{Progress: func(s Stage) { stages = append(stages, s) }})
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(stages, []Stage{Find, CameraFit, Outline, Marks}) || r.Of != Knife || r.Sheet != small || r.Calibrated != 0 {
		t.Errorf("stages %v, of %v, sheet %v, calibrated %v", stages, r.Of, r.Sheet, r.Calibrated)
	}
	if math.Abs(r.Line-0.6) > 0.15 || r.Standoff != r.Line/2 || len(r.Gaps) != 0 || len(r.Strokes) != 2 {
		t.Errorf("line %v, stand-off %v, gaps %v, strokes %v", r.Line, r.Standoff, r.Gaps, r.Strokes)
	}
	lo, hi := r.Outline.Bounds()
	for name, by := range map[string]float64{"left": lo.X - 45.3, "right": hi.X - 65.7, "butt": hi.Y - 97.7} {
		if math.Abs(by) > 0.15 {
			t.Errorf("the outline's %s is %v off", name, by)
		}
	}
	if len(r.Knife.Steps) != 1 || math.Abs(r.Knife.Length()-(r.Knife.Steps[0]+97.7-60)) > 0.3 {
		t.Errorf("%v long, steps %v; want the step 37.7 from the butt", r.Knife.Length(), r.Knife.Steps)
	}
	o := Options{MeasuredX: 102, MeasuredY: 98}
	was := append(curve.Line(nil), r.Outline...)
	foot := r.Strokes[0]
	r.measured(o)
	for i, v := range r.Outline {
		if want := (curve.Vec{X: was[i].X * 1.02, Y: was[i].Y * 0.98}); v.Dist(want) > 1e-9 {
			t.Fatalf("place %d is %v, want %v", i, v, want)
		}
	}
	if got := r.Strokes[0]; got.Foot.Dist(curve.Vec{X: foot.Foot.X * 1.02, Y: foot.Foot.Y * 0.98}) > 1e-9 || got.End.Dist(curve.Vec{X: foot.End.X * 1.02, Y: foot.End.Y * 0.98}) > 1e-9 {
		t.Errorf("a stroke is %v, was %v", got, foot)
	}
	r.measured(Options{})
	if r.Outline[0].Dist(curve.Vec{X: was[0].X * 1.02, Y: was[0].Y * 0.98}) > 1e-9 {
		t.Error("a sheet that is true is stretched")
	}
}

// A pattern gets its fold, a piece of leather its outline alone; the sheet's measure is counted in.
func TestReadPieces(t *testing.T) {
	shape := func(v curve.Vec) float64 { // 70 long, from 29 to 43 wide
		d := v.Sub(middle)
		return max(math.Abs(d.X)-35, math.Abs(d.Y)-18-0.1*d.X)
	}
	p := shotOf(func(x, y float64) (sheettest.Light, bool) {
		return sheettest.Light{0.4, 0.25, 0.12}, shape(curve.Vec{X: x, Y: y}) < 0
	}).Take()
	r, err := Read(context.Background(), p, Options{Of: Pattern, MeasuredX: 101, MeasuredY: 99})
	if err != nil {
		t.Fatal(err)
	}
	if want := 70 * 1.01 * 36 * 0.99; math.Abs(r.Outline.Area()-want) > 25 || !r.Pattern.Whole || len(r.Pattern.Half) < 69 || r.Of != Pattern {
		t.Errorf("an area of %v, want %v; whole %v, %d half-widths", r.Outline.Area(), want, r.Pattern.Whole, len(r.Pattern.Half))
	}
	if h := r.Pattern.Half[30]; math.Abs(h.Y-(14.5+0.1*30/1.01)*0.99) > 0.15 {
		t.Errorf("half-width %v, want %v", h, (14.5+0.1*30/1.01)*0.99)
	}
	if len(r.Knife.Marks) != 0 || r.Line != 0 {
		t.Errorf("a pattern has marks %v and a line of %v", r.Knife.Marks, r.Line)
	}
}

// What is refused gives no reading, and who gave up before it began gets that back.
func TestReadGivesNothing(t *testing.T) {
	p := &raster.Picture{Width: 20, Height: 20, RGB: make([]uint8, 1200)}
	for _, of := range Ofs {
		r, err := Read(context.Background(), p, Options{Of: of})
		refused(t, of.String(), err, "no tracing sheet")
		if !reflect.DeepEqual(r, Reading{}) {
			t.Errorf("%v: refused with %+v", of, r)
		}
	}
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if _, err := Read(ctx, p, Options{Progress: func(s Stage) { t.Errorf("at %v after all", s) }}); !errors.Is(err, context.Canceled) {
		t.Errorf("given up: %v", err)
	}
}

// A traced rule says its own stand-off: by hand, one of 30 mm that came out as 29.6 with a stand-off of 0.3 was passed by 0.1 on both sides.
func TestCalibrate(t *testing.T) {
	rule := func(w, long float64) curve.Line {
		return curve.Line{{X: 10, Y: 20}, {X: 10 + long, Y: 20}, {X: 10 + long, Y: 20 + w}, {X: 10, Y: 20 + w}}
	}
	for _, c := range []struct{ seen, used, width, want float64 }{{29.6, 0.3, 30, 0.1}, {30, 0.3, 30, 0.3}, {25.5, 0.2, 25, 0.45}} {
		if got, err := calibrate(rule(c.seen, 180), c.used, c.width); err != nil || math.Abs(got-c.want) > 0.005 {
			t.Errorf("seen as %v of %v with %v: %v, %v; want %v", c.seen, c.width, c.used, got, err, c.want)
		}
	}
	for _, c := range []struct {
		name        string
		l           curve.Line
		used, width float64
		want        string
	}{
		{"a square", rule(50, 100), 0.3, 50, "no rule"},
		{"a short rule", rule(12, 55), 0.3, 12, "no rule"},
		{"far wider than said", rule(34, 180), 0.3, 30, "measure the rule"},
		{"narrower than said", rule(29, 180), 0.3, 30, "measure the rule"},
	} {
		_, err := calibrate(c.l, c.used, c.width)
		refused(t, c.name, err, c.want)
	}
}

// Words of commands, files and screens.
func TestWords(t *testing.T) {
	if len(Ofs) != 3 || Knife.String() != "knife" || Pattern.String() != "pattern" || Leather.String() != "leather" {
		t.Errorf("kinds %v", Ofs)
	}
	for s, want := range map[Stage]string{Find: "find", CameraFit: "camera", Outline: "outline", Marks: "marks"} {
		if s.String() != want {
			t.Errorf("stage %d is %q, want %q", s, s, want)
		}
	}
	if got := refuse("%d of %d", 1, 2); got.Error() != "1 of 2" || got.Placed {
		t.Errorf("refused with %+v", got)
	}
	Options{}.stage(Find) // nobody listens
}
