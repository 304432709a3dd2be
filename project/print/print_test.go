package print

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/example"
	"chape/project/print/sheet"
)

// large is the invented knife blown up: a blade of 500 mm and wide.
func large(along, across length.Length) project.Project {
	p := garden()
	for i := range p.Knife.Stations {
		p.Knife.Stations[i].At *= along
		p.Knife.Stations[i].Bottom *= across
	}
	p.Sheath.Mouth *= along
	return p
}

func paper(t testing.TB, s string) sheet.Paper {
	t.Helper()
	p, err := sheet.ParsePaper(s)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestPatternOnPaper(t *testing.T) {
	t.Parallel()
	left := garden()
	left.Customer.Hand = calc.LeftHand
	noLoop := bar()
	noLoop.Belt.Loop = calc.NoLoop
	odd := garden()
	odd.Belt.Tab, odd.Sheath.Leather, odd.Sheath.Plies, odd.Units = 5, 6, 4, length.Inches
	for _, c := range []struct {
		name string
		p    project.Project
		o    Options
	}{
		{"tab too narrow to sew", odd, Options{}},
		{"no loop, half", noLoop, Options{Half: true}},
		{"bar", bar(), Options{}},
		{"no loop", noLoop, Options{}},
		{"garden", garden(), Options{}},
		{"the example", example.Load(day), Options{}},
		{"garden letter", garden(), Options{Paper: paper(t, "letter")}},
		{"garden a3", garden(), Options{Paper: paper(t, "a3")}},
		{"lying paper", garden(), Options{Paper: paper(t, "297x210")}},
		{"half", garden(), Options{Half: true}},
		{"left, flesh", left, Options{Up: calc.FleshUp}},
		{"left", left, Options{}},
		{"corrected", garden(), Options{Correction: sheet.Correction{X: 98.5, Y: 101.2}}},
		{"long blade a4", large(5, 1), Options{}},
		{"long blade letter", large(5, 1), Options{Paper: paper(t, "letter")}},
		{"many sheets", large(5.2, 7), Options{Paper: paper(t, "150x200")}},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			checkPattern(t, c.p, compute(t, c.p), c.o)
		})
	}
}

// The plan's own area has the tab as a plain rectangle, without the relief
// holes' bite.
func TestOutlineHasThePlansArea(t *testing.T) {
	plan := compute(t, garden())
	got := math.Abs(sheet.Thinned(plan.Flat.Outline, true).Area())
	if math.Abs(got/plan.Body.AreaWithTab-1) > 0.001 {
		t.Errorf("outline encloses %.1f mm², the plan says %.1f", got, plan.Body.AreaWithTab)
	}
}

func TestManySheets(t *testing.T) {
	p := large(5.2, 7)
	j, err := newJob(p, compute(t, p), Options{Paper: paper(t, "150x200")})
	if err != nil {
		t.Fatal(err)
	}
	d := j.pattern()
	room := j.tile(piece{"Pattern", "B", true}, []string{j.sideWords(), j.scaleWords(), j.looseWords()}, signsOn(&d))
	got := sheet.CutUp(&d, room.w, room.h, "B")
	if got.Rows < 5 || got.Cols < 4 {
		t.Errorf("%d rows, %d columns: want at least 5 and 4 for this test to show anything", got.Rows, got.Cols)
	}
}

// ISO 216 and ANSI/ASME Y14.1; PDF user units of 1/72 in, ISO 32000-1 8.3.2.3.
func TestPageSize(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		paper         string
		width, height float64 // mm
	}{
		{"a4", 210, 297}, {"A3", 297, 420}, {"letter", 215.9, 279.4}, {"legal", 215.9, 355.6},
		{"200x300", 200, 300}, {"8.5 x 11 in", 215.9, 279.4}, {"250×353", 250, 353},
	} {
		data, err := PDF(bar(), compute(t, bar()), Options{Paper: paper(t, c.paper)})
		if err != nil {
			t.Fatal(err)
		}
		for i, p := range readPDF(t, data) {
			if math.Abs(p.Width-c.width) > 0.01 || math.Abs(p.Height-c.height) > 0.01 {
				t.Errorf("%s: page %d is %.3f x %.3f mm, want %v x %v", c.paper, i+1, p.Width, p.Height, c.width, c.height)
			}
		}
	}
}

// Every sheet at true size has its pricks; printed by the printer that they
// were corrected for, they stand 100 mm apart.
func TestPricks(t *testing.T) {
	for _, c := range []sheet.Correction{{}, {X: 98.5, Y: 101.2}, {X: 101}, {Y: 99}} {
		data, err := PDF(garden(), compute(t, garden()), Options{Correction: c})
		if err != nil {
			t.Fatal(err)
		}
		found := 0
		for i, p := range readPDF(t, data) {
			pricks := p.Circles(sheet.ScaleLayer)
			if len(pricks) == 0 {
				continue
			}
			found++
			corner, across, up := pricks[0].At, pricks[1].At, pricks[2].At
			printed := func(v, hundred float64) float64 {
				if hundred == 0 {
					hundred = 100
				}
				return v * hundred / 100
			}
			if d := printed(across.X-corner.X, c.X); math.Abs(d-100) > 0.01 || math.Abs(across.Y-corner.Y) > 0.01 {
				t.Errorf("%v page %d: pricks %.3f mm apart across", c, i+1, d)
			}
			if d := printed(corner.Y-up.Y, c.Y); math.Abs(d-100) > 0.01 || math.Abs(up.X-corner.X) > 0.01 {
				t.Errorf("%v page %d: pricks %.3f mm apart along", c, i+1, d)
			}
			if said := strings.Contains(oneLine(p.Words()), "Corrected for a printer"); said != c.Set() {
				t.Errorf("%v page %d: says that it is corrected: %v", c, i+1, said)
			}
		}
		if found < 4 {
			t.Errorf("%v: %d sheets with pricks, want the pattern's two, the welt and the setting out", c, found)
		}
	}
}

func TestNothingNearTheEdge(t *testing.T) {
	t.Parallel()
	odd := garden()
	odd.Title = strings.Repeat("W", 300)
	odd.Units = length.Inches
	for _, o := range []Options{{}, {Paper: paper(t, "letter")}, {Paper: paper(t, "148x180")}, {Trial: 0.3, Half: true},
		{Half: true, Paper: paper(t, "148x180"), Correction: sheet.Correction{X: 95.5, Y: 96}},
		{Correction: sheet.Correction{X: 98.5, Y: 101.2}}, {Paper: paper(t, "150x200"), Correction: sheet.Correction{X: 102, Y: 97}}} {
		knives := []project.Project{garden(), odd}
		if o.Paper.Width == 0 { // many sheets are much to draw
			knives = append(knives, large(5, 3))
		}
		for _, p := range knives {
			nothingNearTheEdge(t, p, o)
		}
	}
}

func nothingNearTheEdge(t *testing.T, p project.Project, o Options) {
	t.Helper()
	j, err := newJob(p, compute(t, p), o)
	if err != nil {
		t.Fatal(err)
	}
	pages := j.pages()
	w, h := j.o.Paper.Area(o.Correction)
	for i, q := range pages {
		for _, s := range q.Drawing.Texts {
			if b := s.Box(); b.Lo.X < -0.01 || b.Lo.Y < -0.01 || b.Hi.X > w+0.01 || b.Hi.Y > h+0.01 {
				t.Errorf("%q %+v page %d: %q stands at %v of %v x %v", p.Title, o, i+1, s.Says, b, w, h)
			}
		}
	}
	data, err := j.document(pages).Bytes(false)
	if err != nil {
		t.Fatal(err)
	}
	const least = 8 - 0.01 // mm, as promised
	for i, q := range readPDF(t, data) {
		for _, l := range q.Paths {
			lo, hi := l.Pts.Bounds()
			if lo.X < least || lo.Y < least || hi.X > q.Width-least || hi.Y > q.Height-least {
				t.Errorf("%q %+v page %d: %s line from %v to %v", p.Title, o, i+1, l.Layer, lo, hi)
			}
		}
	}
}

func TestTrial(t *testing.T) {
	p := garden()
	plan := compute(t, p)
	o := Options{Trial: 0.1}
	data, err := PDF(p, plan, o)
	if err != nil {
		t.Fatal(err)
	}
	pages := readPDF(t, data)
	for i, q := range pages {
		if !strings.Contains(oneLine(q.Words()), "not for cutting leather") {
			t.Errorf("page %d does not say that it is a trial", i+1)
		}
		if strings.Contains(q.Words(), "hangs") || strings.Contains(q.Words(), "Work card") {
			t.Errorf("page %d of a trial speaks of the leather", i+1)
		}
	}
	in := plan.Input
	in.Sheath.Leather = 0.1
	thin, err := calc.Compute(in)
	if err != nil {
		t.Fatal(err)
	}
	// The pattern's half-width shrinks by (π/2)·k·(t − paper).
	want := math.Pi / 2 * 0.5 * (3.2 - 0.1)
	if got := plan.Body.MouthStitch - thin.Body.MouthStitch; math.Abs(got-want) > 1e-6 {
		t.Errorf("a trial is %.4f mm narrower a half, want %.4f", got, want)
	}
	a := assemble(t, pages, "Pattern", sheet.Correction{})
	trimmed, _ := a.cut()
	if got, want := math.Abs(chain(t, trimmed).Area()), math.Abs(thin.Flat.Outline.Area()); math.Abs(got/want-1) > 0.001 {
		t.Errorf("trial pattern encloses %.1f mm², want %.1f", got, want)
	}
}

func TestOptionsRefused(t *testing.T) {
	for _, o := range []Options{{Trial: -1}, {Trial: 50}, {Correction: sheet.Correction{X: 50}}, {Correction: sheet.Correction{Y: math.NaN()}},
		{Paper: sheet.Paper{Width: 50, Height: 50}}} {
		if _, err := PDF(bar(), compute(t, bar()), o); err == nil {
			t.Errorf("PDF with %+v: want an error", o)
		}
	}
}

func TestSameInputSameBytes(t *testing.T) {
	for _, o := range []Options{{}, {Date: day, Trial: 0.1}} {
		a, err1 := PDF(garden(), compute(t, garden()), o)
		b, err2 := PDF(garden(), compute(t, garden()), o)
		if err1 != nil || err2 != nil || !bytes.Equal(a, b) {
			t.Errorf("PDF with %+v twice: %v, %v, same bytes %v", o, err1, err2, bytes.Equal(a, b))
		}
	}
}

// The example is to be printed in 150 ms at most.
func BenchmarkExample(b *testing.B) {
	p := example.Load(day)
	plan := compute(b, p)
	for b.Loop() {
		if _, err := PDF(p, plan, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
