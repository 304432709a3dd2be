package find

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"chape/calc/curve"
	"chape/calc/trace/raster"
)

func markAt(x, y float64, dotted bool) Mark {
	return Mark{Mid: curve.Vec{X: x, Y: y}, Dotted: dotted, square: raster.Piece{Area: 400}}
}

func mids(c Corners) (out [4]curve.Vec) {
	for i, m := range c {
		out[i] = m.Mid
	}
	return out
}

// The four are taken in their order whatever the turn; a fifth inside them does not count; a missing one is named.
func TestChoose(t *testing.T) {
	four := []Mark{markAt(100, 700, false), markAt(120, 110, false), markAt(500, 100, true), markAt(520, 690, false)}
	c, err := Choose(append(four, markAt(300, 300, false)), 600, 800)
	if err != nil {
		t.Fatal(err)
	}
	if want := [4]curve.Vec{{X: 500, Y: 100}, {X: 520, Y: 690}, {X: 100, Y: 700}, {X: 120, Y: 110}}; mids(c) != want {
		t.Errorf("corners %v, want %v", mids(c), want)
	}
	if m := c.Mirrored(); mids(m) != [4]curve.Vec{c[0].Mid, c[3].Mid, c[2].Mid, c[1].Mid} || mids(m.Mirrored()) != mids(c) {
		t.Errorf("mirrored: %v of %v", mids(m), mids(c))
	}
}

// In whatever order four marks come and however they are turned, the dotted one is first and the others follow clockwise as seen.
func TestChooseAnyOrder(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 31))
	for range 50 {
		turn := 2 * math.Pi * r.Float64()
		var want [4]curve.Vec
		var marks []Mark
		for i, v := range []curve.Vec{{X: -180, Y: -240}, {X: 190, Y: -230}, {X: 170, Y: 250}, {X: -200, Y: 235}} {
			sin, cos := math.Sincos(turn)
			want[i] = curve.Vec{X: 400 + v.X*cos - v.Y*sin, Y: 400 + v.X*sin + v.Y*cos}
			marks = append(marks, markAt(want[i].X, want[i].Y, i == 0))
		}
		r.Shuffle(4, func(i, j int) { marks[i], marks[j] = marks[j], marks[i] })
		c, err := Choose(marks, 800, 800)
		if err != nil || mids(c) != want {
			t.Fatalf("turned by %v: %v, %v; want %v", turn, mids(c), err, want)
		}
	}
}

// Of many the four that span most are taken, the first twelve looked at; none is taken that is far smaller than the others.
func TestChooseAmongMany(t *testing.T) {
	marks := []Mark{markAt(100, 100, true), markAt(500, 100, false), markAt(500, 700, false), markAt(100, 700, false)}
	r := rand.New(rand.NewPCG(2, 31))
	many := append([]Mark(nil), marks...)
	for range 8 {
		many = append(many, markAt(150+300*r.Float64(), 150+500*r.Float64(), false))
	}
	r.Shuffle(len(many), func(i, j int) { many[i], many[j] = many[j], many[i] })
	c, err := Choose(append(many, markAt(0, 800, false), markAt(600, 800, false)), 600, 800) // the last two are past the twelfth
	if err != nil || mids(c) != [4]curve.Vec{marks[0].Mid, marks[1].Mid, marks[2].Mid, marks[3].Mid} {
		t.Errorf("chosen %v, %v", mids(c), err)
	}
	speck := markAt(590, 790, false)
	speck.square.Area = 44 // less than a ninth
	c, err = Choose(append([]Mark{speck}, marks...), 600, 800)
	if err != nil || c[2].Mid != marks[2].Mid {
		t.Errorf("with a speck: %v, %v", mids(c), err)
	}
	speck.square.Area = 60
	if c, err = Choose(append([]Mark{speck}, marks...), 600, 800); err != nil || c[2].Mid != speck.Mid {
		t.Errorf("with one a little smaller: %v, %v", mids(c), err)
	}
}

// Four with a hollow corner are no sheet.
func TestChooseHollow(t *testing.T) {
	hollow := []Mark{markAt(100, 100, true), markAt(500, 100, false), markAt(230, 220, false), markAt(100, 700, false)}
	if c, err := Choose(hollow, 600, 800); err == nil || !strings.Contains(err.Error(), "do not lie as on one sheet") {
		t.Errorf("chosen %v, %v", mids(c), err)
	}
}

// What is missing is said, with where it would be: across from the widest corner of the three that are there.
func TestMissing(t *testing.T) {
	sheet := func(skip int, by curve.Vec) (out []Mark) {
		for i, v := range []curve.Vec{{X: 100, Y: 100}, {X: 500, Y: 110}, {X: 510, Y: 700}, {X: 90, Y: 690}} {
			if i != skip {
				out = append(out, markAt(v.X+by.X, v.Y+by.Y, i == 0))
			}
		}
		return out
	}
	two := append(sheet(3, curve.Vec{}), markAt(90, 690, true))
	none := sheet(-1, curve.Vec{})
	none[0].Dotted = false
	for _, c := range []struct {
		name  string
		marks []Mark
		want  string
	}{
		{"none", nil, "no tracing sheet is to be seen"},
		{"two", sheet(3, curve.Vec{})[:2], "2 of its 4 corner marks found"},
		{"the dotted one", sheet(0, curve.Vec{}), "the corner mark with the dot is missing, at the upper left of the picture"},
		{"the second", sheet(1, curve.Vec{}), "a corner mark is missing, at the upper right of the picture"},
		{"the third", sheet(2, curve.Vec{}), "a corner mark is missing, at the lower right of the picture"},
		{"the fourth", sheet(3, curve.Vec{}), "a corner mark is missing, at the lower left of the picture"},
		{"out to the right", sheet(1, curve.Vec{X: 130}), "past the picture's upper right corner"},
		{"out to the left", sheet(3, curve.Vec{X: -120}), "past the picture's lower left corner"},
		{"out above", sheet(1, curve.Vec{Y: -120}), "past the picture's upper right corner"},
		{"out below", sheet(2, curve.Vec{Y: 120}), "past the picture's lower right corner"},
		{"two sheets", two, "2 marks with a dot are to be seen"},
		{"no dot", none, "the corner mark with the dot is missing"},
	} {
		_, err := Choose(c.marks, 600, 800)
		if err == nil || !strings.Contains(err.Error(), c.want) || strings.Contains(err.Error(), "\n") || !strings.Contains(err.Error(), "photograph") {
			t.Errorf("%s: %v; want %q", c.name, err, c.want)
		}
	}
}
