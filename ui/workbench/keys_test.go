package workbench

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/charmbracelet/bubbles/key"

	"chape/ui/act"
)

// bindings gives every key of a table, whether its lists name it or not.
func bindings(table any) []key.Binding {
	var out []key.Binding
	v := reflect.ValueOf(table)
	for i := range v.NumField() {
		if b, ok := v.Field(i).Interface().(key.Binding); ok {
			out = append(out, b)
		}
	}
	return out
}

func TestEveryKeyIsInTheHelp(t *testing.T) {
	m := loose(t, 80, 24).m
	listed := map[string]bool{}
	for _, sec := range m.sections() {
		for _, b := range sec.Keys {
			listed[strings.Join(b.Keys(), " ")] = true
		}
	}
	all := append(bindings(m.Keys), m.book.Openers()...)
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

// TestNoKeyMeansTwoThings looks at each set of keys that are alive together: those of a
// page and, where no text is typed, those that the root has alive on it.
func TestNoKeyMeansTwoThings(t *testing.T) {
	m := loose(t, 80, 24).m
	for _, l := range m.book.Leaves {
		for _, s := range l.Pane.Keys() {
			var set []key.Binding
			if !s.Text && l.Room != act.Screen {
				m.book.Cover = l
				set, _ = m.rootKeys(l.Root)
				set = slices.DeleteFunc(set, func(b key.Binding) bool { return b.Help() == m.Keys.New.Help() }) // behind a page's own
			}
			for _, k := range s.Keys {
				set = append(set, k.Binding)
			}
			seen := map[string]string{}
			for _, b := range set {
				for _, k := range b.Keys() {
					if other, twice := seen[k]; twice {
						t.Errorf("%s: %q is %q and %q", l.Name, k, other, b.Help().Desc)
					}
					seen[k] = b.Help().Desc
				}
			}
		}
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
