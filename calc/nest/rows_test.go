package nest

import (
	"math"
	"slices"
	"testing"
)

// box is the upright box round a part, mm.
type box struct{ w, h float64 }

// bestRows is the smallest rectangle that rows of boxes come to, over every
// order of the boxes, every quarter turn and every length of row that the piece
// has room for: each box goes into the first row that has room for it.
func bestRows(boxes []box, piece [2]float64, gap float64) float64 {
	best := math.Inf(1)
	for _, limit := range rowLimits(boxes, piece[0]) {
		everyOrder(boxes, make([]bool, len(boxes)), nil, func(order []box) {
			if a, ok := inRows(order, limit, piece[1], gap, best); ok {
				best = min(best, a)
			}
		})
	}
	return best
}

// rowLimits are thirty lengths of row from the shortest that takes the longest
// box to that of the piece.
func rowLimits(boxes []box, most float64) []float64 {
	least := 0.0
	for _, b := range boxes {
		least = max(least, min(b.w, b.h))
	}
	var l []float64
	for i := range 30 {
		l = append(l, least+(most-least)*float64(i)/29)
	}
	return l
}

// everyOrder visits every order and turn once; boxes alike are one.
func everyOrder(boxes []box, used []bool, order []box, visit func([]box)) {
	if len(order) == len(boxes) {
		visit(order)
		return
	}
	for i, b := range boxes {
		if used[i] || i > 0 && boxes[i-1] == b && !used[i-1] {
			continue
		}
		used[i] = true
		everyOrder(boxes, used, append(order, b), visit)
		if b.w != b.h {
			everyOrder(boxes, used, append(order, box{b.h, b.w}), visit)
		}
		used[i] = false
	}
}

// inRows lays boxes into rows by first fit and gives the area of the rectangle
// round them all.
func inRows(boxes []box, limit, high, gap, best float64) (float64, bool) {
	var rows [16]box
	n := 0
	for _, b := range boxes {
		if b.w > limit {
			return 0, false
		}
		i := 0
		for i < n && rows[i].w+gap+b.w > limit {
			i++
		}
		if i == n {
			rows[n] = b
			n++
			continue
		}
		rows[i] = box{rows[i].w + gap + b.w, max(rows[i].h, b.h)}
	}
	w, h := 0.0, -gap
	for _, r := range rows[:n] {
		w, h = max(w, r.w), h+r.h+gap
	}
	return w * h, h <= high && w*h < best
}

func (k task) boxes() []box {
	var bs []box
	for _, s := range k.Parts {
		lo, hi := s.outline().Bounds()
		for range s.Count {
			bs = append(bs, box{hi.X - lo.X, hi.Y - lo.Y})
		}
	}
	return bs
}

// Four boxes worked by hand: 4×2 beside 4×2 over 8×1 and 8×1 fill 8×4.
func TestBestRowsByHand(t *testing.T) {
	boxes := []box{{8, 1}, {4, 2}, {1, 8}, {4, 2}}
	slices.SortFunc(boxes, func(a, b box) int { return int(a.w*10 + a.h - b.w*10 - b.h) })
	if got := bestRows(boxes, [2]float64{8, 20}, 0); got != 32 {
		t.Errorf("bestRows = %v, want 32", got)
	}
	if got, want := bestRows([]box{{3, 2}, {3, 2}}, [2]float64{20, 20}, 1), 14.0; got != want {
		t.Errorf("bestRows with a gap = %v, want %v: 7×2 is less than 3×5", got, want)
	}
}

func TestTasksAreTwenty(t *testing.T) {
	ts := readTasks(t)
	if len(ts) != 20 {
		t.Fatalf("%d tasks, want 20", len(ts))
	}
	for _, k := range ts {
		if len(k.boxes()) < 3 {
			t.Errorf("%s has fewer than three parts", k.Name)
		}
		for _, s := range k.Parts {
			if l := s.outline(); l.Area() <= 0 || s.Count < 1 {
				t.Errorf("%s: %s has area %v, count %d", k.Name, s.Shape, l.Area(), s.Count)
			}
		}
	}
}
