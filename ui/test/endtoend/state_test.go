//go:build !windows

package endtoend

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"time"

	"chape/project"
	"chape/project/file"
	"chape/ui/test/ptytest"
)

// state is what the random keys change, as far as both the screen and the file
// tell it.
type state struct {
	figures [3]float64 // blade length, blade depth, handle length
	steps   [stepCount]step
}

// step is how one step stands.
type step struct{ done, skipped, started bool }

// figure is one of the numbers: its row from the top of the pane, and the
// values that are typed, which all end in .5, so that no beginning of one is a
// value itself.
type figure struct {
	name     string
	row      int
	from, to int
}

var figureRow = func() (rows [3]*regexp.Regexp) {
	for i, f := range figures {
		rows[i] = regexp.MustCompile(f.name + ` +([0-9.]+) +mm`)
	}
	return rows
}()

var figures = [3]figure{
	{"blade length", 2, 90, 170},
	{"blade depth", 3, 26, 34},
	{"handle length", 9, 95, 130},
}

// stateOf is what the file says.
func stateOf(p project.Project) (s state) {
	s.figures = [3]float64{float64(p.Outline.Blade), float64(p.Outline.Depth), float64(p.Outline.Handle)}
	for i, st := range p.Steps {
		s.steps[i] = step{!st.Done.IsZero(), st.Skipped, !st.Started.IsZero()}
	}
	return s
}

// shown is the part of it that stands on the screen: a step that is skipped
// does not show that its hold was started.
func (s state) shown() state {
	for i := range s.steps {
		st := &s.steps[i]
		st.started = st.started && !st.done && !st.skipped
	}
	return s
}

// rest is the project without what stateOf tells and what follows from it, and
// without the minutes, which the bench view counts: no key that is typed changes
// it.
func rest(p project.Project) string {
	p = p.Clone()
	p.Outline.Blade, p.Outline.Depth, p.Outline.Handle = 0, 0, 0
	p.Knife.Stations, p.Sheath.Mouth, p.Untouched = nil, 0, ""
	for i := range p.Steps {
		s := &p.Steps[i]
		s.Done, s.Skipped, s.Started, s.Spent = time.Time{}, false, time.Time{}, 0
	}
	return string(file.Encode(p))
}

var stepRow = regexp.MustCompile(`[│╷╵][> ]([x* -]) STEP([A-L])([^│╷╵]*)`)

// clock is what stands in the row of a step whose hold runs.
var clock = regexp.MustCompile(`\d:\d\d`)

// screenState is what a screen of all three panes says is saved; ok is false
// where it does not say so, or while a number is being typed.
func screenState(screen string) (s state, ok bool) {
	head, panes, _ := strings.Cut(screen, "\n")
	if !strings.HasSuffix(strings.TrimRight(head, " "), "  saved") {
		return s, false
	}
	for i := range figures {
		if s.figures[i], ok = shown(panes, i); !ok {
			return s, false
		}
	}
	rows := stepRow.FindAllStringSubmatch(panes, -1)
	if len(rows) != stepCount {
		return s, false
	}
	for _, m := range rows {
		i := int(m[2][0] - 'A')
		s.steps[i] = step{
			done:    m[1] == "x",
			skipped: m[1] == "-",
			started: m[1] != "x" && clock.MatchString(m[3]),
		}
	}
	return s, true
}

// shown is a figure as it stands on the screen, saved or not; ok is false while
// it is being typed.
func shown(screen string, figure int) (v float64, ok bool) {
	m := figureRow[figure].FindStringSubmatch(screen)
	if m == nil {
		return 0, false
	}
	v, err := strconv.ParseFloat(m[1], 64)
	return v, err == nil
}

// showsFigure waits for a figure, saved or not.
func showsFigure(s *ptytest.Screen, figure int, want float64) {
	s.Until(fmt.Sprintf("%s %v", figures[figure].name, want), func(screen string) bool {
		v, ok := shown(screen, figure)
		return ok && v == want
	})
}

// savedWith waits until the screen calls a figure saved.
func savedWith(s *ptytest.Screen, figure int, want float64) {
	s.Until(fmt.Sprintf("%s %v as saved", figures[figure].name, want), func(screen string) bool {
		st, ok := screenState(screen)
		return ok && st.figures[figure] == want
	})
}
