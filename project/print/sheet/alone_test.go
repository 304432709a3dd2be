package sheet

import (
	"slices"
	"testing"
)

// columnsOf tells how many lines stand in each column, in order.
func columnsOf(f *Flow) []int {
	var n []int
	for _, p := range f.Pages {
		at := map[float64]int{}
		var xs []float64
		for _, text := range p.Drawing.Texts {
			if text.At.Y < 8 || text.Says == "" {
				continue // the head
			}
			if at[text.At.X]++; at[text.At.X] == 1 {
				xs = append(xs, text.At.X)
			}
		}
		for _, x := range xs {
			n = append(n, at[x])
		}
	}
	return n
}

// Wherever they begin, no line of several stands alone at the end of a column or at the
// head of the next, and none is lost.
func TestNoLineAlone(t *testing.T) {
	for lines := 2; lines < 40; lines++ {
		for from := 8.0; from < 72; from += 1.1 {
			f := NewFlow(200, 80, "Card", 2, func(float64, float64) string { return "" })
			f.Y = from
			high := slices.Repeat([]float64{3.7}, lines)
			for i := range high {
				f.Keep(i, high)
				f.Put(0, "line", 2.7, false, Start)
				f.Y += high[i]
			}
			sum := 0
			for _, n := range columnsOf(f) {
				if sum += n; n == 1 {
					t.Fatalf("%d lines from %v mm: columns of %v", lines, from, columnsOf(f))
				}
			}
			if sum != lines {
				t.Fatalf("%d lines from %v mm: %d are written", lines, from, sum)
			}
		}
	}
}

// A paragraph, and one with a mark, keep to that.
func TestNoWordsAlone(t *testing.T) {
	const words = "Cement, dye and finish: read the product's data sheet first, it goes before this card. Fresh air, no flame or spark, gloves; the solvents burn below room temperature. Keep them closed, and do not pour them into the drain; rags with oil can catch fire by themselves."
	for from := 8.0; from < 72; from += 0.7 {
		for name, write := range map[string]func(f *Flow){"para": func(f *Flow) { f.Para(words, 2.7, 5) }, "item": func(f *Flow) { f.Item("", words) }} {
			f := NewFlow(200, 80, "Card", 2, func(float64, float64) string { return "" })
			f.Y = from
			write(f)
			for _, n := range columnsOf(f) {
				if n == 1 {
					t.Fatalf("%s from %v mm: columns of %v", name, from, columnsOf(f))
				}
			}
		}
	}
}
