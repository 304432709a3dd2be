package calc

import (
	"testing"

	"chape/calc/knife"
	"chape/calc/length"
)

// aHair is far below what a maker sets, far above rounding, mm.
const aHair = 1e-4

// thresholds are the edges between the levels of every check, worked by hand from the
// definitions on the bar and on knives as plain (the limits themselves are common practice,
// no source). set puts the plan at x, the threshold; below and above are what is said a
// hair to either side.
var thresholds = []struct {
	check        string
	what         string
	x            float64
	below, above Level
	set          func(in *Input, x length.Length)
}{
	// The bar needs 34 and has room for 34.80278: with an ease of x it has 0.80278 + x to
	// spare. Spare of 2.5, tight by 1.5, tight by 3.
	{"squeeze", "loose", 2.5 - 0.80277564, OK, Note, func(in *Input, x length.Length) { in.Sheath.Ease = x }},
	{"squeeze", "snug", -1.5 - 0.80277564, Note, OK, func(in *Input, x length.Length) { in.Sheath.Ease = x }},
	{"squeeze", "too tight", -3 - 0.80277564, Warn, Note, func(in *Input, x length.Length) { in.Sheath.Ease = x }},
	// The holes stand a gap less half the drill of 1.8 from the edge.
	{"thread guard", "little", 3.9, Note, OK, func(in *Input, x length.Length) { in.Sheath.Gap = x }},
	{"thread guard", "reached", 2.4, Warn, Note, func(in *Input, x length.Length) { in.Sheath.Gap = x }},
	{"edge", "thinner than the leather", 3, Note, OK, func(in *Input, x length.Length) { in.Sheath.Margin = x }},
	{"edge", "holes break out", 0.9, Warn, Note, func(in *Input, x length.Length) { in.Sheath.Margin = x }},
	// 2(b − m) against 50, m = 5; with sanding it counts too.
	{"hollow", "the drum", 30, Note, OK, func(in *Input, x length.Length) { in.Sheath.Blend = x }},
	{"hollow", "the drum, with sanding", 31.5, Note, OK, func(in *Input, x length.Length) { in.Sheath.Sanding, in.Sheath.Blend = 1.5, x }},
	// Half the welt against half the leather's thickness, on a thin blade.
	{"fold", "thin for the leather", 3, Note, OK, func(in *Input, x length.Length) { *in = orchard(); in.Sheath.Leather, in.Sheath.Welt = 3, x }},
	// Room for the tab of 20 between 2t = 6 and the glue line, at 37.15897 by the bar's
	// own figures: set from the fold.
	{"tab", "in the fold", 6, Warn, OK, func(in *Input, x length.Length) { in.Belt.Centred, in.Belt.Offset = false, x }},
	{"tab", "in the welt", 37.15897288 - 20, OK, Warn, func(in *Input, x length.Length) { in.Belt.Centred, in.Belt.Offset = false, x }},
	{"tab", "too wide", 37.15897288 - 6, OK, Warn, func(in *Input, x length.Length) { in.Belt.Tab, in.Belt.Centred, in.Belt.Offset = x, false, 6 }},
	{"tab", "one stitch", 12, Warn, OK, func(in *Input, x length.Length) { in.Belt.Tab = x }},
	// The way up to the turn: belt and ease 44, half the belt's thickness 2.
	{"tab", "stitches too low", 42, OK, Warn, func(in *Input, x length.Length) { in.Belt.Row = x }},
	// 50 mm to hold past the highest leather: a knife of 225, a rise of 8.
	{"mouth", "handle left", 225 - 8 - 50, OK, Warn, func(in *Input, x length.Length) { *in = orchard(); in.Sheath.Mouth = x }},
	{"mouth", "past the swell", 150, Note, OK, func(in *Input, x length.Length) { *in = orchard(); in.Sheath.Mouth = x }},
	{"mouth", "the rise counts", 17, OK, Warn, func(in *Input, x length.Length) { *in = orchard(); in.Sheath.Mouth, in.Sheath.MouthRise = 158, x }},
	// A strap of 18 from the guard's end at 96: half of it and 3 mm.
	{"strap", "beside a step", 96 + 9 + 3, Note, OK, strapAt},
	{"strap", "over a step", 96 + 9, Note, Note, strapAt},
	{"strap", "on the swell", 200 - 9, OK, Note, strapAt},
	// Point and guard touch the rule, so the fold lies along it; the back between them
	// falls to x below it.
	{"back", "held off", 1, OK, Note, func(in *Input, x length.Length) {
		in.Knife = guarded()
		for i := range in.Knife.Stations {
			if s := &in.Knife.Stations[i]; s.Kind != knife.Slab {
				s.Top, s.Bottom = x, x+s.Depth()
			}
		}
		in.Knife.Stations[0].Top, in.Knife.Stations[0].Bottom = 0, 0
		in.Knife.Stations[1].Top = 0
		in.Knife.Stations[2].Top, in.Knife.Stations[2].Bottom = x, x+24
	}},
	// A mark at the middle of two that are 20 deep, 4 thick.
	{"thickness", "twice as deep", 40, OK, Note, func(in *Input, x length.Length) { *in = middleMark(x, 4) }},
	{"thickness", "half as deep", 10, Note, OK, func(in *Input, x length.Length) { *in = middleMark(x, 4) }},
	{"thickness", "twice as thick", 8, OK, Note, func(in *Input, x length.Length) { *in = middleMark(20, x) }},
	{"thickness", "half as thick", 2, Note, OK, func(in *Input, x length.Length) { *in = middleMark(20, x) }},
	{"thickness", "thicker than deep", 12, OK, Note, func(in *Input, x length.Length) { *in = middleMark(12, x); in.Limits.Unlikely = 9 }},
	// A hole's rim keeps 1 mm to the mouth, and to the fold at the other end.
	{"holes", "from the mouth", 1.9, Warn, OK, func(in *Input, x length.Length) { in.Stitch.First = x }},
	{"holes", "from the fold", 1.9, Warn, OK, func(in *Input, x length.Length) { in.Stitch.Last = x }},
	{"holes", "at the lap's end", 1.9, Warn, OK, func(in *Input, x length.Length) { in.Belt.Lap = x }},
	{"holes", "relief from the fold", 4, Warn, OK, func(in *Input, x length.Length) { in.Belt.Centred, in.Belt.Offset = false, x }},
}

func strapAt(in *Input, x length.Length) {
	in.Knife, in.Sheath.Mouth, in.Strap = guarded(), 89, snap()
	in.Strap.At, in.Strap.Placed = x, true
}

// middleMark is a bar of blade with one mark of its own measures half way.
func middleMark(deep, thick length.Length) Input {
	in := bar()
	at := func(x, d, t length.Length) knife.Station {
		return knife.Station{At: x, Bottom: d, Thick: t, Kind: knife.Blade, Bevel: 1}
	}
	in.Knife.Stations = []knife.Station{at(0, 20, 4), at(80, deep, thick), at(160, 20, 4)}
	return in
}

// levelOf is the worst that the checks of a name say; OK where there is none.
func levelOf(p *Plan, name string) (worst Level) {
	for _, c := range p.Checks {
		if c.Name == name {
			worst = max(worst, c.Level)
		}
	}
	return worst
}

// Every level begins at its threshold: a hair below it says the one, a hair above the
// other, and both in words that pass.
func TestThresholdsOfEveryCheck(t *testing.T) {
	for _, c := range thresholds {
		for _, side := range []struct {
			off  float64
			want Level
		}{{-aHair, c.below}, {aHair, c.above}} {
			in := bar()
			c.set(&in, length.Length(c.x+side.off))
			p := mustPlan(t, in)
			if got := levelOf(p, c.check); got != side.want {
				t.Errorf("%s, %s: at %v it is %v, want %v", c.check, c.what, c.x+side.off, got, side.want)
				for _, k := range p.Checks {
					if k.Name == c.check {
						t.Logf("    %s", k.Text(length.Millimetres))
					}
				}
			}
			for _, k := range p.Checks {
				checkWords(t, k)
			}
		}
	}
}

// Where the limits are the user's own, they count: with the value of a plan as its limit
// it passes, with a hair less it does not.
func TestLimitsAreTheUsers(t *testing.T) {
	for _, c := range []struct {
		check       string
		set         func(l *Limits, v float64)
		less, whole Level // with a limit a hair below the value, and a hair above
	}{
		{"gather", func(l *Limits, v float64) { l.GatherEasy = v }, Note, OK},
		{"gather", func(l *Limits, v float64) { l.GatherEasy, l.GatherMost = 0, v }, Warn, Note},
		{"thread length", func(l *Limits, v float64) { l.ArmSpans = length.Length(v) }, Note, OK},
		{"thread guard", func(l *Limits, v float64) { l.GuardNote = length.Length(v) }, OK, Note},
		{"thread guard", func(l *Limits, v float64) { l.GuardNote, l.GuardWarn = 99, length.Length(v) }, Note, Warn},
		{"hollow", func(l *Limits, v float64) { l.Drum = length.Length(v) }, OK, Note},
		{"back", func(l *Limits, v float64) { l.HeldOff = length.Length(v) }, Note, OK},
		{"mouth", func(l *Limits, v float64) { l.HandleLeft = length.Length(v) }, OK, Warn},
		{"fold", func(l *Limits, v float64) { l.FoldShare = v / 3.2 }, OK, Note},
	} {
		in := orchard()
		v := checkNamed(t, mustPlan(t, in), c.check).Value
		for off, want := range map[float64]Level{-1e-6: c.less, 1e-6: c.whole} {
			in.Limits = DefaultLimits()
			c.set(&in.Limits, v+off)
			if got := levelOf(mustPlan(t, in), c.check); got != want {
				t.Errorf("%s of %v with its limit %+g off: %v, want %v", c.check, v, off, got, want)
			}
		}
	}
}
