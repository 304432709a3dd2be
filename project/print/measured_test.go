package print

import (
	"testing"

	"chape/project/print/sheet"
)

func TestMeasured(t *testing.T) {
	now := sheet.Correction{X: 99, Y: 100}
	for text, want := range map[string]sheet.Correction{
		"none": {}, "99,100": now, "100 100": {X: 99, Y: 100}, "101,100": {X: 99.99, Y: 100}, "99,5, 100,2": {X: 98.51, Y: 100.2}, "99.5;100": {X: 98.51, Y: 100},
	} {
		if got, err := Measured(text, now); err != nil || got != want {
			t.Errorf("Measured(%q) = %v, %v; want %v", text, got, err, want)
		}
	}
	for _, text := range []string{"99.5", "a b", "0 100", "-1 100", "120 100", "1 2 3", ",", "95 100"} {
		if got, err := Measured(text, now); err == nil || got != now {
			t.Errorf("Measured(%q) = %v, %v", text, got, err)
		}
	}
}
