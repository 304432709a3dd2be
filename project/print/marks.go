package print

import (
	"math"
	"strconv"

	"chape/calc"
	"chape/calc/curve"
	"chape/calc/length"
	"chape/project/print/sheet"
)

// tickLong is how far a tick runs in from the cut line, mm.
const tickLong = 2.5

// tick is a place along the fold that is marked on body and welt alike.
type tick struct {
	at   float64
	says string // "" for a step
}

// ticks are the places that body and welt are matched by: each side of every step, and
// every 50 mm or 2 inches from the point.
func (j *job) ticks() []tick {
	mouth := j.plan.Input.Sheath.Mouth.MM()
	every, named := 50.0, 1.0
	if j.inches() {
		every, named = 2*length.Inch.MM(), length.Inch.MM()
	}
	var out []tick
	for x := every; x < mouth-tickLong; x += every {
		says := strconv.FormatFloat(math.Round(x/named), 'f', -1, 64)
		if j.inches() {
			says += "″"
		}
		out = append(out, tick{x, says})
	}
	marks, err := j.plan.Input.Landmarks()
	if err != nil {
		return out // a plan has no such knife
	}
	for _, m := range marks {
		if (m.Kind == calc.FrontMark || m.Kind == calc.StepMark) && m.At < mouth-0.5 {
			out = append(out, tick{at: m.At})
		}
	}
	return out
}

// ticked draws the ticks in from an edge, a curve over x on one side of the fold.
func (j *job) ticked(d *sheet.Drawing, f facing, edge curve.Line, side float64) {
	for _, t := range j.ticks() {
		y := edge.Height(t.at)
		a, b := f.at(curve.Vec{X: t.at, Y: side * y}), f.at(curve.Vec{X: t.at, Y: side * (y - tickLong)})
		d.Line(sheet.MarkLayer, sheet.Thin, a, b)
		if t.says == "" {
			continue
		}
		w := sheet.Text{Layer: sheet.WordLayer, Says: t.says, Size: sheet.WordSize, At: a.Add(curve.Vec{X: 1, Y: 0.33 * sheet.WordSize})}
		if b.X > a.X {
			w.Anchor, w.At.X = sheet.End, a.X-1
		}
		d.Text(w)
	}
}

// knife draws the outline of the knife on the back half, as far as it is in the sheath.
// Where its back touches the fold, the fold is drawn alone.
func (j *job) knife(d *sheet.Drawing, f facing) {
	const clear = 0.8 // mm
	spine, edge := j.plan.Outline(1)
	mouth := j.plan.Input.Sheath.Mouth.MM()
	for i, l := range []curve.Line{spine, edge} {
		var piece curve.Line
		draw := func() {
			if len(piece) > 1 {
				p := sheet.Path{Layer: sheet.MarkLayer, Stroke: sheet.Hair, Pts: f.line(sheet.Thinned(piece, false))}
				if i == 1 {
					p.Name, p.Side = "knife", f.back
				}
				d.Path(p)
			}
			piece = nil
		}
		for _, v := range l {
			if v.X <= mouth && v.Y >= clear {
				piece = append(piece, v)
			} else {
				draw()
			}
		}
		draw()
	}
}

// head draws the head of an arrow that comes from a place.
func head(d *sheet.Drawing, from, tip curve.Vec) {
	const long, half = 2.4, 0.4
	back := from.Sub(tip)
	back = back.Mul(long / math.Max(back.Norm(), 1e-9))
	sin, cos := math.Sincos(half)
	turned := func(s float64) curve.Vec {
		return tip.Add(curve.Vec{X: back.X*cos - s*back.Y*sin, Y: s*back.X*sin + back.Y*cos})
	}
	d.Line(sheet.MarkLayer, sheet.Thin, turned(1), tip, turned(-1))
}

// bow draws an arrow that bends round from one place to another, the bend on the side of out.
func bow(d *sheet.Drawing, from, to, out curve.Vec) {
	const n = 24
	mid, half := from.Add(to).Mul(0.5), from.Sub(to).Mul(0.5)
	var l curve.Line
	for i := range n + 1 {
		sin, cos := math.Sincos(math.Pi * float64(i) / n)
		l = append(l, mid.Add(half.Mul(cos)).Add(out.Mul(sin)))
	}
	d.Path(sheet.Path{Layer: sheet.MarkLayer, Stroke: sheet.Thin, Pts: l})
	head(d, l[n-3], l[n])
}

// away is the way the halves turn when they are folded with the grain outside, as seen.
func (j *job) away() string {
	if j.o.Up == calc.FleshUp {
		return "towards you"
	}
	return "away from you"
}

// arrows draws which way the fold turns, and along what the leather is to stretch least.
func (j *job) arrows(d *sheet.Drawing, f facing) {
	mouth := j.plan.Input.Sheath.Mouth.MM()
	const wide, high = 7.0, 5.0
	x := 0.3 * mouth
	side := -1.0
	if j.o.Half {
		side = 1
	}
	if !j.o.Half {
		bow(d, f.at(curve.Vec{X: x, Y: -wide}), f.at(curve.Vec{X: x, Y: wide}), curve.Vec{Y: -high})
	}
	long := math.Min(40, 0.3*mouth)
	a, b := f.at(curve.Vec{X: 0.42 * mouth, Y: side * 4.5}), f.at(curve.Vec{X: 0.42*mouth + long, Y: side * 4.5})
	d.Path(sheet.Path{Layer: sheet.MarkLayer, Stroke: sheet.Thin, Pts: curve.Line{a, b}, Name: "least stretch", Side: -side * f.back})
	head(d, a, b)
	head(d, b, a)
}

// tabTurn draws which way the tab turns over the belt: onto the grain of the back.
func (j *job) tabTurn(d *sheet.Drawing, f facing) {
	l := j.plan.Loop
	near, far := l.Offset, l.Offset+j.plan.Input.Belt.Tab.MM()
	if far-near < 16 || len(l.Bends) < 2 {
		return
	}
	mid, reach := l.Start+(l.Bends[0]+l.Bends[1])/2, (l.Bends[1]-l.Bends[0])/2+4
	y := far - 7
	bow(d, f.at(curve.Vec{X: mid + reach, Y: y}), f.at(curve.Vec{X: mid - reach, Y: y}), f.at(curve.Vec{Y: 4.5}))
}
