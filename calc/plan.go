package calc

import (
	"fmt"
	"math"

	"chape/calc/curve"
	"chape/calc/length"
)

// Compute makes the whole plan. The input must be valid (project.Validate);
// what only the plan can find is refused here with one line that says what
// would do: marks that make no knife, and a seam shorter than first and last.
func Compute(in Input) (*Plan, error) { return compute(in, spacing) }

// compute is Compute with the sample spacing to choose, for the benchmarks.
func compute(in Input, step float64) (*Plan, error) {
	s, err := sample(in, step)
	if err != nil {
		return nil, err
	}
	p := &Plan{Input: in, at: s}
	p.Plane = s.planeLines()
	p.Flat = s.flatLines()
	p.Welt = s.weltStrip()
	if err := p.layStitches(); err != nil {
		return nil, err
	}
	p.Stitch.Drills = Drills(in.Stitch.Thread.MM(), in.Stitch.Shank().MM())
	p.Thread = seamThread(p.Stitch, in.Stitch)
	p.makeBody()
	p.makeChecks()
	return p, nil
}

func (s *sampled) planeLines() Plane {
	return Plane{
		Knife:  s.lower.Line(),
		Stitch: s.seam.Line(curve.Vec{X: -s.g}),
		Inner:  s.inner.Line(),
		Outer:  s.outer.Line(curve.Vec{X: s.outer.X[0]}),
	}
}

func (s *sampled) flatLines() Flat {
	glue := make(curve.Line, len(s.stitch.X))
	for i, x := range s.stitch.X {
		glue[i] = curve.Vec{X: x, Y: s.stitch.Y[i] - (s.seam.Y[i] - s.inner.Y[i])}
	}
	return Flat{
		EndY:   s.end(),
		Stitch: s.stitch.Line(curve.Vec{X: -s.g, Y: s.end()}),
		Glue:   glue,
		Cut:    s.cut.Line(curve.Vec{X: s.cut.X[0]}),
	}
}

// weltStrip is the strip between the welt's edges, closed over the point end.
func (s *sampled) weltStrip() Welt {
	inner := s.inner.Between(-s.c, s.mouth)
	out := make(curve.Line, 0, len(s.outer.X)+len(inner.X)+2)
	out = append(out, curve.Vec{X: s.outer.X[0]})
	for i, x := range s.outer.X {
		out = append(out, curve.Vec{X: x, Y: s.outer.Y[i]})
	}
	for i := len(inner.X) - 1; i >= 0; i-- {
		out = append(out, curve.Vec{X: inner.X[i], Y: inner.Y[i]})
	}
	out = append(out, curve.Vec{X: -s.c})
	return Welt{
		Area:      s.outer.Area() - inner.Area(),
		Thickness: s.in.Sheath.Welt.MM(),
		Plies:     s.in.Sheath.Plies,
		Outline:   out,
	}
}

// makeBody puts the outline together and takes its figures.
func (p *Plan) makeBody() {
	s, sh := p.at, p.Input.Sheath
	p.Body = Body{
		Length:      s.mouth + sh.MouthRise.MM() + s.g + s.m,
		Width:       2 * s.cut.Max(),
		MouthStitch: s.stitch.Y[len(s.stitch.Y)-1],
		MouthCut:    s.cut.Y[len(s.cut.Y)-1],
		Bend:        s.bend(),
		Offsets:     s.offsets(),
	}
	p.corner = s.mouthCorner()
	p.Flat.Mouth = s.mouthLine(p.corner)
	p.Flat.Front = s.frontHalf(p.corner)
	p.Body.Area = 2 * math.Abs(p.Flat.Front.Area())
	p.Body.AreaWithTab = p.Body.Area
	if p.Input.Belt.Loop == FoldedLoop {
		p.Loop = p.makeLoop()
		p.Body.TabLength = tabLength(p.Input.Belt, sh)
		p.Body.AreaWithTab += p.Body.TabLength * p.Input.Belt.Tab.MM()
	}
	p.Flat.Outline = s.outline(p.Flat.Front, p.Loop, p.Body.TabLength, p.Input.Belt.Tab.MM())
	if d := sh.Drain.MM(); d > 0 {
		p.Flat.Drain = s.drain(d)
	}
}

// drainEdge is the leather left between the knife's point and the rim of
// the drain hole, mm (common practice, no source).
const drainEdge = 2

// drain places the hole behind the knife's point, halfway between the fold
// and the welt, where water gathers when the sheath hangs.
func (s *sampled) drain(d float64) *Circle {
	x := math.Min(drainEdge+d/2, s.mouth)
	glue := s.stitch.At(x) - (s.seam.At(x) - s.inner.At(x))
	return &Circle{Centre: curve.Vec{X: x, Y: glue / 2}, Diameter: d}
}

// offsets is the table of half-widths: every 10 mm, and the mouth.
func (s *sampled) offsets() []Offset {
	var rows []Offset
	first := math.Ceil(-(s.g+s.m)/10 - 1e-9)
	for k := first; ; k++ {
		x := 10 * k
		if x > s.mouth-1e-9 {
			return append(rows, s.offset(s.mouth))
		}
		rows = append(rows, s.offset(x+0)) // +0: no minus zero
	}
}

func (s *sampled) offset(x float64) Offset {
	o := Offset{At: x, Cut: s.cut.At(x)}
	if x >= -s.g-1e-9 {
		o.Sewn = true
		o.Stitch = s.stitch.At(x)
		o.Glue = o.Stitch - (s.seam.At(x) - s.inner.At(x))
	}
	return o
}

// layStitches steps the holes off with dividers on the closed sheath and
// finds their places in the flat.
func (p *Plan) layStitches() error {
	s, st := p.at, p.Input.Stitch
	line := p.Plane.Stitch.Reverse() // from the mouth
	q := &p.Stitch
	q.Line = p.Flat.Stitch.Length()
	q.PlaneLine = line.Length()
	q.Stack = 2*p.Input.Sheath.Leather.MM() + p.Input.Sheath.Welt.MM()
	q.Laid = q.PlaneLine
	if st.Measured > 0 {
		q.Laid = st.Measured.MM()
	}
	sewn := q.Laid - (st.First + st.Last).MM()
	if sewn <= 0 {
		return fmt.Errorf("first hole and last hole take %s of a stitch line of %s: make first and last shorter",
			(st.First+st.Last).Format(length.Millimetres, length.Ruler),
			length.Length(q.Laid).Format(length.Millimetres, length.Ruler))
	}
	n := math.Max(1, math.Floor(sewn/st.Pitch.MM()+0.5))
	if n > maxStitches {
		return fmt.Errorf("%.0f stitches are more than anyone sews: make the pitch longer", n)
	}
	q.Stitches = int(n)
	q.Holes = q.Stitches + 1
	q.Pitch = sewn / n

	scale := q.Laid / q.PlaneLine // the computed line is scaled to the measured one
	chord, at := line.Walk(st.First.MM()/scale, (q.Laid-st.Last.MM())/scale, q.Stitches)
	q.Walk = chord * scale
	run := s.seam.Y[0]
	for _, h := range at {
		q.Positions = append(q.Positions, h.Vec)
		q.Along = append(q.Along, h.S*scale)
		flat := curve.Vec{X: h.X, Y: s.stitch.At(h.X)}
		if left := q.PlaneLine - h.S; left < run && run > 0 { // on the straight run: the same share of the run
			flat = curve.Vec{X: -s.g, Y: s.end() + h.Y/run*(s.stitch.Y[0]-s.end())}
		}
		q.Flat = append(q.Flat, flat)
	}
	return nil
}

// maxStitches keeps a mistyped pitch from filling the memory.
const maxStitches = 20000
