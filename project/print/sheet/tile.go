package sheet

import (
	"fmt"
	"math"

	"chape/calc/curve"
)

// Overlap is what neighbouring sheets share, mm.
const Overlap = 10.0

// Sheet is one piece of a drawing that is too large for the paper.
type Sheet struct {
	Row, Col int // from 1
	Number   int // among those printed, from 1
	Area     Box // of the drawing
}

// Name says where the sheet lies.
func (s Sheet) Name() string { return fmt.Sprintf("row %d, column %d", s.Row, s.Col) }

// joint is where two sheets meet, in the middle of their overlap.
type joint struct {
	Name   string
	a, b   Sheet
	On     [2]curve.Vec // from end to end
	Marks  [2]curve.Vec
	across bool // the sheets lie one above the other
}

// Tiling is a drawing cut into sheets.
type Tiling struct {
	piece      string // its letter, before the joint's own
	Rows, Cols int
	Sheets     []Sheet
	Joints     []joint
	Whole      Box
}

// CutUp lays sheets of w by h over the drawing, with the overlap between
// them. A drawing that fits stands in the middle of its sheet, a larger one
// from the lower left. A sheet with nothing on it is left out. The joints are named by
// the piece's letter and their own.
func CutUp(d *Drawing, w, h float64, piece string) Tiling {
	const words = 6 // room for the words outside the lines
	need := d.Bounds().Grow(words)
	count := func(size, tile float64) int {
		return max(1, int(math.Ceil((size-Overlap)/(tile-Overlap)-1e-9)))
	}
	t := Tiling{piece: piece, Rows: count(need.Height(), h), Cols: count(need.Width(), w)}
	size := curve.Vec{X: float64(t.Cols)*(w-Overlap) + Overlap, Y: float64(t.Rows)*(h-Overlap) + Overlap}
	t.Whole.Lo = need.mid().Sub(size.Mul(0.5))
	if t.Cols > 1 {
		t.Whole.Lo.X = need.Lo.X // else the fold would lie in a joint
	}
	if t.Rows > 1 {
		t.Whole.Lo.Y = need.Hi.Y - size.Y // the pouch whole, the tab over the joint
	}
	t.Whole.Hi = t.Whole.Lo.Add(size)
	t.lay(d, t.Whole, curve.Vec{}, w, h)
	slack := size.Sub(curve.Vec{X: need.Width(), Y: need.Height()})
	if t.Cols == 1 {
		slack.X = 0
	}
	if t.Rows == 1 {
		slack.Y = 0
	}
	if len(t.Sheets) > 1 {
		t.share(d, w, h, slack)
	}
	t.join()
	return t
}

// lay puts sheets of w by h over the drawing, from a place moved by so much; those with
// nothing on them are left out.
func (t *Tiling) lay(d *Drawing, whole Box, by curve.Vec, w, h float64) {
	t.Whole, t.Sheets = Box{whole.Lo.Add(by), whole.Hi.Add(by)}, nil
	for r := range t.Rows {
		for c := range t.Cols {
			lo := t.Whole.Lo.Add(curve.Vec{X: float64(c) * (w - Overlap), Y: float64(r) * (h - Overlap)})
			s := Sheet{r + 1, c + 1, len(t.Sheets) + 1, Box{lo, lo.Add(curve.Vec{X: w, Y: h})}}
			if d.needs(s.Area.Grow(-Overlap / 2)) {
				t.Sheets = append(t.Sheets, s)
			}
		}
	}
}

// needs tells whether anything of the drawing, or the leather inside its cut
// line, lies in b.
func (d *Drawing) needs(b Box) bool {
	for _, p := range d.Paths {
		if len(p.Clip(b)) > 0 || p.Closed && inside(b.mid(), p.Pts) {
			return true
		}
	}
	return false
}

// join finds the neighbours and sets two marks on each joint.
func (t *Tiling) join() {
	for _, a := range t.Sheets {
		for _, b := range t.Sheets {
			across := b.Row == a.Row+1 && b.Col == a.Col
			if !across && !(b.Col == a.Col+1 && b.Row == a.Row) {
				continue
			}
			j := joint{Name: t.piece + jointName(len(t.Joints)), a: a, b: b, across: across}
			at := func(share float64) curve.Vec {
				if across {
					return curve.Vec{X: a.Area.Lo.X + share*a.Area.Width(), Y: a.Area.Hi.Y - Overlap/2}
				}
				return curve.Vec{X: a.Area.Hi.X - Overlap/2, Y: a.Area.Lo.Y + share*a.Area.Height()}
			}
			j.On = [2]curve.Vec{at(0), at(1)}
			j.Marks = [2]curve.Vec{at(0.2), at(0.8)}
			t.Joints = append(t.Joints, j)
		}
	}
}

// jointName counts A, B … Z, AA, AB …
func jointName(i int) string {
	s := ""
	for i++; i > 0; i = (i - 1) / 26 {
		s = string(rune('A'+(i-1)%26)) + s
	}
	return s
}

// of tells whether the joint is one of the sheet's.
func (j joint) of(s Sheet) bool { return j.a.Number == s.Number || j.b.Number == s.Number }

// What a register mark measures, mm: it fits into the overlap.
const (
	markRadius = 2.0
	markArm    = 3.5
)

// draw puts the joint on a sheet: the line to trim to, and the marks, named on
// the side where there is room.
func (j joint) draw(d *Drawing, sheet Box) {
	d.Path(Path{Layer: RegisterLayer, Stroke: Dotted, Pts: curve.Line{j.On[0], j.On[1]}})
	for i, m := range j.Marks {
		d.Circle(Circle{RegisterLayer, Thin, m, markRadius})
		d.Line(RegisterLayer, Thin, m.Sub(curve.Vec{X: markArm}), m.Add(curve.Vec{X: markArm}))
		d.Line(RegisterLayer, Thin, m.Sub(curve.Vec{Y: markArm}), m.Add(curve.Vec{Y: markArm}))
		t := Text{Layer: RegisterLayer, At: m.Add(curve.Vec{X: markRadius + 0.4, Y: -0.8}), Says: fmt.Sprintf("%s%d", j.Name, i+1), Size: WordSize, Bold: true}
		if !sheet.holds(t.Box()) {
			t.Anchor, t.At.X = End, m.X-markRadius-0.4
		}
		d.Text(t)
	}
}

// OnSheet is what one sheet shows, in the drawing's own coordinates.
func (t Tiling) OnSheet(d *Drawing, s Sheet) Drawing {
	out := d.Clip(s.Area)
	var marks Drawing
	for _, j := range t.Joints {
		if j.of(s) {
			j.draw(&marks, s.Area)
		}
	}
	m := marks.Clip(s.Area)
	out.Add(m, curve.Vec{})
	return out
}
