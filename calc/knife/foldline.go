package knife

import "math"

// FoldLine is where the fold lies in the axes of the marks: Gap + Slope·x
// below the rule, mm. The zero value is the rule itself.
type FoldLine struct{ Gap, Slope float64 }

// At is the line's distance from the rule at x.
func (l FoldLine) At(x float64) float64 { return l.Gap + l.Slope*x }

// Laid is the knife with every section measured from the line.
func (p *Profile) Laid(l FoldLine) *Profile { return &Profile{runs: p.runs, line: l} }

// Resting is the line on which a rule comes to rest that is pushed against
// the back at the middle of 0..mouth: of all straight lines that lie nowhere
// past the back there, the one that comes highest at the middle. It is the
// edge of the back's convex hull over the middle; at a corner of the hull the
// edge on the mouth's side, where the hull is curved its tangent. What begins
// at the mouth does not count. The mouth lies above 0 and not past the knife.
func (p *Profile) Resting(mouth float64) FoldLine {
	back := backOf(p.Before(mouth), mouth)
	mid := mouth / 2
	// Where a line of slope s touches the two halves of the back: for a slope
	// too large it would have to sink for the sake of the mouth's half.
	tooSteep := func(s float64) bool {
		left, _ := back.least(s, 0, mid)
		right, _ := back.least(s, mid, mouth)
		return left-right > level
	}
	// At the middle the line lies below the back at both ends, and not below the rule.
	lo, hi := -back.most/mid-1e-3, back.most/mid+1e-3
	if !tooSteep(0) {
		lo = 0
		if tooSteep(flat) { // a straight back, the usual case
			hi = flat
		}
	} else {
		hi = 0
	}
	for range 60 {
		if s := (lo + hi) / 2; tooSteep(s) {
			hi = s
		} else {
			lo = s
		}
		if hi-lo < 1e-13 {
			break
		}
	}
	return back.touching(lo, mid, mouth)
}

// level is how much higher a line may seem by rounding alone, mm; flat a slope
// that nobody can measure.
const (
	level = 1e-12
	flat  = 1e-9
)

// touching is the line of slope s, made to go through both places where it
// touches, if these are two.
func (b back) touching(s, mid, mouth float64) FoldLine {
	v0, x0 := b.least(s, 0, mid)
	v1, x1 := b.least(s+flat, mid, mouth) // a hair steeper: the far end of an edge
	y1 := v1 + (s+flat)*x1
	if x1-x0 > 1 {
		s = (y1 - (v0 + s*x0)) / (x1 - x0)
	}
	gap, _ := b.least(s, 0, mouth)
	if math.Abs(s)*mouth < level {
		s = 0
	}
	if math.Abs(gap) < level {
		gap = 0
	}
	return FoldLine{Gap: gap, Slope: s}
}

// back is the gap at the back over x, in pieces.
type back struct {
	spans []span
	most  float64
}

func backOf(p *Profile, mouth float64) back {
	var b back
	for _, r := range p.runs {
		for _, s := range r.spans {
			if s.x0 < mouth {
				b.spans = append(b.spans, s)
				b.most = math.Max(b.most, math.Max(s.top.at(0), s.top.at(s.x1-s.x0)))
			}
		}
	}
	return b
}

// least is the least value of the gap less s·x over lo..hi, and the smallest x
// where it lies.
func (b back) least(s, lo, hi float64) (value, at float64) {
	value, at = math.Inf(1), lo
	for i := range b.spans {
		sp := &b.spans[i]
		from, to := math.Max(lo, sp.x0), math.Min(hi, sp.x1)
		if from > to {
			continue
		}
		v, t := sp.top.least(s, from-sp.x0, to-sp.x0)
		if v -= s * sp.x0; v < value {
			value, at = v, sp.x0+t
		}
	}
	return value, at
}

// Held is the largest gap between the back and the fold line over from..to,
// and the smallest x where it lies.
func (p *Profile) Held(from, to float64) (gap, at float64) {
	gap, at = math.Inf(-1), from
	for _, sp := range backOf(p, to).spans { // the largest of a cubic is the least of its opposite
		lo, hi := math.Max(from, sp.x0), math.Min(to, sp.x1)
		if lo > hi {
			continue
		}
		q := cubic{-sp.top.a, -sp.top.b, -sp.top.c, -sp.top.d}
		v, t := q.least(-p.line.Slope, lo-sp.x0, hi-sp.x0)
		if g := -v - p.line.At(sp.x0); g > gap+same {
			gap, at = g, sp.x0+t
		}
	}
	return gap, at
}

// Touching are the places over 0..to where the back touches the fold line, one
// a stretch between marks at most, ascending.
func (p *Profile) Touching(to float64) []float64 {
	var at []float64
	for _, sp := range backOf(p, to).spans {
		v, t := sp.top.least(p.line.Slope, 0, math.Min(to, sp.x1)-sp.x0)
		if x := sp.x0 + t; v-p.line.At(sp.x0) < touch && (len(at) == 0 || x > at[len(at)-1]+same) {
			at = append(at, x)
		}
	}
	return at
}

// touch is how near the back comes to the line where it touches, mm.
const touch = 1e-6
