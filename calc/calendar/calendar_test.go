package calendar

import (
	"strings"
	"testing"
	"time"
	_ "time/tzdata"
)

func week(t *testing.T, s string) Week {
	t.Helper()
	w, err := ParseWeek(s)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func berlin(t *testing.T) *time.Location {
	t.Helper()
	z, err := time.LoadLocation("Europe/Berlin")
	if err != nil {
		t.Fatal(err)
	}
	return z
}

const minute = time.Minute

// A week worked by hand. Evenings of three hours, Saturday morning; it is Thu 26
// Nov 2026, 19:00. Cutting 90 min: Thu 20:30. Gluing 60 min: 30 on Thursday, 30 on
// Friday to 18:30. Sewing 240 min: Friday's 150 to 21:00, Saturday 9:00 to 10:30.
// Forming 45: 11:15. Dry 24 h after forming: Sun 11:15, nobody there until Mon
// 18:00. Finishing 30: Mon 30 Nov 18:30. Promised 18 Dec: 18 days to spare.
func TestAWeekByHand(t *testing.T) {
	z := berlin(t)
	shop := Shop{Week: week(t, "mon-fri 18-21, sat 9-13")}
	jobs := []Job{{Work: 90 * minute}, {Work: 60 * minute}, {Work: 240 * minute}, {Work: 45 * minute},
		{Hold: 24 * time.Hour, After: 3}, {Work: 30 * minute}}
	f, ok := Earliest(time.Date(2026, 11, 26, 19, 0, 0, 0, z), jobs, shop)
	want := []string{"Thu 26 20:30", "Fri 27 18:30", "Sat 28 10:30", "Sat 28 11:15", "Mon 30 18:00", "Mon 30 18:30"}
	check(t, f, ok, want)
	if got := f.Spare(Day{2026, 12, 18}); got != 18 {
		t.Errorf("Spare = %d, want 18", got)
	}
	if got := f.Spare(Day{2026, 11, 29}); got != -1 {
		t.Errorf("Spare = %d, want -1", got)
	}
	if want := 465 * minute; f.Work != want {
		t.Errorf("Work = %v, want %v", f.Work, want)
	}
}

func check(t *testing.T, f Finish, ok bool, want []string) {
	t.Helper()
	if !ok || len(f.Ends) != len(want) {
		t.Fatalf("ok %v, %d ends, want %d", ok, len(f.Ends), len(want))
	}
	for i, e := range f.Ends {
		if got := e.Format("Mon 2 15:04"); got != want[i] {
			t.Errorf("job %d ends %s, want %s", i, got, want[i])
		}
	}
	if n := len(f.Ends); !f.At.Equal(f.Ends[n-1]) {
		t.Errorf("At %v, want the last end", f.At)
	}
}

// Over the change to summer time, 28 March 2027, 2:00 to 3:00. Formed Sat 17:00 to
// 17:30; 24 h of drying end Sunday 18:30 by the clock, not 17:30. A night shift of
// 0:00 to 5:00 that Sunday has four hours: five hours of work begun at midnight end
// an hour into the next stretch, at 19:00.
func TestChangeToSummerTime(t *testing.T) {
	z := berlin(t)
	shop := Shop{Week: week(t, "sat-sun 8-20")}
	f, ok := Earliest(time.Date(2027, 3, 27, 17, 0, 0, 0, z), []Job{{Work: 30 * minute}, {Hold: 24 * time.Hour, After: 0}, {Work: 60 * minute}}, shop)
	check(t, f, ok, []string{"Sat 27 17:30", "Sun 28 18:30", "Sun 28 19:30"})

	shop = Shop{Week: week(t, "sun 0-5 18-20")}
	f, ok = Earliest(time.Date(2027, 3, 28, 0, 0, 0, 0, z), []Job{{Work: 5 * time.Hour}}, shop)
	check(t, f, ok, []string{"Sun 28 19:00"})
}

// And back, 31 October 2027: that night has six hours from 0:00 to 5:00.
func TestChangeFromSummerTime(t *testing.T) {
	shop := Shop{Week: week(t, "sun 0-5")}
	f, ok := Earliest(time.Date(2027, 10, 30, 12, 0, 0, 0, berlin(t)), []Job{{Work: 6 * time.Hour}}, shop)
	check(t, f, ok, []string{"Sun 31 05:00"})
}

// Waits: one that runs already, one of its own step during which the work goes on,
// one over before anybody is there.
func TestWaits(t *testing.T) {
	now := time.Date(2026, 12, 1, 9, 0, 0, 0, time.UTC) // a Tuesday
	shop := Shop{Week: week(t, "mon-sat 8-12 13-17")}
	f, ok := Earliest(now, []Job{
		{Until: now.Add(90 * minute)},                      // 10:30
		{Work: 20 * minute, Hold: 15 * minute, After: Own}, // 10:50: the wait is over within the work
		{Work: 10 * minute, Hold: time.Hour, After: Own},   // 11:50
		{Work: 30 * minute},                                // 10 today, 20 from 13:00
		{Until: now.Add(-time.Hour)},                       // over
		{Hold: 5 * time.Hour, After: Own},                  // 18:20: Wednesday 8:00
		{Work: 8 * time.Hour},                              // to the end of the day, not the next morning
	}, shop)
	check(t, f, ok, []string{"Tue 1 10:30", "Tue 1 10:50", "Tue 1 11:50", "Tue 1 13:20", "Tue 1 13:20", "Wed 2 08:00", "Wed 2 17:00"})
}

func TestClosedDays(t *testing.T) {
	now := time.Date(2026, 12, 24, 20, 0, 0, 0, time.UTC)
	shop := Shop{Week: week(t, "mon-sun 9-10"), Closed: map[Day]bool{{2026, 12, 25}: true, {2026, 12, 26}: true}}
	f, ok := Earliest(now, []Job{{Work: 61 * minute}}, shop)
	check(t, f, ok, []string{"Mon 28 09:01"})
}

func TestNoHours(t *testing.T) {
	now := time.Date(2026, 12, 24, 20, 0, 0, 0, time.UTC)
	if _, ok := Earliest(now, []Job{{Work: minute}}, Shop{}); ok {
		t.Error("work is done in a week without hours")
	}
	if f, ok := Earliest(now, nil, Shop{}); !ok || !f.At.Equal(now) {
		t.Errorf("nothing to do is done at %v, %v", f.At, ok)
	}
	if _, ok := Earliest(now, []Job{{Hold: minute, After: Own}}, Shop{}); ok {
		t.Error("a wait is seen to by nobody")
	}
}

func TestParseWeek(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"", ""},
		{"Mon-Fri 18-21, sat 9:00-13:00 14-17", "mon-fri 18:00-21:00, sat 9:00-13:00 14:00-17:00"},
		{"thursday 8-24:00", "thu 8:00-24:00"},
		{"fri-mon 9-10:30", "mon 9:00-10:30, fri-sun 9:00-10:30"},
		{"sat 14-17, sat 9-13", "sat 9:00-13:00 14:00-17:00"},
		{"mon 8-9, mon 9-10", "mon 8:00-9:00 9:00-10:00"},
	} {
		w, err := ParseWeek(c.in)
		if err != nil || w.String() != c.want {
			t.Errorf("ParseWeek(%q) = %q, %v, want %q", c.in, w, err, c.want)
		}
		again, err := ParseWeek(w.String())
		if err != nil || again.String() != w.String() {
			t.Errorf("%q comes back as %q, %v", w, again, err)
		}
		if w.Any() != (c.want != "") {
			t.Errorf("%q: Any = %v", c.in, w.Any())
		}
	}
	for _, c := range []struct{ in, want string }{
		{"someday 9-10", "no day"}, {"mon", "no hours"}, {"mon 10-9", "18:00-21:00"}, {"mon 9", "no time"},
		{"mon 9-25", "no time"}, {"mon 9:70-10", "no time"}, {"mon 9-12 11-13", "overlap"}, {"mon-xyz 9-10", "no day"}, {"mon -1-3", "no time"},
	} {
		if _, err := ParseWeek(c.in); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("ParseWeek(%q): %v, want %q", c.in, err, c.want)
		}
	}
}
