package versions

import (
	"strings"
	"testing"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/file"
	"chape/project/weigh"
)

// Only what the sheets are drawn from makes another pattern: what it is for, what is done to
// it, what it costs and where the leather comes from do not.
func TestWhatMakesAnotherPattern(t *testing.T) {
	base := project.New("Orchard", length.Millimetres, project.Defaults())
	base.Fits = []project.Fit{{Fit: calc.Fit{At: 60, By: 2, Reach: 20}, With: "leather", Note: "tight"}}
	base = printed(base, 0)
	for name, c := range map[string]struct {
		change  func(*project.Project)
		another bool
	}{
		"the title":              {func(p *project.Project) { p.Title = "x" }, false},
		"the unit":               {func(p *project.Project) { p.Units = length.Inches }, false},
		"who it is for":          {func(p *project.Project) { p.Customer.Name, p.Customer.Due = "x", day }, false},
		"a figure found right":   {func(p *project.Project) { p.Untouched = "depth" }, false},
		"where marks came from":  {func(p *project.Project) { p.Tracing.Picture = "x.jpg" }, false},
		"a word on a correction": {func(p *project.Project) { p.Fits[0].Note = "tight at the bolster" }, false},
		"the leather's name":     {func(p *project.Project) { p.Hide.Name = "shoulder" }, false},
		"the leather's price":    {func(p *project.Project) { p.Hide.Price.M2 = "92.50" }, false},
		"placing the parts":      {func(p *project.Project) { p.Hide.Lost, p.Hide.Placed, p.Hide.Cut = 0.3, true, 80000 }, false},
		"a part added":           {func(p *project.Project) { p.Added = []project.Part{{Name: "loop", Count: 1, Length: 60, Width: 20}} }, false},
		"a quote":                {func(p *project.Project) { p.Quotes = []project.Quote{{Date: day, Lines: "work | 1 | a | b"}} }, false},
		"a weighing":             {func(p *project.Project) { p.Weigh = []weigh.Weighing{{When: day, Grams: 9, State: "drying"}} }, false},
		"the room":               {func(p *project.Project) { p.Room = weigh.Room{Humidity: 50, HasHumidity: true} }, false},
		"an offer":               {func(p *project.Project) { p.Carried = []project.Carried{{From: "x", Front: 9, Mouth: 20}} }, false},
		"the leather":            {func(p *project.Project) { p.Sheath.Leather = 4 }, true},
		"a mark":                 {func(p *project.Project) { p.Knife.Stations[1].Thick += 0.5 }, true},
		"a correction":           {func(p *project.Project) { p.Fits[0].By = 1 }, true},
		"no correction":          {func(p *project.Project) { p.Fits = nil }, true},
		"the hand":               {func(p *project.Project) { p.Customer.Hand = calc.LeftHand }, true},
		"the edge":               {func(p *project.Project) { p.Customer.Edge = calc.EdgeFront }, true},
		"a strap":                {func(p *project.Project) { p.Strap.Kind = calc.SnapStrap }, true},
		"the belt":               {func(p *project.Project) { p.Belt.Width = 50 }, true},
		"the pitch":              {func(p *project.Project) { p.Stitch.Pitch = 5 }, true},
		"the mouth":              {func(p *project.Project) { p.Sheath.Mouth-- }, true},
	} {
		p := base.Clone()
		c.change(&p)
		if q, ok := Outgrown(p); ok != c.another || ok && q.Number != 1 || !ok && q != (project.Pattern{}) {
			t.Errorf("%s makes another pattern: %v, want %v", name, ok, c.another)
		}
		if again, news := file.Printed(p, day.AddDate(0, 0, 9)); news != c.another || len(again.Patterns) != 1 {
			t.Errorf("%s: printed again it is news: %v", name, news)
		}
	}
}

// What only number and date are left of, or what can't be read, is outgrown by nothing.
func TestOutgrownOfLittle(t *testing.T) {
	p := knifeProject()
	for inputs, want := range map[string]bool{"": false, "torn = ": true} {
		p.Patterns = []project.Pattern{{Number: 1, Printed: day, Inputs: inputs}}
		if _, ok := Outgrown(p); ok != want {
			t.Errorf("inputs %q: outgrown %v, want %v", inputs, ok, want)
		}
	}
	p.Patterns[0].Number = 2
	if _, ok := Outgrown(p); ok {
		t.Error("outgrown is a number that the project has not come to")
	}
}

// Patterns come by their numbers, whatever their order in the file; each with the project's
// own title, unit and leather and its own cut; what stands is the last.
func TestOfInOrder(t *testing.T) {
	p := knifeProject()
	var thick []length.Length
	for i, l := range []length.Length{2.4, 3.2, 4} {
		p.Sheath.Leather = l
		p = printed(p, i)
		Raise(&p)
		thick = append(thick, l)
	}
	p.Patterns[0], p.Patterns[2] = p.Patterns[2], p.Patterns[0]
	p.Patterns = append(p.Patterns, project.Pattern{Number: 9, Printed: day})
	p.Title, p.Units, p.Hide.Name, p.Sheath.Leather = "Orchard", length.Inches, "shoulder", 5
	before := file.Encode(p)
	all := Of(p)
	if len(all) != 4 || !all[3].Standing || all[3].Number != 4 || all[3].Project().Sheath.Leather != 5 {
		t.Fatalf("patterns %+v", all)
	}
	for i, v := range all[:3] {
		q := v.Project()
		if v.Number != i+1 || v.Standing || !v.Printed.Equal(day.AddDate(0, 0, i)) || q.Sheath.Leather != thick[i] || q.Revision != i+1 {
			t.Errorf("pattern %d: %d of %v, %v mm, revision %d", i+1, v.Number, v.Printed, q.Sheath.Leather, q.Revision)
		}
		if q.Title != "Orchard" || q.Units != length.Inches || q.Hide.Name != "shoulder" {
			t.Errorf("pattern %d is %q, in %v, of %q", v.Number, q.Title, q.Units, q.Hide.Name)
		}
		if want := "pattern " + string(rune('1'+i)) + ", printed " + []string{"25", "26", "27"}[i] + " Nov 2026"; v.Name() != want {
			t.Errorf("named %q, want %q", v.Name(), want)
		}
	}
	all[0].project.Knife.Stations[1].Thick = 99
	if string(file.Encode(p)) != string(before) {
		t.Error("looking at its patterns changes the project")
	}
}

// Going back to what was printed under the number makes it that pattern again.
func TestBackToWhatWasPrinted(t *testing.T) {
	p := printed(knifeProject(), 0)
	was := p.Sheath.Gap
	p.Sheath.Gap++
	if all := Of(p); len(all) != 2 || all[0].Number != 1 || all[1].Number != 1 || !strings.HasSuffix(all[1].Name(), "as it is now") {
		t.Errorf("with another gap %+v", all)
	}
	p.Sheath.Gap = was
	if all := Of(p); len(all) != 1 || all[0].Name() != "pattern 1 as it is now, printed 25 Nov 2026" {
		t.Errorf("with the old one again %+v", all)
	}
	n := p.Revision
	for range 3 {
		Raise(&p)
	}
	if p.Revision != n+3 || len(p.Patterns) != 1 {
		t.Errorf("raised three times it is %d, with %d patterns", p.Revision, len(p.Patterns))
	}
}
