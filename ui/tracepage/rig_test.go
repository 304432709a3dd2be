package tracepage

import (
	"context"
	"errors"
	"strings"
	"testing"
	"time"

	"chape/calc/curve"
	"chape/calc/trace"
	"chape/calc/trace/axes"
	"chape/project"
	"chape/ui/act"
	"chape/ui/canvas"
	"chape/ui/term/ink"
	"chape/ui/test/photo"
	"chape/ui/test/rig"
	"chape/ui/tracing"
)

// traced is what a reader that errs nowhere makes of the knife of the pictures.
func drawn() trace.Reading {
	r := trace.Reading{Residual: trace.Residual{RMS: 0.052}, Gaps: []float64{1.2}}
	for _, v := range outlineOf(photo.Knife).Reverse() { // it lies upside down on the sheet
		r.Outline = append(r.Outline, curve.Vec{X: 20 + v.X, Y: 90 - v.Y})
	}
	var feet []curve.Vec
	for _, x := range []float64{95, 109} {
		feet = append(feet, curve.Vec{X: 20 + x, Y: 90}, curve.Vec{X: 20 + x, Y: 63})
	}
	r.Knife = axes.NewKnife(r.Outline, feet)
	return r
}

func newRig(t *testing.T, p project.Project, w, h int) *rig.Rig[*Model] {
	t.Helper()
	r := rig.New(t, p, w, h, func(now func() time.Time) *Model {
		return readAs(New(now, func() tracing.Settings { return tracing.Settings{} }, styles))
	})
	r.Snap.Font = act.Font{Glyphs: canvas.Braille, Aspect: 2}
	return r.Show()
}

// readAs is a page whose reader gives the traced knife, or refuses what is called bad or open.
func readAs(m *Model) *Model {
	m.picker.Reader = func(_ context.Context, path string, o trace.Options) (trace.Reading, error) {
		for s := trace.Find; s <= trace.Marks; s++ {
			o.Progress(s)
		}
		switch {
		case strings.Contains(path, "bad"):
			return trace.Reading{}, errors.New("no tracing sheet is in the picture: photograph the whole sheet")
		case strings.Contains(path, "open"):
			k := drawn()
			return trace.Reading{}, &trace.Refused{Text: "the line is open by 6.0 mm: close it with the pencil", At: curve.Vec{X: 100, Y: 65}, Placed: true, Seen: k.Outline}
		}
		return drawn(), nil
	}
	return m
}

func drop(r *rig.Rig[*Model], name string) *rig.Rig[*Model] {
	return r.Send(rig.Paste("/pictures/" + name))
}

var styles = ink.New(ink.Dark, ink.None)
