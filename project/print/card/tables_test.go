package card

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"chape/calc/length"
	"chape/project/print/letters"
	"chape/project/print/sheet"
	"chape/project/report"
)

// readTable reads a table back as a maker does: strip by strip under its heads, each line's
// cells from left to right. Cells belong to the head that they stand under.
func readTable(t *testing.T, ws []word, want report.Table) (rows [][]string) {
	t.Helper()
	n := len(want.Columns)
	var heads []word // of the strip that is written
	for i := 0; i < len(ws); {
		if i+n > len(ws) {
			break
		}
		cells := make([]string, n)
		for k := range n {
			cells[k] = ws[i+k].Says
			if !sameLine(ws[i], ws[i+k]) {
				t.Errorf("%s: %q stands at %v, %q at %v", want.Name, ws[i].Says, ws[i].At, ws[i+k].Says, ws[i+k].At)
			}
		}
		if slices.Equal(cells, want.Columns) && ws[i].Bold {
			heads = append(heads, ws[i:i+n]...)
		} else {
			for k := range n {
				w := ws[i+k]
				under := slices.ContainsFunc(heads, func(h word) bool {
					return h.left == w.left && h.Says == want.Columns[k] && math.Abs(h.At.X-w.At.X) < 0.01 && h.Anchor == w.Anchor
				})
				if !under || w.Bold {
					t.Errorf("%s: %q at %v stands under no head %q", want.Name, w.Says, w.At, want.Columns[k])
				}
			}
			rows = append(rows, cells)
		}
		i += n
	}
	return rows
}

// body is a table's section behind its note.
func body(t *testing.T, ws []word, want report.Table) []word {
	t.Helper()
	i := slices.IndexFunc(ws, func(w word) bool { return w.Bold && w.Says == want.Columns[0] })
	if i < 0 {
		t.Fatalf("%s has no head", want.Name)
	}
	if got := running(ws[:i]); got != letters.Printable(want.Note) {
		t.Errorf("%s: noted %q, want %q", want.Name, got, want.Note)
	}
	if want.Name[:5] == "holes" { // the rules for the dividers stand below
		end := slices.IndexFunc(ws, func(w word) bool { return w.Says == "–" })
		return ws[i:end]
	}
	return ws[i:]
}

// All rows of all tables of the report stand on the card, each once, its cells under their
// heads, in both units.
func TestTablesAsReported(t *testing.T) {
	for _, u := range []length.Unit{length.Millimetres, length.Inches} {
		p := full(u)
		plan := compute(t, p)
		pages := worked(t, p, plan)
		for _, want := range []report.Table{report.KnifeMarks(p, u), report.HalfWidths(plan, u), report.MouthCurve(plan, u), report.TenthHoles(plan, u), report.FlatHoles(plan, u)} {
			got := readTable(t, body(t, section(pages, want.Name), want), want)
			key := func(r []string) string { return strings.Join(r, " | ") }
			var a, b []string
			for _, r := range got {
				a = append(a, key(r))
			}
			for _, r := range want.Rows {
				b = append(b, key(r))
			}
			if want.Columns[0] == "hole" && len(want.Columns) == 3 { // several strips side by side
				slices.Sort(a)
				slices.Sort(b)
			}
			if !slices.Equal(a, b) || len(b) < 3 {
				t.Errorf("%s: the card has %d rows\n%s\nwant %d\n%s", want.Name, len(a), strings.Join(a, "\n"), len(b), strings.Join(b, "\n"))
			}
		}
	}
}

// made is a table of so many rows.
func made(rows int) report.Table {
	t := report.Table{Name: "holes in a row", Note: "counted", Columns: []string{"hole", "along", ""}}
	for i := range rows {
		t.Rows = append(t.Rows, []string{fmt.Sprint(i + 1), fmt.Sprintf("%d.5", 10*i), "mark"})
	}
	return t
}

// However many rows a table has, and in however many strips, they read down each strip in
// their order, none is lost where a column or a page ends, and each part has its heads.
func TestStripsReadDown(t *testing.T) {
	for _, strips := range []int{1, 2, 3} {
		for _, rows := range []int{1, 2, 3, 5, 31, 200, 411} {
			f := sheet.NewFlow(pageWide, 120, "Holes", 2, func(float64, float64) string { return "head" })
			f.Gap(float64(rows % 90))
			Table(f, made(rows), strips)
			name := fmt.Sprintf("%d rows in %d strips", rows, strips)
			allStays(t, name, f.Pages, pageWide, 120)
			seen := map[string]int{}
			last := map[string]int{} // of each strip
			for _, w := range section(f.Pages, "holes in a row") {
				if w.Bold || strings.Contains(w.Says, ".") || w.Says == "mark" || w.Says == "counted" {
					continue
				}
				seen[w.Says]++
				var n int
				fmt.Sscan(w.Says, &n)
				strip := fmt.Sprintf("%d %.1f", w.page, w.At.X)
				if n <= last[strip] {
					t.Errorf("%s: hole %d stands below hole %d", name, n, last[strip])
				}
				last[strip] = n
			}
			for i := range rows {
				if seen[fmt.Sprint(i+1)] != 1 {
					t.Errorf("%s: row %d stands there %d times", name, i+1, seen[fmt.Sprint(i+1)])
				}
			}
		}
	}
}

// A table that a column can hold is not torn apart; a longer one begins where it is.
func TestTablesAreNotTorn(t *testing.T) {
	for _, c := range []struct {
		rows int
		torn bool
	}{{10, false}, {60, false}, {90, true}} {
		f := sheet.NewFlow(pageWide, pageHigh, "Holes", 2, func(float64, float64) string { return "head" })
		f.Gap(150)
		Table(f, made(c.rows), 1)
		columns := map[string]bool{}
		for _, w := range section(f.Pages, "holes in a row") {
			columns[fmt.Sprint(w.page, w.left)] = true
		}
		if (len(columns) > 1) != c.torn {
			t.Errorf("a table of %d rows stands in %d columns", c.rows, len(columns))
		}
	}
}
