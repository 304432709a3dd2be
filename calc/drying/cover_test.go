package drying

import (
	"flag"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
)

var trials = flag.Int("series", 60, "series of weighings of each family that the windows are tried on; 500 for the whole")

// The seeds are fixed, so that the counts never change. They are other ones
// than those by which the laws were chosen.
const seed = 1911

// told is the laws of one family alone, for a fit that knows the true one.
var told = map[string]func(law) bool{
	"one-exponential": func(l law) bool { return l.ratio == 0 && l.night == 0 && !l.washed },
	"two-exponential": func(l law) bool { return l.ratio > 0 && l.night == 0 && !l.washed },
	"washed-out":      func(l law) bool { return l.ratio == 0 && l.night == 0 && l.washed },
	"day-and-night":   func(l law) bool { return l.ratio == 0 && l.night > 0 && !l.washed },
}

func lawsOf(is func(law) bool) []law {
	var out []law
	for _, l := range laws {
		if is(l) {
			out = append(out, l)
		}
	}
	return out
}

// tally is how the windows of one family did.
type tally struct {
	held, heldTold   int
	refused          int
	widths, toldOnes []float64 // hours
}

func (c *tally) add(other tally) {
	c.held, c.heldTold, c.refused = c.held+other.held, c.heldTold+other.heldTold, c.refused+other.refused
	c.widths, c.toldOnes = append(c.widths, other.widths...), append(c.toldOnes, other.toldOnes...)
}

func (e Estimate) holds(hours float64) bool {
	return e.Earliest.Hours() <= hours && hours <= e.Latest.Hours()
}

func (e Estimate) width() float64 { return (e.Latest - e.Earliest).Hours() }

// cover tries the windows on n truths of a family. A refusal counts as a window
// that does not hold the truth.
func cover(t *testing.T, family string, make func(*rand.Rand) truth, n int) tally {
	var c tally
	known := lawsOf(told[family])
	rnd := rand.New(rand.NewPCG(seed, uint64(len(family))))
	for tried := 0; tried < n; {
		r, until, ok := make(rnd).weighed(rnd)
		if !ok {
			continue
		}
		tried++
		e, err := r.Estimate()
		knowing, errKnowing := r.estimate(known, believed+0.025)
		if err != nil {
			c.refused++
			if !strings.HasPrefix(err.Error(), "too early") {
				t.Errorf("%s: good weighings are called wrong: %v", family, err)
			}
			continue
		}
		if e.holds(until) {
			c.held++
		}
		if errKnowing == nil {
			c.widths, c.toldOnes = append(c.widths, e.width()), append(c.toldOnes, knowing.width())
			if knowing.holds(until) {
				c.heldTold++
			}
		}
	}
	return c
}

func median(x []float64) float64 {
	x = slices.Sorted(slices.Values(x))
	return x[len(x)/2]
}

// The window holds the truth as often as it says, whichever way the sheath
// dries, and is not much wider than that of a fit which knows the way. The
// truths are simulated without the fit's formulas. The whole, some twenty seconds:
//
//	go test ./calc/drying -run Cover -series 500 -v
func TestCover(t *testing.T) {
	var all tally
	n := *trials
	for _, f := range families {
		c := cover(t, f.name, f.make, n)
		all.add(c)
		t.Logf("%s: held %d of %d, told the law %d; refused %d; median width %.2f h, told %.2f h", f.name, c.held, n, c.heldTold, c.refused, median(c.widths), median(c.toldOnes))
		if c.held*100 < 85*n {
			t.Errorf("%s: the window held %d of %d truths, want at least 85 %%", f.name, c.held, n)
		}
	}
	wide := median(all.widths) / median(all.toldOnes)
	t.Logf("all: held %d of %d, told the law %d; refused %d; median width %.2f times that of a fit told the law", all.held, 4*n, all.heldTold, all.refused, wide)
	if float64(all.held) < Confidence*float64(4*n) {
		t.Errorf("the window held %d of %d truths, want at least 90 %%", all.held, 4*n)
	}
	most := 1.5
	if n < 500 {
		most = 1.7 // a few series scatter
	}
	if wide > most {
		t.Errorf("the median window is %.2f times as wide as when told the true law, want at most %v", wide, most)
	}
}
