package nest

import (
	"encoding/json"
	"math"
	"os"
	"testing"

	"chape/calc/curve"
)

// task is one of the committed sets of parts to be placed; all its figures are
// invented. They were written down before the search was.
type task struct {
	Name  string      `json:"name"`
	Piece [2]float64  `json:"piece"` // width and height, mm
	Gap   float64     `json:"gap"`
	Parts []taskShape `json:"parts"`
}

// taskShape is a part by a few dimensions, mm.
type taskShape struct {
	Shape     string  `json:"shape"` // "body", "welt", "strap", "plain"
	Count     int     `json:"count"`
	Length    float64 `json:"length"`
	Half      float64 `json:"half"`  // half-width of a body at the mouth
	Point     float64 `json:"point"` // share of it at the point end
	Swell     float64 `json:"swell"` // a bulge two thirds of the way up
	Width     float64 `json:"width"` // of a welt, strap or plain piece
	Tab       float64 `json:"tab"`
	TabLength float64 `json:"tab_length"`
	Offset    float64 `json:"offset"` // fold to tab
}

func readTasks(t testing.TB) []task {
	t.Helper()
	data, err := os.ReadFile("testdata/tasks.json")
	if err != nil {
		t.Fatal(err)
	}
	var ts []task
	if err := json.Unmarshal(data, &ts); err != nil {
		t.Fatal(err)
	}
	return ts
}

// outline draws the part: x along the fold from the point end, y from the fold.
func (s taskShape) outline() curve.Line {
	switch s.Shape {
	case "body":
		return s.body()
	case "welt":
		return s.welt()
	case "strap":
		return s.strap()
	}
	return curve.Line{{}, {X: s.Length}, {X: s.Length, Y: s.Width}, {Y: s.Width}}
}

// halfWidth is the cut line of a body: square at the point end with a rounded
// corner, then widening to the mouth.
func (s taskShape) halfWidth(x float64) float64 {
	z := x / s.Length
	y := s.Half * (s.Point + (1-s.Point)*(1-math.Cos(math.Pi*z))/2)
	y += s.Swell * math.Exp(-math.Pow((z-0.66)*7, 2))
	const corner = 12.0
	if x < corner {
		y -= corner - math.Sqrt(corner*corner-(corner-x)*(corner-x))
	}
	return y
}

func (s taskShape) cut() curve.Line {
	var l curve.Line
	for x := 0.0; x < s.Length; x += 2 {
		l = append(l, curve.Vec{X: x, Y: s.halfWidth(x)})
	}
	return append(l, curve.Vec{X: s.Length, Y: s.halfWidth(s.Length)})
}

func (s taskShape) body() curve.Line {
	up := s.cut()
	l := make(curve.Line, 0, 2*len(up)+4)
	for _, p := range up {
		l = append(l, curve.Vec{X: p.X, Y: -p.Y})
	}
	if s.Tab > 0 {
		end := s.Length + s.TabLength
		l = append(l, curve.Vec{X: s.Length, Y: s.Offset}, curve.Vec{X: end, Y: s.Offset},
			curve.Vec{X: end, Y: s.Offset + s.Tab}, curve.Vec{X: s.Length, Y: s.Offset + s.Tab})
	}
	return append(l, up.Reverse()...)
}

// welt is a strip of even width inside the cut line, down to the fold at the
// point end.
func (s taskShape) welt() curve.Line {
	up := s.cut()
	l := curve.Line{{}, {X: s.Width}}
	for _, p := range up {
		if p.X > s.Width {
			l = append(l, curve.Vec{X: p.X, Y: math.Max(1, s.halfWidth(p.X)-s.Width)})
		}
	}
	return append(l, up.Reverse()...)
}

func (s taskShape) strap() curve.Line {
	r := s.Width / 2
	var l curve.Line
	for i := 0; i <= 16; i++ {
		sin, cos := math.Sincos(-math.Pi/2 + math.Pi*float64(i)/16)
		l = append(l, curve.Vec{X: s.Length - r + r*cos, Y: r + r*sin})
	}
	for i := 0; i <= 16; i++ {
		sin, cos := math.Sincos(math.Pi/2 + math.Pi*float64(i)/16)
		l = append(l, curve.Vec{X: r + r*cos, Y: r + r*sin})
	}
	return l
}
