package ink

import (
	"io"
	"strings"

	"github.com/charmbracelet/lipgloss"

	"chape/ui/canvas"
)

// Styles are all the styles there are. Text styles come first, then those of
// the lines of a drawing, then the panes' edges.
type Styles struct {
	Text    lipgloss.Style
	Quiet   lipgloss.Style // units, hints
	Strong  lipgloss.Style
	Heading lipgloss.Style
	Figure  lipgloss.Style // computed numbers
	Note    lipgloss.Style // goes with "* "
	Warn    lipgloss.Style // goes with "! "
	Good    lipgloss.Style // goes with a word or a tick
	Chosen  lipgloss.Style // the row or number in hand
	Banner  lipgloss.Style // a hold that has fallen due

	Cut, Stitch, Fold, Glue, Knife, Welt, Hole, Leather, Mark lipgloss.Style

	Edge      lipgloss.Style // the sewn edge of the pane in hand
	EdgePlain lipgloss.Style
}

// Pens of the drawings, to be given to the canvas; Pens returns their styles in
// this order.
const (
	PenText canvas.Pen = iota
	PenQuiet
	PenCut
	PenStitch
	PenFold
	PenGlue
	PenKnife
	PenWelt
	PenHole
	PenLeather
	PenMark
	PenWarn
)

// New returns the styles for a ground and a depth. Nothing is asked of the
// terminal.
func New(g Ground, d Depth) Styles {
	r := lipgloss.NewRenderer(io.Discard)
	r.SetColorProfile(d.profile())
	r.SetHasDarkBackground(g != Light)
	base := r.NewStyle()
	in := func(t tint) lipgloss.Style { return base.Foreground(t.colour(g, d)) }
	return Styles{
		Text:    base,
		Quiet:   in(pencil),
		Strong:  base.Bold(true),
		Heading: in(leather).Bold(true),
		Figure:  in(thread).Bold(true),
		Note:    in(brass),
		Warn:    in(madder).Bold(true),
		Good:    in(verdi),
		Chosen:  base.Reverse(true),
		Banner:  in(brass).Bold(true).Reverse(true),

		Cut:     in(leather),
		Stitch:  in(thread),
		Fold:    in(steel),
		Glue:    in(pencil),
		Knife:   in(steel).Bold(true),
		Welt:    in(brass),
		Hole:    in(thread).Bold(true),
		Leather: in(leather),
		Mark:    in(madder),

		Edge:      in(thread).Bold(true),
		EdgePlain: in(pencil),
	}
}

// Pens returns the canvas's styles, by pen.
func (s Styles) Pens() []canvas.Style {
	by := map[canvas.Pen]lipgloss.Style{
		PenText: s.Text, PenQuiet: s.Quiet, PenCut: s.Cut, PenStitch: s.Stitch, PenFold: s.Fold, PenGlue: s.Glue,
		PenKnife: s.Knife, PenWelt: s.Welt, PenHole: s.Hole, PenLeather: s.Leather, PenMark: s.Mark, PenWarn: s.Warn,
	}
	pens := make([]canvas.Style, len(by))
	for pen, style := range by {
		pens[pen] = Around(style)
	}
	return pens
}

// Around returns what a style sends before and after a text, so that it can be
// made once and used for many.
func Around(style lipgloss.Style) canvas.Style {
	open, end, _ := strings.Cut(style.Render("."), ".")
	return canvas.Style{Open: open, Close: end}
}

// Warning renders a warning, which a leading '!' shows without colour too.
func (s Styles) Warning(text string) string { return s.Warn.Render("! " + text) }
