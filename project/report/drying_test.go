package report

import (
	"encoding/json"
	"strings"
	"testing"
	"time"

	"chape/calc"
	"chape/project"
	"chape/project/weigh"
)

// The drying figures of the JSON plan: those of the weighings, with moments on
// the weighings' own clock.
func TestJSONDrying(t *testing.T) {
	start := time.Date(2026, 11, 25, 9, 30, 0, 0, time.FixedZone("", 3600))
	var p project.Project
	read := func(t *testing.T) map[string]any {
		t.Helper()
		data, err := JSON(p, &calc.Plan{}, weigh.DryingOf(p.Weigh, 0))
		if err != nil {
			t.Fatal(err)
		}
		var out struct {
			Drying map[string]any `json:"drying"`
		}
		if err := json.Unmarshal(data, &out); err != nil {
			t.Fatal(err)
		}
		return out.Drying
	}
	if got := read(t); got != nil {
		t.Errorf("without weighings drying is %v, want null", got)
	}
	p.Weigh = []weigh.Weighing{{When: start.Add(-time.Hour), Grams: 121, State: weigh.Before}, {When: start, Grams: 179.5, State: "drying"}}
	if got := read(t); got["before"] != 121.0 || got["last"] != 179.5 || got["likely"] != nil || !strings.HasPrefix(got["text"].(string), "1 of at least 3") ||
		got["weigh_next"] != "2026-11-25T10:30:00+01:00" {
		t.Errorf("after one weighing drying is %v", got)
	}
	for _, w := range []struct{ h, g float64 }{{3, 163}, {6, 154}, {10, 142.2}, {14, 136}} {
		p.Weigh = append(p.Weigh, weigh.Weighing{When: start.Add(time.Duration(w.h * float64(time.Hour))), Grams: w.g, State: "drying"})
	}
	got, d := read(t), weigh.DryingOf(p.Weigh, 0)
	if got["weighings"] != 5.0 || got["dry"] != d.Estimate.Dry || got["rate"] != d.Estimate.Rate || got["slow"] != d.Estimate.Slow ||
		got["reached"] != false || got["steady"] != false || got["text"] != "" {
		t.Errorf("drying is %v, want the figures of %+v", got, d.Estimate)
	}
	for key, at := range map[string]time.Duration{"earliest": d.Estimate.Earliest, "likely": d.Estimate.Likely, "latest": d.Estimate.Latest} {
		when, err := time.Parse(time.RFC3339, got[key].(string))
		if want := start.Add(at).Round(time.Second); err != nil || !when.Equal(want) || !strings.HasSuffix(got[key].(string), "+01:00") {
			t.Errorf("%s is %v, want %v", key, got[key], want)
		}
	}
}
