package workbench

import (
	"strings"
	"testing"
	"time"

	"chape/ui/act"
	"chape/ui/layout"
)

// What warns is counted in the top line of every pane and at every size, with the words of
// the first in the pane in hand.
func TestWarningsAreSeenWhereOneTypes(t *testing.T) {
	p := fresh()
	p.Sheath.Mouth, p.Untouched = 215, ""
	for _, size := range [][2]int{{80, 24}, {100, 30}, {160, 45}} {
		s := filed(t, size[0], size[1], p)
		for pane := range layout.Pane(layout.Panes) {
			top := strings.Split(s.text(), "\n")[s.m.lay.Panes[pane].Y]
			if !strings.Contains(top, pane.String()+" ! 1") {
				t.Errorf("%v, %v: %q", size, pane, top)
			}
			s.keys("tab")
		}
	}
	s := filed(t, 100, 30, p)
	s.keys("tab")
	s.shows("! 1: mouth, 215 mm")
}

// A warning that a change brings is said at once, with what was done; ! leads to where it
// is mended, again to the next.
func TestANewWarningIsSaid(t *testing.T) {
	p := fresh()
	p.Untouched = ""
	s := filed(t, 160, 45, p)
	s.lacks("less than 50 mm")
	s.m.seek(seekTo("sheath.mouth"))
	s.keys("2", "1", "5")
	if strings.Contains(s.m.message.Text, "less than 50 mm") {
		t.Error("a message while it is typed")
	}
	s.keys("enter")
	if !s.m.message.Warn || !strings.Contains(s.m.message.Text, "less than 50 mm") {
		t.Errorf("said %q", s.m.message.Text)
	}
	s.now = s.now.Add(2 * time.Second) // a hand's time: no figure goes on
	s.keys("tab", "tab", "!")
	if s.m.book.Focus != layout.Knife || !strings.Contains(s.text(), "mouth: ") {
		t.Errorf("! leads to %v:\n%s", s.m.book.Focus, s.text())
	}
	s.keys("u")
	if !strings.HasPrefix(s.m.message.Text, "undone: mouth 215; it is 177 mm now") {
		t.Errorf("undo says %q", s.m.message.Text)
	}
}

// Undo goes to what it undid and says what stands.
func TestUndoGoesToWhatItUndid(t *testing.T) {
	s := filed(t, 160, 45, fresh())
	s.m.seek(seekTo("knife.outline.depth"))
	s.keys("3", "3", "enter")
	s.m.seek(seekTo("customer.hand"))
	s.keys("u")
	s.shows("undone: blade depth 33; it is 30 mm now")
	s.shows("blade depth: spine to edge")
}

// What the row in hand means stands over the panes; the key again lists the keys.
func TestExplainThenKeys(t *testing.T) {
	s := filed(t, 80, 24, fresh())
	s.m.seek(seekTo("sheath.blend"))
	s.keys("?")
	s.shows("The tightest hollow that the cut line may have")
	s.keys("?")
	s.shows("Keys: up and down for more")
	s.keys("esc")
	s.lacks("The tightest hollow")
}

func seekTo(key string) act.Seek { return act.Seek{Key: key, Index: -1} }
