package book

import (
	"slices"
	"strings"
	"testing"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
	"chape/ui/layout"
)

// sheet is a pane that counts what it is asked, and stays where it is told to.
type sheet struct {
	name         string
	shown, drawn int
	stays        bool
}

func (p *sheet) SetSize(int, int)         {}
func (p *sheet) SetSnapshot(act.Snapshot) { p.shown++ }
func (p *sheet) Keys() []act.Section      { return nil }
func (p *sheet) View() string             { p.drawn++; return p.name }
func (p *sheet) Update(tea.Msg) (act.Pane, []act.Msg) {
	if p.stays {
		return p, []act.Msg{act.Say{}, act.Stay{}}
	}
	return p, []act.Msg{act.Say{}}
}

// six is a book of a page for each pane, one in the frame of the first, one that fills
// the room and lasts, and one that is not there.
func six() *Book {
	page := func(name string, r act.Room, opens string) act.Page {
		return act.Page{Name: name, Room: r, Open: key.NewBinding(key.WithKeys(strings.Fields(opens)...)), New: func() act.Pane { return &sheet{name: name} }}
	}
	fit, shelf := page("Fit", act.InKnife, "f"), page("Shelf", act.Whole, "s")
	shelf.Lasts = true
	shelf.Takes = func(k tea.KeyMsg) bool { return k.Paste }
	back := page("Back", act.Whole, "b")
	back.Back = "Fit"
	b := New([]act.Page{page("Knife", act.InKnife, ""), page("Plan", act.InPlan, ""), page("Steps", act.InSteps, ""), fit, shelf, back, {Name: "Look"}})
	b.Begin(act.Snapshot{})
	return &b
}

func TestWhereLeavingLeads(t *testing.T) {
	b := six()
	for _, c := range []struct{ at, behind string }{
		{"Plan", "Plan"}, {"Shelf", "Plan"}, {"Back", "Fit"}, {"Fit", "Knife"}, {"Shelf", "Fit"}, {"Knife", "Knife"},
	} {
		b.Take(b.Named(c.at))
		if got := b.InHand().Name; got != c.at {
			t.Fatalf("%s was taken in hand, and %s is", c.at, got)
		}
		if got := b.Behind().Name; got != c.behind {
			t.Errorf("leaving %s leads to %s, want %s", c.at, got, c.behind)
		}
	}
	if b.Named("Look") != nil {
		t.Error("a page that is not there is in the book")
	}
}

func TestWhatIsSeenAndWhatOpensIt(t *testing.T) {
	b := six()
	lay := layout.Screen(200, 50, b.Focus, 0) // wide enough for all three
	names := func(is func(*Leaf) bool) string {
		var all []string
		for _, l := range b.Leaves {
			if is(l) {
				all = append(all, l.Name)
			}
		}
		return strings.Join(all, " ")
	}
	seen := func(l *Leaf) bool { return b.Seen(l, lay) }
	opens := func(l *Leaf) bool { return slices.Contains(b.Openers(), l) }
	for _, c := range []struct{ at, seen, opens string }{
		{"Plan", "Knife Plan Steps", "Fit Shelf Back"},
		{"Fit", "Plan Steps Fit", "Shelf Back"},
		{"Shelf", "Shelf", "Fit Back"},
	} {
		b.Take(b.Named(c.at))
		if got := names(seen); got != c.seen {
			t.Errorf("with %s in hand there are seen: %s; want %s", c.at, got, c.seen)
		}
		if got := names(opens); got != c.opens {
			t.Errorf("with %s in hand there can be opened: %s; want %s", c.at, got, c.opens)
		}
	}
	dropped := tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("a"), Paste: true}
	if b.Taker(dropped) != nil {
		t.Error("what is dropped on a page that fills the room goes elsewhere")
	}
	if b.Take(b.Named("Fit")); b.Taker(dropped) != b.Named("Shelf") {
		t.Error("what is dropped on a pane opens no page")
	}
}

func TestAnotherProject(t *testing.T) {
	b := six()
	knife, fit, shelf := b.Named("Knife").Pane, b.Named("Fit"), b.Named("Shelf").Pane
	b.Take(fit)
	b.Begin(act.Snapshot{})
	if b.Named("Knife").Pane == knife || b.Named("Shelf").Pane != shelf {
		t.Error("the panes are not made anew, or one that lasts is")
	}
	if b.Standing[0].Name != "Knife" {
		t.Errorf("%s stands in the room of the knife", b.Standing[0].Name)
	}
	if got := b.Standing[0].Pane.(*sheet).shown; got != 1 {
		t.Errorf("what stands there was shown the project %d times, want once", got)
	}
}

func TestDrawnOnceUntilToldSomething(t *testing.T) {
	l := six().Named("Plan")
	p := l.Pane.(*sheet)
	for i, told := range []func(){func() {}, func() { l.Tell(nil) }, func() { l.Show(act.Snapshot{}) }, func() { l.SetSize(9, 2) }} {
		told()
		for range 2 {
			if got := strings.Join(l.Framed(11, 3, true, layout.Edges{}), "\n"); !strings.Contains(got, "Plan") {
				t.Fatalf("framed: %q", got)
			}
		}
		if p.drawn != i+1 {
			t.Fatalf("after change %d it was drawn %d times", i, p.drawn)
		}
	}
	if _, stays := l.Tell(nil); stays {
		t.Error("it stays unasked")
	}
	p.stays = true
	if out, stays := l.Tell(nil); !stays || len(out) != 2 {
		t.Error("it has to be answered first, and that is not told")
	}
}
