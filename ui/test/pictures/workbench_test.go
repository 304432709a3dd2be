// Package pictures makes the README's picture of the workbench from the workbench itself,
// and holds it to what that shows. Tests only.
package pictures

import (
	"fmt"
	"html"
	"image/color"
	"os"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	uv "github.com/charmbracelet/ultraviolet"
	"github.com/charmbracelet/x/vt"

	"chape/calc"
	"chape/project"
	"chape/project/example"
	"chape/project/store"
	"chape/ui/act"
	"chape/ui/canvas"
	"chape/ui/document"
	"chape/ui/session"
	"chape/ui/term/ink"
	"chape/ui/test/golden"
	"chape/ui/workbench"
)

// The picture's window, and a cell of it in the picture's units.
const (
	across, down = 100, 30
	cellW, cellH = 8.4, 17.0
	fontSize     = 14
)

const repo = "../../.."

// screen is the workbench on the example at a fixed time, as a terminal would show it.
func screen() *vt.Emulator {
	now := time.Date(2026, time.November, 25, 15, 2, 0, 0, time.UTC)
	doc := document.New(example.Load(now), "", store.Stamp{},
		document.Options{Make: calc.Compute, Check: project.Project.Validate, Limits: calc.DefaultLimits()})
	m := workbench.New(workbench.Options{
		Options:  session.Options{Doc: doc, Clock: func() time.Time { return now }},
		Styles:   ink.New(ink.Light, ink.TrueColour),
		Font:     act.Font{Glyphs: canvas.Braille},
		Suspends: true,
	})
	m.Update(tea.WindowSizeMsg{Width: across, Height: down})
	e := vt.NewEmulator(across, down)
	_, _ = e.WriteString(strings.ReplaceAll(m.View(), "\n", "\r\n")) // it writes to memory
	return e
}

// TestWorkbenchPicture: braille is drawn as dots, for fonts that lack it; the rest is text.
func TestWorkbenchPicture(t *testing.T) {
	got := picture(screen())
	golden.Exact(t, "../"+repo+"/testdata/pictures/workbench.svg", got)
	if len(got) > 120_000 {
		t.Errorf("%d bytes are too many for a picture in a readme", len(got))
	}
	readme, err := os.ReadFile(repo + "/README.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"workbench", "sheet"} {
		if !strings.Contains(string(readme), "(testdata/pictures/"+name+".svg)") {
			t.Errorf("the readme does not show %s.svg", name)
		}
	}
}

func picture(e *vt.Emulator) string {
	var b strings.Builder
	w, h := across*cellW+16, down*cellH+16
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %g %g" width="%g" height="%g">`+"\n", w, h, w, h)
	b.WriteString("<title>The workbench on its invented example: the plan, with the holds above it</title>\n")
	fmt.Fprintf(&b, `<rect width="%g" height="%g" rx="6" fill="#fbfaf6"/>`+"\n", w, h)
	fmt.Fprintf(&b, `<g transform="translate(8 8)" font-family="ui-monospace, Menlo, Consolas, 'DejaVu Sans Mono', monospace" font-size="%d" xml:space="preserve">`+"\n", fontSize)
	for y := range down {
		for x := 0; x < across; {
			x = run(&b, e, x, y)
		}
	}
	b.WriteString("</g>\n</svg>\n")
	return b.String()
}

// run writes the cells of one look from x on, and gives the cell after them.
func run(b *strings.Builder, e *vt.Emulator, x, y int) int {
	first := e.CellAt(x, y)
	if blank(first) {
		return x + 1
	}
	dots, end, text := isDots(first), x, ""
	for ; end < across; end++ {
		c := e.CellAt(end, y)
		if blank(c) || isDots(c) != dots || !c.Style.Equal(&first.Style) {
			break
		}
		text += c.Content
	}
	if first.Style.Attrs&uv.AttrReverse != 0 {
		fmt.Fprintf(b, `<rect x="%.1f" y="%.1f" width="%.1f" height="%g" fill="#ddd"/>`+"\n", float64(x)*cellW, float64(y)*cellH, float64(end-x)*cellW, cellH)
	}
	if dots {
		fmt.Fprintf(b, `<path d="%s" stroke="%s" stroke-width="2.8" stroke-linecap="round"/>`+"\n", dotPath([]rune(text), x, y), ink6(first.Style.Fg))
		return end
	}
	weight := ""
	if first.Style.Attrs&uv.AttrBold != 0 {
		weight = ` font-weight="bold"`
	}
	fmt.Fprintf(b, `<text x="%.1f" y="%.1f" textLength="%.1f" lengthAdjust="spacingAndGlyphs" fill="%s"%s>%s</text>`+"\n",
		float64(x)*cellW, float64(y)*cellH+13, float64(end-x)*cellW, ink6(first.Style.Fg), weight, html.EscapeString(text))
	return end
}

func blank(c *uv.Cell) bool {
	return c == nil || strings.TrimSpace(c.Content) == "" && c.Style.Attrs == 0
}

func isDots(c *uv.Cell) bool {
	r := []rune(c.Content)
	return len(r) == 1 && r[0] >= 0x2800 && r[0] <= 0x28ff
}

// dotPath is a braille character's dots, each a line of no length (The Unicode Standard,
// chapter 21.1: bits by row, then column).
func dotPath(text []rune, x, y int) string {
	bits := [4][2]rune{{0x01, 0x08}, {0x02, 0x10}, {0x04, 0x20}, {0x40, 0x80}}
	var b strings.Builder
	for i, r := range text {
		for row := range bits {
			for col, bit := range bits[row] {
				if (r-0x2800)&bit != 0 {
					fmt.Fprintf(&b, "M%.1f %.1fh0", (float64(x+i)+0.25+0.5*float64(col))*cellW, (float64(y)+0.125+0.25*float64(row))*cellH)
				}
			}
		}
	}
	return b.String()
}

// ink6 is a colour as six digits; the terminal's own is nearly black.
func ink6(c color.Color) string {
	if c == nil {
		return "#222222"
	}
	r, g, b, _ := c.RGBA()
	return fmt.Sprintf("#%02x%02x%02x", r>>8, g>>8, b>>8)
}
