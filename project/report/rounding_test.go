package report

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"chape/calc"
	"chape/calc/length"
	"chape/project"
	"chape/project/example"
)

// tools are what a figure is laid out with, by the row's key.
var tools = map[Key]string{
	Divider: "dividers", Pitch: "dividers", TenSteps: "tenths", First: "ruler", Stack: "calliper", ClosedLine: "ruler", FlatLine: "ruler",
	SeamThread: "reel", LoopThread: "reel", ToBuy: "area", PieceLong: "ruler", PieceWide: "ruler", TabLong: "ruler", TabWide: "ruler", Tightest: "calliper",
	Used: "area", Body: "calliper", Welt: "calliper", Bend: "calliper", Stitches: "count", Drill: "drill",
}

// shown is how each tool's figures look: halves of a millimetre for a ruler, twentieths for a
// calliper, hundredths for dividers, tenths for ten of their steps; 32nds, 64ths and
// thousandths of an inch.
var shown = map[length.Unit]map[string]*regexp.Regexp{
	length.Millimetres: {"ruler": regexp.MustCompile(`^-?\d+\.[05]$`), "calliper": regexp.MustCompile(`^-?\d+\.\d[05]$`), "dividers": regexp.MustCompile(`^\d+\.\d\d$`),
		"tenths": regexp.MustCompile(`^\d+\.\d$`), "reel": regexp.MustCompile(`^\d+\.\d\d$`), "area": regexp.MustCompile(`^\d+$`), "count": regexp.MustCompile(`^\d+$`), "drill": regexp.MustCompile(`^\d+(\.\d+)?$`)},
	length.Inches: {"ruler": regexp.MustCompile(`^-?(\d+|(\d+ )?\d+/(2|4|8|16|32))$`), "calliper": regexp.MustCompile(`^-?(\d+|(\d+ )?\d+/(2|4|8|16|32|64))$`), "dividers": regexp.MustCompile(`^\d+\.\d{3}$`),
		"tenths": regexp.MustCompile(`^\d+\.\d\d$`), "reel": regexp.MustCompile(`^\d+\.\d$`), "area": regexp.MustCompile(`^\d+\.\d{1,2}$`), "count": regexp.MustCompile(`^\d+$`), "drill": regexp.MustCompile(`^\d+(\.\d+)?$`)},
}

// units are what stands behind each tool's figures.
var units = map[length.Unit]map[string]string{
	length.Millimetres: {"reel": "m", "area": "cm²", "count": "", "drill": "mm"},
	length.Inches:      {"reel": "ft", "area": "in² ft²", "count": "", "drill": "mm"},
}

// No figure is shown closer than the tool that it is laid out with can show, nor coarser, in
// either unit, on the invented example.
func TestFiguresAreAsCloseAsTheirTool(t *testing.T) {
	for _, u := range []length.Unit{length.Millimetres, length.Inches} {
		p := example.Load(time.Date(2026, 11, 25, 12, 0, 0, 0, time.UTC))
		p.Units = u
		plan := compute(t, p)
		seen := map[Key]bool{}
		for _, r := range Figures(p, plan, u, 0.2) {
			tool, known := tools[r.Key]
			if !known || seen[r.Key] {
				t.Errorf("%s: no tool is known, or it stands there twice", r.Name)
				continue
			}
			seen[r.Key] = true
			if !shown[u][tool].MatchString(r.Value) {
				t.Errorf("%s: %q is no figure of a %s in %s", r.Name, r.Value, tool, u)
			}
			want, own := units[u][tool]
			if !own {
				want = u.String()
			}
			if r.Unit != want && !strings.Contains(" "+want+" ", " "+r.Unit+" ") {
				t.Errorf("%s is in %q, want %q", r.Name, r.Unit, want)
			}
		}
		for k := range tools {
			if !seen[k] {
				t.Errorf("%s: nothing is said of row %d", u, k)
			}
		}
		for name, rows := range map[string]Rows{"loop": LoopFigures(plan, u), "extras": Extras(p, plan, u), "bench": Bench(p, plan, u)} {
			for _, r := range rows {
				if r.Unit == u.String() && !shown[u]["ruler"].MatchString(r.Value) && !shown[u]["calliper"].MatchString(r.Value) && !strings.Contains(r.Name, "divider") && r.Key != Drill && r.Key != TenSteps {
					t.Errorf("%s: %s is %q in %s", name, r.Name, r.Value, u)
				}
			}
		}
	}
}

// inMM reads a figure back, in millimetres, by hand: whole numbers, decimals and fractions.
func inMM(t *testing.T, value string, inches bool) float64 {
	t.Helper()
	sum := 0.0
	for _, part := range strings.Fields(value) {
		top, bottom, fraction := strings.Cut(part, "/")
		v, err := strconv.ParseFloat(top, 64)
		if fraction {
			var d float64
			d, err = strconv.ParseFloat(bottom, 64)
			v /= d
		}
		if err != nil {
			t.Fatalf("%q: %v", value, err)
		}
		sum += v
	}
	if inches {
		return sum * 25.4
	}
	return sum
}

// What is shown is the nearest that its tool can show to what the plan has: off by half a step
// at most.
func TestFiguresAreTheNearest(t *testing.T) {
	p := example.Load(time.Date(2026, 11, 25, 12, 0, 0, 0, time.UTC))
	plan := compute(t, p)
	s, b := plan.Stitch, plan.Body
	for _, c := range []struct {
		k        Key
		mm       float64
		half, in float64 // half a step, mm
	}{
		{Divider, s.Walk, 0.005, 0.0127}, {Pitch, s.Pitch, 0.005, 0.0127}, {TenSteps, 10 * s.Walk, 0.05, 0.127}, {Stack, s.Stack, 0.025, 25.4 / 128}, {First, p.Stitch.First.MM(), 0.25, 25.4 / 64},
		{ClosedLine, s.PlaneLine, 0.25, 25.4 / 64}, {FlatLine, s.Line, 0.25, 25.4 / 64}, {PieceLong, b.Length + b.TabLength, 0.25, 25.4 / 64}, {PieceWide, b.Width, 0.25, 25.4 / 64},
		{TabLong, b.TabLength, 0.25, 25.4 / 64}, {TabWide, p.Belt.Tab.MM(), 0.25, 25.4 / 64}, {Body, p.Sheath.Leather.MM(), 0.025, 25.4 / 128}, {Welt, plan.Welt.Thickness, 0.025, 25.4 / 128}, {Bend, b.Bend, 0.025, 25.4 / 128},
	} {
		for _, u := range []length.Unit{length.Millimetres, length.Inches} {
			row := Figures(p, plan, u, 0.2).Pick(c.k)
			if len(row) != 1 {
				t.Fatalf("%d rows of key %d", len(row), c.k)
			}
			most := c.half
			if u == length.Inches {
				most = c.in
			}
			if off := inMM(t, row[0].Value, u == length.Inches) - c.mm; math.Abs(off) > most+1e-6 {
				t.Errorf("%s: %s is %.4f mm off %.4f", row[0].Name, row[0].Said(), off, c.mm)
			}
		}
	}
}

// Thread is said as it is pulled off the reel: metres to a hundredth, feet (304.8 mm, 16 CFR
// 500.19) to a tenth; leather as it is sold, square centimetres or, from a square foot
// (929.0304 cm²) on, square feet.
func TestReelAndHide(t *testing.T) {
	for _, c := range []struct {
		mm   float64
		m, f string
	}{{1534, "1.53", "5.0"}, {304.8, "0.30", "1.0"}, {12345, "12.35", "40.5"}, {0, "0.00", "0.0"}} {
		if got := thread(SeamThread, "x", c.mm, length.Millimetres, ""); got.Value != c.m || got.Unit != "m" {
			t.Errorf("%v mm of thread: %s", c.mm, got.Said())
		}
		if got := thread(SeamThread, "x", c.mm, length.Inches, ""); got.Value != c.f || got.Unit != "ft" {
			t.Errorf("%v mm of thread: %s", c.mm, got.Said())
		}
	}
	for _, c := range []struct {
		mm2     float64
		cm2, in string
	}{{24000, "240 cm²", "37.2 in²"}, {92903.04, "929 cm²", "1.00 ft²"}, {139354.56, "1394 cm²", "1.50 ft²"}} {
		if got := area(Used, "x", c.mm2, length.Millimetres, "").Said(); got != c.cm2 {
			t.Errorf("%v mm²: %s, want %s", c.mm2, got, c.cm2)
		}
		if got := area(Used, "x", c.mm2, length.Inches, "").Said(); got != c.in {
			t.Errorf("%v mm²: %s, want %s", c.mm2, got, c.in)
		}
	}
}

// The drill chosen stands with its unit apart, a numbered one has none; others that do are
// said from the smallest to the largest of each series, and the choice is not among them.
func TestDrills(t *testing.T) {
	for _, c := range []struct {
		drills string // name, * the choice, by series
		want   string
	}{
		{"metric 1.8 mm*", "drill: 1.8 mm ()"},
		{"number #49*", "drill: #49 ()"},
		{"metric 1.7 mm,metric 1.8 mm*,metric 1.9 mm,inch 5/64 in,number #50,number #49", "drill: 1.8 mm (or 1.7 mm, 1.9 mm, 5/64 in, #50 to #49)"},
		{"inch 1/16 in,inch 5/64 in*,inch 3/32 in,inch 7/64 in", "drill: 5/64 in (or 1/16 in, 3/32 in to 7/64 in)"},
	} {
		var s calc.Stitching
		for _, d := range strings.Split(c.drills, ",") {
			series, name, _ := strings.Cut(d, " ")
			s.Drills = append(s.Drills, calc.Drill{Series: series, Name: strings.TrimSuffix(name, "*"), Choice: strings.HasSuffix(name, "*")})
		}
		if got := strings.TrimSpace(lines(Rows{drill(s)})); got != c.want {
			t.Errorf("%s: %q, want %q", c.drills, got, c.want)
		}
	}
}

// Rows that are left out or picked leave those that they came from as they were.
func TestRowsAreNotChanged(t *testing.T) {
	rows := Rows{{Key: Stitches, Name: "a"}, {Key: Divider, Name: "b"}, {Key: Drill, Name: "c"}, {Key: Body, Name: "d"}}
	if got := lines(rows.Without(Divider, Body)); got != "a:  ()\nc:  ()\n" {
		t.Errorf("Without = %q", got)
	}
	if got := lines(rows.WithoutBench()); got != "a:  ()\nd:  ()\n" {
		t.Errorf("WithoutBench = %q", got)
	}
	if got := fmt.Sprint(len(rows), rows[1].Name, rows[3].Name); got != "4bd" {
		t.Errorf("the rows are now %s", got)
	}
	if got := (Row{Note: "a", Why: "b"}).Words() + (Row{Note: "a"}).Words() + (Row{Why: "b"}).Words() + (Row{}).Words(); got != "a; bab" {
		t.Errorf("Words = %q", got)
	}
	if got := (Row{Value: "4.05", Unit: "mm"}).Said() + (Row{Value: "37"}).Said(); got != "4.05 mm37" {
		t.Errorf("Said = %q", got)
	}
	if got := HalfWidths(compute(t, project.Defaults()), length.Inches).Name; got != "half-widths, in" {
		t.Errorf("a table in inches is called %q", got)
	}
}
