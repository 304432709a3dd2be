package calc

import (
	"fmt"
	"math"
	"testing"

	"chape/calc/knife"
	"chape/calc/length"
)

// The ends of what may be planned: the shortest seam, the finest and coarsest pitch, no
// margin to speak of, the most marks. Each gives a sane plan.
func TestTheEndsOfTheRanges(t *testing.T) {
	for name, change := range map[string]func(*Input){
		"a knife of 12 mm": func(in *Input) {
			in.Knife.Stations = []knife.Station{{Bottom: 5, Thick: 1, Kind: knife.Blade, Bevel: 1}, {At: 12, Bottom: 5, Thick: 1, Kind: knife.Blade, Bevel: 1}}
			in.Sheath.Mouth, in.Belt.Loop, in.Stitch.First, in.Stitch.Last = 10, NoLoop, 1, 1
		},
		"a knife of 2 m": func(in *Input) {
			in.Knife.Stations[1].At, in.Sheath.Mouth = 2000, 1800
		},
		"a pitch of 1":                   func(in *Input) { in.Stitch.Pitch = 1 },
		"a pitch of 50":                  func(in *Input) { in.Stitch.Pitch = 50 },
		"a pitch of the seam":            func(in *Input) { in.Stitch.Pitch = 400 },
		"no point room at all":           func(in *Input) { in.Sheath.PointRoom, in.Sheath.Clearance, in.Sheath.HandleClearance = 0, 0, 0 },
		"the welt as thick as the knife": func(in *Input) { in.Sheath.Welt = 6 },
		"a welt of nothing":              func(in *Input) { in.Sheath.Welt = 0 },
		"a neutral fibre inside":         func(in *Input) { in.Sheath.Neutral = 0 },
		"a neutral fibre outside":        func(in *Input) { in.Sheath.Neutral = 1 },
		"a blend just over the margin":   func(in *Input) { in.Sheath.Blend = 5.000001 },
		"a blend of a metre":             func(in *Input) { in.Sheath.Blend = 1000 },
		"two hundred marks":              func(in *Input) { in.Knife.Stations = manyMarks(200) },
		"a knife with no thickness":      func(in *Input) { in.Knife.Stations[0].Thick, in.Knife.Stations[1].Thick = 0, 0 },
		"a knife that is all point": func(in *Input) {
			in.Belt.Loop = NoLoop
			in.Knife.Stations[0].Bottom, in.Knife.Stations[1].Bottom = 0, 0
		},
		"a correction of 1 mm reach":      func(in *Input) { in.Fits = []Fit{{At: 60, By: 1, Reach: 1}} },
		"a correction far past the mouth": func(in *Input) { in.Fits = []Fit{{At: 900, By: 9, Reach: 20}} },
	} {
		t.Run(name, func(t *testing.T) {
			in := bar()
			change(&in)
			p := mustPlan(t, in)
			checkSane(t, p)
			if n := len(p.at.cut.X); n > mostSamples {
				t.Errorf("%d samples", n)
			}
			s := p.Stitch
			within(t, "stitches times pitch", float64(s.Stitches)*s.Pitch, s.Laid-(in.Stitch.First+in.Stitch.Last).MM(), 1e-9)
			if want := math.Max(1, math.Floor((s.Laid-(in.Stitch.First+in.Stitch.Last).MM())/in.Stitch.Pitch.MM()+0.5)); float64(s.Stitches) != want {
				t.Errorf("%d stitches, want %v", s.Stitches, want)
			}
		})
	}
}

// manyMarks is the bar measured very often.
func manyMarks(n int) []knife.Station {
	var st []knife.Station
	for i := range n {
		st = append(st, knife.Station{At: length.Length(160 * float64(i) / float64(n-1)), Bottom: 30, Thick: 6, Kind: knife.Slab})
	}
	return st
}

// Where a limit is passed there is a line that says so: one stitch too many, a seam with
// nothing between first and last.
func TestPastTheEnds(t *testing.T) {
	plane := mustPlan(t, bar()).Stitch.PlaneLine
	in := bar()
	in.Stitch.First, in.Stitch.Last = length.Length(plane/2), length.Length(plane/2)+1e-6
	if _, err := Compute(in); err == nil {
		t.Error("nothing is left of the seam, and it is sewn")
	}
	in.Stitch.Last -= 0.001
	if p := mustPlan(t, in); p.Stitch.Stitches != 1 {
		t.Errorf("%d stitches in a hundredth of a millimetre", p.Stitch.Stitches)
	}
	in = bar()
	in.Stitch.Measured = 20008 + 0.6
	in.Stitch.Pitch = 1
	if _, err := Compute(in); err == nil {
		t.Errorf("%d stitches are sewn", maxStitches+1)
	}
	in.Stitch.Measured = 20008
	in.Belt.Loop = NoLoop
	if p := mustPlan(t, in); p.Stitch.Stitches != maxStitches {
		t.Errorf("%d stitches, want %d", p.Stitch.Stitches, maxStitches)
	}
}

// The table of half-widths by hand: from the first whole ten at or past the cut line's end to the
// mouth, which stands in it once, whether it is a whole ten or not.
func TestOffsetRows(t *testing.T) {
	for _, c := range []struct {
		room, mouth length.Length
		first, last float64
		rows        int
	}{{0, 120, -10, 120, 14}, {0, 125, -10, 125, 15}, {3, 119.999, -10, 119.999, 14}, {10, 120, -20, 120, 15}, {0.5, 121, -10, 121, 15}} {
		in := bar()
		in.Sheath.PointRoom, in.Sheath.Mouth = c.room, c.mouth
		o := mustPlan(t, in).Body.Offsets
		if len(o) != c.rows || o[0].At != c.first || o[len(o)-1].At != c.last {
			t.Errorf("%v of room, mouth at %v: %d rows from %v to %v, want %d from %v", c.room, c.mouth, len(o), o[0].At, o[len(o)-1].At, c.rows, c.first)
		}
		for i, row := range o {
			if want := row.At >= -(c.room.MM()+5)-1e-9; row.Sewn != want {
				t.Errorf("%v of room: the row at %v is sewn %v", c.room, row.At, row.Sewn)
			}
			if i > 0 && i < len(o)-1 && row.At != o[i-1].At+10 {
				t.Errorf("the row at %v follows %v", row.At, o[i-1].At)
			}
			if row.Sewn && !(row.Glue < row.Stitch && row.Stitch < row.Cut) {
				t.Errorf("at %v: glue %v, stitch %v, cut %v", row.At, row.Glue, row.Stitch, row.Cut)
			}
		}
	}
}

// Every kind of thing in a project has its word, as the file and the JSON write it.
func TestWordsOfInputAndPlan(t *testing.T) {
	for got, want := range map[fmt.Stringer]string{
		FoldedLoop: "folded", NoLoop: "none", NoStrap: "none", SnapStrap: "snap", Hook: "hook", TwoNeedles: "two needles",
		OK: "ok", Note: "note", Warn: "warn", PointMark: "point", DeepestMark: "deepest place", FrontMark: "front of the handle",
		StepMark: "step", SwellMark: "swell", MouthMark: "mouth", EndMark: "butt",
	} {
		if got.String() != want {
			t.Errorf("%#v is %q, want %q", got, got, want)
		}
	}
}
