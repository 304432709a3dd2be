package trace

import (
	"math"
	"testing"

	"chape/calc/curve"
)

// mapped is the map of a picture, at the level half-way down a pencil's line.
func mapped(fs ...far) (*truth, *landscape) {
	tr := flat(pencil.lines(fs...))
	for i := range tr.grey.V {
		tr.grey.V[i] /= 0.8
	}
	return tr, tr.landscape(0.75)
}

// The map: a cell is dark where any of its dots is, specks are left out, heights are distances from the dark, seeds stand along the rim.
func TestLandscape(t *testing.T) {
	tr, _ := mapped(circle(middle, 20))
	tr.grey.V[100*tr.grey.Width+100] = 0.2 // a speck
	m := tr.landscape(0.75)
	if m.w != tr.grey.Width/2 || m.h != tr.grey.Height/2 || m.cell != 0.4 {
		t.Fatalf("%d × %d cells of %v mm", m.w, m.h, m.cell)
	}
	if len(m.seeds) != 2*(m.w+m.h)-4 {
		t.Errorf("%d seeds, want %d along the rim", len(m.seeds), 2*(m.w+m.h)-4)
	}
	for _, s := range m.seeds {
		if x, y := int(s)%m.w, int(s)/m.w; x != 0 && y != 0 && x != m.w-1 && y != m.h-1 {
			t.Fatalf("a seed at %d, %d", x, y)
		}
	}
	for i, dark := range m.dark {
		v := m.place(i)
		d := math.Abs(v.Dist(middle) - 20)
		if dark && d > 0.85 || !dark && d < 0.1 {
			t.Fatalf("at %v, %v from the line, dark is %v", v, d, dark)
		}
		if want := (d - 0.3) / m.cell * tall; !dark && math.Abs(float64(m.height[i])-min(want, 255)) > 1.1*tall {
			t.Fatalf("at %v, %v from the line, the height is %v, want about %v", v, d, m.height[i], want)
		}
	}
	if at := m.place(3*m.w + 7); at.Dist(curve.Vec{X: 2.9, Y: 1.3}) > 1e-9 { // the mean of its dots, 14 and 15, 6 and 7
		t.Errorf("cell 7, 3 lies at %v", at)
	}
	if seen := m.seen(); len(seen) < 8 || len(seen) > 200 {
		t.Errorf("%d places of the line are shown", len(seen))
	} else if worst, _ := off(seen, circle(middle, 20)); worst > 0.9 {
		t.Errorf("a place that is shown is %v off the line", worst)
	}
}

// Outside, inside and line of a circle, and of one with a gap up to 3 mm; with a wider one it is refused, where and how wide.
func TestSides(t *testing.T) {
	at := middle.Add(curve.Vec{X: 20})
	for _, gap := range []float64{0, 1, 2.4} {
		_, m := mapped(open(circle(middle, 20), at, gap))
		label, err := m.sides()
		if err != nil {
			t.Fatalf("a gap of %v: %v", gap, err)
		}
		for i, l := range label {
			v := m.place(i)
			switch d := v.Dist(middle) - 20; {
			case d > 1 && l != outside, d < -1 && v.Dist(at) > 2 && l != insideOf:
				t.Fatalf("a gap of %v: at %v the side is %d", gap, v, l)
			}
		}
	}
	for _, gap := range []float64{4.2, 6, 9} {
		_, m := mapped(open(circle(middle, 20), at, gap))
		_, err := m.sides()
		no := refused(t, "open", err, "the line is open by")
		if !no.Placed || no.At.Dist(at) > 0.8 || len(no.Seen) == 0 {
			t.Errorf("a gap of %v is told at %v, want %v; %d places are shown", gap, no.At, at, len(no.Seen))
		}
	}
}

// What closes round nothing: a single stroke, a curl too small for a knife, and an empty sheet.
func TestSidesOfNothing(t *testing.T) {
	for name, f := range map[string]far{
		"a stroke":    segment(curve.Vec{X: 20, Y: 30}, curve.Vec{X: 80, Y: 70}),
		"a curl":      circle(middle, 2.5),
		"half a ring": open(circle(middle, 20), middle.Add(curve.Vec{X: 20}), 28),
	} {
		_, m := mapped(f)
		_, err := m.sides()
		if name == "half a ring" {
			refused(t, name, err, "open by")
		} else {
			refused(t, name, err, "closes round nothing")
		}
	}
	_, m := mapped()
	if _, err := m.sides(); err == nil {
		t.Error("an empty sheet has an inside")
	}
}

// Two shapes are refused, how many is said; one with a scribble beside it is not, nor one with a blot in it.
func TestSingle(t *testing.T) {
	_, m := mapped(circle(curve.Vec{X: 26, Y: 50}, 9), circle(curve.Vec{X: 52, Y: 85}, 12), circle(curve.Vec{X: 80, Y: 50}, 10))
	_, err := m.sides()
	if no := refused(t, "three", err, "3 closed shapes are drawn"); len(no.Seen) == 0 {
		t.Error("the shapes are not shown")
	}
	for name, f := range map[string]far{"a scribble": segment(curve.Vec{X: 85, Y: 30}, curve.Vec{X: 95, Y: 40}), "a curl": circle(curve.Vec{X: 85, Y: 30}, 2), "a blot": circle(middle, 1)} {
		_, m := mapped(circle(middle, 20), f)
		if _, err := m.sides(); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// A drawing that runs up to what is printed is refused, where; a short mark there is not.
func TestOverFrame(t *testing.T) {
	for name, c := range map[string]struct {
		f  far
		at curve.Vec
		ok bool
	}{
		"inside":         {circle(middle, 20), curve.Vec{}, true},
		"over the left":  {box(curve.Vec{X: 30, Y: 60}, 57, 30, 0), curve.Vec{X: 1.5, Y: 45}, false},
		"below":          {box(curve.Vec{X: 52, Y: 95}, 30, 27, 0), curve.Vec{X: 37, Y: 108.5}, false},
		"over the row":   {box(curve.Vec{X: 52, Y: 22}, 30, 28.6, 0), curve.Vec{X: 37, Y: 8}, false},
		"a short stroke": {segment(curve.Vec{X: 2, Y: 60}, curve.Vec{X: 12, Y: 60}), curve.Vec{}, true},
	} {
		tr, m := mapped(c.f)
		err := m.overFrame(tr)
		if c.ok {
			if err != nil {
				t.Errorf("%s: %v", name, err)
			}
			continue
		}
		if no := refused(t, name, err, "runs over the frame"); !no.Placed || no.At.Dist(c.at) > 3 {
			t.Errorf("%s: told at %v, want near %v", name, no.At, c.at)
		}
	}
}

// Gaps are told where and how wide they are, those under half a millimetre not at all; the bridge goes from line to line across each.
func TestGaps(t *testing.T) {
	at := []curve.Vec{middle.Add(curve.Vec{X: 20}), middle.Add(curve.Vec{X: -14.14, Y: 14.14}), middle.Add(curve.Vec{Y: -20})}
	_, m := mapped(open(open(open(circle(middle, 20), at[0], 2), at[1], 2.8), at[2], 0.2))
	label, err := m.sides()
	if err != nil {
		t.Fatal(err)
	}
	gaps := m.gaps(m.meeting(label))
	if len(gaps) != 2 {
		t.Fatalf("gaps %v, want two", gaps)
	}
	for i, want := range []struct {
		mid   curve.Vec
		width float64
	}{{at[0], 2}, {at[1], 2.8}} {
		g := gaps[0]
		if gaps[1].mid.Dist(want.mid) < g.mid.Dist(want.mid) {
			g = gaps[1]
		}
		if g.mid.Dist(want.mid) > 0.7 || math.Abs(g.width-want.width) > 1 {
			t.Errorf("gap %d: %v, want %v", i, g, want)
		}
		a, b, ok := m.bridge(g)
		across := a.Add(b).Mul(0.5)
		if da, db := math.Abs(a.Dist(middle)-20), math.Abs(b.Dist(middle)-20); !ok || da > 0.4 || db > 0.4 || across.Dist(want.mid) > 0.6 || a.Dist(b) < want.width {
			t.Errorf("gap %d is bridged from %v to %v, %v", i, a, b, ok)
		}
	}
	if a, b, ok := m.bridge(gap{1, curve.Vec{X: 90, Y: 20}}); ok {
		t.Errorf("where there is no line there is a bridge from %v to %v", a, b)
	}
	// by an end that nothing lies across from there is none
	_, bent := mapped(segment(curve.Vec{X: 40, Y: 60}, curve.Vec{X: 52, Y: 60}), segment(curve.Vec{X: 54, Y: 62}, curve.Vec{X: 54, Y: 80}))
	if a, b, ok := bent.bridge(gap{1.6, curve.Vec{X: 53.4, Y: 60.4}}); ok {
		t.Errorf("round a corner there is a bridge from %v to %v", a, b)
	}
}

// A bridged gap of 2 mm is told to a tenth, and the outline runs on over it within a third of a millimetre.
func TestOutlineOverGap(t *testing.T) {
	at := middle.Add(curve.Vec{X: 20})
	if d := drawIt(t, flat(pencil.lines(open(circle(middle, 20), at, 1.2))), Options{}); len(d.gaps) != 1 || math.Abs(d.gaps[0]-1.2) > 0.7 {
		t.Errorf("gaps %v, want one of about 1.2 mm", d.gaps)
	}
	d := drawIt(t, flat(pencil.lines(open(circle(middle, 20), at, 2))), Options{})
	// inside, and on the bridge, it is as far below the level as paper is above
	for _, v := range []curve.Vec{middle, middle.Add(curve.Vec{Y: -15}), at} {
		if got, want := d.field.At(v.Mul(1/dotOf)), 2*d.level-1; math.Abs(float64(got-want)) > 1e-5 {
			t.Errorf("at %v there is %v, want %v", v, got, want)
		}
	}
	if len(d.gaps) != 1 || math.Abs(d.gaps[0]-2) > 0.7 || math.Round(d.gaps[0]*10)/10 != d.gaps[0] {
		t.Errorf("gaps %v, want one of about 2 mm", d.gaps)
	}
	if worst, _ := off(d.outline, circle(middle, 20-d.standoff)); worst > 0.33 {
		t.Errorf("the outline is %v off at worst", worst)
	}
}

// A ruled line is as wide as a pencil's, from end to end and no further, and takes no dark away.
func TestRule(t *testing.T) {
	tr := flat(func(curve.Vec) float64 { return 1 })
	a, b := curve.Vec{X: 30, Y: 40}, curve.Vec{X: 38, Y: 46}
	tr.grey.V[200*tr.grey.Width+170] = 0.1 // at 34, 40: off the line
	tr.grey.V[215*tr.grey.Width+170] = 0.1 // at 34, 43: on it
	tr.rule(tr.grey, a, b, 0.4)
	for i, got := range tr.grey.V {
		v := tr.place(curve.Vec{X: float64(i % tr.grey.Width), Y: float64(i / tr.grey.Width)})
		along, across := (v.X-a.X)*0.8+(v.Y-a.Y)*0.6, math.Abs((v.X-a.X)*0.6-(v.Y-a.Y)*0.8)
		switch in := along >= 0 && along <= 10 && across <= 0.26; {
		case v.Dist(curve.Vec{X: 34, Y: 43}) < 0.01 || v.Dist(curve.Vec{X: 34, Y: 40}) < 0.01:
			if got != 0.1 {
				t.Errorf("at %v the dark became %v", v, got)
			}
		case in != (got == 0.4) && math.Abs(across-0.26) > 1e-6 && math.Abs(along) > 1e-6 && math.Abs(along-10) > 1e-6:
			t.Fatalf("at %v, %v along and %v off, there is %v", v, along, across, got)
		}
	}
}
