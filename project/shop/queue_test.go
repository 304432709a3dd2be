package shop

import (
	"testing"
	"time"

	"chape/project/steps"
)

// By hand: evenings of three hours from Thu 26 Nov 2026, 18:00, Saturday 9 to 13. Promised for
// the 28th: 2 h, done Thu 20:00. For the 30th twice: 1 h and 4 h, Thu 21:00, then Fri 21:00 and
// Sat 10:00. One for 1 Dec of 2 h comes after three: Sat 12:00. One for the 30th waits for the
// first alone: 2 h are done on Fri at 19:00. One without a day comes after all.
func TestQueueByHand(t *testing.T) {
	now := time.Date(2026, 11, 26, 18, 0, 0, 0, time.UTC)
	on := func(m time.Month, d int) time.Time { return time.Date(2026, m, d, 0, 0, 0, 0, time.UTC) }
	work := func(d time.Duration) steps.Open { return steps.StillOpen([]steps.Step{{Title: "Sew", Expect: d}}) }
	q := evenings(t).Queue([]Promise{
		{work(time.Hour), on(11, 30)}, {work(2 * time.Hour), on(11, 28)}, {work(4 * time.Hour), on(11, 30)},
		{work(9 * time.Hour), time.Time{}}, {steps.StillOpen(nil), on(11, 27)},
	}, now)
	for _, c := range []struct {
		due  time.Time
		text string
	}{
		{on(11, 28), "at the earliest Thu 26 Nov 20:00; promised 28 Nov: 2 days to spare"},
		{on(11, 30), "at the earliest Fri 27 Nov 19:00, after 1 promised earlier; promised 30 Nov: 3 days to spare"},
		{on(12, 1), "at the earliest Sat 28 Nov 12:00, after 3 promised earlier; promised 1 Dec: 3 days to spare"},
		{time.Time{}, "at the earliest Sat 28 Nov 12:00, after 3 promised earlier"},
	} {
		if got := q.Ready(work(2*time.Hour), c.due, now); got.Text != c.text {
			t.Errorf("%q, want %q", got.Text, c.text)
		}
	}
	s := evenings(t)
	if !q.Fits(s, now.Add(59*time.Second)) || q.Fits(s, now.Add(time.Minute)) || q.Fits(s, now.Add(-time.Second)) || q.Fits(Shop{}, now) || (Queue{}).Fits(Shop{}, now) {
		t.Error("it holds for a minute, with the same hours")
	}
	if got := (Shop{Broken: "your settings can't be read"}).Ready(work(time.Hour), on(12, 1), now); got.Text != "when it can be ready is not known: your settings can't be read" || got.Short {
		t.Errorf("broken settings: %+v", got)
	}
	if got := (Queue{}).Ready(work(time.Hour), on(12, 1), now).Text; got != "when it can be ready: give the hours at the bench in your settings, [shop] hours" {
		t.Errorf("without a shop: %q", got)
	}
}
