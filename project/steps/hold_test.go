package steps

import (
	"errors"
	"slices"
	"testing"
	"time"
	_ "time/tzdata" // the same zones everywhere

	"chape/project/clock"
)

func berlin(t *testing.T) *time.Location {
	t.Helper()
	loc, err := time.LoadLocation("Europe/Berlin")
	if err != nil {
		t.Fatal(err)
	}
	return loc
}

func TestHoldStates(t *testing.T) {
	must := must(t)
	steps := []Step{{Title: "dry", Hold: 24 * time.Hour, Latest: 48 * time.Hour}, {Title: "look", Latest: time.Hour}, {Title: "none"}}
	if got := (Step{}).HoldState(noon); got != NoHold {
		t.Errorf("zero step: %v", got)
	}
	if got := steps[0].HoldState(noon); got != HoldWaiting {
		t.Errorf("before the start: %v", got)
	}
	steps = must(StartHold(steps, 0, noon.Add(900*time.Millisecond)))
	if !steps[0].Started.Equal(noon) {
		t.Errorf("started %v, want whole seconds", steps[0].Started)
	}
	for _, c := range []struct {
		after time.Duration
		want  HoldState
	}{
		{-5 * time.Hour, HoldRunning}, {0, HoldRunning}, {24*time.Hour - 1, HoldRunning}, {24 * time.Hour, HoldDue},
		{48*time.Hour - 1, HoldDue}, {48 * time.Hour, HoldLate}, {1000 * time.Hour, HoldLate},
	} {
		if got := steps[0].HoldState(noon.Add(c.after)); got != c.want {
			t.Errorf("HoldState after %v = %v, want %v", c.after, got, c.want)
		}
	}
	var notYet NotYetError
	if _, err := Tick(steps, 0, noon.Add(time.Hour)); !errors.As(err, &notYet) || err.Error() != "not before Fri 12:00" {
		t.Errorf("tick while it runs: %v", err)
	}
	steps = must(StartHold(steps, 1, noon))
	if got := steps[1].HoldState(noon); got != HoldDue {
		t.Errorf("only 'look by', just started: %v, want due", got)
	}
	if _, err := StartHold(steps, 2, noon); err == nil {
		t.Error("a hold that is none was started")
	}
	done := must(Tick(steps, 0, noon.Add(30*time.Hour)))
	if got := done[0].HoldState(noon); got != NoHold {
		t.Errorf("done: %v", got)
	}
	if got := must(Untick(done, 0))[0].HoldState(noon.Add(30 * time.Hour)); got != HoldDue {
		t.Errorf("unticked: %v, want due as before", got)
	}
}

func TestEndEarlyAndExtend(t *testing.T) {
	must := must(t)
	start := must(StartHold([]Step{{Title: "dry", Hold: 24 * time.Hour, Latest: 48 * time.Hour}}, 0, noon))
	early := must(EndEarly(start, 0, noon.Add(time.Hour)))
	if got := early[0].HoldState(noon.Add(100 * time.Hour)); got != HoldDue || !early[0].Ended.Equal(noon.Add(time.Hour)) {
		t.Errorf("ended early: %v, on record %v", got, early[0].Ended)
	}
	if _, err := EndEarly(early, 0, noon); err == nil {
		t.Error("ended twice")
	}
	longer := must(Extend(start, 0, noon, 15*time.Minute))
	if got := longer[0]; got.Hold != 24*time.Hour+15*time.Minute || got.Latest != 48*time.Hour+15*time.Minute {
		t.Errorf("extended to %v, %v", got.Hold, got.Latest)
	}
	// Due two hours ago: 15 min more means from now.
	again := must(Extend(start, 0, noon.Add(26*time.Hour), 15*time.Minute))
	if got := again[0].NotBefore(); !got.Equal(noon.Add(26*time.Hour + 15*time.Minute)) {
		t.Errorf("extended when due: not before %v", got)
	}
	if got := again[0].Latest - again[0].Hold; got != 24*time.Hour {
		t.Errorf("the window became %v", got)
	}
	revived := must(Extend(early, 0, noon.Add(2*time.Hour), time.Hour))
	if got := revived[0].HoldState(noon.Add(2 * time.Hour)); got != HoldRunning {
		t.Errorf("extended after an early end: %v", got)
	}
	for _, d := range []time.Duration{0, -time.Minute, 400 * 24 * time.Hour} {
		if _, err := Extend(start, 0, noon, d); err == nil {
			t.Errorf("Extend by %v was taken", d)
		}
	}
	if _, err := SetHold(start, 0, 2*time.Hour, time.Hour); err == nil {
		t.Error("a 'look by' before 'not before' was taken")
	}
}

// A hold lasts as long on the night the clocks change: instants are compared,
// not what the clock on the wall shows. Dates after Directive 2000/84/EC: the
// last Sundays of March and October, at 01:00 UTC.
func TestSummerTime(t *testing.T) {
	loc := berlin(t)
	for _, c := range []struct {
		name  string
		start time.Time
		shows string // twelve hours later
	}{
		{"to summer time", time.Date(2026, 3, 28, 20, 0, 0, 0, loc), "09:00"},
		{"to winter time", time.Date(2026, 10, 24, 20, 0, 0, 0, loc), "07:00"},
	} {
		steps, err := StartHold([]Step{{Title: "cure", Hold: 12 * time.Hour}}, 0, c.start)
		if err != nil {
			t.Fatal(err)
		}
		due := steps[0].NotBefore()
		if due.Sub(c.start) != 12*time.Hour || clock.Time(due, due) != c.shows {
			t.Errorf("%s: due %v, shown %s, want %s", c.name, due, clock.Time(due, due), c.shows)
		}
		var w Watch
		fired := 0
		for now := c.start; now.Before(c.start.Add(14 * time.Hour)); now = now.Add(time.Second) {
			for _, e := range w.Observe(Holds(steps, "a"), now) {
				fired++
				if d := now.Sub(c.start); d != 12*time.Hour || e.Meanwhile {
					t.Errorf("%s: fired after %v, meanwhile %v", c.name, d, e.Meanwhile)
				}
			}
		}
		if fired != 1 {
			t.Errorf("%s: fired %d times", c.name, fired)
		}
	}
}

func TestZoneMoved(t *testing.T) {
	steps, _ := StartHold([]Step{{Title: "cure", Hold: 12 * time.Hour}}, 0, noon.In(berlin(t)))
	away := time.FixedZone("", -9*3600)
	for _, now := range []time.Time{noon.Add(12*time.Hour - time.Second), noon.Add(12 * time.Hour)} {
		here, there := steps[0].HoldState(now), steps[0].HoldState(now.In(away))
		if here != there {
			t.Errorf("at %v: %v here, %v away", now, here, there)
		}
	}
	if got := clock.Time(steps[0].NotBefore(), noon.In(away)); got != "15:00" {
		t.Errorf("shown away as %q, want 15:00", got)
	}
}

func TestHoldsOfSeveral(t *testing.T) {
	dry := Step{Title: "dry", Short: "DRY", Hold: 24 * time.Hour, Started: noon}
	ended := dry
	ended.Ended = noon.Add(time.Hour)
	skipped := dry
	skipped.Skipped = true
	a := []Step{{Title: "none"}, dry, ended, skipped}
	b := []Step{{Title: "cement", Short: "CEMENT", Hold: 10 * time.Minute, Latest: 15 * time.Minute, Started: noon}}
	holds := append(Holds(a, "a"), Holds(b, "b")...)
	SortHolds(holds)
	if len(holds) != 2 || holds[0].Project != "b" || holds[1].Step != 1 {
		t.Fatalf("holds: %+v", holds)
	}
	for after, want := range map[time.Duration]string{0: "b", 11 * time.Minute: "a", 16 * time.Minute: "a", 25 * time.Hour: "b"} {
		if h, ok := Nearest(holds, noon.Add(after)); !ok || h.Project != want {
			t.Errorf("nearest after %v: %q, want %q", after, h.Project, want)
		}
	}
	if _, ok := Nearest(nil, noon); ok {
		t.Error("a nearest hold of none")
	}
	if !slices.IsSortedFunc(holds, func(x, y Hold) int { return x.Due.Compare(y.Due) }) {
		t.Error("not sorted")
	}
}
