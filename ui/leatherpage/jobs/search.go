package jobs

import (
	"context"
	"fmt"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/calc/nest"
	"chape/project/leather"
	"chape/ui/act"
)

// Place looks for a placing; nest.Place.
type Place func(context.Context, nest.Task, func(nest.Progress)) (nest.Result, error)

// Search is a placing being looked for.
type Search struct {
	stop func()
	news chan Found
	at   nest.Progress
}

// Found is how far a search is, or what came of it: Laid or Err.
type Found struct {
	Of   *Search
	Laid *leather.Laid
	Err  error
	at   nest.Progress
}

// often is how long it is between two looks at a search.
const often = 200 * time.Millisecond

// Begin looks for a placing of what laid asks for.
func Begin(place Place, laid leather.Laid) *Search {
	ctx, stop := context.WithCancel(context.Background())
	s := &Search{stop: stop, news: make(chan Found, 1)}
	go func() {
		var told time.Time
		r, err := place(ctx, laid.Task, func(at nest.Progress) {
			if time.Since(told) < often { // to draw the page takes time from the search
				return
			}
			told = time.Now()
			select {
			case s.news <- Found{Of: s, at: at}:
			default: // nobody has looked since: the next will do
			}
		})
		laid.Result = r
		select {
		case <-s.news: // no longer of interest
		default:
		}
		s.news <- Found{Of: s, Laid: &laid, Err: err}
	}()
	return s
}

// Wait brings the next news.
func (s *Search) Wait() act.Msg { return act.Do(func() tea.Msg { return <-s.news }) }

// Stop breaks it off: it ends with the best so far.
func (s *Search) Stop() { s.stop() }

// Ended hears of the search, and tells whether that was the last of it.
func (s *Search) Ended(msg Found) bool {
	if msg.Laid == nil && msg.Err == nil {
		s.at = msg.at
		return false
	}
	s.stop()
	return true
}

// Progress is how far it is, in a line.
func (s *Search) Progress() string {
	at := s.at
	if at.Of == 0 {
		return "placing the parts; Esc breaks it off"
	}
	return fmt.Sprintf("placing: %.0f %% done, %d of %d parts have a place; Esc breaks it off and keeps the best so far",
		100*at.Share, at.Placed, at.Of)
}
