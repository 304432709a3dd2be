package report

import (
	"strings"
	"testing"

	"chape/calc/bend"
	"chape/calc/length"
)

// A hide that gives 10 % wet, 4 % for good, by the plan's own room at its tightest place.
func TestEased(t *testing.T) {
	plan := compute(t, bar())
	_, at := plan.AfterStretch(0)
	room := plan.Across(at).Room
	say := func(mm float64) string { return length.Length(mm).Format(length.Millimetres, length.Calliper) }
	got := Eased(plan, bend.Stretch{Wet: 0.1, Kept: 0.04, Plus: 0.007}, length.Millimetres)
	for _, want := range []string{"gives " + say(0.1*room) + " ± " + say(0.007*room) + " a side while wet", "of which " + say(0.04*room) + " stays", "as cut", "once dry"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q has no %q", got, want)
		}
	}
	if got := Eased(plan, bend.Stretch{Wet: 0.1, Plus: 0.007}, length.Inches); strings.Contains(got, "stays") || !strings.Contains(got, "once formed") {
		t.Errorf("not dried yet: %q", got)
	}
}
