package lookpage

import (
	"math"
	"strings"
	"testing"
	"time"

	"chape/project"
	"chape/ui/act"
	"chape/ui/canvas"
	"chape/ui/term/ink"
	"chape/ui/test/rig"
)

func page(t *testing.T, w, h int) *rig.Rig[*Model] {
	r := rig.New(t, project.Project{}, w, h, func(func() time.Time) *Model { return New(ink.New(ink.Middling, ink.None)) })
	r.Snap.Font = act.Font{Glyphs: canvas.Braille, Aspect: 2}
	return r.Show()
}

// press presses keys and does what the root does with a look.
func press(r *rig.Rig[*Model], keys ...string) {
	for _, k := range keys {
		r.Keys(k)
		if l, ok := r.Last().(act.Look); ok {
			r.Snap.Font = l.Font
			r.Show()
		}
	}
}

// Moving chooses, and stops at both ends.
func TestMovingChooses(t *testing.T) {
	r := page(t, 78, 20)
	r.Shows("[ dots ]", "blocks", "plain characters")
	for _, c := range []struct {
		keys []string
		want canvas.Glyphs
	}{
		{[]string{"right"}, canvas.Blocks}, {[]string{"right"}, canvas.ASCII}, {[]string{"right"}, canvas.ASCII},
		{[]string{"left"}, canvas.Blocks}, {[]string{"left", "left"}, canvas.Braille},
	} {
		press(r, c.keys...)
		if r.Snap.Font.Glyphs != c.want {
			t.Errorf("after %v: %v", c.keys, r.Snap.Font.Glyphs)
		}
	}
	r.Send(rig.Click(60, 6))
	if l, ok := r.Last().(act.Look); !ok || l.Font.Glyphs != canvas.ASCII {
		t.Errorf("a click on the third sample: %v", r.Last())
	}
	r.Keys("esc")
	if _, ok := r.Last().(act.Leave); !ok {
		t.Error("Esc does not lead back")
	}
}

// The ring follows the cell's proportion: flatter by a twentieth a key, within what a font
// can be.
func TestProportion(t *testing.T) {
	r := page(t, 78, 20)
	press(r, "down")
	if got := r.Snap.Font.Aspect; math.Abs(got-2.1) > 1e-9 {
		t.Errorf("%v", got)
	}
	press(r, "up", "up")
	if got := r.Snap.Font.Aspect; math.Abs(got-2/1.05) > 1e-9 {
		t.Errorf("%v", got)
	}
	rows := func() (n int) {
		r.Show()
		for _, l := range strings.Split(r.Screen(), "\n") {
			if strings.ContainsFunc(firstRunes(l, 10), func(c rune) bool { return c > 0x2800 && c < 0x2900 }) {
				n++
			}
		}
		return n
	}
	r.Snap.Font.Aspect = 1.2
	tall := rows()
	r.Snap.Font.Aspect = 4
	if flat := rows(); flat >= tall {
		t.Errorf("a ring of %d rows in flat cells, %d in tall ones", tall, flat)
	}
	for range 60 {
		press(r, "down")
	}
	if got := r.Snap.Font.Aspect; got != 4 {
		t.Errorf("the tallest cell is %v", got)
	}
}

// firstRunes is the beginning of a line.
func firstRunes(s string, n int) string {
	r := []rune(s)
	return string(r[:min(n, len(r))])
}

func TestSizesAndKeys(t *testing.T) {
	r := page(t, 78, 20)
	r.Golden(t, "look_78x20")
	r = page(t, 158, 41)
	r.Golden(t, "look_158x41")
	rig.CheckKeys(t, r.Pane)
	rig.CheckSizes(t, r.Pane, 170, 50)
	r.Pane.SetSize(40, 16)
	press(r, "right")
	r.Shows("[ blocks ]", "2 of 3")
	r.Lacks("dots ]")
	before := len(r.Sent)
	r.Tool("12.34", 5*time.Millisecond, "enter")
	if len(r.Sent) != before {
		t.Errorf("a reading does something: %v", r.Last())
	}
}
