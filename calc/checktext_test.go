package calc

import (
	"fmt"
	"regexp"
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
		"tightest place, at the point: 0.8 mm a side to spare, room to form"},
	{"squeeze", OK, func(in *Input) { in.Sheath.Ease = -2 },
		"tightest place, at the point: 1.2 mm a side tight, room to form"},
	{"squeeze", OK, func(in *Input) { *in = orchard(); in.Sheath.Ease = 2.5 },
		"tightest place, 136.5 mm from the point: 0.25 mm a side to spare, the moulding grips it"},
	{"squeeze", OK, func(in *Input) { in.Knife = guarded(); in.Sheath.Mouth, in.Sheath.Ease = 110, 1.5 },
		"tightest place, 104.5 mm from the point: 1.1 mm a side tight, the moulding grips it"},
	{"squeeze", Note, func(in *Input) { in.Sheath.Ease = 4 },
		"tightest place, at the point: 4.8 mm a side to spare, loose: form it closely, or add a strap"},
	{"squeeze", Note, func(in *Input) { in.Sheath.Ease = -3 },
		"tightest place, at the point: 2.2 mm a side tight: form it wet and insert the knife slowly"},
	{"squeeze", Warn, func(in *Input) { in.Sheath.Ease = -4 },
		"tightest place, at the point: 3.2 mm a side too tight, the knife will not go in: add ease, or a correction of 1.7 mm from there to the mouth"},
	{"gather", OK, func(*Input) {},
		"seam nowhere longer than the welt, it lies down by itself"},
	{"gather", Note, func(in *Input) { *in = orchard() },
		"seam longer than the welt, 95 mm from the point: by 2.2 mm over 20 mm (11.0 %): ease it in wet, a little at every stitch"},
	{"gather", Warn, func(in *Input) { *in = orchard(); in.Sheath.Blend = 11 },
		"seam longer than the welt, 110.5 mm from the point: by 7.25 mm over 20 mm (36.2 %); it will pucker: make the smallest hollow larger, or move the stitch line out"},
	{"thread guard", OK, func(*Input) {},
		"edge to the rim of a hole, 5 mm beyond the point: 4.1 mm; enough leather before the thread"},
	{"thread guard", Note, func(in *Input) { in.Sheath.Gap = 3 },
		"edge to the rim of a hole, 3 mm beyond the point: 2.1 mm; little leather before the thread: stitch 0.9 mm further from the edge"},
	{"thread guard", Warn, func(in *Input) { in.Sheath.Gap = 2 },
		"edge to the rim of a hole, 2 mm beyond the point: 1.1 mm; the edge can reach the thread: stitch 1.9 mm further from the edge"},
	{"edge", OK, func(*Input) {},
		"stitch line to the finished edge, all along: 5 mm; enough to carry the stitches"},
	{"edge", Note, func(in *Input) { in.Sheath.Margin = 2 },
		"stitch line to the finished edge, all along: 2 mm; less than the leather is thick, the edge may tear: make it 3 mm"},
	{"edge", Warn, func(in *Input) { in.Sheath.Margin = 0.5 },
		"stitch line to the finished edge, all along: 0.5 mm; the holes break out of the edge: make it 3 mm"},
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
		"back, 120 mm from the point: the guard or handle, 90 mm from the point, holds the fold 4.85 mm off it: end the mouth before that, or accept the gap"},
	{"back", Note, func(in *Input) { in.Knife = guarded(); in.Knife.Stations[1].Top = 8; in.Sheath.Mouth = 80 },
		"back, 35 mm from the point: it is hollow there, or falls away, and the fold lies 2.25 mm off it: accept the gap, or form the fold in by hand"},
	{"back", Warn, func(in *Input) { in.Knife.Back = knife.Sharp },
		"sharp back, along 120 mm of fold: it cuts the leather from inside, towards the wearer: this knife wants a sheath sewn along both edges"},
	{"mouth", OK, func(in *Input) { *in = orchard() },
		"mouth, 150 mm from the point: leaves 67 mm of handle to hold"},
	{"mouth", Note, func(in *Input) { *in = orchard(); in.Sheath.Mouth = 130 },
		"mouth, 130 mm from the point: 20 mm short of the fattest part of the handle, the leather can't close behind the swell: add a strap, or end it past 150 mm"},
	{"mouth", Note, func(in *Input) { *in = orchard(); in.Sheath.Mouth = 130; in.Knife.Stations[9].At = 180 },
		"mouth, 130 mm from the point: 50 mm short of the fattest part of the handle, the leather can't close behind the swell: add a strap"},
	{"mouth", OK, func(in *Input) { *in = orchard(); in.Sheath.Mouth = 130; in.Strap = snap() },
		"mouth, 130 mm from the point: short of the fattest part of the handle, the strap holds it"},
	{"mouth", OK, func(in *Input) { in.Knife = guarded(); in.Sheath.Mouth = 89 },
		"mouth, 89 mm from the point: ends before the guard"},
	{"mouth", Note, func(in *Input) { in.Knife = guarded(); in.Sheath.Mouth = 110 },
		"mouth, 110 mm from the point: 90 mm short of the fattest part of the handle, the leather can't close behind the swell: add a strap"},
	{"mouth", Warn, func(in *Input) { *in = orchard(); in.Sheath.Mouth = 180 },
		"mouth, 180 mm from the point: its highest leather leaves 37 mm of handle to hold, less than 50 mm: end it at 167 mm"},
	{"mouth", Warn, func(in *Input) { *in = orchard(); in.Limits.HandleLeft = 230 },
		"mouth, 150 mm from the point: leaves 67 mm of a knife of 225 mm to hold: this knife is too short for a pouch"},
	{"mouth", Warn, func(in *Input) { *in = orchard(); in.Sheath.Mouth, in.Sheath.MouthRise = 160, 20 },
		"mouth, 160 mm from the point: its highest leather leaves 45 mm of handle to hold, less than 50 mm: end it at 155 mm"},
	{"strap", Note, func(in *Input) { in.Knife = guarded(); in.Sheath.Mouth = 89 },
		"mouth, 89 mm from the point: it ends 1 mm before the guard, the leather can't hold the knife by its handle: add a strap"},
	{"strap", OK, func(in *Input) {
		in.Knife = guarded()
		in.Sheath.Mouth = 89
		in.Strap = snap()
		in.Strap.At, in.Strap.Placed = 108, true
	},
		"strap round the handle, 108 mm from the point: clear of steps and of the fattest part"},
	{"strap", Note, func(in *Input) { in.Knife = guarded(); in.Sheath.Mouth = 89; in.Strap = snap() },
		"strap round the handle, 102 mm from the point: it lies over the step, 96 mm from the point, and slips: move it 6 mm away"},
	{"strap", Note, func(in *Input) {
		in.Knife = guarded()
		in.Sheath.Mouth = 89
		in.Strap = snap()
		in.Strap.At, in.Strap.Placed = 106, true
	},
		"strap round the handle, 106 mm from the point: only 1 mm beside the step, 96 mm from the point, it slips over it: move it 2 mm away"},
	{"strap", Note, func(in *Input) { *in = orchard(); in.Sheath.Mouth, in.Sheath.MouthRise = 130, 0; in.Strap = snap() },
		"strap round the handle, 142 mm from the point: it lies on the fattest part, 150 mm from the point, and slips: move it 1 mm away"},
	{"mouth corners", OK, func(in *Input) { in.Sheath.MouthRound = 4 },
		"corners of the mouth, 120 mm from the point: rounded by 4 mm"},
	{"mouth corners", Note, func(in *Input) { in.Sheath.MouthRound = 15 },
		"corners of the mouth, 120 mm from the point: rounded by 15 mm, but by 10.35 mm on the half with the tab, off the relief hole; make them alike, or the tab narrower"},
	{"mouth corners", Note, func(in *Input) {
		in.Sheath.MouthRound = 15
		in.Belt.Tab, in.Belt.Centred, in.Belt.Offset = 20, false, 21
	},
		"corners of the mouth, 120 mm from the point: rounded by 15 mm, but square on the half with the tab, which leaves no room: make the tab narrower"},
	{"mouth corners", Note, func(in *Input) { in.Sheath.MouthRound = 40; in.Belt.Loop = NoLoop },
		"corners of the mouth, 120 mm from the point: there is no room for 40 mm: rounded by 22.85 mm"},
	{"first hole", OK, func(in *Input) { in.Sheath.MouthRound, in.Stitch.First = 4, 6 },
		"first hole, 114 mm from the point: 5.4 mm from the rounded edge"},
	{"first hole", Note, func(in *Input) { in.Sheath.MouthRound = 6 },
		"first hole, 116 mm from the point: 3.75 mm from the rounded edge, less than 5 mm: raise mouth to first hole by 2.05 mm"},
	{"loop rub", OK, func(in *Input) { *in = orchard() },
		"no stitch of the loop lies on the blade"},
	{"loop rub", Note, func(in *Input) { in.Knife = guarded(); in.Sheath.Mouth = 89 },
		"stitches of the loop, 77 mm from the point: 3 lie on the blade, whose flat rubs their thread inside: sink them in a groove and cover them with a patch, or move the rows"},
	{"thickness", OK, func(*Input) {},
		"no measure of the knife stands out"},
	{"thickness", Note, func(in *Input) { *in = orchard(); in.Knife.Stations[3].Thick = 30 },
		"mark 3, 20 mm from the point: its thickness is 2.2 mm where its neighbours say 9.7 mm: is that right?|" +
			"mark 4, 45 mm from the point: thicker (30 mm) than it is deep (25.4 mm): is that right?|" +
			"mark 4, 45 mm from the point: its thickness is 30 mm where its neighbours say 2.8 mm: is that right?|" +
			"mark 5, 70 mm from the point: its thickness is 3.4 mm where its neighbours say 19.1 mm: is that right?"},
	{"thickness", Note, func(in *Input) { *in = orchard(); in.Knife.Stations[4].Bottom = 8 },
		"mark 4, 45 mm from the point: its depth is 25.4 mm where its neighbours say 12.35 mm: is that right?|" +
			"mark 5, 70 mm from the point: its depth is 8 mm where its neighbours say 26.5 mm: is that right?"},
	{"thickness", Note, func(in *Input) { o := knife.Usual(); o.Blade = 11; in.Outline = &o },
		"blade length: 11 mm where a knife of these proportions has about 110 mm: is that right?"},
	{"thickness", Note, func(in *Input) {
		o := knife.Usual()
		o.HandleThick = 30
		in.Outline, in.Knife.Stations = &o, filled(o)
	},
		"handle thickness: the knife is thicker (30 mm), 122 mm from the point, than it is deep (27 mm): is that right?"},
	{"thickness", Note, func(in *Input) {
		o := knife.Usual()
		o.Butt = 15
		in.Outline, in.Knife.Stations = &o, filled(o)
	},
		"butt depth: the knife is thicker (17 mm), 232 mm from the point, than it is deep (15 mm): is that right?"},
	{"thickness", Note, func(in *Input) {
		o := knife.Usual()
		o.Butt = 2
		in.Outline, in.Knife.Stations = &o, filled(o)
	},
		"butt depth: 2 mm where a knife of these proportions has about 27 mm: is that right?"},
	{"untouched", Note, func(in *Input) { in.Untouched = []string{"swell"} },
		"1 number of the knife is still the new project's: swell; type it, or Enter on it if it is right"},
	{"untouched", Note, func(in *Input) { in.Untouched = []string{"blade depth", "swell"} },
		"2 numbers of the knife are still the new project's: blade depth, swell; type each, or Enter on it if it is right"},
	{"unmeasured", Note, func(in *Input) { in.Unmeasured = []int{1} },
		"mark 2, 160 mm from the point: thickness not measured, nor grind height: it stands as proposed; type it, or Enter on it if it is right"},
	{"unmeasured", Note, func(in *Input) { *in = orchard(); in.Unmeasured = []int{0, 2, 3, 4, 6, 7} },
		"6 of 12 marks: thickness not measured, nor grind height: they stand as proposed, at mark 1, 3 to 5, 7, 8; type each, or Enter on it if it is right"},
	{"unmeasured", Note, func(in *Input) { in.Unmeasured = []int{7} }, ""},
	{"tab", OK, func(*Input) {},
		"tab at the mouth, 120 mm from the point: clear of fold and welt by 4.5 mm"},
	{"tab", Warn, func(in *Input) { in.Belt.Tab = 10 },
		"tab at the mouth, 120 mm from the point: 10 mm is too narrow for one stitch with its margins; make it 12 mm wide"},
	{"tab", Warn, func(in *Input) { in.Belt.Row = 50 },
		"tab at the mouth, 120 mm from the point: its stitches lie 8 mm too low for this belt; sew them 42 mm below the mouth"},
	{"tab", Warn, func(in *Input) { in.Belt.Tab = 40 },
		"tab at the mouth, 120 mm from the point: 11.35 mm too wide for the middle, between fold and welt; make the tab 28.65 mm wide"},
	{"tab", Warn, func(in *Input) { in.Belt.Tab, in.Belt.Centred, in.Belt.Offset = 34, false, 6 },
		"tab at the mouth, 120 mm from the point: 2.85 mm too wide between fold and welt; make the tab 31.15 mm wide"},
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
		"first hole of the seam, 118.5 mm from the point: less than 1 mm of leather beside it: start further from the mouth"},
}

// TestCheckTexts holds every level of every check to its words: the place,
// how much in the shown unit, and one remedy where something is to be done.
func TestCheckTexts(t *testing.T) {
	for _, c := range checkTexts {
		in := bar()
		c.change(&in)
		p := mustPlan(t, in)
		var texts []string
		for _, got := range p.Checks {
			if got.Name != c.check {
				continue
			}
			texts = append(texts, got.Text(length.Millimetres))
			if got.Level != c.level {
				t.Errorf("%s is %v, want %v: %q", c.check, got.Level, c.level, c.want)
			}
			checkWords(t, got)
		}
		if got := strings.Join(texts, "|"); got != c.want {
			t.Errorf("%s:\n got %q\nwant %q", c.check, got, c.want)
		}
	}
}

// mended are the inputs that the words of remedies name. Of two that would do the first
// that is named counts; where none is named, the one that is spoken of.
var mended = []struct{ words, key string }{
	{`add ease, or`, "sheath.ease"}, {`form it wet and`, "sheath.ease"}, {`loose: form it closely, or add a strap`, "strap.kind"},
	{`smallest hollow`, "sheath.blend"}, {`seam longer`, "sheath.blend"},
	{`further from the edge`, "sheath.gap"}, {`^stitch line.*: make it`, "sheath.margin"},
	{`^inside radius`, "sheath.leather"}, {`^thread for`, "stitch.thread"},
	{`end the mouth before|: end it at|too short for a pouch`, "sheath.mouth"}, {`^back.*hollow there`, "knife.station.top"}, {`^sharp back`, "knife.back"},
	{`^mouth.*: add a strap`, "strap.kind"}, {`^strap.*: move it`, "strap.at"},
	{`^corners.*(make them alike|there is no room)`, "sheath.mouth_round"}, {`^corners.*: make the tab narrower`, "belt.tab"},
	{`raise mouth to first hole|: start further`, "stitch.first"}, {`end further from`, "stitch.last"},
	{`or move the rows|: move its row|sew them|sew the row`, "belt.row"},
	{`^mark.*(thicker|its thickness)`, "knife.station.thick"}, {`^mark.*its depth`, "knife.station.bottom"},
	{`^blade length`, "knife.outline.blade"}, {`^handle thickness`, "knife.outline.handle_thick"}, {`^butt depth`, "knife.outline.butt"}, {`thickness not measured`, "knife.station.thick"}, {`still the new project`, "knife.outline.blade"},
	{`; make (it|the tab) .* wide|^relief hole.*: make the tab narrower`, "belt.tab"}, {`set it .* from the fold`, "belt.offset"},
	{`leave more lap`, "belt.lap"}, {`: give it a longer pitch`, "stitch.pitch"}, {`: give it a wider margin`, "sheath.margin"}, {`make it smaller`, "sheath.drain"},
}

// TestMend holds every check to the input that its remedy names.
func TestMend(t *testing.T) {
	for _, c := range checkTexts {
		in := bar()
		c.change(&in)
		for _, got := range mustPlan(t, in).Checks {
			text, keys := got.Text(length.Millimetres), map[string]bool{}
			for _, m := range mended {
				if regexp.MustCompile(m.words).MatchString(text) {
					keys[m.key] = true
				}
			}
			if in.Outline != nil && keys["knife.station.top"] { // no gap was measured
				keys = map[string]bool{"sheath.mouth": true}
			}
			switch {
			case got.Mend == "":
				t.Errorf("%s is mended nowhere: %q", got.Name, text)
			case got.Level != OK && (len(keys) != 1 || !keys[got.Mend]):
				t.Errorf("%q is mended at %s, want %v", text, got.Mend, keys)
			case strings.HasPrefix(text, "mark ") && got.Level != OK && !strings.HasPrefix(text, fmt.Sprintf("mark %d,", got.Mark+1)):
				t.Errorf("%q is of the mark at index %d", text, got.Mark)
			}
		}
	}
}

// filled are the marks of an outline.
func filled(o knife.Outline) []knife.Station {
	all, err := o.Stations()
	if err != nil {
		panic(err)
	}
	return all
}

// snap is the usual strap.
func snap() Strap { return Strap{Kind: SnapStrap, Width: 18, Thickness: 2.4, Overlap: 30} }

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
