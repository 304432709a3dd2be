package nest

import (
	"context"
	"math"
	"math/rand/v2"
	"sync"

	"chape/calc/curve"
)

// Progress is how far a search is.
type Progress struct {
	Share      float64 // of its work that is done
	Placed, Of int     // parts that have a place in the best placing so far
	Rectangle  float64 // its area, mm²
}

// chains is how many climbs run side by side, whatever the machine has, so that
// the answer is the same everywhere.
const chains = 4

// effort is how much work one chain is given. Work is counted, not timed, in what a
// column costs for each part that reaches it: on an odd piece with flaws and grain a
// try costs more, so there are fewer of them; how many is fixed by the task. It comes
// to about a second of a processor for six parts, to ten for forty.
func effort(parts int) int { return 5_000_000 * (parts + 1) }

// Place looks for a good placing: as many parts as there is room for, on as few
// pieces, in as small rectangles as it finds. told, which may be nil, is called
// now and then, never twice at once. When the context ends the best so far is
// given, and said to be stopped. The error is that of Validate.
func Place(ctx context.Context, t Task, told func(Progress)) (Result, error) {
	if err := t.Validate(); err != nil {
		return Result{}, err
	}
	return place(ctx, t, effort, told), nil
}

// place is Place for a task that will do, with the work given.
func place(ctx context.Context, t Task, effort func(parts int) int, told func(Progress)) Result {
	s := &search{ctx: ctx, told: told, best: math.Inf(1)}
	t, missing := ownThickness(t)
	for _, p := range t.Parts {
		s.parts += p.Count
	}
	if s.parts == 0 {
		return Result{Missing: missing}
	}
	n := effort(s.parts)
	s.all = chains * (n + n/fineShare)
	f, best := s.run(t, n)
	r := f.result(best)
	r.Missing = append(missing, r.Missing...)
	r.Stopped = ctx.Err() != nil
	return r
}

// ownThickness takes out parts for which no piece is thick or thin enough.
func ownThickness(t Task) (Task, []Missing) {
	parts := append([]Part{}, t.Parts...)
	var missing []Missing
	for i, p := range parts {
		some := false
		for _, piece := range t.Pieces {
			some = some || alike(piece.Thickness, p.Thickness)
		}
		if !some && p.Count > 0 {
			missing = append(missing, Missing{i, p.Count, true})
			parts[i].Count = 0
		}
	}
	t.Parts = parts
	return t, missing
}

// search is what the chains tell each other of.
type search struct {
	ctx   context.Context
	told  func(Progress)
	parts int
	all   int // the work there is

	mu   sync.Mutex
	done int
	best float64
	last Progress
}

// Columns lie close for small parts, wider for many; the last of the work is done with
// finer ones.
const (
	finer     = 4
	fineShare = 8
)

func (s *search) run(t Task, n int) (*floor, *plan) {
	var area float64
	for _, p := range t.Parts {
		area += float64(p.Count) * math.Abs(p.Outline.Area())
	}
	step := min(2, max(0.5, math.Sqrt(area)/250))
	rough := newFloor(t, step)
	plans := s.side(rough, n, true, func(int) *plan { return rough.largestFirst() })
	if s.ctx.Err() != nil {
		return rough, least(plans)
	}
	rough.fits = nil // only its shapes and boards are asked for from here on
	closer := newFloor(t, step/finer)
	again := s.side(closer, n/fineShare, false, func(i int) *plan { return plans[i].clone() })
	if a, b := least(plans), least(again); b.cost <= a.cost {
		return closer, b
	}
	return rough, least(plans)
}

// side runs the chains side by side.
func (s *search) side(f *floor, n int, turning bool, begin func(int) *plan) []*plan {
	plans := make([]*plan, chains)
	var wg sync.WaitGroup
	for i := range plans {
		wg.Go(func() {
			fill := newFiller(f)
			r := rand.New(rand.NewPCG(uint64(i), 1))
			p := begin(i)
			fill.carryOut(p, 0, math.Inf(1))
			plans[i] = fill.climb(p, n, r, turning, s.tell(fill))
		})
	}
	wg.Wait()
	return plans
}

func least(ps []*plan) *plan {
	best := ps[0]
	for _, p := range ps[1:] {
		if p.cost < best.cost {
			best = p
		}
	}
	return best
}

// often is the work after which a chain tells how far it is: some hundredths of a second.
const often = 500_000

// tell passes on now and then how far the search is, and answers whether to go on.
func (s *search) tell(f *filler) func(*plan) bool {
	told := 0
	return func(best *plan) bool {
		if f.work-told < often {
			return s.ctx.Err() == nil
		}
		s.mu.Lock()
		defer s.mu.Unlock()
		s.done += f.work - told
		told = f.work
		if best.cost < s.best {
			s.best = best.cost
			s.last = f.progress(best)
		}
		s.last.Share, s.last.Of = min(1, float64(s.done)/float64(s.all)), s.parts
		if s.told != nil {
			s.told(s.last)
		}
		return s.ctx.Err() == nil
	}
}

func (f *floor) progress(p *plan) Progress {
	r := f.result(p)
	return Progress{Placed: len(r.Placements), Rectangle: r.Rectangle()}
}

// result says a placing in the task's own terms.
func (f *floor) result(p *plan) Result {
	var r Result
	uses := make([]Use, len(f.boards))
	at := map[[2]int]Placement{}
	for i, l := range p.down {
		g := p.order[i]
		if l.shape < 0 {
			continue
		}
		s, b := f.shapes[l.shape], f.boards[l.piece]
		corner := b.low.Add(curve.Vec{X: float64(l.col) * f.step, Y: l.y})
		at[[2]int{g.part, g.copy}] = Placement{Part: g.part, Copy: g.copy, Piece: l.piece,
			At: corner.Sub(s.low), Angle: s.angle, Turned: s.turned}
		uses[l.piece].add(corner, corner.Add(curve.Vec{X: s.w, Y: s.h}), f.area[g.part])
	}
	for i, part := range f.task.Parts {
		left := 0
		for c := range part.Count {
			if pl, ok := at[[2]int{i, c}]; ok {
				r.Placements = append(r.Placements, pl)
			} else {
				left++
			}
		}
		if left > 0 {
			r.Missing = append(r.Missing, Missing{Part: i, Count: left})
		}
	}
	for i, u := range uses {
		if u.Parts > 0 {
			u.Piece, u.Leather = i, f.boards[i].leather
			r.Uses = append(r.Uses, u)
		}
	}
	return r
}

func (u *Use) add(lo, hi curve.Vec, area float64) {
	if u.Parts == 0 {
		u.Lo, u.Hi = lo, hi
	}
	u.Lo = curve.Vec{X: min(u.Lo.X, lo.X), Y: min(u.Lo.Y, lo.Y)}
	u.Hi = curve.Vec{X: max(u.Hi.X, hi.X), Y: max(u.Hi.Y, hi.Y)}
	u.Parts += area
}
