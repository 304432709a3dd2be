package svg

import (
	"encoding/xml"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"chape/calc/curve"
	"chape/project/print/sheet"
)

// document is a written file as an XML reader has it.
type document struct {
	Width   string  `xml:"width,attr"`
	Height  string  `xml:"height,attr"`
	ViewBox string  `xml:"viewBox,attr"`
	Title   string  `xml:"title"`
	Desc    string  `xml:"desc"`
	Groups  []group `xml:"g"`
}

type group struct {
	ID     string `xml:"id,attr"`
	Fill   string `xml:"fill,attr"`
	Stroke string `xml:"stroke,attr"`
	Paths  []struct {
		D     string `xml:"d,attr"`
		Width string `xml:"stroke-width,attr"`
	} `xml:"path"`
	Circles []struct {
		X     string `xml:"cx,attr"`
		Y     string `xml:"cy,attr"`
		R     string `xml:"r,attr"`
		Width string `xml:"stroke-width,attr"`
	} `xml:"circle"`
	Texts []struct {
		X         string `xml:"x,attr"`
		Y         string `xml:"y,attr"`
		Size      string `xml:"font-size,attr"`
		Weight    string `xml:"font-weight,attr"`
		Anchor    string `xml:"text-anchor,attr"`
		Fill      string `xml:"fill,attr"`
		Transform string `xml:"transform,attr"`
		Says      string `xml:",chardata"`
	} `xml:"text"`
}

func read(t *testing.T, data []byte) document {
	t.Helper()
	var d document
	if err := xml.Unmarshal(data, &d); err != nil {
		t.Fatalf("no XML: %v\n%.300s", err, data)
	}
	return d
}

// all is a drawing with a line, a circle and a word on each layer, apart from each other.
func all() sheet.Drawing {
	var d sheet.Drawing
	for i, l := range sheet.Layers {
		y := 20 * float64(i)
		d.Path(sheet.Path{Layer: l, Stroke: sheet.Wide, Pts: curve.Line{{X: -5, Y: y}, {X: 10, Y: y + 1.23456}, {X: 20, Y: y}}, Closed: i%2 == 0})
		d.Circle(sheet.Circle{Layer: l, Stroke: sheet.Hair, At: curve.Vec{X: 30, Y: y}, Radius: 1.8 / 2})
		d.Text(sheet.Text{Layer: l, At: curve.Vec{X: 40, Y: y}, Says: string(l), Size: sheet.WordSize})
	}
	return d
}

// A unit of the picture is a millimetre: the view box is as large as the picture's own size in
// mm (SVG 2, 8.2; CSS has the unit), and all that is drawn lies in it, turned words as well.
func TestTrueSize(t *testing.T) {
	d := all()
	d.Text(sheet.Text{Layer: sheet.WordLayer, At: curve.Vec{X: 60, Y: 30}, Says: strings.Repeat("W", 30), Size: 4, Angle: 1, Anchor: sheet.End})
	d.Text(sheet.Text{Layer: sheet.WordLayer, At: curve.Vec{X: 60, Y: 300}, Says: strings.Repeat("long ", 30), Size: 4})
	got := read(t, Write(&d, "t", "s", Look{}))
	var x, y, w, h float64
	if _, err := fmt.Sscan(got.ViewBox, &x, &y, &w, &h); err != nil {
		t.Fatal(err)
	}
	if got.Width != fmt.Sprintf("%vmm", w) || got.Height != fmt.Sprintf("%vmm", h) {
		t.Errorf("%s by %s, seen through %s", got.Width, got.Height, got.ViewBox)
	}
	within := func(b sheet.Box, what string) {
		if b.Lo.X < x || b.Lo.Y < y || b.Hi.X > x+w || b.Hi.Y > y+h {
			t.Errorf("%s at %v lies outside of %s", what, b, got.ViewBox)
		}
	}
	within(d.Bounds().Grow(7), "a line with room for words")
	for _, text := range d.Texts {
		within(text.Box(), text.Says)
	}
}

var placeRE = regexp.MustCompile(`^M(-?[\d.]+ -?[\d.]+)(L-?[\d.]+ -?[\d.]+)*Z?$`)

// Lines go through their places to a thousandth of a millimetre and are closed where they
// are; circles have their radius, not their width across.
func TestShapes(t *testing.T) {
	d := all()
	for i, g := range read(t, Write(&d, "t", "s", Look{})).Groups {
		var n int
		for k, l := range sheet.Layers {
			if string(l) == g.ID {
				n = k
			}
		}
		y := 20 * n
		want := fmt.Sprintf("M-5 %dL10 %sL20 %d", y, strconv.FormatFloat(float64(y)+1.235, 'f', -1, 64), y)
		if n%2 == 0 {
			want += "Z"
		}
		if len(g.Paths) != 1 || g.Paths[0].D != want || g.Paths[0].Width != "0.5" || !placeRE.MatchString(g.Paths[0].D) {
			t.Errorf("group %d, %s: %+v, want %s", i, g.ID, g.Paths, want)
		}
		if c := g.Circles; len(c) != 1 || c[0].X != "30" || c[0].Y != fmt.Sprint(y) || c[0].R != "0.9" || c[0].Width != "0.15" {
			t.Errorf("group %d, %s: %+v, want one of 0.9 at 30, %d", i, g.ID, c, y)
		}
	}
}

// There is a group for each layer that has something, what is cut first, by the names that
// the README gives; pricks, joints and the overview are for paper and are not there.
func TestGroups(t *testing.T) {
	names := func(d sheet.Drawing, l Look) string {
		var out []string
		for _, g := range read(t, Write(&d, "t", "s", l)).Groups {
			out = append(out, g.ID)
			if g.Fill != "none" {
				t.Errorf("%s is filled with %s", g.ID, g.Fill)
			}
		}
		return strings.Join(out, " ")
	}
	if got := names(all(), Look{}); got != "cut welt strap parts relief holes stitch fold glue marks trial words" {
		t.Errorf("all layers: %s", got)
	}
	if got := names(all(), Look{Bare: true}); got != "cut welt strap parts relief holes" {
		t.Errorf("only what is cut: %s", got)
	}
	for _, one := range []sheet.Drawing{{Paths: []sheet.Path{{Layer: sheet.GlueLayer, Pts: curve.Line{{}, {X: 1}}}}},
		{Circles: []sheet.Circle{{Layer: sheet.GlueLayer}}}, {Texts: []sheet.Text{{Layer: sheet.GlueLayer, Says: "x"}}}} {
		one.Circle(sheet.Circle{Layer: sheet.CutLayer, Radius: 1})
		if got := names(one, Look{}); got != "cut glue" {
			t.Errorf("of two layers: %s", got)
		}
	}
}

// A colour of the settings is that of its own group and of no other; the words of a group
// have its colour too, but for the grey ones of a trial.
func TestOwnColours(t *testing.T) {
	d := all()
	const own = "#0a0b0c"
	for id, c := range map[string]Colours{"cut": {Cut: own}, "welt": {Welt: own}, "strap": {Strap: own}, "parts": {Parts: own}, "relief": {Relief: own}, "holes": {Holes: own},
		"stitch": {Stitch: own}, "fold": {Fold: own}, "glue": {Glue: own}, "marks": {Marks: own}} {
		for _, g := range read(t, Write(&d, "t", "s", Look{Colours: c})).Groups {
			if (g.Stroke == own) != (g.ID == id) || g.Texts[0].Fill != g.Stroke {
				t.Errorf("with a colour for %s, %s is drawn %s and its words are %s", id, g.ID, g.Stroke, g.Texts[0].Fill)
			}
		}
	}
	for _, g := range read(t, Write(&d, "t", "s", Look{Colours: Colours{Words: own}})).Groups {
		if words := g.ID == "words" || g.ID == "trial"; (g.Stroke == own) != words {
			t.Errorf("with a colour for words, %s is %s", g.ID, g.Stroke)
		}
	}
	d = sheet.Drawing{}
	d.Circle(sheet.Circle{Layer: sheet.CutLayer, Radius: 1})
	d.Text(sheet.Text{Layer: sheet.TrialLayer, Says: "TRIAL", Size: 5, Grey: true})
	for _, g := range read(t, Write(&d, "t", "s", Look{})).Groups {
		if g.ID == "trial" && g.Texts[0].Fill != "silver" {
			t.Errorf("a trial's words are %s", g.Texts[0].Fill)
		}
	}
}

// Words stand as on paper: by their beginning, middle or end; turned against the clock, which
// for SVG's rotate, y down, is a negative angle; bold ones bold.
func TestWords(t *testing.T) {
	var d sheet.Drawing
	at := curve.Vec{X: 12.5, Y: -3}
	for _, w := range []sheet.Text{{Anchor: sheet.Start}, {Anchor: sheet.Middle, Angle: math.Pi / 2}, {Anchor: sheet.End, Bold: true, Angle: -0.5}} {
		w.Layer, w.Says, w.Size, w.At = sheet.WordLayer, "stitch line", 2.5, at
		d.Text(w)
	}
	d.Circle(sheet.Circle{Layer: sheet.CutLayer, Radius: 1})
	texts := read(t, Write(&d, "t", "s", Look{})).Groups[1].Texts
	for i, want := range []struct{ anchor, weight, turn string }{{"", "", ""}, {"middle", "", "rotate(-90 12.5 -3)"}, {"end", "bold", "rotate(28.648 12.5 -3)"}} {
		w := texts[i]
		if w.X != "12.5" || w.Y != "-3" || w.Size != "2.5" || w.Says != "stitch line" || w.Anchor != want.anchor || w.Weight != want.weight || w.Transform != want.turn {
			t.Errorf("words %d: %+v, want %+v", i, w, want)
		}
	}
}

// Whatever a title says, the file is XML and says it; it bears the mark by which it is known
// as printed here.
func TestTitlesAreEscaped(t *testing.T) {
	var d sheet.Drawing
	d.Circle(sheet.Circle{Layer: sheet.CutLayer, Radius: 1})
	for _, title := range []string{"", `a < b & "c" > 'd'`, "]]> --> <g>", "½″ é", "\x00\x1b\xff", strings.Repeat("x", 5000)} {
		data := Write(&d, title, title+".", Look{})
		got := read(t, data)
		if want := strings.ToValidUTF8(strings.NewReplacer("\x00", "\ufffd", "\x1b", "\ufffd").Replace(title), "\ufffd"); got.Title != want || got.Desc != want+"." {
			t.Errorf("%.20q is called %.20q, %.20q", title, got.Title, got.Desc)
		}
		if !strings.HasPrefix(string(data), "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n") || !strings.Contains(string(data), "<!-- "+sheet.Producer+" -->") {
			t.Errorf("%.20q begins %.80q", title, data)
		}
	}
}

// Figures are as short as they can be at a thousandth of a millimetre, with no sign at zero
// and no exponent, which some readers do not know (common practice, no source).
func TestFigures(t *testing.T) {
	for v, want := range map[float64]string{0: "0", math.Copysign(0, -1): "0", -0.0004: "0", 1: "1", 1.2: "1.2", 1.2345: "1.235", -7.9999: "-8", 1e-9: "0", 123456.7891: "123456.789", 1e6: "1000000"} {
		if got := fig(v); got != want {
			t.Errorf("fig(%v) = %q, want %q", v, got, want)
		}
	}
}
