package print

import (
	"encoding/xml"
	"io"
	"math"
	"reflect"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"chape/calc"
	"chape/calc/curve"
	"chape/project/print/sheet"
	"chape/project/print/svg"
)

// svgShape is a path or circle of a written SVG with its group.
type svgShape struct {
	group  string
	closed bool
	pts    curve.Line
	circle *sheet.Circle
}

func readSVG(t *testing.T, data []byte) (root map[string]string, shapes []svgShape) {
	t.Helper()
	dec := xml.NewDecoder(strings.NewReader(string(data)))
	group := ""
	for {
		tok, err := dec.Token()
		if err == io.EOF {
			return root, shapes
		}
		if err != nil {
			t.Fatalf("the SVG is no XML: %v", err)
		}
		switch e := tok.(type) {
		case xml.EndElement:
			if e.Name.Local == "g" {
				group = ""
			}
		case xml.StartElement:
			at := map[string]string{}
			for _, a := range e.Attr {
				at[a.Name.Local] = a.Value
			}
			switch e.Name.Local {
			case "svg":
				root = at
			case "g":
				group = at["id"]
				shapes = append(shapes, svgShape{group: group}) // so that an empty group shows
			case "path":
				shapes = append(shapes, svgPath(t, group, at["d"]))
			case "circle":
				shapes = append(shapes, svgShape{group: group, circle: &sheet.Circle{At: curve.Vec{X: number(t, at["cx"]), Y: number(t, at["cy"])}, Radius: number(t, at["r"])}})
			}
		}
	}
}

func svgPath(t *testing.T, group, d string) svgShape {
	t.Helper()
	s := svgShape{group: group, closed: strings.HasSuffix(d, "Z")}
	for _, p := range strings.Split(strings.Trim(d, "MZ"), "L") {
		x, y, _ := strings.Cut(p, " ")
		s.pts = append(s.pts, curve.Vec{X: number(t, x), Y: number(t, y)})
	}
	return s
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		t.Fatalf("%q is no figure", s)
	}
	return v
}

func TestSVG(t *testing.T) {
	p := garden()
	plan := compute(t, p)
	data, err := SVG(p, plan, Options{Date: day})
	if err != nil {
		t.Fatal(err)
	}
	root, shapes := readSVG(t, data)

	// True size: one user unit is one millimetre.
	box := strings.Fields(root["viewBox"])
	if root["width"] != box[2]+"mm" || root["height"] != box[3]+"mm" {
		t.Errorf("width %s, height %s, viewBox %v: want the same in mm", root["width"], root["height"], box)
	}
	view := curve.Line{{X: number(t, box[0]), Y: number(t, box[1])}}
	view = append(view, view[0].Add(curve.Vec{X: number(t, box[2]), Y: number(t, box[3])}))

	groups := map[string]int{}
	for _, s := range shapes {
		groups[s.group]++
		if (s.group == "cut" || s.group == "welt") && s.pts != nil && !s.closed {
			t.Errorf("a path to cut in group %q is open", s.group)
		}
		for _, v := range s.pts {
			if v.X < view[0].X || v.Y < view[0].Y || v.X > view[1].X || v.Y > view[1].Y {
				t.Errorf("%s: %v lies outside the picture", s.group, v)
			}
		}
	}
	for _, g := range []string{"cut", "stitch", "holes", "fold", "glue", "relief", "welt", "marks"} {
		if groups[g] < 2 {
			t.Errorf("group %q is missing or empty", g)
		}
	}
	checkSVGHoles(t, shapes, plan)

	want := facing{1}.line(plan.Flat.Outline)
	want = append(want, want[0])
	for _, s := range shapes {
		if s.group != "cut" || s.pts == nil {
			continue
		}
		ring := append(append(curve.Line{}, s.pts...), s.pts[0])
		for _, v := range want {
			if d := toLine(v, ring); d > 0.05 {
				t.Errorf("the cut path strays %.3f mm at %v", d, v)
			}
		}
		if len(s.pts) > len(want)/3 {
			t.Errorf("cut path of %d points for a curve sampled at %d: that is not thinned", len(s.pts), len(want))
		}
	}
}

func checkSVGHoles(t *testing.T, shapes []svgShape, plan *calc.Plan) {
	t.Helper()
	f := facing{1}
	want := append(f.line(plan.Stitch.Flat), f.line(mirrored(plan.Stitch.Flat))...)
	want = append(append(want, f.line(plan.Loop.Body)...), f.line(plan.Loop.Lap)...)
	var got curve.Line
	for _, s := range shapes {
		if s.group == "holes" && s.circle != nil {
			got = append(got, s.circle.At)
			if math.Abs(2*s.circle.Radius-plan.Stitch.Choice().Diameter) > 0.002 {
				t.Errorf("hole of %.3f mm, want that of the drill, %v", 2*s.circle.Radius, plan.Stitch.Choice())
			}
		}
	}
	if len(got) != len(want) {
		t.Errorf("%d holes, want %d", len(got), len(want))
	}
	for _, h := range want {
		if d := nearest(h, got); d > 0.05 {
			t.Errorf("hole %v is %.3f mm off", h, d)
		}
	}
}

func TestSVGHalfAndTrial(t *testing.T) {
	p := garden()
	plan := compute(t, p)
	data, err := SVG(p, plan, Options{Half: true, Trial: 0.1})
	if err != nil {
		t.Fatal(err)
	}
	_, shapes := readSVG(t, data)
	for _, s := range shapes {
		if s.group == "cut" && s.pts != nil {
			if lo, _ := s.pts.Bounds(); !s.closed || lo.X < -1e-9 {
				t.Errorf("half pattern: closed %v, from x = %v; want it closed along the fold", s.closed, lo.X)
			}
		}
	}
	if n := strings.Count(string(data), "TRIAL: not for cutting leather"); n < 5 {
		t.Errorf("marked as a trial %d times, want it all over", n)
	}
}

// Each group has a colour of its own, none of a palette that cutter programs come with;
// nothing is dashed, and the holes at the tab, which the cut line goes round, are not there
// a second time.
func TestSVGForCutters(t *testing.T) {
	p := garden()
	p.Strap = calc.Strap{Kind: calc.SnapStrap, Width: 18, Thickness: 2.4, Overlap: 30}
	plan := compute(t, p)
	data, err := SVG(p, plan, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if strings.Contains(string(data), "dash") {
		t.Error("a line is dashed")
	}
	seen := map[string]string{}
	for _, m := range regexp.MustCompile(`<g id="(\w+)" fill="none" stroke="(#[0-9a-f]{6})">`).FindAllStringSubmatch(string(data), -1) {
		group, colour := m[1], m[2]
		if other, twice := seen[colour]; twice {
			t.Errorf("groups %s and %s are both %s", group, other, colour)
		}
		seen[colour] = group
		// Pure and half shades are what palettes are made of (common practice, no source).
		pure := true
		for i := 1; i < 7; i += 2 {
			if c := colour[i : i+2]; c != "00" && c != "ff" && c != "80" && c != "a0" && c != "c0" && c != "e0" {
				pure = false
			}
		}
		if pure {
			t.Errorf("group %s has %s, a palette's colour", group, colour)
		}
	}
	if len(seen) < 10 {
		t.Errorf("%d groups with colours, want 10: %v", len(seen), seen)
	}
	_, shapes := readSVG(t, data)
	holes := 0
	for _, s := range shapes {
		if s.group == "relief" && s.circle != nil {
			holes++
		}
		if s.group == "strap" && s.pts != nil {
			lo, hi := s.pts.Bounds()
			if !s.closed || math.Abs(hi.Y-lo.Y-plan.Strap.Length) > 0.05 || math.Abs(hi.X-lo.X-plan.Strap.Width) > 0.05 {
				t.Errorf("the strap is %.2f x %.2f, want %.2f x %.2f, closed", hi.X-lo.X, hi.Y-lo.Y, plan.Strap.Width, plan.Strap.Length)
			}
		}
	}
	if holes != 1 {
		t.Errorf("%d circles in relief, want the drain alone", holes)
	}
}

// Only what is cut, on demand, in a colour of the maker's own.
func TestSVGOfWhatIsCut(t *testing.T) {
	p := garden()
	p.Strap = calc.Strap{Kind: calc.SnapStrap, Width: 18, Thickness: 2.4, Overlap: 30}
	bare, err := SVG(p, compute(t, p), Options{Cutter: svg.Look{Bare: true, Colours: svg.Colours{Cut: "#123456"}}})
	if err != nil {
		t.Fatal(err)
	}
	groups := map[string]bool{}
	_, shapes := readSVG(t, bare)
	for _, s := range shapes {
		groups[s.group] = true
	}
	if want := map[string]bool{"cut": true, "welt": true, "strap": true, "relief": true, "holes": true}; !reflect.DeepEqual(groups, want) {
		t.Errorf("only what is cut: groups %v", groups)
	}
	if !strings.Contains(string(bare), `id="cut" fill="none" stroke="#123456"`) || strings.Contains(string(bare), "<text") {
		t.Error("own colour not taken, or words left in")
	}
}
