package report

import (
	"encoding/json"
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"chape/calc"
	"chape/calc/curve"
	"chape/calc/knife"
	"chape/project/example"
	"chape/project/weigh"
)

// apartFrom is a plan in which no two figures are alike.
func apartFrom() *calc.Plan {
	plan := &calc.Plan{}
	plan.Body = calc.Body{Length: 101.5, Width: 102.5, Area: 103.5, TabLength: 104.5, AreaWithTab: 105.5, MouthStitch: 106.5, MouthCut: 107.5, Bend: 108.5,
		Offsets: []calc.Offset{{At: -10, Stitch: 9, Glue: 9, Cut: 110.5}, {At: 20, Sewn: true, Stitch: 111.5, Glue: 112.5, Cut: 113.5}}}
	plan.Welt = calc.Welt{Area: 121.5, Thickness: 122.5, Plies: 2}
	plan.Stitch = calc.Stitching{Line: 131.5, PlaneLine: 132.5, Laid: 9, Stitches: 133, Holes: 134, Pitch: 135.5, Walk: 13.65, Stack: 137.5,
		Positions: []curve.Vec{{X: 141.5, Y: 142.5}, {X: 143.5, Y: 144.5}}, Flat: []curve.Vec{{X: 145.5, Y: 146.5}}, Along: []float64{9},
		Drills: []calc.Drill{{Series: "metric", Name: "1.8 mm", Diameter: 151.5}, {Series: "number", Name: "#49", Diameter: 152.5, Choice: true}}}
	plan.Loop = calc.Loop{Rows: 2, Holes: 162, Stitches: 9, Thread: 163.5, Stack: 9, Offset: 9, Start: 9}
	plan.Thread = calc.Thread{Length: 171.5, Ratio: 172.5}
	plan.Fold = knife.FoldLine{Gap: 181.5, Slope: 182.5}
	plan.Flat.Drain = &calc.Circle{Centre: curve.Vec{X: 191.5, Y: 192.5}, Diameter: 193.5}
	plan.Strap = &calc.StrapCut{At: 201.5, Length: 202.5, ArmBack: 203.5, ArmBelly: 204.5, Width: 205.5, Snap: 206.5, Fixing: 207.5}
	return plan
}

// flat is an object's values by their paths: "body.offsets.1.cut".
func flat(v any, path string, out map[string]any) map[string]any {
	switch v := v.(type) {
	case map[string]any:
		for k, w := range v {
			flat(w, strings.TrimPrefix(path+"."+k, "."), out)
		}
	case []any:
		for i, w := range v {
			flat(w, fmt.Sprintf("%s.%d", path, i), out)
		}
	default:
		out[path] = v
	}
	return out
}

// Each key says the figure that plan.md gives it, and no other key does: lengths in mm, areas
// in mm², whatever unit the project is in. What is not there is null.
func TestJSONKeyByKey(t *testing.T) {
	want := map[string]any{
		"title": `Bar "é"`, "revision": 3.0, "drying": nil,
		"body.length": 101.5, "body.width": 102.5, "body.area": 103.5, "body.tab_length": 104.5, "body.area_with_tab": 105.5,
		"body.mouth_stitch": 106.5, "body.mouth_cut": 107.5, "body.bend": 108.5,
		"body.offsets.0.at": -10.0, "body.offsets.0.stitch": nil, "body.offsets.0.glue": nil, "body.offsets.0.cut": 110.5,
		"body.offsets.1.at": 20.0, "body.offsets.1.stitch": 111.5, "body.offsets.1.glue": 112.5, "body.offsets.1.cut": 113.5,
		"welt.area": 121.5, "welt.thickness": 122.5, "welt.plies": 2.0,
		"stitch.line": 131.5, "stitch.plane_line": 132.5, "stitch.stitches": 133.0, "stitch.holes": 134.0, "stitch.pitch": 135.5, "stitch.walk": 13.65,
		"stitch.walk10": 136.5, "stitch.stack": 137.5, "stitch.positions.0.0": 141.5, "stitch.positions.0.1": 142.5, "stitch.positions.1.0": 143.5,
		"stitch.positions.1.1": 144.5, "stitch.flat_positions.0.0": 145.5, "stitch.flat_positions.0.1": 146.5,
		"stitch.drills.0.series": "metric", "stitch.drills.0.name": "1.8 mm", "stitch.drills.0.diameter": 151.5, "stitch.drills.0.choice": false,
		"stitch.drills.1.series": "number", "stitch.drills.1.name": "#49", "stitch.drills.1.diameter": 152.5, "stitch.drills.1.choice": true,
		"loop.rows": 2.0, "loop.holes": 162.0, "loop.thread": 163.5, "thread.length": 171.5, "thread.ratio": 172.5,
		"fold_line.gap": 181.5, "fold_line.slope": 182.5, "drain.at": 191.5, "drain.from_fold": 192.5, "drain.diameter": 193.5,
		"strap.at": 201.5, "strap.length": 202.5, "strap.arm_back": 203.5, "strap.arm_belly": 204.5, "strap.width": 205.5, "strap.snap": 206.5, "strap.fixing": 207.5,
	}
	for _, unit := range []string{"mm", "in"} {
		p := bar()
		if err := p.Units.UnmarshalText([]byte(unit)); err != nil {
			t.Fatal(err)
		}
		got := flat(decode(t, p, apartFrom()), "", map[string]any{})
		for _, path := range slices.Sorted(maps.Keys(want)) {
			if v, there := got[path]; !there || v != want[path] {
				t.Errorf("%s: %s is %v, want %v", unit, path, v, want[path])
			}
		}
		for path, v := range got {
			if _, known := want[path]; !known {
				t.Errorf("%s: %s, which is %v, is no key of the plan", unit, path, v)
			}
		}
	}
}

// What a sheath does not have is null, not left out; lists are there though they are empty.
func TestJSONOfNothing(t *testing.T) {
	got := decode(t, bar(), &calc.Plan{})
	for _, key := range []string{"drain", "strap", "drying"} {
		if v, there := got[key]; v != nil || !there {
			t.Errorf("%s is %v, there: %v", key, v, there)
		}
	}
	for _, path := range [][2]string{{"body", "offsets"}, {"stitch", "positions"}, {"stitch", "flat_positions"}, {"stitch", "drills"}} {
		if v, ok := got[path[0]].(map[string]any)[path[1]].([]any); !ok || len(v) != 0 {
			t.Errorf("%v is %v, want an empty list", path, v)
		}
	}
	if v, ok := got["checks"].([]any); !ok || len(v) != 0 {
		t.Errorf("checks are %v", got["checks"])
	}
}

// The figures of the plan hang together as plan.md defines them, on the invented example:
// sums, multiples, counts, and the places of the offsets.
func TestJSONIdentities(t *testing.T) {
	p := example.Load(time.Date(2026, 11, 25, 12, 0, 0, 0, time.UTC))
	p.Sheath.Drain = 4
	plan := compute(t, p)
	data := decode(t, p, plan)
	object := func(key string) map[string]any { return data[key].(map[string]any) }
	figure := func(part, key string) float64 { return object(part)[key].(float64) }
	s := p.Sheath
	e, m := s.PointRoom.MM()+s.Gap.MM(), s.Margin.MM()+s.Sanding.MM()
	widest := 0.0
	for _, v := range plan.Flat.Cut {
		widest = max(widest, v.Y)
	}
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"length = M + rise + e + m", figure("body", "length"), s.Mouth.MM() + s.MouthRise.MM() + e + m},
		{"width = twice the widest half", figure("body", "width"), 2 * widest},
		{"area with tab = area + tab", figure("body", "area_with_tab"), figure("body", "area") + figure("body", "tab_length")*p.Belt.Tab.MM()},
		{"walk10 = ten times walk", figure("stitch", "walk10"), 10 * figure("stitch", "walk")},
		{"a hole more than stitches", figure("stitch", "holes"), figure("stitch", "stitches") + 1},
		{"places, one a hole", float64(len(object("stitch")["positions"].([]any))), figure("stitch", "holes")},
		{"flat places, one a hole", float64(len(object("stitch")["flat_positions"].([]any))), figure("stitch", "holes")},
		{"drain", figure("drain", "diameter"), 4},
	} {
		if math.Abs(c.got-c.want) > 1e-6 {
			t.Errorf("%s: %v, want %v", c.name, c.got, c.want)
		}
	}
	offsets := object("body")["offsets"].([]any)
	at := math.Ceil(-(e+m)/10-1e-9) * 10
	for i, o := range offsets {
		x := o.(map[string]any)["at"].(float64)
		if i == len(offsets)-1 {
			at = s.Mouth.MM()
		}
		if math.Abs(x-at) > 1e-9 {
			t.Errorf("offset %d stands at %v, want %v", i, x, at)
		}
		at += 10
	}
	chosen := 0
	for _, d := range object("stitch")["drills"].([]any) {
		if d.(map[string]any)["choice"].(bool) {
			chosen++
		}
	}
	if chosen != 1 {
		t.Errorf("%d drills are the choice", chosen)
	}
}

// Checks keep the plan's order and its words in the project's unit; squeeze, gather and thread
// guard are always among them, and one that holds all along has no place.
func TestJSONChecks(t *testing.T) {
	plan := compute(t, bar())
	var names []string
	for i, c := range decode(t, bar(), plan)["checks"].([]any) {
		row, want := c.(map[string]any), plan.Checks[i]
		names = append(names, row["name"].(string))
		if row["name"] != want.Name || row["value"] != want.Value || row["level"] != want.Level.String() || row["text"] != want.Text(bar().Units) || (row["at"] != nil) != want.HasAt {
			t.Errorf("check %d is %v, want %+v", i, row, want)
		}
		if want.HasAt && row["at"] != want.At {
			t.Errorf("check %s at %v, want %v", want.Name, row["at"], want.At)
		}
	}
	for _, must := range []string{"squeeze", "gather", "thread guard"} {
		if !slices.Contains(names, must) {
			t.Errorf("no check %q among %q", must, names)
		}
	}
}

// Figures are the shortest decimals that read back the same, without exponents, so that every
// reader of JSON gets them as they are (RFC 8259, 6).
func TestJSONNumbers(t *testing.T) {
	for v, want := range map[float64]string{0: "0", math.Copysign(0, -1): "0", 1.0 / 3: "0.3333333333333333", 1e21: "1000000000000000000000", 1e-9: "0.000000001", -2.5: "-2.5", math.Nextafter(0.3, 1): "0.30000000000000004"} {
		data, err := json.Marshal(number(v))
		if err != nil || string(data) != want {
			t.Errorf("%v is %s, %v, want %s", v, data, err, want)
		}
	}
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if data, err := json.Marshal(number(v)); err != nil || string(data) != "null" {
			t.Errorf("%v is %s, %v", v, data, err)
		}
	}
	if _, err := JSON(bar(), &calc.Plan{}, weigh.Drying{}); err != nil {
		t.Error(err)
	}
}
