package steps

import (
	"fmt"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"chape/calc/length"
)

// anyDo is a random act of somebody at the bench, on any step and some that there are not.
func anyDo(r *rand.Rand, list []Step, now time.Time) (what string, out []Step, err error) {
	i := r.IntN(len(list)+2) - 1
	d := []time.Duration{0, -time.Hour, time.Minute, 36 * time.Hour, 400 * 24 * time.Hour, 999 * time.Hour, 1001 * time.Hour, 90*time.Second + 3}[r.IntN(8)]
	words := []string{"", " ", "Glue it", "WRAP", "Ärger mit ß", strings.Repeat("x", 201), "\x1b[2J", "a\nb", "née"}
	w := words[r.IntN(len(words))]
	switch r.IntN(15) {
	case 0:
		out, err = Tick(list, i, now)
	case 1:
		out, err = Untick(list, i)
	case 2:
		out, err = Skip(list, i, r.IntN(2) == 0)
	case 3:
		out, err = StartHold(list, i, now)
	case 4:
		out, err = EndEarly(list, i, now)
	case 5:
		out, err = Extend(list, i, now, d)
	case 6:
		out, err = SetHold(list, i, d, d+time.Duration(r.IntN(3)-1)*time.Hour)
	case 7:
		out, err = DropStart(list, i)
	case 8:
		out, err = AddSpent(list, i, d)
	case 9:
		out, err = SetSpent(list, i, d)
	case 10:
		out, err = SetExpected(list, i, d)
	case 11:
		out, err = Add(list, i, Step{Title: w})
	case 12:
		out, err = Remove(list, i)
	case 13:
		out, _, err = Move(list, i, r.IntN(9)-4)
	default:
		out, err = Rename(list, i, w, words[r.IntN(4)])
	}
	return fmt.Sprintf("step %d, %v, %q", i, d, w), out, err
}

// Whatever is done at the bench in whatever order, the list given stays as it was, what is
// refused gives none, and what comes of it can be saved: every key in its range, nothing to be
// looked at before its hold is over, no hold begun that has no length.
func TestWhateverIsDoneTheListWillDo(t *testing.T) {
	r := rand.New(rand.NewPCG(24, 7))
	for range 20 {
		list := FormThenSew(Whole)
		now := time.Date(2026, 11, 26, 9, 0, 0, 0, time.UTC)
		for n := range 120 {
			now = now.Add(time.Duration(r.Int64N(int64(5 * time.Hour))))
			before := slices.Clone(list)
			what, out, err := anyDo(r, list, now)
			if !reflect.DeepEqual(list, before) {
				t.Fatalf("%s changes the list it was given", what)
			}
			if err != nil {
				if out != nil || strings.ContainsAny(err.Error(), "\n\x1b") {
					t.Fatalf("%s is refused with %q, and gives a list", what, err)
				}
				continue
			}
			if len(out) > 0 && len(list) > 0 && &out[0] == &list[0] {
				t.Fatalf("%s gives the list it was given", what)
			}
			for i := range out {
				if n%20 > 0 && i < len(list) && out[i] == list[i] { // looked at when it came
					continue
				}
				checkStep(t, what, &out[i])
			}
			if list = out; len(list) == 0 {
				list = FormThenSew(Whole)
			}
		}
	}
}

func checkStep(t *testing.T, what string, s *Step) {
	t.Helper()
	for _, c := range Columns {
		if bad, out := c.Outside(c.Get(s), length.Millimetres); out {
			t.Fatalf("after %s: %v", what, bad)
		}
	}
	switch {
	case s.Latest > 0 && s.Latest < s.Hold:
		t.Fatalf("after %s %q is looked at after %v, and holds %v", what, s.Title, s.Latest, s.Hold)
	case !s.HasHold() && !(s.Started.IsZero() && s.First.IsZero() && s.Ended.IsZero()):
		t.Fatalf("after %s %q has begun a hold that it has not: %+v", what, s.Title, s)
	case s.Skipped && !s.Done.IsZero():
		t.Fatalf("after %s %q is done and left out", what, s.Title)
	case s.ShortName() == "" || len(s.ShortName()) > MaxShort:
		t.Fatalf("after %s %q is called %q", what, s.Title, s.ShortName())
	}
}

// Minutes stop at nothing and at what a step may take, wherever they come from.
func TestMinutesAtTheirEnds(t *testing.T) {
	list := []Step{{Title: "Sew", Spent: time.Hour, Expect: time.Hour}, {Title: "Wax", Expect: time.Minute, Skipped: true}}
	for _, c := range []struct{ add, want time.Duration }{{-2 * time.Hour, 0}, {-time.Hour, 0}, {time.Minute, 61 * time.Minute}, {MaxSpent, MaxSpent}, {999 * time.Hour, MaxSpent}} {
		out, err := AddSpent(list, 0, c.add)
		if err != nil || out[0].Spent != c.want {
			t.Errorf("an hour and %v are %v, %v", c.add, out[0].Spent, err)
		}
	}
	for d, ok := range map[time.Duration]bool{0: true, MaxSpent: true, MaxSpent + 1: false, -1: false} {
		_, err := SetSpent(list, 0, d)
		_, err2 := SetExpected(list, 0, d)
		if (err == nil) != ok || (err2 == nil) != ok {
			t.Errorf("%v spent: %v; expected: %v", d, err, err2)
		}
	}
	if TotalSpent(list) != time.Hour || TotalExpected(list) != time.Hour || TotalSpent(nil) != 0 {
		t.Errorf("spent %v, expected %v together", TotalSpent(list), TotalExpected(list))
	}
}

// The step in hand, the one after it and the one ticked last, by hand: the same second counts
// by place.
func TestWhichStep(t *testing.T) {
	at := func(m int) time.Time { return time.Date(2026, 11, 26, 9, m, 0, 0, time.UTC) }
	for _, c := range []struct {
		list                []Step
		current, next, last int
	}{
		{nil, -1, -1, -1}, {[]Step{{}}, 0, -1, -1}, {[]Step{{Done: at(1)}}, -1, -1, 0}, {[]Step{{Skipped: true}, {}, {Done: at(2)}, {}}, 1, 3, 2},
		{[]Step{{Done: at(5)}, {Done: at(3)}, {}}, 2, -1, 0}, {[]Step{{Done: at(5)}, {Done: at(5)}}, -1, -1, 1},
	} {
		if a, b, l := Current(c.list), Next(c.list), LastTick(c.list); a != c.current || b != c.next || l != c.last {
			t.Errorf("%+v: in hand %d, then %d, ticked last %d", c.list, a, b, l)
		}
	}
}
