package alarm

import (
	"strings"
	"testing"
	"time"

	"chape/project"
	"chape/project/shelf"
	"chape/project/steps"
	"chape/ui/term"
)

var morning = time.Date(2026, 11, 25, 9, 30, 0, 0, time.UTC) // a Wednesday

// bells counts; nothing else is of interest.
type bells int

func (b *bells) Bell() error                                  { *b++; return nil }
func (b *bells) Title(string) error                           { return nil }
func (b *bells) Notice(term.NoticeKind, string, string) error { return nil }
func (b *bells) Close() error                                 { return nil }

// held is a project whose only hold was to be over at 09:00.
func held(title string) project.Project {
	return project.Project{Title: title, Steps: []steps.Step{{
		Title: "Dry it", Short: "DRY", Hold: time.Hour, Started: morning.Add(-90 * time.Minute),
	}}}
}

// TestShelfReadInParts: what fell due before the start is said at once for the project in
// hand; the rest waits until a shelf that takes more than one look is read, and is told
// in one go.
func TestShelfReadInParts(t *testing.T) {
	var rung bells
	now := morning
	a := New(&Options{Clock: func() time.Time { return now }, Voice: &rung, Shelf: shelf.Open(nil, "")})
	a.SetProject(held("Own"), "own.toml", "own.toml")
	var running []shelf.Running
	for _, title := range []string{"Heron", "Otter"} {
		holds := steps.Holds(held(title).Steps, title)
		holds[0].Key = title + ".toml"
		running = append(running, shelf.Running{Path: title + ".toml", Holds: holds})
	}
	a.Observe()
	a.Take(othersMsg{running[:1], false})
	now = now.Add(time.Second)
	if a.Observe(); a.Text() != "DRY fell due meanwhile, at 09:00" || rung != 1 {
		t.Fatalf("of the project in hand: %q, %d bells", a.Text(), rung)
	}
	a.Take(othersMsg{running, true})
	if want := "fell due meanwhile: DRY 09:00, Heron DRY 09:00, Otter DRY 09:00"; a.Text() != want {
		t.Errorf("banner %q, want %q", a.Text(), want)
	}
	if got := strings.Join(a.list, "; "); got != "Own DRY: due since 09:00; Heron DRY: due since 09:00; Otter DRY: due since 09:00" {
		t.Errorf("list %q", got)
	}
	now = now.Add(20 * time.Second)
	if a.Observe(); rung != 2 {
		t.Errorf("%d bells after %v", rung, bellPause)
	}
	a.Silence()
	now = now.Add(bellPause)
	if a.Observe(); rung != 2 || a.Ringing() {
		t.Errorf("%d bells once silenced", rung)
	}
}

// TestLateRingsAgain: a hold that is late rings every five minutes, however often it is
// silenced; one that is only due does not.
func TestLateRingsAgain(t *testing.T) {
	for _, latest := range []time.Duration{0, 70 * time.Minute} {
		var rung bells
		now := morning
		a := New(&Options{Clock: func() time.Time { return now }, Voice: &rung})
		p := held("Own")
		p.Steps[0].Latest = latest
		a.SetProject(p, "own.toml", "own.toml")
		a.Observe()
		var times []time.Duration
		for ; now.Before(morning.Add(31 * time.Minute)); now = now.Add(time.Second) {
			if a.Observe(); a.Ringing() {
				times = append(times, now.Sub(morning))
				a.Silence()
			}
		}
		want := 7 // at once and every five minutes
		if latest == 0 {
			want = 1
		}
		if len(times) != want || int(rung) != want || want == 7 && times[6] != 30*time.Minute {
			t.Errorf("look by %v: rings at %v, %d bells", latest, times, rung)
		}
	}
	var rung bells
	now := morning
	a := New(&Options{Clock: func() time.Time { return now }, Voice: &rung})
	p := held("Own")
	p.Steps[0].Latest = time.Hour
	p.Steps = append(p.Steps, p.Steps[0])
	p.Steps[1].Short = "GLUE"
	a.SetProject(p, "own.toml", "own.toml")
	a.Observe()
	a.Silence()
	now = morning.Add(latePause)
	if a.Observe(); a.Text() != "2 late, look at them: DRY, GLUE" {
		t.Errorf("both are late: %q", a.Text())
	}
}

// TestRunning: who quits is told what runs on without a bell.
func TestRunning(t *testing.T) {
	now := morning
	a := New(&Options{Clock: func() time.Time { return now }, Voice: new(bells)})
	p := held("Own")
	p.Steps[0].Hold = 2 * time.Hour
	a.SetProject(p, "own.toml", "own.toml")
	for i := range 20 {
		a.others = append(a.others, steps.Hold{Project: "Heron", Step: i, Short: "CURE", Started: now, Due: now.Add(time.Hour)})
	}
	a.others = append(a.others, steps.Hold{Project: "Otter", Short: "CURE", Started: now.Add(-time.Hour), Due: now})
	lines := a.Running(false)
	if len(lines) != 12 || lines[0] != "  Own DRY: 30 min to go, 10:00" || lines[1] != "  Heron CURE: 1 h to go, 10:30" || lines[11] != "  and 10 more" {
		t.Errorf("%q", lines)
	}
	if a.others = nil; a.Running(true) != nil {
		t.Errorf("of a copy that is in no file: %q", a.Running(true))
	}
}
