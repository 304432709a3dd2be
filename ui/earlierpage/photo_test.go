package earlierpage

import (
	"context"
	"errors"
	"math"
	"strings"
	"testing"

	"chape/calc/curve"
	"chape/calc/length"
	"chape/calc/trace"
	"chape/calc/trace/axes"
	"chape/project"
	"chape/ui/test/rig"
)

// flat is a whole pattern of 200 mm, 20 to 60 mm wide a side, as a reading has its outline.
func flat() trace.Reading {
	corners := curve.Line{{X: 10, Y: 80}, {X: 210, Y: 40}, {X: 210, Y: 160}, {X: 10, Y: 120}}
	r := trace.Reading{Of: trace.Pattern}
	for i, a := range corners {
		b := corners[(i+1)%len(corners)]
		n := int(a.Dist(b)/0.5) + 1
		for k := range n {
			r.Outline = append(r.Outline, a.Add(b.Sub(a).Mul(float64(k)/float64(n))))
		}
	}
	r.Pattern = axes.NewPattern(r.Outline, axes.Turns{})
	return r
}

func withPhotos(t *testing.T) *rig.Rig[*Model] {
	r := newRig(t, old(), 78, 19)
	r.Pane.reader = func(_ context.Context, path string, o trace.Options) (trace.Reading, error) {
		if o.Of != trace.Pattern {
			t.Errorf("read as %v", o.Of)
		}
		if strings.Contains(path, "bad") {
			return trace.Reading{}, errors.New("no piece is on the sheet: lay it inside the frame")
		}
		return flat(), nil
	}
	return r
}

// The half-widths of a photographed sheath come from where the knife's point lay; nothing
// is kept before that is said.
func TestPhotographed(t *testing.T) {
	for _, c := range []struct {
		key  string
		less float64
	}{{"i", 0}, {"p", project.Defaults().Sheath.Sanding.MM()}} {
		r := withPhotos(t).Keys(c.key).Send(rig.Paste("'/a b/old one.jpg'"))
		r.Shows("old one.jpg: read; its halves differ by 0 mm. How far behind its narrow end")
		if len(r.Commits) != 0 {
			t.Fatalf("kept at once: %q", r.Commits)
		}
		r.Keys("1", "7", "enter")
		if len(r.Commits) != 1 || r.Commits[0] != "half-widths from old one.jpg" {
			t.Fatalf("commits %q", r.Commits)
		}
		all := r.Project.Earlier
		if len(all) < 30 || len(all) > 40 || all[0].At < 0 || all[0].At > 5 {
			t.Errorf("%d half-widths, the first %+v", len(all), all[0])
		}
		for _, h := range all {
			if want := 20 + 40*(h.At.MM()+17)/200 - c.less; h.Line != "edge" || math.Abs(h.Wide.MM()-want) > 0.15 {
				t.Errorf("%s: %+v, want %v", c.key, h, want)
			}
		}
	}
}

func TestPhotographRefused(t *testing.T) {
	r := withPhotos(t).Keys("i").Send(rig.Paste("/a/bad.jpg"))
	r.Shows("! bad.jpg: no piece is on the sheet")
	rig.CheckSizes(t, r.Pane, 100, 30)
	rig.CheckKeys(t, r.Pane)
	r.Keys("esc").Lacks("bad.jpg")
	if len(r.Commits) != 0 || len(r.Project.Earlier) != len(old()) {
		t.Errorf("changed: %q", r.Commits)
	}
	r.Keys("i").Send(rig.Paste("/a/b.jpg")).Keys("esc")
	if len(r.Commits) != 0 || r.Pane.entry != nil {
		t.Errorf("after Esc: %q", r.Commits)
	}
}

// The point is proposed where the plan has it.
func TestPointProposed(t *testing.T) {
	r := withPhotos(t).Keys("i").Send(rig.Paste("/a/b.jpg"))
	want := length.Length(-r.Snap.Plan.Body.Offsets[0].At).Short(length.Millimetres)
	if got := r.Pane.entry.Text(); got != want || want == "0" {
		t.Errorf("proposed %q, the plan has %q", got, want)
	}
}
