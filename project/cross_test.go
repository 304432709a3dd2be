package project

import (
	"slices"
	"strings"
	"testing"
	"time"

	"chape/calc/knife"
	"chape/calc/length"
	"chape/project/money"
	"chape/project/steps"
)

// at is marks at places, a step where a place stands twice.
func at(places ...length.Length) []knife.Station {
	var s []knife.Station
	for _, x := range places {
		s = append(s, knife.Station{At: x, Bottom: 30, Thick: 4, Bevel: 1})
	}
	return s
}

// The marks by hand: which orders, steps and distances will do, and what is said of others.
func TestMarksInOrder(t *testing.T) {
	for _, c := range []struct {
		marks []knife.Station
		want  string // the first problem, without "knife.station"
	}{
		{at(0, 200), ""}, {at(0, 100, 100, 200), ""}, {at(0, 50, 50, 100, 100, 200), ""}, {at(0, 0.05, 200), ""},
		{nil, ": found 0 of them: give the point, the end and marks between them: at least two"}, {at(0), ": found 1 of them"},
		{at(1, 200), ".at of mark 1: found 1 mm: the first mark stands at the point: give 0"},
		{at(0, 120, 100, 200), ".at of mark 3: found 100 mm: put the marks in order: the one before stands at 120 mm"},
		{at(0, 0.049, 200), ".at of mark 2: found 0.049 mm: keep marks 0.05 mm or more apart, or make a step of two at one place"},
		{at(0, 100, 100, 100, 200), ".at of mark 4: found a third mark at 100 mm: two make a step: take one out"},
		{at(0, 0, 200), ".at of mark 1: found a single mark before the step at 0 mm: leave a section between steps: give it a mark more"},
		{at(0, 100, 100, 150, 150, 200), ""}, // one section from 100 to 150
		{at(0, 100, 100), ".at of mark 3: found a single mark after the step at 100 mm"},
	} {
		p := full()
		p.Knife.Stations, p.Sheath.Mouth = c.marks, 90
		err := p.Validate()
		if (err == nil) != (c.want == "") || err != nil && !strings.HasPrefix(err.Error(), "knife.station"+c.want) {
			t.Errorf("marks at %v: %v, want %q", places(c.marks), err, c.want)
		}
	}
}

func places(marks []knife.Station) (out []length.Length) {
	for _, m := range marks {
		out = append(out, m.At)
	}
	return out
}

// What fields have to do with each other, just in and just out, with what would do.
func TestFieldsWithEachOther(t *testing.T) {
	price := func(m2, ft2 string) func(*Project) {
		return func(p *Project) { p.Hide.Price = money.ByArea{M2: m2, Ft2: ft2} }
	}
	for _, c := range []struct {
		what   string
		change func(*Project)
		want   string
	}{
		{"the mouth at the end", func(p *Project) { p.Sheath.Mouth = p.Knife.Length() }, ""},
		{"the mouth past the end", func(p *Project) { p.Sheath.Mouth = p.Knife.Length() + 0.01 }, "sheath.mouth: found 232.01 mm: the knife ends at 232 mm: give less"},
		{"gap at clearance", func(p *Project) { p.Sheath.Gap = p.Sheath.Clearance }, "sheath.gap: found 3 mm: give more than clearance, 3 mm"},
		{"gap above it", func(p *Project) { p.Sheath.Gap = p.Sheath.Clearance + 0.001 }, ""},
		{"the handle as the edge", func(p *Project) { p.Sheath.HandleClearance = p.Sheath.Clearance }, ""},
		{"the handle wider", func(p *Project) { p.Sheath.HandleClearance = 3.1 }, "sheath.handle_clearance: found 3.1 mm: give at most clearance, 3 mm"},
		{"no hollow left", func(p *Project) { p.Sheath.Blend = 6.5 }, "sheath.blend: found 6.5 mm: give more than margin and sanding together, 6.5 mm"},
		{"a little hollow", func(p *Project) { p.Sheath.Blend = 6.501 }, ""},
		{"an edge at the back", func(p *Project) { p.Knife.Stations[3].Top = p.Knife.Stations[3].Bottom }, ""},
		{"an edge above the back", func(p *Project) { p.Knife.Stations[3].Top = p.Knife.Stations[3].Bottom + 1 }, "knife.station.bottom of mark 4: found "},
		{"look by with the hold", func(p *Project) { p.Steps = []steps.Step{{Title: "x", Hold: time.Hour, Latest: time.Hour}} }, ""},
		{"look by alone", func(p *Project) { p.Steps = []steps.Step{{Title: "x", Latest: time.Hour}} }, ""},
		{"look by too soon", func(p *Project) {
			p.Steps = []steps.Step{{Title: "x"}, {Title: "y", Hold: time.Hour, Latest: time.Hour - 1}}
		}, `step.latest of step 2: found "59m59.999999999s": give at least hold, 1h`},
		{"a number twice", func(p *Project) { p.Patterns = everything().Patterns; p.Patterns[0].Number = 2 }, "pattern.number of pattern 2: found 2 once more: give each printed pattern its own number"},
		{"a part by its halves", func(p *Project) { p.Added = []Part{{Name: "x", Count: 1, Halves: "0 5; 9 5"}} }, ""},
		{"a part of torn halves", func(p *Project) { p.Added = []Part{{Name: "x", Count: 1, Halves: "0 5; 9"}} }, `part.halves of part 1: found "0 5; 9": "9" is no place`},
		{"a part of no width", func(p *Project) { p.Added = []Part{{Name: "x", Count: 1, Length: 9}} }, "part.length of part 1: found 9 mm by 0 mm: give its length and its width, or half-widths"},
		{"a price by the metre", price("92.50", ""), ""}, {"a price by the foot", price("", "9"), ""},
		{"both", price("1", "2"), `leather.price_ft2: found both, "1" and "2": by the square metre and by the square foot: give one of the two`}, {"one in words", price("dear", ""), `leather.price_m2: found "dear": write an amount as in 92.50`}, {"the other", price("", "dear"), `leather.price_ft2: found "dear"`},
		{"a quote accepted before it was made", func(p *Project) {
			p.Quotes = slices.Repeat(p.Quotes, 2)
			p.Quotes[1].Accepted = p.Quotes[1].Date.AddDate(0, 0, -1)
		}, "quote.accepted of quote 2: found 2026-11-24: give the day it was made, 25 Nov 2026, or a later one"},
		{"an outline that is none", func(p *Project) { p.Source, p.Outline.Front, p.Outline.FrontLength = FromOutline, knife.Bolster, 0.5 }, "knife.outline.front_length: found 0.5 mm: give 1 mm or more"},
		{"the same where marks stand", func(p *Project) { p.Outline.Front, p.Outline.FrontLength = knife.Bolster, 0.5 }, ""},
	} {
		p := full()
		c.change(&p)
		err := p.Validate()
		if (err == nil) != (c.want == "") || err != nil && (!strings.Contains(err.Error(), c.want) || strings.Contains(err.Error(), "\n")) {
			t.Errorf("%s: %v, want %q", c.what, err, c.want)
		}
	}
}

// Several at once are all there, in the order of the fields, and the first is said with how
// many more there are.
func TestAllThatIsWrong(t *testing.T) {
	p := full()
	p.Title, p.Sheath.Leather, p.Stitch.Pitch = "\xff", 99, 0
	ps, _ := p.Validate().(Problems)
	var keys []string
	for _, q := range ps {
		keys = append(keys, q.Key)
	}
	if strings.Join(keys, " ") != "title sheath.leather stitch.pitch" || !strings.HasSuffix(ps.Error(), "(and 2 more)") {
		t.Errorf("%q: %v", keys, ps)
	}
}

// A mark's thickness was measured when it was typed. Of two at one place the one on the
// point's side is first; the one on the handle's side is left where the place stands once.
func TestUnmeasured(t *testing.T) {
	p := full()
	p.Knife.Stations = at(0, 40, 100, 100, 150, 200)
	for _, c := range []struct {
		left []length.Length
		want []int
	}{
		{nil, nil}, {[]length.Length{0, 200}, []int{0, 5}}, {[]length.Length{100}, []int{3}}, {[]length.Length{100, 100}, []int{2, 3}}, {[]length.Length{40, 77}, []int{1}},
	} {
		p.Tracing.Left = c.left
		if got := p.Unmeasured(); !slices.Equal(got, c.want) {
			t.Errorf("left %v: unmeasured %v, want %v", c.left, got, c.want)
		}
	}
	p.Tracing.Left = []length.Length{40, 100, 100}
	for _, step := range []struct {
		mark int
		want []int
	}{{-1, []int{1, 2, 3}}, {6, []int{1, 2, 3}}, {4, []int{1, 2, 3}}, {2, []int{1, 3}}, {1, []int{3}}, {3, nil}, {3, nil}} {
		if p.Measured(step.mark); !slices.Equal(p.Unmeasured(), step.want) {
			t.Errorf("after mark %d: %v, want %v", step.mark, p.Unmeasured(), step.want)
		}
	}
	p.Tracing.Left, p.Source = []length.Length{40}, FromOutline
	if got := p.Unmeasured(); got != nil {
		t.Errorf("of an outline's marks %v", got)
	}
}

// A mark that is put elsewhere is measured as little as before, of two at one place as well.
func TestUnmeasuredIsTakenAlong(t *testing.T) {
	for _, c := range []struct {
		left []length.Length
		mark int
		to   string
		want []int
		now  []length.Length
	}{
		{[]length.Length{40}, 1, "41", []int{1}, []length.Length{41}}, {[]length.Length{40}, 4, "151", []int{1}, []length.Length{40}},
		{[]length.Length{100}, 3, "105", []int{3}, []length.Length{105}}, {[]length.Length{100, 150}, 2, "95", []int{3, 4}, []length.Length{100, 150}},
		{[]length.Length{100, 100}, 2, "95", []int{2, 3}, []length.Length{95, 100}}, {nil, 1, "41", nil, nil},
	} {
		p := full()
		p.Sheath.Mouth = 140
		p.Knife.Stations = at(0, 40, 100, 100, 150, 200)
		p.Tracing.Left = c.left
		before := p
		if err := set(t, &p, MarkFields(c.mark)[0], c.to); err != nil {
			t.Fatal(err)
		}
		if got := p.Unmeasured(); !slices.Equal(got, c.want) || !slices.Equal(p.Tracing.Left, c.now) || !slices.Equal(before.Tracing.Left, c.left) {
			t.Errorf("left %v, mark %d put at %s: unmeasured %v, want %v; left %v", c.left, c.mark, c.to, got, c.want, p.Tracing.Left)
		}
		if err := set(t, &p, MarkFields(c.mark)[3], "4.5"); err != nil || slices.Contains(p.Unmeasured(), c.mark) && len(c.left) < 2 {
			t.Errorf("measured there, and still %v, %v", p.Unmeasured(), err)
		}
	}
}

// What the format of the file says of single keys: what may be 0 and what must be more, and what
// may lie before the point or take away.
func TestRangesOfTheFormat(t *testing.T) {
	for _, c := range []struct {
		keys    string
		in, out length.Length
	}{
		{"fit.reach carried.reach earlier.wide sheath.mouth sheath.gap stitch.thread stitch.needle", 0.001, 0},
		{"fit.at carried.at earlier.at", -200, -200.001},
		{"fit.by carried.by", -50, -50.001},
		{"fit.by carried.by", 50, 50.001},
		{"carried.deepest carried.front carried.mouth knife.station.at knife.station.top knife.station.bottom knife.station.thick part.length part.width part.thickness", 0, -0.001},
		{"sheath.clearance sheath.handle_clearance sheath.point_room sheath.margin sheath.sanding sheath.drain stitch.first stitch.last stitch.tail stitch.measured belt.offset", 0, -0.001},
		{"stitch.pitch", 1, 0.999}, {"sheath.ease", -10, -10.001}, {"sheath.leather sheath.welt strap.thickness", 0.2, 0.199},
	} {
		for _, key := range strings.Fields(c.keys) {
			found := false
			for _, f := range columns() {
				if f.Key != key {
					continue
				}
				found = true
				if bad, out := f.Outside(c.in, length.Millimetres); out {
					t.Errorf("%s = %v: %v", key, c.in, bad)
				}
				if _, out := f.Outside(c.out, length.Millimetres); !out {
					t.Errorf("%s = %v is in its range", key, c.out)
				}
			}
			if !found {
				t.Errorf("no key %s", key)
			}
		}
	}
}
