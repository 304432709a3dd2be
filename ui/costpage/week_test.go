package costpage

import (
	"errors"
	"strings"
	"testing"

	"chape/calc/calendar"
	"chape/project/shop"
	"chape/ui/act"
)

// Where hours at the bench are asked for a key takes them, and when it can be ready follows;
// what is no week is said, what can't be kept too.
func TestHoursAtTheBench(t *testing.T) {
	var kept []string
	var fail error
	r := newRig(t, order(), 78, 24, Options{KeepWeek: func(text string) (shop.Shop, error) {
		kept = append(kept, text)
		week, err := calendar.ParseWeek(text)
		if err != nil {
			t.Errorf("%q: %v", text, err)
		}
		return shop.Shop{Week: week}, fail
	}}, shop.Shop{})
	r.Shows("when it can be ready: t asks for your hours at the bench")
	r.Keys("t").Shows("Your hours at the bench").Answer("mon-fri 18 till 21")
	if len(kept) > 0 {
		t.Fatalf("kept %q", kept)
	}
	r.Keys("esc", "t").Answer("mon-fri 18-21, sat 9-13").Run()
	if got := r.Said[len(r.Said)-1]; !strings.HasPrefix(got, "hours at the bench: mon-fri 18:00-21:00, sat 9:00-13:00") {
		t.Errorf("said %q", got)
	}
	for _, m := range r.Sent {
		if p, ok := m.(act.Priced); ok {
			r.Snap.Shop = p.Shop
		}
	}
	r.Show().Shows("at the earliest")
	n := len(kept)
	r.Keys("t").Shows("mon-fri 18:00-21:00").Keys("enter").Run()
	if len(kept) != n {
		t.Errorf("kept again: %q", kept)
	}
	fail = errors.New("no room")
	r.Keys("t").Answer("sun 9-10").Run()
	if got := r.Said[len(r.Said)-1]; got != "the hours are not kept: no room" {
		t.Errorf("said %q", got)
	}
	r = newRig(t, order(), 78, 24, Options{}, shop.Shop{}).Shows("[shop] hours").Keys("t")
	if len(r.Said) != 1 || !strings.Contains(r.Said[0], "nowhere to keep") {
		t.Errorf("said %q", r.Said)
	}
}
