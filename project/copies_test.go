package project

import (
	"reflect"
	"testing"
	"time"

	"chape/calc/length"
	"chape/project/steps"
)

// shared names the first slice that two values have in common; "" where they have none.
func shared(a, b reflect.Value, path string) string {
	switch a.Kind() {
	case reflect.Slice:
		if a.Len() > 0 && b.Len() > 0 && a.Pointer() == b.Pointer() {
			return path
		}
		for i := range min(a.Len(), b.Len()) {
			if s := shared(a.Index(i), b.Index(i), path); s != "" {
				return s
			}
		}
	case reflect.Struct:
		if a.Type() == reflect.TypeFor[time.Time]() {
			return ""
		}
		for i := range a.NumField() {
			if s := shared(a.Field(i), b.Field(i), path+"."+a.Type().Field(i).Name); s != "" {
				return s
			}
		}
	case reflect.Map, reflect.Pointer, reflect.Interface, reflect.Chan, reflect.Func:
		if !a.IsNil() {
			return path + ", which no copy can be sure of"
		}
	}
	return ""
}

// empty names the first slice of a project with nothing in it.
func empty(v reflect.Value, path string) string {
	for i := range v.NumField() {
		f, name := v.Field(i), path+"."+v.Type().Field(i).Name
		if f.Kind() == reflect.Slice && f.Len() == 0 {
			return name
		}
		if f.Kind() == reflect.Struct && f.Type() != reflect.TypeFor[time.Time]() {
			if s := empty(f, name); s != "" {
				return s
			}
		}
	}
	return ""
}

// A copy is the same and shares nothing, whatever lists a project comes to have.
func TestCloneSharesNothing(t *testing.T) {
	p := everything()
	if name := empty(reflect.ValueOf(p), "project"); name != "" {
		t.Fatalf("%s is empty here: a copy that shares it goes unseen", name)
	}
	for what, q := range map[string]Project{"a copy": p.Clone(), "a new one": New("x", length.Millimetres, p)} {
		if name := shared(reflect.ValueOf(p), reflect.ValueOf(q), "project"); name != "" {
			t.Errorf("%s shares %s", what, name)
		}
	}
	if !reflect.DeepEqual(p.Clone(), p) {
		t.Error("a copy is another project")
	}
	if d := p.Drawn(); shared(reflect.ValueOf(p), reflect.ValueOf(d), "project") != "" || !reflect.DeepEqual(p, everything()) {
		t.Errorf("what it is drawn from shares %s, or was changed", shared(reflect.ValueOf(p), reflect.ValueOf(d), "project"))
	}
}

// What undo goes back to is as it was: a change of any field leaves every earlier state alone,
// even one that was never copied.
func TestSetLeavesEarlierStates(t *testing.T) {
	for _, f := range columns() {
		in, _ := just(f)
		p := everything()
		before := p
		for _, v := range in {
			_ = f.Set(&p, v) // taken or refused
			if !reflect.DeepEqual(before, everything()) {
				t.Fatalf("%s = %.20v changes an earlier state", f.Key, v)
			}
		}
	}
	for name, change := range map[string]func(*Project){
		"a pattern printed again": func(p *Project) { p.Note(Pattern{Number: 1, Inputs: "other"}) },
		"another pattern":         func(p *Project) { p.Note(Pattern{Number: 9}) },
		"a mark measured":         func(p *Project) { p.Tracing.Left = []length.Length{p.Knife.Stations[2].At, 40}; p.Measured(2) },
		"the other unit":          func(p *Project) { p.BeginIn(length.Inches) },
		"the outline again":       func(p *Project) { _ = p.FillMarks() },
		"no loop any more":        func(p *Project) { q := *p; q.Belt.Loop = 1; q.Follow(*p) },
	} {
		before := everything()
		p := before
		if change(&p); !reflect.DeepEqual(before, everything()) {
			t.Errorf("%s changes an earlier state", name)
		}
	}
}

// What is refused leaves the project as it was, to the last list.
func TestRefusedChangesNothing(t *testing.T) {
	for _, f := range columns() {
		_, out := just(f)
		if f.Key == "knife.tracing.left" { // words that are no places say nothing
			continue
		}
		for _, v := range out {
			p := everything()
			if !f.ranged { // the screens measure another length for it
				v = length.Length(1e6)
			}
			if err := f.Set(&p, v); err == nil {
				t.Errorf("%s = %.20v is taken", f.Key, v)
			}
			if !reflect.DeepEqual(p, everything()) {
				t.Fatalf("%s = %.20v is refused, and changes the project", f.Key, v)
			}
		}
	}
}

// The pattern of a number is put in the place of the one before, or behind all of them.
func TestNoteAndPrinted(t *testing.T) {
	p := everything()
	later := p.Patterns[1].Printed.AddDate(0, 0, 7)
	p.Note(Pattern{Number: 2, Printed: later, Inputs: "new"})
	p.Note(Pattern{Number: 7, Inputs: "seven"})
	if len(p.Patterns) != 3 || p.Patterns[1] != (Pattern{2, later, "new"}) || p.Patterns[2].Number != 7 {
		t.Errorf("patterns %+v", p.Patterns)
	}
	if q, ok := p.Printed(7); !ok || q.Inputs != "seven" {
		t.Errorf("number 7 is %+v, %v", q, ok)
	}
	if q, ok := p.Printed(3); ok || q != (Pattern{}) {
		t.Errorf("number 3 is %+v, %v", q, ok)
	}
}

// The quote that counts: the accepted one last accepted, the later in the list on one day; else
// the one made last.
func TestStanding(t *testing.T) {
	on := func(d int) time.Time { return time.Date(2026, 11, d, 0, 0, 0, 0, time.UTC) }
	for _, c := range []struct {
		accepted []int // day, 0: not
		want     int
	}{{nil, -1}, {[]int{0}, 0}, {[]int{0, 0, 0}, 2}, {[]int{5, 0, 0}, 0}, {[]int{5, 7, 6}, 1}, {[]int{5, 5, 0}, 1}, {[]int{0, 9, 0}, 1}, {[]int{0, 0, 3}, 2}} {
		var p Project
		for _, d := range c.accepted {
			q := Quote{Date: on(1)}
			if d > 0 {
				q.Accepted = on(d)
			}
			p.Quotes = append(p.Quotes, q)
		}
		if got := p.Standing(); got != c.want {
			t.Errorf("accepted on %v: %d counts, want %d", c.accepted, got, c.want)
		}
	}
}

// A list is emptied and made longer by Resize, its rows are bound by At.
func TestLists(t *testing.T) {
	for _, l := range Lists {
		p := everything()
		l.Resize(&p, 3)
		if l.Rows(&p) != 3 {
			t.Errorf("%s has %d rows of 3", l.Key, l.Rows(&p))
		}
		for _, f := range l.Columns {
			in, _ := just(f)
			g, was := f.At(2), f.At(1).Kept(&p)
			g.Keep(&p, in[0])
			if g.Index != 2 || f.Index != -1 || !reflect.DeepEqual(g.Kept(&p), in[0]) || !reflect.DeepEqual(f.At(1).Kept(&p), was) {
				t.Errorf("%s of row 3 is kept as %v, in row 2 stands %v", f.Key, g.Kept(&p), f.At(1).Kept(&p))
			}
		}
		if l.Resize(&p, 0); l.Rows(&p) != 0 {
			t.Errorf("%s is not emptied", l.Key)
		}
		p = everything()
		if l.Resize(&p, l.Most+1); p.Validate() == nil {
			t.Errorf("%d rows of %s will do", l.Most+1, l.Key)
		}
		if ps, _ := p.Validate().(Problems); ps.Error() == "" {
			t.Errorf("%s: nothing said", l.Key)
		} else if _, ok := ps.For(l.Key, -1); !ok {
			t.Errorf("%d rows of %s: %v", l.Most+1, l.Key, ps[0])
		}
	}
	if mostSteps != steps.Most {
		t.Error("a file holds more steps than a list may have")
	}
}
