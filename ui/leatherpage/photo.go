package leatherpage

import (
	"fmt"
	"math"
	"path/filepath"

	tea "github.com/charmbracelet/bubbletea"

	"chape/calc/curve"
	"chape/calc/length"
	"chape/calc/nest"
	"chape/project/leather"
	"chape/ui/act"
	"chape/ui/term"
	"chape/ui/tracing"
)

// openPhoto asks for a photograph of the piece in hand.
func (m *Model) openPhoto() []act.Msg {
	m.enterView(viewPhoto, m.at)
	return m.picker.Look()
}

// toPicker hands a message to the picker.
func (m *Model) toPicker(msg tea.Msg) []act.Msg {
	out, event := m.picker.Update(msg)
	if m.view != viewPhoto {
		return out
	}
	switch event {
	case tracing.Left:
		m.picker.Stop()
		m.enterView(viewPiece, m.at)
	case tracing.Got:
		out = append(out, m.takePhoto()...)
	}
	return out
}

// traced is how far corners may lie off what was read, mm: no more than the reading itself is off.
const traced = 0.25

// takePhoto makes what was read the edge of the piece.
func (m *Model) takePhoto() []act.Msg {
	r, path := m.picker.Reading()
	edge := make(curve.Line, len(r.Outline))
	for i, p := range r.Outline {
		edge[i] = curve.Vec{X: p.X, Y: -p.Y} // on the sheet y counts downwards
	}
	corners := nest.Corners(edge, traced)
	lo, hi := corners.Bounds()
	for i, p := range corners {
		corners[i] = curve.Vec{X: round2(p.X - lo.X), Y: round2(p.Y - lo.Y)}
	}
	m.enterView(viewPiece, m.at)
	out, err := m.setPiece(func(l *leather.Leather) error {
		l.Corners, l.Width, l.Height = corners, 0, 0
		return nil
	})
	flaws := "its flaws are yours to add"
	if len(m.piece().Flaws) > 0 {
		flaws = "the flaws typed before stay, counted from its lower left corner: look whether they lie right"
	}
	for i, f := range m.piece().Flaws {
		if err == nil && f.LiesOff(m.piece()) {
			flaws += fmt.Sprintf("; flaw %d lies off it", i+1)
		}
	}
	if err == nil {
		side := func(mm float64) string { return length.Length(mm).Format(m.snap.Unit, length.Ruler) }
		out = append(out, act.Say{Text: term.Plain(fmt.Sprintf("%s read: %s × %s, %d corners; %s",
			filepath.Base(path), side(hi.X-lo.X), side(hi.Y-lo.Y), len(corners), flaws))})
	}
	return m.say(out, err)
}

func round2(v float64) float64 { return math.Round(v*100) / 100 }
