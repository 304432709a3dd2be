package calendar

import (
	"math/rand/v2"
	"testing"
	"time"
)

// julian is a day's number by the formula of Fliegel and Van Flandern, 'A machine algorithm for processing calendar dates' (1968; from memory).
func julian(d Day) int {
	y, m := d.Year, int(d.Month)
	a := (m - 14) / 12
	return (1461*(y+4800+a))/4 + (367*(m-2-12*a))/12 - (3*((y+4900+a)/100))/4 + d.Day - 32075
}

// Days between dates are the differences of their day numbers, over leap years and changes of the clock, both ways.
func TestUntilByDayNumbers(t *testing.T) {
	if got := julian(Day{2000, 1, 1}); got != 2451545 { // a date that tables give
		t.Fatalf("1 January 2000 has the number %d", got)
	}
	r := rand.New(rand.NewPCG(1, 71))
	day := func() Day { return Day{2020 + r.IntN(12), time.Month(1 + r.IntN(12)), 1 + r.IntN(28)} }
	for range 300 {
		a, b := day(), day()
		if got, want := a.Until(b), julian(b)-julian(a); got != want || b.Until(a) != -want {
			t.Errorf("from %v to %v: %d days, want %d", a, b, got, want)
		}
	}
	z := berlin(t)
	if got := DayOf(time.Date(2026, 11, 26, 23, 30, 0, 0, time.UTC).In(z)); got != (Day{2026, 11, 27}) {
		t.Errorf("half an hour before midnight in Greenwich is %v in Berlin", got)
	}
}

// By hand: an end that is no later than its beginning, and a minute past 59, are no time at the bench.
func TestNoTimeAtTheBench(t *testing.T) {
	for _, in := range []string{"mon 9-9", "mon 9:30-9:30", "mon 9:60-11", "mon 9-24:01", "mon --", "mon 9-10-11"} {
		if w, err := ParseWeek(in); err == nil {
			t.Errorf("%q is read as %q", in, w)
		}
	}
}

// Any week is read back as it is written, however many stretches its days have, and says whether it has any.
func TestWeekThereAndBack(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 71))
	for range 300 {
		var w Week
		any := false
		for d := range w {
			at := 0
			for range r.IntN(3) {
				from := at + r.IntN(300)
				to := from + 1 + r.IntN(300)
				w[d] = append(w[d], Hours{from, to})
				at, any = to, true
			}
			if d > 0 && r.IntN(2) == 0 { // days alike are written together
				w[d] = w[d-1]
			}
		}
		got, err := ParseWeek(w.String())
		if err != nil || got.String() != w.String() {
			t.Fatalf("%q is read as %q, %v", w, got, err)
		}
		for d := range w {
			if len(got[d]) != len(w[d]) {
				t.Fatalf("%q: on day %d %v, want %v", w, d, got[d], w[d])
			}
			for i := range w[d] {
				if got[d][i] != w[d][i] {
					t.Fatalf("%q: on day %d %v, want %v", w, d, got[d], w[d])
				}
			}
		}
		if !any && w.Any() {
			t.Errorf("%q: has hours", w)
		}
	}
}
