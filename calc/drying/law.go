package drying

import "math"

// A law says how the water leaves: body and welt each by the Lewis law, the
// welt perhaps more slowly; at night perhaps more slowly than by day; towards
// the weight before wetting, or less by what the water washed out.
//
// Leather is not known to keep to one of them, so an estimate weighs them all
// (see posterior). Their shares and ranges are what leather and rooms may do
// (common practice, no source).
type law struct {
	share  float64 // how much it is believed before anything is weighed; all sum to 1
	ratio  float64 // rate of the slower part over that of the faster; 0: there is one part
	night  float64 // the rate goes from 1−night to 1+night through the day; below 1
	lag    float64 // hours, by how much the driest hour is later than usual
	washed bool    // soaking took out what dissolves
}

// What dissolves out of vegetable-tanned leather in one soaking, as a share
// of its weight: mean and standard deviation (common practice, no source).
const (
	washedMean = 0.015
	washedDev  = 0.010
)

// How much of the water is in the slower part: mean and standard deviation
// (common practice, no source: a welt is a seventh to a third of the leather).
const (
	slowMean = 0.25
	slowDev  = 0.13
)

// driest is the hour of the day at which air takes up the most, usually.
const driest = 14.0

// shareOfKind is how much each of the four kinds of law is believed at first;
// what remains is for two kinds together.
const shareOfKind = 0.225

// laws is all of them.
var laws = makeLaws()

func makeLaws() []law {
	var slow, night, usual, both []law
	for _, ratio := range []float64{0.12, 0.16, 0.2, 0.25, 0.31, 0.39, 0.48, 0.6} {
		slow = append(slow, law{ratio: ratio})
	}
	for _, n := range []float64{0.12, 0.24, 0.36, 0.48, 0.6, 0.75} {
		for _, lag := range []float64{-3, -1.5, 0, 1.5, 3} {
			night = append(night, law{night: n, lag: lag})
		}
		usual = append(usual, law{night: n})
	}
	for _, ratio := range []float64{0.16, 0.25, 0.39} {
		for _, n := range []float64{0.3, 0.6} {
			both = append(both, law{ratio: ratio, night: n})
		}
	}
	all := []law{{share: shareOfKind}, {share: shareOfKind, washed: true}}
	all = append(all, shared(slow, shareOfKind)...)
	all = append(all, shared(night, shareOfKind)...)
	const pair = (1 - 4*shareOfKind) / 3
	all = append(all, shared(washed(slow), pair)...)
	all = append(all, shared(washed(usual), pair)...)
	return append(all, shared(both, pair)...)
}

// shared gives each of the laws the same part of a share.
func shared(in []law, share float64) []law {
	var out []law
	for _, l := range in {
		l.share = share / float64(len(in))
		out = append(out, l)
	}
	return out
}

func washed(in []law) []law {
	var out []law
	for _, l := range in {
		l.washed = true
		out = append(out, l)
	}
	return out
}

const turn = 2 * math.Pi / 24 // of the day, per hour

// clock is the law's own time at an hour of the day: hours that dry as much
// as that many hours of the day's mean.
func (l law) clock(hour float64) float64 {
	if l.night == 0 {
		return hour
	}
	return hour + l.night/turn*math.Sin(turn*(hour-driest-l.lag))
}

// hour is the hour of the day at a time of the law's own: the inverse of
// clock, by Newton's rule kept in its bracket.
func (l law) hour(clock float64) float64 {
	if l.night == 0 {
		return clock
	}
	low, high := clock-l.night/turn, clock+l.night/turn
	h := clock
	for range 20 {
		d := l.clock(h) - clock
		if math.Abs(d) < 1e-4 {
			break
		}
		if d > 0 {
			high = h
		} else {
			low = h
		}
		h -= d / (1 + l.night*math.Cos(turn*(h-driest-l.lag)))
		if h < low || h > high {
			h = (low + high) / 2
		}
	}
	return h
}

// left is what is left of each gram of water in the faster and in the slower
// part after rate times own hours.
func (l law) left(kt float64) (fast, slow float64) {
	if l.ratio == 0 {
		return math.Exp(-kt), 0
	}
	return math.Exp(-kt), math.Exp(-l.ratio * kt)
}
