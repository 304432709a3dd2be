package print

import (
	"strconv"

	"chape/calc"
	"chape/calc/curve"
	"chape/project/print/letters"
	"chape/project/print/sheet"
	"chape/project/report"
)

// What the marks on the pattern measure, mm.
const (
	crossArm   = 0.8 // of a hole's cross
	ringRadius = 1.1 // round every tenth hole
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
func (j *job) pattern() sheet.Drawing {
	var d sheet.Drawing
	f := j.facing(j.o.Up)
	flat := j.plan.Flat
	if j.o.Half {
		d.Path(sheet.Path{Layer: sheet.CutLayer, Stroke: sheet.Wide, Pts: f.line(sheet.Thinned(sheet.AboveFold(flat.Outline), false)), Name: "cut", Side: -f.back})
	} else {
		d.Path(sheet.Path{Layer: sheet.CutLayer, Stroke: sheet.Wide, Pts: f.line(sheet.Thinned(flat.Outline, true)), Closed: true, Name: "cut", Side: -f.back})
	}
	fold := curve.Line{flat.Cut[0], {X: flat.Mouth[0].X}}
	name := "fold " + j.away() + ", grain outside"
	if j.o.Half {
		name = "fold: flip the half over this line"
	}
	d.Path(sheet.Path{Layer: sheet.FoldLayer, Stroke: sheet.DashDot, Pts: f.line(fold), Name: name, Side: f.back})
	j.half(&d, f, false)
	if !j.o.Half {
		j.half(&d, f, true)
	}
	j.mouth(&d, f)
	j.tab(&d, f)
	if l := j.plan.Loop; j.o.Half && j.plan.Body.TabLength > 0 && l.Offset < 0 {
		j.overFold(&d, f, l)
	}
	j.knife(&d, f)
	j.arrows(&d, f)
	if c := flat.Drain; c != nil {
		at := f.at(c.Centre)
		d.Circle(sheet.Circle{Layer: sheet.ReliefLayer, Stroke: sheet.Wide, At: at, Radius: c.Diameter / 2})
		d.Text(sheet.Text{Layer: sheet.WordLayer, At: at.Add(curve.Vec{Y: -c.Diameter/2 - 1.5}), Says: "drain " + j.exact(c.Diameter), Size: sheet.WordSize, Anchor: sheet.Middle})
	}
	return d
}

// overFold shows what of a wide tab half a pattern can't: the strip on the other side of
// the fold.
func (j *job) overFold(d *sheet.Drawing, f facing, l calc.Loop) {
	end := l.Start + j.plan.Body.TabLength
	d.Path(sheet.Path{Layer: sheet.MarkLayer, Stroke: sheet.Thin, Pts: f.line(curve.Line{{X: l.Start, Y: l.Offset}, {X: end, Y: l.Offset}, {X: end}}),
		Name: "tab, " + j.show(-l.Offset) + " over the fold", Side: -f.back})
}

// mouth names the mouth line on the half that has no tab across it.
func (j *job) mouth(d *sheet.Drawing, f facing) {
	side := -1.0
	if j.o.Half {
		if j.plan.Body.TabLength > 0 {
			return // the line under the tab has words of its own
		}
		side = 1
	}
	y := j.plan.Body.MouthCut / 2
	w := letters.Width("mouth", false) * sheet.WordSize / 2
	lowest, _ := mouthUnder(j.plan.Flat.Mouth, y-w, y+w).Bounds()
	d.Text(sheet.Text{Layer: sheet.WordLayer, At: f.at(curve.Vec{X: lowest.X - 1 - 0.7*sheet.WordSize, Y: side * y}), Says: "mouth", Size: sheet.WordSize, Anchor: sheet.Middle})
}

// half draws the seam of one half.
func (j *job) half(d *sheet.Drawing, f facing, front bool) {
	flat := j.plan.Flat
	stitch, glue, holes, turn := flat.Stitch, flat.Glue, j.plan.Stitch.Flat, f.back
	if front {
		stitch, glue, holes, turn = mirrored(stitch), mirrored(glue), mirrored(holes), -f.back
	}
	d.Path(sheet.Path{Layer: sheet.StitchLayer, Stroke: sheet.Dashed, Pts: f.line(sheet.Thinned(stitch, false)), Name: "stitch line", Side: turn})
	d.Path(sheet.Path{Layer: sheet.GlueLayer, Stroke: sheet.Thin, Pts: f.line(sheet.Thinned(glue, false)), Name: "glue line: welt to here", Side: turn})
	seam(d, f.line(holes))
	if front {
		j.ticked(d, f, flat.Cut, -1)
	} else {
		j.ticked(d, f, flat.Cut, 1)
	}
}

// seam draws holes as crosses; the first, every tenth and the last have a
// ring and a number on the outer side.
func seam(d *sheet.Drawing, holes curve.Line) {
	for _, h := range holes {
		cross(d, sheet.HoleLayer, h)
	}
	for _, i := range report.Tenths(len(holes)) {
		d.Circle(sheet.Circle{Layer: sheet.HoleLayer, Stroke: sheet.Hair, At: holes[i], Radius: ringRadius})
		d.Text(besideHole(holes, i, ringRadius+0.6, strconv.Itoa(i+1)))
	}
}

func cross(d *sheet.Drawing, l sheet.Layer, at curve.Vec) {
	d.Line(l, sheet.Hair, curve.Vec{X: at.X - crossArm, Y: at.Y}, curve.Vec{X: at.X + crossArm, Y: at.Y})
	d.Line(l, sheet.Hair, curve.Vec{X: at.X, Y: at.Y - crossArm}, curve.Vec{X: at.X, Y: at.Y + crossArm})
}

// besideHole puts words on the outer side of the row of holes, square to it
// and so far away. The row runs from the mouth, above, down and round to the
// fold.
func besideHole(holes curve.Line, i int, away float64, s string) sheet.Text {
	n := outwards(holes, i)
	t := sheet.Text{Layer: sheet.WordLayer, Says: s, Size: sheet.WordSize, Anchor: sheet.Middle}
	switch {
	case n.X > 0.5:
		t.Anchor = sheet.Start
	case n.X < -0.5:
		t.Anchor = sheet.End
	default:
		away += sheet.WordSize / 2
	}
	t.At = holes[i].Add(n.Mul(away)).Add(curve.Vec{Y: 0.33 * sheet.WordSize})
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
func (j *job) tab(d *sheet.Drawing, f facing) {
	l := j.plan.Loop
	if j.plan.Body.TabLength == 0 {
		return
	}
	near, far := l.Offset, l.Offset+j.plan.Input.Belt.Tab.MM()
	across := func(x float64) curve.Line {
		return f.line(curve.Line{{X: x, Y: near}, {X: x, Y: far}})
	}
	say := func(x float64, s string) {
		d.Text(sheet.Text{Layer: sheet.WordLayer, At: f.at(curve.Vec{X: x, Y: (near + far) / 2}), Says: s, Size: sheet.WordSize, Anchor: sheet.Middle})
	}
	mouth := mouthUnder(j.plan.Flat.Mouth, near, far)
	d.Path(sheet.Path{Layer: sheet.FoldLayer, Stroke: sheet.Thin, Pts: f.line(mouth)})
	_, top := mouth.Bounds()
	words := "mouth: don't cut here"
	if j.o.Half {
		words = "front ends here"
	}
	say(max(top.X, l.Start)+1.2, words)
	for i, b := range l.Bends {
		d.Path(sheet.Path{Layer: sheet.FoldLayer, Stroke: sheet.DashDot, Pts: across(l.Start + b)})
		if i == 0 {
			say(l.Start+b-0.8-0.7*sheet.WordSize, "turn begins")
		} else {
			say(l.Start+b+1.2, "turn ends")
		}
	}
	if len(l.Bends) == 2 {
		mid := l.Start + (l.Bends[0]+l.Bends[1])/2
		onto := "towards you,"
		if j.o.Up == calc.FleshUp {
			onto = "away from you,"
		}
		say(mid+0.6, onto)
		say(mid-0.3-sheet.WordSize, "onto the grain")
	}
	j.tabTurn(d, f)
	for i := range l.Rows {
		d.Path(sheet.Path{Layer: sheet.StitchLayer, Stroke: sheet.Dashed, Pts: across(l.RowX[i])})
		d.Path(sheet.Path{Layer: sheet.StitchLayer, Stroke: sheet.Dashed, Pts: across(l.LapX[i])})
		say(l.RowX[i]-4.2, "loop row "+strconv.Itoa(i+1))
		say(l.LapX[i]-4.2, "sew to row "+strconv.Itoa(i+1))
	}
	for _, h := range append(f.line(l.Body), f.line(l.Lap)...) {
		cross(d, sheet.HoleLayer, h)
	}
	j.relief(d, f)
}

// relief draws the holes at the tab's inside corners, with their words outside of it.
func (j *job) relief(d *sheet.Drawing, f facing) {
	for i, c := range j.plan.Loop.Relief {
		d.Circle(sheet.Circle{Layer: sheet.ReliefLayer, Stroke: sheet.Wide, At: f.at(c.Centre), Radius: c.Diameter / 2})
		t := sheet.Text{Layer: sheet.WordLayer, Says: "relief hole " + j.exact(c.Diameter), Size: sheet.WordSize}
		outwards := 1.0
		at := curve.Vec{X: c.Centre.X + c.Diameter, Y: c.Centre.Y + c.Diameter}
		if i == 0 {
			outwards, at = -1, curve.Vec{X: j.plan.Flat.Mouth[0].X + c.Diameter, Y: c.Centre.Y - c.Diameter}
		}
		if outwards*f.back < 0 {
			t.Anchor = sheet.End
		}
		t.At = f.at(at)
		d.Text(t)
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
	return sheet.Thinned(out, false)
}
