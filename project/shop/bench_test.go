package shop

import (
	"testing"
	"time"

	"chape/project/steps"
)

// BenchmarkQueue reckons the bench with 10,000 promised sheaths of the whole checklist.
func BenchmarkQueue(b *testing.B) {
	list := steps.FormThenSew(steps.Whole)
	for i := range list {
		list[i].Expect = 20 * time.Minute
	}
	now := time.Date(2026, 11, 26, 18, 0, 0, 0, time.UTC)
	var all []Promise
	for i := range 10000 {
		all = append(all, Promise{steps.StillOpen(list), time.Date(2026, 12, 1+i%400, 0, 0, 0, 0, time.UTC)})
	}
	s := evenings(b)
	for b.Loop() {
		s.Queue(all, now).Ready(all[0].Open, time.Time{}, now)
	}
}
