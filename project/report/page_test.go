package report

import (
	"slices"
	"strings"
	"testing"
	"time"

	"chape/calc"
	"chape/calc/length"
	"chape/project/example"
	"chape/project/steps"
)

// sections are the sections of a page by their headings, in their order.
func sections(page string) (order []string, of map[string]string) {
	of = map[string]string{}
	rows := strings.Split(page, "\n")
	at := ""
	for i, l := range rows {
		if i+1 < len(rows) && strings.Trim(rows[i+1], "-") == "" && len(rows[i+1]) > 2 && len([]rune(l)) == len(rows[i+1]) {
			at = l
			order = append(order, l)
			continue
		}
		if strings.Trim(l, "-") != "" || l == "" {
			of[at] += l + "\n"
		}
	}
	return order, of
}

// The page goes from figures over tables to checks, steps and cautions, and all of the
// report's rows and tables stand on it in its own words.
func TestPageHasAllOfTheReport(t *testing.T) {
	for _, u := range []length.Unit{length.Millimetres, length.Inches} {
		p := example.Load(time.Date(2026, 11, 25, 12, 0, 0, 0, time.UTC))
		p.Units = u
		p.Strap = calc.Strap{Kind: calc.SnapStrap, Width: 18, Thickness: 2.4, Overlap: 30}
		plan := compute(t, p)
		order, of := sections(Page(p, plan, u, 0.2))
		want := []string{"figures", "half-widths, " + u.String(), "mouth, " + u.String(), "holes on the closed sheath, " + u.String(), "all holes in the flat, " + u.String(), "belt loop",
			"fold, drain, strap, corrections", "checks", "steps", "cautions"}
		if !slices.Equal(order, want) {
			t.Errorf("%s: sections %q, want %q", u, order, want)
		}
		for name, rows := range map[string]Rows{"figures": Figures(p, plan, u, 0.2), "belt loop": LoopFigures(plan, u), "fold, drain, strap, corrections": Extras(p, plan, u)} {
			text := words(of[name])
			for _, r := range rows {
				if line := words(r.Name + " " + r.Value + " " + r.Unit + " " + r.Words()); !strings.Contains(text, line) {
					t.Errorf("%s, %s: no %q", u, name, line)
				}
			}
		}
		for _, table := range []Table{HalfWidths(plan, u), MouthCurve(plan, u), TenthHoles(plan, u), FlatHoles(plan, u)} {
			text := words(of[table.Name])
			if !strings.Contains(text, words(table.Note)) || !strings.Contains(text, words(strings.Join(table.Columns, " "))) {
				t.Errorf("%s: no note, or no heads: %s", table.Name, text)
			}
			for _, r := range table.Rows {
				if !strings.Contains(text, words(strings.Join(r, " "))) {
					t.Errorf("%s: no row %q", table.Name, r)
				}
			}
		}
		checks := words(of["checks"])
		for _, s := range Checks(plan, calc.OK, u) {
			if !strings.Contains(checks, words(s)) {
				t.Errorf("no check %q", s)
			}
		}
		if got, want := words(of["cautions"]), words(strings.Join(Cautions(), " ")); got != want {
			t.Errorf("cautions\n%s\nwant\n%s", got, want)
		}
	}
}

// Tables on the page read down each strip: figures under their heads' right ends.
func TestTablesOnThePage(t *testing.T) {
	_, of := sections(Page(bar(), compute(t, bar()), length.Millimetres, offcuts))
	rows := strings.Split(strings.TrimSpace(of["all holes in the flat, mm"]), "\n")[1:]
	head := rows[0]
	if n := strings.Count(head, "from fold"); n < 2 {
		t.Fatalf("%d strips: %q", n, head)
	}
	end := strings.Index(head, "along") + len("along")
	for i, l := range rows[1:] {
		if end > len(l) || strings.TrimSpace(l[end:end+1]) != "" && end < len(l) || l[end-1] < '0' || l[end-1] > '9' {
			t.Errorf("row %d does not end under its head in column %d: %q", i+1, end, l)
		}
	}
	first := strings.Fields(rows[1])
	if second := strings.Fields(rows[2]); first[0] != "1" || second[0] != "2" {
		t.Errorf("the strips don't read down: %q, %q", first, second)
	}
}

// Words beside a figure that need more lines go on right below where they began.
func TestNotesGoOnBelow(t *testing.T) {
	page := Page(bar(), compute(t, bar()), length.Millimetres, offcuts)
	rows := strings.Split(page, "\n")
	i := slices.IndexFunc(rows, func(l string) bool { return strings.Contains(l, "thread for the seam") })
	note := strings.Index(rows[i], "7.")
	for note > 0 && rows[i][note-1] != ' ' {
		note--
	}
	if next := rows[i+1]; note < 40 || len(next)-len(strings.TrimLeft(next, " ")) != note {
		t.Errorf("%q\n%q", rows[i], rows[i+1])
	}
}

// Steps have a box that shows where they stand, their number, what they wait for, and their
// caution below.
func TestStepsOnThePage(t *testing.T) {
	p := bar()
	p.Steps = []steps.Step{{Title: "Tape", Done: time.Unix(1, 0), Caution: "Mind the point."}, {Title: "Line it", Skipped: true}, {Title: "Dry", Hold: 24 * time.Hour}}
	_, of := sections(Page(p, compute(t, p), length.Millimetres, offcuts))
	want := "  [x]  1  Tape\n          Mind the point.\n  [-]  2  Line it\n  [ ]  3  Dry (wait 24 h)\n"
	if got := strings.TrimRight(of["steps"], "\n") + "\n"; words(got) != words(want) || strings.Index(got, "Mind") < strings.Index(got, "Tape") {
		t.Errorf("steps:\n%s\nwant\n%s", got, want)
	}
	p.Steps = nil
	if order, _ := sections(Page(p, compute(t, p), length.Millimetres, offcuts)); slices.Contains(order, "steps") {
		t.Error("without steps there is a heading for them")
	}
}

// The page says whose it is, or that it has no title.
func TestPageBegins(t *testing.T) {
	p := bar()
	p.Title, p.Customer.Name = " ", "Zoé"
	if got := Page(p, compute(t, p), length.Millimetres, offcuts); !strings.HasPrefix(got, "(no title)\npattern 3, right hand, edge to the rear\nfor Zoé\n") {
		t.Errorf("begins %q", strings.SplitN(got, "\n", 4)[:3])
	}
}

// Checks are said from a level on, worst not first but in the plan's order; warnings are those
// that warn, and say so.
func TestChecksInWords(t *testing.T) {
	p := bar()
	p.Sheath.Ease = -4
	plan := compute(t, p)
	all, notes, warns := Checks(plan, calc.OK, length.Millimetres), Checks(plan, calc.Note, length.Millimetres), Checks(plan, calc.Warn, length.Millimetres)
	if len(all) != len(plan.Checks) || len(notes) >= len(all) || len(warns) == 0 {
		t.Fatalf("%d, %d, %d of %d checks", len(all), len(notes), len(warns), len(plan.Checks))
	}
	for i, c := range plan.Checks {
		if want := c.Level.String() + ": " + c.Text(length.Millimetres); all[i] != want {
			t.Errorf("check %d: %q, want %q", i, all[i], want)
		}
	}
	for _, s := range notes {
		if strings.HasPrefix(s, "ok: ") {
			t.Errorf("%q is among what is to be looked at", s)
		}
	}
	for i, s := range Warnings(plan, length.Millimetres) {
		if "warn: "+strings.TrimPrefix(s, "warning: ") != warns[i] || !strings.HasPrefix(s, "warning: ") {
			t.Errorf("%q, want %q", s, warns[i])
		}
	}
	if inches := Warnings(plan, length.Inches); !strings.Contains(inches[0], " in") || strings.Contains(inches[0], " mm") {
		t.Errorf("in inches: %q", inches[0])
	}
}

// What can hurt is said: blades, solvents and fire, drills, dust, heat, oily rags, with the
// data sheet first; and of care, storage, wet, oil, the hand, trying the hold, children, law.
// Every line is a whole sentence.
func TestCautionsAndCare(t *testing.T) {
	for name, c := range map[string]struct {
		lines []string
		must  []string
	}{
		"cautions": {Cautions(), []string{"wrap the point", "data sheet first", "no flame or spark", "gloves", "eyes covered", "no gloves, sleeves or loose hair near the drill", "mask", "cancer", "40 °C", "Oily rags"}},
		"care":     {Care(), []string{"not for storage", "dry in the air", "wax", "edge away from you", "try the hold", "stitches", "children", "local rules"}},
		"dividers": {Dividers(), []string{"without pricking", "divided by the number of stitches", "every tenth hole"}},
	} {
		all := strings.Join(c.lines, "\n")
		for _, want := range c.must {
			if !strings.Contains(all, want) {
				t.Errorf("%s: no word of %q", name, want)
			}
		}
		for _, s := range c.lines {
			if !strings.HasSuffix(s, ".") || strings.ToUpper(s[:1]) != s[:1] || strings.Contains(s, "  ") {
				t.Errorf("%s: %q is no sentence", name, s)
			}
		}
	}
}
