package panel

import (
	"slices"
	"strings"
	"testing"

	"github.com/charmbracelet/bubbles/key"

	"chape/ui/act"
	"chape/ui/layout"
)

// What a key does is read to its end in any window, in one column and in two.
func TestHelpIsNeverCut(t *testing.T) {
	long := "next page: knife, sheath, loop, seam, trial, order; in a table a column on"
	keys := []key.Binding{key.NewBinding(key.WithKeys("right"), key.WithHelp("right", long)), key.NewBinding(key.WithKeys("x"), key.WithHelp("x", "take it out"))}
	for _, w := range []int{60, 80, 100, 120, 160} {
		p := NewHelp([]Section{{Title: "Knife", Keys: keys}, {Title: "Everywhere", Keys: keys}}, Style{Edges: layout.Edges{ASCII: true}})
		p.SetSize(w, 24)
		view := strings.Join(p.View(), "\n")
		if strings.Contains(view, "…") {
			t.Errorf("%d wide, something is cut:\n%s", w, view)
		}
		for _, word := range strings.Fields(long) {
			if strings.Count(view, word) < 2 {
				t.Errorf("%d wide: %q is not shown in both sections:\n%s", w, word, view)
			}
		}
	}
}

// In two columns no section's keys stand without their heading: the right column begins with a
// section, or says which one goes on.
func TestHelpColumnsBeginWithAHeading(t *testing.T) {
	section := func(title string, n int) Section {
		s := Section{Title: title}
		for range n {
			s.Keys = append(s.Keys, key.NewBinding(key.WithKeys("x"), key.WithHelp("x", "does it")))
		}
		return s
	}
	for want, all := range map[string][]Section{
		"Plan":        {section("Knife", 10), section("Plan", 9), section("Steps", 3)},
		"Steps":       {section("Knife", 10), section("Plan", 3), section("Steps", 15)},
		"Plan, more":  {section("Knife", 2), section("Plan", 30), section("Steps", 2)},
		"Knife, more": {section("Knife", 9)},
	} {
		p := NewHelp(all, Style{})
		p.SetSize(130, 60)
		first := p.lines()[0]
		if got := strings.TrimSpace(first[p.inner().W/2:]); got != want {
			t.Errorf("the right column begins with %q, want %q", got, want)
		}
		n := 0
		for _, s := range all {
			n += len(s.Keys)
		}
		if got := strings.Count(strings.Join(p.lines(), "\n"), "does it"); got != n {
			t.Errorf("%s: %d keys of %d", want, got, n)
		}
	}
}

// The keys that are alive now are listed first.
func TestHelpBeginsWhereOneIs(t *testing.T) {
	got := Sections(keyed{{Title: "Which picture"}, {Title: "What was read", Now: true}, {Now: true}, {Title: "The column"}})
	if len(got) != 3 || got[0].Title != "What was read" || got[1].Title != "Which picture" {
		t.Errorf("%+v", got)
	}
}

type keyed []act.Section

func (k keyed) Keys() []act.Section { return k }

// Many pages ask in the same way: what they share is listed once.
func TestHelpSaysOnce(t *testing.T) {
	same := Section{Title: "In a question", Keys: []key.Binding{key.NewBinding(key.WithKeys("enter"), key.WithHelp("Enter", "keep it"))}}
	p := NewHelp([]Section{same, {Title: "Other"}, same}, Style{})
	p.SetSize(80, 24)
	if view := strings.Join(p.View(), "\n"); strings.Count(view, "keep it") != 1 {
		t.Errorf("said more than once:\n%s", view)
	}
}

// On a line of keys those in front stay longest, and the last two always; where letters are
// typed, keys go by their other names or not at all.
func TestKeyLine(t *testing.T) {
	bind := func(does string, keys ...string) key.Binding {
		return key.NewBinding(key.WithKeys(keys...), key.WithHelp(keys[0], does))
	}
	keys := []key.Binding{bind("next", "enter"), bind("print", "P"), bind("undo", "u", "ctrl+u"), bind("keys", "?"), bind("quit", "q")}
	for w, want := range map[int]string{
		80: "Enter next  P print  u undo  ? keys  q quit", 36: "Enter next  P print  ? keys  q quit", 30: "Enter next  ? keys  q quit", 3: "? keys  q quit",
	} {
		if got := KeyLine(keys, w, false); got != want {
			t.Errorf("in %d cells %q, want %q", w, got, want)
		}
	}
	back := slices.Insert(slices.Clone(keys), 2, bind("back", "esc"))
	for w, want := range map[int]string{40: "Enter next  Esc back  ? keys  q quit", 24: "Esc back  ? keys  q quit", 20: "? keys  q quit"} {
		if got := KeyLine(back, w, false); got != want {
			t.Errorf("in %d cells %q, want %q", w, got, want)
		}
	}
	if got, want := KeyLine(WithoutLetters(keys), 80, false), "Enter next  Ctrl+U undo  ? keys"; got != want {
		t.Errorf("without letters %q, want %q", got, want)
	}
}
