package report

import (
	"bytes"
	"encoding/json"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"

	"chape/calc"
	"chape/calc/curve"
	"chape/calc/knife"
	"chape/calc/length"
	"chape/project"
	"chape/project/plantest"
	"chape/project/steps"
	"chape/project/weigh"
)

// bar is the worked case of the design notes: a square bar 160 long.
func bar() project.Project {
	slab := func(at length.Length) knife.Station {
		return knife.Station{At: at, Bottom: 30, Thick: 6, Kind: knife.Slab}
	}
	return project.Project{
		Title: `Bar "é"`, Revision: 3,
		Knife: knife.Knife{Stations: []knife.Station{slab(0), slab(160)}},
		Sheath: calc.Sheath{Mouth: 120, Leather: 3, Welt: 4, Plies: 1, Clearance: 1.5, HandleClearance: 1, Gap: 5, Margin: 5,
			Blend: 12, Neutral: 0.5},
		Belt:   calc.Belt{Width: 40, Thickness: 4, Ease: 4, Tab: 20, Row: 12, Lap: 8, Centred: true},
		Stitch: calc.Stitch{Pitch: 4, Thread: 0.8, First: 4, Last: 4, Back: 2, Tail: 150, Waste: 0.05},
		Steps: []steps.Step{
			{Title: "Tape the edge", Done: time.Unix(1, 0), Caution: "Never a palm under the point."},
			{Title: "Cement", Hold: 15 * time.Minute},
			{Title: "Dry", Hold: 24 * time.Hour, Latest: 49*time.Hour + 30*time.Minute},
		},
	}
}

const offcuts = 0.25

var compute = plantest.Of

func decode(t *testing.T, p project.Project, plan *calc.Plan) map[string]any {
	t.Helper()
	data, err := JSON(p, plan, weigh.Drying{})
	if err != nil {
		t.Fatalf("JSON: %v", err)
	}
	var out map[string]any
	if err := json.Unmarshal(data, &out); err != nil {
		t.Fatalf("JSON does not read back: %v", err)
	}
	return out
}

// The keys that other programs rely on, in the order in which they stand.
var keys = []string{"title", "revision", "body", "length", "width", "area", "tab_length", "area_with_tab", "mouth_stitch", "mouth_cut",
	"bend", "offsets", "at", "stitch", "glue", "cut", "welt", "area", "thickness", "plies", "stitch", "line", "plane_line", "stitches",
	"holes", "pitch", "walk", "walk10", "stack", "positions", "flat_positions", "drills", "series", "name", "diameter", "choice", "loop", "rows",
	"holes", "thread", "thread", "length", "ratio", "fold_line", "gap", "slope",
	"drain", "at", "from_fold", "diameter", "strap", "at", "length", "arm_back", "arm_belly", "width", "snap", "fixing", "checks", "name", "value", "at", "level", "text", "drying"}

func TestJSONKeys(t *testing.T) {
	plan := compute(t, bar())
	plan.Flat.Drain, plan.Strap = &calc.Circle{}, &calc.StrapCut{}
	plan.Body.Offsets, plan.Stitch.Drills, plan.Checks = plan.Body.Offsets[:1], plan.Stitch.Drills[:1], plan.Checks[:1]
	data, err := JSON(bar(), plan, weigh.Drying{})
	if err != nil {
		t.Fatal(err)
	}
	dec := json.NewDecoder(strings.NewReader(string(data)))
	var got []string
	for isKey, depth := false, []bool{}; ; {
		tok, err := dec.Token()
		if err != nil {
			break
		}
		switch v := tok.(type) {
		case json.Delim:
			if v == '{' || v == '[' {
				depth = append(depth, v == '{')
			} else {
				depth = depth[:len(depth)-1]
			}
			isKey = len(depth) > 0 && depth[len(depth)-1]
			continue
		case string:
			if isKey {
				got = append(got, v)
				isKey = false
				continue
			}
		}
		isKey = len(depth) > 0 && depth[len(depth)-1]
	}
	if !reflect.DeepEqual(got, keys) {
		t.Errorf("keys\n%v\nwant\n%v", got, keys)
	}
	if !strings.Contains(string(data), "\n  \"body\": {\n    \"length\"") || data[len(data)-1] != '\n' {
		t.Error("the object is not indented or does not end its line")
	}
}

// The worked case's figures, reckoned by hand from the formulas of the
// geometry: y = 3 + 30 + √(1.5² + 1²) + 3.5 + (π/4)·3.
func TestJSONWorkedCase(t *testing.T) {
	got := decode(t, bar(), compute(t, bar()))
	y := 36.5 + math.Sqrt(3.25) + math.Pi*3/4
	for _, c := range []struct {
		part, key string
		want, tol float64
	}{
		{"body", "mouth_stitch", y, 1e-3}, {"body", "mouth_cut", y + 5, 1e-3}, {"body", "bend", math.Pi / 4 * 3, 1e-9},
		{"body", "length", 130, 1e-9}, {"body", "tab_length", 90.99557, 1e-5}, {"stitch", "plane_line", 115 + 5 + math.Pi*2.5 + 30, 1e-2},
		{"stitch", "stitches", 37, 0}, {"stitch", "holes", 38, 0}, {"stitch", "pitch", 4.0501, 1e-3}, {"stitch", "stack", 10, 1e-9},
		{"welt", "plies", 1, 0}, {"welt", "thickness", 4, 1e-9},
	} {
		v := got[c.part].(map[string]any)[c.key].(float64)
		if math.Abs(v-c.want) > c.tol {
			t.Errorf("%s.%s = %v, want %v", c.part, c.key, v, c.want)
		}
	}
	offsets := got["body"].(map[string]any)["offsets"].([]any)
	first := offsets[0].(map[string]any)
	if first["at"] != -10.0 || first["stitch"] != nil || first["glue"] != nil {
		t.Errorf("first row %v, want it at -10 without a stitch line", first)
	}
	if n := len(got["stitch"].(map[string]any)["positions"].([]any)); n != 38 {
		t.Errorf("%d positions, want one a hole", n)
	}
}

func TestJSONIsNeverBroken(t *testing.T) {
	p := bar()
	p.Title = "\"\\\x00\u2028 \xff 🔪"
	plan := compute(t, p)
	plan.Body.Width, plan.Thread.Ratio = math.NaN(), math.Inf(1)
	plan.Stitch.Walk = math.Copysign(0, -1)
	plan.Stitch.Positions = []curve.Vec{{X: math.Inf(-1), Y: 1e-20}}
	got := decode(t, p, plan)
	if got["body"].(map[string]any)["width"] != nil || got["thread"].(map[string]any)["ratio"] != nil {
		t.Error("what is no number is not null")
	}
	data, _ := JSON(p, &calc.Plan{}, weigh.Drying{})
	for _, bad := range []string{"NaN", "Inf", "-0,", "null"} { // but where there is none of it
		known := strings.NewReplacer(`"drain": null`, "", `"strap": null`, "", `"drying": null`, "").Replace(string(data))
		if strings.Contains(known, bad) {
			t.Errorf("the empty plan has %s in it", bad)
		}
	}
	for range 3 {
		again, _ := JSON(p, &calc.Plan{}, weigh.Drying{})
		if string(again) != string(data) {
			t.Fatal("two runs give different bytes")
		}
	}
}

func TestPageWidth(t *testing.T) {
	long := bar()
	long.Title = strings.Repeat("Ünbröken", 40)
	long.Customer.Name = "ナイフ" + strings.Repeat("職人", 30)
	long.Steps[0].Title = strings.Repeat("x", 200)
	for _, p := range []project.Project{bar(), long} {
		for _, u := range []length.Unit{length.Millimetres, length.Inches} {
			page := Page(p, compute(t, p), u, offcuts)
			if p.Title == bar().Title && strings.Contains(page, "…") {
				t.Errorf("%s: a figure or a word is cut off on the page", u)
			}
			for i, l := range strings.Split(page, "\n") {
				if w := ansi.StringWidth(l); w > 80 {
					t.Errorf("%s line %d is %d wide: %s", u, i+1, w, l)
				}
				if strings.TrimRight(l, " ") != l {
					t.Errorf("%s line %d ends in blanks: %q", u, i+1, l)
				}
			}
		}
	}
}

func TestPageSays(t *testing.T) {
	p := bar()
	page := Page(p, compute(t, p), length.Millimetres, offcuts)
	for _, want := range []string{
		"Bar \"é\"\npattern 3, right hand, edge to the rear\n",
		"stitches                     37         38 holes",
		"divider setting               4.05 mm ",
		"ten steps of it              40.5  mm ",
		"thickness to sew through     10.00 mm ",
		"tab, long                    91.0  mm ",
		"           120.0         40.5       37.0      45.5  mouth\n",
		"    10            40.5",
		"[x] 1 Tape the edge",
		"(wait 15 min)", "(wait 24 h, look by 2 d 2 h)",
		"tightest place", "leather dust can cause cancer",
	} {
		if !strings.Contains(page, want) {
			t.Errorf("the page does not say %q:\n%s", want, page)
		}
	}
	if strings.Contains(Page(bar(), compute(t, bar()), length.Inches, offcuts), "0 mm from") {
		t.Error("a page in inches shows millimetres")
	}
}

func TestPageTakesNoOrders(t *testing.T) {
	p := bar()
	p.Title = "a\x1b[2Jb\nc\u202ed \u009b\x7f e\u200bf\U000e0041"
	const bad = "\x1b\u202e\u009b\x7f\u200b\U000e0041"
	if text, err := JSON(p, compute(t, p), weigh.Drying{}); err != nil || bytes.ContainsAny(text, bad) || !bytes.Contains(text, []byte(`a\u001b[2Jb\nc\u202ed \u009b\u007f e\u200bf\udb40\udc41`)) {
		t.Errorf("the JSON of a hostile title: %v\n%.200s", err, text)
	}
	if page := Page(p, compute(t, p), p.Units, offcuts); strings.ContainsAny(page, bad) || !strings.Contains(page, "a␛[2Jb cd \ufffd␡ ef\n") {
		t.Errorf("a title moves the cursor: %q", strings.SplitN(page, "\n", 2)[0])
	}
}

func TestFiguresAlign(t *testing.T) {
	for _, c := range []struct{ v, whole, part string }{
		{"37", "37", ""}, {"4.05", "4", ".05"}, {"1 3/8", "1", " 3/8"}, {"3/8", "", " 3/8"}, {"-9/32", "", " -9/32"},
	} {
		if w, p := SplitFigure(c.v); w != c.whole || p != c.part {
			t.Errorf("SplitFigure(%q) = %q, %q, want %q, %q", c.v, w, p, c.whole, c.part)
		}
	}
	page := Page(bar(), compute(t, bar()), length.Millimetres, offcuts)
	var points []int
	for _, l := range strings.Split(page, "\n") {
		if f := strings.Fields(l); len(f) > 2 && slices.Contains(f, "mm") && strings.Contains(l, ".") && len(points) < 12 {
			points = append(points, strings.Index(l, "."))
		}
	}
	for _, x := range points[:8] {
		if x != points[0] {
			t.Errorf("decimal points stand in columns %v, want one", points)
			break
		}
	}
}

// Between the plan's own rows the half-widths come from its curves; where
// both have a row they must agree.
func TestInchRows(t *testing.T) {
	plan := compute(t, bar())
	for _, o := range plan.Body.Offsets {
		if o.At < -9.9 {
			continue // the curve rises straight up there
		}
		if got := plan.Flat.Cut.Height(o.At); math.Abs(got-o.Cut) > 0.01 {
			t.Errorf("cut line at %v: %v from the curve, %v in the plan", o.At, got, o.Cut)
		}
		if got := plan.Flat.Glue.Height(o.At); o.Sewn && math.Abs(got-o.Glue) > 0.01 {
			t.Errorf("glue line at %v: %v from the curve, %v in the plan", o.At, got, o.Glue)
		}
	}
	rows := HalfWidths(plan, length.Inches).Rows
	for _, want := range []string{"0", "1/2", "1", "1 1/2", "4 1/2"} {
		if !slices.ContainsFunc(rows, func(r []string) bool { return r[0] == want }) {
			t.Errorf("the inch table has no row at %s", want)
		}
	}
}

// (π/2)·k·(t − paper): 3 mm leather, 0.1 mm paper, k 0.5.
func TestHang(t *testing.T) {
	if got, want := Hang(compute(t, bar()), 0.1), math.Pi/4*2.9; math.Abs(got-want) > 1e-9 {
		t.Errorf("Hang = %v, want %v", got, want)
	}
}

func TestTenths(t *testing.T) {
	for _, c := range []struct {
		holes int
		want  []int
	}{{0, nil}, {1, []int{0}}, {2, []int{0, 1}}, {10, []int{0, 9}}, {21, []int{0, 9, 19, 20}}} {
		if got := Tenths(c.holes); !slices.Equal(got, c.want) {
			t.Errorf("Tenths(%d) = %v, want %v", c.holes, got, c.want)
		}
	}
}
