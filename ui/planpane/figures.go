package planpane

import (
	"fmt"
	"math"
	"strings"

	"github.com/charmbracelet/x/ansi"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/report"
	"chape/ui/layout"
	"chape/ui/term"
	"chape/ui/term/ink"
)

const (
	quietPen  = ink.PenQuiet
	figurePen = ink.PenHole // bold, in the figures' colour
)

// figure is a line of the figures. A note that must be seen gets a line of
// its own where the first has no room.
type figure struct {
	report.Figure
	must bool
}

// figures is what a maker works by, sewing first.
func (m Model) figures() []figure {
	return append(m.sewing(), m.cutting()...)
}

func (m Model) sewing() []figure {
	p, u := m.snap.Plan, m.snap.Unit
	s := p.Stitch
	out := []figure{
		{report.Figure{Name: "stitches", Value: number(s.Stitches), Note: number(s.Holes) + " holes"}, true},
		divider(s.Walk, u),
		drill(s),
		fine("thickness to sew through", s.Stack, u, ""),
		thread("thread, seam", p.Thread.Length, u),
	}
	if p.Loop.Thread > 0 {
		out = append(out, thread("thread, loop", p.Loop.Thread, u))
	}
	return out
}

func (m Model) cutting() []figure {
	p, u := m.snap.Plan, m.snap.Unit
	cost := p.Cost(m.rates, hours(m.snap.Project))
	var out []figure
	leather := report.Leather(p, u, m.rates.Offcut)
	for _, f := range leather[1:] {
		out = append(out, figure{f, false})
	}
	if p.Body.TabLength > 0 {
		out = append(out, rough("tab, past the mouth", p.Body.TabLength, u, ""))
	}
	out = append(append(out, m.tightest()...), figure{leather[0], false}) // what is used is of less use than what fits
	if m.rates.Any() {
		out = append(out, figure{report.Figure{
			Name: "cost", Value: fmt.Sprintf("%.2f", cost.Total), Unit: m.currency, Note: costParts(cost, hours(m.snap.Project)),
		}, true})
	}
	return out
}

// tightest is the place where the knife passes hardest.
func (m Model) tightest() []figure {
	p, u := m.snap.Plan, m.snap.Unit
	for _, c := range p.Checks {
		if c.Name == "squeeze" {
			a := p.Across(c.At)
			f := fine("tightest place", math.Abs(a.Need-a.Room), u, m.spare(a)+", at "+length.Length(c.At).Format(u, length.Ruler))
			f.must = true
			return []figure{f}
		}
	}
	return nil
}

// spare says what the difference of need and room means.
func (m Model) spare(a calc.Across) string {
	switch d := a.Need - a.Room; {
	case d <= 0:
		return "a side to spare"
	case d <= m.snap.Plan.Input.Limits.Snug.MM():
		return "a side tight, the moulding holds it"
	}
	return "a side too tight"
}

// hours is the work at the bench so far.
func hours(p project.Project) float64 {
	var h float64
	for _, s := range p.Steps {
		h += s.Spent.Hours()
	}
	return h
}

func costParts(c calc.Cost, hours float64) string {
	var parts []string
	add := func(name string, v float64) {
		if v > 0 {
			parts = append(parts, fmt.Sprintf("%s %.2f", name, v))
		}
	}
	add("leather", c.Leather)
	add("thread", c.Thread)
	add("sundries", c.Sundries)
	add(fmt.Sprintf("%.1f h at the bench", hours), c.Work)
	return strings.Join(parts, ", ")
}

func fine(name string, mm float64, u length.Unit, note string) figure {
	return figure{report.Figure{Name: name, Value: length.Length(mm).Figure(u, length.Calliper), Unit: u.String(), Note: note}, false}
}

func rough(name string, mm float64, u length.Unit, note string) figure {
	return figure{report.Figure{Name: name, Value: length.Length(mm).Figure(u, length.Ruler), Unit: u.String(), Note: note}, false}
}

// divider gives inch makers the setting exactly too: a 64th is too coarse, for each
// step carries its error on.
func divider(walk float64, u length.Unit) figure {
	f := fine("divider setting", walk, u, "")
	if u == length.Inches {
		f.Note, f.must = fmt.Sprintf("exactly %.3f in, %.2f mm", length.Length(walk).In(), walk), true
	}
	return f
}

// thread is shown as it is pulled off the reel.
func thread(name string, mm float64, u length.Unit) figure {
	if u == length.Inches {
		return figure{report.Figure{Name: name, Value: fmt.Sprintf("%.1f", mm/12/length.Inch.MM()), Unit: "ft"}, false}
	}
	return figure{report.Figure{Name: name, Value: fmt.Sprintf("%.2f", mm/1000), Unit: "m"}, false}
}

// drill names the choice and the others that do, of all three series.
func drill(s calc.Stitching) figure {
	f := figure{report.Figure{Name: "drill", Value: s.Choice().Name}, true}
	if i := strings.LastIndex(f.Value, " "); i > 0 {
		f.Value, f.Unit = f.Value[:i], f.Value[i+1:]
	}
	if also := otherDrills(s.Drills); len(also) > 0 {
		f.Note = "or " + strings.Join(also, ", ")
	}
	return f
}

// otherDrills are those beside the choice, smallest to largest of each
// series.
func otherDrills(all []calc.Drill) []string {
	var out []string
	for i := 0; i < len(all); {
		if all[i].Choice {
			i++
			continue
		}
		j := i
		for j+1 < len(all) && all[j+1].Series == all[i].Series && !all[j+1].Choice {
			j++
		}
		switch {
		case j == i:
			out = append(out, all[i].Name)
		default:
			out = append(out, all[i].Name+" to "+all[j].Name)
		}
		i = j + 1
	}
	return out
}

// figureLines sets figures on the decimal point into lines of at most w cells.
func (m Model) figureLines(figures []figure, w int) []string {
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
			if f.must {
				for _, l := range layout.Wrap(note, max(w-2, 1)) {
					out = append(out, "  "+quiet.Open+l+quiet.Close)
				}
			}
		}
	}
	return out
}

// figurePair sets the figures in two columns: sewing, cutting.
func (m Model) figurePair(w int) []string {
	wide := (w - 3) / 2
	left, right := m.figureLines(m.sewing(), wide), m.figureLines(m.cutting(), w-wide-3)
	high := max(len(left), len(right))
	return layout.Beside(layout.Fit(left, wide+3, high), layout.Fit(right, w-wide-3, high))
}
