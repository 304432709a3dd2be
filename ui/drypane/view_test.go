package drypane

import (
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"

	"chape/project/weigh"
	"chape/ui/act"
	"chape/ui/canvas"
	"chape/ui/test/golden"
)

func check(t *testing.T, name, view string) {
	t.Helper()
	golden.Screen(t, name+".txt", ansi.Strip(view))
}

func TestGolden(t *testing.T) {
	for _, c := range []struct {
		name   string
		w, h   int
		weigh  []weigh.Weighing
		glyphs canvas.Glyphs
		keys   []string
	}{
		{"estimate_78x19", 78, 19, withBefore(zumdahl(6)), canvas.Braille, nil},
		{"estimate_150x40", 150, 40, withBefore(zumdahl(6)), canvas.Braille, nil},
		{"blocks", 78, 19, withBefore(zumdahl(6)), canvas.Blocks, nil},
		{"ascii", 78, 19, zumdahl(8), canvas.ASCII, nil},
		{"few", 78, 19, withBefore(zumdahl(2)), canvas.Braille, nil},
		{"empty", 78, 19, nil, canvas.Braille, nil},
		{"typing", 78, 19, withBefore(zumdahl(6)), canvas.Braille, []string{"1", "2", "enter"}},
		{"narrow_table", 38, 18, withBefore(zumdahl(6)), canvas.Braille, nil},
		{"narrow_curve", 38, 18, withBefore(zumdahl(6)), canvas.Braille, []string{"v"}},
		{"tall", 44, 40, withBefore(zumdahl(9)), canvas.Braille, nil},
	} {
		r := newRig(t, sheath(c.weigh), c.w, c.h)
		setFont(r, c.glyphs)
		r.Keys(c.keys...)
		check(t, c.name, r.Pane.View())
	}
}

// No line is wider or narrower than the page, at any size, in any state.
func TestEverySize(t *testing.T) {
	for _, weighed := range [][]weigh.Weighing{nil, withBefore(zumdahl(1)), withBefore(zumdahl(7)), zumdahl(9)} {
		r := newRig(t, sheath(weighed), 0, 0)
		r.Project.Room = weigh.Room{Temperature: 44, HasTemperature: true}
		r.Show()
		asking := newRig(t, sheath(weighed), 0, 0)
		asking.Keys("w", "-", "1", "enter")
		for w := 0; w <= 150; w += 1 + w/40 {
			for _, h := range []int{1, 2, 5, 9, 12, 19, 40} {
				for _, m := range []*Model{r.Pane, asking.Pane} {
					m.SetSize(w, h)
					exact(t, m)
				}
			}
		}
	}
}

// From the smallest screen up the verdict, the caution and the chosen weighing
// can be seen.
func TestWhatMattersIsSeen(t *testing.T) {
	for _, size := range [][2]int{{38, 9}, {78, 19}, {150, 40}} {
		r := newRig(t, sheath(withBefore(zumdahl(6))), size[0], size[1])
		r.Shows("within 2 % of dry", "never above 40 °C", "> 6 12:00")
	}
}

// A time zone's change to or from summer time neither stretches nor breaks the
// curve: hours are hours.
func TestAcrossTheEndOfSummerTime(t *testing.T) {
	berlin, err := time.LoadLocation("Europe/Berlin")
	if err != nil {
		t.Fatal(err)
	}
	weighed := withBefore(zumdahl(6))
	by := time.Date(2026, 10, 25, 9, 0, 0, 0, berlin).Sub(noon)
	for i := range weighed {
		weighed[i].When = weighed[i].When.Add(by).In(berlin)
	}
	steady := slices.Clone(weighed) // by a clock that nobody puts back
	for i := range steady {
		steady[i].When = steady[i].When.In(time.FixedZone("", 2*60*60))
	}
	a, b := weigh.DryingOf(weighed, 0), weigh.DryingOf(steady, 0)
	if a.Estimate != b.Estimate {
		t.Errorf("estimate %+v, want %+v", a.Estimate, b.Estimate)
	}
}

// The footer's keys, the help's behind them, fit into the narrowest usual window.
func TestShortHelpFits(t *testing.T) {
	line := ""
	for _, k := range act.Alive(newRig(t, sheath(nil), 78, 19).Pane) {
		if k.Brief != "" {
			line += k.Help().Key + " " + k.Brief + "  "
		}
	}
	if line += "? the keys"; ansi.StringWidth(line) > 80 || !strings.Contains(line, "digits weigh it now") || !strings.Contains(line, "Esc") {
		t.Errorf("%d columns: %s", ansi.StringWidth(line), line)
	}
}

// Where it was heaviest before wetting the dry weight's name keeps clear of the axis'.
func TestDryNameIsClearOfTheAxis(t *testing.T) {
	w := []weigh.Weighing{{When: noon.Add(-2 * time.Hour), Grams: 160, State: weigh.Before},
		{When: noon.Add(-time.Hour), Grams: 141, State: drying}, {When: noon, Grams: 140, State: drying}}
	for h := 12; h < 40; h++ {
		view := ansi.Strip(strings.Join(newRig(t, sheath(w), 90, h).Pane.drawing(60, h), "\n"))
		if !strings.Contains(view, "grams") || !strings.Contains(view, "dry 160 g") || strings.Contains(view, "gramdry") {
			t.Errorf("%d rows:\n%s", h, view)
		}
	}
}

func TestReachedSaysAt(t *testing.T) {
	w := append(withBefore(zumdahl(9)), weigh.Weighing{When: noon.Add(10 * time.Hour), Grams: 101.5, State: drying})
	r := newRig(t, sheath(w), 78, 19)
	r.Wait(11 * time.Hour)
	r.Shows("dry: 101.5 g at 22:00 is within")
}

// What is still to come is refused when typed, and said where a file has it.
func TestWeighingsToCome(t *testing.T) {
	r := newRig(t, sheath(withBefore(zumdahl(6))), 78, 19)
	r.Keys("t")
	r.Pane.entry.SetText("2026-11-27 09:00")
	r.Keys("enter")
	r.Shows("still to come: give a time that has been")
	if len(r.Commits) != 0 {
		t.Errorf("kept: %q", r.Commits)
	}
	w := withBefore(zumdahl(6))
	w[len(w)-1].When = noon.Add(26 * time.Hour)
	r = newRig(t, sheath(w), 78, 19)
	r.Shows("the weighing of 122 g is dated Fri 14:00, which is still to come: t corrects its time, x takes it out")
	if strings.Contains(ansi.Strip(r.Pane.View()), "within 2 %") {
		t.Error("an estimate stands on it all the same")
	}
}

func BenchmarkView(b *testing.B) {
	r := newRig(&testing.T{}, sheath(withBefore(zumdahl(6))), 150, 40)
	for b.Loop() {
		r.Pane.View()
	}
}
