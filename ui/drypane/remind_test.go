package drypane

import (
	"testing"
	"time"

	"chape/project/steps"
	"chape/project/weigh"
)

// The hold to weigh it again stands ahead of the drying step, is moved rather than
// doubled, and is over with the next weighing.
func TestRemind(t *testing.T) {
	list := []steps.Step{{Title: "Form it", Done: noon}, {Title: "Let it dry", Short: "DRY", Hold: 24 * time.Hour, Started: noon}}
	must := func(list []steps.Step, err error) []steps.Step {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return list
	}
	one := must(remind(list, noon.Add(3*time.Hour), noon))
	if len(one) != 3 || one[1].Short != againShort || !one[1].NotBefore().Equal(noon.Add(3*time.Hour)) || one[2].Short != "DRY" || !one[2].Started.Equal(noon) {
		t.Fatalf("remind: %+v", one)
	}
	moved := must(remind(one, noon.Add(6*time.Hour), noon.Add(time.Hour)))
	if len(moved) != 3 || !moved[1].NotBefore().Equal(noon.Add(6*time.Hour)) {
		t.Fatalf("reminded of another time: %+v", moved)
	}
	weighed := must(reminded(moved, noon.Add(2*time.Hour)))
	if weighed[1].Done.IsZero() || reminder(weighed) >= 0 || weighed[1].HoldState(noon.Add(7*time.Hour)) == steps.HoldDue {
		t.Errorf("weighed early: %+v", weighed)
	}
	if late := must(reminded(moved, noon.Add(8*time.Hour))); late[1].Done.IsZero() || !late[1].Ended.IsZero() {
		t.Errorf("weighed when it was due: %+v", late)
	}
	if same := must(reminded(list, noon)); len(same) != 2 {
		t.Errorf("nothing to be reminded of: %+v", same)
	}
	if done := must(remind(list[:1], noon.Add(time.Hour), noon)); len(done) != 2 || done[1].Short != againShort {
		t.Errorf("all steps done: %+v", done)
	}
}

// A key starts the hold, the page says till when, and the next weighing ends it.
func TestWeighAgain(t *testing.T) {
	p := sheath(withBefore(zumdahl(6)))
	p.Steps = []steps.Step{{Title: "Let it dry", Short: "DRY", Hold: 24 * time.Hour, Started: noon}}
	r := newRig(t, p, 78, 19)
	r.Shows("weigh it again about ", "a starts a hold till then")
	r.Keys("a")
	if list := r.Project.Steps; len(list) != 2 || list[0].Short != againShort || list[0].HoldState(r.Now) != steps.HoldRunning {
		t.Fatalf("steps %+v", list)
	}
	r.Shows("a hold runs till ")
	r.Wait(time.Hour).Type("120").Keys("enter")
	if list := r.Project.Steps; len(list) != 2 || list[0].Done.IsZero() {
		t.Errorf("weighed: steps %+v", list)
	}
	r.Shows("a starts a hold till then").Wait(48 * time.Hour).Shows("weigh it again now")
	r.Keys("a")
	if len(r.Project.Steps) != 2 {
		t.Errorf("a hold that is over was started: %+v", r.Project.Steps)
	}
}

// Two weighings that agree are dry by weight, with no curve or any.
func TestDryByWeight(t *testing.T) {
	for _, list := range [][]weigh.Weighing{
		append(withBefore(zumdahl(9)), weigh.Weighing{When: noon.Add(10 * time.Hour), Grams: 101.5, State: drying}, weigh.Weighing{When: noon.Add(13 * time.Hour), Grams: 101.4, State: drying}),
		{{When: noon, Grams: 101.5, State: drying}, {When: noon.Add(4 * time.Hour), Grams: 101.4, State: drying}},
	} {
		r := newRig(t, sheath(list), 78, 19)
		r.Wait(14 * time.Hour).Shows("dry by weight: 101.4 g at ")
		r.Lacks("weigh it again")
	}
}
