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

// TestShelfReadInParts: what fell due before the start waits until a shelf that takes
// more than one look is read, and is told in one go.
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
	if a.Observe(); a.Ringing() || rung != 0 {
		t.Fatal("it rings before every file was read")
	}
	a.Take(othersMsg{running, true})
	if want := "fell due meanwhile: DRY 09:00, Heron DRY 09:00, Otter DRY 09:00"; a.Text() != want {
		t.Errorf("banner %q, want %q", a.Text(), want)
	}
	if got := strings.Join(a.List(), "; "); got != "Own DRY: due since 09:00; Heron DRY: due since 09:00; Otter DRY: due since 09:00" {
		t.Errorf("list %q", got)
	}
	now = now.Add(bellPause)
	if a.Observe(); rung != 2 {
		t.Errorf("%d bells after %v", rung, bellPause)
	}
	a.Silence()
	now = now.Add(bellPause)
	if a.Observe(); rung != 2 || a.Ringing() {
		t.Errorf("%d bells once silenced", rung)
	}
}
