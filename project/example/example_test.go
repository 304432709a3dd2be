package example

import (
	"strings"
	"testing"
	"time"

	"chape/calc"
	"chape/project/steps"
)

func TestLoadIsInTheMiddleOfDrying(t *testing.T) {
	for _, now := range []time.Time{
		told,
		time.Date(2027, time.March, 28, 1, 30, 5, 999, time.FixedZone("", -5*3600)),
		time.Date(2031, time.July, 1, 12, 0, 0, 0, time.UTC),
	} {
		p := Load(now)
		if err := p.Validate(); err != nil {
			t.Fatalf("Load(%v).Validate() = %v", now, err)
		}
		states := map[steps.HoldState]int{}
		for _, s := range p.Steps {
			states[s.HoldState(now)]++
		}
		if states[steps.HoldRunning] != 1 || states[steps.HoldDue] != 1 || states[steps.HoldLate] != 0 {
			t.Errorf("Load(%v): holds running, due, late = %d, %d, %d, want 1, 1, 0", now,
				states[steps.HoldRunning], states[steps.HoldDue], states[steps.HoldLate])
		}
		if d := p.Customer.Due.Sub(now); d < 20*24*time.Hour || d > 23*24*time.Hour {
			t.Errorf("Load(%v): due in %v, want about three weeks", now, d)
		}
		if last := p.Weigh[len(p.Weigh)-1].When; last.After(now) || now.Sub(last) > time.Hour {
			t.Errorf("Load(%v): last weighed %v", now, last)
		}
	}
}

func TestLoadSaysItIsInvented(t *testing.T) {
	p := Load(told)
	if !strings.Contains(p.Title, "Example") || !strings.Contains(p.Notes, "invented") {
		t.Errorf("title %q, notes %q: they do not say that it is an invented example", p.Title, p.Notes)
	}
}

func TestLoadSharesNothing(t *testing.T) {
	p := Load(told)
	p.Steps[0].Title = "x"
	if q := Load(told); q.Steps[0].Title == "x" {
		t.Error("two calls of Load share their steps")
	}
}

func TestTheExampleCanBePlanned(t *testing.T) {
	p := Load(told)
	plan, err := calc.Compute(p.Input(calc.DefaultLimits()))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range plan.Checks {
		if c.Level == calc.Warn {
			t.Errorf("the example warns: %s", c.Text(p.Units))
		}
	}
}
