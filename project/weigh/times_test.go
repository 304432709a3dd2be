package weigh

import (
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"
	"time"

	"chape/calc/drying"
)

// By hand: a width of four hours and more is said to the half hour, of an hour and more to ten
// minutes, else to the minute; the early end down, the late end up, the likely moment to the
// nearest.
func TestWindowIsRounded(t *testing.T) {
	at := func(h, m, s int) time.Time { return time.Date(2026, 11, 26, h, m, s, 0, time.UTC) }
	for _, c := range []struct {
		from, likely, to  time.Time
		early, mid, later time.Time
	}{
		{at(8, 29, 0), at(10, 14, 0), at(12, 31, 0), at(8, 0, 0), at(10, 0, 0), at(13, 0, 0)},
		{at(8, 29, 0), at(10, 15, 0), at(12, 29, 0), at(8, 0, 0), at(10, 30, 0), at(12, 30, 0)},
		{at(8, 29, 0), at(9, 14, 0), at(12, 28, 59), at(8, 20, 0), at(9, 10, 0), at(12, 30, 0)},
		{at(8, 29, 30), at(9, 5, 0), at(9, 29, 30), at(8, 20, 0), at(9, 10, 0), at(9, 30, 0)},
		{at(8, 29, 30), at(8, 40, 31), at(9, 29, 29), at(8, 29, 0), at(8, 41, 0), at(9, 30, 0)},
		{at(8, 0, 0), at(8, 30, 0), at(12, 0, 0), at(8, 0, 0), at(8, 30, 0), at(12, 0, 0)}, // round already
	} {
		d := Drying{Start: at(6, 0, 0)}
		d.Estimate = drying.Estimate{Earliest: c.from.Sub(d.Start), Likely: c.likely.Sub(d.Start), Latest: c.to.Sub(d.Start)}
		if a, b, e := d.Window(); !a.Equal(c.early) || !b.Equal(c.mid) || !e.Equal(c.later) {
			t.Errorf("%v to %v is said as %v, %v, %v", c.from, c.to, a, b, e)
		}
	}
}

// Before anything is weighed the room tells, counted from the wetting: from the weighing just
// before it, else from the first since; to whole hours, the early end before the late one.
func TestGuess(t *testing.T) {
	room := Room{20, 50, true, true}
	before := Weighing{wetted.Add(-time.Hour), 100, Before}
	first := Weighing{wetted, 180, "drying"}
	from, to, ok := DryingOf([]Weighing{before}, 0).Guess(room, []Weighing{before})
	if !ok || !from.Equal(before.When.Add(24*time.Hour)) || !to.Equal(before.When.Add(48*time.Hour)) { // common practice, no source: 24 to 48 h
		t.Errorf("from the weighing before: %v to %v, %v", from, to, ok)
	}
	list := []Weighing{first}
	later, _, ok := DryingOf(list, 0).Guess(room, list)
	if !ok || !later.Equal(from.Add(time.Hour)) {
		t.Errorf("from the first since: %v, %v", later, ok)
	}
	for name, r := range map[string]Room{
		"no room": {}, "no humidity": {20, 50, true, false}, "no temperature": {20, 50, false, true}, "too damp": {20, 100, true, true}, "too hot": {60, 50, true, true},
	} {
		if _, _, ok := DryingOf(list, 0).Guess(r, list); ok {
			t.Errorf("%s: a guess", name)
		}
	}
	damp, _, ok := DryingOf(list, 0).Guess(Room{20, 70, true, true}, list)
	if !ok || damp.Before(later) {
		t.Errorf("in damper air it is dry at %v, in drier at %v", damp, later)
	}
}

// The order in the file does not count, nor the zone in which a moment is told; the list is
// left as it is. Of one before wetting and one after, in the same second, the first is first.
func TestOrderDoesNotCount(t *testing.T) {
	list := append(zumdahl(6, wetted), Weighing{wetted.Add(-time.Hour), 100, Before}, Weighing{wetted.Add(-30 * time.Hour), 150, "drying"})
	want := DryingOf(list, 0)
	grams := func(d Drying, l []Weighing) (g []float64) {
		for _, i := range slices.Concat(d.Earlier, []int{d.Before}, d.Rows) {
			g = append(g, l[i].Grams)
		}
		return g
	}
	r := rand.New(rand.NewPCG(6, 25))
	for range 8 {
		l := slices.Clone(list)
		r.Shuffle(len(l), func(i, j int) { l[i], l[j] = l[j], l[i] })
		kept := slices.Clone(l)
		got := DryingOf(l, 0)
		if !reflect.DeepEqual(l, kept) || !slices.Equal(grams(got, l), grams(want, list)) || got.Estimate != want.Estimate || !got.Start.Equal(want.Start) {
			t.Fatalf("in another order %+v, want %+v", got, want)
		}
	}
	far := slices.Clone(list)
	for i := range far {
		far[i].When = far[i].When.In(time.FixedZone("", 9*3600))
	}
	if got := DryingOf(far, 0); !slices.Equal(got.Rows, want.Rows) || got.Estimate.Before != want.Estimate.Before {
		t.Errorf("told elsewhere %+v", got)
	}
	same := []Weighing{{wetted, 180, "drying"}, {wetted, 100, Before}}
	if d := DryingOf(same, 0); d.Before != 1 || !slices.Equal(d.Rows, []int{0}) || len(d.Earlier) != 0 {
		t.Errorf("in the same second %+v", d)
	}
}

// Before wetting and wetted again: only what came since the last wetting counts; what makes
// no estimate says what would.
func TestNothingSinceTheWetting(t *testing.T) {
	list := append(zumdahl(4, wetted), Weighing{wetted.Add(20 * time.Hour), 101, Before})
	d := DryingOf(list, 0)
	if d.Err == nil || len(d.Rows) != 0 || len(d.Earlier) != 4 || d.Before != 4 || d.Steady || d.ByWeight(wetted.Add(21*time.Hour)) != "" {
		t.Errorf("wetted again %+v", d)
	}
	room := Room{20, 50, true, true}
	if text, ok := d.By(room, list, wetted.Add(21*time.Hour)); !ok || text != "a guess: dry Fri 02:00 to Sat 02:00" {
		t.Errorf("said %q, %v", text, ok) // 24 to 48 h after Thu 02:00
	}
	if d := DryingOf(nil, 0); d.Before != -1 || d.Err == nil || len(d.Rows)+len(d.Earlier) != 0 || !d.Start.IsZero() {
		t.Errorf("of none %+v", d)
	}
	if d := DryingOf(zumdahl(6, wetted), 0); d.Before != -1 || !d.Start.Equal(wetted) {
		t.Errorf("never weighed before %+v", d)
	}
}
