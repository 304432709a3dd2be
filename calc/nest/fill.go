package nest

import (
	"math"
	"sync"
)

// floor is what all chains of a search share: the task as the search sees it.
type floor struct {
	task   Task
	drawn  []drawn
	boards []board
	shapes []*shape
	on     [][][]int // shapes by part and piece
	area   []float64 // of each part
	step   float64   // between columns, mm

	mu   sync.Mutex
	fits map[[2]int]*nofit // of two shapes; of a board (as -1-i) and a shape
}

func newFloor(t Task, step float64) *floor {
	f := &floor{task: t, step: step, fits: map[[2]int]*nofit{}}
	for _, p := range t.Pieces {
		f.boards = append(f.boards, newBoard(p))
	}
	for i, p := range t.Parts {
		f.drawn = append(f.drawn, draw(p.Outline, t.Gap))
		f.area = append(f.area, math.Abs(p.Outline.Area()))
		var on [][]int
		f.shapes, on = shapesOf(f.shapes, t, i)
		f.on = append(f.on, on)
	}
	return f
}

// fit gives the slices of shape b against shape a, or against board -1-a.
func (f *floor) fit(a, b int) *nofit {
	key := [2]int{a, b}
	f.mu.Lock()
	n := f.fits[key]
	f.mu.Unlock()
	if n != nil {
		return n
	}
	sb := f.shapes[b]
	sb.make(f.drawn)
	if a < 0 {
		n = noFit(f.boards[-1-a].obstacles, sb.edge, f.step)
	} else {
		f.shapes[a].make(f.drawn)
		n = noFit(f.shapes[a].grown, sb.grown, f.step)
	}
	f.mu.Lock()
	f.fits[key] = n
	f.mu.Unlock()
	return n
}

// lying is a shape put down.
type lying struct {
	shape, piece, col int
	y                 float64
}

// filler lays parts down one after another; each chain has its own.
type filler struct {
	*floor
	own      map[[2]int]*nofit // what it has asked the floor for
	near     []standing
	start    map[[2]int]int  // shape and piece: columns before it are full
	hopeless map[[2]int]bool // shape and piece: there is no room left
}

// standing is what a new shape must keep off.
type standing struct {
	fit *nofit
	col int
	y   float64
}

func newFiller(f *floor) *filler {
	return &filler{floor: f, own: map[[2]int]*nofit{}, start: map[[2]int]int{}, hopeless: map[[2]int]bool{}}
}

func (f *filler) fit(a, b int) *nofit {
	key := [2]int{a, b}
	n := f.own[key]
	if n == nil {
		n = f.floor.fit(a, b)
		f.own[key] = n
	}
	return n
}

// spot finds where a shape lies farthest left, and there lowest, in a window.
func (f *filler) spot(k, piece int, in window, down []lying, from int) (lying, bool) {
	s, b := f.shapes[k], &f.boards[piece]
	top := min(in.top, b.h) - s.h + hair
	if s.w > b.w+hair || top < 0 {
		return lying{}, false
	}
	f.near = f.near[:0]
	if len(b.obstacles) > 0 {
		f.near = append(f.near, standing{fit: f.fit(-1-piece, k)})
	}
	for _, l := range down {
		if l.shape >= 0 && l.piece == piece {
			f.near = append(f.near, standing{f.fit(l.shape, k), l.col, l.y})
		}
	}
	last := int((b.w - s.w + hair) / f.step)
	for col := max(from, int(math.Ceil(in.left/f.step))); col <= last; col++ {
		if y := f.lowest(col, in.low, top); y <= top {
			return lying{k, piece, col, min(y, max(0, b.h-s.h))}, true
		}
	}
	return lying{}, false
}

// lowest is the lowest free place in a column from low on, or one above top.
func (f *filler) lowest(col int, low, top float64) float64 {
	y := low
	for again := true; again; {
		again = false
		for i := range f.near {
			n := &f.near[i]
			for _, s := range n.fit.slice(col - n.col) {
				if y > s.lo+n.y+hair && y < s.hi+n.y-hair {
					y = s.hi + n.y
					if y > top {
						return y
					}
					again = true
				}
			}
		}
	}
	return y
}

// lay puts one part down on the first piece that has room: in the turn asked
// for within the window, in that turn anywhere, in any turn.
func (f *filler) lay(g gene, limits []window, down []lying) lying {
	for piece, shapes := range f.on[g.part] {
		if len(shapes) == 0 {
			continue
		}
		k := shapes[int(g.turn)%len(shapes)]
		key := [2]int{k, piece}
		if l, ok := f.spot(k, piece, limits[piece], down, f.start[key]); ok {
			f.start[key] = l.col
			return l
		}
		if l, ok := f.try(k, piece, down); ok {
			return l
		}
		for _, k := range shapes {
			if l, ok := f.try(k, piece, down); ok {
				return l
			}
		}
	}
	return lying{shape: -1}
}

func (f *filler) try(k, piece int, down []lying) (lying, bool) {
	key := [2]int{k, piece}
	if f.hopeless[key] {
		return lying{}, false
	}
	l, ok := f.spot(k, piece, window{top: math.Inf(1)}, down, 0)
	f.hopeless[key] = !ok
	return l, ok
}
