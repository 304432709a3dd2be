package nest

import (
	"context"
	"flag"
	"math"
	"reflect"
	"runtime"
	"runtime/metrics"
	"slices"
	"strings"
	"testing"

	"chape/calc/curve"
)

var full = flag.Bool("nest.full", false, "place the twenty tasks with all the work, not with a little")

// asTask gives the parts of a committed task to the search.
func (k task) asTask() Task {
	kinds := map[string]Kind{"body": Body, "welt": Welt, "strap": Strap, "plain": Added}
	t := Task{Gap: k.Gap, Pieces: []Piece{{Outline: Rect(k.Piece[0], k.Piece[1]), Thickness: 3}}}
	for _, s := range k.Parts {
		t.Parts = append(t.Parts, Part{Name: s.Shape, Kind: kinds[s.Shape], Outline: s.outline(), Count: s.Count, Thickness: 3})
	}
	return t
}

// some is a little of the work, in thousands.
func some(thousands int) func(int) int {
	if *full {
		return effort
	}
	return func(int) int { return 1000 * thousands }
}

// The aim is 8 %; with a tenth of the work it is passed by far.
func TestLessLeatherThanRows(t *testing.T) {
	var gains []float64
	for _, k := range readTasks(t) {
		task := k.asTask()
		r := place(context.Background(), task, some(80), nil)
		check(t, k.Name, task, r)
		rows := bestRows(k.boxes(), k.Piece, k.Gap)
		if !r.Fits() {
			t.Errorf("%s: missing %v", k.Name, r.Missing)
		}
		gains = append(gains, 1-r.Rectangle()/rows)
		t.Logf("%-24s rows %7.0f mm², placed %7.0f: %4.1f %% less, yield %.2f", k.Name, rows, r.Rectangle(), 100*gains[len(gains)-1], r.Yield())
	}
	slices.Sort(gains)
	median := (gains[9] + gains[10]) / 2
	t.Logf("median %.1f %%, least %.1f %%", 100*median, 100*gains[0])
	if median < 0.08 {
		t.Errorf("median %.3f, want 0.08 or more", median)
	}
}

func one(outline curve.Line, count int, kind Kind) Part {
	return Part{Name: kind.String(), Kind: kind, Outline: outline, Count: count, Thickness: 3}
}

// What is as large as its leather fits, also after a quarter turn; a tenth less
// does not do. Two with a gap of 3 need 123 and a little.
func TestExactFit(t *testing.T) {
	for _, c := range []struct {
		w, h  float64
		count int
		fits  bool
	}{{100, 60, 1, true}, {60, 100, 1, true}, {99.9, 60, 1, false}, {100.5, 123.6, 2, true}, {100, 122.9, 2, false}} {
		k := Task{Gap: 3, Parts: []Part{one(Rect(100, 60), c.count, Added)}, Pieces: []Piece{{Outline: Rect(c.w, c.h), Thickness: 3}}}
		r := place(context.Background(), k, some(40), nil)
		check(t, "exact", k, r)
		if r.Fits() != c.fits {
			t.Errorf("%d of 100 × 60 on %v × %v: fits %v, want %v", c.count, c.w, c.h, r.Fits(), c.fits)
		}
	}
}

// Two wedges of 200 × 60, 20 at the thin end, lie head to tail: 200 × 80.
func TestHeadToTail(t *testing.T) {
	wedge := curve.Line{{}, {X: 200}, {X: 200, Y: 60}, {Y: 20}}
	k := Task{Parts: []Part{one(wedge, 2, Added)}, Pieces: []Piece{{Outline: Rect(500, 400), Thickness: 3}}}
	r := place(context.Background(), k, some(300), nil)
	check(t, "wedges", k, r)
	if got, least := r.Rectangle(), 200*80.0; got < least || got > least*1.03 {
		t.Errorf("rectangle %v, want just over %v", got, least)
	}
}

// Only a welt may lie with its grain side down.
func TestOnlyAWeltIsTurnedOver(t *testing.T) {
	ell := curve.Line{{}, {X: 120}, {X: 120, Y: 15}, {X: 15, Y: 15}, {X: 15, Y: 60}, {Y: 60}}
	for _, kind := range []Kind{Body, Welt, Strap, Added} {
		k := Task{Parts: []Part{one(ell, 4, kind)}, Pieces: []Piece{{Outline: Rect(400, 300), Thickness: 3}}}
		check(t, kind.String(), k, place(context.Background(), k, some(60), nil))
		f := newFloor(k, 1)
		over := slices.ContainsFunc(f.shapes, func(s *shape) bool { return s.turned })
		if over != (kind == Welt) {
			t.Errorf("%v turned over: %v", kind, over)
		}
	}
}

func TestThicknessAndNextPiece(t *testing.T) {
	thin := one(Rect(50, 50), 1, Welt)
	thin.Thickness = 2
	k := Task{Parts: []Part{one(Rect(90, 50), 3, Body), thin}, Pieces: []Piece{
		{Outline: Rect(100, 110), Thickness: 3}, {Outline: Rect(100, 60), Thickness: 3}}}
	r := place(context.Background(), k, some(40), nil)
	check(t, "two pieces", k, r)
	if want := []Missing{{Part: 1, Count: 1, Thickness: true}}; !reflect.DeepEqual(r.Missing, want) {
		t.Errorf("missing %v, want %v", r.Missing, want)
	}
	if len(r.Uses) != 2 || len(r.Placements) != 3 {
		t.Errorf("%d placed on %d pieces, want 3 on 2", len(r.Placements), len(r.Uses))
	}
}

// The grain at 30°, the fold within 5° of it: what fits only along x does not fit.
func TestGrain(t *testing.T) {
	p := one(Rect(195, 30), 1, Strap)
	p.Along = true
	k := Task{Parts: []Part{p}, Pieces: []Piece{{Outline: Rect(200, 60), Thickness: 3, Fixed: true, Grain: math.Pi / 6, Within: math.Pi / 36}}}
	if r := place(context.Background(), k, some(20), nil); r.Fits() {
		t.Error("a strap lies across the grain")
	}
	k.Pieces[0].Grain = math.Pi / 45
	r := place(context.Background(), k, some(20), nil)
	check(t, "grain", k, r)
	if !r.Fits() {
		t.Error("a strap within 4° of x does not lie along x")
	}
}

func TestSameAnswerEachTime(t *testing.T) {
	k := readTasks(t)[16].asTask()
	a := place(context.Background(), k, some(60), nil)
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1)) // nor does it hang on which chain is quicker
	b := place(context.Background(), k, some(60), nil)
	if !reflect.DeepEqual(a, b) {
		t.Errorf("two searches differ: %v and %v mm²", a.Rectangle(), b.Rectangle())
	}
}

// Broken off after the first word of progress, the placing is whole.
func TestBrokenOff(t *testing.T) {
	k := readTasks(t)[12].asTask()
	ctx, stop := context.WithCancel(context.Background())
	calls := 0
	r, err := Place(ctx, k, func(p Progress) {
		calls++
		if p.Share <= 0 || p.Share > 1 || p.Of != 5 {
			t.Errorf("progress %+v", p)
		}
		stop()
	})
	if err != nil || !r.Stopped || !r.Fits() || calls == 0 || calls > 2*chains {
		t.Errorf("stopped %v, fits %v, %d calls, %v", r.Stopped, r.Fits(), calls, err)
	}
	check(t, "broken off", k, r)
}

// Of many parts a change takes long: how far the search is is told by what was done, not by
// the number of changes.
func TestProgressByWork(t *testing.T) {
	k := forty(t)
	k.Parts = k.Parts[:18]
	calls := 0
	place(context.Background(), k, func(int) int { return 1 }, func(Progress) { calls++ })
	if calls < chains {
		t.Errorf("%d changes a chain, and told %d times", fewest, calls)
	}
}

// A welt moved against a body may go up as far as the body moved against the welt may go
// down: the slices of one are those of the other, seen from the other side.
func TestSlicesFromTheOtherSide(t *testing.T) {
	k := readTasks(t)[1].asTask()
	f := newFloor(k, 1)
	for _, s := range f.shapes {
		s.make(f.drawn)
	}
	a, b := f.shapes[f.on[0][0][5]], f.shapes[f.on[1][0][9]]
	ab, ba := noFit(a.grown, b.grown, 1), noFit(b.grown, a.grown, 1)
	met := 0
	for col := ab.first; col < ab.first+ab.slices; col++ {
		i, j := col-ab.first, -col-ba.first
		s, u := ab.block(i / blockWide).one[i%blockWide], ba.block(j / blockWide).one[j%blockWide]
		if ab.block(i/blockWide).more != nil || s == none {
			continue
		}
		met++
		if math.Abs(s.lo+u.hi) > 1e-9 || math.Abs(s.hi+u.lo) > 1e-9 {
			t.Fatalf("column %d: %v from one side, %v from the other", col, s, u)
		}
	}
	if met < 50 {
		t.Errorf("only %d stretches were compared", met)
	}
}

func TestNothingToPlace(t *testing.T) {
	r, err := Place(context.Background(), Task{}, nil)
	if err != nil || !r.Fits() || r.Yield() != 0 || len(r.Placements) != 0 {
		t.Errorf("Place(nothing) = %+v, %v", r, err)
	}
	r, err = Place(context.Background(), Task{Parts: []Part{one(Rect(9, 9), 2, Body)}}, nil)
	if want := []Missing{{0, 2, true}}; err != nil || !reflect.DeepEqual(r.Missing, want) {
		t.Errorf("without leather %+v, %v", r, err)
	}
}

func TestValidate(t *testing.T) {
	part, piece := one(Rect(10, 10), 1, Body), Piece{Name: "offcut", Outline: Rect(100, 100), Thickness: 3}
	bow := curve.Line{{}, {X: 50, Y: 50}, {X: 50}, {Y: 40}}
	for _, c := range []struct {
		change func(*Task)
		want   string
	}{
		{func(k *Task) {}, ""},
		{func(k *Task) { k.Gap = math.NaN() }, "gap of NaN"},
		{func(k *Task) { k.Parts[0].Outline = bow }, "crosses itself"},
		{func(k *Task) { k.Parts[0].Outline = bow[:2] }, "2 corners"},
		{func(k *Task) { k.Parts[0].Count = 201 }, "too many"},
		{func(k *Task) { k.Parts[0].Thickness = 0 }, "thickness"},
		{func(k *Task) { k.Pieces[0].Outline = curve.Line{{}, {X: 5}, {X: 9}} }, "without area"},
		{func(k *Task) { k.Pieces[0].Outline = Rect(math.Inf(1), 3) }, "give places within"},
		{func(k *Task) { k.Pieces[0].Flaws = []curve.Line{bow} }, `"offcut", flaw 1`},
		{func(k *Task) { k.Pieces[0].Within = -1 }, "angle of 0 or more"},
	} {
		k := Task{Parts: []Part{part}, Pieces: []Piece{piece}}
		c.change(&k)
		_, err := Place(context.Background(), k, func(Progress) {})
		if c.want == "" != (err == nil) || err != nil && !strings.Contains(err.Error(), c.want) {
			t.Errorf("error %v, want %q", err, c.want)
		}
	}
}

// oddPiece is an offcut, invented, of many corners with flaws, or a hide of its shape k
// times as large; the grain counts.
func oddPiece(k float64) Piece {
	p := Piece{Thickness: 3, Fixed: true, Grain: 0.2, Within: 0.25}
	for i := range 36 {
		at := 2 * math.Pi * float64(i) / 36
		far := k * (230 + 22*math.Sin(3*at) + 9*math.Sin(11*at))
		p.Outline = append(p.Outline, curve.Vec{X: 1.3 * far * math.Cos(at), Y: far * math.Sin(at)})
	}
	p.Flaws = []curve.Line{Round(curve.Vec{X: 60 * k, Y: 40 * k}, 12), Round(curve.Vec{X: -150 * k, Y: -30 * k}, 9)}
	return p
}

// benchmarkPlace tells the processor's time as well: the chains run side by side.
func benchmarkPlace(b *testing.B, k Task) {
	from := processorTime()
	for b.Loop() {
		if r, err := Place(context.Background(), k, nil); err != nil || !r.Fits() {
			b.Fatal(err, r.Missing)
		}
	}
	b.ReportMetric((processorTime()-from)/float64(b.N), "user-s/op")
}

// processorTime is what this program has taken, in seconds, on any system: Go tells it as
// it was at the last collection, so there is one first.
func processorTime() float64 {
	runtime.GC()
	s := []metrics.Sample{{Name: "/cpu/classes/user:cpu-seconds"}}
	metrics.Read(s)
	return s[0].Value.Float64()
}

func BenchmarkSix(b *testing.B) { benchmarkPlace(b, readTasks(b)[16].asTask()) }

func BenchmarkForty(b *testing.B) { benchmarkPlace(b, forty(b)) }

func BenchmarkOddSix(b *testing.B) { benchmarkPlace(b, onOdd(readTasks(b)[16].asTask(), 1)) }

func BenchmarkOddForty(b *testing.B) { benchmarkPlace(b, onOdd(forty(b), 2)) }

// onOdd has the parts cut from an odd piece; those that have a direction lie along its grain.
func onOdd(k Task, size float64) Task {
	k.Pieces = []Piece{oddPiece(size)}
	for i := range k.Parts {
		k.Parts[i].Along = k.Parts[i].Kind != Welt
	}
	return k
}

func forty(b testing.TB) Task {
	k := Task{Gap: 3, Pieces: []Piece{{Outline: Rect(1200, 700), Thickness: 3}}}
	ts := readTasks(b)
	for _, i := range []int{0, 1, 2, 3, 9, 12, 16, 18, 19} {
		k.Parts = append(k.Parts, ts[i].asTask().Parts...)
	}
	return k
}
