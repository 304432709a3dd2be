package picture

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"chape/calc/curve"
	"chape/calc/trace"
	"chape/project"
	"chape/project/picture/phototest"
	"chape/project/print/sheet"
	"chape/project/print/tracing"
	"chape/project/traced"
)

// A knife of testdata goes from the bytes of the printed sheet through a camera to its marks.
func TestKnifeFromItsPicture(t *testing.T) {
	t.Parallel()
	k := testKnife(t, "guard.toml")
	d := outlineOf(t, k)
	p, r := page(), rand.New(rand.NewPCG(1, 1))
	want := drawKnife(t, p, d, r)
	c := small(1)
	c.Tilt, c.Toward, c.Bulge, c.Blur, c.Noise, c.Fall = 0.3, 1, 0.05, 0.8, 0.02, 0.6
	got, err := read2(t, p, c, trace.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if rms, worst := fault(got.Outline, want, nil); rms > 0.2 || worst > 0.6 {
		t.Errorf("the outline is off by %.2f mm, at worst %.2f", rms, worst)
	}
	if math.Abs(got.Knife.Length()-d.long) > 0.6 {
		t.Errorf("length %.2f, want %.2f", got.Knife.Length(), d.long)
	}
	if len(got.Knife.Steps) != len(d.steps) {
		t.Fatalf("steps %v, want %v", got.Knife.Steps, d.steps)
	}
	for i, s := range d.steps {
		if math.Abs(got.Knife.Steps[i]-s) > 0.4 {
			t.Errorf("step %d at %.2f, want %.2f", i, got.Knife.Steps[i], s)
		}
	}
	if off, at := got.Knife.Off(); off > 0.15 || len(got.Knife.Marks) > 60 {
		t.Errorf("%d marks stray by %.2f mm at %.1f", len(got.Knife.Marks), off, at)
	}
	q, err := traced.Take(project.Defaults(), got, "dir picture.jpg", time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC))
	if err != nil {
		t.Fatalf("Take: %v", err)
	}
	if q.Tracing.Picture != "dir picture.jpg" || len(q.Knife.Stations) != len(got.Knife.Marks) {
		t.Errorf("taken as %+v with %d marks", q.Tracing, len(q.Knife.Stations))
	}
}

// Letter and legal paper hold 180 × 245 and 180 × 320 mm: sides with an even number of squares, which end with two white ones.
func TestOtherPapers(t *testing.T) {
	t.Parallel()
	for name, high := range map[string]float64{"letter": 245, "legal": 320} {
		paper, err := sheet.ParsePaper(name)
		if err != nil {
			t.Fatal(err)
		}
		data, err := tracing.PDF(tracing.Options{Paper: paper})
		if err != nil {
			t.Fatal(err)
		}
		p, err := phototest.Read(data, 5)
		if err != nil {
			t.Fatal(err)
		}
		disc := make(curve.Line, 60)
		for i := range disc {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(len(disc)))
			disc[i] = curve.Vec{X: 90 + 25*cos, Y: 140 + 25*sin}
		}
		p.Lay(disc, [3]uint8{64, 41, 23})
		got, err := read2(t, p, phototest.Camera{Width: 975, Height: 1300, Fill: 0.88, Seed: 1}, trace.Options{Of: trace.Leather})
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if got.Sheet.Width != 180 || got.Sheet.Height != high || math.Abs(got.Outline.Area()-disc.Area()) > 15 {
			t.Errorf("%s: the sheet is %v, the disc's area %.0f mm², want %.0f", name, got.Sheet, got.Outline.Area(), disc.Area())
		}
	}
}

// A pattern laid on the sheet, whole, of a card's colour.
func TestPatternFromItsPicture(t *testing.T) {
	t.Parallel()
	half := curve.Line{{X: 0, Y: 0}, {X: 0, Y: 18}, {X: 20, Y: 30}, {X: 120, Y: 38}, {X: 170, Y: 40}, {X: 170, Y: 0}}
	var line curve.Line
	line = append(line, half[1:5]...)
	for i := 4; i > 0; i-- {
		line = append(line, curve.Vec{X: half[i].X, Y: -half[i].Y})
	}
	p := page()
	on := place(line, curve.Vec{X: 105, Y: 60}, math.Pi/2+0.05)
	p.Lay(on, [3]uint8{150, 110, 60})
	c := small(2)
	c.Shadow, c.Noise, c.Blur = 0.5, 0.02, 0.8
	got, err := read2(t, p, c, trace.Options{Of: trace.Pattern})
	if err != nil {
		t.Fatal(err)
	}
	rms, worst := fault(got.Outline, place(on, curve.Vec{X: -13, Y: -13}, 0), nil)
	if rms > 0.25 || worst > 0.8 {
		t.Errorf("the outline is off by %.2f mm, at worst %.2f", rms, worst)
	}
	if !got.Pattern.Whole || got.Pattern.Off > 0.2 {
		t.Errorf("whole %v, halves differ by %.2f", got.Pattern.Whole, got.Pattern.Off)
	}
	n := len(got.Pattern.Half)
	if h := got.Pattern.Half[n/2]; math.Abs(h.Y-35.1) > 0.5 {
		t.Errorf("half-width %.2f at %.1f, want 35.1", h.Y, h.X)
	}
}

// A steel rule gives the stand-off back.
func TestRule(t *testing.T) {
	t.Parallel()
	p, r := page(), rand.New(rand.NewPCG(3, 3))
	rule := drawn{line: curve.Line{{X: 0, Y: 0}, {X: 190, Y: 0}, {X: 190, Y: 30}, {X: 0, Y: 30}}, long: 190}
	drawKnife(t, p, rule, r)
	got, err := read2(t, p, small(3), trace.Options{Rule: 30})
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(got.Calibrated-got.Line/2) > 0.06 {
		t.Errorf("stand-off %.3f of a line %.3f wide, want half of it", got.Calibrated, got.Line)
	}
	if _, err := read2(t, p, small(3), trace.Options{Rule: 40}); err == nil {
		t.Error("a rule 10 mm wider than drawn is taken")
	}
}
