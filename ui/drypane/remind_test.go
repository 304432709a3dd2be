package drypane

import (
	"testing"
	"time"

	"chape/project/steps"
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
