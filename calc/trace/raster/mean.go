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

// Closing is the grey closing by a square of 2r+1 dots: what is darker than round it and
// narrower than the square is filled, and edges stay edges. Greatest, then least, over the
// square, each in rows and columns (van Herk, 'A fast algorithm for local minimum and maximum
// filters on rectangular and octagonal kernels', 1992).
func (g *Grey) Closing(r int) *Grey {
	out := &Grey{g.Width, g.Height, append([]float32(nil), g.V...)}
	for _, sign := range []float32{1, -1} {
		out.greatest(r, sign, out.Width, out.Height, 1, out.Width)
		out.greatest(r, sign, out.Height, out.Width, out.Width, 1)
	}
	return out
}

// greatest replaces each value by the greatest (sign 1) or least (-1) within r along lines of
// n values, step apart; the lines begin next apart.
func (g *Grey) greatest(r int, sign float32, n, lines, step, next int) {
	k := 2*r + 1
	long := (n + 2*r + k - 1) / k * k
	v, fore, back := make([]float32, long), make([]float32, long), make([]float32, long)
	const low = -1e30
	for l := range lines {
		at := l * next
		for i := range v {
			v[i] = low
			if j := i - r; j >= 0 && j < n {
				v[i] = sign * g.V[at+j*step]
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
		for i := range n {
			g.V[at+i*step] = sign * max(back[i], fore[i+k-1])
		}
	}
}
