package card

import (
	"math"
	"strings"
	"testing"
	"time"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/example"
	"chape/project/plantest"
	"chape/project/print/sheet"
)

// A page as it is printed on: A4 without its rim, mm.
const pageWide, pageHigh = 194.0, 281.0

// full is the invented example with all that a card can have: a strap, a drain, a correction
// seen in paper, notes of several lines, steps done, skipped and with cautions, a warning.
func full(u length.Unit) project.Project {
	p := example.Load(time.Date(2026, 11, 25, 12, 0, 0, 0, time.UTC))
	p.Units = u
	p.Strap = calc.Strap{Kind: calc.SnapStrap, Width: 18, Thickness: 2.4, Overlap: 30}
	p.Fits = []project.Fit{{Fit: calc.Fit{At: 60, By: -1, Reach: 20}, With: "paper"}}
	p.Sheath.Ease = -3.8
	p.Notes = "first line\n\n  second line of the notes\nthird\n"
	p.Steps[0].Done, p.Steps[1].Done, p.Steps[2].Skipped = time.Unix(1, 0), time.Time{}, true
	return p
}

var compute = plantest.Of

const title = "Field knife"

// worked is the pages of a work card in two columns.
func worked(t *testing.T, p project.Project, plan *calc.Plan) []sheet.Page {
	t.Helper()
	return Work(sheet.NewFlow(pageWide, pageHigh, "Work card", 2, func(float64, float64) string { return "head" }), p, plan, title, 0.2)
}

// word is one text of a card, with its page and the left end of its column.
type word struct {
	sheet.Text
	page int
	left float64
}

// words are the texts of a card in the order in which they were written, without the heads of
// the pages.
func words(pages []sheet.Page) []word {
	var out []word
	for n, p := range pages {
		for _, w := range p.Drawing.Texts[2:] {
			left := 0.0
			if w.At.X > pageWide/2+3.9 {
				left = pageWide/2 + 4
			}
			out = append(out, word{w, n, left})
		}
	}
	return out
}

func (w word) heading() bool { return w.Bold && w.Size == 3.2 }

// section is what stands under a heading, up to the next; "" is what stands before the first.
func section(pages []sheet.Page, name string) []word {
	var out []word
	at := ""
	for _, w := range words(pages) {
		if w.heading() {
			at = w.Says
		} else if at == name {
			out = append(out, w)
		}
	}
	return out
}

// headings are those of a card in their order.
func headings(pages []sheet.Page) []string {
	var out []string
	for _, w := range words(pages) {
		if w.heading() {
			out = append(out, w.Says)
		}
	}
	return out
}

// running is the words of a section one after the other.
func running(ws []word) string {
	var out []string
	for _, w := range ws {
		out = append(out, w.Says)
	}
	return strings.Join(strings.Fields(strings.Join(out, " ")), " ")
}

// sameLine tells whether two words stand on one line of one column.
func sameLine(a, b word) bool {
	return a.page == b.page && a.left == b.left && math.Abs(a.At.Y-b.At.Y) < 0.01
}

// allStays looks for words that leave the page, stand on others, or are crossed by lines.
func allStays(t *testing.T, name string, pages []sheet.Page, wide, high float64) {
	t.Helper()
	for n, p := range pages {
		var boxes []sheet.Box
		for i, w := range p.Drawing.Texts {
			b := w.Box()
			boxes = append(boxes, b)
			if b.Lo.X < -0.01 || b.Hi.X > wide+0.01 || b.Hi.Y > high-sheet.PageNumber+0.01 {
				t.Errorf("%s, page %d: %q reaches to %v of %v × %v", name, n+1, w.Says, b, wide, high)
			}
			for k, o := range p.Drawing.Texts[:i] {
				c := boxes[k]
				if w.Says != "" && o.Says != "" && b.Lo.X < c.Hi.X-0.1 && c.Lo.X < b.Hi.X-0.1 && b.Lo.Y < c.Hi.Y-0.9 && c.Lo.Y < b.Hi.Y-0.9 {
					t.Errorf("%s, page %d: %q stands on %q at %.1f", name, n+1, w.Says, o.Says, w.At)
				}
			}
		}
		if b := p.Drawing.Bounds(); b.Lo.X < 0 || b.Hi.X > wide || b.Hi.Y > high {
			t.Errorf("%s, page %d: lines from %v to %v", name, n+1, b.Lo, b.Hi)
		}
	}
}
