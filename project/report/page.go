package report

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/plain"
)

// pageWidth is the widest line of the plain page, in columns.
const pageWidth = 80

// Page is the plan on a plain page, in unit u: enough to mark the leather
// with a ruler and dividers alone. Lines are at most 80 columns wide and end
// in a newline each. prices are as for Figures.
func Page(p project.Project, plan *calc.Plan, u length.Unit, offcut float64) string {
	var b page
	b.wrap("", orUnnamed(p.Title))
	b.wrap("", fmt.Sprintf("pattern %d, %s", p.Revision, Worn(p)))
	if p.Customer.Name != "" {
		b.wrap("", "for "+p.Customer.Name)
	}
	b.heading("figures")
	b.figures(Figures(p, plan, u, offcut))
	b.table(HalfWidths(plan, u), 1)
	if t := MouthCurve(plan, u); len(t.Rows) > 0 {
		b.table(t, 2)
	}
	b.table(TenthHoles(plan, u), 1)
	for _, s := range Dividers() {
		b.wrap("  ", s)
	}
	b.table(FlatHoles(plan, u), 3)
	if f := LoopFigures(plan, u); len(f) > 0 {
		b.heading("belt loop")
		b.figures(f)
	}
	if f := Extras(p, plan, u); len(f) > 0 {
		b.heading("fold, drain, strap, corrections")
		b.figures(f)
	}
	if lines := AddedParts(p, u); len(lines) > 0 {
		b.heading("added parts")
		for _, s := range lines {
			b.wrap("  ", s)
		}
	}
	b.heading("checks")
	for _, s := range Checks(plan, calc.OK, u) {
		b.wrap("  ", s)
	}
	if len(p.Steps) > 0 {
		b.heading("steps")
		b.steps(Steps(p))
	}
	b.heading("cautions")
	for _, s := range Cautions() {
		b.wrap("  ", s)
	}
	return b.String()
}

func orUnnamed(title string) string {
	if strings.TrimSpace(title) == "" {
		return "(no title)"
	}
	return title
}

// page is a text whose lines are kept within the width.
type page struct{ strings.Builder }

func (b *page) line(s string) {
	b.WriteString(ansi.Truncate(strings.TrimRight(plain.Safe(s), " "), pageWidth, "…"))
	b.WriteByte('\n')
}

func (b *page) heading(s string) {
	b.WriteByte('\n')
	b.line(s)
	b.line(strings.Repeat("-", utf8.RuneCountInString(s)))
}

// wrap writes s on as many lines as it needs; the further ones are indented
// by two more columns.
func (b *page) wrap(indent, s string) {
	first, rest := indent, indent+"  "
	s = strings.Join(strings.Fields(plain.Safe(s)), " ")
	for i, l := range plain.Wrap(s, pageWidth-len(rest)) {
		if i > 0 {
			first = rest
		}
		b.line(first + strings.TrimSpace(l))
	}
}

// figures writes names, figures aligned on the decimal point, units, notes.
func (b *page) figures(fs Rows) {
	name, whole, part, unit := 0, 0, 0, 0
	for _, f := range fs {
		w, r := SplitFigure(f.Value)
		name, whole, part = max(name, len(f.Name)), max(whole, len(w)), max(part, len(r))
		unit = max(unit, ansi.StringWidth(f.Unit))
	}
	for _, f := range fs {
		w, r := SplitFigure(f.Value)
		head := fmt.Sprintf("  %-*s  %*s%-*s %-*s", name, f.Name, whole, w, part, r, unit, f.Unit)
		note := plain.Wrap(f.Words(), pageWidth-ansi.StringWidth(head)-2)
		b.line(head + "  " + note[0])
		for _, n := range note[1:] {
			b.line(strings.Repeat(" ", ansi.StringWidth(head)+2) + n)
		}
	}
}

// SplitFigure cuts a figure where a column of them is aligned: before the
// decimal point, or before the fraction.
func SplitFigure(v string) (whole, part string) {
	if i := strings.IndexAny(v, ". "); i >= 0 {
		return v[:i], v[i:]
	}
	if strings.Contains(v, "/") {
		return "", " " + v
	}
	return v, ""
}

// table writes t in as many strips side by side as the page is wide enough
// for, and at most so many.
func (b *page) table(t Table, strips int) {
	b.heading(t.Name)
	b.wrap("  ", t.Note)
	widths := make([]int, len(t.Columns))
	for i, c := range t.Columns {
		widths[i] = utf8.RuneCountInString(c)
		for _, r := range t.Rows {
			widths[i] = max(widths[i], utf8.RuneCountInString(r[i]))
		}
	}
	row := func(cells []string) string {
		var s strings.Builder
		for i, c := range cells {
			if t.Columns[i] == "" {
				fmt.Fprintf(&s, "  %-*s", widths[i], c)
				continue
			}
			fmt.Fprintf(&s, "  %*s", widths[i], c)
		}
		return s.String()
	}
	const between = "    "
	wide := utf8.RuneCountInString(row(t.Columns)) + len(between)
	strips = max(1, min(strips, (pageWidth+len(between))/wide))
	high := (len(t.Rows) + strips - 1) / strips
	heads := make([]string, 0, strips)
	for i := range strips {
		if i*high < len(t.Rows) {
			heads = append(heads, row(t.Columns))
		}
	}
	b.line(strings.Join(heads, between))
	for i := range high {
		var cells []string
		for k := i; k < len(t.Rows) && len(cells) < strips; k += high {
			cells = append(cells, row(t.Rows[k]))
		}
		b.line(strings.Join(cells, between))
	}
}

// steps writes the checklist with its boxes, holds and cautions.
func (b *page) steps(steps []StepLine) {
	for i, s := range steps {
		box := "[ ]"
		switch {
		case s.Done:
			box = "[x]"
		case s.Skipped:
			box = "[-]"
		}
		text := fmt.Sprintf("%s %2d  %s", box, i+1, s.Title)
		if s.Hold != "" {
			text += " (" + s.Hold + ")"
		}
		b.wrap("  ", text)
		if s.Caution != "" {
			b.wrap("          ", s.Caution)
		}
	}
}
