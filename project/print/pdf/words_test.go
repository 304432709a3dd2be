package pdf

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"chape/calc/curve"
	"chape/project/print/letters"
	"chape/project/print/sheet"
)

// A line of words stands at its place by its beginning, its middle or its end, as wide as the
// file itself says that its letters are (/W, thousandths of the size: ISO 32000-1, 9.7.4.3).
func TestWordsStandAtTheirPlace(t *testing.T) {
	const says, size = "Wide ill", 4.0
	at := curve.Vec{X: 60, Y: 50}
	var d sheet.Drawing
	for i, a := range []sheet.Text{{Anchor: sheet.Start}, {Anchor: sheet.Middle}, {Anchor: sheet.End}, {Anchor: sheet.End, Bold: true}} {
		a.Layer, a.Says, a.Size, a.At = sheet.WordLayer, says, size, at.Add(curve.Vec{Y: float64(10 * i)})
		d.Text(a)
	}
	data, err := Document{Paper: sheet.Papers[0], Date: time.Unix(0, 0), Pages: []sheet.Page{{Drawing: d}}}.Bytes(false)
	if err != nil {
		t.Fatal(err)
	}
	p := written(t, sheet.Papers[0], sheet.Correction{}, d)[0]
	for i, share := range []float64{0, 0.5, 1, 1} {
		w := p.Texts[i]
		wide := 0.0
		for _, r := range says {
			wide += letterWidth(t, data, w.Bold, r) * size
		}
		want := at.X + 8 - share*wide
		if w.Says != says || math.Abs(w.At.X-want) > 0.02 || math.Abs(w.At.Y-(58+10*float64(i))) > fine || math.Abs(w.Size-size) > fine || w.Bold != (i == 3) {
			t.Errorf("words %d: %+v, want them from %.3f, %v mm high", i, w, want, size)
		}
	}
}

// letterWidth reads the width of a letter out of a file that is not compressed.
func letterWidth(t *testing.T, data []byte, bold bool, r rune) float64 {
	t.Helper()
	name := "utf8words"
	if bold {
		name += "B"
	}
	m := regexp.MustCompile(`(?s)/Subtype /CIDFontType2\n/BaseFont /` + name + `\n.*?/W \[(.*?)\]\n?/CIDToGIDMap`).FindSubmatch(data)
	if m == nil {
		t.Fatalf("no widths of %s in the file", name)
	}
	fields := strings.Fields(strings.NewReplacer("[", " [ ", "]", " ] ").Replace(string(m[1])))
	figure := func(i int) int { n, _ := strconv.Atoi(fields[i]); return n }
	for i := 0; i+1 < len(fields); {
		first := figure(i)
		if fields[i+1] == "[" {
			k := i + 2
			for ; fields[k] != "]"; k++ {
				if first+k-i-2 == int(r) {
					return float64(figure(k)) / 1000
				}
			}
			i = k + 1
			continue
		}
		if first <= int(r) && int(r) <= figure(i+1) {
			return float64(figure(i+2)) / 1000
		}
		i += 3
	}
	t.Fatalf("%q has no width in %s", r, name)
	return 0
}

// Words turn against the clock about their place, however they are anchored, and what is
// drawn after them is upright again.
func TestWordsTurnAboutTheirPlace(t *testing.T) {
	at := curve.Vec{X: 50, Y: 80}
	var d sheet.Drawing
	for _, angle := range []float64{math.Pi / 2, 0.5, -0.25, 0} {
		d.Text(sheet.Text{Layer: sheet.ScaleLayer, Says: "x", Size: 3, At: at, Angle: angle})
	}
	d.Text(sheet.Text{Layer: sheet.ScaleLayer, Says: "middle", Size: 3, At: at, Angle: math.Pi / 2, Anchor: sheet.Middle})
	d.Line(sheet.WordLayer, sheet.Thin, curve.Vec{}, curve.Vec{X: 10})
	p := written(t, sheet.Papers[0], sheet.Correction{}, d)[0]
	place := at.Add(curve.Vec{X: 8, Y: 8})
	for i, angle := range []float64{math.Pi / 2, 0.5, -0.25, 0} {
		if w := p.Texts[i]; math.Abs(w.Angle-angle) > 1e-4 || w.At.Dist(place) > 0.01 {
			t.Errorf("turned by %v about %v, want %v about %v", w.Angle, w.At, angle, place)
		}
	}
	// Upright words run up the page, so they begin below their middle.
	if w := p.Texts[4]; math.Abs(w.At.X-place.X) > 0.01 || w.At.Y < place.Y+3 {
		t.Errorf("upright about their middle they begin at %v, want them below %v", w.At, place)
	}
	if l := p.Paths[0].Pts; !near(l[0], curve.Vec{X: 8, Y: 8}) || !near(l[1], curve.Vec{X: 18, Y: 8}) {
		t.Errorf("the line after them runs %v", l)
	}
}

// Grey words are grey and those after them black; words of nothing are not there.
func TestGreyWords(t *testing.T) {
	var d sheet.Drawing
	d.Text(sheet.Text{Layer: sheet.TrialLayer, Says: "TRIAL", Size: 5, Grey: true})
	d.Text(sheet.Text{Layer: sheet.TrialLayer, Size: 5})
	d.Text(sheet.Text{Layer: sheet.WordLayer, Says: "cut", Size: 3})
	p := written(t, sheet.Papers[0], sheet.Correction{}, d)[0]
	if len(p.Texts) != 3 { // and the page's number
		t.Fatalf("%+v", p.Texts)
	}
	if p.Texts[0].Grey < 0.5 || p.Texts[0].Grey > 0.8 || p.Texts[1].Grey != 0 || p.Texts[2].Grey != 0 {
		t.Errorf("greys %v, %v, %v", p.Texts[0].Grey, p.Texts[1].Grey, p.Texts[2].Grey)
	}
}

// A stretched file must not have words outgrow their room, which is reckoned on paper: where
// it is stretched one way they stay as they are, where it is shrunk they shrink too.
func TestWordsKeepToTheirRoom(t *testing.T) {
	for _, c := range []struct {
		c    sheet.Correction
		want float64
	}{{sheet.Correction{}, 3}, {sheet.Correction{X: 98, Y: 98}, 3}, {sheet.Correction{X: 102}, 3 / 1.02}, {sheet.Correction{Y: 104}, 3 / 1.04}} {
		var d sheet.Drawing
		d.Text(sheet.Text{Layer: sheet.WordLayer, Says: "room", Size: 3})
		if w := written(t, sheet.Papers[0], c.c, d)[0].Texts[0]; math.Abs(w.Size-c.want) > fine {
			t.Errorf("%v: words of 3 mm are %.3f, want %.3f", c.c, w.Size, c.want)
		}
	}
}

// Each page has its number, within 8 mm of no edge.
func TestPageNumbers(t *testing.T) {
	for _, paper := range sheet.Papers {
		pages := written(t, paper, sheet.Correction{}, sheet.Drawing{}, sheet.Drawing{}, sheet.Drawing{})
		for i, p := range pages {
			if len(p.Texts) != 1 || p.Texts[0].Says != fmt.Sprintf("page %d of 3", i+1) {
				t.Fatalf("page %d says %q", i+1, p.Words())
			}
			w := p.Texts[0]
			if end := w.At.X + letters.Width(w.Says, false)*w.Size; math.Abs(end-(p.Width-8)) > 0.02 || w.At.Y > p.Height-8-0.25*w.Size || w.At.Y < p.Height-12 {
				t.Errorf("%s: the number stands at %v of %.1f x %.1f", paper.Name, w.At, p.Width, p.Height)
			}
		}
	}
}

// A viewer lists the layers by their names, in the order in which they are drawn (ISO
// 32000-1, 8.11.4), and they are shown at first.
func TestLayers(t *testing.T) {
	var d sheet.Drawing
	for i, l := range sheet.Layers {
		d.Line(l, sheet.Thin, curve.Vec{Y: float64(i)}, curve.Vec{X: 5, Y: float64(i)})
		d.Circle(sheet.Circle{Layer: l, Stroke: sheet.Thin, At: curve.Vec{X: 50, Y: 50}, Radius: float64(i + 1)})
	}
	p := written(t, sheet.Papers[0], sheet.Correction{}, d)[0]
	if len(p.Paths) != 2*len(sheet.Layers) {
		t.Fatalf("%d lines", len(p.Paths))
	}
	for i, l := range sheet.Layers {
		line, ring := p.Paths[2*i], p.Paths[2*i+1]
		if line.Layer != l || ring.Layer != l || math.Abs(line.Pts[0].Y-8-float64(i)) > fine || !ring.Curved {
			t.Errorf("layer %d is %q and %q, want %q", i, line.Layer, ring.Layer, l)
		}
	}
}

// What the file says of itself: title and subject in letters of their own, who made it, and
// its date, or a fixed one: never that of the clock.
func TestWhatTheFileSaysOfItself(t *testing.T) {
	d := document(time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC))
	d.Title, d.Subject = "Zoé ½″", "pattern 3 🔪"
	data, err := d.Bytes(true)
	if err != nil {
		t.Fatal(err)
	}
	utf16 := func(s string) []byte {
		out := []byte{0xfe, 0xff}
		for _, r := range s {
			out = append(out, byte(r>>8), byte(r))
		}
		return out
	}
	for _, want := range [][]byte{utf16("Zoé ½″"), utf16("pattern 3 …"), []byte("/Producer (" + sheet.Producer + ")"), []byte("/CreationDate (D:20261125000000"), []byte("/ModDate (D:20261125000000")} {
		if !bytes.Contains(data, want) {
			t.Errorf("the file does not say %q", want)
		}
	}
	if got := DateOr(time.Time{}); !got.Equal(time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)) {
		t.Errorf("without a date it is of %v", got)
	}
	if day := time.Date(2026, 1, 2, 3, 4, 5, 0, time.UTC); DateOr(day) != day {
		t.Errorf("of %v it is %v", day, DateOr(day))
	}
}

// The fonts are in the file, cut down to the letters that it uses: no reader has to have
// them, and a page of a few words is no megabyte.
func TestFontsAreInTheFile(t *testing.T) {
	data, err := document(time.Unix(0, 0)).Bytes(true)
	if err != nil {
		t.Fatal(err)
	}
	fonts := regexp.MustCompile(`/FontFile2 (\d+) 0 R`).FindAllSubmatch(data, -1)
	if len(fonts) == 0 || len(data) > 100_000 {
		t.Fatalf("%d fonts in %d bytes", len(fonts), len(data))
	}
	for _, f := range fonts {
		_, object, _ := bytes.Cut(data, []byte("\n"+string(f[1])+" 0 obj\n"))
		_, stream, _ := bytes.Cut(object, []byte("stream\n"))
		z, err := zlib.NewReader(bytes.NewReader(stream))
		if err != nil {
			t.Fatal(err)
		}
		font, err := io.ReadAll(z)
		if err != nil || len(font) < 500 || !bytes.HasPrefix(font, []byte{0, 1, 0, 0}) { // the version of a TrueType file
			t.Errorf("font %s: %d bytes, %v", f[1], len(font), err)
		}
	}
}
