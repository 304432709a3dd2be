// Package alarm is what becomes of holds on the screen: the line that says those that
// run, of this project and of the others on the shelf, and for those that fall due the
// bell, the banner, the notice and the user's own command, until a key silences them.
package alarm

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project"
	"chape/project/shelf"
	"chape/project/steps"
	"chape/ui/act"
	"chape/ui/term"
)

const (
	bellPause = 20 * time.Second // between two bells
	latePause = 5 * time.Minute  // until a hold that is late rings again, silenced or not
)

// Voice is what is said beside the screen.
type Voice interface {
	Bell() error
	Title(string) error
	Notice(kind term.NoticeKind, heading, text string) error
	Close() error // gives the window its old title back, until Title is called again
}

// Options are what an Alarm needs from outside.
type Options struct {
	Clock  func() time.Time // the wall clock
	Voice  Voice
	Shelf  *shelf.Shelf // whose holds are told of as well; nil: none
	Notice term.NoticeKind
	NoBell bool          // a hold that falls due shows, but does not ring
	OnDue  []string      // a command of the user's and its words; none: empty
	Quiet  []steps.Begun // holds of the project in hand that are shown, but never ring: the example's
}

// Alarm watches the holds. Its methods belong to one goroutine; what takes time is
// in the commands it answers with, and their answers come back to Take.
type Alarm struct {
	o       *Options
	own     project.Project
	key     string       // what the own project is known by
	path    string       // its file; another one while there are two of it
	others  []steps.Hold // of the other projects of the shelf
	watch   steps.Watch
	began   time.Time     // when the program was started
	missed  []steps.Event // before that, and not told yet
	told    []steps.Event // of those, told before the shelf was read
	read    bool          // every file of the shelf was looked at once
	looking bool          // a look at the shelf is under way

	text string   // the banner; "" while it is silent
	list []string // what fell due before the start, where it is more than one
	rang time.Time
	late struct {
		rings bool      // it is what rings now
		rang  time.Time // when it did last
	}
}

// New gives the alarm of a program that is started now. What is changed in o later
// holds from then on.
func New(o *Options) *Alarm {
	a := &Alarm{o: o}
	a.began = a.now()
	a.watch.Began(a.began)
	return a
}

func (a *Alarm) now() time.Time { return a.o.Clock().Round(0) }

// SetProject tells of the open project as it is committed, of the key it is known by,
// and of the file it is saved in, from the root of the system on.
func (a *Alarm) SetProject(p project.Project, key, path string) { a.own, a.key, a.path = p, key, path }

// Moved tells that the project known by one key is known by another from now on.
func (a *Alarm) Moved(from, to string) { a.watch.Moved(from, to) }

// Others are the holds of the other projects of the shelf.
func (a *Alarm) Others() []steps.Hold { return a.others }

// Ringing tells whether a key would silence the alarm.
func (a *Alarm) Ringing() bool { return a.text != "" }

// Text is the banner; "" while it is silent.
func (a *Alarm) Text() string { return a.text }

// Silence is the key that does nothing else.
func (a *Alarm) Silence() { a.text, a.list, a.late.rings = "", nil, false }

// Lines say the holds in at most two lines of at most width columns.
func (a *Alarm) Lines(width int) []string { return steps.HoldLines(a.holds(), a.now(), width) }

// Nearest says the hold that needs attention first, "" for none; running: it will ring.
func (a *Alarm) Nearest() (line string, running bool) {
	now := a.now()
	h, ok := steps.Nearest(a.holds(), now)
	if !ok {
		return "", false
	}
	return h.Line(now), h.State(now) == steps.HoldRunning
}

// Running says the holds that are still to ring, the nearest first, each in a line and
// at most a screen of them; unkept: those of the open project are in no file.
func (a *Alarm) Running(unkept bool) []string {
	const most = 12
	now, holds := a.now(), a.others
	if !unkept {
		holds = a.holds()
	}
	holds = slices.DeleteFunc(slices.Clone(holds), func(h steps.Hold) bool { return h.State(now) != steps.HoldRunning })
	steps.SortHolds(holds)
	var lines []string
	for i, h := range holds {
		if i == most-1 && len(holds) > most {
			return append(lines, fmt.Sprintf("  and %d more", len(holds)-i))
		}
		if h.Project == "" {
			h.Project = a.own.Title
		}
		lines = append(lines, "  "+h.Line(now))
	}
	return lines
}

// holds are those of this project, which is not named, and of the others: the watch and
// the line know them by the same key.
func (a *Alarm) holds() []steps.Hold {
	holds := steps.Holds(a.own.Steps, "")
	for i := range holds {
		holds[i].Key = a.key
	}
	return append(holds, a.others...)
}

// watched are those that ring: without the shelf until it is read, for its holds are told
// of together.
func (a *Alarm) watched() []steps.Hold {
	holds := a.holds()
	if a.o.Shelf != nil && !a.read {
		holds = holds[:len(holds)-len(a.others)]
	}
	return slices.DeleteFunc(holds, func(h steps.Hold) bool {
		return h.Key == a.key && slices.Contains(a.o.Quiet, h.Begun())
	})
}

// Observe asks which holds have fallen due, and rings. It is to be called every second.
func (a *Alarm) Observe() []act.Msg {
	now := a.now()
	var texts []string
	late := false
	for _, e := range a.watch.Observe(a.watched(), now) {
		late = late || e.Kind == steps.GoesLate
		if e.At.Before(a.began) {
			a.missed = append(a.missed, e)
			continue
		}
		texts = append(texts, eventText(e, a.key, now))
	}
	out := a.tellMissed(now)
	if len(texts) > 0 {
		out = append(out, a.ring(andMore(texts), nil, late, now)...)
		return append(out, a.onDue(texts)...)
	}
	// A clock set back must not keep the bell silent for hours.
	if a.Ringing() && (now.Sub(a.rang) >= bellPause || now.Before(a.rang)) {
		a.bellAt(now)
		out = append(out, a.bell()...)
	}
	return append(out, a.lateAgain(now)...)
}

// bellAt notes when it rang.
func (a *Alarm) bellAt(now time.Time) {
	a.rang = now
	if a.late.rings {
		a.late.rang = now
	}
}

// lateAgain rings for the holds that are late, however often that was silenced: what is
// late spoils.
func (a *Alarm) lateAgain(now time.Time) []act.Msg {
	since := now.Sub(a.late.rang)
	if a.Ringing() || len(a.missed) > 0 || 0 <= since && since < latePause {
		return nil
	}
	var names []string
	var first steps.Hold
	for _, h := range a.watched() {
		if h.State(now) == steps.HoldLate {
			if names = append(names, name(h, a.key)); len(names) == 1 {
				first = h
			}
		}
	}
	switch len(names) {
	case 0:
		return nil
	case 1:
		return a.ring(eventText(steps.Event{Hold: first, Kind: steps.GoesLate, At: first.LookBy}, a.key, now), nil, true, now)
	}
	return a.ring(fmt.Sprintf("%d late, look at them: %s", len(names), strings.Join(names, ", ")), nil, true, now)
}

func andMore(texts []string) string {
	text := texts[len(texts)-1]
	if n := len(texts) - 1; n > 0 {
		text = fmt.Sprintf("%s (and %d more)", text, n)
	}
	return text
}

// ring rings, late: for a hold that is late.
func (a *Alarm) ring(text string, list []string, late bool, now time.Time) []act.Msg {
	var out []act.Msg
	if !a.Ringing() || list == nil { // a longer list of what rings already is no new bell
		out = a.bell()
		defer a.bellAt(now)
	}
	a.text, a.list, a.late.rings = text, list, late
	return append(out, Said(a.o.Voice.Notice(a.o.Notice, "chape", text))...)
}

func (a *Alarm) bell() []act.Msg {
	if a.o.NoBell {
		return nil
	}
	return Said(a.o.Voice.Bell())
}

// Said tells that the terminal could not be written to; the program goes on.
func Said(err error) []act.Msg {
	if err == nil {
		return nil
	}
	return []act.Msg{act.Say{Text: "the alarm could not be sounded: " + err.Error(), Warn: true}}
}

// onDue runs the user's own command, without a shell. What was due stands in its
// environment, one a line. A failure is shown and does no more.
func (a *Alarm) onDue(texts []string) []act.Msg {
	if len(a.o.OnDue) == 0 {
		return nil
	}
	words, text := a.o.OnDue, strings.Join(texts, "\n")
	return []act.Msg{act.Do(func() tea.Msg {
		if err := term.Call(words, text); err != nil {
			return act.Say{Text: err.Error(), Warn: true}
		}
		return nil
	})}
}

// othersMsg brings the holds of the shelf.
type othersMsg struct {
	running []shelf.Running
	read    bool // every file was looked at once
}

// Poll gives the command that asks for the holds of the shelf; nil while one is at it.
func (a *Alarm) Poll() tea.Cmd {
	sh, now := a.o.Shelf, a.now()
	if sh == nil || a.looking {
		return nil
	}
	a.looking = true
	return func() tea.Msg { return othersMsg{sh.Holds(now), sh.Read()} }
}

// Take takes the holds of the other projects on; changed: they are others than before.
// Ok is false for messages that are not the alarm's.
func (a *Alarm) Take(msg tea.Msg) (out []act.Msg, changed, ok bool) {
	found, ok := msg.(othersMsg)
	if !ok {
		return nil, false, false
	}
	a.looking = false
	var others []steps.Hold
	for _, r := range found.running {
		for _, h := range r.Holds {
			if h.Key != a.path && !a.isOwn(h) {
				others = append(others, h)
			}
		}
	}
	changed = !reflect.DeepEqual(others, a.others)
	a.others = others
	if found.read && !a.read {
		a.read = true
		out = a.Observe()
	}
	return out, changed, true
}

// isOwn tells whether h, of another file, is a hold of the document as well: a copy
// that was put beside tells of the same ones.
func (a *Alarm) isOwn(h steps.Hold) bool {
	return h.Project == a.own.Title && slices.ContainsFunc(steps.Holds(a.own.Steps, ""), func(own steps.Hold) bool {
		return own.Begun() == h.Begun()
	})
}
