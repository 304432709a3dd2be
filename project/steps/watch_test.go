package steps

import (
	"testing"
	"time"
)

// watched runs a watch over one hold of an hour, started at noon.
type watched struct {
	t     *testing.T
	watch Watch
	holds []Hold
	now   time.Time
}

func newWatched(t *testing.T, at time.Time) *watched {
	return &watched{t: t, now: at, holds: []Hold{{Project: "a", Started: noon, Due: noon.Add(time.Hour)}}}
}

// pass lets time pass second by second and counts the events.
func (w *watched) pass(d time.Duration) (events []Event) {
	for end := w.now.Add(d); w.now.Before(end); {
		w.now = w.now.Add(time.Second)
		events = append(events, w.watch.Observe(w.holds, w.now)...)
	}
	return events
}

// set sets the clock.
func (w *watched) set(now time.Time) []Event {
	w.now = now
	return w.watch.Observe(w.holds, now)
}

func (w *watched) want(what string, events []Event, n int) {
	w.t.Helper()
	if len(events) != n {
		w.t.Errorf("%s: %d events, want %d", what, len(events), n)
	}
}

func TestWatchFiresOnce(t *testing.T) {
	w := newWatched(t, noon)
	w.want("before", w.pass(59*time.Minute), 0)
	events := w.pass(time.Minute)
	w.want("when due", events, 1)
	if len(events) == 1 && (events[0].Meanwhile || !events[0].At.Equal(noon.Add(time.Hour))) {
		t.Errorf("event %+v", events[0])
	}
	w.want("ten days on", w.pass(10*24*time.Hour), 0)
}

func TestWatchOpenedLate(t *testing.T) {
	w := newWatched(t, noon)
	events := w.set(noon.Add(9 * time.Hour))
	w.want("on opening", events, 1)
	if !events[0].Meanwhile {
		t.Error("not said to have been meanwhile")
	}
	w.want("after", w.pass(time.Hour), 0)
}

func TestWatchClockSetBack(t *testing.T) {
	w := newWatched(t, noon)
	w.want("running", w.pass(61*time.Minute), 1)
	w.want("set back 3 h", w.set(w.now.Add(-3*time.Hour)), 0)
	w.want("coming past it again", w.pass(4*time.Hour), 0)
	// Set back before it fell due: it waits for the clock and fires once.
	w = newWatched(t, noon)
	w.want("running", w.pass(30*time.Minute), 0)
	w.want("set back 5 h", w.set(w.now.Add(-5*time.Hour)), 0)
	w.want("to a second before", w.pass(5*time.Hour+30*time.Minute-time.Second), 0)
	w.want("due", w.pass(time.Second), 1)
}

func TestWatchClockSetForward(t *testing.T) {
	w := newWatched(t, noon)
	w.want("running", w.pass(time.Minute), 0)
	events := w.set(w.now.Add(6 * time.Hour))
	w.want("set forward", events, 1)
	w.want("on from there", w.pass(time.Hour), 0)
	// It was a mistake and is put right: the hold runs again and is not lost.
	w.want("set right", w.set(noon.Add(2*time.Minute)), 0)
	w.want("to a second before", w.pass(58*time.Minute-time.Second), 0)
	w.want("due", w.pass(time.Second), 1)
	w.want("after", w.pass(time.Hour), 0)
}

// A machine whose clock starts years back finds its time a while later.
func TestWatchClockStartsWrong(t *testing.T) {
	w := newWatched(t, noon.AddDate(-20, 0, 0))
	w.want("in the past", w.pass(time.Minute), 0)
	w.want("found", w.set(noon.Add(90*time.Minute)), 1)
	w.want("after", w.pass(time.Hour), 0)
}

func TestWatchExtendedRenamedMoved(t *testing.T) {
	w := newWatched(t, noon)
	w.want("running", w.pass(time.Hour), 1)
	w.holds[0].Title, w.holds[0].Step = "renamed", 7
	w.want("renamed and moved", w.pass(time.Minute), 0)
	held := w.holds
	w.holds = nil
	w.want("ticked", w.pass(time.Minute), 0)
	w.holds = held
	w.want("unticked", w.pass(time.Minute), 0)
	w.holds[0].Due = w.now.Add(15 * time.Minute)
	w.want("extended", w.pass(20*time.Minute), 1)
}

// A project is known by its key: another title is not another project.
func TestWatchProjectRenamed(t *testing.T) {
	w := newWatched(t, noon)
	w.holds[0].Key = "/shelf/a.toml"
	w.want("due", w.pass(time.Hour), 1)
	w.holds[0].Project = "another title"
	w.want("renamed", w.pass(time.Minute), 0)
	w.holds[0].Key = "/shelf/b.toml"
	w.watch.Moved("/shelf/a.toml", "/shelf/b.toml")
	w.want("moved", w.pass(time.Minute), 0)
	w.holds[0].Key = "/shelf/c.toml"
	w.want("another project with the same times", w.pass(time.Minute), 1)
}

// Holds that come to be known a while after the start fell due before it all the same.
func TestWatchBegan(t *testing.T) {
	w := newWatched(t, noon.Add(3*time.Hour))
	held := w.holds
	w.holds = nil
	w.watch.Began(w.now)
	w.want("nothing known yet", w.pass(5*time.Second), 0)
	w.holds = append(held, Hold{Project: "b", Started: noon, Due: w.now.Add(time.Second)})
	events := w.pass(2 * time.Second)
	w.want("known now", events, 2)
	if len(events) == 2 && (!events[0].Meanwhile || events[1].Meanwhile) {
		t.Errorf("meanwhile %v and %v, want only what was due at the start", events[0].Meanwhile, events[1].Meanwhile)
	}
	w.want("after", w.pass(time.Hour), 0)

	// The clock is set back to before the start: what is reached then, was watched.
	w.holds = []Hold{{Project: "c", Started: noon, Due: noon.Add(2 * time.Hour)}}
	w.want("set back", w.set(noon.Add(time.Hour)), 0)
	events = w.pass(time.Hour)
	w.want("reached", events, 1)
	if len(events) == 1 && events[0].Meanwhile {
		t.Error("said to have been meanwhile though it was watched")
	}
}

func TestWatchTwinsAndLookBy(t *testing.T) {
	w := newWatched(t, noon)
	w.holds[0].LookBy = noon.Add(2 * time.Hour)
	w.holds = append(w.holds, w.holds[0], Hold{Project: "b", Started: noon, Due: noon.Add(time.Hour)})
	w.want("three at once", w.pass(time.Hour), 3)
	events := w.pass(time.Hour)
	w.want("two to look at", events, 2)
	if len(events) == 2 && events[0].Kind != GoesLate {
		t.Errorf("event %+v", events[0])
	}
}

// A hold with nothing but a 'look by' is not due the moment it is started.
func TestWatchLookByOnly(t *testing.T) {
	w := newWatched(t, noon)
	w.holds[0].Due, w.holds[0].LookBy = noon, noon.Add(time.Hour)
	w.want("started", w.pass(59*time.Minute), 0)
	w.want("to look at", w.pass(time.Minute), 1)
}

func TestWatchDoesNotGrow(t *testing.T) {
	w := newWatched(t, noon)
	for day := range 10 * 24 {
		due := w.now.Add(30 * time.Minute)
		w.holds = []Hold{{Project: "a", Started: w.now, Due: due}}
		w.set(due)
		w.set(noon.Add(time.Duration(day+1) * time.Hour))
	}
	if n := len(w.watch.seen); n > 30 {
		t.Errorf("%d events are remembered after ten days", n)
	}
}

func BenchmarkWatchThousandHolds(b *testing.B) {
	var w Watch
	holds := make([]Hold, 1000)
	for i := range holds {
		holds[i] = Hold{Project: "a", Started: noon.Add(time.Duration(i) * time.Second), Due: noon.Add(24 * time.Hour)}
	}
	for i := range b.N {
		w.Observe(holds, noon.Add(time.Duration(i)*time.Second))
	}
}

// As many holds as a shelf may have, all of the same times.
func BenchmarkWatchTwins(b *testing.B) {
	var w Watch
	holds := make([]Hold, 10_000)
	for i := range holds {
		holds[i] = Hold{Project: "a", Started: noon, Due: noon.Add(24 * time.Hour)}
	}
	for i := range b.N {
		w.Observe(holds, noon.Add(time.Duration(i)*time.Second))
	}
}
