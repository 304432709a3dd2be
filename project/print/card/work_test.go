package card

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/print/letters"
	"chape/project/print/sheet"
	"chape/project/report"
	"chape/project/steps"
)

// The card goes the way of the work: what to look at, the bench, figures, steps, cautions,
// then the tables; what a sheath does not have has no heading.
func TestOrderOfTheCard(t *testing.T) {
	want := []string{"look at this before you cut", "figures", "steps", "cautions", "the knife, mm", "half-widths, mm", "mouth, mm", "holes on the closed sheath, mm", "belt loop",
		"fold, drain, strap, corrections", "all holes in the flat, mm", "notes"}
	p := full(length.Millimetres)
	if got := headings(worked(t, p, compute(t, p))); !slices.Equal(got, want) {
		t.Errorf("headings %q, want %q", got, want)
	}
	p.Belt.Loop, p.Strap, p.Fits, p.Steps, p.Notes = calc.NoLoop, calc.Strap{}, nil, nil, ""
	p.Sheath.MouthRise, p.Sheath.MouthRound, p.Sheath.Drain = 0, 0, 0
	got := headings(worked(t, p, compute(t, p)))
	for _, gone := range []string{"steps", "mouth, mm", "belt loop", "notes"} {
		if slices.Contains(got, gone) {
			t.Errorf("without any there is a heading %q", gone)
		}
	}
	first := section(worked(t, p, compute(t, p)), "")
	if s := running(first); !strings.Contains(s, title+" · right hand, edge to the rear · for "+p.Customer.Name) {
		t.Errorf("the card begins %q", s)
	}
	p.Customer.Name = ""
	if s := running(section(worked(t, p, compute(t, p)), "")); strings.Contains(s, "for") {
		t.Errorf("for nobody: %q", s)
	}
}

// Every caution of the bench stands on the card, whole, in its order; so do the rules for the
// dividers.
func TestCautions(t *testing.T) {
	p := full(length.Millimetres)
	pages := worked(t, p, compute(t, p))
	if got, want := running(section(pages, "cautions")), "– "+strings.Join(report.Cautions(), " – "); got != letters.Printable(want) {
		t.Errorf("cautions:\n%s\nwant\n%s", got, want)
	}
	if got, want := running(section(pages, "holes on the closed sheath, mm")), "– "+strings.Join(report.Dividers(), " – "); !strings.HasSuffix(got, letters.Printable(want)) {
		t.Errorf("the dividers:\n%s\nwant at its end\n%s", got, want)
	}
}

// Notes keep their lines, empty ones too: each line of the maker's is one on the card.
func TestNotesKeepTheirLines(t *testing.T) {
	p := full(length.Millimetres)
	var got []string
	last := -1.0
	for _, w := range section(worked(t, p, compute(t, p)), "notes") {
		got = append(got, w.Says)
		if w.At.Y <= last {
			t.Errorf("%q stands at %v, the line before it at %v", w.Says, w.At.Y, last)
		}
		last = w.At.Y
	}
	if want := []string{"first line", "", "second line of the notes", "third"}; !slices.Equal(got, want) {
		t.Errorf("notes %q, want %q", got, want)
	}
}

// Each step has a box, its number and its words; a done one is crossed in its box, a skipped
// one says so; a hold has lines to write the clock's times on, below it where it is long; a
// caution stands below all that.
func TestSteps(t *testing.T) {
	p := full(length.Millimetres)
	p.Steps = []steps.Step{
		{Title: "Tape the edge", Done: time.Unix(1, 0), Caution: "Never a palm under the point."},
		{Title: "Line it", Skipped: true},
		{Title: "Cement", Hold: 15 * time.Minute},
		{Title: "Dry, " + strings.Repeat("turn it over now and then, ", 9) + "look", Hold: 24 * time.Hour, Latest: 49*time.Hour + 30*time.Minute, Caution: "No heat above 40 °C. " + strings.Repeat("No stove. ", 20)},
		{Title: "Sew"},
	}
	pages := worked(t, p, compute(t, p))
	ws := section(pages, "steps")
	const blank = "from __________ to __________"
	dry := report.Steps(p)[3].Hold
	want := "1 Tape the edge Never a palm under the point. 2 Line it (skipped) 3 Cement wait 15 min " + blank + " 4 " + p.Steps[3].Title + " " + dry + " " + blank + " " + p.Steps[3].Caution + " 5 Sew"
	if got := running(ws); got != strings.Join(strings.Fields(want), " ") {
		t.Errorf("steps:\n%s\nwant\n%s", got, want)
	}
	n := 0
	for i, w := range ws {
		if strings.HasPrefix(w.Says, "wait") || strings.HasPrefix(w.Says, "from") {
			if !w.Bold {
				t.Errorf("the hold %q is not in bold", w.Says)
			}
		}
		if w.Anchor != sheet.End {
			continue
		}
		n++
		if w.Says != fmt.Sprint(n) || !sameLine(w, ws[i+1]) {
			t.Errorf("step %d is numbered %q, at %v, its words at %v", n, w.Says, w.At, ws[i+1].At)
		}
		boxes, strokes := marksBeside(pages[w.page], w)
		if boxes != 1 || strokes != map[bool]int{true: 2, false: 0}[n == 1] {
			t.Errorf("step %d has %d boxes and %d strokes in it", n, boxes, strokes)
		}
	}
	if n != 5 {
		t.Errorf("%d steps are numbered", n)
	}
}

// A hold that is too long for one line with the blanks for the clock's times has them below;
// neither runs out of the column.
func TestLongHoldsTakeTwoLines(t *testing.T) {
	p := full(length.Millimetres)
	p.Steps = []steps.Step{{Title: "Dry", Hold: 25*time.Hour + 30*time.Minute, Latest: 74*time.Hour + 30*time.Minute}, {Title: "Cement", Hold: 15 * time.Minute}}
	ws := section(worked(t, p, compute(t, p)), "steps")
	var got []string
	for _, w := range ws {
		if w.Bold {
			got = append(got, w.Says)
		}
		if end := w.Box().Hi.X - w.left; end > (pageWide-8)/2+0.01 {
			t.Errorf("%q runs to %.1f mm of its column", w.Says, end)
		}
	}
	const blank = "from __________ to __________"
	if want := []string{report.Steps(p)[0].Hold, blank, "wait 15 min   " + blank}; !slices.Equal(got, want) {
		t.Errorf("holds %q, want %q", got, want)
	}
}

// marksBeside counts the boxes left of a step's number, and the strokes from corner to corner.
func marksBeside(p sheet.Page, w word) (boxes, strokes int) {
	around := sheet.Box{Lo: w.At, Hi: w.At}.Grow(8)
	for _, l := range p.Drawing.Paths {
		lo, hi := l.Pts.Bounds()
		if lo.X < w.left || hi.X > w.At.X || lo.Y < around.Lo.Y+4 || hi.Y > around.Hi.Y-4 || hi.Y-lo.Y < 2 || hi.Y-lo.Y > 4 {
			continue
		}
		if l.Closed {
			boxes++
		} else if lo.X != hi.X && lo.Y != hi.Y {
			strokes++
		}
	}
	return boxes, strokes
}

// Whatever the maker has typed, in either unit and on any paper, nothing leaves its page or
// stands on anything else.
func TestNothingOverAnything(t *testing.T) {
	for _, u := range []length.Unit{length.Millimetres, length.Inches} {
		for _, size := range [][2]float64{{pageWide, pageHigh}, {132, 164}, {199.9, 263.4}, {281, 194}} {
			for _, long := range []bool{false, true} {
				p, name := full(u), fmt.Sprintf("%s on %v, long words: %v", u, size, long)
				head := title
				if long {
					head = strings.Repeat("W", 200) + strings.Repeat(" long", 50)
					p.Customer.Name, p.Notes = head, head+"\n"+head
					for i := range p.Steps {
						p.Steps[i].Title, p.Steps[i].Caution = head, head
					}
				}
				plan := compute(t, p)
				f := func(name string, cols int) *sheet.Flow {
					return sheet.NewFlow(size[0], size[1], name, cols, func(s, w float64) string { return letters.Fit(head, s, w, false) })
				}
				allStays(t, "work card, "+name, Work(f("Work card", 2), p, plan, head, 0.2), size[0], size[1])
				allStays(t, "care card, "+name, Care(f("Care card", 1), p, head, []string{head, head}), size[0], size[1])
			}
		}
	}
}

// project.Defaults, which a maker starts from, has a card as well.
func TestCardOfANewProject(t *testing.T) {
	p := project.Defaults()
	pages := worked(t, p, compute(t, p))
	if got := headings(pages); !slices.Contains(got, "figures") || !slices.Contains(got, "cautions") {
		t.Errorf("headings %q", got)
	}
	allStays(t, "a new project", pages, pageWide, pageHigh)
}
