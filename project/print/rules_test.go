package print

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"chape/calc"
	"chape/calc/curve"
	"chape/calc/length"
	"chape/project"
	"chape/project/print/letters"
	"chape/project/print/sheet"
)

// random is the garden knife made longer, deeper and thicker at random, in a sheath of
// random make.
func random(r *rand.Rand) project.Project {
	between := func(lo, hi float64) length.Length { return length.Length(lo + (hi-lo)*r.Float64()) }
	p := garden()
	along, across := between(0.6, 1.9), between(0.6, 1.5)
	for i := range p.Knife.Stations {
		s := &p.Knife.Stations[i]
		s.At *= along
		s.Top *= across
		s.Bottom *= across
	}
	p.Sheath.Mouth = 140 * along
	p.Sheath.Leather, p.Sheath.Gap, p.Sheath.Margin = between(2, 4.5), between(6, 10), between(3, 7)
	p.Sheath.MouthRise, p.Sheath.MouthRound, p.Sheath.PointRoom = between(0, 20), between(0, 12), between(4, 8)
	p.Belt.Tab, p.Belt.Width, p.Belt.Centred = between(14, 45), between(20, 55), true
	p.Stitch.Pitch = between(2.5, 6)
	if r.IntN(2) == 0 {
		p.Customer.Hand = calc.LeftHand
	}
	if r.IntN(2) == 0 {
		p.Units = length.Inches
	}
	if r.IntN(2) == 0 {
		p.Strap = calc.Strap{Kind: calc.SnapStrap, Width: 18, Thickness: 2.4, Overlap: 30}
	}
	if r.IntN(3) == 0 {
		p.Belt.Loop = calc.NoLoop
	}
	return p
}

// randomJobs are plans of random knives on random paper, all of them drawn.
func randomJobs(t *testing.T, n int) []*job {
	t.Helper()
	r := rand.New(rand.NewPCG(11, 2026))
	papers := []string{"a4", "letter", "a3", "150x200", "297x210"}
	var out []*job
	for tries := 0; len(out) < n; tries++ {
		if tries > 10*n {
			t.Fatalf("only %d of %d random knives have a plan", len(out), tries)
		}
		p := random(r)
		o := Options{Paper: paper(t, papers[r.IntN(len(papers))]), Half: r.IntN(4) == 0, Up: calc.Up(r.IntN(2))}
		plan, err := calc.Compute(p.Input(calc.DefaultLimits()))
		if err != nil {
			continue
		}
		j, err := newJob(p, plan, o)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, j)
	}
	return out
}

// inked is the rectangle of a text's letters, turned as they are: from the foot of the
// line to the head of its capitals and figures.
func inked(w sheet.Text) curve.Line {
	wide := letters.Width(w.Says, w.Bold) * w.Size
	x := 0.0
	switch w.Anchor {
	case sheet.Middle:
		x = -wide / 2
	case sheet.End:
		x = -wide
	}
	sin, cos := math.Sincos(w.Angle)
	var out curve.Line
	for _, v := range (sheet.Box{Lo: curve.Vec{X: x, Y: -0.72 * w.Size}, Hi: curve.Vec{X: x + wide}}).Corners() {
		out = append(out, w.At.Add(curve.Vec{X: v.X*cos + v.Y*sin, Y: -v.X*sin + v.Y*cos}))
	}
	return out
}

// overlap tells whether two rectangles share ground: no side of either has the other
// wholly beyond it (the separating axis theorem).
func overlap(a, b curve.Line) bool {
	for _, pair := range [][2]curve.Line{{a, b}, {b, a}} {
		for i, v := range pair[0] {
			side := pair[0][(i+1)%4].Sub(v)
			n := curve.Vec{X: -side.Y, Y: side.X}
			span := func(l curve.Line) (lo, hi float64) {
				lo, hi = math.Inf(1), math.Inf(-1)
				for _, p := range l {
					d := p.X*n.X + p.Y*n.Y
					lo, hi = min(lo, d), max(hi, d)
				}
				return lo, hi
			}
			lo1, hi1 := span(pair[0])
			lo2, hi2 := span(pair[1])
			if hi1 <= lo2+1e-6 || hi2 <= lo1+1e-6 {
				return false
			}
		}
	}
	return true
}

// Numbers and words never print over each other, nothing stands nearer than 8 mm to the
// paper's rim, no two joint marks of a print have one name, and a sheet's legend says what
// is on it and nothing else: over random knives on random paper.
func TestRulesOfSheets(t *testing.T) {
	t.Parallel()
	for n, j := range randomJobs(t, 16) {
		pages := j.pages()
		for _, p := range pages {
			noneOver(t, n, p)
			legendSays(t, n, p)
		}
		data, err := j.document(pages).Bytes(false)
		if err != nil {
			t.Fatal(err)
		}
		marks := map[string]int{}
		for i, q := range readPDF(t, data) {
			clearOfRim(t, n, i+1, q)
			for _, w := range q.Texts {
				if w.Layer == sheet.RegisterLayer {
					marks[w.Says]++
				}
			}
		}
		for name, times := range marks {
			if times != 2 {
				t.Errorf("knife %d: joint mark %q stands %d times, want once on each of two sheets", n, name, times)
			}
		}
	}
}

func noneOver(t *testing.T, n int, p sheet.Page) {
	t.Helper()
	var taken []curve.Line
	for i, a := range p.Drawing.Texts {
		at := inked(a)
		for k, b := range p.Drawing.Texts[:i] {
			if a.Layer != sheet.TrialLayer && b.Layer != sheet.TrialLayer && overlap(at, taken[k]) {
				t.Errorf("knife %d, %s: %q prints over %q at %.1f", n, p.Name, a.Says, b.Says, a.At)
			}
		}
		taken = append(taken, at)
	}
}

func clearOfRim(t *testing.T, n, page int, q readPage) {
	t.Helper()
	const least = 8 - 0.002 // the bytes have hundredths of points
	for _, l := range q.Paths {
		lo, hi := l.Pts.Bounds()
		if r := l.Width / 2; lo.X-r < least || lo.Y-r < least || hi.X+r > q.Width-least || hi.Y+r > q.Height-least {
			t.Errorf("knife %d, page %d: a %s line %.2f wide runs from %v to %v, nearer than 8 mm to the rim", n, page, l.Layer, l.Width, lo, hi)
		}
	}
}

// legendSays holds a sheet's legend against the layers that are drawn on it.
func legendSays(t *testing.T, n int, p sheet.Page) {
	t.Helper()
	drawn := map[sheet.Layer]bool{}
	for _, l := range p.Drawing.Paths {
		drawn[l.Layer] = true
	}
	if !drawn[sheet.ScaleLayer] {
		return // no sheet at true size
	}
	said := func(s string) bool {
		return slices.ContainsFunc(p.Drawing.Texts, func(w sheet.Text) bool { return w.Says == s && w.Size == frameSize })
	}
	if !said("stitch line") && !said("cut: the middle of the line") && !said("joint: trim here") {
		return // small paper: the first page has it
	}
	for says, layers := range map[string][]sheet.Layer{
		"cut: the middle of the line": {sheet.CutLayer, sheet.WeltLayer, sheet.StrapLayer},
		"glue line":                   {sheet.GlueLayer}, "hole": {sheet.HoleLayer}, "joint: trim here": {sheet.RegisterLayer},
	} {
		on := slices.ContainsFunc(layers, func(l sheet.Layer) bool { return drawn[l] })
		if on != said(says) {
			t.Errorf("knife %d, %s: the legend says %q: %v, the sheet has it: %v", n, p.Name, says, said(says), on)
		}
	}
}

// A pattern with a warning says so: in bold on the first page and on each sheet that is
// cut by, and in every page's title.
func TestWarningsInBold(t *testing.T) {
	p := garden()
	p.Sheath.Ease = -3.5 // too tight
	plan := compute(t, p)
	j, err := newJob(p, plan, Options{})
	if err != nil {
		t.Fatal(err)
	}
	warns := j.warned(99)
	if len(warns) == 0 {
		t.Fatal("nothing warns: this test shows nothing")
	}
	first := strings.Fields(warns[0])
	for i, page := range j.pages() {
		bold, title := "", false
		for _, w := range page.Drawing.Texts {
			if w.Bold {
				bold += w.Says + " "
			}
			title = title || strings.Contains(w.Says, "pattern 3 · has a warning")
		}
		cutBy := i == 0 || strings.HasPrefix(page.Name, "Pattern") || strings.HasPrefix(page.Name, "Welt")
		if got := strings.Contains(bold, strings.Join(first[:4], " ")); cutBy && !got {
			t.Errorf("%s does not warn in bold: %q", page.Name, bold)
		}
		if !title {
			t.Errorf("%s: the title does not say that there is a warning", page.Name)
		}
	}
}
