package steps

import (
	"testing"
	"time"

	"chape/calc/calendar"
)

func evenings(t *testing.T) calendar.Shop {
	t.Helper()
	w, err := calendar.ParseWeek("mon-fri 18-21, sat 9-13")
	if err != nil {
		t.Fatal(err)
	}
	return calendar.Shop{Week: w}
}

// Worked by hand from Thu 26 Nov 2026, 19:00: sewing has 30 of its 90 minutes left,
// 19:30; forming 45, 20:15; drying 24 h from forming, Fri 20:15; finishing 60: 45 on
// Friday, 15 on Saturday, 9:15.
func TestEarliestReadyByHand(t *testing.T) {
	now := time.Date(2026, 11, 26, 19, 0, 0, 0, time.UTC)
	list := []Step{
		{Title: "Cut", Expect: time.Hour, Done: now.Add(-24 * time.Hour)},
		{Title: "Sew", Expect: 90 * time.Minute, Spent: time.Hour},
		{Title: "Line it", Expect: 3 * time.Hour, Skipped: true},
		{Title: "Form", Short: "FORM", Expect: 45 * time.Minute},
		{Title: "Dry", Hold: 24 * time.Hour, From: "FORM"},
		{Title: "Finish", Expect: time.Hour},
	}
	r, ok := StillOpen(list).Earliest(now, evenings(t))
	if got := r.At.Format("Mon 2 15:04"); !ok || got != "Sat 28 09:15" || r.Unset != 0 || r.Bare != 0 || len(r.Steps) != 4 {
		t.Errorf("ready %s, %+v, %v", got, r, ok)
	}
	if got := r.Spare(calendar.Day{Year: 2026, Month: 12, Day: 18}); got != 20 {
		t.Errorf("%d days to spare, want 20", got)
	}

	// Formed on Thursday at 18:30 and done: the wait runs from there, Fri 18:30; then 60.
	list[1].Done, list[3].Done = now, now.Add(-30*time.Minute)
	r, _ = StillOpen(list).Earliest(now, evenings(t))
	if got := r.At.Format("Mon 2 15:04"); got != "Fri 27 19:30" {
		t.Errorf("ready %s, want Fri 27 19:30", got)
	}
	// Started by hand later than that, at 19:00.
	list[4].Started = now
	r, _ = StillOpen(list).Earliest(now, evenings(t))
	if got := r.At.Format("Mon 2 15:04"); got != "Fri 27 20:00" {
		t.Errorf("ready %s, want Fri 27 20:00", got)
	}
	// And ended early, at 19:30.
	list[4].Ended = now.Add(30 * time.Minute)
	r, _ = StillOpen(list).Earliest(now, evenings(t))
	if got := r.At.Format("Mon 2 15:04"); got != "Thu 26 20:30" {
		t.Errorf("ready %s, want Thu 26 20:30", got)
	}
}

func TestEarliestReadyWithGaps(t *testing.T) {
	now := time.Date(2026, 11, 26, 19, 0, 0, 0, time.UTC)
	r, ok := StillOpen([]Step{{Title: "Dye", Sheet: true}, {Title: "Burnish"}, {Title: "Wax", Expect: time.Minute}}).Earliest(now, evenings(t))
	if !ok || r.Unset != 1 || r.Bare != 1 {
		t.Errorf("%+v, %v", r, ok)
	}
	if _, ok := StillOpen([]Step{{Expect: time.Minute}}).Earliest(now, calendar.Shop{}); ok {
		t.Error("work is done without hours")
	}
	if r, ok := StillOpen(nil).Earliest(now, calendar.Shop{}); !ok || !r.At.Equal(now) {
		t.Errorf("nothing to do: %+v, %v", r, ok)
	}
}
