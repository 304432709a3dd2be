package print

import (
	"strconv"

	"chape/calc"
	"chape/calc/curve"
	"chape/project/print/sheet"
	"chape/project/report"
)

// welt draws the welt: one drawing, however many plies are cut by it.
func (j *job) welt(f facing) sheet.Drawing {
	var d sheet.Drawing
	d.Path(sheet.Path{Layer: sheet.WeltLayer, Stroke: sheet.Wide, Pts: f.line(sheet.Thinned(j.plan.Welt.Outline, true)), Closed: true, Name: "cut", Side: -f.back})
	d.Path(sheet.Path{Layer: sheet.StitchLayer, Stroke: sheet.Dashed, Pts: f.line(sheet.Thinned(j.plan.Plane.Stitch, false))})
	j.ticked(&d, f, j.plan.Plane.Outer, 1)
	return d
}

// settingOut draws the closed sheath as seen on its front: welt, stitch line,
// and the holes with their distances, to check the dividers on.
func (j *job) settingOut() sheet.Drawing {
	var d sheet.Drawing
	// The front half as it lies grain side up: the fold on the back's side.
	front := facing{-j.facing(calc.GrainUp).back}
	pl := j.plan.Plane
	d.Path(sheet.Path{Layer: sheet.WeltLayer, Stroke: sheet.Wide, Pts: front.line(sheet.Thinned(j.plan.Welt.Outline, true)), Closed: true, Name: "welt", Side: -front.back})
	d.Path(sheet.Path{Layer: sheet.StitchLayer, Stroke: sheet.Dashed, Pts: front.line(sheet.Thinned(pl.Stitch, false)), Name: "stitch line", Side: front.back})
	d.Path(sheet.Path{Layer: sheet.MarkLayer, Stroke: sheet.Hair, Pts: front.line(sheet.Thinned(pl.Knife, false)), Name: "knife", Side: front.back})
	mouth := j.plan.Input.Sheath.Mouth.MM()
	d.Path(sheet.Path{Layer: sheet.FoldLayer, Stroke: sheet.DashDot, Pts: front.line(curve.Line{pl.Stitch[0], {X: mouth}}), Name: "fold", Side: front.back})
	d.Path(sheet.Path{Layer: sheet.FoldLayer, Stroke: sheet.Thin, Pts: front.line(curve.Line{{X: mouth}, pl.Stitch[len(pl.Stitch)-1]}), Name: "mouth", Side: -front.back})
	holes := front.line(j.plan.Stitch.Positions)
	for _, h := range holes {
		cross(&d, sheet.HoleLayer, h)
	}
	sh := j.plan.Input.Sheath
	away := (sh.Margin + sh.Sanding).MM() + 2
	for _, i := range report.Tenths(len(holes)) {
		d.Circle(sheet.Circle{Layer: sheet.HoleLayer, Stroke: sheet.Hair, At: holes[i], Radius: ringRadius})
		n := outwards(holes, i)
		d.Line(sheet.HoleLayer, sheet.Hair, holes[i].Add(n.Mul(ringRadius)), holes[i].Add(n.Mul(away-0.6)))
		d.Text(besideHole(holes, i, away, strconv.Itoa(i+1)+": "+report.AlongAt(j.plan, i, j.p.Units)+" "+j.p.Units.String()))
	}
	return d
}
