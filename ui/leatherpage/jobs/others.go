package jobs

import (
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"chape/calc"
	"chape/project/leather"
	"chape/project/shelf"
	"chape/project/store"
	"chape/ui/act"
)

// Other is another project of the shelf, which may be cut from the same leather.
type Other struct {
	Path, Title string
	On          bool
	Work        leather.Work // its plan is nil until it is read
}

// Others are those of the shelf, by title.
type Others []Other

// mostOthers is how many projects of the shelf are offered, those changed last first.
const mostOthers = 200

// Planned is a project of the shelf, read and planned.
type Planned struct {
	path string
	work leather.Work
	err  error
}

// list names the projects of the shelf.
func list(sh *shelf.Shelf) Others {
	if sh == nil {
		return nil
	}
	entries, err := sh.ByTitle(mostOthers)
	if err != nil {
		return nil // the shelf itself says why
	}
	var out Others
	for _, e := range entries {
		out = append(out, Other{Path: e.Path, Title: e.Title})
	}
	return out
}

// Renewed is a fresh list; what was chosen before stays chosen.
func (os Others) Renewed(fresh Others) Others {
	for i := range fresh {
		for _, o := range os {
			if o.Path == fresh[i].Path {
				fresh[i].On, fresh[i].Work = o.On, o.Work
			}
		}
	}
	return fresh
}

// Have tells whether a file's project is among them.
func (os Others) Have(path string) bool {
	return slices.ContainsFunc(os, func(o Other) bool { return o.Path == path })
}

// Is tells whether it is the project at a full path; "": at none.
func (o Other) Is(path string) bool { return path != "" && store.FullPath(o.Path) == path }

// Choose takes along the projects of some files, but for that at a full path, and reads
// those that were not taken along before; all of them again if the page was opened.
func (os Others) Choose(with []string, but string, again bool, sh *shelf.Shelf, limits calc.Limits) []act.Msg {
	var out []act.Msg
	for i := range os {
		o := &os[i]
		was := o.On
		o.On = slices.Contains(with, o.Path) && !o.Is(but)
		switch {
		case !o.On:
			o.Work = leather.Work{}
		case again || !was:
			out = append(out, read(sh, o.Path, limits))
		}
	}
	return out
}

func read(sh *shelf.Shelf, path string, limits calc.Limits) act.Msg {
	return act.Do(func() tea.Msg {
		p, err := sh.Load(path)
		if err != nil {
			return Planned{path: path, err: err}
		}
		plan, err := calc.Compute(p.Input(limits))
		return Planned{path, leather.Work{Project: p, Plan: plan}, err}
	})
}

// Take takes a project on that was read. One that can't be planned stays out: its path,
// and what is to be said.
func (os Others) Take(msg Planned) (failed string, out []act.Msg) {
	for i := range os {
		o := &os[i]
		switch {
		case o.Path != msg.path || !o.On:
		case msg.err != nil:
			return o.Path, []act.Msg{act.Say{Text: o.Title + " can't be cut yet: " + msg.err.Error(), Warn: true}}
		default:
			o.Work = msg.work
		}
	}
	return "", nil
}

// Works are those to be cut, but for the project at a full path.
func (os Others) Works(but string) []leather.Work {
	var out []leather.Work
	for _, o := range os {
		if o.On && o.Work.Plan != nil && !o.Is(but) {
			out = append(out, o.Work)
		}
	}
	return out
}
