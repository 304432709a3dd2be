package earlierpage

import (
	"fmt"
	"path/filepath"

	tea "github.com/charmbracelet/bubbletea"

	"chape/calc/length"
	"chape/calc/trace"
	"chape/calc/trace/axes"
	"chape/project"
	"chape/ui/act"
	"chape/ui/part"
	"chape/ui/term"
	"chape/ui/tracing"
)

// photo is a photograph of the sheath, or its paper, being chosen and read.
type photo struct {
	*tracing.Picker
	paper bool // its edge is the cut line, not the finished edge
}

// apart is between two half-widths that are taken from a photograph, mm.
const apart = 5

func (m *Model) photoKeys() part.Keys {
	return part.Keys{
		part.Key("i", "read them from a photograph of it, opened flat on a tracing sheet", m.openPhoto(false), "i").Foot("photograph"),
		part.Key("p", "the same of its paper pattern, cut on the cut line", m.openPhoto(true), "p"),
	}
}

func (m *Model) openPhoto(paper bool) func() []act.Msg {
	return func() []act.Msg {
		p := tracing.New(trace.Pattern, m.settings, m.Styles)
		if m.reader != nil {
			p.Reader = m.reader
		}
		p.SetWidth(m.w)
		m.photo = &photo{p, paper}
		return p.Look()
	}
}

// closePhoto gives up what is being chosen or read.
func (m *Model) closePhoto() {
	if m.photo != nil {
		m.photo.Stop()
		m.photo = nil
	}
}

// toPhoto hands a message to the photograph that is being chosen or read.
func (m *Model) toPhoto(msg tea.Msg) []act.Msg {
	if m.photo == nil {
		return nil
	}
	out, event := m.photo.Update(msg)
	switch event {
	case tracing.Left:
		m.closePhoto()
	case tracing.Got:
		r, path := m.photo.Reading()
		paper := m.photo.paper
		m.closePhoto()
		m.askPoint(r.Pattern, filepath.Base(path), paper)
	}
	return out
}

// askPoint asks where in the photographed piece the knife's point lay: half-widths are
// counted from there. Where the plan of the knife it was made for begins before the point
// is proposed.
func (m *Model) askPoint(read axes.Pattern, name string, paper bool) {
	before, made := 0.0, m.snap.Project
	if plan := m.knife.Plan; plan != nil && m.wrong == nil {
		made = m.knife.Project
		if len(plan.Body.Offsets) > 0 {
			before = max(0, -plan.Body.Offsets[0].At)
		}
	}
	what := "half of it, or a folded one, was read"
	if read.Whole {
		what = "read; its halves differ by " + length.Length(read.Off).Format(m.snap.Unit, length.Ruler)
	}
	label := fmt.Sprintf("%s: %s. How far behind its narrow end did the knife's point lie (%s)?", term.Short(name, 40), what, m.snap.Unit)
	m.ask(label, length.Length(before).Short(m.snap.Unit), true, func(text string) ([]act.Msg, error) {
		at, err := m.parsed(0, text)
		if err != nil {
			return nil, err
		}
		less := 0.0
		if paper {
			less = made.Sheath.Sanding.MM()
		}
		halves := halvesOf(read.Half, at.MM(), less)
		return []act.Msg{act.Commit{Label: "half-widths from " + name, Do: func(p *project.Project) error {
			p.Earlier = halves
			return p.Validate()
		}}}, nil
	})
	m.entry.Fresh = true
}

// halvesOf thins the half-widths of a reading out; point is how far behind the narrow end
// the knife's point lay, less what is sanded off, mm. Both ends, where an outline turns
// round, are left out.
func halvesOf(read []axes.Width, point, less float64) []project.Half {
	var out []project.Half
	for i, w := range read {
		if i%apart == 0 && i > 0 && i < len(read)-1 && w.Y > less && w.X >= point {
			out = append(out, project.Half{At: tenth(w.X - point), Wide: tenth(w.Y - less), Line: "edge"})
		}
	}
	return out
}

func tenth(mm float64) length.Length { return length.Length(float64(int(mm*10+0.5)) / 10) }
