package find

import (
	"errors"
	"math"

	"chape/calc/curve"
	"chape/calc/trace/frame"
)

// Place is a place of the sheet seen in the picture.
type Place struct {
	Sheet, Image curve.Vec // mm; dots of the reduced picture
}

// errChain says that the frame can't be followed.
var errChain = errors.New("the frame can't be followed from corner to corner: nothing may lie on it, and the picture has to be sharp")

// Frame follows the frame's black squares from mark to mark. Their number is the sheet's size.
func (v *View) Frame(c Corners) (frame.Sheet, []Place, error) {
	var sides [4]chain
	for i, way := range [4][4]int{{0, 1, 3, 2}, {1, 2, 0, 3}, {3, 2, 0, 1}, {0, 3, 1, 2}} {
		sides[i] = v.follow(c[way[0]], c[way[1]], c[way[2]], c[way[3]])
		if sides[i].squares == nil {
			return frame.Sheet{}, nil, errChain
		}
	}
	w, h := sides[0].long, sides[1].long
	if sides[2].long != w || sides[3].long != h || w < frame.Least || h < frame.Least {
		return frame.Sheet{}, nil, errChain
	}
	s := frame.Sheet{Width: w, Height: h, Version: frame.Newest}
	var out []Place
	for i, m := range s.Marks() {
		out = append(out, Place{m, c[i].Mid})
	}
	for i, side := range sides {
		for k, q := range side.squares {
			if q.found {
				out = append(out, Place{onSide(s, i, frame.MarkIn+frame.Band*(1.5+2*float64(k))), q.at})
			}
		}
	}
	return s, out, nil
}

// onSide is the middle of the band on side i, so far along x or y: from there the squares are counted on all sides, for
// an even number of them ends with two white ones.
func onSide(s frame.Sheet, i int, along float64) curve.Vec {
	const out = frame.Band / 2
	switch i {
	case 0:
		return curve.Vec{X: along, Y: -out}
	case 1:
		return curve.Vec{X: s.Width + out, Y: along}
	case 2:
		return curve.Vec{X: along, Y: s.Height + out}
	}
	return curve.Vec{X: -out, Y: along}
}

type square struct {
	at    curve.Vec
	found bool
}

type chain struct {
	squares []square
	long    float64 // mm inside the frame; 0 without squares
}

// Distances of a mark's middle, mm: to the middle of the next black square along and out.
const (
	firstAlong = 17.5 - 2.5
	firstOut   = 5.0
	step       = 2 * frame.Band
)

// moved is a place so many mm from the mark's middle, away from another place.
func (m Mark) moved(mm float64, from curve.Vec) curve.Vec {
	d := m.Mid.Sub(from)
	d = d.Mul(1 / d.Norm())
	return m.Mid.Add(d.Mul(mm * m.scale(d)))
}

// follow walks from mark a to mark b; c is the mark on the other side of a, e that on the other side of b. Each square is
// looked for where the last two say, and a few may be covered.
func (v *View) follow(a, b, c, e Mark) chain {
	d := b.Mid.Sub(a.Mid)
	d = d.Mul(1 / d.Norm())
	stride := d.Mul(step * a.scale(d))
	begin, end := a.moved(firstOut, c.Mid), b.moved(firstOut, e.Mid) // in the band, beside the marks' middles
	at := begin.Add(d.Mul(firstAlong * a.scale(d)))
	var out []square
	missed, inRow := 0, 0
	for len(out) < 250 {
		p, ok := v.near(at, stride.Norm())
		if ok {
			switch n := len(out); {
			case n == 0:
				stride = p.Sub(begin).Mul(step / firstAlong)
			case out[n-1].found:
				stride = p.Sub(out[n-1].at)
			}
			at, inRow = p, 0
		} else {
			missed, inRow = missed+1, inRow+1
		}
		if inRow > 3 {
			return chain{}
		}
		out = append(out, square{at, ok})
		steps := stepsTo(out, stride, end)
		if steps < 2.25 {
			if steps < 1 || missed > 2+len(out)/3 {
				return chain{}
			}
			return chain{out, endOf(len(out), steps)}
		}
		at = at.Add(stride)
	}
	return chain{}
}

// stepsTo is how many steps it is from the last square to a place on the line. In perspective steps grow or shrink, along a line
// as x = a t / (1 + c t); three squares that stand evenly say how.
func stepsTo(out []square, stride, to curve.Vec) float64 {
	n := len(out) - 1
	for k := min(3, n/2); k > 0; k-- {
		p, q, r := out[n-2*k], out[n-k], out[n]
		if !p.found || !q.found || !r.found {
			continue
		}
		s1, s2 := q.at.Dist(p.at), r.at.Dist(q.at)
		c := (s1 - s2) / (2 * s2)
		x := s1 + s2 + along(to.Sub(r.at), r.at.Sub(p.at))*r.at.Dist(p.at)
		return float64(k) * (x/(s1*(1+c)-c*x) - 2)
	}
	return along(to.Sub(out[n].at), stride)
}

// along is how many times w fits into v along it.
func along(v, w curve.Vec) float64 { return (v.X*w.X + v.Y*w.Y) / (w.X*w.X + w.Y*w.Y) }

// endOf is the length of a side with so many black squares and so many steps left from the last to
// the mark: 1.5 where the number of squares between the marks is odd, 2 where it is even.
func endOf(black int, left float64) float64 {
	n := 2*black + 1
	if left > 1.75 {
		n++
	}
	return 2*frame.MarkIn + frame.Band*float64(n)
}

// scale is how many dots of the picture a millimetre in a direction of the picture is at the
// mark, from the second moments of its square.
func (m Mark) scale(d curve.Vec) float64 {
	p := m.square
	det := p.XX*p.YY - p.XY*p.XY
	q := (d.X*d.X*p.YY - 2*d.X*d.Y*p.XY + d.Y*d.Y*p.XX) / det
	return 1 / math.Sqrt(q*squareMean)
}

// near is the middle of the square-like piece nearest to a place, if there is one within a
// third of the way to the next.
func (v *View) near(at curve.Vec, stride float64) (curve.Vec, bool) {
	const reach = 0.36
	r := reach * stride
	w, h := v.grey.Width, v.grey.Height
	best, least := curve.Vec{}, r
	x0, x1 := max(0, int(at.X-r)), min(w-1, int(at.X+r))
	for y := max(0, int(at.Y-r)); y <= min(h-1, int(at.Y+r)); y++ {
		for x := x0; x <= x1; x++ {
			l := v.label[y*w+x]
			if l == 0 {
				continue
			}
			p := v.pieces[l-1]
			size := p.Size() / (stride / 2)
			if size < 0.55 || size > 1.5 || max(p.X1-p.X0, p.Y1-p.Y0) > int(1.1*stride) {
				continue
			}
			if far := p.Mid.Dist(at); far < least {
				best, least = p.Mid, far
			}
		}
	}
	return best, least < r
}
