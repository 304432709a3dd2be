package drypane

import (
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"chape/project"
	"chape/project/weigh"
	"chape/ui/act"
	"chape/ui/term/ink"
)

var noon = time.Date(2026, 11, 26, 12, 0, 0, 0, time.UTC) // a Thursday

// zumdahl is a first-order decay, measured: Zumdahl, Chemistry, chapter 11,
// exercise 37, with an hour for each 120 s, the last of n at noon; it stands for
// the water in 100 g of leather.
func zumdahl(n int) []weigh.Weighing {
	hours := []float64{0, 1, 2.5, 5, 10, 15, 20, 25, 30}
	left := []float64{1, .91, .78, .59, .37, .22, .13, .082, .050}
	var w []weigh.Weighing
	for i := range n {
		at := noon.Add(time.Duration((hours[i] - hours[n-1]) * float64(time.Hour)))
		w = append(w, weigh.Weighing{When: at, Grams: math.Round(1000+1000*left[i]) / 10, State: drying})
	}
	return w
}

// withBefore puts the weighing before wetting ahead.
func withBefore(w []weigh.Weighing) []weigh.Weighing {
	return append([]weigh.Weighing{{When: w[0].When.Add(-time.Hour), Grams: 100, State: weigh.Before}}, w...)
}

func sheath(w []weigh.Weighing) project.Project {
	p := project.Defaults()
	p.Weigh = w
	return p
}

// rig is the page with a root of the least kind and a clock of its own.
type rig struct {
	t       *testing.T
	m       Model
	p       project.Project
	now     *time.Time
	commits []string
	said    []string
}

func newRig(t *testing.T, p project.Project, w, h int) *rig {
	now := noon
	r := &rig{t: t, p: p, now: &now}
	r.m = New(func() time.Time { return *r.now }, ink.New(ink.Dark, ink.None))
	r.m.SetSize(w, h)
	r.show()
	return r
}

func (r *rig) show() { r.m.SetSnapshot(act.Snapshot{Project: r.p, Now: *r.now}) }

func (r *rig) wait(d time.Duration) *rig {
	*r.now = r.now.Add(d)
	r.show()
	return r
}

func (r *rig) send(msg tea.Msg) *rig {
	m, cmd := r.m.Update(msg)
	r.m = m
	if cmd == nil {
		return r
	}
	c, ok := cmd().(act.Commit)
	if !ok {
		r.t.Fatalf("%v gives no commit", msg)
	}
	q := r.p.Clone()
	if err := c.Do(&q); err != nil {
		r.said = append(r.said, err.Error())
		return r
	}
	if err := q.Validate(); err != nil {
		r.t.Fatalf("%q makes what can't be saved: %v", c.Label, err)
	}
	r.p = q
	r.commits = append(r.commits, c.Label)
	r.show()
	return r
}

var named = map[string]tea.KeyType{
	"enter": tea.KeyEnter, "ctrl+j": tea.KeyCtrlJ, "esc": tea.KeyEsc, "up": tea.KeyUp, "down": tea.KeyDown, "home": tea.KeyHome,
	"end": tea.KeyEnd, "pgup": tea.KeyPgUp, "pgdown": tea.KeyPgDown, "backspace": tea.KeyBackspace, "left": tea.KeyLeft, "tab": tea.KeyTab,
}

func keyMsg(name string) tea.KeyMsg {
	if t, ok := named[name]; ok {
		return tea.KeyMsg{Type: t}
	}
	if name == " " {
		return tea.KeyMsg{Type: tea.KeySpace, Runes: []rune(" ")}
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(name)}
}

// keys presses keys by hand, with time between them.
func (r *rig) keys(names ...string) *rig {
	for _, n := range names {
		r.wait(300 * time.Millisecond).send(keyMsg(n))
	}
	return r
}

// typed types a text by hand.
func (r *rig) typed(text string) *rig {
	for _, c := range text {
		r.keys(string(c))
	}
	return r
}

// scale sends a reading as a tool types it, with CR and LF.
func (r *rig) scale(reading string) *rig {
	r.wait(5 * time.Second)
	for _, c := range reading {
		r.wait(2 * time.Millisecond).send(keyMsg(string(c)))
	}
	return r.wait(2 * time.Millisecond).send(keyMsg("enter")).wait(2 * time.Millisecond).send(keyMsg("ctrl+j"))
}

func (r *rig) screen() string { return ansi.Strip(r.m.View()) }

func (r *rig) shows(texts ...string) *rig {
	r.t.Helper()
	flat := strings.Join(strings.Fields(r.screen()), " ")
	for _, text := range texts {
		if !strings.Contains(flat, text) {
			r.t.Errorf("no %q in\n%s", text, r.screen())
		}
	}
	return r
}

func (r *rig) weighs(want ...weigh.Weighing) {
	r.t.Helper()
	if !slices.EqualFunc(r.p.Weigh, want, equal) {
		r.t.Errorf("weighings %v, want %v", r.p.Weigh, want)
	}
}

// exact checks that a view has exactly its size.
func exact(t *testing.T, m Model) {
	t.Helper()
	view := m.View()
	if m.w == 0 || m.h == 0 {
		if view != "" {
			t.Fatalf("%q in no room", view)
		}
		return
	}
	lines := strings.Split(view, "\n")
	if len(lines) != m.h {
		t.Fatalf("%d lines in %d×%d", len(lines), m.w, m.h)
	}
	for _, l := range lines {
		if ansi.StringWidth(l) != m.w {
			t.Fatalf("%d wide in %d×%d: %q", ansi.StringWidth(l), m.w, m.h, l)
		}
	}
}
