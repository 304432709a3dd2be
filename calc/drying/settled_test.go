package drying

import (
	"testing"
	"time"
)

// The trade's own test (common practice, no source): two weighings three hours
// apart that differ by less than 0.3 % of the dry weight; on a scale whose step
// is more than that, by less than a step and six hours apart.
func TestSettled(t *testing.T) {
	w := func(atGrams ...float64) []Weighing {
		var w []Weighing
		for i := 0; i < len(atGrams); i += 2 {
			w = append(w, Weighing{hours(atGrams[i]), atGrams[i+1]})
		}
		return w
	}
	for _, tt := range []struct {
		name         string
		before, step float64
		w            []Weighing
		want         bool
		first        float64 // hour
	}{
		{"three hours and 0.2 g of 100", 100, 0.1, w(0, 150, 30, 100.9, 33, 100.7), true, 30},
		{"0.3 g of 100 is not less than 0.3 %", 100, 0.1, w(0, 150, 30, 101, 33, 100.7), false, 0},
		{"a minute too soon", 100, 0.1, w(0, 150, 30, 100.9, 32.98, 100.9), false, 0},
		{"one between does not matter", 100, 0.1, w(0, 150, 30, 100.9, 32, 100.9, 33, 100.7), true, 30},
		{"heavier by as little is as good", 100, 0.1, w(0, 150, 30, 100.7, 33, 100.9), true, 30},
		{"a kitchen scale, three hours", 100, 1, w(0, 150, 30, 101, 33, 101), false, 0},
		{"a kitchen scale, six hours", 100, 1, w(0, 150, 30, 101, 36, 101), true, 30},
		{"a kitchen scale, a step less", 100, 1, w(0, 150, 30, 102, 36, 101), false, 0},
		{"not weighed before wetting", 0, 0.1, w(0, 150, 30, 100.9, 33, 100.7), true, 30},
		{"in a bag", 100, 0.1, w(0, 150, 3, 150), false, 0},
		{"one", 100, 0.1, w(0, 101), false, 0},
		{"none", 100, 0.1, nil, false, 0},
	} {
		got, ok := Record{Before: tt.before, Step: tt.step, Weighings: tt.w}.Settled()
		if ok != tt.want || ok && got.First.At != hours(tt.first) {
			t.Errorf("%s: Settled = %v, %v, want %v", tt.name, got, ok, tt.want)
		}
	}
}

func TestNext(t *testing.T) {
	for _, tt := range []struct {
		name string
		step float64
		at   []float64
		want float64 // hours; 0: no more
	}{
		{"no estimate yet: half as long again", 0.1, []float64{0, 4}, 6},
		{"at once: in an hour", 0.1, []float64{0}, 1},
		{"half way to 32.2 h", 0.1, []float64{0, 3, 6, 10}, 21.1},
		{"near: three hours on, to be compared", 0.1, []float64{0, 3, 6, 10, 24, 29}, 32},
		{"a kitchen scale: six hours on", 1, []float64{0, 3, 6, 10, 24, 29}, 35},
		{"within 2 %: three hours on", 0.1, []float64{0, 5, 10, 20, 34}, 37},
		{"dry by weight: no more", 0.1, []float64{0, 5, 10, 20, 60, 70}, 0},
	} {
		r := Record{Before: 120, Step: tt.step, Weighings: exact(120, 60, 0.1, tt.at...)}
		e, _ := r.Estimate()
		got, ok := r.Next(e)
		if ok != (tt.want > 0) || ok && !approxEqual(got.Hours(), tt.want, 0.3) {
			t.Errorf("%s: Next = %v, %v, want %v h", tt.name, got, ok, tt.want)
		}
	}
	if at, ok := (Record{}).Next(Estimate{}); ok {
		t.Errorf("Next of nothing weighed = %v, want none", at)
	}
}

// However far off the likely moment, the next weighing is asked for within half a day.
func TestNextIsWithinHalfADay(t *testing.T) {
	r := Record{Weighings: []Weighing{{0, 120}, {2 * time.Hour, 118}, {4 * time.Hour, 116}}}
	if at, ok := r.Next(Estimate{Dry: 75, Likely: 200 * time.Hour}); !ok || at != 16*time.Hour {
		t.Errorf("next at %v, %v; want 16 h", at, ok)
	}
}
