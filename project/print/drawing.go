package print

import (
	"math"

	"chape/calc/curve"
)

// layer is what a mark is for. The PDF has them as layers, the SVG as groups.
type layer string

// The layers. The first seven are the pattern's own.
const (
	cutLayer      layer = "cut"
	stitchLayer   layer = "stitch"
	holeLayer     layer = "holes"
	foldLayer     layer = "fold"
	glueLayer     layer = "glue"
	reliefLayer   layer = "relief"
	weltLayer     layer = "welt"
	trialLayer    layer = "trial"
	scaleLayer    layer = "scale"    // pricks and rule
	registerLayer layer = "register" // how sheets join
	wordLayer     layer = "words"
	mapLayer      layer = "overview"
)

var layers = []layer{trialLayer, glueLayer, foldLayer, stitchLayer, weltLayer, cutLayer, reliefLayer,
	holeLayer, registerLayer, scaleLayer, wordLayer, mapLayer}

// stroke is a type of line, after ISO 128: what it is for shows in weight
// and dashes, never in colour.
type stroke struct {
	width  float64
	dashes []float64
}

// Line types. Widths are 0.5 and 0.25 mm, dashes 12, 24, 3 and half a width
// long, as in ISO 128-20 (from memory).
var (
	wide    = stroke{width: 0.5}
	thin    = stroke{width: 0.25}
	hair    = stroke{width: 0.15}
	dashed  = stroke{0.25, []float64{3, 0.75}}
	dashDot = stroke{0.25, []float64{6, 0.75, 0.2, 0.75}}
	dotted  = stroke{0.25, []float64{0.25, 0.75}}
)

// ink fills a closed path or a spot, in place of a stroke.
type ink uint8

const (
	noInk ink = iota
	black
	white // lies on black
)

// path is a polyline with its line type.
type path struct {
	layer  layer
	stroke stroke
	ink    ink
	pts    curve.Line
	closed bool
	from   float64 // length of line before the first point, so that dashes go on over a joint
	name   string  // said in words along the line, once on each sheet
	side   float64 // where the words stand: +1 left of the way the points go, -1 right
}

// circle is a round hole or mark.
type circle struct {
	layer  layer
	stroke stroke
	at     curve.Vec
	radius float64
}

// spot is a round filled patch. It lies on the paths of its layer, over the spots before it.
type spot struct {
	layer  layer
	at     curve.Vec
	radius float64
	ink    ink
}

// anchor is the point of a text that stands at its place.
type anchor uint8

const (
	start anchor = iota
	middle
	end
)

// text is one line of words. size is the height of the letters' body, mm;
// angle turns it against the clock as seen on the sheet, radians.
type text struct {
	layer  layer
	at     curve.Vec
	s      string
	size   float64
	bold   bool
	grey   bool
	angle  float64
	anchor anchor
}

// drawing is marks in millimetres: x to the right, y down.
type drawing struct {
	paths   []path
	circles []circle
	spots   []spot
	texts   []text
}

func (d *drawing) path(p path)     { d.paths = append(d.paths, p) }
func (d *drawing) circle(c circle) { d.circles = append(d.circles, c) }

// text adds words, with every letter the font lacks made visible.
func (d *drawing) text(t text) {
	t.s = printable(t.s)
	d.texts = append(d.texts, t)
}

func (d *drawing) line(l layer, s stroke, pts ...curve.Vec) {
	d.path(path{layer: l, stroke: s, pts: pts})
}

// add puts the marks of e on d, moved by v.
func (d *drawing) add(e drawing, v curve.Vec) {
	for _, p := range e.paths {
		moved := make(curve.Line, len(p.pts))
		for i, q := range p.pts {
			moved[i] = q.Add(v)
		}
		p.pts = moved
		d.paths = append(d.paths, p)
	}
	for _, c := range e.circles {
		c.at = c.at.Add(v)
		d.circles = append(d.circles, c)
	}
	for _, s := range e.spots {
		s.at = s.at.Add(v)
		d.spots = append(d.spots, s)
	}
	for _, t := range e.texts {
		t.at = t.at.Add(v)
		d.texts = append(d.texts, t)
	}
}

// box is an upright rectangle.
type box struct{ lo, hi curve.Vec }

func (b box) width() float64  { return b.hi.X - b.lo.X }
func (b box) height() float64 { return b.hi.Y - b.lo.Y }
func (b box) mid() curve.Vec  { return b.lo.Add(b.hi).Mul(0.5) }

// grow makes the box larger on all sides.
func (b box) grow(by float64) box {
	return box{b.lo.Sub(curve.Vec{X: by, Y: by}), b.hi.Add(curve.Vec{X: by, Y: by})}
}

func (b box) has(v curve.Vec) bool {
	return v.X >= b.lo.X && v.X <= b.hi.X && v.Y >= b.lo.Y && v.Y <= b.hi.Y
}

func (b box) holds(c box) bool { return b.has(c.lo) && b.has(c.hi) }

func (b box) meets(c box) bool {
	return b.lo.X <= c.hi.X && c.lo.X <= b.hi.X && b.lo.Y <= c.hi.Y && c.lo.Y <= b.hi.Y
}

func (b box) union(c box) box {
	return box{curve.Vec{X: math.Min(b.lo.X, c.lo.X), Y: math.Min(b.lo.Y, c.lo.Y)},
		curve.Vec{X: math.Max(b.hi.X, c.hi.X), Y: math.Max(b.hi.Y, c.hi.Y)}}
}

// corners as a closed line.
func (b box) corners() curve.Line {
	return curve.Line{b.lo, {X: b.hi.X, Y: b.lo.Y}, b.hi, {X: b.lo.X, Y: b.hi.Y}}
}

// bounds is the box round all lines and circles; words don't count.
func (d *drawing) bounds() box {
	b := box{curve.Vec{X: math.Inf(1), Y: math.Inf(1)}, curve.Vec{X: math.Inf(-1), Y: math.Inf(-1)}}
	for _, p := range d.paths {
		lo, hi := p.pts.Bounds()
		b = b.union(box{lo, hi})
	}
	for _, c := range d.circles {
		b = b.union(c.box())
	}
	return b
}

func (c circle) box() box { return box{c.at, c.at}.grow(c.radius) }

// box is the upright box round the words.
func (t text) box() box {
	l := t.own()
	sin, cos := math.Sincos(t.angle)
	var line curve.Line
	for _, v := range l.corners() {
		line = append(line, t.at.Add(curve.Vec{X: v.X*cos + v.Y*sin, Y: -v.X*sin + v.Y*cos}))
	}
	lo, hi := line.Bounds()
	return box{lo, hi}
}

// own is the box round the words as they run, seen from their place.
func (t text) own() box {
	w, h := textWidth(t.s, t.bold)*t.size, t.size
	x := 0.0
	switch t.anchor {
	case middle:
		x = -w / 2
	case end:
		x = -w
	}
	return box{curve.Vec{X: x, Y: -0.8 * h}, curve.Vec{X: x + w, Y: 0.25 * h}}
}
