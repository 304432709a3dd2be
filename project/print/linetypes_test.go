package print

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"chape/calc"
	"chape/calc/curve"
	"chape/project/print/printtest"
	"chape/project/print/sheet"
)

// sheetPages are the pages of a print at true size, as read back from the bytes.
func sheetPages(t *testing.T, o Options, change func(*job)) []readPage {
	t.Helper()
	p := garden()
	j, err := newJob(p, compute(t, p), o)
	if err != nil {
		t.Fatal(err)
	}
	if change != nil {
		change(j)
	}
	data, err := j.document(j.pages()).Bytes(false)
	if err != nil {
		t.Fatal(err)
	}
	var out []readPage
	for _, q := range readPDF(t, data) {
		if len(q.Circles(sheet.ScaleLayer)) > 0 {
			out = append(out, q)
		}
	}
	return out
}

// look is how a line is drawn: its width and dashes to a hundredth of a millimetre.
func look(p printtest.Path) string { return fmt.Sprintf("%.2f %.2f", p.Width, p.Dashes) }

// Line types in the bytes, as ISO 128-20 has them for what the issue of a drawing asks (from
// memory): what is cut wide and continuous, stitches dashed, the glue line thin and
// continuous, the fold long-dash-dot; no line of a layer is drawn otherwise.
func TestLineTypesOnPaper(t *testing.T) {
	want := map[sheet.Layer][]string{
		sheet.CutLayer: {"0.50 []"}, sheet.WeltLayer: {"0.50 []"}, sheet.ReliefLayer: {"0.50 []"}, sheet.GlueLayer: {"0.25 []"}, sheet.StitchLayer: {"0.25 [3.00 0.75]"},
		sheet.FoldLayer: {"0.25 [6.00 0.75 0.12 0.75]", "0.25 []"}, // thin: the mouth under the tab
		sheet.HoleLayer: {"0.15 []"}, sheet.MarkLayer: {"0.15 []", "0.25 []"}, sheet.RegisterLayer: {"0.25 [0.12 0.75]", "0.25 []"}, sheet.ScaleLayer: {"0.15 []"},
	}
	seen := map[sheet.Layer]map[string]bool{}
	for _, q := range sheetPages(t, Options{}, nil) {
		for _, p := range q.Paths {
			if want[p.Layer] == nil {
				continue
			}
			if seen[p.Layer] == nil {
				seen[p.Layer] = map[string]bool{}
			}
			seen[p.Layer][look(p)] = true
		}
	}
	for l, types := range want {
		var got []string
		for s := range seen[l] {
			got = append(got, strings.ReplaceAll(s, "0.13", "0.12")) // 0.125
		}
		slices.Sort(got)
		slices.Sort(types)
		if !slices.Equal(got, types) {
			t.Errorf("%s is drawn %q, want %q", l, got, types)
		}
	}
}

// A line in the legend looks like those it stands for: the sample left of its words has the
// width and the dashes of a line on that layer of the sheet.
func TestLegendLooksLikeTheLines(t *testing.T) {
	layers := map[string][]sheet.Layer{"cut: the middle of the line": {sheet.CutLayer, sheet.WeltLayer}, "stitch line": {sheet.StitchLayer}, "glue line": {sheet.GlueLayer}, "fold": {sheet.FoldLayer},
		"knife": {sheet.MarkLayer}, "tick: match body and welt": {sheet.MarkLayer}, "joint: trim here": {sheet.RegisterLayer}}
	found := map[string]bool{}
	knife := ""
	for n, q := range sheetPages(t, Options{}, nil) {
		for _, w := range q.Texts {
			if layers[w.Says] == nil || w.Layer != sheet.WordLayer || math.Abs(w.Size-frameSize) > 0.01 {
				continue
			}
			sample := ""
			for _, p := range q.Paths {
				end := p.Pts[len(p.Pts)-1]
				if p.Layer == sheet.WordLayer && len(p.Pts) == 2 && math.Abs(end.X-(w.At.X-1.5)) < 0.02 && math.Abs(end.Y-(w.At.Y-0.9)) < 0.02 {
					sample = look(p)
				}
			}
			like := slices.ContainsFunc(q.Paths, func(p printtest.Path) bool {
				return slices.Contains(layers[w.Says], p.Layer) && look(p) == sample && (w.Says != "fold" || len(p.Dashes) > 0)
			})
			if sample == "" || !like {
				t.Errorf("sheet %d: %q is shown as %q, no such line is on it", n+1, w.Says, sample)
			}
			if w.Says == "knife" {
				knife = sample
			} else if strings.HasPrefix(w.Says, "tick") && sample == knife {
				t.Errorf("sheet %d: knife and ticks are both %s", n+1, sample)
			}
			found[w.Says] = true
		}
	}
	if len(found) != len(layers) {
		t.Errorf("only %v are in a legend", found)
	}
}

// The rule measures 4 in, 101.6 mm, in the bytes of every sheet, and stands clear of pricks and
// words.
func TestRuleOnPaper(t *testing.T) {
	for n, q := range sheetPages(t, Options{}, nil) {
		long, rule := 0.0, curve.Line{}
		for _, p := range q.Paths {
			if p.Layer == sheet.ScaleLayer && len(p.Pts) == 2 && p.Pts.Length() > long {
				long, rule = p.Pts.Length(), p.Pts
			}
		}
		if math.Abs(long-101.6) > 0.01 {
			t.Errorf("sheet %d: the rule is %.3f mm long", n+1, long)
		}
		for _, c := range q.Circles(sheet.ScaleLayer) {
			if d := toSegment(c.At, rule[0], rule[1]); d < 4 {
				t.Errorf("sheet %d: a prick stands %.1f mm from the rule", n+1, d)
			}
		}
	}
}

// halves gives the places of a layer of the whole pattern on one sheet, right and left of the
// fold, both as distances from it.
func halvesOf(q readPage, l sheet.Layer, fold float64) (right, left curve.Line) {
	for _, p := range q.Paths {
		if p.Layer != l {
			continue
		}
		for _, v := range p.Pts {
			if v.X > fold {
				right = append(right, curve.Vec{X: v.X - fold, Y: v.Y})
			} else {
				left = append(left, curve.Vec{X: fold - v.X, Y: v.Y})
			}
		}
	}
	return right, left
}

// The two halves are alike about the fold: stitch line, glue line and the holes of the seam lie
// on the one as on the other, to what the bytes can say; the back has the tab beside.
func TestHalvesAreAlikeAboutTheFold(t *testing.T) {
	p := garden()
	p.Belt.Loop = calc.NoLoop
	data, err := PDF(p, compute(t, p), Options{Paper: paper(t, "a3")})
	if err != nil {
		t.Fatal(err)
	}
	for _, q := range readPDF(t, data) {
		if !strings.Contains(q.Words(), "front half") {
			continue
		}
		fold := math.NaN()
		for _, l := range q.Paths {
			if l.Layer == sheet.FoldLayer && len(l.Dashes) == 4 {
				fold = l.Pts[0].X
			}
		}
		for _, l := range []sheet.Layer{sheet.StitchLayer, sheet.GlueLayer, sheet.HoleLayer} {
			right, left := halvesOf(q, l, fold)
			if len(right) < 20 || len(right) != len(left) {
				t.Fatalf("%s: %d places right of the fold, %d left", l, len(right), len(left))
			}
			for _, v := range right {
				if d := nearest(v, left); d > 0.01 {
					t.Errorf("%s: %v right of the fold is %.3f mm from one on the left", l, v, d)
				}
			}
		}
		return
	}
	t.Error("no sheet has the front half")
}

// A left-handed sheath is the mirror image of a right-handed one: every line of the pattern,
// the strap's and the welt's, has its like on the other side.
func TestLeftHandIsTheMirrorImage(t *testing.T) {
	drawn := func(hand calc.Hand) (out []sheet.Drawing) {
		p := garden()
		p.Customer.Hand = hand
		j, err := newJob(p, compute(t, p), Options{})
		if err != nil {
			t.Fatal(err)
		}
		return []sheet.Drawing{j.pattern(), j.welt(j.facing(j.o.Up)), j.settingOut()}
	}
	right, left := drawn(calc.RightHand), drawn(calc.LeftHand)
	for i := range right {
		if len(right[i].Paths) != len(left[i].Paths) || len(right[i].Circles) != len(left[i].Circles) {
			t.Fatalf("drawing %d: %d lines for the right hand, %d for the left", i, len(right[i].Paths), len(left[i].Paths))
		}
		for k, p := range right[i].Paths {
			o := left[i].Paths[k]
			for n, v := range p.Pts {
				if p.Layer == sheet.HoleLayer || p.Layer == sheet.MarkLayer && n != 1 { // crosses and arrow heads are drawn from left to right on both
					continue
				}
				if m := (curve.Vec{X: -v.X, Y: v.Y}); m.Dist(o.Pts[n]) > 1e-9 {
					t.Fatalf("drawing %d, line %d on %s: %v for the right hand, %v for the left", i, k, p.Layer, v, o.Pts[n])
				}
			}
		}
		for k, c := range right[i].Circles {
			if m := (curve.Vec{X: -c.At.X, Y: c.At.Y}); m.Dist(left[i].Circles[k].At) > 1e-9 || c.Radius != left[i].Circles[k].Radius {
				t.Fatalf("drawing %d, circle %d: %v, %v", i, k, c.At, left[i].Circles[k].At)
			}
		}
	}
}
