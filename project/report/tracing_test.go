package report

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"chape/calc/curve"
	"chape/calc/length"
	"chape/calc/trace"
	"chape/calc/trace/axes"
)

// traced is a reading of an invented knife, a straight back and a belly, 100 mm long.
func traced() trace.Reading {
	var l curve.Line
	for x := 0.0; x <= 100; x += 0.5 {
		l = append(l, curve.Vec{X: 20 + x, Y: 40 + 20*math.Sqrt(x/100)})
	}
	for x := 100.0; x >= 0; x -= 0.5 {
		l = append(l, curve.Vec{X: 20 + x, Y: 40})
	}
	r := trace.Reading{Of: trace.Knife, Outline: l, Gaps: []float64{1.26}, Line: 0.52, Standoff: 0.26}
	r.Sheet = trace.Sheet{Width: 175, Height: 265, Version: 1}
	r.Residual.RMS, r.Residual.Worst, r.Residual.At = 0.0514, 0.1436, curve.Vec{X: 170.2, Y: 40.4}
	r.Knife = axes.NewKnife(l, nil)
	return r
}

// A picture is never said to be read truer than to a tenth, and never truer than it was: what
// was left over is rounded up to twentieths. In inches small figures are decimals, for a 64th
// would call them nothing (0.1 mm is 0.0039 in).
func TestReadTo(t *testing.T) {
	for rms, want := range map[float64]string{0: "0.1 mm", 0.02: "0.1 mm", 0.1: "0.1 mm", 0.101: "0.15 mm", 0.149: "0.15 mm", 0.151: "0.2 mm", 1.01: "1.05 mm"} {
		if got := ReadTo(rms, length.Millimetres); got != want {
			t.Errorf("ReadTo(%v) = %q, want %q", rms, got, want)
		}
	}
	for rms, want := range map[float64]string{0: "0.004 in", 0.151: "0.008 in"} {
		if got := ReadTo(rms, length.Inches); got != want {
			t.Errorf("ReadTo(%v) = %q, want %q", rms, got, want)
		}
	}
	for mm, want := range map[float64][2]string{0.26: {"0.25 mm", "0.010 in"}, 0.52: {"0.5 mm", "0.020 in"}, 0: {"0 mm", "0.000 in"}} {
		if a, b := Small(mm, length.Millimetres), Small(mm, length.Inches); a != want[0] || b != want[1] {
			t.Errorf("Small(%v) = %q, %q, want %q", mm, a, b, want)
		}
	}
}

// In one line: how true, and what was bridged, the longest of several.
func TestTracingSummary(t *testing.T) {
	r := traced()
	for want, gaps := range map[string][]float64{
		"read to about 0.1 mm; sheet flat": nil, "read to about 0.1 mm; sheet flat; one gap of 1.25 mm bridged": {1.26},
		"read to about 0.1 mm; sheet flat; 3 gaps bridged, the longest 2.4 mm": {1.26, 2.4, 0.3},
	} {
		r.Gaps = gaps
		if got := TracingSummary(r, length.Millimetres); got != want {
			t.Errorf("%v: %q, want %q", gaps, got, want)
		}
	}
}

// words is a page with its blanks made one.
func words(s string) string { return strings.Join(strings.Fields(s), " ") }

// What is said of a knife: the sheet, how true, the line and what is taken off it, how long it
// is, its steps or how to mark them, and each mark, in the maker's unit throughout.
func TestTracingPageOfAKnife(t *testing.T) {
	r := traced()
	page := words(TracingPage(r, length.Millimetres))
	for _, want := range []string{"sheet 175 mm × 265 mm", "residual 0.05 mm, at worst 0.14 mm at 170 mm across, 40 mm along", "one gap of 1.25 mm bridged",
		"line 0.5 mm wide; the knife is taken 0.25 mm inside its middle", "knife 100 mm long", "steps none: strokes outwards from the line mark them", "at gap depth 0 mm"} {
		if !strings.Contains(page, want) {
			t.Errorf("no %q in %s", want, page)
		}
	}
	for _, m := range r.Knife.Marks {
		show := func(mm float64) string { return length.Length(mm).Format(length.Millimetres, length.Calliper) }
		if row := show(m.At) + " " + show(m.Gap) + " " + show(m.Depth); !strings.Contains(page, row) {
			t.Errorf("no mark %q in %s", row, page)
		}
	}
	inches := words(TracingPage(r, length.Inches))
	for _, want := range []string{"sheet 6 57/64 in × 10 7/16 in", "residual 0.002 in, at worst 0.006 in at 6 11/16 in across, 1 19/32 in along", "line 0.020 in wide; the knife is taken 0.010 in inside"} {
		if !strings.Contains(inches, want) {
			t.Errorf("no %q in %s", want, inches)
		}
	}
	if strings.Contains(inches, "mm") {
		t.Errorf("a page in inches has millimetres: %s", inches)
	}
	r.Knife.Steps = []float64{40.06, 52}
	if got := words(TracingPage(r, length.Millimetres)); !strings.Contains(got, "steps 40.05 mm, 52 mm") {
		t.Errorf("steps: %s", got)
	}
}

// Of a piece of leather the size of its upright rectangle and its area: 100 × 20 mm with a
// parabola for one side, two thirds of the rectangle, 13.33 cm², 2.07 in².
func TestTracingPageOfLeather(t *testing.T) {
	r := traced()
	r.Of = trace.Leather
	if got := words(TracingPage(r, length.Millimetres)); !strings.HasSuffix(got, "leather 100 mm × 20 mm, 13 cm²") {
		t.Errorf("%s", got)
	}
	if got := words(TracingPage(r, length.Inches)); !strings.HasSuffix(got, "leather 3 15/16 in × 25/32 in, 2.1 in²") {
		t.Errorf("%s", got)
	}
}

// Of an earlier pattern every tenth half-width and the last, and of a whole one how far its
// halves differ: it was cut to half of that.
func TestTracingPageOfAPattern(t *testing.T) {
	r := traced()
	r.Of = trace.Pattern
	r.Pattern = axes.Pattern{Whole: true, Off: 0.8, Worst: 1.5}
	for x := range 24 {
		r.Pattern.Half = append(r.Pattern.Half, axes.Width{X: float64(x), Y: 30 + float64(x)})
	}
	got := words(TracingPage(r, length.Millimetres))
	for _, want := range []string{"pattern a whole pattern; its halves differ by 0.8 mm, at most 1.5 mm: cut to about 0.4 mm", "x half-width 0 mm 30 mm 10 mm 40 mm 20 mm 50 mm 23 mm 53 mm"} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in %s", want, got)
		}
	}
	r.Pattern.Whole = false
	if got := words(TracingPage(r, length.Millimetres)); !strings.Contains(got, "half a pattern, or a folded one") || strings.Contains(got, "differ") {
		t.Errorf("of a half: %s", got)
	}
}

// The JSON of a reading has what plan and tracing notes name, lengths in mm to a thousandth
// (places and residual), and of each kind only what it is about.
func TestTracingJSON(t *testing.T) {
	read := func(r trace.Reading) map[string]any {
		t.Helper()
		data, err := TracingJSON(r)
		if err != nil || data[len(data)-1] != '\n' {
			t.Fatalf("%v, %q", err, data)
		}
		var out map[string]any
		if err := json.Unmarshal(data, &out); err != nil {
			t.Fatal(err)
		}
		return out
	}
	r := traced()
	r.Knife.Steps = []float64{40.5, 52}
	got := flat(read(r), "", map[string]any{})
	for path, want := range map[string]any{"sheet.width": 175.0, "sheet.height": 265.0, "sheet.version": 1.0, "residual.rms": 0.051, "residual.worst": 0.144, "residual.at.0": 170.2, "residual.at.1": 40.4,
		"of": "knife", "closed_gaps.0": 1.26, "outline.0.0": 20.0, "outline.0.1": 40.0, "steps.0": 40.5, "steps.1": 52.0, "line": 0.52, "standoff": 0.26,
		"marks.0.at": r.Knife.Marks[0].At, "marks.1.gap": r.Knife.Marks[1].Gap, "marks.1.depth": r.Knife.Marks[1].Depth} {
		if got[path] != want {
			t.Errorf("%s is %v, want %v", path, got[path], want)
		}
	}
	from, to := r.Knife.Fold()
	fold := read(r)["fold"].(map[string]any)
	for key, v := range map[string]curve.Vec{"from": from, "to": to} {
		place := fold[key].([]any)
		if math.Abs(place[0].(float64)-v.X) > 0.0005 || math.Abs(place[1].(float64)-v.Y) > 0.0005 {
			t.Errorf("the fold's %s is %v, want %v", key, place, v)
		}
	}
	r.Gaps, r.Knife.Steps = nil, nil
	if none := read(r); none["closed_gaps"] == nil || none["steps"] == nil {
		t.Errorf("without gaps and steps: %v, %v, want empty lists", none["closed_gaps"], none["steps"])
	}
	r.Of, r.Pattern = trace.Pattern, axes.Pattern{Axes: axes.Axes{From: curve.Vec{X: 1, Y: 2}, Along: curve.Vec{X: 1}, Down: curve.Vec{Y: 1}}, Whole: true, Off: 0.8004, Half: []axes.Width{{X: 0, Y: 30.1234}, {X: 7, Y: 31}}}
	pattern := flat(read(r), "", map[string]any{})
	for path, want := range map[string]any{"of": "pattern", "whole": true, "halves_differ": 0.8, "half_widths.0.y": 30.123, "half_widths.1.x": 7.0, "fold.from.0": 1.0, "fold.to.0": 8.0, "fold.to.1": 2.0} {
		if pattern[path] != want {
			t.Errorf("of a pattern %s is %v, want %v", path, pattern[path], want)
		}
	}
	r.Of = trace.Leather
	leather := read(r)
	for _, key := range []string{"fold", "marks", "steps", "line", "standoff", "whole", "half_widths"} {
		if _, there := leather[key]; there {
			t.Errorf("of leather %s is %v", key, leather[key])
		}
	}
	if leather["of"] != "leather" || len(leather["outline"].([]any)) != len(r.Outline) {
		t.Errorf("of leather: %v, %d places", leather["of"], len(leather["outline"].([]any)))
	}
}
