package file

import (
	"os"
	"reflect"
	"strings"
	"testing"
	"time"

	"chape/calc"
	"chape/project"
	"chape/project/clock"
	"chape/project/steps"
)

var printDay = time.Date(2026, 11, 25, 23, 50, 0, 0, time.FixedZone("", -9*3600)) // in UTC it is the 26th

// What a pattern is drawn from is the plan's whole input and nothing besides; it comes
// back from the project's own file.
func TestInputs(t *testing.T) {
	for _, name := range ours(t) {
		p, _, err := Decode(name, read(t, name))
		if err != nil {
			t.Fatal(err)
		}
		p.Fits = append(p.Fits, project.Fit{With: "paper", Note: `tight "here"`})
		p.Fits[len(p.Fits)-1].Reach = 20
		q, news := Printed(p, printDay)
		if !news {
			t.Fatalf("%s: the first print is no news", name)
		}
		data := Encode(q)
		back, _, err := Decode(name, data)
		if err != nil || !reflect.DeepEqual(back, q) {
			t.Fatalf("%s: after a save %v\n%+v\nwant\n%+v", name, err, back, q)
		}
		pattern, ok := back.Printed(p.Revision)
		if !ok || !pattern.Printed.Equal(time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)) {
			t.Errorf("%s: printed %+v", name, pattern)
		}
		drawn, err := DecodeInputs(pattern)
		if err != nil {
			t.Fatalf("%s: %v in\n%s", name, err, pattern.Inputs)
		}
		limits := calc.DefaultLimits()
		got, want := drawn.Input(limits), p.Input(limits)
		want.Outline, want.Untouched = nil, nil // what they are for is checks of the figures typed
		if !reflect.DeepEqual(got, want) || drawn.Customer.Hand != p.Customer.Hand || drawn.Customer.Edge != p.Customer.Edge {
			t.Errorf("%s: drawn from\n%+v, want\n%+v", name, drawn, p)
		}
		if drawn.Customer.Name != "" || len(drawn.Steps) > 0 || drawn.Notes != "" {
			t.Errorf("%s: the inputs hold more than inputs:\n%s", name, pattern.Inputs)
		}
	}
}

func TestPrinted(t *testing.T) {
	p := full()
	p.Patterns = nil
	p, news := Printed(p, printDay)
	if !news || len(p.Patterns) != 1 {
		t.Fatalf("the first print: %v, %+v", news, p.Patterns)
	}
	later := printDay.AddDate(0, 0, 7)
	for what, change := range map[string]func(*project.Project){
		"nothing":  func(*project.Project) {},
		"a tick":   func(p *project.Project) { p.Steps = []steps.Step{{Title: "y", Done: later}} },
		"the name": func(p *project.Project) { p.Title, p.Notes, p.Customer.Name = "x", "y", "z" },
		"the unit": func(p *project.Project) { p.Units = 1 },
		"the marks' origin": func(p *project.Project) {
			p.Source = project.FromOutline
		},
	} {
		q := p.Clone()
		change(&q)
		if q, news := Printed(q, later); news || len(q.Patterns) != 1 || q.Patterns[0].Printed != p.Patterns[0].Printed {
			t.Errorf("printed again after %s: news %v, %+v", what, news, q.Patterns)
		}
	}
	for what, change := range map[string]func(*project.Project){
		"the leather": func(p *project.Project) { p.Sheath.Leather = 4 },
		"the hand":    func(p *project.Project) { p.Customer.Hand = calc.LeftHand },
		"a mark":      func(p *project.Project) { p.Knife.Stations[1].Thick += 0.25 },
	} {
		q := p.Clone()
		change(&q)
		if q, news := Printed(q, later); !news || len(q.Patterns) != 1 || q.Patterns[0].Printed != clock.DayOf(later) || !SameInputs(q.Patterns[0], q) {
			t.Errorf("printed again with another %s: news %v, %+v", what, news, q.Patterns)
		}
		q.Revision++
		if r, news := Printed(q, later); !news || len(r.Patterns) != 2 || !reflect.DeepEqual(r.Patterns[0], p.Patterns[0]) || len(q.Patterns) != 1 {
			t.Errorf("printed under a new number: news %v, %+v", news, r.Patterns)
		}
	}
}

// The note can be put at the end of a file with comments; where it can't, that is said.
func TestAppended(t *testing.T) {
	for _, c := range []struct {
		data string
		ok   bool
	}{
		{small + "# mine", true},
		{small + "# mine\n[[pattern]]\nnumber = 7\nprinted = 2026-11-25\n[[weigh]]\nwhen = 2026-11-25T09:30:00Z\ngrams = 9 # light\n", true},
		{strings.Replace(small, "format = 1\n", "format = 1 # mine\npattern = [{ number = 7, printed = 2026-11-25 }]\n", 1), false},
	} {
		p, n, err := Decode("f.toml", []byte(c.data))
		if err != nil || !n.Comments {
			t.Fatalf("%v, %+v in\n%s", err, n, c.data)
		}
		q, _ := Printed(p, printDay)
		text, ok := Appended([]byte(c.data), q)
		if ok != c.ok {
			t.Errorf("Appended = %v, want %v:\n%s", ok, c.ok, text)
		}
		if ok && !strings.HasPrefix(string(text), c.data) {
			t.Errorf("what was there is changed:\n%s", text)
		}
	}
}

// A damaged note of an earlier pattern spoils neither the loading nor the next print.
func TestDamagedInputs(t *testing.T) {
	for _, text := range []string{"", "nonsense", "format = 99\n", "format = 1\n[sheath]\nmouth = \"far\"\n"} {
		p := full()
		p.Patterns = []project.Pattern{{Number: p.Revision, Printed: clock.DayOf(printDay), Inputs: text}}
		q, _, err := Decode("f.toml", Encode(p))
		if err != nil {
			t.Errorf("inputs %q: %v", text, err)
			continue
		}
		if _, err := DecodeInputs(q.Patterns[0]); err == nil || strings.Contains(err.Error(), "\n") {
			t.Errorf("inputs %q: read with %v", text, err)
		}
		if q, news := Printed(q, printDay); !news || !SameInputs(q.Patterns[0], q) {
			t.Errorf("inputs %q: not printed anew", text)
		}
	}
}

// However often a knife of the most marks is printed, its file stays one that can be
// saved; the numbers and dates stay all.
func TestManyPatterns(t *testing.T) {
	data, err := os.ReadFile("../../testdata/guard.toml")
	if err != nil {
		t.Fatal(err)
	}
	p, _, err := Decode("guard.toml", data)
	if err != nil {
		t.Fatal(err)
	}
	p.Notes = strings.Repeat("x", MaxSize/2-20000)
	for range 20 {
		p.Revision++
		p, _ = Printed(p, printDay)
	}
	if n := len(Encode(p)); len(p.Patterns) != 20 || n > MaxSize/2+len(p.Patterns[19].Inputs) {
		t.Errorf("%d patterns in %d bytes", len(p.Patterns), n)
	}
	if p.Patterns[0].Inputs != "" || p.Patterns[19].Inputs == "" {
		t.Error("the oldest do not go first")
	}
}
