// Package sheet is how a sheet is drawn: lines, holes and words in millimetres, cut into
// sheets of paper. What is on which page is said in print; pdf and svg write it.
package sheet

import (
	"math"

	"chape/calc/curve"
	"chape/project/print/letters"
)

// Producer stands in every file, and marks it as one of ours.
const Producer = "chape pattern sheets"

// Layer is what a mark is for. The PDF has them as layers, the SVG as groups.
type Layer string

// The layers. The first ten are the pattern's own.
const (
	CutLayer      Layer = "cut"
	StitchLayer   Layer = "stitch"
	HoleLayer     Layer = "holes"
	FoldLayer     Layer = "fold"
	GlueLayer     Layer = "glue"
	ReliefLayer   Layer = "relief"
	WeltLayer     Layer = "welt"
	StrapLayer    Layer = "strap"
	AddedLayer    Layer = "parts" // those that the maker added
	MarkLayer     Layer = "marks" // ticks, arrows, the knife: neither cut nor sewn
	TrialLayer    Layer = "trial"
	ScaleLayer    Layer = "scale"    // pricks and rule
	RegisterLayer Layer = "register" // how sheets join
	WordLayer     Layer = "words"
	MapLayer      Layer = "overview"
)

var Layers = []Layer{TrialLayer, MarkLayer, GlueLayer, FoldLayer, StitchLayer, WeltLayer, StrapLayer, AddedLayer, CutLayer, ReliefLayer,
	HoleLayer, RegisterLayer, ScaleLayer, WordLayer, MapLayer}

// Stroke is a type of line, after ISO 128: what it is for shows in weight
// and Dashes, never in colour.
type Stroke struct {
	Width  float64
	Dashes []float64 // length of dash, gap, dash, gap …, mm
}

// Line types. Widths are 0.5 and 0.25 mm; a dash is 12 widths long, a long one 24, a gap 3,
// a dot half a width, as in ISO 128-20 (from memory).
var (
	Wide    = Stroke{Width: 0.5}
	Thin    = Stroke{Width: 0.25}
	Hair    = Stroke{Width: 0.15}
	Dashed  = Stroke{0.25, []float64{3, 0.75}}
	DashDot = Stroke{0.25, []float64{6, 0.75, 0.125, 0.75}}
	Dotted  = Stroke{0.25, []float64{0.125, 0.75}}
)

// Ink fills a closed path or a spot, in place of a stroke.
type Ink uint8

const (
	noInk Ink = iota
	Black
	White // lies on black
)

// Path is a polyline with its line type.
type Path struct {
	Layer  Layer
	Stroke Stroke
	Ink    Ink
	Pts    curve.Line
	Closed bool
	From   float64 // length of line before the first point, so that Dashes go on over a joint
	Name   string  // said in words along the line, once on each sheet
	Side   float64 // where the words stand: +1 left of the way the points go, -1 right
}

// Circle is a round hole or mark.
type Circle struct {
	Layer  Layer
	Stroke Stroke
	At     curve.Vec
	Radius float64
}

// Spot is a round filled patch. It lies on the paths of its layer, over the spots before it.
type Spot struct {
	Layer  Layer
	At     curve.Vec
	Radius float64
	Ink    Ink
}

// WordSize is how large words along lines and numbers of holes are, mm.
const WordSize = 2.5

// anchor is the point of a text that stands at its place.
type anchor uint8

const (
	Start anchor = iota
	Middle
	End
)

// Text is one line of words. size is the height of the letters' body, mm;
// angle turns it against the clock as seen on the sheet, radians.
type Text struct {
	Layer  Layer
	At     curve.Vec
	Says   string
	Size   float64
	Bold   bool
	Grey   bool
	Angle  float64
	Anchor anchor
}

// Drawing is marks in millimetres: x to the right, y down.
type Drawing struct {
	Paths   []Path
	Circles []Circle
	Spots   []Spot
	Texts   []Text
}

// Path adds a line.
func (d *Drawing) Path(p Path) { d.Paths = append(d.Paths, p) }

// Circle adds a hole or a mark.
func (d *Drawing) Circle(c Circle) { d.Circles = append(d.Circles, c) }

// Text adds words, with every letter the font lacks made visible.
func (d *Drawing) Text(t Text) {
	t.Says = letters.Printable(t.Says)
	d.Texts = append(d.Texts, t)
}

// Line adds a line through points.
func (d *Drawing) Line(l Layer, s Stroke, pts ...curve.Vec) {
	d.Path(Path{Layer: l, Stroke: s, Pts: pts})
}

// Add puts the marks of e on d, moved by v.
func (d *Drawing) Add(e Drawing, v curve.Vec) {
	for _, p := range e.Paths {
		moved := make(curve.Line, len(p.Pts))
		for i, q := range p.Pts {
			moved[i] = q.Add(v)
		}
		p.Pts = moved
		d.Paths = append(d.Paths, p)
	}
	for _, c := range e.Circles {
		c.At = c.At.Add(v)
		d.Circles = append(d.Circles, c)
	}
	for _, s := range e.Spots {
		s.At = s.At.Add(v)
		d.Spots = append(d.Spots, s)
	}
	for _, t := range e.Texts {
		t.At = t.At.Add(v)
		d.Texts = append(d.Texts, t)
	}
}

// Box is an upright rectangle.
type Box struct{ Lo, Hi curve.Vec }

// Width is its size across.
func (b Box) Width() float64 { return b.Hi.X - b.Lo.X }

// Height is its size down.
func (b Box) Height() float64 { return b.Hi.Y - b.Lo.Y }
func (b Box) mid() curve.Vec  { return b.Lo.Add(b.Hi).Mul(0.5) }

// Grow makes the box larger on all sides.
func (b Box) Grow(by float64) Box {
	return Box{b.Lo.Sub(curve.Vec{X: by, Y: by}), b.Hi.Add(curve.Vec{X: by, Y: by})}
}

func (b Box) has(v curve.Vec) bool {
	return v.X >= b.Lo.X && v.X <= b.Hi.X && v.Y >= b.Lo.Y && v.Y <= b.Hi.Y
}

func (b Box) holds(c Box) bool { return b.has(c.Lo) && b.has(c.Hi) }

func (b Box) meets(c Box) bool {
	return b.Lo.X <= c.Hi.X && c.Lo.X <= b.Hi.X && b.Lo.Y <= c.Hi.Y && c.Lo.Y <= b.Hi.Y
}

// Union is the box round both.
func (b Box) Union(c Box) Box {
	return Box{curve.Vec{X: math.Min(b.Lo.X, c.Lo.X), Y: math.Min(b.Lo.Y, c.Lo.Y)},
		curve.Vec{X: math.Max(b.Hi.X, c.Hi.X), Y: math.Max(b.Hi.Y, c.Hi.Y)}}
}

// Corners as a closed line.
func (b Box) Corners() curve.Line {
	return curve.Line{b.Lo, {X: b.Hi.X, Y: b.Lo.Y}, b.Hi, {X: b.Lo.X, Y: b.Hi.Y}}
}

// Bounds is the box round all lines and circles; words don't count.
func (d *Drawing) Bounds() Box {
	b := Box{curve.Vec{X: math.Inf(1), Y: math.Inf(1)}, curve.Vec{X: math.Inf(-1), Y: math.Inf(-1)}}
	for _, p := range d.Paths {
		lo, hi := p.Pts.Bounds()
		b = b.Union(Box{lo, hi})
	}
	for _, c := range d.Circles {
		b = b.Union(c.box())
	}
	return b
}

func (c Circle) box() Box { return Box{c.At, c.At}.Grow(c.Radius) }

// Box is the upright box round the words.
func (t Text) Box() Box {
	l := t.own()
	sin, cos := math.Sincos(t.Angle)
	var line curve.Line
	for _, v := range l.Corners() {
		line = append(line, t.At.Add(curve.Vec{X: v.X*cos + v.Y*sin, Y: -v.X*sin + v.Y*cos}))
	}
	lo, hi := line.Bounds()
	return Box{lo, hi}
}

// own is the box round the words as they run, seen from their place.
func (t Text) own() Box {
	w, h := letters.Width(t.Says, t.Bold)*t.Size, t.Size
	x := 0.0
	switch t.Anchor {
	case Middle:
		x = -w / 2
	case End:
		x = -w
	}
	return Box{curve.Vec{X: x, Y: -0.8 * h}, curve.Vec{X: x + w, Y: 0.25 * h}}
}

// Page is one page in millimetres as measured on paper, from the upper left
// corner of what may be printed on.
type Page struct {
	Name    string
	Drawing Drawing
}
