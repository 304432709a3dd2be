package trace

import (
	"context"
	"math"
	"slices"
	"sync"

	"chape/calc/curve"
	"chape/calc/trace/frame"
	"chape/calc/trace/raster"
)

const (
	dot      = 0.1  // mm, of the true picture
	mostDots = 24e6 // of the true picture; on a larger sheet the dots are larger
	clear    = 1.5  // mm inside the frame, where the frame's own ink may still show
)

// truth is the inside of the frame as it is: dots of a size, square to the sheet.
type truth struct {
	frame.Sheet
	dot  float64 // mm
	grey *raster.Grey
	kept []bool // dots that may hold a drawing: clear of frame, marks and row
}

func (t *truth) place(v curve.Vec) curve.Vec { return v.Mul(t.dot) }

// straighten resamples the inside of the frame: each dot the light at its middle.
func straighten(ctx context.Context, p *raster.Picture, s seen) (*truth, error) {
	t := newTruth(s.sheet)
	w := t.grey.Width
	err := t.rows(ctx, func(y int) {
		for x := range w {
			t.grey.V[y*w+x] = p.At(s.camera.Image(t.place(curve.Vec{X: float64(x), Y: float64(y)})))
		}
	})
	return t, err
}

func newTruth(s frame.Sheet) *truth {
	t := &truth{Sheet: s, dot: max(dot, math.Sqrt(s.Width*s.Height/mostDots))}
	t.grey = raster.NewGrey(int(s.Width/t.dot)+1, int(s.Height/t.dot)+1)
	return t
}

// rows calls f for every row, on two strands.
func (t *truth) rows(ctx context.Context, f func(y int)) error {
	var wait sync.WaitGroup
	for k := range 2 {
		wait.Go(func() {
			for y := k; y < t.grey.Height && ctx.Err() == nil; y += 2 {
				f(y)
			}
		})
	}
	wait.Wait()
	return ctx.Err()
}

// held tells whether a place, mm, is clear of what is printed.
func (t *truth) held(v curve.Vec) bool {
	const in = frame.MarkIn + clear
	w, h := t.Width, t.Height
	row := frame.Row()
	switch {
	case v.X < clear || v.Y < clear || v.X > w-clear || v.Y > h-clear,
		(v.X < in || v.X > w-in) && (v.Y < in || v.Y > h-in),
		v.Y < row.Hi.Y+clear && v.X > row.Lo.X-clear && v.X < row.Hi.X+clear:
		return false
	}
	return true
}

// background is how much light is taken away by a closing of 3.3 mm: it fills lines and
// keeps the edges of shadows.
const background = 3.3

// even divides the light by the background, and takes what is printed as paper.
func (t *truth) even() {
	soft := t.grey.Mean(2)
	ground := soft.Closing(int(math.Round(background / 2 / t.dot)))
	t.grey = t.grey.Mean(1)
	t.kept = make([]bool, len(t.grey.V))
	for i := range t.grey.V {
		x, y := i%t.grey.Width, i/t.grey.Width
		if t.kept[i] = t.held(t.place(curve.Vec{X: float64(x), Y: float64(y)})); t.kept[i] {
			t.grey.V[i] = min(t.grey.V[i]/max(ground.V[i], 1e-3), 1.5)
		} else {
			t.grey.V[i] = 1
		}
	}
}

// faint is how far under the paper the level has to lie that parts a line from it: what a camera's own
// sharpening and packing leave beside the frame is fainter.
const faint = 0.05

// ink is the levels of a drawing in even light.
type ink struct {
	paper, noise, line float32
}

// half is the level that parts line from paper, nearer to the paper: pencils are not pressed evenly.
func (k ink) half() float32 { return k.paper - 0.4*(k.paper-k.line) }

// levels finds paper and noise from all dots, and the line from the darkest dot of each square millimetre
// that has dark ones. ok is false where there is no line.
func (t *truth) levels() (k ink, ok bool) {
	const bins = 1500
	var count [bins + 1]int
	all := 0
	for i, v := range t.grey.V {
		if t.kept[i] {
			count[min(max(int(v*1000), 0), bins)]++
			all++
		}
	}
	share := func(f float64) float32 {
		sum := 0
		for i, n := range count {
			if sum += n; float64(sum) >= f*float64(all) {
				return (float32(i) + 0.5) / 1000
			}
		}
		return 1
	}
	k.paper = share(0.5)
	k.noise = max(share(0.84)-k.paper, 0.002)
	var darkest []float32
	n := int(math.Round(1 / t.dot))
	for y := 0; y+n <= t.grey.Height; y += n {
		for x := 0; x+n <= t.grey.Width; x += n {
			least := k.paper
			for j := range n {
				least = min(least, slices.Min(t.grey.V[(y+j)*t.grey.Width+x:(y+j)*t.grey.Width+x+n]))
			}
			if least < k.paper-max(9*k.noise, 0.06) {
				darkest = append(darkest, least)
			}
		}
	}
	if len(darkest) < 40 { // mm of line
		return k, false
	}
	slices.Sort(darkest)
	k.line = darkest[len(darkest)*2/5]
	return k, k.paper-k.half() > max(4.5*k.noise, faint)
}
