package form

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
)

// Each field of the file that a maker types stands on one page, once.
func TestEachFieldStandsOnce(t *testing.T) {
	p := project.New("Test", length.Millimetres, project.Defaults())
	p.Source = project.FromStations
	p.Fits = []project.Fit{{Fit: calc.Fit{At: 50, By: 1, Reach: 20}, With: "paper"}, {Fit: calc.Fit{At: 80, By: 1, Reach: 20}, With: "leather"}}
	seen := map[string]Page{}
	for page := range Page(Pages) {
		for _, r := range Rows(page, p) {
			for _, f := range r.Cells {
				at := fmt.Sprint(f.Key, f.Index)
				if before, twice := seen[at]; twice {
					t.Errorf("%s stands on %v and on %v", at, before, page)
				}
				if of, ok := OfKey(f.Key); !ok || of != page {
					t.Errorf("%s stands on %v, and is said to stand on %v, %v", at, page, of, ok)
				}
				seen[at] = page
			}
		}
	}
	for i := range p.Knife.Stations {
		if _, there := seen[fmt.Sprint("knife.station.thick", i)]; !there {
			t.Errorf("mark %d stands nowhere", i+1)
		}
	}
	if _, there := seen["fit.by1"]; !there || seen["sheath.gap-1"] != Sheath || seen["customer.name-1"] != Order {
		t.Errorf("not where they are looked for: %v", seen)
	}
	if _, ok := OfKey("nothing.of.that"); ok {
		t.Error("a field that there is not stands on a page")
	}
}

// Over a table stand its columns' names; marks that follow from the outline have no rows.
func TestRows(t *testing.T) {
	p := project.New("Test", length.Millimetres, project.Defaults())
	tables := func(page Page) (heads, rows int) {
		for _, r := range Rows(page, p) {
			if len(r.Heads) > 0 {
				heads++
			}
			if r.IsHeading() != (len(r.Cells) == 0) {
				t.Errorf("%+v: is it a heading?", r)
			}
			if r.List != "" && !r.IsHeading() {
				rows++
			}
		}
		return heads, rows
	}
	if h, n := tables(Knife); h != 0 || n != 0 {
		t.Errorf("from the outline there are %d tables of %d rows", h, n)
	}
	p.Source = project.FromStations
	if h, n := tables(Knife); h != 1 || n != len(p.Knife.Stations) {
		t.Errorf("as measured there are %d tables of %d rows", h, n)
	}
	if rows := Rows(Trial, p); len(rows) != 0 {
		t.Errorf("before a trial its page has %d rows", len(rows))
	}
	for page, by := range map[Page]Page{Knife: Order, Sheath: Knife, Order: Trial} {
		if got := page.Next(-1); got != by {
			t.Errorf("before %v stands %v", page, got)
		}
		if got := by.Next(1); got != page {
			t.Errorf("behind %v stands %v", by, got)
		}
	}
}

// A field is a number, a choice or a text; what it is says which keys it takes.
func TestKindsOfFields(t *testing.T) {
	for key, want := range map[string][2]bool{ // numeric, cycles
		"knife.outline.blade": {true, false}, "sheath.leather": {true, false}, "sheath.plies": {true, false}, "stitch.waste": {true, false},
		"customer.hand": {false, true}, "knife.source": {false, true}, "units": {false, true},
		"customer.name": {false, false}, "notes": {false, false}, "title": {false, false}, "customer.due": {false, false},
	} {
		if f := fieldOf(t, key); Numeric(f) != want[0] || Cycles(f) != want[1] {
			t.Errorf("%s: numeric %v, cycles %v", key, Numeric(f), Cycles(f))
		}
	}
}

// Choices go round, both ways, through all there are.
func TestChoicesGoRound(t *testing.T) {
	p := project.New("Test", length.Millimetres, project.Defaults())
	f := fieldOf(t, "knife.outline.point")
	begun := f.Get(p)
	var met []string
	for range f.Options {
		v := Next(f, p, 1)
		if err := f.Set(&p, v); err != nil {
			t.Fatal(err)
		}
		met = append(met, v.(string))
	}
	slices.Sort(met)
	if f.Get(p) != begun || len(slices.Compact(met)) != len(f.Options) {
		t.Errorf("from %v through %v to %v", begun, met, f.Get(p))
	}
	there := Next(f, p, 1)
	if err := f.Set(&p, there); err != nil {
		t.Fatal(err)
	}
	if back := Next(f, p, -1); back != begun {
		t.Errorf("back from %v is %v, want %v", there, back, begun)
	}
}

// A row is in reach as long as it is there.
func TestInReach(t *testing.T) {
	p := project.New("Test", length.Millimetres, project.Defaults())
	n := len(p.Knife.Stations)
	for _, c := range []struct {
		f    project.Field
		want bool
	}{
		{fieldOf(t, "sheath.gap"), true}, {project.MarkFields(n - 1)[0], true}, {project.MarkFields(n)[0], false}, {project.FitFields(0)[0], false},
	} {
		if got := InReach(c.f, p); got != c.want {
			t.Errorf("%s of %d: %v", c.f.Key, c.f.Index, got)
		}
	}
}

// An error is said by the names of the form, not by the keys of the file.
func TestWords(t *testing.T) {
	for _, c := range []struct {
		err  error
		want string
	}{
		{project.Problem{Key: "sheath.gap", Index: -1, Found: "3 mm", Remedy: "give more"}, "edge to stitches: found 3 mm: give more"},
		{project.Problem{Key: "knife.station.at", Index: 2, Found: "1 mm", Remedy: "put the marks in order"}, "at of mark 3: found 1 mm: put the marks in order"},
		{project.Problem{Key: "fit.by", Index: 0, Found: "90 mm", Remedy: "give less"}, "by of correction 1: found 90 mm: give less"},
		{project.Problems{{Key: "sheath.gap", Index: -1, Found: "3 mm", Remedy: "give more"}, {Key: "title"}}, "edge to stitches: found 3 mm: give more"},
		{fmt.Errorf("kept: %w", project.Problem{Key: "sheath.gap", Index: -1, Found: "3 mm", Remedy: "give more"}), "edge to stitches: found 3 mm: give more"},
		{project.Problem{Key: "nobody's", Index: -1, Found: "x", Remedy: "leave it out"}, "found x: leave it out"},
		{errors.New("the row is gone"), "the row is gone"},
	} {
		if got := Words(c.err); got != c.want {
			t.Errorf("%v: %q, want %q", c.err, got, c.want)
		}
	}
}

// What the outline made and nobody has typed is rounded for the tool; what was typed is not.
func TestComputedMarksAreRounded(t *testing.T) {
	p := project.New("Test", length.Inches, project.Defaults())
	p.Source = project.FromStations
	text := func(i, j int) string {
		for _, r := range Rows(Knife, p) {
			if r.List == "mark" && !r.IsHeading() && r.Index == i {
				return r.Texts[j]
			}
		}
		t.Fatalf("no mark %d", i)
		return ""
	}
	if got := text(1, 0); strings.Contains(got, ".") {
		t.Errorf("the outline's own place stands as %q", got)
	}
	p.Knife.Stations[3].Top = 2.2
	if got := text(3, 1); got != "0.0866" {
		t.Errorf("2.2 mm stands as %q", got)
	}
}
