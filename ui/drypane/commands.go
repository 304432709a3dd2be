package drypane

import (
	"errors"
	"fmt"
	"strings"
	"time"

	"chape/project"
	"chape/project/clock"
	"chape/project/weigh"
	"chape/ui/act"
	"chape/ui/part"
)

// drying is the state of a weighing after wetting.
const drying = "drying"

// askWeight begins a weighing with the text typed so far.
func (m *Model) askWeight(text string) []act.Msg {
	label := "Weight now, the knife out, in grams"
	if m.entryIsFirst() {
		label += " (w: if it is not wet yet)"
	}
	return m.ask(scale(label, text, false), func(text string) (answer, error) {
		return m.add(text, drying, m.wall())
	})
}

// entryIsFirst tells whether nothing was weighed for this wetting.
func (m *Model) entryIsFirst() bool { return m.dry.Before < 0 && len(m.dry.Rows) == 0 }

// askBefore begins the weighing just before wetting.
func (m *Model) askBefore() []act.Msg {
	label, late := "Weight just before wetting, in grams", false
	switch {
	case m.dry.Before >= 0:
		label = "Weight before it is wetted again, in grams: what was weighed so far then counts no more"
	case len(m.dry.Rows) > 0:
		label, late = "Weight just before it was wetted, in grams: put ahead of the first one here; t corrects its time", true
	}
	return m.ask(scale(label, "", false), func(text string) (answer, error) {
		when := m.wall()
		if late && len(m.dry.Rows) > 0 {
			when = m.snap.Project.Weigh[m.dry.Rows[0]].When.Add(-time.Minute)
		}
		return m.add(text, weigh.Before, when)
	})
}

// add is the answer that puts a weighing in.
func (m *Model) add(text, state string, when time.Time) (answer, error) {
	p := m.snap.Project.Clone()
	p.Weigh = append(p.Weigh, weigh.Weighing{When: when, Grams: 1, State: state})
	grams, err := gramsOf(gramsField(len(p.Weigh)-1), text, p)
	if err != nil {
		return answer{}, err
	}
	w := weigh.Weighing{When: when.Round(0).Truncate(time.Second), Grams: grams, State: state}
	label := fmt.Sprintf("weighing %s g", figure(grams))
	if state == weigh.Before {
		label += " before wetting"
	}
	return answer{last: true, doubt: m.doubt(grams, when, -1), commit: act.Commit{Label: label, Do: func(p *project.Project) error {
		list, err := reminded(p.Steps, when)
		if err != nil {
			return err
		}
		p.Steps = list
		p.Weigh = append(p.Clone().Weigh, w)
		return p.Validate()
	}}}, nil
}

// startAgain starts the hold that rings when it is to be weighed again.
func (m *Model) startAgain() []act.Msg {
	due, now := m.dry.Next, m.wall()
	if !due.After(now) {
		return nil
	}
	return []act.Msg{act.Commit{Label: "weigh again about " + m.clock(due), Do: func(p *project.Project) error {
		list, err := remind(p.Steps, due, now)
		if err == nil {
			p.Steps = list
		}
		return err
	}}}
}

func (m *Model) askGrams() []act.Msg {
	w, i, _ := m.weighing()
	f := gramsField(i)
	was := f.Show(m.snap.Project)
	return m.ask(scale("Grams at "+m.clock(w.When), was, true), func(text string) (answer, error) {
		if text == was {
			return answer{}, nil
		}
		if !inReach(m.snap.Project, i, w) {
			return answer{}, errChanged
		}
		grams, err := gramsOf(f, text, m.snap.Project)
		if err != nil {
			return answer{}, err
		}
		return answer{doubt: m.doubt(grams, w.When, i), commit: change("weighing "+figure(grams)+" g", i, w, func(p *project.Project) error {
			return f.Set(p, grams)
		})}, nil
	})
}

func (m *Model) askTime() []act.Msg {
	w, i, _ := m.weighing()
	was := m.clock(w.When)
	return m.ask(line("When it was weighed: 14:20, Thu 14:20, 3 Dec 14:20, 20 min ago", was, false), func(text string) (answer, error) {
		if strings.TrimSpace(text) == was { // what is shown has no seconds
			return answer{}, nil
		}
		when, err := clock.ParsePast(text, m.wall())
		if err != nil {
			return answer{}, err
		}
		return answer{commit: change("time of weighing "+figure(w.Grams)+" g", i, w, func(p *project.Project) error {
			p.Weigh = p.Clone().Weigh
			p.Weigh[i].When = when
			return p.Validate()
		})}, nil
	})
}

// turnState makes a weighing one before wetting, or one of the drying sheath.
func (m *Model) turnState() []act.Msg {
	w, i, _ := m.weighing()
	state, words := weigh.Before, "before wetting"
	if w.State == weigh.Before {
		state, words = drying, "while drying"
	}
	return []act.Msg{change("weighing "+figure(w.Grams)+" g "+words, i, w, func(p *project.Project) error {
		p.Weigh = p.Clone().Weigh
		p.Weigh[i].State = state
		return p.Validate()
	})}
}

func (m *Model) askRemove() []act.Msg {
	w, i, _ := m.weighing()
	label := fmt.Sprintf("Enter takes out the weighing of %s, %s g", m.clock(w.When), figure(w.Grams))
	return m.ask(part.Confirm(label), func(string) (answer, error) {
		return answer{commit: change("take out weighing "+figure(w.Grams)+" g", i, w, func(p *project.Project) error {
			weighed := p.Clone().Weigh
			p.Weigh = append(weighed[:i], weighed[i+1:]...)
			return nil
		})}, nil
	})
}

func (m *Model) askTemperature() []act.Msg {
	return m.askRoom("room.temperature", "Room temperature in °C, or as 64 F; nothing: not known", celsiusText)
}

func (m *Model) askHumidity() []act.Msg {
	return m.askRoom("room.humidity", "Room humidity in percent; nothing: not known", percentText)
}

func (m *Model) askRoom(key, label string, bare func(string) string) []act.Msg {
	f, _ := project.FieldFor(key)
	was := ""
	if f.Get(m.snap.Project) != nil {
		was = f.Show(m.snap.Project)
	}
	return m.ask(line(label, was, true), func(text string) (answer, error) {
		if text == was {
			return answer{}, nil
		}
		v, err := f.Parse(bare(text), m.snap.Project)
		if err != nil {
			return answer{}, err
		}
		label := strings.TrimSpace(f.Name + " " + strings.TrimSpace(text))
		return answer{commit: act.Commit{Label: label, Do: func(p *project.Project) error { return f.Set(p, v) }}}, nil
	})
}

var errChanged = errors.New("the weighings have changed meanwhile: choose again")

// inReach tells whether weighing i is still the one it was.
func inReach(p project.Project, i int, was weigh.Weighing) bool {
	return i < len(p.Weigh) && equal(p.Weigh[i], was)
}

// change is a commit to weighing i, if that is still what it was.
func change(label string, i int, was weigh.Weighing, do func(*project.Project) error) act.Commit {
	return act.Commit{Label: label, Do: func(p *project.Project) error {
		if !inReach(*p, i, was) {
			return errChanged
		}
		return do(p)
	}}
}
