package leatherpage

import (
	"fmt"
	"reflect"

	"chape/project"
	"chape/project/leather"
	"chape/project/takes"
	"chape/ui/act"
	"chape/ui/leatherpage/jobs"
	"chape/ui/term"
)

// ask is what is to be placed on what.
func (m *Model) ask() (leather.Laid, error) {
	pieces, works := m.rack.Stock().Chosen(), m.works()
	switch {
	case len(works) == 0:
		return leather.Laid{}, fmt.Errorf("there is no plan to cut by: correct the numbers of the knife first")
	case len(pieces) == 0:
		return leather.Laid{}, fmt.Errorf("there is no leather to cut from: choose a piece with Space, or add one")
	}
	for _, o := range m.others {
		if o.On && o.Work.Plan == nil {
			return leather.Laid{}, fmt.Errorf("%s is still being read: try again", o.Title)
		}
	}
	return leather.Ask(m.rack.Stock().Gap, pieces, works)
}

// search looks for a placing, and tells how far it is.
func (m *Model) search() []act.Msg {
	if m.job != nil {
		return []act.Msg{act.Say{Text: "still placing: Esc breaks it off and keeps the best so far"}}
	}
	laid, err := m.ask()
	if err != nil {
		return []act.Msg{act.Say{Text: term.Plain(err.Error()), Warn: true}}
	}
	m.job, m.laid = jobs.Begin(m.place, laid), nil
	return []act.Msg{m.job.Wait()}
}

// news hears of a search.
func (m *Model) news(msg jobs.Found) []act.Msg {
	switch {
	case msg.Of != m.job:
		return nil
	case !m.job.Ended(msg):
		return []act.Msg{m.job.Wait()}
	}
	m.job = nil
	if msg.Err != nil {
		return []act.Msg{act.Say{Text: term.Plain(msg.Err.Error()), Warn: true}}
	}
	m.laid, m.shown = msg.Laid, 0
	m.review()
	if m.laid == nil {
		return []act.Msg{act.Say{Text: "something was changed meanwhile: place the parts again"}}
	}
	return []act.Msg{act.Say{Text: m.laid.Verdict(), Warn: !m.laid.Result.Fits()}}
}

// turn shows another of the pieces used.
func (m *Model) turn(by int) []act.Msg {
	if m.laid == nil || len(m.laid.Result.Uses) < 2 {
		return nil
	}
	n := len(m.laid.Result.Uses)
	m.shown = (m.shown + by + n) % n
	return nil
}

// keepYield has the cost reckon with what the placing loses.
func (m *Model) keepYield() []act.Msg {
	lost, cut := m.laid.Lost(), takes.Cut(m.snap.Project, m.snap.Plan)
	return m.commit(fmt.Sprintf("leather lost between the parts: %.0f %% of what is cut", 100*lost), func(p *project.Project) error {
		p.Hide.Lost, p.Hide.Placed, p.Hide.Cut = lost, true, cut
		return p.Validate()
	})
}

// forgetYield goes back to the share for offcuts.
func (m *Model) forgetYield() []act.Msg {
	return m.commit("leather with a share for offcuts", func(p *project.Project) error {
		p.Hide.Lost, p.Hide.Placed, p.Hide.Cut = 0, false, 0
		return nil
	})
}

// commit changes the project, and remembers that undo is the root's. What is refused or
// changes nothing is none to be undone.
func (m *Model) commit(label string, do func(*project.Project) error) []act.Msg {
	q := m.snap.Project.Clone()
	if err := do(&q); err != nil {
		return m.say(nil, err)
	}
	if reflect.DeepEqual(q, m.snap.Project) {
		return []act.Msg{act.Say{Text: "it is so already"}}
	}
	m.done = append(m.done, ofProject)
	return []act.Msg{act.Commit{Label: label, Do: do}}
}
