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

// fit gives the slices of shape b against shape a, or against board -1-a; a is no
// greater than b.
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
	defer f.mu.Unlock()
	if first := f.fits[key]; first != nil {
		return first // another chain was quicker
	}
	f.fits[key] = n
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
	own      map[[2]int]*known
	near     []standing
	here     []standing      // those of near that reach the columns looked at
	closed   []stretch       // where a shape can't lie in the column looked at
	start    map[[2]int]int  // shape and piece: columns before it are full
	hopeless map[[2]int]bool // shape and piece: there is no room left
	work     int             // what was done so far; see effort
}

func newFiller(f *floor) *filler {
	return &filler{floor: f, own: map[[2]int]*known{}, start: map[[2]int]int{}, hopeless: map[[2]int]bool{}}
}

// columns is how many columns are looked at with one list of what reaches them.
const columns = 24

// spot finds where a shape lies farthest left, and there lowest, in a window.
func (f *filler) spot(k, piece int, in window, down []lying, from int) (lying, bool) {
	s, b := f.shapes[k], &f.boards[piece]
	top := min(in.top, b.h) - s.h + hair
	if s.w > b.w+hair || top < 0 {
		return lying{}, false
	}
	f.near = f.near[:0]
	if len(b.obstacles) > 0 {
		f.keep(-1-piece, k, 0, 0)
	}
	for _, l := range down {
		if l.shape >= 0 && l.piece == piece {
			f.keep(l.shape, k, l.col, l.y)
		}
	}
	last := int((b.w - s.w + hair) / f.step)
	begin := max(from, int(math.Ceil(in.left/f.step)))
	for col := begin; col <= last; col++ {
		if (col-begin)%columns == 0 {
			f.reaching(col, col+columns-1)
		}
		if y := f.lowest(col, in.low, top); y <= top {
			return lying{k, piece, col, min(y, max(0, b.h-s.h))}, true
		}
	}
	return lying{}, false
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
