package planpane

import (
	"fmt"
	"slices"
	"testing"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/ui/canvas"
	"chape/ui/test/golden"
)

func TestGoldenScreens(t *testing.T) {
	for _, c := range []struct {
		name   string
		w, h   int
		glyphs canvas.Glyphs
		unit   length.Unit
		keys   string
	}{
		{"small", 78, 19, canvas.Braille, length.Millimetres, ""},
		{"middle", 48, 35, canvas.Braille, length.Millimetres, ""},
		{"large", 130, 50, canvas.Braille, length.Millimetres, ""},
		{"closed", 90, 40, canvas.Braille, length.Millimetres, "v v"},
		{"zoomed", 78, 22, canvas.Braille, length.Millimetres, "z z z"},
		{"half-widths", 78, 24, canvas.ASCII, length.Millimetres, "right"},
		{"half-widths-in", 48, 24, canvas.ASCII, length.Inches, "right"},
		{"holes", 90, 40, canvas.ASCII, length.Millimetres, "right right"},
		{"section", 78, 22, canvas.Braille, length.Millimetres, "left left"},
	} {
		m := shown(t, c.w, c.h, func(p *project.Project) { p.Units = c.unit })
		// The words of the checks are held where they are made.
		m.snap.Plan.Checks = slices.DeleteFunc(m.snap.Plan.Checks, func(c calc.Check) bool { return c.Name != "squeeze" })
		setFont(m, c.glyphs, canvas.DefaultAspect)
		m = press(m, c.keys)
		golden.Screen(t, fmt.Sprintf("%s-%dx%d-%s.golden", c.name, c.w, c.h, c.glyphs), plain(m))
	}
}
