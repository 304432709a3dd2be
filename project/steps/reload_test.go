package steps_test

import (
	"testing"
	"time"

	"chape/project"
	"chape/project/file"
	"chape/project/steps"
)

// reload writes a project and reads it again, as when the program was killed.
func reload(t *testing.T, p project.Project) project.Project {
	t.Helper()
	again, _, err := file.Decode("test.toml", file.Encode(p))
	if err != nil {
		t.Fatal(err)
	}
	return again
}

// steps.Holds live in the file alone: killed at any moment and opened again, on this machine or
// one in another zone, each falls due at the same instant and is told once.
func TestHoldsSurviveTheFile(t *testing.T) {
	p := project.Defaults()
	loc, err := time.LoadLocation("Europe/Berlin")
	if err != nil {
		t.Fatal(err)
	}
	start := time.Date(2026, 10, 24, 20, 0, 0, 123456789, loc) // the night the clocks go back
	p.Steps = steps.FormThenSew(steps.Whole)
	for i := range p.Steps {
		if p.Steps[i].HasHold() {
			if p.Steps, err = steps.StartHold(p.Steps, i, start.Add(time.Duration(i)*time.Minute)); err != nil {
				t.Fatal(err)
			}
		}
	}
	p = reload(t, p)
	want := steps.Holds(p.Steps, "a")
	if len(want) != 9 {
		t.Fatalf("%d holds after the first reload, want 9", len(want))
	}
	told := map[int]int{}
	for h := range 60 { // every hour: killed, opened again, watched for a while
		p = reload(t, p)
		now := start.Add(time.Duration(h) * time.Hour)
		if h%2 == 1 {
			now = now.UTC()
		}
		for i, got := range steps.Holds(p.Steps, "a") {
			if w := want[i]; !got.Due.Equal(w.Due) || !got.LookBy.Equal(w.LookBy) || got.State(now) != w.State(now) {
				t.Fatalf("after %d h: %+v, want %+v", h, got, w)
			}
		}
		var w steps.Watch
		w.Observe(steps.Holds(p.Steps, "a"), now)
		for range 60 {
			now = now.Add(time.Minute - time.Second)
			for _, e := range w.Observe(steps.Holds(p.Steps, "a"), now) {
				if e.Kind == steps.FallsDue {
					told[e.Hold.Step]++
				}
			}
		}
	}
	for _, h := range want {
		if told[h.Step] != 1 {
			t.Errorf("%s was told %d times as it fell due", h.Short, told[h.Step])
		}
	}
}

// An early end, an extension, a tick and the minutes are kept as well.
func TestStepRecordsSurviveTheFile(t *testing.T) {
	p := project.Defaults()
	noon := time.Date(2026, 11, 26, 12, 0, 0, 0, time.UTC)
	must := func(list []steps.Step, err error) []steps.Step {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return list
	}
	p.Steps = []steps.Step{{Title: "Dry", Short: "DRY", Hold: 24 * time.Hour, Latest: 48 * time.Hour}, {Title: "Sand", Caution: "mask"}}
	p.Steps = must(steps.StartHold(p.Steps, 0, noon))
	p.Steps = must(steps.Extend(p.Steps, 0, noon.Add(time.Hour), 20*time.Minute))
	p.Steps = must(steps.EndEarly(p.Steps, 0, noon.Add(2*time.Hour)))
	p.Steps = must(steps.Tick(p.Steps, 0, noon.Add(3*time.Hour)))
	p.Steps = must(steps.SetNote(must(steps.AddSpent(p.Steps, 0, 83*time.Second)), 0, "in the cellar"))
	p.Steps = must(steps.Skip(p.Steps, 1, true))
	for i, got := range reload(t, p).Steps {
		w := p.Steps[i]
		if !got.Started.Equal(w.Started) || !got.Ended.Equal(w.Ended) || !got.Done.Equal(w.Done) {
			t.Errorf("step %d: times %v %v %v, want %v %v %v", i, got.Started, got.Ended, got.Done, w.Started, w.Ended, w.Done)
		}
		got.Started, got.Ended, got.Done = w.Started, w.Ended, w.Done
		if got != w {
			t.Errorf("step %d: %+v, want %+v", i, got, w)
		}
	}
}
