package card

import (
	"fmt"
	"math"
	"slices"
	"testing"
	"time"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/print/sheet"
	"chape/project/report"
	"chape/project/steps"
)

// long is a project with much on its card, in inches.
func long(t *testing.T, corrections, more int) (project.Project, *calc.Plan) {
	t.Helper()
	p := project.Defaults()
	p.BeginIn(length.Inches)
	for i := range corrections {
		p.Fits = append(p.Fits, project.Fit{Fit: calc.Fit{At: length.Length(10 + 10*(i%15)), By: 0.5, Reach: 20}})
	}
	for i := range more {
		p.Steps = append(p.Steps, steps.Step{Title: fmt.Sprintf("An own step, number %d, in words that need a second line on the card of paper", i), Hold: time.Hour, Caution: "Cut away from yourself, the other hand behind the blade, and clamp the work on a board."})
	}
	plan, err := calc.Compute(p.Input(calc.DefaultLimits()))
	if err != nil {
		t.Fatal(err)
	}
	return p, plan
}

// rowsOf are the lines of each column in order, by their heights on the page; heading tells
// which are bold and large.
func rowsOf(pages []sheet.Page) (columns [][]sheet.Text) {
	for _, p := range pages {
		byX := map[bool][]sheet.Text{}
		for _, text := range p.Drawing.Texts {
			if text.At.Y > 8 {
				byX[text.At.X > 99] = append(byX[text.At.X > 99], text)
			}
		}
		for _, right := range []bool{false, true} {
			if len(byX[right]) > 0 {
				columns = append(columns, byX[right])
			}
		}
	}
	return columns
}

// However long the card is, no heading ends a column, and nothing lies below the page.
func TestCardHasNoHeadingAlone(t *testing.T) {
	p, plan := long(t, 14, 5)
	p.Steps = append(slices.Clone(p.Steps[len(p.Steps)-5:]), p.Steps...)
	for h := 110.0; h < 290; h++ {
		f := sheet.NewFlow(190, h, "Work card", 2, func(float64, float64) string { return "" })
		for i, column := range rowsOf(Work(f, p, plan, "A knife", 0.25)) {
			lowest, heading := 0.0, ""
			for _, text := range column {
				if text.At.Y >= lowest {
					lowest, heading = text.At.Y, ""
					if text.Bold && math.Abs(text.Size-3.2) < 1e-9 {
						heading = text.Says
					}
				}
			}
			if heading != "" || lowest > h {
				t.Errorf("%v mm high, column %d: %q ends it; lowest at %v mm", h, i+1, heading, lowest)
			}
		}
	}
}

// Of a table that is torn no row is alone.
func TestTableHasNoRowAlone(t *testing.T) {
	for n := 3; n < 60; n++ {
		for from := 8.0; from < 60; from += 1.3 {
			f := sheet.NewFlow(90, 80, "Work card", 1, func(float64, float64) string { return "" })
			f.Y = from
			tab := report.Table{Name: "holes", Columns: []string{"hole"}}
			for i := range n {
				tab.Rows = append(tab.Rows, []string{fmt.Sprint(i + 1)})
			}
			table(f, tab, 1)
			sum := 0
			for _, p := range f.Pages {
				rows := 0
				for _, text := range p.Drawing.Texts {
					if text.At.Y > 8 && !text.Bold && text.Says != "" {
						rows++
					}
				}
				if sum += rows; rows == 1 {
					t.Fatalf("%d rows from %v mm: one is alone", n, from)
				}
			}
			if sum != n {
				t.Fatalf("%d rows from %v mm: %d are written", n, from, sum)
			}
		}
	}
}
