package knife

import (
	"errors"
	"fmt"

	"gonum.org/v1/gonum/interp"

	"chape/calc/length"
)

// Profile is a knife as curves over x: it gives the section anywhere. Between
// two steps top, bottom and thickness each follow a monotone cubic
// (Fritsch–Butland): no overshoot, straight data stays straight.
//
// Sections are measured from the rule until Laid puts them on the fold line.
type Profile struct {
	runs []run
	line FoldLine
}

// run is a stretch without a step inside: the marks and what lies between.
type run struct {
	stations []Station
	spans    []span
}

// span is what lies between two neighbouring marks.
type span struct {
	x0, x1             float64
	top, bottom, thick cubic
	shape              Station // kind, bevel and round
	handle             bool    // counts as handle, not as edge
}

func (r *run) from() float64 { return r.spans[0].x0 }
func (r *run) to() float64   { return r.spans[len(r.spans)-1].x1 }

// NewProfile makes the curves. It refuses stations out of order, more than
// two at one place, a first station that is not at 0, and a step with no
// section between it and the next (or the end).
func NewProfile(k Knife) (*Profile, error) {
	st := k.Stations
	if len(st) < 2 {
		return nil, errors.New("a knife needs at least two marks: one at 0 and one at the butt")
	}
	if st[0].At != 0 {
		return nil, fmt.Errorf("mark 1 stands at %s: the first mark belongs at 0, the point",
			st[0].At.Exact(length.Millimetres))
	}
	p := &Profile{}
	start := 0
	for i := 1; i <= len(st); i++ {
		if i < len(st) && st[i].At < st[i-1].At {
			return nil, fmt.Errorf("mark %d stands before mark %d: sort the marks from the point to the butt", i+1, i)
		}
		if i < len(st) && st[i].At > st[i-1].At {
			continue
		}
		if i-start < 2 {
			return nil, fmt.Errorf("nothing lies between the steps at mark %d: at most two marks share a place, "+
				"and a step needs a mark further on", i)
		}
		r, err := newRun(st[start:i])
		if err != nil {
			return nil, err
		}
		p.runs = append(p.runs, r)
		start = i
	}
	p.tellHandle()
	return p, nil
}

// newRun fits the three curves over at least two stations in strict order.
func newRun(st []Station) (run, error) {
	r := run{stations: st, spans: make([]span, len(st)-1)}
	xs, ys := make([]float64, len(st)), make([]float64, len(st))
	fit := func(of func(Station) float64, into func(*span) *cubic) error {
		for i, s := range st {
			xs[i], ys[i] = s.At.MM(), of(s)
		}
		var f interp.FritschButland
		if err := f.Fit(xs, ys); err != nil {
			return err
		}
		for i := range r.spans {
			*into(&r.spans[i]) = newCubic(xs[i+1]-xs[i], ys[i], ys[i+1], f.PredictDerivative(xs[i]), f.PredictDerivative(xs[i+1]))
		}
		return nil
	}
	for i := range r.spans {
		r.spans[i].x0, r.spans[i].x1, r.spans[i].shape = st[i].At.MM(), st[i+1].At.MM(), shape(st[i])
	}
	return r, errors.Join(
		fit(func(s Station) float64 { return s.Top.MM() }, func(s *span) *cubic { return &s.top }),
		fit(func(s Station) float64 { return s.Bottom.MM() }, func(s *span) *cubic { return &s.bottom }),
		fit(func(s Station) float64 { return s.Thick.MM() }, func(s *span) *cubic { return &s.thick }),
	)
}

// tellHandle marks what counts as handle: what is no blade, from the first
// stretch of blade on. A thing without any blade has no handle.
func (p *Profile) tellHandle() {
	blade := false
	for i := range p.runs {
		for j := range p.runs[i].spans {
			s := &p.runs[i].spans[j]
			blade = blade || s.shape.Kind == Blade
			s.handle = blade && s.shape.Kind != Blade
		}
	}
}

// Before is the part of the knife that lies before x: at a step exactly there
// only the section on the point's side is left.
func (p *Profile) Before(x float64) *Profile {
	n := 1
	for n < len(p.runs) && p.runs[n].from() < x-same {
		n++
	}
	return &Profile{runs: p.runs[:n], line: p.line}
}

// same is the distance below which two places are one, mm.
const same = 1e-9

// Length is where the knife ends, mm.
func (p *Profile) Length() float64 { return p.runs[len(p.runs)-1].to() }

// HandleFront is where the handle begins: the first place behind the blade
// that is no blade, be it bolster, guard or grip. Not has: there is none.
func (p *Profile) HandleFront() (at float64, has bool) {
	for _, r := range p.runs {
		for _, s := range r.spans {
			if s.handle {
				return s.x0, true
			}
		}
	}
	return 0, false
}

// Breaks are the places where the section changes at once: the steps, and the
// marks where kind, bevel or round change. Ascending; the ends not included.
func (p *Profile) Breaks() []float64 {
	var at []float64
	for i := range p.runs {
		sp := p.runs[i].spans
		if i > 0 {
			at = append(at, sp[0].x0)
		}
		for j := 1; j < len(sp); j++ {
			if sp[j].shape != sp[j-1].shape {
				at = append(at, sp[j].x0)
			}
		}
	}
	return at
}

// Steps are the places where two marks stand together, ascending.
func (p *Profile) Steps() []float64 {
	var at []float64
	for i := 1; i < len(p.runs); i++ {
		at = append(at, p.runs[i].from())
	}
	return at
}

// shape is what a stretch takes from its station nearer the point.
func shape(s Station) Station { return Station{Kind: s.Kind, Bevel: s.Bevel, Round: s.Round} }

// Marks are the places of all stations, ascending, doubled at steps.
func (p *Profile) Marks() []float64 {
	var at []float64
	for _, r := range p.runs {
		for _, s := range r.stations {
			at = append(at, s.At.MM())
		}
	}
	return at
}

// Sections appends the section at x to dst; at a step both apply, the one
// nearer the point first. At a mark where only the shape changes it is that of
// the stretch towards the handle. Outside the knife nothing is appended.
func (p *Profile) Sections(dst []Section, x float64) []Section {
	for i := range p.runs {
		r := &p.runs[i]
		if x < r.from() {
			break
		}
		if x <= r.to() {
			dst = append(dst, r.section(x, -p.line.At(x)))
		}
	}
	return dst
}

// section is the section of the run at x, which lies on it, moved by du towards
// the edge.
func (r *run) section(x, du float64) Section {
	j := 0 // the stretch that holds x
	for j < len(r.spans)-1 && r.spans[j].x1 <= x {
		j++
	}
	sp := &r.spans[j]
	t := x - sp.x0
	top := sp.top.at(t)
	bottom := max(sp.bottom.at(t), top) // a hair of rounding where the depth is 0
	return Section{
		Kind: sp.shape.Kind, Top: top + du, Bottom: bottom + du, Thick: sp.thick.at(t),
		Bevel: sp.shape.Bevel, Round: sp.shape.Round.MM(), Handle: sp.handle,
	}
}
