package shelfpane

import (
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"chape/calc/compare"
	"chape/calc/length"
	"chape/project"
	"chape/project/carry"
	"chape/ui/act"
	"chape/ui/part"
)

// learned is what finished sheaths of the shelf tend to need, by their leather: offered for
// a new project in the question how it begins, as corrections that count for nothing until
// they are kept. The zero one knows of none.
type learned struct {
	past map[length.Length][]compare.Tried
	not  bool // they are not wanted
}

// learnedMsg brings them for the question that stands.
type learnedMsg struct {
	of   *question
	past map[length.Length][]compare.Tried
}

const learnKey = "e"

// turnLearned is the key of the row; where there is none it does nothing.
func (m *Model) turnLearned() part.Row {
	return part.Key(learnKey, "what finished sheaths needed, offered or not", part.Quiet(func() {
		if m.question != nil {
			m.question.not = !m.question.not
		}
	}), learnKey)
}

// learn has the shelf read for finished sheaths of such leathers; what can't be read
// teaches nothing.
func (m *Model) learn(of *question, leathers ...length.Length) []act.Msg {
	s := m.o.Shelf
	return do(func() tea.Msg {
		msg := learnedMsg{of, map[length.Length][]compare.Tried{}}
		for _, l := range leathers {
			if _, read := msg.past[l]; !read {
				msg.past[l], _ = s.Experience(l, "")
			}
		}
		return msg
	})
}

// offers are those for a project; none where its leather has taught none.
func (l *learned) offers(p project.Project) []project.Carried {
	past := l.past[p.Sheath.Leather]
	if len(past) == 0 {
		return nil
	}
	out, _ := carry.Experience(past, p) // marks that make no knife need no corrections
	return out
}

// lines are the row of the question, called what; none where there is nothing to offer.
func (l *learned) lines(what string, p project.Project) []string {
	all := l.offers(p)
	if len(all) == 0 {
		return nil
	}
	return []string{choiceRow(learnKey, what, fmt.Sprintf("%d on page T, %s", len(all), all[0].From), "none", !l.not)}
}

// put puts the offers into a project, unless they are not wanted.
func (l *learned) put(p *project.Project) {
	if !l.not {
		p.Carried = append(p.Clone().Carried, l.offers(*p)...)
	}
}
