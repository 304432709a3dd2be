package raster

import (
	"math/rand/v2"
	"slices"
	"testing"
)

func heights(w, h int, most int, seed uint64) []uint8 {
	r := rand.New(rand.NewPCG(seed, 6))
	out := make([]uint8, w*h)
	for i := range out {
		out[i] = uint8(r.IntN(most + 1))
	}
	return out
}

// passes is how high the lowest place of the best way from a seed to each dot is: found by going over all dots again and again
// until nothing changes.
func passes(height []uint8, w int, seeds []int32) []int {
	out := make([]int, len(height))
	for i := range out {
		out[i] = -1
	}
	for _, s := range seeds {
		out[s] = int(height[s])
	}
	for again := true; again; {
		again = false
		for i := range out {
			for _, j := range []int{i - 1, i + 1, i - w, i + w} {
				if j < 0 || j >= len(out) || (j%w != i%w && j/w != i/w) {
					continue
				}
				if by := min(out[j], int(height[i])); by > out[i] {
					out[i], again = by, true
				}
			}
		}
	}
	return out
}

// Every dot is reached by the way whose lowest place is highest, and that place is named.
func TestReachAgainstAllWays(t *testing.T) {
	for seed := range uint64(12) {
		w, h := 3+int(seed), 11
		height := heights(w, h, []int{3, 9, 255}[seed%3], seed)
		seeds := []int32{0, int32(w*h - 1)}[:1+seed%2]
		least, strait := Reach(height, w, h, seeds)
		for i, want := range passes(height, w, seeds) {
			if int(least[i]) != want {
				t.Fatalf("seed %d: dot %d is reached at %d, want %d", seed, i, least[i], want)
			}
			if s := strait[i]; s < 0 || height[s] != least[i] {
				t.Fatalf("seed %d: the strait of dot %d is %d, whose height is not %d", seed, i, s, least[i])
			}
		}
	}
}

// The strait is where the way is narrowest: with that dot lowered, what lies behind is reached lower or another way.
func TestStraitHolds(t *testing.T) {
	const w, h = 12, 9
	height := heights(w, h, 200, 40)
	least, strait := Reach(height, w, h, []int32{0})
	for i := range height {
		s := strait[i]
		if s == 0 || least[i] == 0 {
			continue
		}
		lower := slices.Clone(height)
		lower[s] = 0
		if then, _ := Reach(lower, w, h, []int32{0}); then[i] >= least[i] {
			t.Errorf("dot %d is reached at %d through %d, and at %d without it", i, least[i], s, then[i])
		}
	}
}

// A dot goes to the seed from which the way to it stays higher, and every dot of some height to one; those of no height to none.
func TestGrow(t *testing.T) {
	for seed := range uint64(20) {
		w, h := 10, 8
		height := heights(w, h, 60, 70+seed)
		for i := range height {
			height[i]++
		}
		first, second := []int32{0, 1}, []int32{int32(w*h - 1)}
		a, b := passes(height, w, first), passes(height, w, second)
		for i, l := range Grow(height, w, h, first, second) {
			if a[i] > b[i] && l != 1 || b[i] > a[i] && l != 2 || l == 0 {
				t.Fatalf("seed %d: dot %d, reached at %d and %d, has label %d", seed, i, a[i], b[i], l)
			}
		}
	}
}

// By hand: a wall of no height with a door of height 1; the seeds meet at the wall, not in it.
func TestGrowStopsAtWalls(t *testing.T) {
	height := []uint8{
		9, 9, 0, 9, 9,
		9, 9, 0, 9, 9,
		9, 9, 0, 0, 0,
		9, 9, 1, 5, 9,
	}
	got := Grow(height, 5, 4, []int32{0}, []int32{4}, []int32{0})
	want := []uint8{
		1, 1, 0, 2, 2,
		1, 1, 0, 2, 2,
		1, 1, 0, 0, 0,
		1, 1, 1, 1, 1,
	}
	if !slices.Equal(got, want) {
		t.Errorf("labels %v, want %v", got, want)
	}
	if got := Grow(height, 5, 4); slices.Max(got) != 0 {
		t.Errorf("without seeds the labels are %v", got)
	}
}

// Water from the left reaches a basin through the lower of two straits, and two seeds meet at a ridge's lowest place.
func TestReachAndGrow(t *testing.T) {
	const w, h = 9, 5
	height := make([]uint8, w*h)
	for i := range height {
		height[i] = 50
		if i%w == 4 {
			height[i] = 0
		}
	}
	height[1*w+4], height[3*w+4] = 5, 9
	least, strait := Reach(height, w, h, []int32{0})
	if far := 2*w + 8; least[far] != 9 || strait[far] != 3*w+4 {
		t.Errorf("reached at %d through %d, want 9 through %d", least[far], strait[far], 3*w+4)
	}
	label := Grow(height, w, h, []int32{0}, []int32{8})
	if label[2*w] != 1 || label[2*w+8] != 2 || label[4] != 0 {
		t.Errorf("labels %v", label)
	}
}

// The queue hands out the highest first, whatever the order they came in, and then says that it is empty.
func TestQueue(t *testing.T) {
	var q queue
	in := heights(1, 200, 255, 9)
	for i, v := range in {
		q.push(int32(i), v)
	}
	slices.Sort(in)
	slices.Reverse(in)
	for k, want := range in {
		if _, got, ok := q.pop(); !ok || got != want {
			t.Fatalf("the %dth is %d (%v), want %d", k, got, ok, want)
		}
		if k == 50 { // a late one, lower than what is left at the top
			q.push(0, 0)
		}
	}
	if _, got, ok := q.pop(); !ok || got != 0 {
		t.Errorf("the late one is %d, %v", got, ok)
	}
	if _, _, ok := q.pop(); ok {
		t.Error("an empty queue hands something out")
	}
}
