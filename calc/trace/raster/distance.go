package raster

import (
	"math"

	"chape/calc/curve"
)

// Nearest gives each dot's distance to the nearest of the points, in dots; along a line of points exact to
// a fiftieth of one on the mean and an eighth at most: each dot tries the points that its neighbours found, in two sweeps each way (Danielsson,
// 'Euclidean distance mapping', 1980, with points between the dots).
func Nearest(points curve.Line, w, h int) *Grey {
	near := make([]int32, w*h)
	out := NewGrey(w, h)
	for i := range out.V {
		out.V[i] = math.MaxFloat32
		near[i] = -1
	}
	try := func(i, x, y int, k int32) {
		if k < 0 {
			return
		}
		dx, dy := points[k].X-float64(x), points[k].Y-float64(y)
		if d := float32(dx*dx + dy*dy); d < out.V[i] {
			out.V[i], near[i] = d, k
		}
	}
	for k, p := range points {
		x0, y0 := int(math.Floor(p.X)), int(math.Floor(p.Y))
		for y := max(y0, 0); y <= min(y0+1, h-1); y++ {
			for x := max(x0, 0); x <= min(x0+1, w-1); x++ {
				try(y*w+x, x, y, int32(k))
			}
		}
	}
	row := func(y, from int) {
		for x := range w { // from the row before, then along
			i := y*w + x
			for dx := -1; dx <= 1; dx++ {
				if from >= 0 && from < h && x+dx >= 0 && x+dx < w {
					try(i, x, y, near[from*w+x+dx])
				}
			}
			if x > 0 {
				try(i, x, y, near[i-1])
			}
		}
		for x := w - 2; x >= 0; x-- {
			try(y*w+x, x, y, near[y*w+x+1])
		}
	}
	for y := range h {
		row(y, y-1)
	}
	for y := h - 1; y >= 0; y-- {
		row(y, y+1)
	}
	for i, d := range out.V {
		out.V[i] = float32(math.Sqrt(float64(d)))
	}
	return out
}

// FromSet is each dot's distance to the nearest dot of the set, in dots: exact, row by row and column
// by column (Felzenszwalb and Huttenlocher, 'Distance transforms of sampled functions', 2012).
func FromSet(set []bool, w, h int) *Grey {
	out := NewGrey(w, h)
	for i, on := range set {
		if !on {
			out.V[i] = 1e12
		}
	}
	n := max(w, h)
	f, v, z := make([]float64, n), make([]int, n), make([]float64, n+1)
	pass := func(n, lines, step, next int) {
		for l := range lines {
			at := l * next
			for i := range n {
				f[i] = float64(out.V[at+i*step])
			}
			envelope(f[:n], v, z, func(i int, d float64) { out.V[at+i*step] = float32(d) })
		}
	}
	pass(h, w, w, 1)
	pass(w, h, 1, w)
	for i, d := range out.V {
		out.V[i] = float32(math.Sqrt(float64(d)))
	}
	return out
}

// envelope gives for each i the least of (i-q)² + f(q).
func envelope(f []float64, v []int, z []float64, put func(int, float64)) {
	k := 0
	v[0], z[0], z[1] = 0, math.Inf(-1), math.Inf(1)
	for q := 1; q < len(f); q++ {
		s := 0.0
		for {
			p := v[k]
			s = ((f[q] + float64(q*q)) - (f[p] + float64(p*p))) / float64(2*(q-p))
			if s > z[k] {
				break
			}
			k--
		}
		k++
		v[k], z[k], z[k+1] = q, s, math.Inf(1)
	}
	k = 0
	for q := range f {
		for z[k+1] < float64(q) {
			k++
		}
		d := float64(q - v[k])
		put(q, d*d+f[v[k]])
	}
}
