package shop

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"
	_ "time/tzdata"

	"chape/calc/calendar"
	"chape/project/steps"
)

func dayOf(y int, m time.Month, d int) time.Time { return time.Date(y, m, d, 0, 0, 0, 0, time.UTC) }

func working(d time.Duration) steps.Open {
	return steps.StillOpen([]steps.Step{{Title: "Sew", Expect: d}})
}

// A week worked by hand in which summer time begins, Sun 28 Mar 2027 at 2:00 (Directive
// 2000/84/EC). From Fri 26 Mar, 20:00: an hour of gluing to 21:00; 36 h of curing run through
// the change to Sun 10:00, which is one hour later by the clock; nobody is there before Mon 18:00.
// Four hours of sewing are done Tue 30 Mar, 19:00. Promised for the 31st: a day to spare.
func TestReadyOverTheChangeOfTheClock(t *testing.T) {
	berlin, err := time.LoadLocation("Europe/Berlin")
	if err != nil {
		t.Fatal(err)
	}
	now := time.Date(2027, 3, 26, 20, 0, 0, 0, berlin)
	glue := steps.Step{Title: "Glue", Short: "GLUE", Expect: time.Hour}
	cure := steps.Step{Title: "Cure", Hold: 36 * time.Hour, From: "GLUE"}
	o := steps.StillOpen([]steps.Step{glue, cure, {Title: "Sew", Expect: 4 * time.Hour}})
	s := evenings(t)
	if got := s.Ready(o, dayOf(2027, 3, 31), now); got.Text != "at the earliest Tue 30 Mar 19:00; promised 31 Mar: 1 day to spare" || got.Short {
		t.Errorf("said %q", got.Text)
	}
	if s.Week, err = calendar.ParseWeek("mon-sun 0-24"); err != nil {
		t.Fatal(err)
	}
	if got := s.Ready(steps.StillOpen([]steps.Step{glue, cure}), dayOf(2027, 3, 27), now); got.Text != "at the earliest Sun 28 Mar 10:00; promised 27 Mar: 1 day short" || !got.Short {
		t.Errorf("by day and night %q", got.Text)
	}
	// In autumn the night is an hour longer, Sun 31 Oct 2027: 12 h from Sat 20:00 end at 7:00.
	autumn := time.Date(2027, 10, 30, 20, 0, 0, 0, berlin)
	if got := s.Ready(working(12*time.Hour), time.Time{}, autumn); got.Text != "at the earliest Sun 31 Oct 07:00" {
		t.Errorf("over the end of summer time %q", got.Text)
	}
}

// The year is said where it is another one; never is said where it takes more than five years.
func TestFarAway(t *testing.T) {
	s := evenings(t)
	now := time.Date(2026, 12, 31, 20, 0, 0, 0, time.UTC) // a Thursday
	if got := s.Ready(working(2*time.Hour), dayOf(2027, 1, 3), now); got.Text != "at the earliest Fri 1 Jan 2027 19:00; promised 3 Jan 2027: 2 days to spare" {
		t.Errorf("said %q", got.Text)
	}
	if got := s.Ready(working(time.Hour), dayOf(2027, 1, 3), now); got.Text != "at the earliest Thu 31 Dec 21:00; promised 3 Jan 2027: 3 days to spare" {
		t.Errorf("said %q", got.Text)
	}
	if got := s.Ready(working(9000*time.Hour), dayOf(2027, 1, 3), now); got.Text != "not ready within five years of these hours at the bench" || got.Short || got.Lacks != "" {
		t.Errorf("said %+v", got)
	}
}

// What could not be counted, one and many of each.
func TestLacks(t *testing.T) {
	sheet, bare := steps.Step{Title: "Dye", Sheet: true}, steps.Step{Title: "Buff"}
	for want, list := range map[string][]steps.Step{
		"":                        {{Title: "Sew", Expect: time.Hour}},
		"1 step without minutes":  {bare},
		"2 steps without minutes": {bare, bare},
		"2 waits by data sheet not set, 1 step without minutes": {sheet, bare, sheet},
	} {
		if want != "" {
			want = "not counted, so later: " + want
		}
		if got := evenings(t).Ready(steps.StillOpen(list), time.Time{}, time.Date(2026, 11, 26, 19, 0, 0, 0, time.UTC)); got.Lacks != want {
			t.Errorf("lacks %q, want %q", got.Lacks, want)
		}
	}
}

// On the bench nobody is served twice: over random promises whoever is promised earlier is not
// later than behind all others, each comes after as many as are promised before its day, and the
// order in which they are listed counts only on one day.
func TestQueueOfMany(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 28))
	now := time.Date(2026, 11, 26, 12, 0, 0, 0, time.UTC)
	s := evenings(t)
	for range 30 {
		var all []Promise
		for range 1 + r.IntN(12) {
			all = append(all, Promise{working(time.Duration(1+r.IntN(300)) * time.Minute), dayOf(2026, 12, 1+r.IntN(20))})
		}
		kept := slices.Clone(all)
		q := s.Queue(all, now)
		if !slices.EqualFunc(all, kept, func(a, b Promise) bool { return a.Due.Equal(b.Due) && &a.Open.Jobs[0] == &b.Open.Jobs[0] }) {
			t.Fatal("the list of promises is sorted where it stands")
		}
		asked := working(90 * time.Minute)
		last, total := now, time.Duration(0)
		for d := 1; d <= 22; d++ {
			f, after, ok := q.Earliest(asked, dayOf(2026, 12, d), now)
			before := 0
			for _, p := range all {
				if p.Due.Before(dayOf(2026, 12, d)) {
					before++
				}
			}
			if !ok || after != before || f.At.Before(last) {
				t.Fatalf("for the %d: after %d of %d, at %v, the day before %v", d, after, before, f.At, last)
			}
			last = f.At
		}
		for _, p := range all {
			total += p.Open.Jobs[0].Work
		}
		sum, ok := working(total+90*time.Minute).Earliest(now, calendar.Shop{Week: s.Week})
		if f, after, _ := q.Earliest(asked, time.Time{}, now); !ok || after != len(all) || !f.At.Equal(sum.At) { // without waits the bench is never idle
			t.Fatalf("behind all %d it is done %v, want %v", after, f.At, sum.At)
		}
	}
}

// Of more than anybody has in hand the first sixty by their days count; no hours, no queue.
func TestQueueAtItsEnds(t *testing.T) {
	now := time.Date(2026, 11, 26, 12, 0, 0, 0, time.UTC)
	var all []Promise
	for i := range 70 {
		all = append(all, Promise{working(time.Minute), dayOf(2027, 1, 70-i)})
	}
	s := evenings(t)
	if _, after, ok := s.Queue(all, now).Earliest(working(time.Hour), time.Time{}, now); !ok || after != 60 {
		t.Errorf("after %d of 70", after)
	}
	if _, after, _ := s.Queue(all[:60], now).Earliest(working(time.Hour), dayOf(2027, 1, 11), now); after != 0 {
		t.Errorf("after %d that are promised later", after)
	}
	s.Week = calendar.Week{}
	q := s.Queue(all, now)
	if _, after, ok := q.Earliest(working(time.Hour), time.Time{}, now); ok || after != 0 || !strings.Contains(q.Ready(working(time.Hour), time.Time{}, now).Text, "[shop] hours") {
		t.Errorf("without hours after %d, %v", after, ok)
	}
	if !q.Fits(s, now) || fmt.Sprint(q.days) != "[]" {
		t.Errorf("the empty queue %+v does not hold", q)
	}
}
