package trialpage

import (
	"fmt"
	"math"
	"strings"

	"chape/calc"
	"chape/calc/curve"
	"chape/calc/length"
	"chape/project"
	"chape/project/places"
	"chape/project/report"
	"chape/ui/draw"
	"chape/ui/layout"
	"chape/ui/term"
)

// What the parts of the page take, in cells.
const (
	headRows   = 2
	sayRows    = 2
	leastDraw  = 5
	formWide   = 44
	formWidest = 56
	twoColumns = formWide + 26
)

// spots is the page divided up. An empty rectangle is not shown.
type spots struct {
	drawing, form, kept layout.Rect
	rows                []keptRow
	formTop, keptTop    int // the first line of the draft, and the first row, in sight
}

// arrange gives the lines of the draft their rows, the corrections what stands beside
// them or below, and the drawing the rest.
func (m *Model) arrange() spots {
	var p spots
	room := max(m.h-headRows-sayRows, 0)
	two, formW := m.w >= twoColumns, min(formWidest, max(formWide, m.w/2))
	if p.rows = m.keptRows(m.w); two {
		p.rows = m.keptRows(m.w - formW)
	}
	text := lines
	if !two {
		text += min(len(p.rows), 4)
	}
	if room-text < leastDraw {
		text = min(room, text)
	}
	p.drawing = layout.Rect{Y: headRows, W: m.w, H: room - text}
	p.form = layout.Rect{Y: headRows + p.drawing.H, W: m.w, H: text}
	if two {
		p.form.W = formW
		p.kept = layout.Rect{X: p.form.W, Y: p.form.Y, W: m.w - p.form.W, H: text}
	} else if text > lines {
		p.form.H = lines
		p.kept = layout.Rect{Y: p.form.Y + lines, W: m.w, H: text - lines}
	}
	if line := min(m.list.At, lines-1); line >= p.form.H { // too little room for all
		p.formTop = line - p.form.H + 1
	}
	for i, r := range p.rows {
		if r.line == m.list.At && i >= p.kept.H {
			p.keptTop = i - p.kept.H + 1
		}
	}
	return p
}

// View draws exactly the size that was set.
func (m *Model) View() string {
	if m.w == 0 || m.h == 0 {
		return ""
	}
	p := m.arrange()
	out := layout.Fit(m.head(), m.w, min(headRows, m.h))
	out = append(out, m.drawing(p.drawing.W, p.drawing.H)...)
	form := layout.Fit(m.form(p), p.form.W, p.form.H)
	kept := layout.Fit(m.kept(p), p.kept.W, p.kept.H)
	if p.kept.X > 0 {
		out = append(out, layout.Beside(form, kept)...)
	} else {
		out = append(out, append(form, kept...)...)
	}
	out = append(out, m.say()...)
	return strings.Join(layout.Fit(out, m.w, m.h), "\n")
}

// cursor is the place shown: that of the offer in hand, or of the draft.
func (m *Model) cursor() length.Length {
	if i, ok := m.offered(); ok {
		return length.Length(m.within(m.offers[i].At.MM()))
	}
	return m.draft.at
}

// head says where the cursor stands, and how wide the pattern is there.
func (m *Model) head() []string {
	u, at := m.snap.Unit, m.cursor()
	x := at.MM()
	where := at.Short(u) + " " + u.String() + " from the point"
	if name := places.At(m.places, x); name != "" {
		where += ": " + name
	}
	out := []string{m.Styles.Strong.Render(layout.Line(where, m.w))}
	if m.snap.Plan == nil {
		return append(out, m.Styles.Warning("no plan yet: correct the numbers of the knife first"))
	}
	half := func(line func(*calc.Plan) curve.Line) string {
		was := length.Length(line(m.snap.Plan).Height(x))
		if m.made.plan == nil {
			return was.Format(u, length.Calliper)
		}
		return was.Figure(u, length.Calliper) + ", new " + length.Length(line(m.made.plan).Height(x)).Format(u, length.Calliper)
	}
	wide := "from the fold: stitch line " + half(func(p *calc.Plan) curve.Line { return p.Flat.Stitch }) +
		"; cut line " + half(func(p *calc.Plan) curve.Line { return p.Flat.Cut })
	return append(out, wide)
}

// sheet is how the drawing lies in w×h cells.
func (m *Model) sheet(w, h int) draw.Sheet {
	m.c.Reset(w, h, m.glyphs)
	plans := []*calc.Plan{m.snap.Plan}
	if m.made.plan != nil {
		plans = append(plans, m.made.plan)
	}
	cust := m.snap.Project.Customer
	s := draw.LayPair(m.c, m.glyphs, calc.BackIsRight(cust.Hand, cust.Edge, calc.GrainUp), false, plans...)
	x := m.cursor().MM()
	return s.Closer(m.c, math.Pow(1.5, float64(m.zoom)), curve.Vec{X: x, Y: m.snap.Plan.Flat.Stitch.Height(x)})
}

// drawing is the pattern's half: the new line heavy, the one that stands thin.
func (m *Model) drawing(w, h int) []string {
	if w <= 0 || h <= 0 {
		return nil
	}
	if m.snap.Plan == nil {
		return layout.Fit(nil, w, h)
	}
	s := m.sheet(w, h)
	was, is := (*calc.Plan)(nil), m.snap.Plan
	if m.made.plan != nil {
		was, is = is, m.made.plan
	}
	s.Pair(m.c, was, is, false)
	var at []float64
	for _, p := range m.places {
		at = append(at, p.At)
	}
	s.Ticks(m.c, at)
	s.Cursor(m.c, is, m.cursor().MM(), "")
	return layout.Fit(m.c.Render(m.pens), w, h)
}

// form is the draft, a line each.
func (m *Model) form(p spots) []string {
	d, u := m.draft, m.snap.Unit
	side := "a side"
	if d.round {
		side = "in all"
	}
	of := func(options []string, chosen string) string {
		var out []string
		for _, o := range options {
			if o == chosen {
				o = "[" + o + "]"
			}
			out = append(out, o)
		}
		return strings.Join(out, " ")
	}
	tight := "tight"
	if d.loose {
		tight = "loose"
	}
	stock, _ := field(lineWith)
	row := func(line int, name, value, unit string) string {
		lead := "  "
		if line == m.list.At {
			lead = "> "
		}
		if line != lineKeep {
			name = layout.Line(name, 11)
		}
		if line == m.list.At && m.entry != nil {
			return lead + name + m.entry.Short(p.form.W-13-len(unit)-1, m.Styles.Figure) + " " + unit
		}
		text := lead + name + value
		if unit != "" && value != "" {
			text += " " + unit
		}
		if line == m.list.At {
			return m.Styles.Chosen.Render(layout.Line(text, p.form.W-1)) + " "
		}
		return text
	}
	all := []string{
		row(lineAt, "where", m.value(lineAt), u.String()),
		row(lineTight, "it was", of([]string{"tight", "loose"}, tight), ""),
		row(lineBy, "by", m.value(lineBy), u.String()+" "+side),
		row(lineRound, "counted", of([]string{"a side", "in all"}, side), ""),
		row(lineReach, "reach", m.value(lineReach), u.String()+" to either side"),
		row(lineWith, "folded of", whole(of(stock.Options, d.with), "["+d.with+"], others", p.form.W-14), ""),
		row(lineNote, "note", term.Plain(d.note), ""),
		row(lineKeep, m.keepWords(), "", ""),
	}
	return all[p.formTop:]
}

// whole is a text if it has room, else a shorter one.
func whole(text, shorter string, w int) string {
	if len(text) > w {
		return shorter
	}
	return text
}

// keepWords is the line that keeps.
func (m *Model) keepWords() string {
	switch {
	case m.draft.instead >= 0:
		return fmt.Sprintf("keep it in place of correction %d", m.draft.instead+1)
	case m.draft.by == 0:
		return "keep it"
	}
	return "keep it: " + signed(m.draft.fit().By, m.snap.Unit) + " a side"
}

// keptRow is a row of the list of corrections: a line of the list in hand, or -1.
type keptRow struct {
	text string
	line int
}

// keptRows are the corrections with what each counts, and what is offered from elsewhere,
// on w cells: what is longer goes on in the next row.
func (m *Model) keptRows(w int) []keptRow {
	var out []keptRow
	add := func(text string, line int) {
		for i, part := range layout.Wrap(text, max(1, w-4)) {
			if i > 0 {
				part = "  " + part
			}
			out = append(out, keptRow{part, line})
		}
	}
	fits, u := m.snap.Project.Fits, m.snap.Unit
	if len(fits) > 0 {
		out = append(out, keptRow{fmt.Sprintf("Corrections: %d", len(fits)), -1})
	}
	for i, f := range fits {
		add(fmt.Sprintf("%d ", i+1)+m.correction(f, u), lines+i)
	}
	from := ""
	for i, f := range m.offers {
		if c := m.snap.Project.Carried[i]; c.From != from || i == 0 {
			from = c.From
			out = append(out, keptRow{term.Plain(from) + ": keep?", -1})
		}
		add(m.correction(f, u), lines+len(fits)+i)
	}
	return out
}

// kept is what of them is in sight.
func (m *Model) kept(p spots) []string {
	if len(p.rows) == 0 {
		return layout.Paragraph("No corrections yet. Fold a trial with the welt in, look where it is tight or loose, and say so here. "+pastKey+": what your finished sheaths needed.", p.kept.W, p.kept.H, m.Styles.Quiet)
	}
	var out []string
	for i := p.keptTop; i < len(p.rows) && len(out) < p.kept.H; i++ {
		switch r := p.rows[i]; r.line {
		case -1:
			out = append(out, m.Styles.Heading.Render(layout.Line(r.text, p.kept.W)))
		case m.list.At:
			lead := "> "
			if i > 0 && p.rows[i-1].line == r.line {
				lead = "  "
			}
			out = append(out, m.Styles.Chosen.Render(layout.Line(lead+r.text, p.kept.W)))
		default:
			out = append(out, "  "+r.text)
		}
	}
	return out
}

// correction is one of them in words.
func (m *Model) correction(f project.Fit, u length.Unit) string {
	text := fmt.Sprintf("%s at %s, reach %s", signed(f.By, u), f.At.Short(u), f.Reach.Short(u))
	switch {
	case f.With == "paper":
		f.Paper = true
		text += ", " + report.InPaper(f.Fit, m.snap.Project.Sheath, u)
	default:
		text += ", " + f.With
	}
	if f.Note != "" {
		text += ": " + term.Plain(f.Note)
	}
	return text
}

// say is what is to be known of the draft: what is wrong, what gets worse, what it
// counts, or how the line in hand is meant.
func (m *Model) say() []string {
	st := m.Styles
	switch {
	case m.entry != nil && m.entry.Err() != nil:
		return layout.Paragraph("! "+term.Plain(m.entry.Err().Error()), m.w, sayRows, st.Warn)
	case m.entry != nil && m.entry.Asked():
		return m.entry.Said(m.w, st)
	case m.made.err != nil:
		return layout.Paragraph("! "+m.made.err.Error(), m.w, sayRows, st.Warn)
	}
	_, offer := m.offered()
	if m.made.plan != nil {
		switch worse, level := m.worse(); level {
		case calc.Warn:
			return layout.Paragraph("! "+worse, m.w, sayRows, st.Warn)
		case calc.Note:
			return layout.Paragraph("* "+worse, m.w, sayRows, st.Note)
		}
		if !offer && m.draft.with == "paper" {
			f := m.draft.fit()
			f.Paper = true
			return layout.Paragraph("a right pattern hangs loose in paper. "+report.InPaper(f.Fit, m.snap.Project.Sheath, m.snap.Unit), m.w, sayRows, st.Note)
		}
	}
	if offer {
		return layout.Paragraph("Enter keeps it here, "+removeKey+" lets it go; until then it counts for nothing", m.w, sayRows, st.Quiet)
	}
	return layout.Paragraph(hint(m.list.At), m.w, sayRows, st.Quiet)
}

// worse is the first check that the draft makes worse, in its words.
func (m *Model) worse() (string, calc.Level) {
	was := map[string]calc.Level{}
	for _, c := range m.snap.Plan.Checks {
		was[c.Name] = max(was[c.Name], c.Level)
	}
	for _, c := range m.made.plan.Checks {
		if c.Level > calc.OK && c.Level > was[c.Name] {
			return c.Text(m.snap.Unit), c.Level
		}
	}
	return "", calc.OK
}

// hint says how a line is meant.
func hint(line int) string {
	switch line {
	case lineAt:
		return "where along the fold, from the point; ← and → go by marks and landmarks"
	case lineTight:
		return "tight: leather is added there; loose: it is taken away"
	case lineBy:
		return "how much was missing or over, at the seam; the drawing follows"
	case lineRound:
		return "a side: of one half; in all: both halves together, as a strip of paper laid round it tells"
	case lineReach:
		return "how far it runs out to either side of there"
	case lineWith:
		return "what the trial was folded of: paper hangs looser than leather, and that is reckoned in"
	case lineNote:
		return "what you saw, if it is worth a word"
	case lineKeep:
		return "Enter keeps it among the corrections; u takes it back"
	}
	return takeKey + " takes this correction up again, " + removeKey + " takes it out"
}
