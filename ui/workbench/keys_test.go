package workbench

import (
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chape/calc"
	"chape/project/file"
	"chape/ui/act"
	"chape/ui/book"
	"chape/ui/panel"
	"chape/ui/part"
	"chape/ui/test/rig"
)

func TestEveryKeyIsInTheHelp(t *testing.T) {
	m := loose(t, 80, 24).m
	listed := map[string]bool{}
	for _, sec := range m.sections() {
		for _, b := range sec.Keys {
			listed[strings.Join(b.Keys(), " ")] = true
		}
	}
	var all []key.Binding
	for _, r := range m.rootKeys() {
		all = append(all, r.Binding)
		if r.Do == nil {
			t.Errorf("the root's %s does nothing", r.Help().Key)
		}
	}
	for _, s := range m.printPanel().Keys() {
		for _, k := range s.Keys {
			all = append(all, k.Binding)
		}
	}
	for _, l := range m.book.Leaves {
		for _, s := range l.Pane.Keys() {
			for _, k := range s.Keys {
				all = append(all, k.Binding)
			}
		}
	}
	for _, b := range all {
		if keys := strings.Join(b.Keys(), " "); !listed[keys] || b.Help().Key == "" || b.Help().Desc == "" {
			t.Errorf("the key %q is not in the help, or without words", keys)
		}
	}
}

// doubles names keys that are in a set twice.
func doubles(t *testing.T, where string, set []key.Binding) {
	t.Helper()
	seen := map[string]string{}
	for _, b := range set {
		for _, k := range b.Keys() {
			if other, twice := seen[k]; twice {
				t.Errorf("%s: %q is %q and %q", where, k, other, b.Help().Desc)
			}
			seen[k] = b.Help().Desc
		}
	}
}

// TestNoKeyMeansTwoThings looks at each set of keys that are alive together: the root's
// own; those of a page and, where no text is typed, those that the root has alive on it;
// those of a text, of a panel, and what the root keeps for itself there.
func TestNoKeyMeansTwoThings(t *testing.T) {
	m := loose(t, 80, 24).m
	var all []key.Binding
	for _, r := range m.rootKeys() {
		all = append(all, r.Binding)
	}
	doubles(t, "the root", all)
	beside := func(is func(rootKey) bool, s act.Section) (set []key.Binding) {
		for _, r := range m.rootKeys() {
			if !r.yields && is(r) { // what yields is behind a page's own
				set = append(set, r.Binding)
			}
		}
		for _, k := range s.Keys {
			set = append(set, k.Binding)
		}
		return set
	}
	while := func(md mode) func(rootKey) bool {
		return func(r rootKey) bool { return slices.Contains(r.in, md) }
	}
	for _, l := range m.book.Leaves {
		m.book.Take(l)
		for _, s := range l.Pane.Keys() {
			is := m.alive
			switch {
			case l.Room == act.Screen:
				is = while(bench)
			case s.Text:
				is = while(editing)
			}
			doubles(t, l.Name+", "+s.Title, beside(is, s))
		}
	}
	help := panel.NewHelp(m.sections(), m.panelStyle(), m.helpKey().Binding, m.quitKey().Binding)
	for md, p := range map[mode]panel.Panel{printing: m.printPanel(), helping: help} {
		for _, s := range p.Keys() {
			doubles(t, s.Title, beside(while(md), s))
		}
	}
}

// TestWhereEachKeyOfTheRootIsAlive: on every page each of the root's keys stands in the
// help as alive, or as one of the panes; and one of those, pressed, says so and does no more.
func TestWhereEachKeyOfTheRootIsAlive(t *testing.T) {
	s := filed(t, 100, 30, fresh())
	said := 0
	for _, l := range s.m.book.Leaves {
		if l.Room == act.Screen {
			continue
		}
		s.m.takeUp(l)
		in := map[string]string{}
		for _, sec := range s.m.sections() {
			if title := sec.Title; strings.HasPrefix(title, "Here too") || strings.HasPrefix(title, "On Knife") {
				for _, b := range sec.Keys {
					in[b.Help().Key] += title[:1]
				}
			}
		}
		for _, r := range s.m.rootKeys() {
			want := "O"
			if s.m.alive(r) {
				want = "H"
			}
			if name := r.Help().Key; in[name] != want {
				t.Errorf("%s: the help has %s under %q, want %q", l.Name, name, in[name], want)
			}
			for _, k := range r.Keys() {
				if want == "H" || s.m.owns(rig.Key(k)) {
					continue
				}
				s.now = s.now.Add(byHand)
				s.send(rig.Key(k))
				if got, want := s.m.message.Text, r.Name(k)+" is a key of Knife, Plan and Steps: Esc leads back to them"; got != want || s.m.book.InHand() != l || s.m.mode != browsing {
					t.Errorf("%s, %s: said %q, want %q", l.Name, k, got, want)
				}
				said++
			}
		}
	}
	if said < 30 {
		t.Errorf("only %d keys were pressed where they are not alive", said)
	}
}

// TestWhichKeysOfTheRootPagesHave: beside those that open pages, these are not alive.
func TestWhichKeysOfTheRootPagesHave(t *testing.T) {
	m := filed(t, 100, 30, fresh()).m
	for page, want := range map[string]string{
		"Knife":    "",
		"Drying":   "Tab, Shift+Tab",
		"Cost":     "Tab, Shift+Tab, P, A",
		"Leather":  "Tab, Shift+Tab, u, Ctrl+U, U, Ctrl+R, !, P, A",
		"Look":     "Tab, Shift+Tab, u, Ctrl+U, U, Ctrl+R, !, Ctrl+S, P, A",
		"Shelf":    "Tab, Shift+Tab, n, u, Ctrl+U, U, Ctrl+R, !, Ctrl+S, P, A", // n is its own
		"Patterns": "Tab, Shift+Tab",
	} {
		l := m.book.Named(page)
		if l == nil {
			t.Fatalf("there is no page %s", page)
		}
		m.book.Take(l)
		var dead []string
		for _, r := range m.rootKeys() {
			opens := slices.ContainsFunc(m.book.Openers(), func(o *book.Leaf) bool { return o.Open.Help() == r.Help() })
			if !opens && !m.alive(r) {
				dead = append(dead, r.Help().Key)
			}
		}
		if got := strings.Join(dead, ", "); got != want {
			t.Errorf("%s: not alive are %q, want %q", page, got, want)
		}
	}
}

// TestTheRootsKeysOverATextAndAPanel: the shell is reached from a number that is open and
// from the print panel, but not from the list of keys; Ctrl+C puts them away and quits next.
func TestTheRootsKeysOverATextAndAPanel(t *testing.T) {
	for _, c := range []struct {
		opens string
		in    mode
		shell bool
	}{{"1", editing, true}, {"P", printing, true}, {"??", helping, false}} {
		s := filed(t, 100, 30, fresh())
		s.keys(c.opens)
		if s.m.mode != c.in {
			t.Fatalf("%s: mode %d, want %d", c.opens, s.m.mode, c.in)
		}
		s.m.key(rig.Key("ctrl+z"))
		if left := s.voice.title == ""; left != c.shell {
			t.Errorf("%s, Ctrl+Z: to the shell is %v, want %v", c.opens, left, c.shell)
		}
		if s.keys("ctrl+c"); s.m.mode != browsing || s.quit {
			t.Errorf("%s, Ctrl+C: mode %d, quit %v", c.opens, s.m.mode, s.quit)
		}
		if s.keys("ctrl+c"); !s.quit {
			t.Errorf("%s, Ctrl+C twice: it goes on", c.opens)
		}
	}
}

// TestSavedFromANumber: what is committed can be saved at once while a number is open.
func TestSavedFromANumber(t *testing.T) {
	s := filed(t, 100, 30, fresh())
	if s.keys("1", "ctrl+s"); !strings.Contains(s.m.message.Text, "saved") || s.m.mode != editing {
		t.Errorf("said %q, mode %d", s.m.message.Text, s.m.mode)
	}
}

// TestNoShellWithoutOne: where there is none to go to, the key has no line in the help.
func TestNoShellWithoutOne(t *testing.T) {
	for _, suspends := range []bool{true, false} {
		s := start(t, 200, 300, fresh(), "", calc.Compute, func(o *Options) { o.Suspends = suspends })
		if s.keys("?", "?"); strings.Contains(s.text(), "fg brings chape back") != suspends {
			t.Errorf("with a shell %v the help says %v", suspends, !suspends)
		}
	}
}

// TestAPageTakesItsFirstKeyAtOnce: the letter that opened it does not make a reading of it.
func TestAPageTakesItsFirstKeyAtOnce(t *testing.T) {
	s := filed(t, 100, 30, fresh())
	s.keys("b")
	s.now = s.now.Add(part.Breath / 2)
	before := s.text()
	s.send(rig.Key(" "))
	if s.text() == before {
		t.Error("Space right behind b does nothing in the bench view")
	}
}

// TestPagesAreWhole: each has a name of its own, and a way to it.
func TestPagesAreWhole(t *testing.T) {
	m := loose(t, 80, 24).m
	names := map[string]bool{}
	for _, l := range m.book.Leaves {
		if l.Name == "" || names[l.Name] {
			t.Errorf("the name %q is none, or there twice", l.Name)
		}
		names[l.Name] = true
		if front := l.Room < act.Whole && m.book.Standing[l.Room] == l; !front && len(l.Open.Keys()) == 0 {
			t.Errorf("%s: no key opens it", l.Name)
		}
		if l.Back != "" && m.book.Named(l.Back) == nil {
			t.Errorf("%s: leads back to %q, which there is not", l.Name, l.Back)
		}
	}
}

// TestDigitsAreNoCommands: a measuring tool types them anywhere.
func TestDigitsAreNoCommands(t *testing.T) {
	m := loose(t, 80, 24).m
	for _, sec := range m.sections() {
		for _, b := range sec.Keys {
			for _, k := range b.Keys() {
				if len(k) == 1 && strings.ContainsAny(k, "0123456789.,+-\"") {
					t.Errorf("%s: %q is a command", sec.Title, k)
				}
			}
		}
	}
}

func (s *screen) onDiskText() string { return string(file.Encode(s.onDisk())) }

// Where there is too little room to show anything no key changes anything unseen: those
// alone that lead out, and the one that silences an alarm.
func TestUnseenNothingChanges(t *testing.T) {
	for _, begin := range [][]string{nil, {"tab"}, {"tab", "tab"}, {"1", "2"}, {"b"}, {"T"}, {"?"}, {"P"}} {
		p := fresh()
		p.Steps[1].Started = morning.Add(-30 * time.Minute)
		s := filed(t, 80, 24, p)
		s.keys(begin...)
		was := s.onDiskText()
		s.send(tea.WindowSizeMsg{Width: 30, Height: 8})
		if s.m.mode != bench {
			s.shows("needs 40×12, has 30×8")
		}
		mode, cover := s.m.mode, s.m.book.Cover
		s.keys("7", "7", "enter", " ", "x", "u", "T", "b", "P", "n", "enter", "backspace", "tab", "ctrl+s", "!")
		s.reading("12.7", "enter")
		s.send(tea.MouseMsg{X: 2, Y: 4, Action: tea.MouseActionPress, Button: tea.MouseButtonLeft})
		if s.onDiskText() != was || s.m.mode != mode || s.m.book.Cover != cover {
			t.Errorf("%q: something was done unseen: mode %v, was %v:\n%s", begin, s.m.mode, mode, s.onDiskText())
		}
		s.wait(time.Hour)
		if !s.m.alarm.Ringing() {
			t.Fatalf("%q: no alarm: %+v", begin, s.onDisk().Steps)
		}
		if s.keys(" "); s.m.alarm.Ringing() {
			t.Errorf("%q: a key does not silence", begin)
		}
		for range 3 {
			if !s.quit {
				s.keys("ctrl+c")
			}
		}
		if !s.quit {
			t.Errorf("%q: Ctrl+C does not quit", begin)
		}
	}
	s := filed(t, 30, 8, fresh())
	if s.keys("q"); !s.quit {
		t.Error("q does not quit")
	}
	s = filed(t, 59, 20, fresh())
	s.send(tea.WindowSizeMsg{Width: 60, Height: 20})
	s.keys("b")
	s.send(tea.WindowSizeMsg{Width: 59, Height: 20})
	if s.keys("esc"); s.m.mode != browsing {
		t.Error("Esc does not leave the bench view where it has too little room")
	}
}

// The smallest window that the bench view takes names on each page the way back from it; but
// for the shelf, behind which there may be nothing.
func TestTheWayBackIsNamed(t *testing.T) {
	s := filed(t, 60, 20, fresh())
	for _, l := range s.m.book.Leaves {
		if l.Room != act.Whole || len(l.Open.Keys()) == 0 || l.Name == "Shelf" {
			continue
		}
		s.keys(l.Open.Keys()[0])
		if s.m.book.InHand() != l {
			t.Fatalf("%s is not in hand", l.Name)
		}
		foot := s.text()[strings.LastIndex(s.text(), "\n")+1:]
		if s.m.message.Text == "" && !strings.Contains(foot, "Esc") {
			t.Errorf("%s: %q", l.Name, foot)
		}
		s.keys("esc")
	}
}
