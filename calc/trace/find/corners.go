package find

import (
	"fmt"
	"math"

	"chape/calc/curve"
)

// Corners are the four marks in the order of frame.Marks, as the sheet lies when it is not
// mirrored: the dotted one, then clockwise as the picture is seen.
type Corners [4]Mark

// Mirrored is the same seen in a mirror.
func (c Corners) Mirrored() Corners { return Corners{c[0], c[3], c[2], c[1]} }

// most is how many candidates are tried; there are hardly ever more than four.
const most = 12

// Choose takes the four marks that span the largest field, one of them dotted, none of
// them far smaller than the others. The error says what is missing.
func Choose(marks []Mark, width, height int) (Corners, error) {
	if len(marks) > most {
		marks = marks[:most]
	}
	best, found := Corners{}, false
	largest := 0.0
	n := len(marks)
	for a := range n {
		for b := a + 1; b < n; b++ {
			for c := b + 1; c < n; c++ {
				for d := c + 1; d < n; d++ {
					q, ok := ordered([4]Mark{marks[a], marks[b], marks[c], marks[d]})
					if size := q.area(); ok && size > largest {
						best, found, largest = q, true, size
					}
				}
			}
		}
	}
	if !found {
		return best, missing(marks, float64(width), float64(height))
	}
	return best, nil
}

func (c Corners) area() float64 {
	return curve.Line{c[0].Mid, c[1].Mid, c[2].Mid, c[3].Mid}.Area()
}

// alike is how many times the area of the smallest mark the largest has at most. A corner that points at a camera 40° off the upright
// and 1.3 times the sheet's longer side away is seen (1.33/0.67)³ = 7.8 times as large as the one across.
const alike = 9

// ordered puts four marks clockwise from the dotted one. ok is false unless exactly one is
// dotted, they are of like size, and the field has no hollow corner.
func ordered(m [4]Mark) (c Corners, ok bool) {
	mid := m[0].Mid.Add(m[1].Mid).Add(m[2].Mid).Add(m[3].Mid).Mul(0.25)
	turn := func(k Mark) float64 { d := k.Mid.Sub(mid); return math.Atan2(d.Y, d.X) }
	for i := range m { // four, by insertion
		for j := i; j > 0 && turn(m[j]) < turn(m[j-1]); j-- {
			m[j], m[j-1] = m[j-1], m[j]
		}
	}
	first, dots := 0, 0
	least, most := m[0].square.Area, m[0].square.Area
	for i, k := range m {
		if k.Dotted {
			first, dots = i, dots+1
		}
		least, most = min(least, k.square.Area), max(most, k.square.Area)
	}
	for i := range c {
		c[i] = m[(first+i)%4]
	}
	for i := range c {
		if cross(c[i].Mid, c[(i+1)%4].Mid, c[(i+2)%4].Mid) <= 0 {
			return c, false
		}
	}
	return c, dots == 1 && float64(most) < alike*float64(least)
}

// cross is positive where a, b, c turn clockwise as a picture is seen.
func cross(a, b, c curve.Vec) float64 {
	u, v := b.Sub(a), c.Sub(b)
	return u.X*v.Y - u.Y*v.X
}

// missing says which corner can't be found.
func missing(m []Mark, w, h float64) error {
	if len(m) < 3 {
		return fmt.Errorf("no tracing sheet is to be seen: photograph the whole sheet, printed with chape print --tracing, from above, in good light (%d of its 4 corner marks found)", len(m))
	}
	a, b, c := m[0].Mid, m[1].Mid, m[2].Mid
	at := a.Add(b).Add(c)
	// the fourth is across from the one with the widest angle
	for _, k := range m[:3] {
		p, q := others(m[:3], k)
		if p.Sub(k.Mid).Norm() < p.Dist(q) && q.Sub(k.Mid).Norm() < p.Dist(q) {
			at = p.Add(q).Sub(k.Mid)
		}
	}
	dots := 0
	for _, k := range m {
		if k.Dotted {
			dots++
		}
	}
	which := "a corner mark"
	switch {
	case len(m) > 3 && dots == 1:
		return fmt.Errorf("the corner marks do not lie as on one sheet: photograph one tracing sheet alone, from above")
	case len(m) > 3 && dots > 1:
		return fmt.Errorf("%d marks with a dot are to be seen: photograph one tracing sheet alone", dots)
	case dots == 0:
		which = "the corner mark with the dot"
	}
	return fmt.Errorf("%s is missing, %s: photograph the whole sheet, sharp, with nothing on its corners", which, where(at, w, h))
}

func others(m []Mark, k Mark) (p, q curve.Vec) {
	var rest []curve.Vec
	for _, o := range m {
		if o.Mid != k.Mid {
			rest = append(rest, o.Mid)
		}
	}
	return rest[0], rest[1]
}

// where says a place of a picture in words.
func where(v curve.Vec, w, h float64) string {
	up, side := "upper", "left"
	if v.Y > h/2 {
		up = "lower"
	}
	if v.X > w/2 {
		side = "right"
	}
	if v.X < 0 || v.Y < 0 || v.X > w || v.Y > h {
		return "past the picture's " + up + " " + side + " corner"
	}
	return "at the " + up + " " + side + " of the picture"
}
