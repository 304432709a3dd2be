package layout

import (
	"slices"
	"testing"
)

// A table drops its last columns where there is no room, and its name takes what is left.
func TestColumns(t *testing.T) {
	rows := [][]string{{"knife", "spent", "cost"}, {"Orchard", "1 h 20 min", "12.50 €"}}
	for _, c := range []struct {
		w    int
		want []int
	}{{40, []int{19, 10, 7}}, {31, []int{10, 10, 7}}, {30, []int{18, 10}}, {22, []int{10, 10}}, {21, []int{21}}, {5, []int{5}}} {
		if got := Columns(rows, c.w, 10); !slices.Equal(got, c.want) {
			t.Errorf("%d cells: %v, want %v", c.w, got, c.want)
		}
	}
	if got := Columns(nil, 40, 10); got != nil {
		t.Errorf("no table: %v", got)
	}
	if got, want := Row(rows[1], []int{9, 10, 8}), "Orchard    1 h 20 min   12.50 €"; got != want {
		t.Errorf("Row = %q, want %q", got, want)
	}
	if got, want := Row(rows[0], []int{3}), "kn…"; got != want {
		t.Errorf("Row = %q, want %q", got, want)
	}
}
