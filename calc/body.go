package calc

import (
	"errors"
	"math"
)

// makeBody puts the outline together and takes its figures.
func (p *Plan) makeBody() error {
	s, sh := p.at, p.Input.Sheath
	p.Body = Body{
		Length:      s.mouth + sh.MouthRise.MM() + s.e + s.m,
		Width:       2 * s.cut.Max(),
		MouthStitch: s.stitch.Y[len(s.stitch.Y)-1],
		MouthCut:    s.cut.Y[len(s.cut.Y)-1],
		Bend:        s.bend(),
		Offsets:     s.offsets(),
	}
	tabbed := p.Input.Belt.Loop == FoldedLoop
	if tabbed {
		p.Loop = p.makeLoop()
		p.Body.TabLength = tabLength(p.Input.Belt, sh)
	}
	p.corner = s.mouthCorner(s.mostRound())
	p.backCorner = p.corner
	if r := p.roundBesideTab(); r < p.corner.radius {
		p.backCorner = s.mouthCorner(r)
	}
	p.Flat.Mouth = s.mouthLine(p.corner)
	p.Flat.Front = s.half(p.corner)
	back := p.Flat.Front
	if p.backCorner.radius != p.corner.radius {
		back = s.half(p.backCorner)
	}
	p.Body.Area = math.Abs(p.Flat.Front.Area()) + math.Abs(back.Area())
	p.Body.AreaWithTab = p.Body.Area + p.Body.TabLength*p.Input.Belt.Tab.MM()
	p.Flat.Outline = s.outline(back, p.Flat.Front, p.Loop, p.Body.TabLength, p.Input.Belt.Tab.MM())
	if _, _, crosses := p.Flat.Outline.Crossing(); crosses {
		if tabbed {
			return errors.New("the tab runs into the rim of the sheath, its outline would cross itself: make the tab narrower, " +
				"or set it elsewhere (belt.tab, belt.offset)")
		}
		return errors.New("the outline of the body would cross itself: make mouth corners and mouth rise smaller")
	}
	return nil
}

// offsets is the table of half-widths: every 10 mm, and the mouth.
func (s *sampled) offsets() []Offset {
	var rows []Offset
	first := math.Ceil(-(s.e+s.m)/10 - 1e-9)
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
	if x >= -s.e-1e-9 {
		o.Sewn = true
		o.Stitch = s.stitch.At(x)
		o.Glue = s.glueAt(x)
	}
	return o
}
