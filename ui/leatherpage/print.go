package leatherpage

import (
	"path/filepath"
	"strings"

	"chape/project/print/layout"
	"chape/ui/act"
	"chape/ui/leatherpage/jobs"
)

// print writes the placing into the folder that sheets go to.
func (m *Model) print() []act.Msg {
	if m.laid == nil {
		return nil
	}
	base := strings.TrimSuffix(filepath.Base(m.snap.Path), filepath.Ext(m.snap.Path))
	if m.snap.Path == "" {
		base = "sheath"
	}
	o := layout.Options{}
	if m.o.Print != nil {
		o = m.o.Print()
	}
	o.Unit, o.Date = m.snap.Unit, m.snap.Now
	return []act.Msg{jobs.Print(*m.laid, base, m.snap.Project.Title, m.snap.Prints, o)}
}
