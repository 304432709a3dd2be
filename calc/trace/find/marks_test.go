package find

import (
	"math"
	"testing"

	"chape/calc/curve"
	"chape/calc/trace/raster"
)

// What a mark's black measures, summed up over places a fiftieth of a millimetre apart.
func TestMeasuresOfMark(t *testing.T) {
	const fine = 0.02
	sum := func(black func(x, y float64) bool) (area, mean float64) {
		for x := -7.5 + fine/2; x < 7.5; x += fine {
			for y := -7.5 + fine/2; y < 7.5; y += fine {
				if black(x, y) {
					area, mean = area+fine*fine, mean+fine*fine*x*x
				}
			}
		}
		return area, mean / area
	}
	for _, c := range []struct {
		name       string
		black      shape
		area, mean float64
	}{
		{"square without the ring", mark(7.5, 5.5, 0, 0), squareArea, squareMean},
		{"disc", disc(3), discArea, discMean},
		{"disc with its dot", mark(7.5, 99, 3, 1.75), ringArea, ringMean},
	} {
		area, mean := sum(c.black)
		if math.Abs(area-c.area) > 0.003*area || math.Abs(mean-c.mean) > 0.003*mean {
			t.Errorf("%s: area %.2f and mean square %.3f, want %.2f and %.3f", c.name, c.area, c.mean, area, mean)
		}
	}
}

// The four marks are found at any turn and tilt, each within a third of a dot of where it is, and the dotted one is told.
func TestMarksAtAnyTurn(t *testing.T) {
	for k, tilt := range []float64{0, 0.3, 0.6, 0.45, 0.2} {
		c := shotOf(1.3*float64(k), tilt)
		marks := look(c).Marks()
		if len(marks) != 4 {
			t.Fatalf("turned by %.1f, tilted by %.1f: %d marks", 1.3*float64(k), tilt, len(marks))
		}
		for i, want := range []curve.Vec{{X: 2.5, Y: 2.5}, {X: 102.5, Y: 2.5}, {X: 102.5, Y: 107.5}, {X: 2.5, Y: 107.5}} {
			at, found := c.Seen(want), false
			for _, m := range marks {
				if m.Mid.Dist(at) < 0.35 {
					found = true
					if m.Dotted != (i == 0) {
						t.Errorf("turned by %.1f: the mark at %v is dotted: %v", 1.3*float64(k), want, m.Dotted)
					}
				}
			}
			if !found {
				t.Errorf("turned by %.1f, tilted by %.1f: no mark at %v, %v", 1.3*float64(k), tilt, want, at)
			}
		}
	}
}

// Neither a hard shadow of 2 : 1 over some of them nor a fall of light nor blur nor noise hides one.
func TestMarksInPoorLight(t *testing.T) {
	c := shotOf(0.4, 0.2)
	c.Width, c.Height, c.PerMM = 500, 500, 3
	c.Blur, c.Noise = 1, 0.03
	c.Shade = func(x, y float64) float64 {
		l := 1 - 0.5*(x+y)/215
		if x-2*y > -3 { // its edge runs through the dotted mark
			l *= 0.5
		}
		return l
	}
	v, q := chosen(t, c)
	if len(v.Marks()) != 4 || q[0].Mid.Dist(c.Seen(curve.Vec{X: 2.5, Y: 2.5})) > 2.5 { // a shadow draws its middle to one side
		t.Errorf("%d marks, the dotted one at %v", len(v.Marks()), q[0].Mid)
	}
}

// Turned, narrowed to three quarters, small and large, a mark stays one; what has not its proportions is none.
func TestWhatIsAMark(t *testing.T) {
	beside := func(x, y float64) bool { // the disc touches one side of the ring's middle
		return quad(7.5)(x, y) && (math.Hypot(x, y) > 5.5 || math.Hypot(x-2.2, y) < 3)
	}
	for _, c := range []struct {
		name         string
		s            shape
		mark, dotted bool
	}{
		{"a mark", mark(7.5, 5.5, 3, 0), true, false},
		{"the dotted mark", mark(7.5, 5.5, 3, 1.75), true, true},
		{"a square", quad(7.5), false, false},
		{"a disc", disc(3), false, false},
		{"a disc in a ring alone", func(x, y float64) bool { r := math.Hypot(x, y); return r < 3 || r > 5.5 && r < 7 }, false, false},
		{"a disc in a frame far off", mark(13, 11, 3, 0), false, false},
		{"a disc far too large", mark(7.5, 5.5, 4.8, 0), false, false},
		{"a bar in the ring", func(x, y float64) bool {
			return quad(7.5)(x, y) && (math.Hypot(x, y) > 5.5 || math.Abs(x) < 4.9 && math.Abs(y) < 1.4)
		}, false, false},
		{"a disc beside the middle", beside, false, false},
		{"nothing", func(float64, float64) bool { return false }, false, false},
	} {
		for _, perMM := range []float64{2, 4} {
			for _, turn := range []float64{0, 0.5, 0.9} {
				for _, narrow := range []float64{1, 0.75} {
					if !c.mark && narrow != 1 {
						continue
					}
					marks := Look(seenAs(c.s, turn, narrow, perMM)).Marks()
					if got := len(marks) == 1; got != c.mark || got && marks[0].Dotted != c.dotted {
						t.Errorf("%s, turned by %v, narrowed to %v, %v dots a mm: %d marks %+v", c.name, turn, narrow, perMM, len(marks), marks)
					}
				}
			}
		}
	}
}

// The disc meets one and the same piece on all four sides: with a patch of its own in the ring's place on any one side it is none.
func TestOnePieceRound(t *testing.T) {
	patched := func(x, y float64) bool {
		gap := y < -4 && max(math.Abs(x)-1, -y-7.5) < 0.8 && !(math.Abs(x) < 1 && y > -7.5)
		return mark(7.5, 5.5, 3, 0)(x, y) && !gap
	}
	for side := range 4 {
		if marks := Look(seenAs(patched, float64(side)*math.Pi/2, 1, 4)).Marks(); len(marks) != 0 {
			t.Errorf("with a patch on side %d: %+v", side, marks)
		}
	}
}

// Of a true mark and a poor one the true one comes first.
func TestMarksBestFirst(t *testing.T) {
	poor := mark(7.5, 5.1, 3.4, 0)
	g := field(90, 45, func(v curve.Vec) float64 {
		x, y := v.X/1.5, v.Y/1.5-15
		if poor(x-15, y) || mark(7.5, 5.5, 3, 0)(x-45, y) {
			return 0.05
		}
		return 0.8
	})
	marks := Look(g).Marks()
	if len(marks) != 2 || marks[0].Mid.X < 45 || marks[0].off >= marks[1].off {
		t.Errorf("marks %+v; want the one to the right first", marks)
	}
}

// A field without light and dark, of any size, has no marks and no pieces that matter.
func TestMarksOfNothing(t *testing.T) {
	for _, size := range [][2]int{{0, 0}, {1, 1}, {1, 50}, {40, 1}, {60, 60}} {
		for _, light := range []float32{0, 0.5, 1} {
			g := raster.NewGrey(size[0], size[1])
			for i := range g.V {
				g.V[i] = light
			}
			if marks := Look(g).Marks(); len(marks) != 0 {
				t.Errorf("%v of %v: %v", size, light, marks)
			}
		}
	}
}

// Dark is less than half of the light round it: ink at a tenth is, a shadow at two thirds of the mean at its edge is not.
func TestLookTakesInk(t *testing.T) {
	g := field(200, 120, func(v curve.Vec) float64 {
		l := 0.8
		if v.X > 100 {
			l = 0.4 // a shadow
		}
		if math.Abs(v.Y-60) < 4 && math.Abs(math.Mod(v.X, 50)-25) < 4 {
			l *= 0.3
		}
		return l
	})
	if v := Look(g); len(v.pieces) != 4 {
		t.Errorf("%d dark pieces, want the 4 squares", len(v.pieces))
	}
	if v := look(shotOf(0, 0)); len(v.pieces) < 4*2+30 {
		t.Errorf("%d dark pieces on a sheet", len(v.pieces))
	}
}
