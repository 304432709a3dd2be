package form

import (
	"math"
	"slices"
	"testing"

	"chape/calc"
	"chape/calc/knife"
	"chape/calc/length"
	"chape/project"
)

// Every check leads to the field that its remedy names, which stands on a page of the form;
// one of a field that has no say here leads to the mouth.
func TestChecksAreMendedOnTheForm(t *testing.T) {
	p := project.New("Test", length.Millimetres, project.Defaults())
	p.Belt.Centred, p.Belt.Offset = false, 1
	plan, err := calc.Compute(p.Input(calc.DefaultLimits()))
	if err != nil {
		t.Fatal(err)
	}
	led := map[string]string{}
	for _, c := range plan.Checks {
		at := PlaceOf(c, p)
		if _, ok := OfKey(at.Key); !ok || at.Index >= 0 {
			t.Errorf("%s leads to %+v", c.Name, at)
		}
		led[c.Name] = at.Key
	}
	for name, key := range map[string]string{"tab": "belt.offset", "holes": "belt.tab", "squeeze": "sheath.ease", "untouched": "knife.outline.blade"} {
		if led[name] != key {
			t.Errorf("%s leads to %q, want %q", name, led[name], key)
		}
	}
	if at := PlaceOf(calc.Check{Mend: "strap.at"}, p); at.Key != "sheath.mouth" {
		t.Errorf("where no strap is, it leads to %+v", at)
	}
	sum := 0
	for page := range Page(Pages) {
		w, n := Count(plan, p, page)
		sum += w + n
	}
	if warn, note := Concerns(plan); sum != len(warn)+len(note) {
		t.Errorf("%d on the pages, %d in the plan", sum, len(warn)+len(note))
	}
}

// The first field that differs is named, of a list too; rows that came or went are none.
func TestChanged(t *testing.T) {
	a := project.New("Test", length.Millimetres, project.Defaults())
	a.Source = project.FromStations
	b := a.Clone()
	if _, ok := Changed(a, b); ok {
		t.Error("nothing differs")
	}
	b.Knife.Stations[3].Thick++
	if f, ok := Changed(a, b); !ok || f.Key != "knife.station.thick" || f.Index != 3 {
		t.Errorf("%s of %d, %v", f.Key, f.Index, ok)
	}
	b.Sheath.Ease++
	if f, ok := Changed(a, b); !ok || f.Key != "sheath.ease" {
		t.Errorf("%s, %v", f.Key, ok)
	}
	b = a.Clone()
	b.Knife.Stations = b.Knife.Stations[:5]
	if f, ok := Changed(a, b); ok {
		t.Errorf("%s, and rows have gone", f.Key)
	}
}

// Only what warns now and did not before is new.
func TestNew(t *testing.T) {
	plan := func(levels ...calc.Level) *calc.Plan {
		p := &calc.Plan{}
		for i, l := range levels {
			p.Checks = append(p.Checks, calc.Check{Name: string(rune('a' + i)), Level: l})
		}
		return p
	}
	for _, c := range []struct {
		now, before *calc.Plan
		want        string
	}{
		{plan(calc.OK, calc.Warn), plan(calc.OK, calc.Note), "b"},
		{plan(calc.Warn, calc.Warn), plan(calc.Warn, calc.OK), "b"},
		{plan(calc.Warn), plan(calc.Warn), ""},
		{plan(calc.Note), plan(calc.OK), ""},
		{plan(calc.Warn), nil, "a"},
		{nil, plan(calc.Warn), ""},
	} {
		if got, _ := New(c.now, c.before); got.Name != c.want {
			t.Errorf("new is %q, want %q", got.Name, c.want)
		}
	}
}

// A note on a back that is blunt leads not to the choice of blunt or sharp, but to what moves
// the fold: the gap of the nearest mark, or the mouth where handle or guard hold it off.
func TestBackOffTheFoldIsMendedAtItsGap(t *testing.T) {
	p := project.New("Test", length.Millimetres, project.Defaults())
	p.Source = project.FromStations
	back := func() calc.Check {
		t.Helper()
		plan, err := calc.Compute(p.Input(calc.DefaultLimits()))
		if err != nil {
			t.Fatal(err)
		}
		i := slices.IndexFunc(plan.Checks, func(c calc.Check) bool { return c.Name == "back" })
		return plan.Checks[i]
	}
	for i := range p.Knife.Stations { // the back falls away in the middle of the blade
		if at := p.Knife.Stations[i].At.MM(); at > 20 && at < 70 {
			p.Knife.Stations[i].Top += 4
		}
	}
	c := back()
	if at := PlaceOf(c, p); c.Level != calc.Note || at.Key != "knife.station.top" || math.Abs(p.Knife.Stations[at.Index].At.MM()-c.At) > 15 {
		t.Errorf("%q leads to %+v", c.Text(length.Millimetres), at)
	}
	p.Knife.Back = knife.Sharp
	if at := PlaceOf(back(), p); at.Key != "knife.back" {
		t.Errorf("a sharp back leads to %+v", at)
	}
}

// What an undo leaves is said without holes: a choice has no unit, and nothing is empty.
func TestStands(t *testing.T) {
	p := project.New("Test", length.Millimetres, project.Defaults())
	for key, want := range map[string]string{
		"customer.edge": "it is rear now",
		"customer.name": "it is empty now",
		"sheath.gap":    "it is 7.5 mm now",
	} {
		f := fieldOf(t, key)
		if got := Stands(f, p, f.NameIn(p)+" x"); got != want {
			t.Errorf("%s: %q, want %q", key, got, want)
		}
	}
}

func fieldOf(t *testing.T, key string) project.Field {
	t.Helper()
	for _, f := range project.Fields {
		if f.Key == key {
			return f
		}
	}
	t.Fatalf("no field %q", key)
	return project.Field{}
}

// What warns is news once; the checks that warn or note come in turn, and from the first
// again after a change.
func TestWatch(t *testing.T) {
	well := &calc.Plan{}
	bad := &calc.Plan{Checks: []calc.Check{{Name: "a", Level: calc.Note}, {Name: "b", Level: calc.Warn}}}
	var w Watch
	w.Begin(well)
	if c, ok := w.News(bad); !ok || c.Name != "b" {
		t.Errorf("news %q, %v", c.Name, ok)
	}
	if c, ok := w.News(bad); ok {
		t.Errorf("%q again", c.Name)
	}
	for _, want := range []string{"b", "a", "b"} {
		if c, ok := w.Next(bad); !ok || c.Name != want {
			t.Errorf("next %q, want %q", c.Name, want)
		}
	}
	w.News(well)
	if c, ok := w.Next(well); ok {
		t.Errorf("%q, and all is well", c.Name)
	}
	if c, _ := w.Next(bad); c.Name != "b" {
		t.Errorf("after a change %q first", c.Name)
	}
	if text, warns := Counts(bad); text != "! 1 * 1" || !warns {
		t.Errorf("counted %q, %v", text, warns)
	}
}
