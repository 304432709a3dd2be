package tracepage

import (
	"errors"
	"fmt"
	"strings"

	"chape/calc/length"
	"chape/calc/trace"
	"chape/project/report"
	"chape/ui/layout"
	"chape/ui/term"
)

// leastDrawing is how many lines a drawing takes at least.
const leastDrawing = 5

// View draws exactly the size that was set.
func (m *Model) View() string {
	if m.w == 0 || m.h == 0 {
		return ""
	}
	var above, below []string
	switch m.state {
	case choosing:
		above = m.picker.Lines(m.w)
		below = m.traced()
	case looking:
		above, below = m.found(), m.inHandLines()
	default:
		above, below = m.column()
	}
	if room := m.h - len(above) - len(below); room >= leastDrawing {
		above = append(above, layout.Fit(m.drawing(m.w, room), m.w, room)...)
	}
	return strings.Join(layout.Fit(append(above, below...), m.w, m.h), "\n")
}

func (m *Model) show(mm float64, fine length.Fineness) string {
	return length.Length(mm).Format(m.snap.Unit, fine)
}

// traced says where the marks that stand were read from.
func (m *Model) traced() []string {
	t := m.snap.Project.Tracing
	if t.Picture == "" {
		return nil
	}
	line := fmt.Sprintf("The marks were read from %s on %s, to about %s.", term.Short(t.Picture, 60), t.Read.Format("2 January 2006"),
		report.ReadTo(t.Residual.MM(), m.snap.Unit))
	return layout.Paragraph(line, m.w, 2, m.Styles.Quiet)
}

// found says how true the picture was read, and what taking it would change.
func (m *Model) found() []string {
	st, k := m.Styles, m.reading.Knife
	lines := layout.Paragraph(term.Short(m.picture, 40)+": "+report.TracingSummary(m.reading, m.snap.Unit), m.w, 2, st.Strong)
	off, at := k.Off()
	text := fmt.Sprintf("%d marks, their curves within %s of the outline", len(k.Marks), report.Small(off, m.snap.Unit))
	if off > 0.2 {
		text += " (at " + m.show(at, length.Ruler) + ")"
	}
	text += "; " + m.stepsText()
	lines = append(lines, layout.Paragraph(text, m.w, 2, st.Text)...)
	if m.problem != nil {
		return append(lines, layout.Paragraph("! these marks can't be taken: "+term.Plain(m.problem.Error()), m.w, 3, st.Warn)...)
	}
	return append(lines, layout.Paragraph("Enter would change: "+m.changes(), m.w, 3, st.Text)...)
}

func (m *Model) stepsText() string {
	steps := m.reading.Knife.Steps
	if len(steps) == 0 {
		return "no steps: strokes outwards from the line mark them"
	}
	var at []string
	for _, s := range steps {
		at = append(at, m.show(s, length.Calliper))
	}
	if len(at) == 1 {
		return "a step at " + at[0]
	}
	return "steps at " + strings.Join(at, ", ")
}

// changes says what the marks would make of the project.
func (m *Model) changes() string {
	was, is := m.snap.Project, m.after
	deepest := func(of []length.Length) string { return m.show(maxOf(of).MM(), length.Calliper) }
	depths := func(p projectMarks) (ds []length.Length) {
		for _, s := range p {
			ds = append(ds, s.Depth())
		}
		return ds
	}
	parts := []string{
		fmt.Sprintf("marks %d to %d", len(was.Knife.Stations), len(is.Knife.Stations)),
		fmt.Sprintf("length %s to %s", m.show(was.Knife.Length().MM(), length.Ruler), m.show(is.Knife.Length().MM(), length.Ruler)),
		fmt.Sprintf("deepest %s to %s", deepest(depths(was.Knife.Stations)), deepest(depths(is.Knife.Stations))),
	}
	if was.Sheath.Mouth != is.Sheath.Mouth {
		parts = append(parts, fmt.Sprintf("mouth %s to %s", m.show(was.Sheath.Mouth.MM(), length.Ruler), m.show(is.Sheath.Mouth.MM(), length.Ruler)))
	}
	switch n := len(is.Unmeasured()); n {
	case 0:
		parts = append(parts, "thicknesses stay as measured")
	case 1:
		parts = append(parts, "one thickness is left for the calliper")
	default:
		parts = append(parts, fmt.Sprintf("%d thicknesses are left for the calliper", n))
	}
	return strings.Join(parts, "; ") + "."
}

// inHandLines say the mark in hand.
func (m *Model) inHandLines() []string {
	k := m.reading.Knife
	if m.at >= len(k.Marks) {
		return nil
	}
	a := k.Marks[m.at]
	text := fmt.Sprintf("mark %d of %d, %s from the point: gap %s, depth %s", m.at+1, len(k.Marks),
		m.show(a.At, length.Calliper), m.show(a.Gap, length.Calliper), m.show(a.Depth, length.Calliper))
	if i, ok := m.step(); ok && m.at+1 < len(k.Marks) {
		b := k.Marks[m.at+1]
		text = fmt.Sprintf("step %d of %d, %s from the point: depth %s before it, %s behind", i+1, len(k.Steps),
			m.show(a.At, length.Calliper), m.show(a.Depth, length.Calliper), m.show(b.Depth, length.Calliper))
	}
	return layout.Paragraph(text, m.w, 2, m.Styles.Text)
}

// column is what stands above and below the drawing while thicknesses are measured.
func (m *Model) column() (above, below []string) {
	st := m.Styles
	f, ok := m.field()
	if !ok {
		return append(layout.Paragraph("All thicknesses are measured. Enter goes back to the knife.", m.w, 2, st.Strong), m.traced()...), nil
	}
	left := len(m.cells())
	if m.cell.key == grind && m.inHandIsGrind() {
		left++
	}
	above = layout.Paragraph(fmt.Sprintf("%d of %d: %s", max(1, m.total-left+1), max(m.total, left), m.title()), m.w, 2, st.Strong)
	hint := "calliper square across, at the fattest"
	if m.cell.key == grind {
		hint = "from the edge up to where the bevel begins"
	}
	stands := f.Show(m.snap.Project)
	if f.Get(m.snap.Project) != nil {
		stands += " " + f.Unit(m.snap.Project)
	}
	above = append(above, layout.Paragraph(hint+"; not measured, it stands at "+stands, m.w, 2, st.Quiet)...)
	if m.entry != nil {
		below = m.entry.Lines(m.w, st)
	}
	return above, below
}

// title names the figure in hand and its place.
func (m *Model) title() string {
	f, ok := m.field()
	if !ok {
		return ""
	}
	marks := m.snap.Project.Knife.Stations
	i := m.cell.mark
	text := f.Name + " at " + marks[i].At.Format(m.snap.Unit, length.Ruler) + " from the point"
	switch {
	case marks[i].At == 0:
		text = f.Name + " at the point"
	case i+1 < len(marks) && marks[i+1].At == marks[i].At:
		text += ", just before the step"
	case i > 0 && marks[i-1].At == marks[i].At:
		text += ", just behind the step"
	}
	return text
}

// refusedAt is where on the sheet a picture was refused, and what of its line was seen.
func (m *Model) refusedAt() (*trace.Refused, bool) {
	var no *trace.Refused
	return no, errors.As(m.picker.Refused(), &no) && (len(no.Seen) > 1 || no.Placed)
}
