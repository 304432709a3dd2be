package report

import (
	"encoding/json"
	"fmt"
	"math"
	"strconv"
	"strings"

	"chape/calc/curve"
	"chape/calc/length"
	"chape/calc/trace"
)

// ReadTo says how true a picture was read, of the root mean square of what was left over,
// mm: never finer than a tenth, which no pencil is.
func ReadTo(rms float64, u length.Unit) string {
	return Small(max(0.1, math.Ceil(rms*20)/20), u)
}

// Small shows how far something is off, mm: in inches as a decimal, for a fraction of 1/64
// would call what is less nothing.
func Small(mm float64, u length.Unit) string {
	if u == length.Inches {
		return strconv.FormatFloat(length.Length(mm).In(), 'f', 3, 64) + " in"
	}
	return length.Length(mm).Format(u, length.Calliper)
}

// TracingSummary says in one line how true a picture was read.
func TracingSummary(r trace.Reading, u length.Unit) string {
	show := func(mm float64) string { return length.Length(mm).Format(u, length.Calliper) }
	s := fmt.Sprintf("read to about %s; sheet flat", ReadTo(r.Residual.RMS, u))
	switch n := len(r.Gaps); {
	case n == 1:
		s += fmt.Sprintf("; one gap of %s bridged", show(r.Gaps[0]))
	case n > 1:
		long := 0.0
		for _, g := range r.Gaps {
			long = max(long, g)
		}
		s += fmt.Sprintf("; %d gaps bridged, the longest %s", n, show(long))
	}
	return s
}

// TracingPage says what was read of a picture, for the plain command.
func TracingPage(r trace.Reading, u length.Unit) string {
	show := func(mm float64) string { return length.Length(mm).Format(u, length.Calliper) }
	var b strings.Builder
	fmt.Fprintf(&b, "sheet      %s × %s\n", show(r.Sheet.Width), show(r.Sheet.Height))
	off, at := func(mm float64) string { return fmt.Sprintf("%.2f mm", mm) }, func(mm float64) string { return fmt.Sprintf("%.0f mm", mm) }
	if u == length.Inches {
		off = func(mm float64) string { return Small(mm, u) }
		at = func(mm float64) string { return length.Length(mm).Format(u, length.Ruler) }
	}
	fmt.Fprintf(&b, "residual   %s, at worst %s at %s across, %s along\n", off(r.Residual.RMS), off(r.Residual.Worst), at(r.Residual.At.X), at(r.Residual.At.Y))
	fmt.Fprintf(&b, "tracing    %s\n", TracingSummary(r, u))
	lo, hi := r.Outline.Bounds()
	switch r.Of {
	case trace.Pattern:
		p := r.Pattern
		what := "half a pattern, or a folded one"
		if p.Whole {
			what = fmt.Sprintf("a whole pattern; its halves differ by %s, at most %s: cut to about %s", Small(p.Off, u), Small(p.Worst, u), Small(p.Off/2, u))
		}
		fmt.Fprintf(&b, "pattern    %s\n\n%10s %10s\n", what, "x", "half-width")
		for i, w := range p.Half {
			if i%10 == 0 || i == len(p.Half)-1 {
				fmt.Fprintf(&b, "%10s %10s\n", show(w.X), show(w.Y))
			}
		}
	case trace.Leather:
		fmt.Fprintf(&b, "leather    %s × %s, %s\n", show(hi.X-lo.X), show(hi.Y-lo.Y), length.Area(math.Abs(r.Outline.Area())).Format(u))
	default:
		tracedKnife(&b, r, u)
	}
	return b.String()
}

func tracedKnife(b *strings.Builder, r trace.Reading, u length.Unit) {
	show := func(mm float64) string { return length.Length(mm).Format(u, length.Calliper) }
	fmt.Fprintf(b, "line       %s wide; the knife is taken %s inside its middle\n", Small(r.Line, u), Small(r.Standoff, u))
	fmt.Fprintf(b, "knife      %s long\n", show(r.Knife.Length()))
	var steps []string
	for _, s := range r.Knife.Steps {
		steps = append(steps, show(s))
	}
	if len(steps) > 0 {
		fmt.Fprintf(b, "steps      %s\n", strings.Join(steps, ", "))
	} else {
		b.WriteString("steps      none: strokes outwards from the line mark them\n")
	}
	off, at := r.Knife.Off()
	fmt.Fprintf(b, "marks      %d; their curves stay within %s of the outline (at %s)\n\n", len(r.Knife.Marks), Small(off, u), show(at))
	fmt.Fprintf(b, "%10s %10s %10s\n", "at", "gap", "depth")
	for _, m := range r.Knife.Marks {
		fmt.Fprintf(b, "%10s %10s %10s\n", show(m.At), show(m.Gap), show(m.Depth))
	}
}

type place [2]float64

func placeOf(v curve.Vec) place { return place{rounded(v.X, 1000), rounded(v.Y, 1000)} }

func rounded(v, to float64) float64 { return math.Round(v*to) / to }

func placesOf(l curve.Line) []place {
	out := make([]place, len(l))
	for i, v := range l {
		out[i] = placeOf(v)
	}
	return out
}

type tracingJSON struct {
	Sheet struct {
		Width   float64 `json:"width"`
		Height  float64 `json:"height"`
		Version int     `json:"version"`
	} `json:"sheet"`
	Residual struct {
		RMS   float64 `json:"rms"`
		Worst float64 `json:"worst"`
		At    place   `json:"at"`
	} `json:"residual"`
	Of      string        `json:"of"`
	Gaps    []float64     `json:"closed_gaps"`
	Outline []place       `json:"outline"`
	Fold    *foldJSON     `json:"fold,omitempty"`
	Marks   []tracedMark  `json:"marks,omitempty"`
	Steps   *[]float64    `json:"steps,omitempty"`
	Line    float64       `json:"line,omitempty"`
	Stand   float64       `json:"standoff,omitempty"`
	Whole   *bool         `json:"whole,omitempty"`
	Differ  *float64      `json:"halves_differ,omitempty"`
	Halves  []tracedWidth `json:"half_widths,omitempty"`
}

type foldJSON struct {
	From place `json:"from"`
	To   place `json:"to"`
}

type tracedMark struct {
	At    float64 `json:"at"`
	Gap   float64 `json:"gap"`
	Depth float64 `json:"depth"`
}

type tracedWidth struct {
	X float64 `json:"x"`
	Y float64 `json:"y"`
}

// TracingJSON is a reading for other programs: lengths in mm, places in the frame's own axes.
func TracingJSON(r trace.Reading) ([]byte, error) {
	out := tracingJSON{Of: r.Of.String(), Gaps: append([]float64{}, r.Gaps...), Outline: placesOf(r.Outline)}
	out.Sheet.Width, out.Sheet.Height, out.Sheet.Version = r.Sheet.Width, r.Sheet.Height, r.Sheet.Version
	out.Residual.RMS, out.Residual.Worst = rounded(r.Residual.RMS, 1000), rounded(r.Residual.Worst, 1000)
	out.Residual.At = placeOf(r.Residual.At)
	switch r.Of {
	case trace.Knife:
		from, to := r.Knife.Fold()
		out.Fold = &foldJSON{placeOf(from), placeOf(to)}
		for _, m := range r.Knife.Marks {
			out.Marks = append(out.Marks, tracedMark(m))
		}
		steps := append([]float64{}, r.Knife.Steps...)
		out.Steps = &steps
		out.Line, out.Stand = rounded(r.Line, 1000), rounded(r.Standoff, 1000)
	case trace.Pattern:
		p := r.Pattern
		long := 0.0
		if n := len(p.Half); n > 0 {
			long = p.Half[n-1].X
		}
		out.Fold = &foldJSON{placeOf(p.From), placeOf(p.Out(curve.Vec{X: long}))}
		off := rounded(p.Off, 1000)
		out.Whole, out.Differ = &p.Whole, &off
		for _, w := range p.Half {
			out.Halves = append(out.Halves, tracedWidth{rounded(w.X, 1000), rounded(w.Y, 1000)})
		}
	}
	data, err := json.Marshal(out)
	return append(data, '\n'), err
}
