package print

import (
	"chape/calc"
	"chape/calc/curve"
	"chape/project"
	"chape/project/print/parts"
	"chape/project/print/sheet"
	"chape/project/print/svg"
	"slices"
)

// SVG draws the pattern, with welt and strap beside it, for a cutter: one file at
// true size in millimetres, with groups cut, welt, strap, relief, holes, parts (those added), and, unless only
// what is cut is wanted, stitch, fold, glue, marks and words. What is cut is closed paths
// in one stroke each, the relief at the tab as arcs of the cut line; no segment strays
// more than 0.05 mm from its curve. Holes are as wide as the chosen drill.
// Paper and printer correction mean nothing here. Errors are as for PDF.
func SVG(p project.Project, plan *calc.Plan, o Options) ([]byte, error) {
	o.Paper, o.Correction = sheet.Paper{}, sheet.Correction{}
	j, err := newJob(p, plan, o)
	if err != nil {
		return nil, err
	}
	j.o.begin("svg")
	d := j.forCutter()
	return svg.Write(&d, j.heading(1, 100), j.sideWords()+" "+j.looseWords(), o.Cutter), nil
}

// forCutter is the pattern and, right of it, the welt.
func (j *job) forCutter() sheet.Drawing {
	d := j.pattern()
	for i := range d.Paths {
		if d.Paths[i].Layer == sheet.CutLayer {
			d.Paths[i].Closed = true // half a pattern as well, along the fold
		}
	}
	whole := d.Bounds()
	d.Settle(whole.Grow(6))
	d.Label(whole.Grow(6))
	d.Put(j.halves(), whole)
	d.Circles = slices.DeleteFunc(d.Circles, func(c sheet.Circle) bool { // those at the tab are arcs of the cut line
		return c.Layer == sheet.ReliefLayer && !j.drain(c)
	})
	drill := j.plan.Stitch.Choice().Diameter
	d.Paths, d.Circles = withHoles(d, drill)
	strips, zones := j.strips()
	at := strips.Bounds()
	strips.Settle(at.Grow(40))
	strips.Label(at.Grow(6))
	strips.Put(zones, at)
	d.Add(strips, curve.Vec{X: whole.Hi.X - at.Lo.X + 25, Y: whole.Hi.Y - at.Hi.Y})
	parts.Beside(&d, j.p, j.title(), j.trial())
	if j.trial() {
		d.Add(notForLeather(d.Bounds()), curve.Vec{})
	}
	return d
}

// drain tells whether a circle is the drain, which no other line goes round.
func (j *job) drain(c sheet.Circle) bool {
	drain := j.plan.Flat.Drain
	return drain != nil && c.At == j.facing(j.o.Up).at(drain.Centre)
}

// withHoles has a circle for each cross, and no rings.
func withHoles(d sheet.Drawing, drill float64) (paths []sheet.Path, circles []sheet.Circle) {
	for _, p := range d.Paths {
		if p.Layer != sheet.HoleLayer {
			paths = append(paths, p)
		} else if p.Pts[0].Y == p.Pts[1].Y { // of the two strokes of a cross, the level one
			circles = append(circles, sheet.Circle{Layer: sheet.HoleLayer, Stroke: sheet.Hair, At: p.Pts[0].Add(p.Pts[1]).Mul(0.5), Radius: drill / 2})
		}
	}
	for _, c := range d.Circles {
		if c.Layer != sheet.HoleLayer {
			circles = append(circles, c)
		}
	}
	return paths, circles
}
