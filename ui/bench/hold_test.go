package bench

import (
	"fmt"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"chape/project/steps"
)

// gum is another project's hold.
func gum(due time.Duration) steps.Hold {
	return steps.Hold{Project: "Gum", Short: "CURE", Started: noon.Add(-24 * time.Hour), Due: noon.Add(due)}
}

// text is what the view says, its lines joined.
func (r *desk) text() string { return strings.Join(strings.Fields(ansi.Strip(r.Pane.View())), " ") }

// A hold of another step or project beside that of the step in hand, at each stand of
// that one.
func TestHoldsBeside(t *testing.T) {
	const min = time.Minute
	for _, c := range []struct {
		name   string
		do     func(*desk)
		digits string // large
		says   []string
		not    string
	}{
		{"waiting", func(r *desk) {}, "GUM 25:00 M",
			[]string{"Gum CURE: 25 min to go, 12:25", "space starts its hold: 12 h - 24 h"}, "hold started"},
		{"started", func(r *desk) { r.keys(" ") }, "12:00 H",
			[]string{"not before Fri 00:00, look by Fri 12:00", "Gum CURE: 25 min to go, 12:25", "* hold started: not before Fri 00:00"}, "space starts"},
		{"pressed again", func(r *desk) { r.keys(" ").wait(2 * second).keys(" ").wait(quietTime) }, "12:00 H",
			[]string{"* not before Fri 00:00", "Gum CURE: 25 min to go"}, "hold started"},
		{"a while later", func(r *desk) { r.keys(" ").wait(min) }, "11:59 H",
			[]string{"not before Fri 00:00, look by Fri 12:00", "Space or Enter go on"}, "hold started"},
		{"ended early", func(r *desk) { r.keys(" ").wait(min).keys("h").wait(second).keys("\r") }, "GUM 23:59 M",
			[]string{"hold ended early, 12:01", "* hold ended early, kept on record"}, "space starts"},
		{"due", func(r *desk) { r.holds([]steps.Hold{gum(13 * time.Hour)}); r.keys(" ").wait(12*time.Hour + min) }, "DUE",
			[]string{"due since 00:00, look by 12:00", "Gum CURE: 59 min to go, 01:00"}, "space starts"},
		{"both due", func(r *desk) { r.keys(" ").wait(12*time.Hour + min) }, "DUE",
			[]string{"due since 00:00", "Gum CURE: due since Thu 12:25"}, "space starts"},
		{"the other due", func(r *desk) { r.wait(time.Hour) }, "GUM DUE",
			[]string{"Gum CURE: due since 12:25", "space starts its hold: 12 h - 24 h"}, ""},
		{"alone", func(r *desk) { r.holds(nil) }, "", []string{"space starts its hold: 12 h - 24 h"}, "Gum"},
	} {
		for _, size := range [][2]int{{60, 20}, {80, 24}, {160, 45}} {
			r := newDesk(t, sheath("CURE"), size[0], size[1])
			r.holds([]steps.Hold{gum(25 * min)})
			c.do(r)
			if got := r.Pane.largeWord(); got != c.digits {
				t.Errorf("%s at %v: large is %q, want %q", c.name, size, got, c.digits)
			}
			text := r.text()
			for _, say := range c.says {
				if !strings.Contains(text, say) {
					t.Errorf("%s at %v: no %q in\n%s", c.name, size, say, text)
				}
			}
			if c.not != "" && strings.Contains(text, c.not) {
				t.Errorf("%s at %v: %q in\n%s", c.name, size, c.not, text)
			}
			if size[0] == 80 || c.name == "waiting" {
				check(t, fmt.Sprintf("beside_%s_%d", strings.ReplaceAll(c.name, " ", "_"), size[0]), r.Pane.View())
			}
		}
	}
}

// Digits of another hold never stand below the step's name without a word of whose
// they are, whatever the names.
func TestWhoseDigits(t *testing.T) {
	for name, want := range map[string]string{
		"Hunter": "HUNTER 50:20 H", "A rather long name of a knife": "A RATH 50:20 H", "刀の鞘": "50:20 H",
	} {
		r := newDesk(t, sheath("DRILL"), 80, 24)
		r.holds([]steps.Hold{{Project: name, Short: "CURE", Due: noon.Add(50*time.Hour + 20*time.Minute)}})
		if got := r.Pane.largeWord(); got != want {
			t.Errorf("%q: large is %q, want %q", name, got, want)
		}
		if text := r.text(); !strings.Contains(text, name+" CURE: 2 d 3 h to go, Sat 14:20") {
			t.Errorf("%q is not named in %s", name, text)
		}
	}
	r := newDesk(t, sheath("DRYFIT"), 80, 24)
	r.Project.Steps[steps.Current(r.Project.Steps)-1].Done = time.Time{} // DRY, moved to after DRYFIT
	r.Project.Steps[steps.Current(r.Project.Steps)].Started = noon
	dry, fit := steps.Current(r.Project.Steps), steps.Current(r.Project.Steps)+1
	r.Project.Steps[dry], r.Project.Steps[fit] = r.Project.Steps[fit], r.Project.Steps[dry]
	r.Show()
	if text := r.text(); r.Pane.largeWord() != "DRY 24:00 H" || !strings.Contains(text, "DRY: 24 h to go, Fri 12:00 (another step)") {
		t.Errorf("large is %q in %s", r.Pane.largeWord(), text)
	}
}

// The clock set, the file taken elsewhere, holds of half a kind: said whole in the
// smallest window.
func TestOddHolds(t *testing.T) {
	for _, c := range []struct {
		name         string
		hold, latest time.Duration
		started      time.Duration // from noon; 0: not
		keys         string
		says         []string
	}{
		{"look by only", 0, 24 * time.Hour, 0, "", []string{"space starts its hold: look at it within 24 h"}},
		{"look by only, started", 0, 24 * time.Hour, 0, " ", []string{"hold started: look by Fri 12:00", "next"}},
		{"look by only, later", 0, 24 * time.Hour, -time.Hour, "", []string{"look by Fri 11:00"}},
		{"begun tomorrow", 366 * 24 * time.Hour, 0, 30 * time.Hour, "",
			[]string{"not before 28 Nov 2027 18:00", "begun Fri 18:00, after now: is the clock right?"}},
		{"begun next year", 24 * time.Hour, 48 * time.Hour, 40 * 24 * time.Hour, "",
			[]string{"not before 6 Jan 2027 12:00, look by 7 Jan 2027 12:00", "begun 5 Jan 2027 12:00, after now: is the clock right?"}},
		{"forgotten", 24 * time.Hour, 366 * 24 * time.Hour, -360 * 24 * time.Hour, "", []string{"due since 2 Dec 2025 12:00, look by Wed 12:00"}},
		{"none", 0, 0, 0, "", nil},
	} {
		p := held(c.hold, c.latest)
		if c.started != 0 {
			p.Steps[0].Started = noon.Add(c.started)
		}
		r := newDesk(t, p, 60, 20)
		r.keys(c.keys)
		text := r.text()
		for _, say := range c.says {
			if !strings.Contains(text, say) {
				t.Errorf("%s: no %q in\n%s", c.name, say, text)
			}
		}
		if strings.Contains(text, "…") || c.says == nil && (strings.Contains(text, "hold:") || r.Pane.largeWord() != "") {
			t.Errorf("%s:\n%s", c.name, text)
		}
	}
}

// What is answered is what has happened: a change that was refused is not said to have been made.
func TestRefusedHoldIsNotSaidToRun(t *testing.T) {
	r := newDesk(t, held(time.Hour, 0), 80, 24)
	r.Project = r.Project.Clone()
	r.Project.Steps[0].Title = "changed by someone else" // and not seen yet
	r.send(press(tea.KeyEnter))
	if text := r.text(); len(r.Said) != 1 || strings.Contains(text, "hold started") {
		t.Errorf("errors %q in %s", r.Said, text)
	}
}

func TestRemaining(t *testing.T) {
	for d, want := range map[time.Duration]string{
		1: "0:01 M", time.Minute: "1:00 M", 59*time.Minute + 59*time.Second: "59:59 M", time.Hour - 1: "1:00 H",
		time.Hour: "1:00 H", time.Hour + 1: "1:01 H", 366 * 24 * time.Hour: "8784:00 H",
	} {
		if got := remaining(d); got != want {
			t.Errorf("remaining(%v) = %q, want %q", d, got, want)
		}
	}
}
