package planpane

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/charmbracelet/x/ansi"

	"chape/project/steps"
	"chape/ui/act"
	"chape/ui/canvas"
	"chape/ui/draw"
	"chape/ui/layout"
	"chape/ui/term"
)

// frame is the last view drawn. The screen is asked for after every message,
// and most of them change nothing here.
type frame struct {
	made  int // how many there have been to draw
	drawn int // which of them view is
	view  string
}

// touch says that what is shown may have changed.
func (m *Model) touch() {
	m.last.made++
	m.frame = m.last.made
}

// looksLike tells whether a snapshot shows what the last one did.
func (m *Model) looksLike(s act.Snapshot) bool {
	a, b := m.snap, s
	return a.Plan != nil && a.Plan == b.Plan && a.Stale == b.Stale && said(a.Err) == said(b.Err) &&
		a.Unit == b.Unit && a.Mark == b.Mark && steps.TotalSpent(a.Project.Steps) == steps.TotalSpent(b.Project.Steps) &&
		a.Project.Hide == b.Project.Hide && a.Project.Customer.Hand == b.Project.Customer.Hand && a.Project.Customer.Edge == b.Project.Customer.Edge
}

func said(err error) string {
	if err == nil {
		return ""
	}
	return err.Error()
}

// View returns exactly as many lines as the pane is high, each as wide as the
// pane.
func (m *Model) View() string {
	if m.width == 0 || m.height == 0 {
		return ""
	}
	if m.last.drawn != m.frame {
		m.last.view = strings.Join(layout.Fit(m.lines(), m.width, m.height), "\n")
		m.last.drawn = m.frame
	}
	return m.last.view
}

func (m *Model) lines() []string {
	if m.snap.Plan == nil {
		return append([]string{m.names("")}, m.missingLines()...)
	}
	p, sheet := m.arrange()
	text := m.text(p, sheet)
	shown, where := m.scrolled(text, p)
	out := append([]string{m.names(where)}, m.staleLines()...)
	left := m.pictures(p, sheet)
	if p.text.X > 0 {
		left = layout.Fit(left, p.text.X, p.text.H)
		return append(out, layout.Beside(left, layout.Fit(shown, p.text.W, p.text.H))...)
	}
	return append(append(out, left...), shown...)
}

// pictures draws what does not scroll.
func (m *Model) pictures(p places, sheet draw.Sheet) []string {
	var out []string
	if !p.drawing.Empty() {
		m.c.Reset(p.drawing.W, p.drawing.H, m.glyphs)
		if mark, _, ok := m.mark(); ok {
			sheet.Draw(m.c, m.snap.Plan, &mark)
		} else {
			sheet.Draw(m.c, m.snap.Plan, nil)
		}
		out = append(out, m.render()...)
	}
	if !p.legend.Empty() {
		m.c.Reset(p.legend.W, p.legend.H, m.glyphs)
		draw.Legend(m.c, sheet.Scale(), m.snap.Unit, sheet.Shape)
		out = append(out, m.render()...)
	}
	if !p.section.Empty() {
		out = append(out, m.sectionPicture(p.section.W, p.section.H)...)
	}
	return out
}

// render is the canvas in the pens of the plan as it stands.
func (m *Model) render() []string {
	pens := m.pens
	if m.snap.Stale {
		pens = m.worn
	}
	return m.c.Render(pens)
}

// text is all that scrolls on the page, with its fixed rows first.
func (m *Model) text(p places, sheet draw.Sheet) []string {
	w := p.text.W
	switch m.page {
	case HalfWidths:
		return m.halfWidths(w)
	case Holes:
		return m.holes(w)
	case Section:
		return m.sectionText(w)
	case Checks:
		return m.checkList(w)
	}
	return m.besideDrawing(w, p.section.Empty() && m.roomy(), sheet)
}

// besideDrawing is the text of the drawing page: what warns first.
func (m *Model) besideDrawing(w int, section bool, sheet draw.Sheet) []string {
	var out []string
	add := func(lines []string) {
		if len(out) > 0 && len(lines) > 0 && m.roomy() {
			out = append(out, "")
		}
		out = append(out, lines...)
	}
	out = append(out, m.markLines(w)...)
	add(m.warnings(w))
	switch {
	case section:
		wide := (w - 2) / 2
		figures := m.figureLines(m.figures().Pick(slices.Concat(sewing, cutting)...), w-wide-2, must)
		picture := m.sectionPicture(wide, len(figures))
		add(layout.Beside(layout.Fit(picture, wide+2, len(figures)), figures))
	case w >= pairFigures:
		add(m.figurePair(w))
	default:
		add(m.figureLines(m.figures().Pick(slices.Concat(sewing, cutting)...), w, must))
	}
	add(m.notes(w))
	add(m.wrapped(m.sideWords(sheet), w, m.pens[quietPen]))
	return out
}

// scrolled is the part of the text that is shown, and where it lies in it.
func (m *Model) scrolled(text []string, p places) (shown []string, where string) {
	if len(text) <= p.text.H {
		return text, ""
	}
	room := max(p.text.H-p.fixed, 0)
	body := text[p.fixed:]
	from := max(0, min(m.scroll[m.page], len(body)-room))
	shown = append(append([]string(nil), text[:p.fixed]...), body[from:from+room]...)
	return shown, fmt.Sprintf("%d-%d of %d, PgDn", from+1, from+room, len(body))
}

// names is the pane's first line: the pages, the one that is shown in
// brackets, and where the text stands.
func (m *Model) names(where string) string {
	if m.width < namesWidth {
		name := "[" + m.page.String() + "] " + number(int(m.page)+1) + "/" + number(pages)
		return layout.Ends(m.Styles.Strong.Render(name), m.Styles.Quiet.Render(where), m.width)
	}
	var b strings.Builder
	for p := range Page(pages) {
		if p == m.page {
			b.WriteString(m.Styles.Strong.Render("[" + p.String() + "]"))
		} else {
			b.WriteString(m.Styles.Quiet.Render(" " + p.String() + " "))
		}
	}
	if m.width < namesWidth+1+ansi.StringWidth(where) {
		return b.String()
	}
	return layout.Ends(b.String(), m.Styles.Quiet.Render(where), m.width)
}

// namesWidth is what all pages' names take, each with a cell at both sides.
const namesWidth = len("drawing"+"half-widths"+"holes"+"section"+"checks") + 2*pages

// pageAt is the page whose name stands at a cell of the first line.
func (m *Model) pageAt(x int) (Page, bool) {
	if m.width < namesWidth {
		return (m.page + 1) % pages, true
	}
	at := 0
	for p := range Page(pages) {
		at += len(p.String()) + 2
		if x < at {
			return p, true
		}
	}
	return 0, false
}

// wrapped breaks words to the width; lines after the first are indented by
// two.
func (m *Model) wrapped(words string, w int, style canvas.Style) []string {
	lines := layout.Wrap(term.Plain(words), max(w-2, 1))
	for i, l := range lines {
		if i > 0 {
			l = "  " + l
		}
		lines[i] = style.Open + l + style.Close
	}
	return lines
}

func number(n int) string { return strconv.Itoa(n) }
