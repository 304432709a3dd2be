package raster

import "chape/calc/curve"

// Levels are the closed lines on which the field has a level, between dots on straight lines
// (marching squares: Lorensen and Cline, 'Marching cubes', 1987, in the plane), in dots. What is above the
// level lies on the same side all along. Lines that leave the field are left out.
func (g *Grey) Levels(level float32) []curve.Line {
	next := map[int32]int32{} // from the edge where a line comes in to where it goes out
	var begun []int32         // in the order of the rows, so that the same field gives the same lines
	for y := range g.Height - 1 {
		for x := range g.Width - 1 {
			g.cell(x, y, level, func(from, to int32) {
				next[from] = to
				begun = append(begun, from)
			})
		}
	}
	var out []curve.Line
	for _, first := range begun {
		var l curve.Line
		e, closed := first, false
		for {
			n, ok := next[e]
			if !ok {
				break
			}
			l = append(l, g.onEdge(e, level))
			delete(next, e)
			if e = n; e == first {
				closed = true
				break
			}
		}
		if closed && len(l) > 3 {
			out = append(out, l)
		}
	}
	return out
}

// Edges of a cell are numbered by their first dot and their way: 2i to the right, 2i+1 down.
func (g *Grey) cell(x, y int, level float32, put func(from, to int32)) {
	i := y*g.Width + x
	v := [4]float32{g.V[i], g.V[i+1], g.V[i+1+g.Width], g.V[i+g.Width]}
	kind := 0
	for k, f := range v {
		if f > level {
			kind |= 1 << k
		}
	}
	if kind == 0 || kind == 15 {
		return
	}
	top, right := int32(2*i), int32(2*(i+1)+1)
	bottom, left := int32(2*(i+g.Width)), int32(2*i+1)
	joined := v[0]+v[1]+v[2]+v[3] > 4*level
	switch kind { // above the level on the left of the way
	case 1:
		put(left, top)
	case 2:
		put(top, right)
	case 3:
		put(left, right)
	case 4:
		put(right, bottom)
	case 6:
		put(top, bottom)
	case 7:
		put(left, bottom)
	case 8:
		put(bottom, left)
	case 9:
		put(bottom, top)
	case 11:
		put(bottom, right)
	case 12:
		put(right, left)
	case 13:
		put(right, top)
	case 14:
		put(top, left)
	case 5:
		if joined {
			put(right, top)
			put(left, bottom)
		} else {
			put(left, top)
			put(right, bottom)
		}
	case 10:
		if joined {
			put(top, left)
			put(bottom, right)
		} else {
			put(top, right)
			put(bottom, left)
		}
	}
}

func (g *Grey) onEdge(e int32, level float32) curve.Vec {
	i := int(e / 2)
	v := curve.Vec{X: float64(i % g.Width), Y: float64(i / g.Width)}
	j := i + 1
	if e%2 == 1 {
		j = i + g.Width
	}
	f := float64((level - g.V[i]) / (g.V[j] - g.V[i]))
	if e%2 == 1 {
		v.Y += f
	} else {
		v.X += f
	}
	return v
}
