package calendar

import (
	"testing"
	"time"
)

// Two sheaths by hand. Evenings of three hours; it is Thu 26 Nov 2026, 19:00. The first,
// promised earlier: gluing 60 min, Thu 20:00, dry 24 h later, Fri 20:00, finishing 30 min:
// Fri 20:30. The second has the bench in between: of its 240 min 60 on Thursday from 20:00,
// 120 on Friday to 20:00, 30 from 20:30, and 30 on Monday: 18:30. Its wait of an hour from
// there ends 19:30, and 30 min more are done at 20:00. Alone its 240
// min end on Fri at 20:00, its wait with the bench, at 21:00, and so on Mon.
func TestTwoSheathsByHand(t *testing.T) {
	z := berlin(t)
	shop := Shop{Week: week(t, "mon-fri 18-21")}
	now := time.Date(2026, 11, 26, 19, 0, 0, 0, z)
	first, ok := Earliest(now, []Job{{Work: 60 * minute}, {Hold: 24 * time.Hour, After: 0}, {Work: 30 * minute}}, shop)
	check(t, first, ok, []string{"Thu 26 20:00", "Fri 27 20:00", "Fri 27 20:30"})
	at := func(d, h, m int) time.Time { return time.Date(2026, 11, d, h, m, 0, 0, z) }
	spans(t, first.Uses, Taken{{at(26, 19, 0), at(26, 20, 0)}, {at(27, 20, 0), at(27, 20, 30)}})

	jobs := []Job{{Work: 240 * minute}, {Hold: time.Hour, After: 0}, {Work: 30 * minute}}
	alone, ok := Earliest(now, jobs, shop)
	check(t, alone, ok, []string{"Fri 27 20:00", "Mon 30 18:00", "Mon 30 18:30"})
	shop.Taken = first.Uses
	second, ok := Earliest(now, jobs, shop)
	check(t, second, ok, []string{"Mon 30 18:30", "Mon 30 19:30", "Mon 30 20:00"})
	spans(t, shop.Taken.With(second.Uses), Taken{
		{at(26, 19, 0), at(26, 21, 0)}, {at(27, 18, 0), at(27, 21, 0)}, {at(30, 18, 0), at(30, 18, 30)}, {at(30, 19, 30), at(30, 20, 0)}})

	// A third finds the bench free on Monday, in the second's wait and after it.
	shop.Taken = shop.Taken.With(second.Uses)
	third, ok := Earliest(now, []Job{{Work: 90 * minute}}, shop)
	check(t, third, ok, []string{"Mon 30 20:30"})
}

// A wait that ends while other work has the bench is seen to at once: somebody is there.
func TestWaitEndsDuringOtherWork(t *testing.T) {
	now := time.Date(2026, 12, 1, 9, 0, 0, 0, time.UTC) // a Tuesday
	shop := Shop{Week: week(t, "mon-sat 8-12 13-17"), Taken: Taken{{now.Add(30 * minute), now.Add(2 * time.Hour)}}}
	f, ok := Earliest(now, []Job{{Hold: time.Hour, After: Own}, {Work: 10 * minute}}, shop)
	check(t, f, ok, []string{"Tue 1 10:00", "Tue 1 11:10"})
}

func TestWith(t *testing.T) {
	at := func(h int) time.Time { return time.Date(2026, 12, 1, h, 0, 0, 0, time.UTC) }
	got := Taken{{at(3), at(4)}, {at(8), at(9)}}.With(Taken{{at(1), at(2)}, {at(4), at(5)}, {at(7), at(10)}})
	spans(t, got, Taken{{at(1), at(2)}, {at(3), at(5)}, {at(7), at(10)}})
	if Taken(nil).With(nil) != nil {
		t.Error("nothing with nothing is something")
	}
}

func spans(t *testing.T, got, want Taken) {
	t.Helper()
	same := len(got) == len(want)
	for i := range got {
		same = same && got[i].From.Equal(want[i].From) && got[i].To.Equal(want[i].To)
	}
	if !same {
		t.Errorf("takes %v, want %v", got, want)
	}
}
