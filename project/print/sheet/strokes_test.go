package sheet

import (
	"math"
	"slices"
	"testing"
)

// Line types are those of ISO 128-20 (from memory): wide lines are twice as wide as narrow
// ones, both of the series 0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1 mm; a dash is 12 widths long, a
// long dash 24, a gap 3, a dot half a width at most.
func TestLineTypes(t *testing.T) {
	series := []float64{0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1}
	if !slices.Contains(series, Wide.Width) || !slices.Contains(series, Thin.Width) || Wide.Width != 2*Thin.Width {
		t.Errorf("wide lines are %v, narrow ones %v", Wide.Width, Thin.Width)
	}
	if Wide.Dashes != nil || Thin.Dashes != nil || Hair.Dashes != nil || Hair.Width >= Thin.Width {
		t.Errorf("continuous lines: %v, %v, %v", Wide, Thin, Hair)
	}
	for _, c := range []struct {
		name string
		s    Stroke
		in   []float64 // widths of the line
	}{{"dashed", Dashed, []float64{12, 3}}, {"long-dash-dot", DashDot, []float64{24, 3, 0.5, 3}}, {"dotted", Dotted, []float64{0.5, 3}}} {
		if c.s.Width != Thin.Width || len(c.s.Dashes) != len(c.in) {
			t.Errorf("%s: %+v", c.name, c.s)
			continue
		}
		for i, n := range c.in {
			if got := c.s.Dashes[i] / c.s.Width; math.Abs(got-n) > 1e-9 {
				t.Errorf("%s: part %d is %v widths long, want %v", c.name, i, got, n)
			}
		}
	}
}

// No two types of line look alike: each is told from the others by weight or dashes.
func TestLineTypesDiffer(t *testing.T) {
	all := []Stroke{Wide, Thin, Hair, Dashed, DashDot, Dotted}
	for i, a := range all {
		for _, b := range all[:i] {
			if a.Width == b.Width && slices.Equal(a.Dashes, b.Dashes) {
				t.Errorf("two types are %+v", a)
			}
		}
	}
}

// Every layer is drawn, once, and what is cut lies over what is not.
func TestLayersAreListed(t *testing.T) {
	for _, l := range []Layer{CutLayer, StitchLayer, HoleLayer, FoldLayer, GlueLayer, ReliefLayer, WeltLayer, StrapLayer, MarkLayer, TrialLayer, ScaleLayer, RegisterLayer, WordLayer, MapLayer} {
		n := 0
		for _, k := range Layers {
			if k == l {
				n++
			}
		}
		if n != 1 {
			t.Errorf("%s is listed %d times", l, n)
		}
	}
	if slices.Index(Layers, CutLayer) < slices.Index(Layers, GlueLayer) || slices.Index(Layers, HoleLayer) < slices.Index(Layers, StitchLayer) {
		t.Error("a glue line is drawn over the cut line, or the stitch line over the holes")
	}
}
