package bench

import (
	"math/rand/v2"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project"
	"chape/project/steps"
	"chape/ui/act"
)

// event is one thing that happens at the bench.
type event struct {
	at   time.Time
	name string
	msg  tea.Msg // nil: the key that silenced an alarm
}

func press(t tea.KeyType) tea.Msg { return tea.KeyMsg{Type: t} }

func typed(s string) tea.Msg { return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(s)} }

// happenings are what may come from keyboard, calliper and screen.
func happenings(rnd *rand.Rand) []event {
	space := tea.KeyMsg{Type: tea.KeySpace, Runes: []rune{' '}}
	one := func(name string, msg tea.Msg) []event { return []event{{name: name, msg: msg}} }
	switch rnd.IntN(24) {
	case 0, 1, 2, 3:
		return one("space", space)
	case 4, 5, 6:
		return one("CR", press(tea.KeyEnter))
	case 7:
		return one("LF", press(tea.KeyCtrlJ))
	case 8:
		return append(one("CR", press(tea.KeyEnter)), event{name: "LF", msg: press(tea.KeyCtrlJ)})
	case 9:
		return one("back", press([]tea.KeyType{tea.KeyBackspace, tea.KeyCtrlH}[rnd.IntN(2)]))
	case 10, 11:
		return one("h", typed([]string{"h", "H"}[rnd.IntN(2)]))
	case 12:
		return one("character", typed(string(rune('i'+rnd.IntN(18)))))
	case 13:
		return one("other", press([]tea.KeyType{tea.KeyEsc, tea.KeyCtrlC, tea.KeyCtrlZ, tea.KeyTab, tea.KeyUp, tea.KeyF1, tea.KeyDelete}[rnd.IntN(7)]))
	case 14:
		return one("other", tea.KeyMsg{Type: tea.KeyEnter, Alt: true})
	case 15:
		return one("character", tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(" \r h"), Paste: true})
	case 16, 17: // a calliper
		return append(one("character", typed("12.34")), event{name: "CR", msg: press(tea.KeyEnter)}, event{name: "LF", msg: press(tea.KeyCtrlJ)})
	case 18:
		return append(one("character", typed("0.125")), event{name: "space", msg: space}, event{name: "character", msg: typed("in")}, event{name: "CR", msg: press(tea.KeyEnter)})
	case 19:
		return one("silence", nil)
	}
	m := tea.MouseMsg{X: rnd.IntN(80), Y: []int{0, 3, 3, 23, -1, 30}[rnd.IntN(6)],
		Action: tea.MouseAction(rnd.IntN(3)), Button: tea.MouseButton(rnd.IntN(8))}
	if m.Y == 3 && m.Action == tea.MouseActionPress && m.Button == tea.MouseButtonLeft {
		return one("touch", m)
	}
	return one("elsewhere", m)
}

// pause is how long until the next happening: mostly hasty, now and then a rest, or a clock set.
func pause(rnd *rand.Rand) time.Duration {
	upTo := func(d time.Duration) time.Duration { return time.Duration(rnd.Int64N(int64(d))) }
	switch rnd.IntN(20) {
	case 0, 1, 2, 3, 4:
		return upTo(60 * time.Millisecond)
	case 5, 6, 7, 8:
		return upTo(300 * time.Millisecond)
	case 9, 10:
		return 990*time.Millisecond + upTo(20*time.Millisecond)
	case 11:
		return []time.Duration{50 * time.Millisecond, 150 * time.Millisecond, time.Second, 3 * time.Second}[rnd.IntN(4)]
	case 12, 13, 14, 15:
		return time.Second + upTo(3*time.Second)
	case 16, 17:
		return upTo(time.Hour)
	case 18:
		return upTo(30 * time.Hour)
	}
	if rnd.IntN(5) == 0 {
		return -upTo(10 * time.Hour)
	}
	return 0
}

// A stuck key, a mashed keyboard, a wet screen, a calliper in the wrong window: the steps are what the keys that
// mean something made of them.
func TestRandomEvents(t *testing.T) {
	rnd := rand.New(rand.NewPCG(7, 9))
	fresh := func() []steps.Step { return steps.FormThenSew(steps.Whole) }
	r := newDesk(t, project.Project{Title: "Test knife", Steps: fresh()}, 80, 24)
	r.idle = true
	ref := &reader{steps: fresh()}
	wait := func(d time.Duration) {
		ref.wait(r.Now, d)
		r.wait(d)
	}
	var ticks, starts, ends, backs, drops int
	for n := 0; n < 40_000; {
		wait(pause(rnd))
		if rnd.IntN(10) == 0 {
			r.elsewhere(rnd, ref)
		}
		list := happenings(rnd)
		if rnd.IntN(40) == 0 { // stuck, its repeat beginning late
			first := list[0]
			n++
			r.happens(first, ref)
			wait(200*time.Millisecond + time.Duration(rnd.IntN(2300))*time.Millisecond)
			for range 60 {
				list = append(list, first)
			}
		}
		for _, e := range list {
			n++
			before := ref.summary()
			r.happens(e, ref)
			after := ref.summary()
			ticks, backs = ticks+max(0, after[0]-before[0]), backs+max(0, before[0]-after[0])
			starts, drops = starts+max(0, after[1]-before[1]), drops+max(0, before[1]-after[1])
			ends += max(0, after[2]-before[2])
			if len(list) > 20 {
				wait(time.Duration(rnd.IntN(40)) * time.Millisecond)
			} else {
				wait(time.Duration(rnd.IntN(3)) * time.Millisecond)
			}
		}
		if ref.inHand() == nil { // the next knife
			r.Project.Steps, ref.steps, ref.later = fresh(), fresh(), pending{}
			r.send(act.InHand{})
			r.send(act.InHand{Is: true})
			ref.did, ref.past = past{}, nil
		}
	}
	t.Logf("%d ticks, %d taken back, %d holds started, %d starts taken back, %d ended early, %d put off", ticks, backs, starts, drops, ends, ref.waited)
	if ticks < 500 || backs < 100 || starts < 100 || drops < 50 || ends < 10 || ref.waited < 100 {
		t.Errorf("too little happened: %d ticks, %d taken back, %d holds started, %d starts taken back, %d ended early, %d put off",
			ticks, backs, starts, drops, ends, ref.waited)
	}
}

// happens is one event to both, which then have to agree.
func (r *desk) happens(e event, ref *reader) {
	r.T.Helper()
	e.at = r.Now
	ref.read(e)
	if e.msg == nil {
		r.send(act.Silenced{})
	} else {
		r.send(e.msg)
	}
	if i := differ(r.Project.Steps, ref.steps); i >= 0 {
		r.T.Fatalf("%s at %v: step\n%+v\nwant\n%+v", e.name, e.at, r.Project.Steps[i], ref.steps[i])
	}
}

func (r *reader) summary() (n [3]int) {
	for _, s := range r.steps {
		for i, set := range []bool{!s.Done.IsZero(), !s.Started.IsZero(), !s.Ended.IsZero()} {
			if set {
				n[i]++
			}
		}
	}
	return n
}

// elsewhere is what is done in Steps: the time of a data sheet set, a hold started anew.
func (r *desk) elsewhere(rnd *rand.Rand, ref *reader) {
	s := ref.inHand()
	at := steps.Current(r.Project.Steps)
	var list []steps.Step
	var err error
	switch {
	case s == nil:
		return
	case s.Sheet && s.Hold == 0 && rnd.IntN(3) == 0:
		s.Sheet = false
		list, err = steps.SetHold(r.Project.Steps, at, 0, 0)
	case s.Sheet && s.Hold == 0:
		s.Hold = 4 * time.Hour
		list, err = steps.SetHold(r.Project.Steps, at, s.Hold, 0)
	case s.Hold > 0 && !s.Started.IsZero() && rnd.IntN(4) == 0:
		if s.First.IsZero() {
			s.First = s.Started
		}
		s.Started, s.Ended = seconds(r.Now), time.Time{}
		list, err = steps.StartHold(r.Project.Steps, at, r.Now)
	default:
		return
	}
	if err != nil {
		r.T.Fatal(err)
	}
	r.Project.Steps = list
	r.Show()
}

// differ gives the first step that is not as it is to be, -1 for none.
func differ(got, want []steps.Step) int {
	for i := range want {
		g, w := got[i], want[i]
		if !g.Done.Equal(w.Done) || !g.Started.Equal(w.Started) || !g.First.Equal(w.First) || !g.Ended.Equal(w.Ended) || g.Skipped {
			return i
		}
	}
	return -1
}
