package leatherpage

import (
	"context"
	"fmt"
	"reflect"
	"time"

	"chape/calc/nest"
	"chape/project"
	"chape/project/leather"
	"chape/ui/act"
	"chape/ui/term"
)

// job is a placing being looked for.
type job struct {
	stop func()
	news chan jobMsg
	at   nest.Progress
}

// often is how long it is between two looks at a job.
const often = 200 * time.Millisecond

// jobMsg is how far a job is, or what came of it.
type jobMsg struct {
	job  *job
	at   nest.Progress
	laid *leather.Laid
	err  error
}

// chosen are the pieces to be cut from, in their order.
func (m *Model) chosen() []leather.Leather {
	var out []leather.Leather
	for _, l := range m.rack.stock.Pieces {
		if l.Sized() && !m.off[l.Name] {
			out = append(out, l)
		}
	}
	return out
}

// ask is what is to be placed on what.
func (m *Model) ask() (leather.Laid, error) {
	pieces, works := m.chosen(), m.works()
	switch {
	case len(works) == 0:
		return leather.Laid{}, fmt.Errorf("there is no plan to cut by: correct the numbers of the knife first")
	case len(pieces) == 0:
		return leather.Laid{}, fmt.Errorf("there is no leather to cut from: choose a piece with Space, or add one")
	}
	for _, o := range m.others {
		if o.on && o.work.Plan == nil {
			return leather.Laid{}, fmt.Errorf("%s is still being read: try again", o.title)
		}
	}
	return leather.Ask(m.rack.stock.Gap, pieces, works)
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
	ctx, stop := context.WithCancel(context.Background())
	j := &job{stop: stop, news: make(chan jobMsg, 1)}
	m.job, m.laid = j, nil
	place := m.place
	go func() {
		var told time.Time
		r, err := place(ctx, laid.Task, func(at nest.Progress) {
			if time.Since(told) < often { // to draw the page takes time from the search
				return
			}
			told = time.Now()
			select {
			case j.news <- jobMsg{job: j, at: at}:
			default: // nobody has looked since: the next will do
			}
		})
		laid.Result = r
		select {
		case <-j.news: // no longer of interest
		default:
		}
		j.news <- jobMsg{job: j, laid: &laid, err: err}
	}()
	return []act.Msg{j.wait()}
}

// wait brings the next news.
func (j *job) wait() act.Msg { return act.Do(func() teaMsg { return <-j.news }) }

// news hears of a job.
func (m *Model) news(msg jobMsg) []act.Msg {
	if msg.job != m.job {
		return nil
	}
	if msg.laid == nil && msg.err == nil {
		m.job.at = msg.at
		return []act.Msg{m.job.wait()}
	}
	m.job.stop()
	m.job = nil
	if msg.err != nil {
		return []act.Msg{act.Say{Text: term.Plain(msg.err.Error()), Warn: true}}
	}
	m.laid, m.shown = msg.laid, 0
	m.review()
	if m.laid == nil {
		return []act.Msg{act.Say{Text: "something was changed meanwhile: place the parts again"}}
	}
	return []act.Msg{act.Say{Text: m.laid.Verdict(), Warn: !m.laid.Result.Fits()}}
}

// progress is how far the job is, in a line.
func (m *Model) progress() string {
	at := m.job.at
	if at.Tries == 0 {
		return "placing the parts; Esc breaks it off"
	}
	return fmt.Sprintf("placing: %.0f %% of the tries made, %d of %d parts have a place; Esc breaks it off and keeps the best so far",
		100*float64(at.Done)/float64(at.Tries), at.Placed, at.Of)
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
	lost := m.laid.Lost()
	return m.commit(fmt.Sprintf("leather lost between the parts: %.0f %% of what is cut", 100*lost), func(p *project.Project) error {
		p.Hide.Lost, p.Hide.Placed = lost, true
		return p.Validate()
	})
}

// forgetYield goes back to the share for offcuts.
func (m *Model) forgetYield() []act.Msg {
	return m.commit("leather with a share for offcuts", func(p *project.Project) error {
		p.Hide.Lost, p.Hide.Placed = 0, false
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
