package draw

import (
	"math"
	"strings"
	"testing"

	"chape/project"
	"chape/project/plantest"
	"chape/ui/canvas"
)

// The ends of a measure are as far apart as the figure on the form says.
func TestMeasuresAreAsLongAsTheirFigures(t *testing.T) {
	p := project.Defaults()
	p.Sheath.MouthRise, p.Sheath.Ease = 8, 2
	plan := planOf(t, p)
	for key, want := range map[string]float64{
		"knife.outline.blade": 110, "knife.outline.depth": 30, "knife.outline.spine": 4, "knife.outline.grind": 30,
		"knife.outline.front_length": 12, "knife.outline.front_depth": 31, "knife.outline.front_thick": 17,
		"knife.outline.handle": 110, "knife.outline.handle_depth": 27, "knife.outline.handle_thick": 17,
		"knife.outline.swell": 4, "knife.outline.butt": 27,
		"sheath.mouth": p.Sheath.Mouth.MM(), "sheath.leather": 3.2, "sheath.welt": 3.2, "sheath.clearance": 3,
		"sheath.handle_clearance": 1, "sheath.point_room": 3, "sheath.gap": 7.5, "sheath.margin": 5, "sheath.sanding": 1.5,
		"sheath.neutral": 1.6, "sheath.mouth_rise": 8, "sheath.ease": 2,
		"belt.tab": 30, "belt.row": 12, "belt.lap": 20, "belt.offset": plan.Loop.Offset,
		"stitch.pitch": plan.Stitch.Walk, "stitch.first": 4, "stitch.last": 4,
	} {
		m, ok := MeasureOf(plan, key, 0)
		got := math.Hypot(m.A.X-m.B.X, m.A.Y-m.B.Y)
		if !ok || math.Abs(got-want) > 0.06 { // marks are rounded to 0.05 mm
			t.Errorf("%s is drawn %.2f mm long, %v, want %.2f", key, got, ok, want)
		}
	}
	if m, ok := MeasureOf(plan, "sheath.blend", 0); !ok || math.Abs(2*m.Hollow-107) > 12 {
		t.Errorf("the hollow is drawn %.1f mm wide, %v: its drum is 107 mm", 2*m.Hollow, ok)
	}
	for _, key := range []string{"title", "belt.loop", "knife.outline.point", "sheath.drain", "fit.at", "strap.at", ""} {
		if m, ok := MeasureOf(plan, key, 0); ok {
			t.Errorf("%s is drawn: %+v", key, m)
		}
	}
}

// Each is drawn with its name at any size, and changes the picture.
func TestMeasuresAreDrawn(t *testing.T) {
	plan := planOf(t, project.Defaults())
	for _, key := range []string{"knife.outline.swell", "belt.lap", "sheath.blend", "sheath.neutral", "knife.station.top", "stitch.first"} {
		for _, size := range [][2]int{{76, 14}, {40, 8}, {12, 3}, {1, 1}} {
			m, ok := MeasureOf(plan, key, 1)
			if !ok {
				t.Fatalf("%s can't be drawn", key)
			}
			for _, g := range []canvas.Glyphs{canvas.Braille, canvas.Blocks, canvas.ASCII} {
				c := canvas.New(size[0], size[1], g)
				m.Draw(c, g, plan, true, "name")
				if text := strings.Join(c.Rows(), "\n"); size[0] >= 40 && !strings.Contains(text, "name") {
					t.Errorf("%s, %v: its name is not there:\n%s", key, size, text)
				}
			}
		}
	}
}

var planOf = plantest.Of
