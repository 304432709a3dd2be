package planpane

import (
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"

	"chape/calc/length"
	"chape/project"
	"chape/ui/act"
	"chape/ui/part"
	"chape/ui/test/rig"
)

// The dividers are set by the chord, not by the pitch along the line, as closely as they can
// be; ten steps of it check the setting.
func TestDividerSetting(t *testing.T) {
	for u, want := range map[length.Unit][]string{
		length.Millimetres: {"divider setting 3.87 mm", "ten steps of it 38.7 mm"},
		length.Inches:      {"divider setting 0.152 in 3.87 mm", "ten steps of it 1.52 in"},
	} {
		m := shown(t, 48, 50, func(p *project.Project) { p.Units = u })
		m.snap.Plan.Stitch.Walk, m.snap.Plan.Stitch.Pitch = 3.871, 4.623
		got := strings.Join(strings.Fields(ansi.Strip(m.View())), " ")
		for _, w := range want {
			if !strings.Contains(got, w) {
				t.Errorf("in %s the pane does not say %q:\n%s", u, w, got)
			}
		}
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
		next, out := tell(m, part.Press{KeyMsg: rig.Key(name)})
		if len(out) != 1 {
			t.Fatalf("%s says nothing", name)
		}
		if said, ok := out[0].(act.Say); !ok || !strings.Contains(said.Text, "for the drawing") || next.page != Section || next.zoom != 0 {
			t.Errorf("%s: %v", name, said)
		}
	}
}
