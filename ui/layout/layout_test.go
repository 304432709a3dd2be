package layout

import (
	"fmt"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"

	"chape/ui/test/golden"
)

// TestEverySizeIsDividedUp: head, holds, panes and foot cover the screen
// exactly once.
func TestEverySizeIsDividedUp(t *testing.T) {
	for w := 1; w <= 250; w++ {
		for h := 1; h <= 80; h++ {
			focus, holds := Pane((w+h)%Panes), (w+2*h)%4
			l := Screen(w, h, focus, holds)
			if small := w < LeastW || h < LeastH; small != (l.TooSmall != "") {
				t.Fatalf("%d×%d: too small is %q", w, h, l.TooSmall)
			}
			if l.TooSmall != "" {
				continue
			}
			cells, shown := 0, 0
			all := append([]Rect{l.Head, l.Holds, l.Foot}, l.Panes[:]...)
			for i, r := range all {
				if r.Empty() {
					continue
				}
				if i > 2 {
					shown++
				}
				cells += r.W * r.H
				if r.X < 0 || r.Y < 0 || r.X+r.W > w || r.Y+r.H > h {
					t.Fatalf("%d×%d: %+v is outside", w, h, r)
				}
				for _, o := range all[:i] {
					if r.X < o.X+o.W && o.X < r.X+r.W && r.Y < o.Y+o.H && o.Y < r.Y+r.H {
						t.Fatalf("%d×%d: %+v and %+v overlap", w, h, r, o)
					}
				}
			}
			if cells != w*h {
				t.Fatalf("%d×%d: %d cells are covered", w, h, cells)
			}
			if l.Holds.H != min(holds, MostHolds) {
				t.Fatalf("%d×%d: %d lines for %d holds", w, h, l.Holds.H, holds)
			}
			if want := map[bool]int{true: Panes, false: 1}[l.Abreast]; shown != want || l.Panes[focus].Empty() {
				t.Fatalf("%d×%d: %d panes shown, in hand %+v", w, h, shown, l.Panes[focus])
			}
			if l.Abreast && (l.Panes[Plan].W < 45 || l.Panes[Knife].W < 42 || l.Panes[Steps].W < 28) {
				t.Fatalf("%d×%d: narrow panes %+v", w, h, l.Panes)
			}
		}
	}
}

func TestTooSmallSaysWhatItNeeds(t *testing.T) {
	for _, c := range []struct {
		got, want string
	}{
		{Screen(39, 30, Plan, 0).TooSmall, "needs 40×12, has 39×30"},
		{Screen(100, 11, Plan, 0).TooSmall, "needs 40×12, has 100×11"},
		{Screen(-1, 0, Plan, 0).TooSmall, "needs 40×12, has 0×0"},
		{Bench(59, 20), "needs 60×20, has 59×20"},
		{Bench(60, 20), ""},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}

func TestPanesGoRound(t *testing.T) {
	for p := range Pane(Panes) {
		if p.Next().Back() != p || p.Next() == p {
			t.Errorf("%v, next %v, back %v", p, p.Next(), p.Next().Back())
		}
	}
}

// screen draws the boxes of a layout.
func screen(w, h int, focus Pane, holds int, ascii bool) []string {
	l := Screen(w, h, focus, holds)
	if l.TooSmall != "" {
		return Message(l.TooSmall, w, h)
	}
	var panes [][]string
	for p, r := range l.Panes {
		if !r.Empty() {
			content := []string{fmt.Sprintf("%d×%d at %d,%d", r.W, r.H, r.X, r.Y)}
			panes = append(panes, Frame(r.W, r.H, Pane(p).String(), Pane(p) == focus, content, Edges{ASCII: ascii}))
		}
	}
	rows := []string{Ends("a drop point of our own", "saved", w)}
	for i := range l.Holds.H {
		rows = append(rows, Line(fmt.Sprintf("hold %d", i+1), w))
	}
	rows = append(rows, Beside(panes...)...)
	return append(rows, Line("help", w))
}

func TestScreenGolden(t *testing.T) {
	for _, c := range []struct {
		name  string
		w, h  int
		focus Pane
		holds int
		ascii bool
	}{
		{"80x24", 80, 24, Knife, 2, false},
		{"120x40", 120, 40, Plan, 1, false},
		{"120x24-ascii", 120, 24, Steps, 0, true},
		{"20x3", 20, 3, Plan, 2, false},
	} {
		rows := screen(c.w, c.h, c.focus, c.holds, c.ascii)
		checkSize(t, rows, c.w, c.h)
		golden.Exact(t, c.name+".golden", strings.Join(rows, "\n")+"\n")
	}
}

// checkSize fails when the lines are not exactly w×h cells.
func checkSize(t *testing.T, rows []string, w, h int) {
	t.Helper()
	if len(rows) != h {
		t.Fatalf("%d lines, want %d", len(rows), h)
	}
	for i, r := range rows {
		if got := ansi.StringWidth(r); got != w || strings.ContainsAny(r, "\n\r\t") {
			t.Fatalf("line %d is %d wide, want %d: %q", i, got, w, r)
		}
	}
}
