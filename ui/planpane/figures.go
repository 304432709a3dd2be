package planpane

import (
	"slices"
	"strings"

	"github.com/charmbracelet/x/ansi"

	"chape/project/report"
	"chape/ui/layout"
	"chape/ui/term"
	"chape/ui/term/ink"
)

const (
	quietPen  = ink.PenQuiet
	figurePen = ink.PenHole // bold, in the figures' colour
)

// The rows beside the drawing: by what a maker sews, and by what they cut. What is used is
// of less use than what fits.
var (
	sewing  = []report.Key{report.Stitches, report.Divider, report.TenSteps, report.Drill, report.Stack, report.SeamThread, report.LoopThread}
	cutting = []report.Key{report.ToBuy, report.PieceLong, report.PieceWide, report.TabLong, report.Tightest, report.Used, report.Money}
	// wordy are the rows whose notes get lines of their own where the first has no room.
	wordy = []report.Key{report.Stitches, report.Divider, report.Drill, report.Tightest, report.Money}
)

// figures are all rows of the plan.
func (m *Model) figures() report.Rows {
	rows := report.Figures(m.snap.Project, m.snap.Plan, m.snap.Unit, m.snap.Shop.Offcut)
	if taken := m.snap.Shop.Reckon(m.snap.Project, m.snap.Plan).Taken; len(taken.Known().Lines) > 0 {
		rows = append(rows, report.CostRow(taken))
	}
	return rows
}

// must tells whether a row's note has to be seen.
func must(r report.Row) bool { return slices.Contains(wordy, r.Key) }

// figureLines sets figures on the decimal point into lines of at most w cells.
func (m *Model) figureLines(figures report.Rows, w int, must func(report.Row) bool) []string {
	var name, whole, part int
	for _, f := range figures {
		a, b := report.SplitFigure(f.Value)
		name, whole = max(name, len(f.Name)), max(whole, ansi.StringWidth(a))
		part = max(part, ansi.StringWidth(b+" "+f.Unit))
	}
	name = max(0, min(name, w-whole-part-1))
	quiet, strong := m.pens[quietPen], m.pens[figurePen]
	var out []string
	for _, f := range figures {
		a, b := report.SplitFigure(f.Value)
		unit := term.Plain(f.Unit)
		used := name + 1 + whole + part
		line := layout.Line(f.Name, name) + " " + strings.Repeat(" ", whole-ansi.StringWidth(a)) +
			strong.Open + a + b + strong.Close + " " + quiet.Open + unit + quiet.Close
		note := term.Plain(f.Note)
		switch long := ansi.StringWidth(note); {
		case note == "":
			out = append(out, line)
		case used+2+long <= w:
			line += strings.Repeat(" ", max(0, part-ansi.StringWidth(b+" "+unit)))
			out = append(out, line+"  "+quiet.Open+note+quiet.Close)
		default:
			out = append(out, line)
			if must(f) {
				for _, l := range layout.Wrap(note, max(w-2, 1)) {
					out = append(out, "  "+quiet.Open+l+quiet.Close)
				}
			}
		}
	}
	return out
}

// figurePair sets the figures in two columns: sewing, cutting.
func (m *Model) figurePair(w int) []string {
	wide := (w - 3) / 2
	rows := m.figures()
	left, right := m.figureLines(rows.Pick(sewing...), wide, must), m.figureLines(rows.Pick(cutting...), w-wide-3, must)
	high := max(len(left), len(right))
	return layout.Beside(layout.Fit(left, wide+3, high), layout.Fit(right, w-wide-3, high))
}
