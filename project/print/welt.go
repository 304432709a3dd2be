package print

import (
	"fmt"
	"strconv"

	"chape/calc"
	"chape/calc/curve"
	"chape/calc/length"
	"chape/project/report"
)

// welt draws every ply of the welt, side by side.
func (j *job) welt() drawing {
	var d drawing
	f := j.facing(j.o.Up)
	outline := f.line(thinned(j.plan.Welt.Outline, true))
	seamLine := f.line(thinned(j.plan.Plane.Stitch, false))
	lo, hi := outline.Bounds()
	const between = 12 // mm, room for the words along the cut
	each := length.Length(j.plan.Welt.Thickness / float64(max(j.plan.Welt.Plies, 1)))
	for i := range j.plan.Welt.Plies {
		var ply drawing
		ply.path(path{layer: weltLayer, stroke: wide, pts: outline, closed: true, name: "cut", side: -f.back})
		ply.path(path{layer: stitchLayer, stroke: dashed, pts: seamLine})
		x := (lo.X + hi.X) / 2
		for k, s := range []string{fmt.Sprintf("welt, ply %d of %d", i+1, j.plan.Welt.Plies),
			each.Format(j.p.Units, length.Calliper) + " thick", "mouth up, " + j.o.Up.String()} {
			ply.text(text{layer: wordLayer, at: curve.Vec{X: x - 4*f.back, Y: lo.Y + 12 + 3.4*float64(k)}, s: s, size: wordSize, bold: k == 0, anchor: middle})
		}
		d.add(ply, curve.Vec{X: float64(i) * (hi.X - lo.X + between)})
	}
	return d
}

// settingOut draws the closed sheath as seen on its front: welt, stitch line,
// and the holes with their distances, to check the dividers on.
func (j *job) settingOut() drawing {
	var d drawing
	// The front half as it lies grain side up: the fold on the back's side.
	front := facing{-j.facing(calc.GrainUp).back}
	pl := j.plan.Plane
	d.path(path{layer: weltLayer, stroke: wide, pts: front.line(thinned(j.plan.Welt.Outline, true)), closed: true, name: "welt", side: -front.back})
	d.path(path{layer: stitchLayer, stroke: dashed, pts: front.line(thinned(pl.Stitch, false)), name: "stitch line", side: front.back})
	d.path(path{layer: glueLayer, stroke: thin, pts: front.line(thinned(pl.Knife, false)), name: "knife", side: front.back})
	mouth := j.plan.Input.Sheath.Mouth.MM()
	d.path(path{layer: foldLayer, stroke: dashDot, pts: front.line(curve.Line{pl.Stitch[0], {X: mouth}}), name: "fold", side: front.back})
	d.path(path{layer: foldLayer, stroke: thin, pts: front.line(curve.Line{{X: mouth}, pl.Stitch[len(pl.Stitch)-1]}), name: "mouth", side: -front.back})
	holes := front.line(j.plan.Stitch.Positions)
	for _, h := range holes {
		cross(&d, holeLayer, h)
	}
	sh := j.plan.Input.Sheath
	away := (sh.Margin + sh.Sanding).MM() + 2
	for _, i := range report.Tenths(len(holes)) {
		d.circle(circle{holeLayer, hair, holes[i], ringRadius})
		n := outwards(holes, i)
		d.line(holeLayer, hair, holes[i].Add(n.Mul(ringRadius)), holes[i].Add(n.Mul(away-0.6)))
		d.text(besideHole(holes, i, away, strconv.Itoa(i+1)+": "+j.show(j.plan.Stitch.Along[i])))
	}
	return d
}
