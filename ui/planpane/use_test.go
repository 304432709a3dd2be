package planpane

import (
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"

	"chape/calc/length"
	"chape/project"
	"chape/ui/act"
)

// Inch makers get the divider setting exactly too: 5/32 in is 3.97 mm, 2 % short.
func TestDividerSettingInInches(t *testing.T) {
	for _, size := range [][2]int{{78, 40}, {130, 50}} {
		m := shown(t, size[0], size[1], func(p *project.Project) { p.Units = length.Inches })
		if view := ansi.Strip(m.View()); !strings.Contains(view, "exactly 0.159 in, 4.04 mm") {
			t.Errorf("%d columns:\n%s", size[0], view)
		}
	}
	if view := ansi.Strip(shown(t, 130, 50, nil).View()); strings.Contains(view, "exactly") {
		t.Errorf("in millimetres:\n%s", view)
	}
}

// A mark past the mouth leads to the tab, the handle or the mouth, not to bare paper.
func TestZoomPastTheMouth(t *testing.T) {
	for _, belt := range []length.Length{0, 38} {
		for shape := range shapes {
			for _, zoom := range []string{"z", "z z z", "z z z z z z"} {
				m := shown(t, 78, 22, func(p *project.Project) { p.Belt.Width = belt })
				s := m.snap
				s.Mark = len(s.Project.Knife.Stations) - 1
				m.SetSnapshot(s)
				m.shape = shape
				m = press(m, zoom)
				rows := strings.Split(plain(m), "\n")
				lay, _ := m.arrange()
				dots := 0
				for _, r := range strings.Join(rows[lay.drawing.Y:lay.drawing.Y+lay.drawing.H], "") {
					if r > 0x2800 && r <= 0x28ff {
						dots++
					}
				}
				if dots < 20 {
					t.Errorf("belt %v, shape %d, %s: the picture is empty:\n%s", belt, shape, zoom, strings.Join(rows, "\n"))
				}
			}
		}
	}
}

// The keys of the drawing say so on the other pages.
func TestDrawingKeysElsewhere(t *testing.T) {
	m := shown(t, 78, 22, nil)
	m.page = Section
	for _, name := range []string{"v", "z", "Z", "f", "H"} {
		next, cmd := m.Update(keyOf(name))
		if cmd == nil {
			t.Fatalf("%s says nothing", name)
		}
		if said, ok := cmd().(act.Say); !ok || !strings.Contains(said.Text, "for the drawing") || next.page != Section || next.zoom != 0 {
			t.Errorf("%s: %v", name, said)
		}
	}
}
