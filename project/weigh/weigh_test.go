package weigh

import (
	"strings"
	"testing"
	"time"
)

// A first-order decay, measured: Zumdahl, Chemistry, chapter 11, exercise
// 37, with an hour for each 120 s. The concentration stands for the water in
// 100 g of leather. The published rate, 8.34979e-4 /s by least squares, leaves
// 2 % after ln 50 / 8.34979e-4 s = 4685 s, here 39.04 h.
func zumdahl(n int, start time.Time) []Weighing {
	seconds := []float64{0, 120, 300, 600, 1200, 1800, 2400, 3000, 3600}
	left := []float64{1, .91, .78, .59, .37, .22, .13, .082, .050}
	var w []Weighing
	for i := range n {
		w = append(w, Weighing{start.Add(time.Duration(seconds[i] / 120 * float64(time.Hour))), 100 + 100*left[i], "drying"})
	}
	return w
}

var wetted = time.Date(2026, 11, 25, 6, 0, 0, 0, time.UTC) // a Wednesday

func TestDrynessInWords(t *testing.T) {
	before := Weighing{wetted.Add(-time.Hour), 100, Before}
	room := Room{20, 50, true, true}
	at := func(h float64) time.Time { return wetted.Add(time.Duration(h * float64(time.Hour))) }
	for _, c := range []struct {
		name  string
		weigh []Weighing
		room  Room
		now   time.Time
		want  string
	}{
		{"nothing", nil, Room{}, at(0), ""},
		{"a room alone does not say when it was wetted", nil, room, at(0), ""},
		{"the usual 24 to 48 h (common practice, no source)", []Weighing{before}, room, at(0), "a guess: dry Thu 05:00 to Fri 05:00"},
		{"the guess is over", []Weighing{before}, room, at(48), ""},
		{"half a room", []Weighing{before}, Room{Humidity: 50, HasHumidity: true}, at(0), ""},
		{"too hot a room", []Weighing{before}, Room{50, 50, true, true}, at(0), ""},
		{"published", append(zumdahl(6, wetted), before), Room{}, at(16), "dry about Thu 21:30"},
		{"published, the room does not matter", append(zumdahl(6, wetted), before), room, at(16), "dry about Thu 21:30"},
		{"later", append(zumdahl(9, wetted), before), Room{}, at(60), "dry by now: weigh it"},
		{"reached", append(zumdahl(9, wetted), before, Weighing{at(40), 101.5, "drying"}), Room{}, at(41), "near dry by weight, 22:00"},
	} {
		text, ok := DryingOf(c.weigh, 0).By(c.room, c.weigh, c.now)
		if text != c.want || ok != (c.want != "") {
			t.Errorf("%s: By = %q, %v, want %q", c.name, text, ok, c.want)
		}
	}
}

// The moment foretold from the first six is that of the published rate.
func TestDryingForetellsThePublished(t *testing.T) {
	d := DryingOf(append(zumdahl(6, wetted), Weighing{wetted.Add(-time.Hour), 100, Before}), 0)
	want := wetted.Add(39*time.Hour + 2*time.Minute)
	from, likely, to := d.Window()
	if off := likely.Sub(want).Abs(); d.Err != nil || off > time.Hour || from.After(want) || to.Before(want) {
		t.Errorf("Window = %v, %v, %v, %v; want %v in it and within 1 h of the likely moment", from, likely, to, d.Err, want)
	}
}

// Only the weighings since the last wetting count, whatever their order in the
// file.
func TestDryingOfTheLastWetting(t *testing.T) {
	var weigh []Weighing
	weigh = append(weigh, zumdahl(4, wetted)...)
	weigh = append(weigh, Weighing{wetted.Add(-90 * time.Hour), 98, Before}, Weighing{wetted.Add(-80 * time.Hour), 150, "drying"},
		Weighing{wetted, 100, Before})
	d := DryingOf(weigh, 0)
	if d.Before != 6 || len(d.Rows) != 4 || d.Rows[0] != 0 || len(d.Earlier) != 2 || d.Earlier[0] != 4 || !d.Start.Equal(wetted) {
		t.Errorf("DryingOf = %+v", d)
	}
	if d.Err != nil || d.Estimate.Before != 100 {
		t.Errorf("DryingOf = %+v, want a fit towards 100 g", d)
	}
	from, likely, to := d.Window()
	if e := d.Estimate; from.After(d.Start.Add(e.Earliest)) || to.Before(d.Start.Add(e.Latest)) || likely.Before(from) || likely.After(to) {
		t.Errorf("Window = %v, %v, %v does not hold %v, %v, %v", from, likely, to, e.Earliest, e.Likely, e.Latest)
	}
	if d := DryingOf([]Weighing{{wetted, 100, Before}}, 0); d.Err == nil || !strings.Contains(d.Err.Error(), "weigh it, the knife out") {
		t.Errorf("only weighed before: %v", d.Err)
	}
}

// Beside a hold: by the weighings alone, whatever the room.
func TestByWeight(t *testing.T) {
	before := Weighing{wetted.Add(-time.Hour), 100, Before}
	at := func(h float64) time.Time { return wetted.Add(time.Duration(h * float64(time.Hour))) }
	more := func(list []Weighing, h, grams float64) []Weighing {
		return append(list, before, Weighing{at(h), grams, "drying"})
	}
	for _, c := range []struct {
		name  string
		weigh []Weighing
		step  float64
		now   time.Time
		want  string
	}{
		{"nothing", nil, 0, at(0), ""},
		{"only before", []Weighing{before}, 0, at(0), ""},
		{"one", more(nil, 0, 200), 0, at(0.5), "not dry by weight yet: weigh it about 07:00"},
		{"published", append(zumdahl(6, wetted), before), 0, at(16), "not dry by weight: about Thu 21:"},
		{"the time is over", append(zumdahl(6, wetted), before), 0, at(60), "not dry by weight when last weighed: weigh it"},
		{"within 2 %", more(zumdahl(9, wetted), 40, 101.5), 0, at(41), "near dry by weight: weigh it about Fri 01:00"},
		{"two alike", append(more(zumdahl(9, wetted), 40, 101.5), Weighing{at(43), 101.4, "drying"}), 0, at(44), "dry by weight"},
		{"two alike, too coarse a scale", append(more(zumdahl(9, wetted), 40, 101.5), Weighing{at(43), 101.5, "drying"}), 0.5, at(44), "near dry by weight: weigh it about 07:00"},
	} {
		d := DryingOf(c.weigh, c.step)
		if text := d.ByWeight(c.now); text != c.want && !(strings.HasSuffix(c.want, ":") && strings.HasPrefix(text, c.want)) {
			t.Errorf("%s: ByWeight = %q, want %q", c.name, text, c.want)
		}
		if d.Steady != (c.want == "dry by weight") || d.Steady && (!d.Since.Equal(at(40)) || !d.Next.IsZero()) {
			t.Errorf("%s: steady %v since %v, next %v", c.name, d.Steady, d.Since, d.Next)
		}
	}
}
