package planpane

import (
	"errors"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"chape/calc"
	"chape/calc/knife"
	"chape/calc/length"
	"chape/project"
	"chape/project/money"
	"chape/project/shop"
	"chape/project/steps"
	"chape/ui/act"
	"chape/ui/canvas"
	"chape/ui/part"
	"chape/ui/term/ink"
	"chape/ui/test/rig"
)

// orchard is a knife of our own invention: a drop point, a bolster with two
// faces and a swelling oval handle.
func orchard() project.Project {
	mark := func(at, top, bottom, thick float64, k knife.Kind) knife.Station {
		return knife.Station{At: length.Length(at), Top: length.Length(top), Bottom: length.Length(bottom),
			Thick: length.Length(thick), Kind: k, Bevel: 1}
	}
	return project.Project{
		Knife: knife.Knife{Stations: []knife.Station{
			mark(0, 7, 7, 0.8, knife.Blade), mark(10, 4.5, 14, 1.6, knife.Blade), mark(20, 2.8, 19.5, 2.2, knife.Blade),
			mark(45, 0.6, 26, 3, knife.Blade), mark(70, 0, 28, 3.4, knife.Blade), mark(105, 0, 28, 3.8, knife.Blade),
			mark(105, 0, 30, 14, knife.Slab), mark(117, 0, 30, 15, knife.Slab),
			mark(117, 0, 29, 16, knife.Oval), mark(150, 0.5, 33, 21, knife.Oval), mark(190, 1.5, 30, 18, knife.Oval),
			mark(225, 0, 34, 19, knife.Oval),
		}},
		Sheath: calc.Sheath{Mouth: 150, Leather: 3.2, Welt: 3.2, Plies: 1, Clearance: 3, HandleClearance: 1, PointRoom: 3, Gap: 7.5, Margin: 5,
			Sanding: 1.5, Blend: 60, Neutral: 0.5, MouthRise: 8, MouthRound: 6},
		Belt:   calc.Belt{Width: 38, Thickness: 4, Ease: 4, Tab: 30, Row: 12, Lap: 20, Offset: 8},
		Stitch: calc.Stitch{Pitch: 4, Thread: 0.8, First: 4, Last: 4, Back: 2, Tail: 150, Waste: 0.05},
		Fits:   []project.Fit{{Fit: calc.Fit{At: 108, By: 1.5, Reach: 20}}},
	}
}

func snapshot(t testing.TB, p project.Project) act.Snapshot {
	t.Helper()
	plan, err := calc.Compute(p.Input(calc.DefaultLimits()))
	if err != nil {
		t.Fatal(err)
	}
	return act.Snapshot{
		Project: p, Plan: plan, Unit: p.Units, Mark: 5, Now: time.Date(2024, 5, 6, 7, 8, 9, 0, time.UTC),
		Font: act.Font{Glyphs: canvas.Braille, Aspect: canvas.DefaultAspect}, Shop: shop.Shop{Offcut: calc.DefaultOffcut},
	}
}

// shown is the pane at a size, with the orchard knife after a change.
func shown(t testing.TB, w, h int, change func(*project.Project)) *Model {
	p := orchard()
	if change != nil {
		change(&p)
	}
	m := New(ink.New(ink.Dark, ink.TrueColour))
	m.SetSize(w, h)
	m.SetSnapshot(snapshot(t, p))
	return m
}

// press gives the pane as it is after keys, the one before untouched.
func press(m *Model, keys string) *Model {
	for _, k := range strings.Fields(keys) {
		m, _ = tell(m, part.Press{KeyMsg: rig.Key(k)})
	}
	return m
}

// tell gives a copy of the pane after a message, and what it answers.
func tell(m *Model, msg tea.Msg) (*Model, []act.Msg) {
	after := *m
	_, out := after.Update(msg)
	return &after, out
}

func setFont(m *Model, g canvas.Glyphs, aspect float64) {
	s := m.snap
	s.Font = act.Font{Glyphs: g, Aspect: aspect}
	m.SetSnapshot(s)
}

func plain(m *Model) string { return ansi.Strip(m.View()) }

func TestChoosesMarks(t *testing.T) {
	m := shown(t, 78, 24, nil)
	for keys, want := range map[string]int{"up": 4, "down": 6, "[": 4, "]": 6} {
		_, out := tell(m, part.Press{KeyMsg: rig.Key(keys)})
		if len(out) != 1 || out[0] != (act.Choose{Mark: want}) {
			t.Errorf("%s: %v, want mark %d", keys, out, want)
		}
	}
	m.snap.Mark = 11
	if _, out := tell(m, part.Press{KeyMsg: rig.Key("]")}); out != nil {
		t.Error("there is a mark behind the last")
	}
	table := press(m, "right")
	if _, out := tell(table, part.Press{KeyMsg: rig.Key("up")}); out != nil {
		t.Error("in a table the arrow chooses a mark")
	}
}

// A click at the pointer of a mark's line chooses that mark again.
func TestClickChooses(t *testing.T) {
	for _, keys := range []string{"f", "v", "v v", "z"} {
		m := press(shown(t, 78, 40, nil), keys)
		lay, sheet := m.arrange()
		found := map[int]bool{}
		for x := range lay.drawing.W {
			for y := range lay.drawing.H {
				next, out := tell(m, tea.MouseMsg{X: lay.drawing.X + x, Y: lay.drawing.Y + y, Button: tea.MouseButtonLeft, Action: tea.MouseActionPress})
				if next.page != Drawing || out == nil {
					continue
				}
				mark := out[0].(act.Choose).Mark
				found[mark] = true
				at, chosen := m.snap.Project.Knife.Stations[mark].At.MM(), sheet.At(x, y).X
				for i, s := range m.snap.Project.Knife.Stations {
					if d := s.At.MM() - chosen; d*d < (at-chosen)*(at-chosen)-1e-9 {
						t.Fatalf("%s: a click at %.1f mm chooses %.1f, mark %d is nearer", keys, chosen, at, i)
					}
				}
			}
		}
		if len(found) < 2 {
			t.Errorf("%s: clicks reach the marks %v only", keys, found)
		}
	}
}

func TestMouseScrollsAndTurns(t *testing.T) {
	m := shown(t, 78, 19, nil)
	m, _ = tell(m, tea.MouseMsg{X: 24, Y: 0, Button: tea.MouseButtonLeft, Action: tea.MouseActionPress})
	if m.page != Holes {
		t.Fatalf("a click on holes turns to %v", m.page)
	}
	before := plain(m)
	m, _ = tell(m, rig.Wheel(true))
	if m.scroll[Holes] != wheel || plain(m) == before {
		t.Error("the wheel does not scroll")
	}
	for range 99 {
		m, _ = tell(m, rig.Wheel(true))
	}
	end := m.scroll[Holes]
	if m = press(m, "up"); m.scroll[Holes] != end-1 {
		t.Error("scrolled past the end")
	}
}

func TestZoomFollowsTheMark(t *testing.T) {
	m := press(shown(t, 78, 24, nil), "z z z")
	for mark, s := range m.snap.Project.Knife.Stations {
		snap := m.snap
		snap.Mark = mark
		m.SetSnapshot(snap)
		lay, sheet := m.arrange()
		lo, hi := sheet.At(0, 0).X, sheet.At(lay.drawing.W-1, 0).X
		if at := s.At.MM(); at < lo || at > hi {
			t.Errorf("mark %d at %v lies outside %.1f to %.1f", mark, at, lo, hi)
		}
	}
	_, before := m.arrange()
	_, after := press(m, "H").arrange()
	if after.At(0, 0).X >= before.At(0, 0).X {
		t.Error("looking further left does not move the drawing")
	}
	if back := press(m, "f"); back.zoom != 0 {
		t.Error("f does not show all again")
	}
}

func TestStaleAndMissing(t *testing.T) {
	m := shown(t, 78, 24, nil)
	s := m.snap
	s.Stale, s.Err = true, errors.New("leather 0: at least 0.5 mm\x1b[2J")
	m.SetSnapshot(s)
	if got := plain(m); !strings.Contains(got, "not yet following: leather 0: at least 0.5 mm") || strings.Contains(got, "\x1b") {
		t.Errorf("a stale plan does not say why:\n%s", got)
	}
	p := project.Project{}
	p.Sheath.Mouth = 100
	m.SetSnapshot(act.Snapshot{Project: p})
	got := strings.Join(strings.Fields(plain(m)), " ")
	if !strings.Contains(got, "the knife's marks") || !strings.Contains(got, "the leather's thickness") || strings.Contains(got, "where the mouth is") {
		t.Errorf("what is missing: %q", got)
	}
	if m, out := tell(m, part.Press{KeyMsg: rig.Key("down")}); out != nil || m.page != Drawing {
		t.Error("without marks a mark is chosen")
	}
}

// Warnings stand before the figures and notes behind them, each whole; of the
// others there is only the number.
func TestWarningsFirst(t *testing.T) {
	m := shown(t, 78, 60, func(p *project.Project) { p.Knife.Back = knife.Sharp })
	got := strings.Join(strings.Fields(plain(m)), " ")
	figures, warned, fine := strings.Index(got, "divider setting"), 0, 0
	for _, c := range m.snap.Plan.Checks {
		at := strings.Index(got, c.Text(length.Millimetres))
		switch c.Level {
		case calc.Warn:
			warned++
			if at < 0 || at > figures || !strings.HasPrefix(got[at-2:], "! ") {
				t.Errorf("the warning on %s is at %d, the figures at %d", c.Name, at, figures)
			}
		case calc.Note:
			if at < figures || !strings.HasPrefix(got[at-2:], "* ") {
				t.Errorf("the note on %s is at %d, the figures at %d", c.Name, at, figures)
			}
		default:
			fine++
			if at >= 0 {
				t.Errorf("%s is well and said at length", c.Name)
			}
		}
	}
	if warned == 0 || !strings.Contains(got, number(fine)+" checks fine") {
		t.Errorf("%d warnings, %d fine:\n%s", warned, fine, plain(m))
	}
}

func TestCost(t *testing.T) {
	m := shown(t, 60, 70, func(p *project.Project) { p.Steps = []steps.Step{{Spent: 90 * time.Minute}} })
	if strings.Contains(plain(m), "cost") {
		t.Error("a cost without rates")
	}
	s := m.snap
	s.Shop.Prices = money.Prices{Currency: money.Currency{Sign: "EUR"}, Hour: money.FromNumber(40)}
	m.SetSnapshot(s)
	if got := strings.Join(strings.Fields(plain(m)), " "); !strings.Contains(got, "60.00 EUR") || !strings.Contains(got, "at least, work 60.00") {
		t.Errorf("1.5 h at 40 is not 60:\n%s", plain(m))
	}
}

// The leather to buy follows a placing, though the plan is the same.
func TestPlacedLeather(t *testing.T) {
	m := shown(t, 60, 70, nil)
	s := m.snap
	s.Project.Hide = project.Hide{Lost: 0.5, Placed: true}
	m.SetSnapshot(s)
	want := length.Area(1.5 * m.snap.Plan.Cost(calc.Rates{}).LeatherArea).Format(length.Millimetres)
	if got := strings.Join(strings.Fields(plain(m)), " "); !strings.Contains(got, "leather to buy "+want) {
		t.Errorf("not %q:\n%s", want, plain(m))
	}
}

// Which half is the back follows hand and edge, and the drawing with it.
func TestBackHalf(t *testing.T) {
	for _, c := range []struct {
		hand calc.Hand
		edge calc.Edge
		want string
	}{
		{calc.RightHand, calc.EdgeRear, "lies below the fold"},
		{calc.LeftHand, calc.EdgeRear, "lies above the fold"},
		{calc.RightHand, calc.EdgeFront, "lies above the fold"},
		{calc.LeftHand, calc.EdgeFront, "lies below the fold"},
	} {
		m := shown(t, 90, 56, func(p *project.Project) { p.Customer.Hand, p.Customer.Edge = c.hand, c.edge })
		got := plain(m)
		if !strings.Contains(strings.Join(strings.Fields(got), " "), c.want) {
			t.Errorf("%v %v: not %q", c.hand, c.edge, c.want)
		}
		back, front := strings.Index(got, "back "), strings.Index(got, "front")
		if (back > front) != strings.Contains(c.want, "below") {
			t.Errorf("%v %v: the drawing does not agree with %q", c.hand, c.edge, c.want)
		}
	}
}

// A tick that changes nothing draws nothing anew; what changes is drawn.
func TestDrawsOnlyChanges(t *testing.T) {
	m := shown(t, 78, 24, nil)
	before, made := m.View(), m.last.made
	s := m.snap
	s.Now = s.Now.Add(time.Second)
	m.SetSnapshot(s)
	m.SetSize(78, 24)
	if m.last.made != made {
		t.Error("a tick draws the pane anew")
	}
	s.Unit = length.Inches
	m.SetSnapshot(s)
	if m.View() == before {
		t.Error("another unit shows the same")
	}
	other := press(m, "right")
	if a, b := other.View(), m.View(); a == b {
		t.Error("two copies show the same frame")
	}
}

func BenchmarkPane(b *testing.B) {
	m := shown(b, 160, 45, nil)
	b.ReportAllocs()
	for b.Loop() {
		m.touch()
		m.View()
	}
}

func BenchmarkSmallPane(b *testing.B) {
	m := shown(b, 78, 19, nil)
	b.ReportAllocs()
	for b.Loop() {
		m.touch()
		m.View()
	}
}
