package print

import (
	"strconv"

	"chape/calc"
	"chape/calc/curve"
	"chape/project/report"
)

// What the marks on the pattern measure, mm.
const (
	crossArm   = 0.8 // of a hole's cross
	ringRadius = 1.1 // round every tenth hole
	wordSize   = 2.4 // of words along lines and numbers of holes
)

// facing turns a place in the flat into one on the sheet: the mouth up, the
// back half right of the fold or left of it.
type facing struct{ back float64 } // +1: the back half lies right

func (j *job) facing(up calc.Up) facing {
	if calc.BackIsRight(j.p.Customer.Hand, j.p.Customer.Edge, up) {
		return facing{1}
	}
	return facing{-1}
}

// at maps (x, y) of the flat, y > 0 in the back half, to the sheet.
func (f facing) at(v curve.Vec) curve.Vec { return curve.Vec{X: f.back*v.Y + 0, Y: -v.X} }

func (f facing) line(l curve.Line) curve.Line {
	out := make(curve.Line, len(l))
	for i, v := range l {
		out[i] = f.at(v)
	}
	return out
}

// mirrored is the other half of a curve of one half.
func mirrored(l curve.Line) curve.Line {
	out := make(curve.Line, len(l))
	for i, v := range l {
		out[i] = curve.Vec{X: v.X, Y: -v.Y}
	}
	return out
}

// pattern draws the flat pattern on the sheet, with the point below.
func (j *job) pattern() drawing {
	var d drawing
	f := j.facing(j.o.Up)
	flat := j.plan.Flat
	if j.o.Half {
		d.path(path{layer: cutLayer, stroke: wide, pts: f.line(thinned(aboveFold(flat.Outline), false)), name: "cut", side: -f.back})
	} else {
		d.path(path{layer: cutLayer, stroke: wide, pts: f.line(thinned(flat.Outline, true)), closed: true, name: "cut", side: -f.back})
	}
	fold := curve.Line{flat.Cut[0], {X: flat.Mouth[0].X}}
	name := "fold"
	if j.o.Half {
		name = "fold: flip the half over this line"
	}
	d.path(path{layer: foldLayer, stroke: dashDot, pts: f.line(fold), name: name, side: f.back})
	j.half(&d, f, false)
	if !j.o.Half {
		j.half(&d, f, true)
	}
	j.mouth(&d, f)
	j.tab(&d, f)
	if c := flat.Drain; c != nil {
		at := f.at(c.Centre)
		d.circle(circle{reliefLayer, wide, at, c.Diameter / 2})
		d.text(text{layer: wordLayer, at: at.Add(curve.Vec{Y: -c.Diameter/2 - 1.5}), s: "drain " + j.exact(c.Diameter), size: wordSize, anchor: middle})
	}
	return d
}

// mouth names the mouth line on the half that has no tab across it.
func (j *job) mouth(d *drawing, f facing) {
	side := -1.0
	if j.o.Half {
		if j.plan.Body.TabLength > 0 {
			return // the line under the tab has words of its own
		}
		side = 1
	}
	y := j.plan.Body.MouthCut / 2
	w := textWidth("mouth", false) * wordSize / 2
	lowest, _ := mouthUnder(j.plan.Flat.Mouth, y-w, y+w).Bounds()
	d.text(text{layer: wordLayer, at: f.at(curve.Vec{X: lowest.X - 1 - 0.7*wordSize, Y: side * y}), s: "mouth", size: wordSize, anchor: middle})
}

// half draws the seam of one half.
func (j *job) half(d *drawing, f facing, front bool) {
	flat := j.plan.Flat
	stitch, glue, holes, turn := flat.Stitch, flat.Glue, j.plan.Stitch.Flat, f.back
	if front {
		stitch, glue, holes, turn = mirrored(stitch), mirrored(glue), mirrored(holes), -f.back
	}
	d.path(path{layer: stitchLayer, stroke: dashed, pts: f.line(thinned(stitch, false)), name: "stitch line", side: turn})
	d.path(path{layer: glueLayer, stroke: thin, pts: f.line(thinned(glue, false)), name: "glue line: welt to here", side: turn})
	seam(d, f.line(holes))
}

// seam draws holes as crosses; the first, every tenth and the last have a
// ring and a number on the outer side.
func seam(d *drawing, holes curve.Line) {
	for _, h := range holes {
		cross(d, holeLayer, h)
	}
	for _, i := range report.Tenths(len(holes)) {
		d.circle(circle{holeLayer, hair, holes[i], ringRadius})
		d.text(besideHole(holes, i, ringRadius+0.6, strconv.Itoa(i+1)))
	}
}

func cross(d *drawing, l layer, at curve.Vec) {
	d.line(l, hair, curve.Vec{X: at.X - crossArm, Y: at.Y}, curve.Vec{X: at.X + crossArm, Y: at.Y})
	d.line(l, hair, curve.Vec{X: at.X, Y: at.Y - crossArm}, curve.Vec{X: at.X, Y: at.Y + crossArm})
}

// besideHole puts words on the outer side of the row of holes, square to it
// and so far away. The row runs from the mouth, above, down and round to the
// fold.
func besideHole(holes curve.Line, i int, away float64, s string) text {
	n := outwards(holes, i)
	t := text{layer: wordLayer, s: s, size: wordSize, anchor: middle}
	switch {
	case n.X > 0.5:
		t.anchor = start
	case n.X < -0.5:
		t.anchor = end
	default:
		away += wordSize / 2
	}
	t.at = holes[i].Add(n.Mul(away)).Add(curve.Vec{Y: 0.33 * wordSize})
	return t
}

// outwards is the direction square to the row of holes, away from the knife.
func outwards(holes curve.Line, i int) curve.Vec {
	a, b := holes[max(i-1, 0)], holes[min(i+1, len(holes)-1)]
	n := curve.Vec{X: b.Y - a.Y, Y: a.X - b.X}
	if n.Norm() == 0 {
		return curve.Vec{Y: 1} // a single hole
	}
	if holes[0].X < 0 {
		n = n.Mul(-1)
	}
	return n.Mul(1 / n.Norm())
}

// tab draws the belt loop's lines on the back half.
func (j *job) tab(d *drawing, f facing) {
	l := j.plan.Loop
	if j.plan.Body.TabLength == 0 {
		return
	}
	near, far := l.Offset, l.Offset+j.plan.Input.Belt.Tab.MM()
	across := func(x float64) curve.Line {
		return f.line(curve.Line{{X: x, Y: near}, {X: x, Y: far}})
	}
	say := func(x float64, s string) {
		d.text(text{layer: wordLayer, at: f.at(curve.Vec{X: x, Y: (near + far) / 2}), s: s, size: wordSize, anchor: middle})
	}
	mouth := mouthUnder(j.plan.Flat.Mouth, near, far)
	d.path(path{layer: foldLayer, stroke: thin, pts: f.line(mouth)})
	_, top := mouth.Bounds()
	words := "mouth: don't cut here"
	if j.o.Half {
		words = "front ends here"
	}
	say(max(top.X, l.Start)+1.2, words)
	for i, b := range l.Bends {
		d.path(path{layer: foldLayer, stroke: dashDot, pts: across(l.Start + b)})
		if i == 0 {
			say(l.Start+b-0.8-0.7*wordSize, "fold: turn begins")
		} else {
			say(l.Start+b+1.2, "fold: turn ends")
		}
	}
	for i := range l.Rows {
		d.path(path{layer: stitchLayer, stroke: dashed, pts: across(l.RowX[i])})
		d.path(path{layer: stitchLayer, stroke: dashed, pts: across(l.LapX[i])})
		say(l.RowX[i]-4.2, "loop row "+strconv.Itoa(i+1))
		say(l.LapX[i]-4.2, "sew to row "+strconv.Itoa(i+1))
	}
	for _, h := range append(f.line(l.Body), f.line(l.Lap)...) {
		cross(d, holeLayer, h)
	}
	for i, c := range l.Relief {
		d.circle(circle{reliefLayer, wide, f.at(c.Centre), c.Diameter / 2})
		t := text{layer: wordLayer, s: "relief hole " + j.exact(c.Diameter), size: wordSize}
		outwards := 1.0
		at := curve.Vec{X: c.Centre.X + c.Diameter, Y: c.Centre.Y + c.Diameter}
		if i == 0 {
			outwards, at = -1, curve.Vec{X: j.plan.Flat.Mouth[0].X + c.Diameter, Y: c.Centre.Y - c.Diameter}
		}
		if outwards*f.back < 0 {
			t.anchor = end
		}
		t.at = f.at(at)
		d.text(t)
	}
}

// mouthUnder is the part of the mouth line that runs under the tab.
func mouthUnder(mouth curve.Line, near, far float64) curve.Line {
	var out curve.Line
	for i := 1; i < len(mouth); i++ {
		a, b := mouth[i-1], mouth[i]
		if b.Y <= near || a.Y >= far || b.Y <= a.Y {
			continue
		}
		at := func(y float64) curve.Vec {
			y = min(max(y, near), far)
			return curve.Vec{X: a.X + (b.X-a.X)*(y-a.Y)/(b.Y-a.Y), Y: y}
		}
		if out == nil {
			out = curve.Line{at(a.Y)}
		}
		out = append(out, at(b.Y))
	}
	return thinned(out, false)
}
