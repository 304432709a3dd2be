package print

import (
	"fmt"
	"math"

	"chape/calc/curve"
	"chape/calc/length"
	"chape/project/print/letters"
	"chape/project/print/sheet"
)

// pieceWords are what stands inside the cut line of every piece: its name, whose it is,
// what leather it is cut from and how often, which side is up, for which hand.
func (j *job) pieceWords(name string, thick float64, sold string, count int) []string {
	const wide = 36.0 // mm, of a line of the title
	out := []string{name}
	title := letters.Wrap(j.title(), sheet.WordSize, wide, false)
	if len(title) > 2 {
		title = []string{title[0], letters.Fit(title[1]+" "+title[2], sheet.WordSize, wide, false)}
	}
	out = append(out, title...)
	leather := "leather " + j.exact(thick)
	switch {
	case j.trial():
		leather = "TRIAL: not for leather"
	case sold != "":
		leather += ", " + sold
	}
	return append(out, fmt.Sprintf("pattern %d, cut %d", j.p.Revision, count), leather, j.o.Up.String()+", mouth up", "for the "+j.p.Customer.Hand.String()+" hand")
}

// weltGuides are the lines along which the welt's name may run: inside the stitch line,
// or outside it.
func (j *job) weltGuides(f facing) []curve.Line {
	pl := j.plan.Plane
	between := func(a, b curve.Line) curve.Line {
		var out curve.Line
		from, to := math.Max(a[0].X, b[0].X)+1, j.plan.Input.Sheath.Mouth.MM()-1
		for x := from; x < to; x++ {
			out = append(out, curve.Vec{X: x, Y: (a.Height(x) + b.Height(x)) / 2})
		}
		return f.line(out)
	}
	return []curve.Line{between(pl.Inner, pl.Stitch), between(pl.Stitch, pl.Outer)}
}

// strips draws what is cut beside the body, with the words for each: the welt, once
// however many plies it has, and the strap.
func (j *job) strips() (d sheet.Drawing, zones []sheet.Zone) {
	f := j.facing(j.o.Up)
	w := j.plan.Welt
	d = j.welt(f)
	plies := max(w.Plies, 1)
	name := "welt"
	zones = append(zones, sheet.Zone{Area: d.Bounds(), Guides: j.weltGuides(f),
		Words: j.pieceWords(name, w.Thickness/float64(plies), j.p.Sold.Welt, plies)})
	if j.plan.Strap == nil {
		return d, zones
	}
	const between = 16 // mm, room for the words along the cut
	welt, strap := d.Bounds(), j.strap()
	b := strap.Bounds()
	move := curve.Vec{X: welt.Hi.X + between - b.Lo.X, Y: welt.Hi.Y - b.Hi.Y}
	d.Add(strap, move)
	area := sheet.Box{Lo: b.Lo.Add(move), Hi: b.Hi.Add(move)}
	mid := (area.Lo.X + area.Hi.X) / 2
	quarter := (area.Hi.X - area.Lo.X) / 4
	line := func(x float64) curve.Line { return curve.Line{{X: x, Y: area.Hi.Y}, {X: x, Y: area.Lo.Y}} }
	return d, append(zones, sheet.Zone{Area: area, Guides: []curve.Line{line(mid - quarter), line(mid), line(mid + quarter)},
		Words: j.pieceWords("strap", j.plan.Input.Strap.Thickness.MM(), j.p.Sold.Strap, 1)})
}

// strap draws the retention strap upright, the end over the back below, with the places
// of snap and fixing.
func (j *job) strap() sheet.Drawing {
	var d sheet.Drawing
	s := j.plan.Strap
	up := func(v curve.Vec) curve.Vec { return curve.Vec{X: v.Y, Y: -v.X} }
	outline := make(curve.Line, len(s.Outline))
	for i, v := range s.Outline {
		outline[i] = up(v)
	}
	d.Path(sheet.Path{Layer: sheet.StrapLayer, Stroke: sheet.Wide, Pts: sheet.Thinned(outline, true), Closed: true, Name: "cut", Side: 1})
	for _, m := range []struct {
		at   float64
		says string
	}{{s.Snap, "snap, over the back"}, {s.Fixing, "fixing, on the back"}, {s.Fixing + s.ArmBelly, "snap, under the belly"}} {
		at := up(curve.Vec{X: m.at})
		cross(&d, sheet.WordLayer, at)
		d.Circle(sheet.Circle{Layer: sheet.WordLayer, Stroke: sheet.Hair, At: at, Radius: 2 * ringRadius})
		d.Text(sheet.Text{Layer: sheet.WordLayer, At: curve.Vec{X: s.Width/2 + 1.2, Y: at.Y + 0.33*sheet.WordSize}, Says: m.says + ": " + j.show(m.at), Size: sheet.WordSize})
	}
	return d
}

// stripsName is the title of the sheet of strips.
func (j *job) stripsName() string {
	if j.plan.Strap != nil {
		return "Welt and strap"
	}
	return "Welt"
}

// inches tells whether the project is measured in them.
func (j *job) inches() bool { return j.p.Units == length.Inches }
