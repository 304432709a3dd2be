package leatherpage

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"chape/calc/curve"
	"chape/calc/length"
	"chape/project/picture/phototest"
	"chape/project/print/tracing"
	"chape/ui/test/rig"
)

// An offcut laid on the printed sheet, photographed a little askew, and read by the page: its
// size and area by hand, to the half millimetre that a reading of leather is good for.
func TestAPhotographIsRead(t *testing.T) {
	pdf, err := tracing.PDF(tracing.Options{})
	if err != nil {
		t.Fatal(err)
	}
	paper, err := phototest.Read(pdf, 5)
	if err != nil {
		t.Fatal(err)
	}
	edge := curve.Line{{X: 50, Y: 60}, {X: 150, Y: 70}, {X: 160, Y: 200}, {X: 90, Y: 220}, {X: 45, Y: 150}}
	paper.Lay(edge, [3]uint8{120, 80, 50})
	path := filepath.Join(t.TempDir(), "offcut.jpg")
	if err := os.WriteFile(path, phototest.JPEG(paper, phototest.Camera{Width: 975, Height: 1300, Fill: 0.85, Tilt: 0.15}), 0o600); err != nil {
		t.Fatal(err)
	}
	b := newBench(t, 78, 19, offcut())
	b.Project.Units = length.Inches
	b.Snap.Unit = length.Inches
	b.Show()
	b.Keys("enter", "down", "down", "down", "enter")
	b.Send(rig.Paste(path))
	l := b.kept().Pieces[0]
	w, h := l.Bounds()
	if math.Abs(w-115) > 0.8 || math.Abs(h-160) > 0.8 || len(l.Corners) > 60 {
		t.Fatalf("%.2f × %.2f mm, %d corners, said %v; %v", w, h, len(l.Corners), b.Said, b.Pane.picker.Refused())
	}
	in := "read: " + length.Length(w).Format(b.Project.Units, length.Ruler) + " × "
	if got := b.Said[len(b.Said)-1]; !strings.Contains(got, in) {
		t.Errorf("said %q, want %q: in the project's unit", got, in)
	}
	if got, want := math.Abs(l.Corners.Area()), math.Abs(edge.Area()); math.Abs(got-want) > 0.01*want {
		t.Errorf("area %.0f mm², want %.0f", got, want)
	}
	// As it is read y counts down the sheet, and the signed area is above 0.
	r, _ := b.Pane.picker.Reading()
	high := r.Outline[0]
	for _, c := range r.Outline {
		if c.Y < high.Y {
			high = c
		}
	}
	if r.Outline.Area() <= 0 || high.Dist(edge[0].Sub(curve.Vec{X: 13, Y: 13})) > 1 { // the frame stands 13 mm inside the paper
		t.Errorf("read with an area of %.0f, highest on the sheet at %v", r.Outline.Area(), high)
	}
	// The corner at the top of the sheet stands left; were the piece turned over it would stand right.
	top := l.Corners[0]
	for _, c := range l.Corners {
		if c.Y > top.Y {
			top = c
		}
	}
	if math.Abs(top.X-5) > 1 {
		t.Errorf("its highest corner is %.1f mm from the left, want 5", top.X)
	}
}
