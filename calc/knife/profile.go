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
type Profile struct {
	runs []run
}

// run is a stretch without a step inside.
type run struct {
	stations           []Station
	top, bottom, thick interp.FritschButland
}

func (r *run) from() float64 { return r.stations[0].At.MM() }
func (r *run) to() float64   { return r.stations[len(r.stations)-1].At.MM() }

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
	return p, nil
}

// newRun fits the three curves over at least two stations in strict order.
func newRun(st []Station) (run, error) {
	r := run{stations: st}
	xs, ys := make([]float64, len(st)), make([]float64, len(st))
	fit := func(f *interp.FritschButland, of func(Station) float64) error {
		for i, s := range st {
			xs[i], ys[i] = s.At.MM(), of(s)
		}
		return f.Fit(xs, ys)
	}
	err := errors.Join(
		fit(&r.top, func(s Station) float64 { return s.Top.MM() }),
		fit(&r.bottom, func(s Station) float64 { return s.Bottom.MM() }),
		fit(&r.thick, func(s Station) float64 { return s.Thick.MM() }),
	)
	return r, err
}

// Length is where the knife ends, mm.
func (p *Profile) Length() float64 { return p.runs[len(p.runs)-1].to() }

// Breaks are the places where the section changes at once: the steps, and the
// marks where kind, bevel or round change. Ascending; the ends not included.
func (p *Profile) Breaks() []float64 {
	var at []float64
	for i := range p.runs {
		st := p.runs[i].stations
		if i > 0 {
			at = append(at, st[0].At.MM())
		}
		for j := 1; j < len(st)-1; j++ {
			if shape(st[j]) != shape(st[j-1]) {
				at = append(at, st[j].At.MM())
			}
		}
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
		if r := &p.runs[i]; x >= r.from() && x <= r.to() {
			dst = append(dst, r.section(x))
		}
	}
	return dst
}

// section is the section of the run at x, which lies on it.
func (r *run) section(x float64) Section {
	st := r.stations
	j := 0 // the stretch that holds x begins at mark j
	for j < len(st)-2 && st[j+1].At.MM() <= x {
		j++
	}
	s := Section{Top: r.top.Predict(x), Bottom: r.bottom.Predict(x), Thick: r.thick.Predict(x)}
	return s.shaped(st[j])
}
