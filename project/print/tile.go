package print

import (
	"fmt"
	"math"

	"chape/calc/curve"
)

// sheet is one piece of a drawing that is too large for the paper.
type sheet struct {
	row, col int // from 1
	number   int // among those printed, from 1
	area     box // of the drawing
}

func (s sheet) name() string { return fmt.Sprintf("row %d, column %d", s.row, s.col) }

// joint is where two sheets meet, in the middle of their overlap.
type joint struct {
	name   string
	a, b   sheet
	on     [2]curve.Vec // from end to end
	marks  [2]curve.Vec
	across bool // the sheets lie one above the other
}

// tiling is a drawing cut into sheets.
type tiling struct {
	rows, cols int
	sheets     []sheet
	joints     []joint
	whole      box
}

// cutUp lays sheets of w by h over the drawing, with the overlap between
// them. A drawing that fits stands in the middle of its sheet, a larger one
// from the lower left. A sheet with nothing on it is left out.
func cutUp(d *drawing, w, h float64) tiling {
	const words = 6 // room for the words outside the lines
	need := d.bounds().grow(words)
	count := func(size, tile float64) int {
		return max(1, int(math.Ceil((size-overlap)/(tile-overlap)-1e-9)))
	}
	t := tiling{rows: count(need.height(), h), cols: count(need.width(), w)}
	size := curve.Vec{X: float64(t.cols)*(w-overlap) + overlap, Y: float64(t.rows)*(h-overlap) + overlap}
	t.whole.lo = need.mid().Sub(size.Mul(0.5))
	if t.cols > 1 {
		t.whole.lo.X = need.lo.X // else the fold would lie in a joint
	}
	if t.rows > 1 {
		t.whole.lo.Y = need.hi.Y - size.Y // the pouch whole, the tab over the joint
	}
	t.whole.hi = t.whole.lo.Add(size)
	for r := range t.rows {
		for c := range t.cols {
			lo := t.whole.lo.Add(curve.Vec{X: float64(c) * (w - overlap), Y: float64(r) * (h - overlap)})
			s := sheet{r + 1, c + 1, len(t.sheets) + 1, box{lo, lo.Add(curve.Vec{X: w, Y: h})}}
			if d.needs(s.area.grow(-overlap / 2)) {
				t.sheets = append(t.sheets, s)
			}
		}
	}
	t.join()
	return t
}

// needs tells whether anything of the drawing, or the leather inside its cut
// line, lies in b.
func (d *drawing) needs(b box) bool {
	for _, p := range d.paths {
		if len(p.clip(b)) > 0 || p.closed && inside(b.mid(), p.pts) {
			return true
		}
	}
	return false
}

// join finds the neighbours and sets two marks on each joint.
func (t *tiling) join() {
	for _, a := range t.sheets {
		for _, b := range t.sheets {
			across := b.row == a.row+1 && b.col == a.col
			if !across && !(b.col == a.col+1 && b.row == a.row) {
				continue
			}
			j := joint{name: letters(len(t.joints)), a: a, b: b, across: across}
			at := func(share float64) curve.Vec {
				if across {
					return curve.Vec{X: a.area.lo.X + share*a.area.width(), Y: a.area.hi.Y - overlap/2}
				}
				return curve.Vec{X: a.area.hi.X - overlap/2, Y: a.area.lo.Y + share*a.area.height()}
			}
			j.on = [2]curve.Vec{at(0), at(1)}
			j.marks = [2]curve.Vec{at(0.2), at(0.8)}
			t.joints = append(t.joints, j)
		}
	}
}

// letters counts A, B … Z, AA, AB …
func letters(i int) string {
	s := ""
	for i++; i > 0; i = (i - 1) / 26 {
		s = string(rune('A'+(i-1)%26)) + s
	}
	return s
}

// of tells whether the joint is one of the sheet's.
func (j joint) of(s sheet) bool { return j.a.number == s.number || j.b.number == s.number }

// What a register mark measures, mm: it fits into the overlap.
const (
	markRadius = 2.0
	markArm    = 3.5
)

// draw puts the joint on a sheet: the line to trim to, and the marks, named on
// the side where there is room.
func (j joint) draw(d *drawing, sheet box) {
	d.path(path{layer: registerLayer, stroke: dotted, pts: curve.Line{j.on[0], j.on[1]}})
	for i, m := range j.marks {
		d.circle(circle{registerLayer, thin, m, markRadius})
		d.line(registerLayer, thin, m.Sub(curve.Vec{X: markArm}), m.Add(curve.Vec{X: markArm}))
		d.line(registerLayer, thin, m.Sub(curve.Vec{Y: markArm}), m.Add(curve.Vec{Y: markArm}))
		t := text{layer: registerLayer, at: m.Add(curve.Vec{X: markRadius + 0.4, Y: -0.8}), s: fmt.Sprintf("%s%d", j.name, i+1), size: wordSize, bold: true}
		if !sheet.holds(t.box()) {
			t.anchor, t.at.X = end, m.X-markRadius-0.4
		}
		d.text(t)
	}
}

// onSheet is what one sheet shows, in the drawing's own coordinates.
func (t tiling) onSheet(d *drawing, s sheet) drawing {
	out := d.clip(s.area)
	var marks drawing
	for _, j := range t.joints {
		if j.of(s) {
			j.draw(&marks, s.area)
		}
	}
	m := marks.clip(s.area)
	out.add(m, curve.Vec{})
	return out
}
