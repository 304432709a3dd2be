package layout

import (
	"strings"

	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"
)

// Edges are the styles of a frame.
type Edges struct {
	InHand, Plain lipgloss.Style // the edge itself
	Title         lipgloss.Style
	ASCII         bool   // no box-drawing characters
	Aside         string // beside the title, as much of it as has room
	AsideStyle    lipgloss.Style
}

// edge has the characters of a frame: corners from the upper left clockwise,
// then the level and the upright line as they repeat.
type edge struct {
	corners        [4]string
	level, upright []string
}

// A sewn edge is a run of stitches with the holes between them; a plain one is
// a thin line.
var (
	sewn      = edge{[4]string{"╭", "╮", "╯", "╰"}, []string{"╶", "─", "╴"}, []string{"╷", "╵"}}
	thin      = edge{[4]string{"┌", "┐", "┘", "└"}, []string{"─"}, []string{"│"}}
	sewnASCII = edge{[4]string{"+", "+", "+", "+"}, []string{"-", "-", " "}, []string{"|", " "}}
	thinASCII = edge{[4]string{".", ".", "'", "'"}, []string{"."}, []string{":"}}
)

// Frame returns exactly h lines of w cells: the content in an edge with the
// title in it. Content that does not fit is cut, escapes in it do not leak into
// the edge. Below 2×2 there is no room for an edge: all is blank.
func Frame(w, h int, title string, inHand bool, content []string, s Edges) []string {
	if w < 2 || h < 2 {
		return Fit(nil, w, h)
	}
	e, style := thin, s.Plain
	switch {
	case inHand && s.ASCII:
		e, style = sewnASCII, s.InHand
	case inHand:
		e, style = sewn, s.InHand
	case s.ASCII:
		e = thinASCII
	}
	lines := make([]string, 0, h)
	lines = append(lines, e.top(w, title, inHand, style, s))
	sides := make([]string, len(e.upright))
	for i, part := range e.upright {
		sides[i] = style.Render(part)
	}
	for y, body := range Fit(content, w-2, h-2) {
		side := sides[y%len(sides)]
		framed := side + body + side
		if ansi.StringWidth(framed) != w { // a stray accent has joined the edge
			framed = side + Line(asked(body), w-2) + side
		}
		lines = append(lines, framed)
	}
	return append(lines, style.Render(e.corners[3]+run(e.level, w-2)+e.corners[2]))
}

// top is the upper edge with the title let in. Escapes in the title are taken
// out.
func (e edge) top(w int, title string, inHand bool, style lipgloss.Style, s Edges) string {
	room := w - 2
	if room < 5 || title == "" {
		return style.Render(e.corners[0] + run(e.level, room) + e.corners[1])
	}
	title = " " + line(ansi.Strip(title), room-4) + " "
	if wide := ansi.StringWidth(title); wide < room {
		left := room - 1 - wide
		aside := asideIn(s.Aside, left-2)
		shown := ""
		if aside != "" {
			left -= ansi.StringWidth(aside)
			shown = titled(aside, false, s.AsideStyle)
		}
		return style.Render(e.corners[0]+run(e.level, 1)) + titled(title, inHand, s.Title) + shown + style.Render(run(e.level, left)+e.corners[1])
	}
	return style.Render(e.corners[0] + run(e.level, room) + e.corners[1])
}

// asideIn is what stands beside the title on at most w cells, a space after it.
func asideIn(text string, w int) string {
	if text == "" || w < 4 {
		return ""
	}
	return atWord(ansi.Strip(text), w-1) + " "
}

// atWord is as many whole words of a line as fit into w cells, with a sign where some are
// left out; what is said behind a colon goes whole where none of its words fits.
func atWord(text string, w int) string {
	if ansi.StringWidth(text) <= w {
		return line(text, w)
	}
	words := strings.Split(text, " ")
	for n := len(words) - 1; n > 0; n-- {
		short := strings.TrimRight(strings.Join(words[:n], " "), ",;:")
		if colon := strings.HasSuffix(words[n-1], ":"); !colon {
			short += " …"
		}
		if ansi.StringWidth(short) <= w {
			return line(short, w)
		}
	}
	return line(text, w)
}

// titled makes the title bold in hand. The style is put round it whole: lipgloss
// would take characters of several parts asunder.
func titled(title string, inHand bool, style lipgloss.Style) string {
	open, end, _ := strings.Cut(style.Bold(inHand || style.GetBold()).Render("."), ".")
	return open + title + end
}

// run repeats a pattern over n cells.
func run(pattern []string, n int) string {
	var b strings.Builder
	for i := range n {
		b.WriteString(pattern[i%len(pattern)])
	}
	return b.String()
}
