//go:build !windows

package endtoend

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"

	"chape/ui/test/ptytest"
)

// driver types meaningful keys at random and knows, without asking the program,
// what state each of them leads to.
type driver struct {
	r      *rand.Rand
	screen *ptytest.Screen

	history    []state // every state since the program was opened, oldest first
	undo, redo []state
	pane       int // in hand: 0 knife, 1 plan, 2 steps
	typed      strings.Builder
}

func newDriver(r *rand.Rand, s *ptytest.Screen, start state) *driver {
	return &driver{r: r, screen: s, history: []state{start}}
}

func (d *driver) now() state { return d.history[len(d.history)-1] }

// send types, and tells whether the program was still there.
func (d *driver) send(keys string) bool {
	fmt.Fprintf(&d.typed, "%q ", keys)
	return d.screen.Send(keys) == nil
}

// settled waits until the screen says that the state of the last key is saved.
func (d *driver) settled() bool {
	want := d.now().shown()
	return d.screen.Reaches(func(screen string) bool {
		got, ok := screenState(screen)
		return ok && got == want
	})
}

// act does one thing at random; false: the program has ended.
func (d *driver) act() bool {
	switch n := d.r.IntN(20); {
	case n < 6:
		return d.number()
	case n < 10:
		return d.tick()
	case n < 12:
		return d.skip()
	case n < 14:
		return d.startHold()
	case n < 16:
		return d.back("u", &d.undo, &d.redo)
	case n < 17:
		return d.back("U", &d.redo, &d.undo)
	case n < 18:
		return d.bench()
	}
	return d.settled()
}

// commit notes a change that the program will make.
func (d *driver) commit(next state) {
	if now := d.now(); next != now {
		d.undo, d.redo = append(d.undo, now), nil
		d.history = append(d.history, next)
	}
}

// back is undo, and redo the other way round. The Home behind the letter keeps
// it from running into the next one.
func (d *driver) back(key string, from, to *[]state) bool {
	if n := len(*from); n > 0 {
		*to = append(*to, d.now())
		d.history = append(d.history, (*from)[n-1])
		*from = (*from)[:n-1]
	}
	return d.send(key + home_)
}

func (d *driver) goTo(pane int) string {
	keys := strings.Repeat(tab, (pane-d.pane+3)%3)
	d.pane = pane
	return keys + home_
}

func (d *driver) number() bool {
	i := d.r.IntN(len(figures))
	f := figures[i]
	v := float64(f.from+d.r.IntN(f.to-f.from)) + 0.5
	next := d.now()
	next.figures[i] = v
	d.commit(next)
	return d.send(d.goTo(0) + strings.Repeat(down, f.row) + pasted(fmt.Sprint(v)) + "\r")
}

// onStep goes to a step and presses a letter there.
func (d *driver) onStep(i int, key string) bool {
	return d.send(d.goTo(2) + strings.Repeat(down, i) + key + home_)
}

func (d *driver) tick() bool {
	i, next := d.r.IntN(stepCount), d.now()
	switch s := &next.steps[i]; {
	case s.done:
		s.done = false
	case s.started && !s.skipped: // refused: its hold runs
	case hasHold(i) && !s.skipped:
		return true // it would ask
	default:
		s.done, s.skipped = true, false
	}
	d.commit(next)
	return d.onStep(i, " ")
}

func (d *driver) skip() bool {
	i, next := d.r.IntN(stepCount), d.now()
	if s := &next.steps[i]; !s.done { // else refused
		s.skipped = !s.skipped
	}
	d.commit(next)
	return d.onStep(i, "s")
}

func (d *driver) startHold() bool {
	i, next := d.r.IntN(stepCount), d.now()
	s := &next.steps[i]
	if s.started && hasHold(i) && !s.done && !s.skipped {
		return true // it would ask
	}
	s.started = s.started || hasHold(i) && !s.done && !s.skipped // else refused
	d.commit(next)
	return d.onStep(i, "t")
}

// bench opens the bench view, presses Space once and leaves it.
func (d *driver) bench() bool {
	next := d.now()
	if i := slices.IndexFunc(next.steps[:], func(s step) bool { return !s.done && !s.skipped }); i >= 0 {
		switch s := &next.steps[i]; {
		case !hasHold(i):
			s.done = true
		case !s.started:
			s.started = true
		}
	}
	d.commit(next)
	has := func(text string) func(string) bool {
		return func(screen string) bool { return strings.Contains(screen, text) }
	}
	return d.send("b ") && d.screen.Reaches(has("Esc leave")) &&
		d.send(escape) && d.screen.Reaches(has(ready))
}

// pasted is a text as the terminal pastes it. Letters that come within a second of typed
// digits are no commands; those behind a paste are.
func pasted(text string) string { return "\x1b[200~" + text + "\x1b[201~" }
