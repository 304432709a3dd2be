package steps

import (
	"errors"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"chape/project/clock"
)

// noon is a fixed time for tests, with the monotonic reading that time.Now has
// left out.
var noon = time.Date(2026, 11, 26, 12, 0, 0, 0, time.UTC) // a Thursday

func must(t *testing.T) func([]Step, error) []Step {
	return func(s []Step, err error) []Step {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
}

func shorts(steps []Step) string {
	var names []string
	for _, s := range steps {
		names = append(names, s.Short)
	}
	return strings.Join(names, " ")
}

func TestLists(t *testing.T) {
	for name, list := range map[string][]Step{"form, then sew": FormThenSew(Whole), "sew, then form": SewThenForm(Whole)} {
		if len(list) != 37 { // thirty-six, the loop's in two: its cement waits
			t.Errorf("%s has %d rows, want 37", name, len(list))
		}
		seen := map[string]bool{}
		for i, s := range list {
			if s.Title == "" || s.Short == "" || len(s.Short) > MaxShort || s.Short != ShortFrom(s.Short) {
				t.Errorf("%s, step %d: title %q, short %q", name, i, s.Title, s.Short)
			}
			if seen[s.Short] {
				t.Errorf("%s: short name %q twice", name, s.Short)
			}
			seen[s.Short] = true
			if err := clock.CheckWindow(s.Hold, s.Latest); err != nil {
				t.Errorf("%s, step %d: %v", name, i, err)
			}
		}
	}
	a, b := shorts(FormThenSew(Whole)), shorts(SewThenForm(Whole))
	want := "CURE WRAP WET FORM LOOSEN 1 LOOSEN 2 DRY DRYFIT SAND GROOVE STEPOFF DRILL BACK SEW BEVEL"
	if !strings.Contains(a, want) {
		t.Errorf("form, then sew: %s\nwant in it %s", a, want)
	}
	if want := "CURE SAND GROOVE STEPOFF DRILL BACK SEW WRAP WET FORM LOOSEN 1 LOOSEN 2 DRY DRYFIT BEVEL"; !strings.Contains(b, want) {
		t.Errorf("sew, then form: %s\nwant in it %s", b, want)
	}
	FormThenSew(Whole)[0].Title = "changed"
	if FormThenSew(Whole)[0].Title == "changed" {
		t.Error("the list is shared")
	}
}

// Hold times are common practice, no source.
func TestListHolds(t *testing.T) {
	want := map[string][2]time.Duration{
		"FOLD": {2 * time.Hour}, "LAP": {10 * time.Minute, 15 * time.Minute},
		"CEMENT 1": {10 * time.Minute, 15 * time.Minute}, "CEMENT 2": {10 * time.Minute, 15 * time.Minute},
		"CURE": {12 * time.Hour}, "LOOSEN 1": {time.Hour}, "LOOSEN 2": {3 * time.Hour},
		"DRY": {24 * time.Hour, 48 * time.Hour}, "SEAL": {12 * time.Hour},
	}
	for _, s := range FormThenSew(Whole) {
		if got := [2]time.Duration{s.Hold, s.Latest}; got != want[s.Short] {
			t.Errorf("%s holds %v, want %v", s.Short, got, want[s.Short])
		}
	}
}

// Cautions stand in the step that needs them.
func TestListCautions(t *testing.T) {
	want := map[string]string{
		"WRAP": "never a palm", "FORM": "never a palm", "CEMENT 1": "flame", "CEMENT 2": "flame", "LAP": "flame", "MOUTH": "flame", "DYE 2": "flame", "DYE": "flame",
		"DRILL": "No gloves", "LOOP": "No finger behind", "STRAP": "No finger behind", "SAND": "fingers off the drum", "BEVEL": "mask",
		"BURNISH": "no gloves", "DRY": "40 °C", "WET": "40 °C",
		"SEAL": "Rags with oil", "SEW": "dye", "RETENTION": "No hand", "CARE": "measured as ISO 4045 says", "MEASURE": "Tape",
	}
	for _, s := range FormThenSew(Whole) {
		if w := want[s.Short]; !strings.Contains(s.Caution, w) {
			t.Errorf("%s: caution %q lacks %q", s.Short, s.Caution, w)
		}
	}
}

func TestTickInOrder(t *testing.T) {
	must := must(t)
	steps := []Step{{Title: "a"}, {Title: "b"}, {Title: "c"}}
	if got := Current(nil); got != -1 {
		t.Errorf("Current(nil) = %d, want -1", got)
	}
	steps = must(Tick(steps, 0, noon))
	steps = must(Skip(steps, 1, true))
	if got := Current(steps); got != 2 {
		t.Errorf("Current = %d, want 2: done and skipped ones are passed over", got)
	}
	if got := Next(steps); got != -1 {
		t.Errorf("Next = %d, want -1", got)
	}
	steps = must(Tick(steps, 2, noon.Add(time.Hour)))
	if Current(steps) != -1 {
		t.Error("a step is in hand when all are done")
	}
	// The last tick is the latest one, whatever its place.
	steps = must(Tick(steps, 1, noon.Add(2*time.Hour)))
	if got := LastTick(steps); got != 1 {
		t.Errorf("LastTick = %d, want 1", got)
	}
	steps = must(Untick(steps, 1))
	if got := LastTick(steps); got != 2 {
		t.Errorf("LastTick = %d, want 2", got)
	}
	if _, err := Skip(steps, 0, true); err == nil {
		t.Error("a done step was skipped")
	}
}

// No function changes the list it is given: undo keeps it.
func TestStepsAreValues(t *testing.T) {
	start := []Step{{Title: "a", Hold: time.Hour}, {Title: "b"}, {Title: "c"}}
	running, err := StartHold(start, 0, noon)
	if err != nil {
		t.Fatal(err)
	}
	list := running[:2:3] // room behind the end, where an append would write
	before := slices.Clone(list)
	calls := map[string]func() ([]Step, error){
		"Tick":      func() ([]Step, error) { return Tick(list, 1, noon) },
		"Untick":    func() ([]Step, error) { return Untick(list, 1) },
		"Skip":      func() ([]Step, error) { return Skip(list, 1, true) },
		"StartHold": func() ([]Step, error) { return StartHold(list, 0, noon.Add(time.Minute)) },
		"EndEarly":  func() ([]Step, error) { return EndEarly(list, 0, noon.Add(time.Minute)) },
		"Extend":    func() ([]Step, error) { return Extend(list, 0, noon, time.Minute) },
		"SetHold":   func() ([]Step, error) { return SetHold(list, 1, time.Minute, 0) },
		"Add":       func() ([]Step, error) { return Add(list, 1, Step{Title: "new"}) },
		"Remove":    func() ([]Step, error) { return Remove(list, 1) },
		"Move":      func() ([]Step, error) { s, _, err := Move(list, 0, 1); return s, err },
		"Rename":    func() ([]Step, error) { return Rename(list, 1, "x", "X") },
		"SetNote":   func() ([]Step, error) { return SetNote(list, 1, "x") },
		"AddSpent":  func() ([]Step, error) { return AddSpent(list, 1, time.Minute) },
		"SetSpent":  func() ([]Step, error) { return SetSpent(list, 1, time.Minute) },
	}
	for name, call := range calls {
		out, err := call()
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		for i := range out {
			out[i].Title = "scribbled"
		}
		if !reflect.DeepEqual(list, before) || running[2].Title != "c" {
			t.Fatalf("%s changed the list it was given", name)
		}
	}
}

func TestEditSteps(t *testing.T) {
	must := must(t)
	steps := must(Add(nil, -1, Step{Title: "Über den Rand"}))
	if steps[0].Short != "UBER" {
		t.Errorf("short name %q, want UBER", steps[0].Short)
	}
	steps = must(Add(steps, 0, Step{Title: "second"}))
	steps = must(Add(steps, 0, Step{Title: "between"}))
	if got := shorts(steps); got != "UBER BETWEEN SECOND" {
		t.Errorf("after adding: %s", got)
	}
	moved, to, err := Move(steps, 0, 5)
	if err != nil || to != 2 || shorts(moved) != "BETWEEN SECOND UBER" {
		t.Errorf("Move down: %s, %d, %v", shorts(moved), to, err)
	}
	moved, to, err = Move(moved, 2, -1)
	if err != nil || to != 1 || shorts(moved) != "BETWEEN UBER SECOND" {
		t.Errorf("Move up: %s, %d, %v", shorts(moved), to, err)
	}
	if _, err := Rename(steps, 0, "x", "a  b"); err == nil {
		t.Error("a short name with two spaces together was taken")
	}
	steps = must(Rename(steps, 0, "Long\x1b[31m title\n", "long"))
	if steps[0].Title != "Long␛[31m title" || steps[0].Short != "LONG" {
		t.Errorf("renamed to %q, %q", steps[0].Title, steps[0].Short)
	}
	if _, err := Add(steps, 0, Step{Title: " \t"}); err == nil {
		t.Error("a step without a title was added")
	}
	steps = must(SetHold(steps, 1, time.Hour, 0))
	steps = must(StartHold(steps, 1, noon))
	if _, err := Remove(steps, 1); err == nil {
		t.Error("a step whose hold runs was removed")
	}
	steps = must(Remove(steps, 0))
	if got := shorts(steps); got != "BETWEEN SECOND" {
		t.Errorf("after removing: %s", got)
	}
}

// An index from a list that has changed since is refused, not a panic.
func TestNoSuchStep(t *testing.T) {
	for _, i := range []int{-2, 1, 99} {
		list := []Step{{Title: "a"}}
		if _, err := Tick(list, i, noon); !errors.Is(err, errNoStep) {
			t.Errorf("Tick(%d): %v", i, err)
		}
		if _, err := Remove(list, i); !errors.Is(err, errNoStep) {
			t.Errorf("Remove(%d): %v", i, err)
		}
		if _, _, err := Move(list, i, 1); !errors.Is(err, errNoStep) {
			t.Errorf("Move(%d): %v", i, err)
		}
		if _, err := Add(list, i, Step{Title: "b"}); !errors.Is(err, errNoStep) {
			t.Errorf("Add(%d): %v", i, err)
		}
	}
}

func TestWorkClock(t *testing.T) {
	at := noon
	var c WorkClock
	sum := func() time.Duration { _, d := c.Take(); return d }
	seconds := func(n int, held bool) {
		for range n {
			at = at.Add(time.Second)
			c = c.Look(at, held)
		}
	}
	seconds(60, false)
	if sum() != 0 {
		t.Error("it counts while off")
	}
	c = c.On(at)
	seconds(300, false)
	if got := sum(); got != 5*time.Minute {
		t.Errorf("after 5 min: %v", got)
	}
	c = c.Look(at, true)
	seconds(3600, true)
	c = c.Look(at, false)
	if got := sum(); got != 5*time.Minute {
		t.Errorf("a hold of 1 h was counted: %v", got)
	}
	c = c.Key(at)
	seconds(3*3600, false)
	if got := sum(); got != 35*time.Minute {
		t.Errorf("3 h without a key: %v, want 35m", got)
	}
	c = c.Key(at)
	at = at.Add(8 * time.Hour) // the machine sleeps, or the clock is set
	c = c.Look(at, false)
	at = at.Add(-9 * time.Hour)
	c = c.Look(at, false)
	if got := sum(); got != 35*time.Minute {
		t.Errorf("a leap was counted: %v", got)
	}
	seconds(60, false)
	c = c.Off(at)
	seconds(60, false)
	var took time.Duration
	if c, took = c.Take(); took != 36*time.Minute || sum() != 0 {
		t.Errorf("took %v, left %v", took, sum())
	}
}

// Seconds that the bench counted leave nothing on a step that is done, and do on one in hand.
func TestAddWorked(t *testing.T) {
	done := time.Date(2026, 11, 20, 12, 0, 0, 0, time.UTC)
	for _, c := range []struct {
		s       Step
		d, want time.Duration
	}{
		{Step{Title: "Sew", Done: done}, 29 * time.Second, 0},
		{Step{Title: "Sew", Done: done, Spent: 10 * time.Second}, 5 * time.Second, 0},
		{Step{Title: "Sew", Done: done}, LeastSpent, LeastSpent},
		{Step{Title: "Sew", Done: done, Spent: time.Hour}, time.Second, time.Hour + time.Second},
		{Step{Title: "Sew"}, time.Second, time.Second},
	} {
		got, err := AddWorked([]Step{c.s}, 0, c.d)
		if err != nil || got[0].Spent != c.want {
			t.Errorf("AddWorked(%+v, %v) = %+v, %v; want %v", c.s, c.d, got, err, c.want)
		}
	}
}
