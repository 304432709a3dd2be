package raster

// Mean is the mean over a square of 2r+1 dots round each, cut off at the rims: by running
// sums, whatever r is.
func (g *Grey) Mean(r int) *Grey {
	w, h := g.Width, g.Height
	out := NewGrey(w, h)
	sums := make([]float64, w) // of each column over the rows in the square
	rows := 0
	add := func(y int, sign float64) {
		for x, v := range g.V[y*w : (y+1)*w] {
			sums[x] += sign * float64(v)
		}
		rows += int(sign)
	}
	for y := range min(r, h) {
		add(y, 1)
	}
	for y := range h {
		if y+r < h {
			add(y+r, 1)
		}
		if y-r-1 >= 0 {
			add(y-r-1, -1)
		}
		sum, n := 0.0, 0
		for x := range min(r, w) {
			sum, n = sum+sums[x], n+1
		}
		for x := range w {
			if x+r < w {
				sum, n = sum+sums[x+r], n+1
			}
			if x-r-1 >= 0 {
				sum, n = sum-sums[x-r-1], n-1
			}
			out.V[y*w+x] = float32(sum / float64(n*rows))
		}
	}
	return out
}

// Closing is the grey closing by a square of 2r+1 dots, or by one as large that stands on its corner, whichever gives more:
// what is darker than round it and narrower than the square is filled, and edges stay edges, in whatever direction they
// run. Greatest, then least, over the square, each along two sets of lines (van Herk, 'A fast algorithm for local minimum and maximum
// filters on rectangular and octagonal kernels', 1992).
func (g *Grey) Closing(r int) *Grey {
	w, h := g.Width, g.Height
	upright, cornered := g.copy(), g.copy()
	for _, sign := range []float32{1, -1} {
		upright.greatest(r, sign, rows(w, h))
		upright.greatest(r, sign, columns(w, h))
		slant := (r*100 + 70) / 141 // a step on a slant is as long as 1.41 dots
		cornered.greatest(slant, sign, falling(w, h))
		cornered.greatest(slant, sign, rising(w, h))
	}
	for i, v := range cornered.V {
		upright.V[i] = max(upright.V[i], v)
	}
	return upright
}

func (g *Grey) copy() *Grey {
	return &Grey{g.Width, g.Height, append([]float32(nil), g.V...)}
}

// run is a line of dots of a field: the first, how many, and how far apart.
type run struct{ first, n, step int }

func rows(w, h int) (out []run) {
	for y := range h {
		out = append(out, run{y * w, w, 1})
	}
	return out
}

func columns(w, h int) (out []run) {
	for x := range w {
		out = append(out, run{x, h, w})
	}
	return out
}

// falling lines go down to the right.
func falling(w, h int) (out []run) {
	for x := range w {
		out = append(out, run{x, min(w-x, h), w + 1})
	}
	for y := 1; y < h; y++ {
		out = append(out, run{y * w, min(w, h-y), w + 1})
	}
	return out
}

// rising lines go down to the left.
func rising(w, h int) (out []run) {
	for x := range w {
		out = append(out, run{x, min(x+1, h), w - 1})
	}
	for y := 1; y < h; y++ {
		out = append(out, run{y*w + w - 1, min(w, h-y), w - 1})
	}
	return out
}

// greatest replaces each value by the greatest (sign 1) or least (-1) within r along the lines.
func (g *Grey) greatest(r int, sign float32, lines []run) {
	k := 2*r + 1
	most := max(g.Width, g.Height) + 2*r + k
	all, fore, back := make([]float32, most), make([]float32, most), make([]float32, most)
	const low = -1e30
	for _, l := range lines {
		long := (l.n + 2*r + k - 1) / k * k
		v := all[:long]
		for i := range v {
			v[i] = low
			if j := i - r; j >= 0 && j < l.n {
				v[i] = sign * g.V[l.first+j*l.step]
			}
		}
		for i := range v {
			fore[i] = v[i]
			if i%k != 0 {
				fore[i] = max(fore[i-1], v[i])
			}
			j := long - 1 - i
			back[j] = v[j]
			if j%k != k-1 {
				back[j] = max(back[j+1], v[j])
			}
		}
		for i := range l.n {
			g.V[l.first+i*l.step] = sign * max(back[i], fore[i+k-1])
		}
	}
}
