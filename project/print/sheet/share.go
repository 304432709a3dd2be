package sheet

import (
	"math"

	"chape/calc/curve"
)

// least is how much of a piece a sheet should hold, square to the joint that cuts it, mm: one
// with a few millimetres of a tab is soon lost (common practice, no source).
const least = 25.0

// share moves the sheets, which have room to spare, so that none holds a mere sliver of
// what is cut; as little as may be, and never so that there are more of them.
func (t *Tiling) share(d *Drawing, w, h float64, slack curve.Vec) {
	_, narrowest := t.slivers(d)
	if narrowest >= least {
		return
	}
	first, all := t.Whole, len(t.Sheets)
	best, bestAt := narrowest, curve.Vec{}
	const steps = 12
search:
	for i := range steps + 1 {
		for k := range steps + 1 {
			by := curve.Vec{X: -slack.X * float64(k) / steps, Y: slack.Y * float64(i) / steps}
			t.lay(d, first, by, w, h)
			if n, narrow := t.slivers(d); n <= all && narrow > best+1e-9 {
				best, bestAt = narrow, by
			}
			if best >= least {
				break search
			}
		}
	}
	t.lay(d, first, bestAt, w, h)
}

// slivers counts the sheets, and says how little of a piece the least is that a joint cuts
// off on one, square to the joint; infinite where none cuts a piece.
func (t *Tiling) slivers(d *Drawing) (sheets int, narrowest float64) {
	narrowest = math.Inf(1)
	for _, s := range t.Sheets {
		core := s.Area.Grow(-Overlap / 2)
		for _, p := range d.Paths {
			if p.Layer != CutLayer && p.Layer != WeltLayer && p.Layer != StrapLayer && p.Layer != AddedLayer {
				continue
			}
			on := p.held(core)
			if len(on) == 0 {
				continue
			}
			lo, hi := on.Bounds()
			if lo.X < core.Lo.X+1e-6 || hi.X > core.Hi.X-1e-6 {
				narrowest = min(narrowest, hi.X-lo.X)
			}
			if lo.Y < core.Lo.Y+1e-6 || hi.Y > core.Hi.Y-1e-6 {
				narrowest = min(narrowest, hi.Y-lo.Y)
			}
		}
	}
	return len(t.Sheets), narrowest
}

// held are places round the part of what a path encloses that lies in b: where the path
// runs in it, and the corners of b that it goes round.
func (p Path) held(b Box) curve.Line {
	var out curve.Line
	for _, piece := range p.Clip(b) {
		out = append(out, piece.Pts...)
	}
	for _, c := range b.Corners() {
		if inside(c, p.Pts) {
			out = append(out, c)
		}
	}
	return out
}
