package layout

import (
	"bytes"
	"context"
	"regexp"
	"strings"
	"testing"

	"chape/calc"
	"chape/calc/length"
	"chape/calc/nest"
	"chape/project"
	"chape/project/leather"
	"chape/project/print/sheet"
	"chape/project/print/svg"
)

// laid is a sheath on two pieces, of which the first has room for a welt alone.
func laid(t *testing.T) leather.Laid {
	t.Helper()
	p := project.Defaults()
	p.Title = "Orchard knife"
	plan, err := calc.Compute(p.Input(calc.DefaultLimits()))
	if err != nil {
		t.Fatal(err)
	}
	strip, large := leather.New("strip"), leather.New("shoulder")
	strip.Width, strip.Height = 300, 60
	large.Width, large.Height = 860, 700
	f, _ := leather.ReadFlaw("500 400 60", length.Millimetres)
	large.Flaws = []leather.Flaw{f}
	l, err := leather.Ask(3, []leather.Leather{strip, large}, []leather.Work{{Project: p, Plan: plan}})
	if err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if l.Result, err = nest.Place(ctx, l.Task, nil); err != nil || !l.Result.Fits() {
		t.Fatalf("%v, %v", l.Result.Missing, err)
	}
	return l
}

// texts are the words of pages.
func texts(pages ...sheet.Page) string {
	var out []string
	for _, p := range pages {
		for _, t := range p.Drawing.Texts {
			out = append(out, t.Says)
		}
	}
	return strings.Join(out, "\n")
}

// A piece of 300 mm has room at 1:4, one of 860 × 700 not on A4, which is 210 mm wide: 1:5 takes
// 172 mm.
func TestScalesAndDimensions(t *testing.T) {
	l := laid(t)
	if len(l.Result.Uses) != 2 {
		t.Fatalf("%d pieces used", len(l.Result.Uses))
	}
	j := job{l, "Orchard knife", Options{Paper: sheet.Papers[0]}}
	for i, want := range [][]string{{"Parts on strip, 1:4, grain side up", "300.0", "60.0"}, {"Parts on shoulder, 1:5, grain side up", "860.0", "700.0", "flaw"}} {
		p := j.piece(l.Result.Uses[i])
		for _, w := range want {
			if !strings.Contains(texts(p), w) {
				t.Errorf("page %d has no %q:\n%s", i+1, w, texts(p))
			}
		}
		w, h := sheet.Papers[0].Area(sheet.Correction{})
		if b := p.Drawing.Bounds(); b.Lo.X < 0 || b.Lo.Y < 0 || b.Hi.X > w || b.Hi.Y > h {
			t.Errorf("page %d is drawn from %v to %v of %v × %v", i+1, b.Lo, b.Hi, w, h)
		}
	}
	list := texts(j.list(l.Result.Uses[1])...)
	for _, w := range []string{"body: fold from ", "3 mm between two parts", "Places are in millimetres, from the"} {
		if !strings.Contains(list, w) {
			t.Errorf("the list has no %q:\n%s", w, list)
		}
	}
	j.o.Unit = length.Inches
	if got := texts(j.piece(l.Result.Uses[0])); !strings.Contains(got, "11 13/16") { // 300 mm is 11.811 in
		t.Errorf("in inches:\n%s", got)
	}
	if got := texts(j.list(l.Result.Uses[1])...); !strings.Contains(got, "Places are in inches, from the") {
		t.Errorf("in inches:\n%s", got)
	}
}

func TestFiles(t *testing.T) {
	l := laid(t)
	files, err := Files(l, "orchard", "Orchard knife", Options{})
	if err != nil || len(files) != 3 {
		t.Fatalf("%d files, %v", len(files), err)
	}
	for i, name := range []string{"orchard on leather.pdf", "orchard on leather 1.svg", "orchard on leather 2.svg"} {
		if files[i].Name != name || !bytes.Contains(files[i].Data, []byte(sheet.Producer)) && i > 0 {
			t.Errorf("file %d is %q", i+1, files[i].Name)
		}
	}
	again, _ := Files(l, "orchard", "Orchard knife", Options{})
	if !bytes.Equal(files[0].Data, again[0].Data) {
		t.Error("the same placing gives another PDF")
	}
	if _, err := PDF(leather.Laid{}, "x", Options{}); err == nil || !strings.Contains(err.Error(), "no part has a place") {
		t.Errorf("nothing placed: %v", err)
	}
	if _, err := PDF(l, "x", Options{Correction: sheet.Correction{X: 50}}); err == nil {
		t.Error("a printer that gives 50 mm for 100 is taken")
	}
}

// The SVG is at true size: the body's path is as long as its outline.
func TestSVGAtTrueSize(t *testing.T) {
	l := laid(t)
	for _, u := range l.Result.Uses {
		data := string(SVG(l, u, "Orchard knife", svg.Look{}))
		m := regexp.MustCompile(`width="([0-9.]+)mm" height="([0-9.]+)mm" viewBox="[-0-9.]+ [-0-9.]+ ([0-9.]+) ([0-9.]+)"`).FindStringSubmatch(data)
		if m == nil || m[1] != m[3] || m[2] != m[4] {
			t.Fatalf("not in millimetres: %.200s", data)
		}
		if want := map[int]string{0: "316", 1: "876"}[u.Piece]; m[1] != want { // the piece and 8 mm all round
			t.Errorf("%s mm wide, want %s", m[1], want)
		}
		if layer := map[int]string{0: `id="welt"`, 1: `id="cut"`}[u.Piece]; !strings.Contains(data, layer) {
			t.Errorf("piece %d has no %s", u.Piece+1, layer)
		}
	}
}
