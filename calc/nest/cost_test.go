package nest

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"chape/calc/curve"
)

// two is a floor with two bare pieces, 200 × 100 and 300 × 100, columns 1 mm apart,
// for parts of 40 × 20 and 30 × 30 as drawn.
func two(t *testing.T) *filler {
	t.Helper()
	k := Task{Parts: []Part{one(Rect(40, 20), 2, Body), one(Rect(30, 30), 1, Body)}, Pieces: []Piece{
		{Outline: Rect(200, 100), Thickness: 3}, {Outline: Rect(300, 100), Thickness: 3}}}
	return newFiller(newFloor(k, 1))
}

// asDrawn is the shape of a part in the turn 0.
func (f *filler) asDrawn(part int) int {
	return slices.IndexFunc(f.shapes, func(s *shape) bool { return s.part == part && s.angle == 0 && !s.turned })
}

// By hand: a rectangle from (10, 5) to (90, 45) on the first piece, 80 × 40; a second
// piece costs its rectangle, 30 × 30, and its whole area; a part left out a hundred
// times its own.
func TestCostByHand(t *testing.T) {
	f := two(t)
	e := newExtents(f, nil, nil)
	if got := e.cost(f); got != 0 {
		t.Errorf("nothing costs %v", got)
	}
	small, square := f.asDrawn(0), f.asDrawn(1)
	steps := []struct {
		g    gene
		l    lying
		want float64
	}{
		{gene{part: 0}, lying{small, 0, 10, 5}, 40 * 20},
		{gene{part: 0, copy: 1}, lying{small, 0, 50, 25}, 80 * 40},
		{gene{part: 1}, lying{square, 1, 7, 0}, 80*40 + 30*30 + 300*100},
		{gene{part: 1}, lying{shape: -1}, 80*40 + 30*30 + 300*100 + 100*900},
	}
	for i, s := range steps {
		e.add(f, s.g, s.l)
		if got := e.cost(f); math.Abs(got-s.want) > 1e-9 {
			t.Errorf("after %d parts the cost is %v, want %v", i+1, got, s.want)
		}
	}
	// The second piece alone is the first that is begun: it costs its rectangle only.
	e = newExtents(f, []gene{{part: 1}}, []lying{{square, 1, 7, 0}})
	if got := e.cost(f); got != 900 {
		t.Errorf("a square on the second piece alone costs %v, want 900", got)
	}
}

// One part more never makes a placing cheaper, wherever it lies.
func TestCostNeverFalls(t *testing.T) {
	f, r := two(t), rand.New(rand.NewPCG(9, 1))
	for range 50 {
		e, was := newExtents(f, nil, nil), 0.0
		for range 12 {
			part := r.IntN(2)
			l := lying{f.asDrawn(part), r.IntN(2), r.IntN(150), 70 * r.Float64()}
			if r.IntN(5) == 0 {
				l.shape = -1
			}
			e.add(f, gene{part: part}, l)
			now := e.cost(f)
			if now < was-1e-9 {
				t.Fatalf("%+v brings the cost from %v to %v", l, was, now)
			}
			was = now
		}
	}
}

// Bottom-left by hand: the first part at the origin, the next above it as far left,
// and where the window ends, beside it.
func TestSpotIsFarthestLeftThenLowest(t *testing.T) {
	f := two(t)
	small := f.asDrawn(0)
	var down []lying
	for i, want := range []struct{ x, y float64 }{{0, 0}, {0, 20}, {40, 0}, {40, 20}, {80, 0}} {
		l, ok := f.spot(small, 0, window{top: 45}, down, 0)
		// Outlines that are held against each other stand off by what they were made coarser.
		if x := float64(l.col) * f.step; !ok || x < want.x || x > want.x+2.5 || l.y < want.y-1e-9 || l.y > want.y+1.5 {
			t.Errorf("part %d lies at %v, %v (%v), want %v, %v", i+1, x, l.y, ok, want.x, want.y)
		}
		down = append(down, l)
	}
	if l, ok := f.spot(small, 0, window{left: 120, low: 30, top: 60}, nil, 0); !ok || l.col != 120 || l.y != 30 {
		t.Errorf("in a window from 120, 30 it lies at %+v (%v)", l, ok)
	}
	if _, ok := f.spot(small, 0, window{top: 19.9}, nil, 0); ok {
		t.Error("a part of 20 lies in a window of 19.9")
	}
	if l, ok := f.spot(small, 1, window{top: 100}, nil, 250); !ok || l.col != 250 {
		t.Errorf("from column 250 on it lies at %+v (%v)", l, ok)
	}
	if _, ok := f.spot(small, 1, window{top: 100}, nil, 261); ok {
		t.Error("it hangs over the end of the leather")
	}
}

// A change leaves every part in the order once, and windows on the leather; laying
// anew from where it begins comes to what laying all anew does.
func TestChangesKeepTheParts(t *testing.T) {
	k := readTasks(t)[16].asTask()
	k.Pieces[0].Outline = curve.Line{{}, {X: 500}, {X: 620, Y: 180}, {X: 400, Y: 420}, {Y: 380}}
	f, r := newFiller(newFloor(k, 4)), rand.New(rand.NewPCG(10, 1))
	p := f.largestFirst()
	f.carryOut(p, 0, math.Inf(1))
	for i := range 120 {
		at := f.change(p, r, i%3 > 0)
		seen := map[[2]int]bool{}
		for _, g := range p.order {
			seen[[2]int{g.part, g.copy}] = true
		}
		if len(seen) != len(p.order) {
			t.Fatalf("change %d: %d parts in an order of %d", i, len(seen), len(p.order))
		}
		for j, w := range p.limits {
			if b := f.boards[j]; w.left < 0 || w.low < 0 || w.top <= 0 || w.top > b.h || w.left > b.w || w.low > b.h {
				t.Fatalf("change %d: a window %+v on leather of %v × %v", i, w, b.w, b.h)
			}
		}
		f.carryOut(p, at, math.Inf(1))
		anew := p.clone()
		f.carryOut(anew, 0, math.Inf(1))
		if anew.cost != p.cost || !slices.Equal(anew.down, p.down) {
			t.Fatalf("change %d, laid from part %d on: cost %v, laid anew %v", i, at+1, p.cost, anew.cost)
		}
	}
}

// Over its bound a laying is given up at an endless cost; a climb never ends above
// where it began.
func TestClimb(t *testing.T) {
	k := readTasks(t)[3].asTask()
	f := newFiller(newFloor(k, 4))
	p := f.largestFirst()
	f.carryOut(p, 0, math.Inf(1))
	start := p.cost
	given := p.clone()
	if f.carryOut(given, 0, start*0.9); !math.IsInf(given.cost, 1) {
		t.Errorf("over its bound it costs %v", given.cost)
	}
	told := 0
	best := f.climb(p, 60, rand.New(rand.NewPCG(11, 1)), true, func(b *plan) bool { told++; return b.cost <= start })
	if best.cost > start || told != fewest {
		t.Errorf("a climb with no work left told %d times went from %v to %v, want the fewest tries, %d", told, start, best.cost, fewest)
	}
	told = 0
	until := f.work + 300_000
	f.climb(p, until, rand.New(rand.NewPCG(11, 1)), true, func(*plan) bool { told++; return true })
	if told <= fewest || f.work < until || f.work > until+100_000 {
		t.Errorf("%d tries ended at %d of work, want it just over %d", told, f.work, until)
	}
	if stopped := f.climb(p, 60, rand.New(rand.NewPCG(11, 1)), true, func(*plan) bool { return false }); stopped.cost > start {
		t.Errorf("broken off at once it costs %v", stopped.cost)
	}
}

// Twice the gap, and a piece a tenth smaller, never take in more parts; a part more
// never makes the rectangles smaller than the parts.
func TestPlacingIsMonotone(t *testing.T) {
	for _, i := range []int{0, 4, 9} {
		k := readTasks(t)[i].asTask()
		whole := place(context.Background(), k, some(30), nil)
		var area float64
		for _, p := range whole.Placements {
			area += math.Abs(k.Parts[p.Part].Outline.Area())
		}
		if whole.Rectangle() < area || math.Abs(whole.Yield()-area/whole.Rectangle()) > 1e-9 {
			t.Errorf("task %d: parts of %v in a rectangle of %v, yield %v", i, area, whole.Rectangle(), whole.Yield())
		}
		lo, hi := k.Pieces[0].Outline.Bounds()
		k.Pieces[0].Outline = Rect((hi.X-lo.X)/4, (hi.Y-lo.Y)/4)
		if small := place(context.Background(), k, some(30), nil); len(small.Placements) > len(whole.Placements) || small.Fits() {
			t.Errorf("task %d: %d parts on a sixteenth of the leather, %d on the whole", i, len(small.Placements), len(whole.Placements))
		}
	}
}
