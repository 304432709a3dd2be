package workbench

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"
)

// The times that tell a measuring tool's reading from a hand: a tool types its
// digits and its Enter in one breath.
const (
	breath   = 150 * time.Millisecond // an Enter this soon after a character is part of a reading
	lineFeed = 50 * time.Millisecond  // an LF this soon after a CR belongs to it
)

// typing watches the keyboard for readings of a calliper, which arrive wherever
// the cursor happens to be.
type typing struct {
	lastChar   time.Time
	lastReturn time.Time
}

// key says what a key is taken for. drop: it is nothing at all. reading: it is
// the Enter at the end of a reading, which moves on in a form and does nothing
// anywhere else.
func (t *typing) key(k tea.KeyMsg, now time.Time) (out tea.KeyMsg, drop, reading bool) {
	switch {
	case k.Type == tea.KeyCtrlJ: // LF; CR is KeyEnter
		if within(now, t.lastReturn, lineFeed) {
			t.lastReturn = time.Time{} // one LF to a CR
			return k, true, false
		}
		k.Type = tea.KeyEnter
		return k, false, t.end(now)
	case k.Type == tea.KeyEnter:
		t.lastReturn = now
		return k, false, t.end(now)
	case k.Type == tea.KeyRunes || k.Type == tea.KeySpace:
		t.lastChar = now
	}
	return k, false, false
}

// end tells whether an Enter ends a reading; a reading has one Enter.
func (t *typing) end(now time.Time) bool {
	reading := within(now, t.lastChar, breath)
	t.lastChar = time.Time{}
	return reading
}

// within tells whether then was at most d before now. A clock set back counts
// as long ago: better one Enter too many than a keyboard that seems dead.
func within(now, then time.Time, d time.Duration) bool {
	gone := now.Sub(then)
	return !then.IsZero() && gone >= 0 && gone <= d
}
