package value

import (
	"testing"
)

func TestProblemsSayWhere(t *testing.T) {
	ps := Problems{
		{Key: "knife.station.at", Index: 2, Found: "1 mm", Remedy: "give 2"},
		{Key: "knife.station", Index: 0, Found: "a", Remedy: "b"},
		{Key: "sheath.gap", Index: -1, Found: "3 mm", Remedy: "give more"},
	}
	for i, want := range []string{"knife.station.at of mark 3: found 1 mm: give 2", "knife.station of mark 1: found a: b", "sheath.gap: found 3 mm: give more"} {
		if got := ps[i].Error(); got != want {
			t.Errorf("Error() = %q, want %q", got, want)
		}
	}
	if got, want := ps.Error(), "knife.station.at of mark 3: found 1 mm: give 2 (and 2 more)"; got != want {
		t.Errorf("Problems.Error() = %q, want %q", got, want)
	}
	if p, ok := ps.For("sheath.gap", -1); !ok || p.Beside() != "found 3 mm: give more" {
		t.Errorf("For(sheath.gap) = %+v, %v", p, ok)
	}
	if err := (Problems)(nil).Err(); err != nil {
		t.Errorf("no problems are an error: %v", err)
	}
}
