package card

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"chape/calc"
	"chape/calc/length"
	"chape/project/print/letters"
	"chape/project/print/sheet"
	"chape/project/report"
)

// readFigures reads rows back from a section by how they are set: a name at the left, on its
// line a figure in bold in two parts that meet at the decimal point, a unit, and words that
// may go on below.
func readFigures(t *testing.T, ws []word, indent float64) report.Rows {
	t.Helper()
	var out report.Rows
	var whole, part word
	state := 0
	for _, w := range ws {
		atName := math.Abs(w.At.X-w.left-indent) < 0.01 && !w.Bold && w.Anchor == sheet.Start
		switch {
		case atName:
			out, state = append(out, report.Row{Name: w.Says}), 1
		case len(out) == 0:
			t.Fatalf("%q stands before the first name", w.Says)
		case state == 1 && w.Bold && w.Anchor == sheet.End:
			whole, state = w, 2
		case state == 2 && w.Bold:
			part, state = w, 3
			if part.At != whole.At {
				t.Errorf("%s: %q ends at %v, %q begins at %v", out[len(out)-1].Name, whole.Says, whole.At, part.Says, part.At)
			}
			out[len(out)-1].Value = strings.TrimSpace(whole.Says + part.Says)
		case state == 3 && sameLine(w, whole):
			out[len(out)-1].Unit, state = w.Says, 4
		case state == 4:
			r := &out[len(out)-1]
			r.Note = strings.TrimSpace(r.Note + " " + w.Says)
		default:
			t.Errorf("%s: %q at %v is out of its place", out[len(out)-1].Name, w.Says, w.At)
		}
	}
	return out
}

// said is rows as they are compared: name, value and unit, all words.
func said(rs report.Rows) []string {
	var out []string
	for _, r := range rs {
		out = append(out, r.Name+": "+r.Said()+" ("+letters.Printable(r.Words())+")")
	}
	return out
}

// blanks are the lines to write into of the bench's box; before its rows stands who the
// sheath is for.
var blanks = []string{"line as measured", "setting used", "weight before wetting", "weights while drying", ""}

// Each figure that the plan has stands on the card once, under its own name, with its own unit
// and words, in the report's order: on the bench's box, among the figures, of the loop, and
// of what not every sheath has.
func TestCardSaysWhatTheReportSays(t *testing.T) {
	for _, u := range []length.Unit{length.Millimetres, length.Inches} {
		p := full(u)
		plan := compute(t, p)
		pages := worked(t, p, plan)
		look := section(pages, "look at this before you cut")
		from := slices.IndexFunc(look, func(w word) bool { return w.Says == "belt, wide" })
		to := slices.IndexFunc(look, func(w word) bool { return w.Says == blanks[0] })
		if from < 0 || to < from {
			t.Fatalf("no box for the bench: %s", running(look))
		}
		for _, c := range []struct {
			name string
			got  report.Rows
			want report.Rows
		}{
			{"bench", readFigures(t, look[from:to], 2), report.Bench(p, plan, u)},
			{"figures", readFigures(t, section(pages, "figures"), 0), report.Figures(p, plan, u, 0.2).WithoutBench()},
			{"belt loop", readFigures(t, section(pages, "belt loop"), 0), report.LoopFigures(plan, u)},
			{"extras", readFigures(t, section(pages, "fold, drain, strap, corrections"), 0), report.Extras(p, plan, u)},
		} {
			if got, want := said(c.got), said(c.want); !slices.Equal(got, want) || len(want) < 4 {
				t.Errorf("%s, %s: the card says\n%s\nwant\n%s", u, c.name, strings.Join(got, "\n"), strings.Join(want, "\n"))
			}
		}
		both := append(report.Bench(p, plan, u), report.Figures(p, plan, u, 0.2).WithoutBench()...)
		for _, r := range report.Figures(p, plan, u, 0.2) {
			n := 0
			for _, q := range both {
				if q.Name == r.Name {
					n++
				}
			}
			if n != 1 {
				t.Errorf("%s stands on the card %d times", r.Name, n)
			}
		}
	}
}

// The decimal points of a section stand under each other, as do its units and its notes.
func TestFiguresAreAligned(t *testing.T) {
	p := full(length.Millimetres)
	pages := worked(t, p, compute(t, p))
	for _, name := range []string{"figures", "belt loop", "fold, drain, strap, corrections"} {
		at := map[string]float64{}
		same := func(what string, w word) {
			x := w.At.X - w.left
			if old, ok := at[what]; ok && math.Abs(old-x) > 0.01 {
				t.Errorf("%s: a %s, %q, stands at %.2f, others at %.2f", name, what, w.Says, x, old)
			}
			at[what] = x
		}
		for _, w := range section(pages, name) {
			switch {
			case w.Bold:
				same("decimal point", w)
			case w.Says == "mm":
				same("unit", w)
			}
		}
		if len(at) != 2 || at["unit"] <= at["decimal point"] {
			t.Errorf("%s: %v", name, at)
		}
	}
}

// The box on the bench has a line to write on for each of what is measured there, with its
// unit: of lengths the project's, of weights grams, or none where scales may show ounces.
func TestBenchHasLinesToWriteOn(t *testing.T) {
	for _, u := range []length.Unit{length.Millimetres, length.Inches} {
		p := full(u)
		plan := compute(t, p)
		pages := worked(t, p, plan)
		look := section(pages, "look at this before you cut")
		i := slices.IndexFunc(look, func(w word) bool { return w.Says == blanks[0] })
		grams := "g"
		if u == length.Inches {
			grams = ""
		}
		last := 0.0
		for k, name := range blanks {
			w, unit := look[i+2*k], look[i+2*k+1]
			want := u.String()
			if k >= 2 {
				want = grams
			}
			if w.Says != name || unit.Says != want || !sameLine(w, unit) || k > 0 && w.At.Y-last < 6 {
				t.Errorf("line %d is for %q in %q, %.1f mm below the last; want %q in %q", k, w.Says, unit.Says, w.At.Y-last, name, want)
			}
			last = w.At.Y
			ruled := false
			for _, l := range pages[0].Drawing.Paths {
				a, b := l.Pts[0], l.Pts[len(l.Pts)-1]
				end := w.At.X + letters.Width(w.Says, false)*w.Size
				ruled = ruled || len(l.Pts) == 2 && a.Y == b.Y && a.Y >= w.At.Y && a.Y < w.At.Y+1 && a.X > end && b.X < unit.At.X && b.X-a.X > 40
			}
			if !ruled {
				t.Errorf("%s: no line to write %q on", u, name)
			}
		}
		var box sheet.Box
		for _, l := range pages[0].Drawing.Paths {
			if lo, hi := l.Pts.Bounds(); l.Closed && hi.Y-lo.Y > 20 {
				box = sheet.Box{Lo: lo, Hi: hi}
			}
		}
		if first := slices.IndexFunc(look, func(w word) bool { return w.Says == "belt, wide" }); look[first].Box().Lo.Y < box.Lo.Y || last > box.Hi.Y || box.Width() < 90 {
			t.Errorf("%s: the box is %v", u, box)
		}
	}
}

// The box on the bench is never torn apart: wherever it begins, all of it stands in one column.
func TestBenchIsNotTorn(t *testing.T) {
	p := full(length.Millimetres)
	rows := report.Bench(p, compute(t, p), p.Units)
	for down := 0.0; down < pageHigh-20; down += 1.5 {
		f := sheet.NewFlow(pageWide, pageHigh, "Work card", 2, func(float64, float64) string { return "" })
		f.Gap(down)
		bench(f, p, rows)
		at := map[string]bool{}
		for _, w := range words(f.Pages) {
			at[fmt.Sprint(w.page, w.left)] = true
		}
		if b := f.Page().Bounds(); len(at) != 1 || b.Hi.Y > pageHigh-sheet.PageNumber {
			t.Fatalf("%.1f mm down it stands in %d columns, to %.1f mm", down, len(at), b.Hi.Y)
		}
	}
}

// Warnings stand first, each in bold as the report words it, then the notes; a plan without
// either has no such heading.
func TestLookFirst(t *testing.T) {
	p := full(length.Millimetres)
	plan := compute(t, p)
	pages := worked(t, p, plan)
	look := section(pages, "look at this before you cut")
	if headings(pages)[0] != "look at this before you cut" {
		t.Errorf("the first heading is %q", headings(pages)[0])
	}
	warns := report.Warnings(plan, p.Units)
	if len(warns) == 0 || !strings.HasPrefix(running(look), letters.Printable(strings.Join(warns, " "))) {
		t.Errorf("of the warnings %q the card says %q", warns, running(look))
	}
	bold := ""
	for _, w := range look {
		if w.Bold && w.Anchor == sheet.Start && w.Size == 2.7 && w.At.X == w.left {
			bold += " " + w.Says
		}
	}
	if strings.TrimSpace(bold) != letters.Printable(strings.Join(warns, " ")) {
		t.Errorf("in bold: %q", bold)
	}
	var notes []string
	for _, c := range plan.Checks {
		if c.Level == calc.Note {
			notes = append(notes, "– "+c.Text(p.Units))
		}
	}
	if len(notes) == 0 || !strings.Contains(running(look), letters.Printable(strings.Join(notes, " "))) {
		t.Errorf("of the notes %q the card says %q", notes, running(look))
	}
	for i := range plan.Checks {
		plan.Checks[i].Level = calc.OK
	}
	if got := headings(worked(t, p, plan)); slices.Contains(got, "look at this before you cut") {
		t.Error("a plan that is all right is to be looked at")
	}
}
