// Package rig is the bench that panes are tested on: a pane with the least of a root
// around it, a clock of its own, and keys pressed by hand or by a measuring tool. Tests
// only.
package rig

import (
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"chape/calc"
	"chape/project"
	"chape/ui/act"
	"chape/ui/part"
	"chape/ui/test/golden"
)

// Noon is when a rig begins: a Thursday.
var Noon = time.Date(2026, 11, 26, 12, 0, 0, 0, time.UTC)

// ByHand is between two keys that are pressed by hand: long enough for a letter after a
// figure.
const ByHand = part.Settle + time.Millisecond

// Rig is a pane, and what a root would know.
type Rig[P act.Pane] struct {
	T       testing.TB
	Pane    P
	Project project.Project // as committed
	Snap    act.Snapshot    // what the pane is shown beside that
	Plan    bool            // a plan is made for each snapshot
	Now     time.Time
	Pace    time.Duration // between keys, ByHand at first

	Sent    []act.Msg // all that the pane answered
	Commits []string  // the labels of what was done
	Said    []string  // what was said, and why something was refused
	Work    []tea.Cmd // with Hold set: what the pane gave to do, not run yet
	Hold    bool

	preview func(*project.Project)
	reading part.Reading
}

// New sets a pane of w by h cells on the bench and shows it a project. The pane is made
// with the rig's clock.
func New[P act.Pane](t testing.TB, p project.Project, w, h int, make func(now func() time.Time) P) *Rig[P] {
	return At(t, Noon, p, w, h, make)
}

// At is New at another time.
func At[P act.Pane](t testing.TB, now time.Time, p project.Project, w, h int, make func(now func() time.Time) P) *Rig[P] {
	r := &Rig[P]{T: t, Project: p, Now: now, Pace: ByHand}
	r.Pane = make(func() time.Time { return r.Now })
	r.Pane.SetSize(w, h)
	r.Show()
	return r.Send(act.InHand{Is: true})
}

// Show shows the pane the state of the project and the clock.
func (r *Rig[P]) Show() *Rig[P] {
	s := r.Snap
	s.Project, s.Now = r.Project, r.Now
	if r.preview != nil {
		s.Project = r.Project.Clone()
		r.preview(&s.Project)
	}
	s.Unit = s.Project.Units
	if r.Plan {
		plan, err := calc.Compute(s.Project.Input(calc.DefaultLimits()))
		if s.Err, s.Stale = err, err != nil; err == nil {
			r.Snap.Plan, s.Plan = plan, plan
		}
	}
	r.Pane.SetSnapshot(s)
	return r
}

// Wait lets time pass.
func (r *Rig[P]) Wait(d time.Duration) *Rig[P] {
	r.Now = r.Now.Add(d)
	return r.Show()
}

// Send hands the pane a message, keys by way of the reading, and does what it answers.
func (r *Rig[P]) Send(msg tea.Msg) *Rig[P] {
	if k, ok := msg.(tea.KeyMsg); ok {
		if first, rest, several := part.Letters(k); several && !act.Typing(r.Pane) {
			return r.Send(first).Send(rest)
		}
		p := r.reading.Take(k, r.Now)
		if p.Echo {
			return r
		}
		msg = p
	}
	next, out := r.Pane.Update(msg)
	r.Pane = next.(P)
	for _, m := range out {
		r.Sent = append(r.Sent, m)
		if !r.do(m) {
			break
		}
	}
	return r
}

// do does one answer; false for a change that was refused.
func (r *Rig[P]) do(m act.Msg) bool {
	switch m := m.(type) {
	case act.Do:
		if r.Hold {
			r.Work = append(r.Work, tea.Cmd(m))
			return true
		}
		if got := m(); got != nil {
			r.Send(got)
		}
	case act.Say:
		r.Said = append(r.Said, m.Text)
	case act.Choose:
		r.Snap.Mark = m.Mark
	case act.Preview:
		r.preview = m.Do
	case act.Drop:
		r.preview = nil
	case act.Record:
		p := r.Project.Clone()
		m.Do(&p)
		r.Project = p
	case act.Commit:
		r.preview = nil
		p := r.Project.Clone()
		if err := m.Do(&p); err != nil {
			r.Said = append(r.Said, err.Error())
			r.Show()
			return false
		}
		if err := p.Validate(); err != nil && r.Project.Validate() == nil {
			r.T.Errorf("%q makes what can't be saved: %v", m.Label, err)
		}
		r.Project = p
		r.Commits = append(r.Commits, m.Label)
	default:
		return true
	}
	r.Show()
	return true
}

// Run runs the work that was held back, and what comes of it.
func (r *Rig[P]) Run() *Rig[P] {
	r.Hold = false
	work := r.Work
	r.Work = nil
	for _, w := range work {
		r.do(act.Do(w))
	}
	return r
}

// Keys presses keys, by hand unless Pace says otherwise: names as Bubble Tea has them,
// or what is typed.
func (r *Rig[P]) Keys(names ...string) *Rig[P] {
	for _, n := range names {
		r.Wait(r.Pace).Send(Key(n))
	}
	return r
}

// Type types a text, letter by letter.
func (r *Rig[P]) Type(text string) *Rig[P] {
	for _, c := range text {
		r.Keys(string(c))
	}
	return r
}

// Answer types a text in place of the one that stands, and Enter.
func (r *Rig[P]) Answer(text string) *Rig[P] { return r.Keys("ctrl+u").Type(text).Keys("enter") }

// Tool types a reading as a measuring tool does, some time after what was before: at a
// pace a character, and with what it ends by ("enter", "ctrl+j", both).
func (r *Rig[P]) Tool(reading string, pace time.Duration, ends ...string) *Rig[P] {
	was := r.Pace
	r.Wait(5 * time.Second)
	r.Pace = pace
	r.Type(reading).Keys(ends...)
	r.Pace = was
	return r
}

// Screen is what is shown, without its styles.
func (r *Rig[P]) Screen() string { return ansi.Strip(r.Pane.View()) }

// Shows asks for texts on the screen, wherever lines end.
func (r *Rig[P]) Shows(texts ...string) *Rig[P] {
	r.T.Helper()
	flat := strings.Join(strings.Fields(r.Screen()), " ")
	for _, text := range texts {
		if !strings.Contains(flat, text) {
			r.T.Errorf("no %q in\n%s", text, r.Screen())
		}
	}
	return r
}

// Lacks asks that texts are not on the screen.
func (r *Rig[P]) Lacks(texts ...string) *Rig[P] {
	r.T.Helper()
	flat := strings.Join(strings.Fields(r.Screen()), " ")
	for _, text := range texts {
		if strings.Contains(flat, text) {
			r.T.Errorf("%q in\n%s", text, r.Screen())
		}
	}
	return r
}

// Last is what was answered last; nil when nothing was.
func (r *Rig[P]) Last() act.Msg {
	if len(r.Sent) == 0 {
		return nil
	}
	return r.Sent[len(r.Sent)-1]
}

// Golden compares the screen with a file in the package's testdata, but for where the dots
// of a drawing lie.
func (r *Rig[P]) Golden(t *testing.T, name string) {
	t.Helper()
	golden.Screen(t, name+".txt", r.Screen())
}
