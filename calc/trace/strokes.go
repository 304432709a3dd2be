package trace

import (
	"math"

	"chape/calc/curve"
	"chape/calc/trace/raster"
)

// Of the strokes that mark a step: outwards from the line, 4 to 7 mm asked for, mm.
const (
	shortest  = 2.5
	longest   = 11.0
	offLine   = 0.7 // past the line's outer edge from where on a stroke is looked for
	joins     = 0.9 // how near to that it has to begin
	slimness  = 4.0 // how much longer than wide: of the second moments
	strayFeet = 4.0 // how far the outline may be from where a stroke points
)

// Stroke is a stroke drawn outwards from the line.
type Stroke struct {
	Foot curve.Vec // where it meets the outline, mm on the sheet
	End  curve.Vec // its outer end
}

// strokes finds the strokes: slim dark pieces that begin at the line and stand out of it.
func (d *drawn) strokes(t *truth) []Stroke {
	w, h := t.grey.Width, t.grey.Height
	dots := make(curve.Line, len(d.outline))
	for i, v := range d.outline {
		dots[i] = v.Mul(1 / t.dot)
	}
	far := inwards(dots, w, h, int((longest+2)/t.dot))
	begin := d.standoff + d.width/2 + offLine
	set := make([]bool, w*h)
	for i, v := range far.V {
		mm := -float64(v) * t.dot
		set[i] = mm > begin && mm < longest+1.5 && t.grey.V[i] < d.level
	}
	label, pieces := raster.Pieces(set, w)
	near, out := make([]float64, len(pieces)), make([]float64, len(pieces))
	ends := make([]int, len(pieces))
	for i := range near {
		near[i] = math.Inf(1)
	}
	for i, l := range label {
		if l == 0 {
			continue
		}
		mm := -float64(far.V[i]) * t.dot
		near[l-1] = min(near[l-1], mm)
		if mm > out[l-1] {
			out[l-1], ends[l-1] = mm, i
		}
	}
	var found []Stroke
	for k, p := range pieces {
		if out[k]-d.standoff < shortest || out[k] > longest || near[k] > begin+joins {
			continue
		}
		along, slim := p.Along()
		if slim < slimness {
			continue
		}
		end := t.place(curve.Vec{X: float64(ends[k] % w), Y: float64(ends[k] / w)})
		if foot, ok := hit(d.outline, t.place(p.Mid), along, end); ok {
			found = append(found, Stroke{foot, end})
		}
	}
	return found
}

// hit is where a line from a place, on the side away from end, meets the outline first.
func hit(outline curve.Line, from, along, end curve.Vec) (foot curve.Vec, ok bool) {
	back := end.Sub(from)
	if back.X*along.X+back.Y*along.Y > 0 {
		along = along.Mul(-1)
	}
	least := from.Dist(end) + strayFeet + 2
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		e := b.Sub(a)
		det := along.X*e.Y - along.Y*e.X
		if det == 0 {
			continue
		}
		q := a.Sub(from)
		s, u := (q.X*e.Y-q.Y*e.X)/det, (q.X*along.Y-q.Y*along.X)/det
		if u >= 0 && u <= 1 && s > 0 && s < least {
			least, foot, ok = s, from.Add(along.Mul(s)), true
		}
	}
	return foot, ok
}
