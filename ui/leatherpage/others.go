package leatherpage

import (
	"cmp"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"chape/calc"
	"chape/project/leather"
	"chape/project/shelf"
	"chape/project/store"
	"chape/ui/act"
)

type teaMsg = tea.Msg

// other is another project of the shelf, which may be cut from the same leather.
type other struct {
	path, title string
	on          bool
	work        leather.Work // its plan is nil until it is read
}

// mostOthers is how many projects of the shelf are offered, those changed last first.
const mostOthers = 200

// workMsg is a project of the shelf, read and planned.
type workMsg struct {
	path string
	work leather.Work
	err  error
}

// list names the projects of the shelf that are in hand.
func list(sh *shelf.Shelf) []other {
	if sh == nil {
		return nil
	}
	scan, err := sh.Look()
	if err != nil {
		return nil // the shelf itself says why
	}
	entries := append(scan.Next(mostOthers), scan.Entries()...)
	var out []other
	listed := map[string]bool{}
	for _, e := range entries { // what was read just now, then what was known before
		if listed[e.Path] || e.State == shelf.Unread {
			continue
		}
		listed[e.Path] = true
		if (e.State == shelf.InHand || e.State == shelf.Finished) && !e.PutAway && len(out) < mostOthers {
			out = append(out, other{path: e.Path, title: e.Title})
		}
	}
	slices.SortFunc(out, func(a, b other) int {
		return cmp.Or(strings.Compare(a.title, b.title), strings.Compare(a.path, b.path))
	})
	return out
}

// takeOthers takes the list on; what was chosen before stays chosen.
func (m *Model) takeOthers(fresh []other) {
	for i := range fresh {
		for _, o := range m.others {
			if o.path == fresh[i].path {
				fresh[i].on, fresh[i].work = o.on, o.work
			}
		}
	}
	m.others = fresh
}

// isOpen tells whether it is the project in hand: that counts as it stands here.
func (m *Model) isOpen(o other) bool {
	return m.snap.Path != "" && store.FullPath(o.path) == m.snap.Path
}

// tickOther takes a project along, or not.
func (m *Model) tickOther(i int) []act.Msg {
	o := &m.others[i]
	o.on = !o.on
	m.laid = nil
	if !o.on {
		return nil
	}
	sh, path, limits := m.o.Shelf, o.path, m.limits()
	return []act.Msg{act.Do(func() teaMsg {
		p, err := sh.Load(path)
		if err != nil {
			return workMsg{path: path, err: err}
		}
		plan, err := calc.Compute(p.Input(limits))
		return workMsg{path, leather.Work{Project: p, Plan: plan}, err}
	})}
}

// worked takes a project on that was read; one that can't be planned stays out.
func (m *Model) worked(msg workMsg) []act.Msg {
	for i := range m.others {
		o := &m.others[i]
		if o.path != msg.path {
			continue
		}
		if msg.err != nil {
			o.on = false
			return []act.Msg{act.Say{Text: o.title + " can't be cut yet: " + msg.err.Error(), Warn: true}}
		}
		o.work = msg.work
		m.laid = nil
	}
	return nil
}

// limits are the user's thresholds.
func (m *Model) limits() calc.Limits {
	if m.snap.Plan != nil {
		return m.snap.Plan.Input.Limits
	}
	return calc.DefaultLimits()
}

// works are the projects to be cut: the one in hand first.
func (m *Model) works() []leather.Work {
	var out []leather.Work
	if m.snap.Plan != nil {
		out = append(out, leather.Work{Project: m.snap.Project, Plan: m.snap.Plan})
	}
	for _, o := range m.others {
		if o.on && o.work.Plan != nil && !m.isOpen(o) {
			out = append(out, o.work)
		}
	}
	return out
}
