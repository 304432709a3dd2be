package axes

import (
	"math"
	"slices"

	"chape/calc/curve"
)

// Mark is one place along the knife, mm: gap from a rule that lies along the fold line and touches the knife where it
// stands out furthest; depth from back to edge.
type Mark struct {
	At, Gap, Depth float64
}

// Knife is an outline laid along its fold line. Its methods give new knives.
type Knife struct {
	Axes
	Outline curve.Line // counter-clockwise, as it was given
	Feet    []curve.Vec
	Turns   Turns
	Steps   []float64 // places of steps, ascending
	Marks   []Mark    // ascending, doubled at steps
	Rule    float64   // how far the rule lies above the fold line: what a guard stands out of the back, mm
	sides   sides
}

// NewKnife lays an outline. feet are the places on it where strokes begin.
func NewKnife(outline curve.Line, feet []curve.Vec) Knife {
	return lay(outline, feet, Turns{})
}

func lay(outline curve.Line, feet []curve.Vec, t Turns) Knife {
	k := Knife{Axes: ofKnife(outline, feet, t), Outline: outline, Feet: feet, Turns: t}
	k.sides = sidesOf(k.in(outline))
	k.Rule = max(0, -slices.Min(k.sides.top))
	k.Steps = k.stepsOf(feet)
	k.Marks = k.fit()
	return k
}

// Length from the point to the butt.
func (k Knife) Length() float64 { return k.sides.length() }

// TurnEnds takes the other end for the point.
func (k Knife) TurnEnds() Knife {
	k.Turns.Ends = !k.Turns.Ends
	return lay(k.Outline, k.Feet, k.Turns)
}

// TurnBack takes the other side for the back.
func (k Knife) TurnBack() Knife {
	k.Turns.Back = !k.Turns.Back
	return lay(k.Outline, k.Feet, k.Turns)
}

// apart is how far steps stay from each other and from the ends, mm.
const apart = 2.5

// MoveStep puts step i elsewhere, as far as its neighbours let it; the marks are found anew.
func (k Knife) MoveStep(i int, to float64) Knife {
	lo, hi := apart, k.Length()-apart
	if i > 0 {
		lo = k.Steps[i-1] + apart
	}
	if i+1 < len(k.Steps) {
		hi = k.Steps[i+1] - apart
	}
	k.Steps = slices.Clone(k.Steps)
	k.Steps[i] = round(min(max(to, lo), hi))
	k.Marks = k.fit()
	return k
}

// AddStep puts a step at a place; ok is false where one is too near.
func (k Knife) AddStep(at float64) (out Knife, ok bool) {
	at = round(at)
	for _, s := range append([]float64{0, k.Length()}, k.Steps...) {
		if math.Abs(s-at) < apart {
			return k, false
		}
	}
	k.Steps = append(slices.Clone(k.Steps), at)
	slices.Sort(k.Steps)
	k.Marks = k.fit()
	return k, true
}

// DropStep takes step i away.
func (k Knife) DropStep(i int) Knife {
	k.Steps = slices.Delete(slices.Clone(k.Steps), i, i+1)
	k.Marks = k.fit()
	return k
}

// AddMark puts a mark on the outline at a place; ok is false where one is within 1 mm.
func (k Knife) AddMark(at float64) (out Knife, ok bool) {
	at = round(at)
	i := 0
	for j, m := range k.Marks {
		if math.Abs(m.At-at) < 1 {
			return k, false
		}
		if m.At < at {
			i = j + 1
		}
	}
	if at <= 0 || at >= k.Length() || len(k.Marks) >= most {
		return k, false
	}
	top, bottom := k.sides.at(at)
	k.Marks = slices.Insert(slices.Clone(k.Marks), i, mark(at, top+k.Rule, bottom+k.Rule))
	return k, true
}

// DropMark takes mark i away; ok is false for the ends and at steps.
func (k Knife) DropMark(i int) (out Knife, ok bool) {
	if i <= 0 || i >= len(k.Marks)-1 || slices.Contains(k.Steps, k.Marks[i].At) {
		return k, false
	}
	k.Marks = slices.Delete(slices.Clone(k.Marks), i, i+1)
	return k, true
}

// Off is how far the curves through the marks stray from the outline at most, mm, and where along the knife.
func (k Knife) Off() (worst, at float64) {
	for i, r := range k.runs() {
		lo, hi := 0, 0
		n := 0
		for j, m := range k.Marks { // the run's marks: from one doubled place to the next
			if j > 0 && m.At == k.Marks[j-1].At {
				n++
			}
			if n == i {
				if lo == hi {
					lo = j
				}
				hi = j + 1
			}
		}
		if hi-lo < 2 {
			continue
		}
		if off, x := r.off(k.Marks[lo:hi]); off > worst {
			worst, at = off, x
		}
	}
	return worst, at
}

// Fold is the fold line from the point's foot to the butt's.
func (k Knife) Fold() (from, to curve.Vec) {
	return k.Out(curve.Vec{}), k.Out(curve.Vec{X: k.Length()})
}

func round(mm float64) float64 { return math.Round(mm*100) / 100 }

func mark(x, top, bottom float64) Mark {
	gap := round(max(top, 0))
	return Mark{round(x), gap, round(max(bottom-gap, 0.01))}
}

// foot is where a stroke meets the outline, in the axes.
type foot struct {
	x    float64
	back bool
}

// stepsOf pairs the feet of back and edge, the nearest first: a step is at the mean of its two, or at one alone.
func (k Knife) stepsOf(feet []curve.Vec) []float64 {
	var fs []foot
	for _, f := range feet {
		v := k.In(f)
		top, bottom := k.sides.at(v.X)
		fs = append(fs, foot{v.X, math.Abs(v.Y-top) < math.Abs(v.Y-bottom)})
	}
	var out []float64
	for len(fs) > 0 {
		i, j := nearest(fs)
		at := (fs[i].x + fs[j].x) / 2
		fs = slices.Delete(fs, j, j+1)
		if i != j {
			fs = slices.Delete(fs, i, i+1)
		}
		if at = round(at); at > apart && at < k.Length()-apart {
			out = append(out, at)
		}
	}
	slices.Sort(out)
	return slices.CompactFunc(out, func(a, b float64) bool { return math.Abs(b-a) < apart })
}

// nearest is the nearest pair of a back's and an edge's foot, i before j, no further apart than those of one step are;
// without any the first alone, twice.
func nearest(fs []foot) (i, j int) {
	least := 4.0 // mm: bolsters stand square, or nearly so
	for a := range fs {
		for b := a + 1; b < len(fs); b++ {
			if d := math.Abs(fs[a].x - fs[b].x); fs[a].back != fs[b].back && d < least {
				least, i, j = d, a, b
			}
		}
	}
	return i, j
}
