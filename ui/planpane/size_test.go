package planpane

import (
	"errors"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/ui/act"
	"chape/ui/canvas"
)

func checkSize(t *testing.T, m *Model, w, h int, what string) {
	t.Helper()
	lines := strings.Split(m.View(), "\n")
	if len(lines) != h {
		t.Fatalf("%s at %d×%d: %d lines", what, w, h, len(lines))
	}
	for i, l := range lines {
		if got := ansi.StringWidth(l); got != w {
			t.Fatalf("%s at %d×%d: line %d is %d wide: %q", what, w, h, i, got, ansi.Strip(l))
		}
	}
}

// Every page keeps to the pane at every size, in every glyph set.
func TestKeepsToThePane(t *testing.T) {
	m := shown(t, 1, 1, nil)
	stale := m.snap
	stale.Stale, stale.Err = true, errors.New(strings.Repeat("mouth 5: too near the point, move it out; ", 4))
	empty := act.Snapshot{Err: errors.New("no marks")}
	sizes := [][2]int{{20, 5}, {21, 9}, {38, 10}, {46, 34}, {60, 28}, {78, 19}, {100, 28}, {119, 80}, {160, 45}, {250, 60}, {250, 5}, {20, 80}, {3, 2}, {1, 1}}
	for w := 20; w <= 250; w += 23 {
		for h := 5; h <= 80; h += 19 {
			sizes = append(sizes, [2]int{w, h})
		}
	}
	for i, size := range sizes {
		font := act.Font{Glyphs: []canvas.Glyphs{canvas.Braille, canvas.Blocks, canvas.ASCII}[i%3], Aspect: 2}
		for _, s := range []act.Snapshot{shown(t, 1, 1, nil).snap, stale, empty} {
			s.Font = font
			m.SetSnapshot(s)
			m.SetSize(size[0], size[1])
			for _, keys := range []string{"right", "end", "right", "pgdown pgdown up", "right", "right", "v", "z z z", "v J J H", "v end", "f home"} {
				m = press(m, keys)
				checkSize(t, m, size[0], size[1], m.page.String()+" after "+keys)
			}
		}
	}
}

// Sheaths at the edge of what can be planned keep to the pane as well.
func TestOddSheaths(t *testing.T) {
	for name, change := range map[string]func(*project.Project){
		"tiny": func(p *project.Project) {
			for i := range p.Knife.Stations {
				s := &p.Knife.Stations[i]
				s.At, s.Top, s.Bottom, s.Thick = s.At/20, s.Top/20, s.Bottom/20, s.Thick/20
			}
			p.Sheath.Mouth, p.Belt.Loop = 7.5, calc.NoLoop // no tab fits
		},
		"huge": func(p *project.Project) {
			for i := range p.Knife.Stations {
				p.Knife.Stations[i].At *= 9
			}
			p.Sheath.Mouth = 1350
		},
		"no loop":     func(p *project.Project) { p.Belt = calc.Belt{Loop: calc.NoLoop} },
		"wide tab":    func(p *project.Project) { p.Belt.Tab, p.Belt.Centred = 44, true },
		"narrow tab":  func(p *project.Project) { p.Belt.Tab = 3 },
		"two holes":   func(p *project.Project) { p.Stitch.Pitch = 400 },
		"many holes":  func(p *project.Project) { p.Stitch.Pitch = 0.2 },
		"thick":       func(p *project.Project) { p.Sheath.Leather, p.Sheath.Welt = 12, 25 },
		"in inches":   func(p *project.Project) { p.Units = length.Inches },
		"other hand":  func(p *project.Project) { p.Customer.Hand = calc.LeftHand },
		"near point":  func(p *project.Project) { p.Sheath.Mouth, p.Belt.Tab = 20, 20 },
		"round mouth": func(p *project.Project) { p.Sheath.MouthRound, p.Sheath.MouthRise = 60, 60 },
	} {
		m := shown(t, 78, 19, change)
		for _, size := range [][2]int{{78, 19}, {48, 35}, {130, 50}, {25, 9}} {
			m.SetSize(size[0], size[1])
			for _, keys := range []string{"f", "v", "v", "v z z", "right", "right end", "right", "right"} {
				m = press(m, keys)
				checkSize(t, m, size[0], size[1], name+", "+keys)
			}
			if got := plain(m); strings.Contains(got, "NaN") || strings.Contains(got, "Inf") {
				t.Errorf("%s: a figure is none:\n%s", name, got)
			}
		}
	}
}
