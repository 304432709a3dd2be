package drying

import (
	"math"
	"math/rand/v2"
	"time"
)

// truth is a sheath that dries in a room, made without any formula of the
// fit: small steps of time, every part losing water at its own rate, which
// the hour of the day may change.
type truth struct {
	before, dry float64                    // grams
	water       []float64                  // grams in each part when the surface no longer shines
	rate        []float64                  // of each part, per hour
	air         func(hour float64) float64 // how fast the air dries, by the hour of the day, 1 in the mean
	hour        float64                    // of the day, at the start
}

// families make truths of each kind. The figures are what a maker meets
// (common practice, no source): 60 to 250 g of leather, water a third to
// two thirds of it, dry in about half a day to three days.
var families = []struct {
	name string
	make func(rnd *rand.Rand) truth
}{
	{"one-exponential", oneTruth},
	{"two-exponential", func(rnd *rand.Rand) truth {
		t := oneTruth(rnd)
		k, slow := logUniform(rnd, 0.08, 0.25), uniform(rnd, 0.1, 0.4)
		t.rate = []float64{k, k * uniform(rnd, 0.15, 0.5)}
		t.water = []float64{t.water[0] * (1 - slow), t.water[0] * slow}
		return t
	}},
	{"washed-out", func(rnd *rand.Rand) truth {
		t := oneTruth(rnd)
		t.dry = t.before * (1 - uniform(rnd, 0.005, 0.03))
		return t
	}},
	{"day-and-night", func(rnd *rand.Rand) truth {
		t := oneTruth(rnd)
		night, from, long, soft := uniform(rnd, 0.25, 0.75), uniform(rnd, 18.5, 21.5), uniform(rnd, 10, 13), uniform(rnd, 0.5, 2)
		dark := func(hour float64) float64 { // 1 by night, 0 by day
			middle := math.Mod(hour-from-long/2+240+12, 24) - 12
			return 1 / (1 + math.Exp((math.Abs(middle)-long/2)/(soft/2)))
		}
		mean := long / 24
		t.air = func(hour float64) float64 {
			return (1 - (1-night)*dark(hour)) / (1 - (1-night)*mean)
		}
		return t
	}},
}

func oneTruth(rnd *rand.Rand) truth {
	dry := uniform(rnd, 60, 250)
	return truth{
		before: dry, dry: dry,
		water: []float64{dry * uniform(rnd, 0.3, 0.7)},
		rate:  []float64{logUniform(rnd, 0.05, 0.2)},
		air:   func(float64) float64 { return 1 },
		hour:  uniform(rnd, 8, 20),
	}
}

func uniform(rnd *rand.Rand, low, high float64) float64 { return low + (high-low)*rnd.Float64() }

func logUniform(rnd *rand.Rand, low, high float64) float64 {
	return math.Exp(uniform(rnd, math.Log(low), math.Log(high)))
}

// dries is the weight in grams every hundredth of an hour, up to a while
// after the sheath is within NearDry of dry, and the hours to that.
func (t truth) dries() (grams []float64, until float64) {
	const dt = 0.01
	water := append([]float64{}, t.water...)
	until = -1
	for i := 0; ; i++ {
		at := dt * float64(i)
		sum := 0.0
		for _, w := range water {
			sum += w
		}
		grams = append(grams, t.dry+sum)
		if until < 0 && sum <= NearDry*t.dry {
			until = at
		}
		if until >= 0 || at > 2000 {
			return grams, until
		}
		for j := range water {
			water[j] -= dt * t.rate[j] * t.air(t.hour+at) * water[j]
		}
	}
}

// weighed is a maker's weighings of a truth: at odd hours, none at night, on
// an honest scale, four to nine of them, and none after it is dry.
func (t truth) weighed(rnd *rand.Rand) (r Record, until float64, ok bool) {
	grams, until := t.dries()
	step := []float64{0.1, 0.5, 1}[rnd.IntN(3)]
	hand := logUniform(rnd, 0.05, 0.3)
	pace := logUniform(rnd, 2, 6)
	read := func(g float64) float64 {
		return math.Round(math.Round((g+hand*rnd.NormFloat64())/step)*step*10) / 10
	}
	r = Record{Before: read(t.before), Step: step, Clock: time.Duration(t.hour * float64(time.Hour))}
	n := 4 + rnd.IntN(9)
	for at := 0.0; len(r.Weighings) < n; {
		i := int(at * 100)
		if i >= len(grams)-1 {
			break
		}
		r.Weighings = append(r.Weighings, Weighing{time.Duration(float64(i) / 100 * float64(time.Hour)), read(grams[i])})
		at += math.Max(0.5, pace*math.Exp(0.5*rnd.NormFloat64()))
		if clock := math.Mod(t.hour+at, 24); clock > 23 || clock < 7 {
			at += math.Mod(31-clock, 24) + uniform(rnd, 0, 1.5)
		}
	}
	return r, until, len(r.Weighings) >= 4
}
