package workbench

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/charmbracelet/bubbles/key"
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
	s := loose(t, 80, 24)
	m := s.m
	listed := map[string]bool{}
	for _, sec := range m.sections() {
		for _, b := range sec.Keys {
			listed[strings.Join(b.Keys(), " ")] = true
		}
	}
	silent := map[string]bool{"ctrl+j": true} // the Enter of some terminals, said as Enter
	for name, table := range map[string]any{
		"workbench": m.Keys, "knife": m.knife.Keys, "plan": m.plan.Keys, "steps": m.steps.KeyMap,
		"shelf": m.shelf.KeyMap, "weighings": m.dry.KeyMap, "bench": m.bench.KeyMap,
	} {
		for _, b := range bindings(table) {
			keys := strings.Join(b.Keys(), " ")
			if silent[keys] {
				continue
			}
			if !listed[keys] || b.Help().Key == "" || b.Help().Desc == "" {
				t.Errorf("%s: the key %q is not in the help, or without words", name, keys)
			}
		}
	}
}

// TestNoKeyMeansTwoThings looks at each set of keys that are alive together.
func TestNoKeyMeansTwoThings(t *testing.T) {
	m := loose(t, 80, 24).m
	steps := m.steps.KeyMap
	sets := map[string][]key.Binding{
		"knife":  append(m.Keys.Bindings(), m.knife.Keys.Bindings()...),
		"typing": append([]key.Binding{m.Keys.Break, m.Keys.Suspend}, m.knife.Keys.Typing()...),
		"plan":   append(m.Keys.Bindings(), m.plan.Keys.Bindings()...),
		"bench":  bindings(m.bench.KeyMap),
	}
	for _, b := range bindings(steps) {
		if strings.Join(b.Keys(), " ") != strings.Join(steps.Keep.Keys(), " ") { // alive in a question only
			sets["steps"] = append(sets["steps"], b)
		}
	}
	sets["steps"] = append(sets["steps"], m.Keys.Bindings()...)
	root := []key.Binding{m.Keys.Quit, m.Keys.Break, m.Keys.Help, m.Keys.Suspend}
	for name, table := range map[string][][]key.Binding{
		"shelf":     m.shelf.KeyMap.FullHelp()[:3], // without those of a question
		"weighings": append(m.dry.KeyMap.FullHelp(), []key.Binding{m.Keys.Undo, m.Keys.Redo}),
	} {
		sets[name] = append(slices.Concat(table...), root...)
	}
	for name, set := range sets {
		seen := map[string]string{}
		for _, b := range set {
			for _, k := range b.Keys() {
				if other, twice := seen[k]; twice {
					t.Errorf("%s: %q is %q and %q", name, k, other, b.Help().Desc)
				}
				seen[k] = b.Help().Desc
			}
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
