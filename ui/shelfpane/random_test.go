package shelfpane

import (
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"chape/project/shelf"
	"chape/project/store"
)

// A mashed keyboard and a wet touch screen: the view keeps its size, the choice stays
// within the list, and no project is lost or damaged.
func TestMashed(t *testing.T) {
	dir := full(t)
	random := rand.New(rand.NewPCG(7, 11))
	r := newRig(t, dir, 80, 24)
	kinds := []tea.KeyType{tea.KeyUp, tea.KeyDown, tea.KeyPgUp, tea.KeyPgDown, tea.KeyHome, tea.KeyEnd, tea.KeyEnter, tea.KeyCtrlJ,
		tea.KeyEsc, tea.KeyBackspace, tea.KeyTab, tea.KeyCtrlU, tea.KeyLeft, tea.KeyCtrlW}
	letters := []rune("/nfrpgabcé.:,12 \u202e漢")
	count := func() (whole, broken int) {
		look, err := shelf.Open(store.OSLockingIn(""), dir).Look()
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range look.Next(look.Left()) {
			if e.State == shelf.Broken {
				broken++
			} else {
				whole++
			}
		}
		return whole, broken
	}
	least, _ := count()
	for i := range 1000 {
		r.Now = r.Now.Add(time.Duration(random.IntN(400)) * time.Millisecond)
		switch n := random.IntN(10); {
		case n < 4:
			r.Send(tea.KeyMsg{Type: kinds[random.IntN(len(kinds))]})
		case n < 8:
			r.Send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{letters[random.IntN(len(letters))]}, Paste: n == 7})
		case n == 8:
			r.Send(tea.MouseMsg{Action: tea.MouseAction(random.IntN(3)), Button: tea.MouseButton(random.IntN(9)), X: random.IntN(300) - 20, Y: random.IntN(90) - 20})
		default:
			r.Pane.SetSize(random.IntN(170), random.IntN(50))
		}
		if len(r.Pane.shown) > 0 && (r.Pane.list.At < 0 || r.Pane.list.At >= len(r.Pane.shown)) {
			t.Fatalf("event %d: choice %d of %d", i, r.Pane.list.At, len(r.Pane.shown))
		}
		view := r.Pane.View()
		if r.Pane.w == 0 || r.Pane.h == 0 {
			continue
		}
		lines := strings.Split(view, "\n")
		if len(lines) != r.Pane.h {
			t.Fatalf("event %d: %d lines of %d", i, len(lines), r.Pane.h)
		}
		for _, l := range lines {
			if ansi.StringWidth(l) != r.Pane.w {
				t.Fatalf("event %d: %d wide, not %d: %q", i, ansi.StringWidth(l), r.Pane.w, l)
			}
		}
	}
	whole, broken := count()
	if whole <= least || broken != 1 {
		t.Errorf("%d projects and %d broken files, at first %d and 1", whole, broken, least)
	}
}
