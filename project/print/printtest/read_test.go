package printtest

import (
	"bytes"
	"fmt"
	"math"
	"os/exec"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"chape/calc/curve"
	"chape/project/print/pdf"
	"chape/project/print/sheet"
)

// byHand is a file of one page, 720 × 360 points, with a layer, a font and a content of its
// own, written out by hand (ISO 32000-1, 7.8.2, 8.4 and 9.4).
func byHand(content string) []byte {
	var b bytes.Buffer
	b.WriteString("%PDF-1.5\n")
	for i, o := range []string{
		"<</Type /Pages /Kids [2 0 R] /MediaBox [0 0 720.00 360.00]>>",
		"<</Type /Page\n/Parent 1 0 R\n/Contents 3 0 R>>",
		"<</Length 1>>\nstream\n" + content + "\nendstream",
		"<</Font <</F1a 5 0 R /F2b 6 0 R>> /Properties <</OC0 7 0 R>>>>",
		"<</Type /Font\n/BaseFont /utf8words\n>>", "<</Type /Font\n/BaseFont /utf8wordsB\n>>",
		"<</Type /OCG /Name (\xfe\xff\x00c\x00u\x00t)>>",
	} {
		fmt.Fprintf(&b, "%d 0 obj\n%s\nendobj\n", i+1, o)
	}
	return b.Bytes()
}

const inch = 25.4

func same(a, b curve.Vec) bool { return a.Dist(b) < 1e-9 }

// Places are from the upper left corner in millimetres: 72 points are an inch, y counts down.
func TestPathsAreRead(t *testing.T) {
	p := Read(t, byHand("1.44 w [7.2 3.6] 2.88 d /OC /OC0 BDC 72 288 m 144 288 l 144 216 l h S EMC 0.5 g 72 72 m 144 72 l 144 144 l f [] 0 d 0.72 w 0 0 m 72 0 l S"))[0]
	if !same(curve.Vec{X: p.Width, Y: p.Height}, curve.Vec{X: 10 * inch, Y: 5 * inch}) || len(p.Paths) != 2 || len(p.Fills) != 1 {
		t.Fatalf("%v × %v, %d lines, %d areas", p.Width, p.Height, len(p.Paths), len(p.Fills))
	}
	q := p.Paths[0]
	if q.Layer != sheet.CutLayer || !q.Closed || q.Curved || len(q.Pts) != 3 || !same(q.Pts[0], curve.Vec{X: inch, Y: inch}) || !same(q.Pts[2], curve.Vec{X: 2 * inch, Y: 2 * inch}) {
		t.Errorf("%+v", q)
	}
	if math.Abs(q.Width-0.02*inch) > 1e-9 || len(q.Dashes) != 2 || math.Abs(q.Dashes[0]-0.1*inch) > 1e-9 || math.Abs(q.Phase-0.04*inch) > 1e-9 {
		t.Errorf("drawn %v wide, dashes %v from %v", q.Width, q.Dashes, q.Phase)
	}
	if f := p.Fills[0]; f.Grey != 0.5 || f.Layer != "" || !same(f.Pts[0], curve.Vec{X: inch, Y: 4 * inch}) {
		t.Errorf("area %+v", f)
	}
	if l := p.Paths[1]; l.Dashes != nil || l.Closed || l.Layer != "" || math.Abs(l.Width-0.01*inch) > 1e-9 {
		t.Errorf("the last line %+v", l)
	}
}

// A circle is four curves or more; its middle is theirs.
func TestCirclesAreRead(t *testing.T) {
	const k = 0.5523 * 36 // of a quarter circle by one curve (common practice, no source)
	arc := fmt.Sprintf("108 180 m 108 %[1]v %[2]v 216 72 216 c %[3]v 216 36 %[1]v 36 180 c 36 %[4]v %[3]v 144 72 144 c %[2]v 144 108 %[4]v 108 180 c", 180+k, 72+k, 72-k, 180-k)
	p := Read(t, byHand("/OC /OC0 BDC "+arc+" S "+arc+" f EMC"))[0]
	for _, all := range [][]sheet.Circle{p.Circles(sheet.CutLayer), p.Spots(sheet.CutLayer)} {
		if len(all) != 1 || !same(all[0].At, curve.Vec{X: inch, Y: 2.5 * inch}) || math.Abs(all[0].Radius-0.5*inch) > 1e-9 {
			t.Errorf("%+v", all)
		}
	}
	if len(p.Circles(sheet.HoleLayer)) != 0 {
		t.Error("it is on another layer too")
	}
}

// Words are read with their escapes, where they stand after turns that were saved and taken
// back, with their size, weight and grey.
func TestWordsAreRead(t *testing.T) {
	p := Read(t, byHand("BT /F1a 7.2 Tf ET q 0.6 g BT 72 288 Td (\x00a\x00\\(\x00\\\\\x00b) Tj ET Q q 0 1 -1 0 360 0 cm BT /F2b 14.4 Tf ET BT 72 72 Td (\x00c) Tj ET Q BT 0 0 Td (\x00d) Tj ET"))[0]
	if len(p.Texts) != 3 || p.Words() != "a(\\b\nc\nd" {
		t.Fatalf("%q", p.Words())
	}
	a, c, d := p.Texts[0], p.Texts[1], p.Texts[2]
	if !same(a.At, curve.Vec{X: inch, Y: inch}) || math.Abs(a.Size-0.1*inch) > 1e-9 || a.Bold || a.Grey != 0.6 || a.Angle != 0 {
		t.Errorf("%+v", a)
	}
	// A quarter turn against the clock takes (72, 72) to (−72, 72), then 360 points right.
	if !same(c.At, curve.Vec{X: 4 * inch, Y: 4 * inch}) || math.Abs(c.Angle-math.Pi/2) > 1e-9 || !c.Bold || math.Abs(c.Size-0.2*inch) > 1e-9 || c.Grey != 0 {
		t.Errorf("%+v", c)
	}
	if !same(d.At, curve.Vec{Y: 5 * inch}) || d.Angle != 0 {
		t.Errorf("%+v", d)
	}
}

// Another reader, where there is one, finds the page as large and the words at the same places:
// poppler's pdftotext gives the box round each word in points from the upper left corner.
func TestAnotherReaderAgrees(t *testing.T) {
	tool, err := exec.LookPath("pdftotext")
	if err != nil {
		return // the tests above are by hand
	}
	var d sheet.Drawing
	for i, says := range []string{"first", "second½", "Zoé"} {
		d.Text(sheet.Text{Layer: sheet.WordLayer, At: curve.Vec{X: 20 + 30*float64(i), Y: 40 + 50*float64(i)}, Says: says, Size: 4 + float64(i)})
	}
	data, err := pdf.Document{Paper: sheet.Papers[2], Date: time.Unix(0, 0), Pages: []sheet.Page{{Drawing: d}}}.Bytes(true)
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(tool, "-bbox", "-", "-")
	cmd.Stdin = bytes.NewReader(data)
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("pdftotext: %v", err)
	}
	p := Read(t, data)[0]
	if want := fmt.Sprintf(`width="%.6f" height="%.6f"`, p.Width/Point, p.Height/Point); !strings.Contains(string(out), want) {
		t.Errorf("pdftotext does not find %s", want)
	}
	for _, w := range p.Texts[:3] {
		m := regexp.MustCompile(`xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">` + w.Says + `<`).FindSubmatch(out)
		if m == nil {
			t.Fatalf("pdftotext finds no %q", w.Says)
		}
		box := [4]float64{}
		for i := range box {
			box[i], _ = strconv.ParseFloat(string(m[i+1]), 64)
			box[i] *= Point
		}
		if math.Abs(box[0]-w.At.X) > 0.02 || w.At.Y < box[1] || w.At.Y > box[3] || math.Abs(box[3]-box[1]-w.Size) > 0.5*w.Size {
			t.Errorf("%q: pdftotext has it in %.2f, here it stands at %v, %v mm", w.Says, box, w.At, w.Size)
		}
	}
}
