package calc

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"chape/calc/knife"
	"chape/calc/length"
)

// checkTexts are the words of every level of every check, on the bar changed.
var checkTexts = []struct {
	check  string
	level  Level
	change func(*Input)
	want   string
}{
	{"squeeze", OK, func(*Input) {},
		"tightest place, at the point: 0.8 mm a side to spare, the moulding holds the knife"},
	{"squeeze", OK, func(in *Input) { in.Sheath.Ease = -2 },
		"tightest place, at the point: 1.2 mm a side tight, the moulding holds the knife"},
	{"squeeze", Note, func(in *Input) { in.Sheath.Ease = 4 },
		"tightest place, at the point: 4.8 mm a side to spare, loose: form it closely all along"},
	{"squeeze", Note, func(in *Input) { in.Sheath.Ease = -3 },
		"tightest place, at the point: 2.2 mm a side tight: form it wet and insert the knife slowly"},
	{"squeeze", Warn, func(in *Input) { in.Sheath.Ease = -4 },
		"tightest place, at the point: 3.2 mm a side too tight, the knife will not go in: add a correction of 1.7 mm from there to the mouth"},
	{"gather", OK, func(*Input) {},
		"seam nowhere longer than the welt, it lies down by itself"},
	{"gather", Note, func(in *Input) { *in = orchard() },
		"seam longer than the welt, 95 mm from the point: by 2.2 mm over 20 mm (11.1 %): ease it in wet, a little at every stitch"},
	{"gather", Warn, func(in *Input) { *in = orchard(); in.Sheath.Blend = 10 },
		"seam longer than the welt, 111 mm from the point: by 7.9 mm over 20 mm (39.6 %); it will pucker: make the smallest hollow larger"},
	{"thread guard", OK, func(*Input) {},
		"knife to the rim of a hole, 5 mm beyond the point: 4.4 mm; enough leather before the thread"},
	{"thread guard", Note, func(in *Input) { in.Sheath.Gap = 3 },
		"knife to the rim of a hole, 3 mm beyond the point: 2.4 mm; little leather before the thread: stitch 0.6 mm further from the knife"},
	{"thread guard", Warn, func(in *Input) { in.Sheath.Gap = 2 },
		"knife to the rim of a hole, 2 mm beyond the point: 1.4 mm; the edge can reach the thread: stitch 1.6 mm further from the knife"},
	{"edge", OK, func(*Input) {},
		"stitch line to the rim, all along: 5 mm; enough to carry the stitches"},
	{"edge", Note, func(in *Input) { in.Sheath.Margin = 2 },
		"stitch line to the rim, all along: 2 mm; less than the leather is thick, the rim may tear: make it 3 mm"},
	{"edge", Warn, func(in *Input) { in.Sheath.Margin = 0.5 },
		"stitch line to the rim, all along: 0.5 mm; the holes break out of the rim: make it 3 mm"},
	{"hollow", OK, func(in *Input) { in.Sheath.Blend = 60 },
		"smallest hollow of the cut line: 110 mm across; your smallest drum goes in"},
	{"hollow", Note, func(*Input) {},
		"smallest hollow of the cut line: 14 mm across; your smallest drum will not go in: make it 50 mm"},
	{"fold", OK, func(*Input) {},
		"inside radius at the fold, at the point: 3 mm for leather of 3 mm; it folds without cracking"},
	{"fold", Note, func(in *Input) { *in = orchard(); in.Sheath.Welt, in.Sheath.Leather = 2, 5 },
		"inside radius at the fold, at the point: 1 mm for leather of 5 mm; thin for it: dampen the fold well before folding"},
	{"thread length", OK, func(*Input) {},
		"thread for the seam: 1.53 m in one piece"},
	{"thread length", Note, func(in *Input) { in.Stitch.Pitch, in.Stitch.Tail = 2, 1000 },
		"thread for the seam: 4.01 m, longer than two arm spans (3.40 m): split it, the second from where the first ends"},
	{"back", OK, func(*Input) {},
		"the fold lies against the back of the knife"},
	{"back", Note, func(in *Input) { in.Knife = guarded() },
		"guard proud of the back, 90 mm from the point: it holds the fold 4 mm off the blade: end the mouth before it, or accept the gap"},
	{"back", Warn, func(in *Input) { in.Knife.Back = knife.Sharp },
		"sharp back, along 120 mm of fold: it cuts the leather from inside, towards the wearer: this knife wants a sheath sewn along both edges"},
	{"mouth", OK, func(in *Input) { in.Sheath.Mouth = 100 },
		"mouth, 100 mm from the point: leaves 60 mm of handle to hold"},
	{"mouth", Note, func(in *Input) { *in = orchard(); in.Sheath.Mouth = 130 },
		"mouth, 130 mm from the point: 20 mm short of the fattest part of the handle, the leather can't close behind the swell: end it past 150 mm"},
	{"mouth", Note, func(in *Input) { *in = orchard(); in.Sheath.Mouth = 130; in.Knife.Stations[9].At = 180 },
		"mouth, 130 mm from the point: 50 mm short of the fattest part of the handle, the leather can't close behind the swell: add a strap"},
	{"mouth", OK, func(in *Input) { in.Knife = guarded(); in.Sheath.Mouth = 89 },
		"mouth, 89 mm from the point: ends before the guard"},
	{"strap", Note, func(in *Input) { in.Knife = guarded(); in.Sheath.Mouth = 89 },
		"mouth, 89 mm from the point: it ends 1 mm before the guard, the leather can't hold the knife by its handle: add a strap"},
	{"mouth", Note, func(in *Input) { in.Knife = guarded(); in.Sheath.Mouth = 110 },
		"mouth, 110 mm from the point: 90 mm short of the fattest part of the handle, the leather can't close behind the swell: add a strap"},
	{"mouth", Warn, func(*Input) {},
		"mouth, 120 mm from the point: leaves 40 mm of handle to hold, less than 50 mm: end it at 110 mm"},
	{"mouth", Warn, func(in *Input) { in.Knife.Stations[1].At = 45; in.Sheath.Mouth = 30 },
		"mouth, 30 mm from the point: leaves 15 mm of a knife of 45 mm to hold: this knife is too short for a pouch"},
	{"mouth corners", OK, func(in *Input) { in.Sheath.MouthRound = 4 },
		"corners of the mouth, 120 mm from the point: rounded by 4 mm"},
	{"mouth corners", Note, func(in *Input) { in.Sheath.MouthRound = 15 },
		"corners of the mouth, 120 mm from the point: rounded by 15 mm they take 3.8 mm off the end of the stitch line: round them by 5 mm"},
	{"tab", OK, func(*Input) {},
		"tab at the mouth, 120 mm from the point: clear of fold and welt by 4.5 mm"},
	{"tab", Warn, func(in *Input) { in.Belt.Tab = 10 },
		"tab at the mouth, 120 mm from the point: 10 mm is too narrow for one stitch with its margins; make it 12 mm wide"},
	{"tab", Warn, func(in *Input) { in.Belt.Row = 50 },
		"tab at the mouth, 120 mm from the point: its stitches lie 8 mm too low for this belt; sew them 42 mm below the mouth"},
	{"tab", Warn, func(in *Input) { in.Belt.Tab = 40 },
		"tab at the mouth, 120 mm from the point: 8.85 mm too wide between fold and welt; make the tab 31.15 mm wide"},
	{"tab", Warn, func(in *Input) { in.Belt.Tab = 40; in.Sheath.Leather = 9 },
		"tab at the mouth, 120 mm from the point: 16.15 mm too wide between fold and welt; make the tab 23.85 mm wide"},
	{"tab", Warn, func(in *Input) { in.Belt.Centred, in.Belt.Offset = false, 4 },
		"tab at the mouth, 120 mm from the point: 2 mm too near the fold; set it 6 mm from the fold"},
	{"tab", Warn, func(in *Input) { in.Belt.Centred, in.Belt.Offset = false, 20 },
		"tab at the mouth, 120 mm from the point: its stitches run 2.85 mm into the welt; set it 17.15 mm from the fold"},
	{"holes", Warn, func(in *Input) { in.Stitch.First = 0 },
		"first hole of the seam, 120 mm from the point: less than 1 mm of leather beside it: start further from the mouth"},
	{"holes", Warn, func(in *Input) { in.Stitch.Last = 0 },
		"last hole of the seam, 5 mm beyond the point: less than 1 mm of leather to the fold: end further from it"},
	{"holes", Warn, func(in *Input) { in.Belt.Lap = 0 },
		"hole of the loop's lap, 203 mm from the point: less than 1 mm of leather beside it: leave more lap"},
	{"holes", Warn, func(in *Input) { in.Belt.Row = 155 },
		"hole of the loop, 35 mm beyond the point: less than 1 mm of leather beside it: move its row or its tab"},
	{"holes", Warn, func(in *Input) { in.Stitch.Pitch = 1 },
		"hole of the loop's lap, 203 mm from the point: less than 1 mm of leather beside it: give it a longer pitch, or a wider tab"},
	{"holes", Warn, func(in *Input) { in.Sheath.Margin = 0.5 },
		"first hole of the seam, 116 mm from the point: less than 1 mm of leather beside it: start further from the mouth, or give it a wider margin"},
	{"holes", Warn, func(in *Input) { in.Belt.Centred, in.Belt.Offset = false, 1 },
		"relief hole at the tab's corner, 120 mm from the point: it reaches the fold or the rim: make the tab narrower, or move it"},
	{"holes", Warn, func(in *Input) { in.Stitch.First = 1.7; in.Belt.Centred, in.Belt.Offset = false, 20 },
		"first hole of the seam, 118.5 mm from the point: less than 1 mm of leather beside it: start further from the mouth, or give it a wider margin"},
}

// TestCheckTexts holds every level of every check to its words: the place,
// how much in the shown unit, and one remedy where something is to be done.
func TestCheckTexts(t *testing.T) {
	for _, c := range checkTexts {
		in := bar()
		c.change(&in)
		p := mustPlan(t, in)
		if !slices.ContainsFunc(p.Checks, func(got Check) bool { return got.Name == c.check }) {
			t.Errorf("there is no check %q, want %q", c.check, c.want)
		}
		for _, got := range p.Checks {
			if got.Name == c.check {
				if text := got.Text(length.Millimetres); text != c.want || got.Level != c.level {
					t.Errorf("%s:\n got %v, %q\nwant %v, %q", c.check, got.Level, text, c.level, c.want)
				}
				checkWords(t, got)
			}
		}
	}
}

// checkWords: figures have units, the inch text has no millimetres, and a
// note or a warning has a remedy after its colon or semicolon.
func checkWords(t *testing.T, c Check) {
	t.Helper()
	mm, in := c.Text(length.Millimetres), c.Text(length.Inches)
	if strings.Contains(in, " mm") || strings.Contains(mm, " in ") && regexp.MustCompile(`\d in\b`).MatchString(mm) {
		t.Errorf("%s mixes units: %q, %q", c.Name, mm, in)
	}
	if c.Level != OK && (!regexp.MustCompile(`\d`).MatchString(mm) || !strings.ContainsAny(mm, ";:")) {
		t.Errorf("%s names no figure or no remedy: %q", c.Name, mm)
	}
	if strings.Contains(mm, "-") || strings.Contains(mm, "NaN") || strings.Contains(mm, "%!") {
		t.Errorf("%s: %q", c.Name, mm)
	}
}

// guarded is a knife whose guard stands proud of the blade's back.
func guarded() knife.Knife {
	mark := func(at, top, bottom, thick length.Length, k knife.Kind) knife.Station {
		return knife.Station{At: at, Top: top, Bottom: bottom, Thick: thick, Kind: k, Bevel: 1}
	}
	return knife.Knife{Stations: []knife.Station{
		mark(0, 6, 6, 1, knife.Blade), mark(30, 4, 25, 3, knife.Blade), mark(90, 4, 28, 4, knife.Blade),
		mark(90, 0, 34, 10, knife.Slab), mark(96, 0, 34, 10, knife.Slab),
		mark(96, 3, 28, 16, knife.Oval), mark(200, 3, 28, 18, knife.Oval),
	}}
}
