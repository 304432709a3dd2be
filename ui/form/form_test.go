package form

import (
	"testing"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
)

// Every field that a check is mended at stands on the form, on a page that says so.
func TestChecksAreMendedOnTheForm(t *testing.T) {
	p := project.New("Test", length.Millimetres, project.Defaults())
	for name, key := range places {
		if _, ok := OfKey(key); !ok {
			t.Errorf("%s: %s stands on no page", name, key)
		}
	}
	plan, err := calc.Compute(p.Input(calc.DefaultLimits()))
	if err != nil {
		t.Fatal(err)
	}
	known := map[string]bool{}
	for name := range places {
		known[name] = true
	}
	for _, c := range plan.Checks {
		if at := PlaceOf(c, p); at.Index < 0 {
			if _, ok := OfKey(at.Key); !ok {
				t.Errorf("%s leads to %q", c.Name, at.Key)
			}
		}
		if !known[c.Name] {
			t.Errorf("the check %q is mended nowhere", c.Name)
		}
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
