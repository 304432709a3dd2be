package session

import (
	"path/filepath"

	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
)

// leaveCopyQuestion asks before a changed copy without a file is left for
// another project.
func (s *Session) leaveCopyQuestion(path string) act.Question {
	return act.Question{
		Title: "This copy is not kept",
		Text:  []string{"You have changed it, and it has no file yet."},
		Choices: []act.Choice{
			{Key: "k", Does: "keep it as a project, and open the other one", Do: func() []act.Msg {
				s.next = path
				return s.Keep()
			}},
			{Key: "d", Does: "drop it, and open the other one", Do: func() []act.Msg { return s.opening(path) }},
		},
	}
}

// looseQuestion asks before a changed copy, which has no file, is left.
func (s *Session) looseQuestion() act.Question {
	return act.Question{
		Title: "This copy is not kept",
		Text:  []string{"You have changed it, and it has no file yet."},
		Choices: []act.Choice{
			{Key: "k", Does: "keep it as a project, and quit", Do: func() []act.Msg {
				out := s.Keep()
				s.quitting = s.keeping
				return out
			}},
			{Key: "d", Does: "drop it, and quit", Do: func() []act.Msg {
				s.dropped = true
				return do(tea.Quit)
			}},
		},
	}
}

// sidesQuestion asks after a change on both sides.
func (s *Session) sidesQuestion() act.Question {
	theirs, ours, readable := s.doc.Sides()
	q := act.Question{
		Title: "Changed on both sides",
		Text: []string{
			"Another program has changed this project while it was changed here. Both are kept:",
			"theirs in " + filepath.Base(theirs),
			"yours in  " + filepath.Base(ours),
		},
		Stays: true,
	}
	if readable {
		q.Choices = append(q.Choices, act.Choice{Key: "t", Does: "go on with theirs; yours stays beside it", Do: func() []act.Msg {
			s.o.Notices = s.doc.Theirs()
			return []act.Msg{Changed{}}
		}})
	} else {
		q.Text[0] = "Another program has damaged this project's file. Both are kept:"
		q.Text = append(q.Text, "Theirs can't be loaded; it is left as it is.")
	}
	q.Choices = append(q.Choices, act.Choice{Key: "y", Does: "go on with yours, in its own file; theirs stays as it is", Do: func() []act.Msg {
		return []act.Msg{s.moving(s.doc.Ours), Changed{}}
	}})
	return q
}

// lossQuestion asks before the program ends with something that can't be saved.
func (s *Session) lossQuestion() act.Question {
	why := "it has not been saved yet"
	if err := s.doc.Failure(); err != nil {
		why = err.Error()
	}
	return act.Question{
		Title: "Not saved",
		Text:  []string{why, "", "Quitting puts your work into a file of its own, beside it or in your home folder, and says where."},
		Choices: []act.Choice{
			{Key: "q", Does: "quit, and put it there", Do: func() []act.Msg { return do(tea.Quit) }},
			{Key: "s", Does: "try to save again", Do: s.Quit},
		},
	}
}

// elsewhereQuestion offers another file where the document's own can't be
// written.
func (s *Session) elsewhereQuestion() act.Question {
	return act.Question{
		Title: "Not saved",
		Text:  []string{s.doc.Failure().Error()},
		Choices: []act.Choice{
			{Key: "s", Does: "try again", Do: s.saveNow},
			{Key: "k", Does: "go on in another file, on the shelf in " + s.o.Shelf.Dir(), Do: s.keepOnShelf},
		},
	}
}
