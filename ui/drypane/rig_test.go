package drypane

import (
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"

	"chape/project"
	"chape/project/weigh"
	"chape/ui/act"
	"chape/ui/canvas"
	"chape/ui/term/ink"
	"chape/ui/test/rig"
)

var noon = rig.Noon

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

func newRig(t *testing.T, p project.Project, w, h int) *rig.Rig[*Model] {
	r := rig.New(t, p, w, h, func(now func() time.Time) *Model { return New(now, ink.New(ink.Dark, ink.None)) })
	return setFont(r, canvas.Braille)
}

func setFont(r *rig.Rig[*Model], g canvas.Glyphs) *rig.Rig[*Model] {
	r.Snap.Font = act.Font{Glyphs: g, Aspect: 2}
	return r.Show()
}

func weighs(r *rig.Rig[*Model], want ...weigh.Weighing) {
	r.T.Helper()
	if !slices.EqualFunc(r.Project.Weigh, want, equal) {
		r.T.Errorf("weighings %v, want %v", r.Project.Weigh, want)
	}
}

// exact checks that a view has exactly its size.
func exact(t *testing.T, m *Model) {
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
