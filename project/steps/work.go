package steps

import "time"

// stillAfter is how long without a key the work clock goes on: whoever has not
// touched anything for longer has gone.
const stillAfter = 30 * time.Minute

// WorkClock counts the minutes at the bench from tick to tick. It runs while
// the bench view is on and stands still while the step in hand is held, from 30
// minutes after the last key, and over a leap of the clock (the machine slept, or
// the clock was set). The zero value is off, with nothing counted.
type WorkClock struct {
	on      bool
	last    time.Time
	lastKey time.Time
	held    bool
	sum     time.Duration
}

// On switches the clock on at now; opening the bench view took a key.
func (c WorkClock) On(now time.Time) WorkClock {
	if c.on {
		return c
	}
	c.on, c.last, c.lastKey, c.held = true, now.Round(0), now.Round(0), false
	return c
}

// Off counts up to now and stands still until On. What is counted stays.
func (c WorkClock) Off(now time.Time) WorkClock {
	c = c.Look(now, c.held)
	c.on = false
	return c
}

// Look counts up to now. Held tells whether a hold of the step in hand runs
// from now on. Looks come at every key and at least every few seconds.
func (c WorkClock) Look(now time.Time, held bool) WorkClock {
	if !c.on {
		return c
	}
	now = now.Round(0)
	if passed := now.Sub(c.last); !c.held && passed > 0 && passed < leap {
		until := now
		if still := c.lastKey.Add(stillAfter); until.After(still) {
			until = still
		}
		c.sum += max(0, until.Sub(c.last))
	}
	if now.Before(c.lastKey) { // the clock was set back
		c.lastKey = now
	}
	c.last, c.held = now, held
	return c
}

// Key counts up to now and notes that somebody is there.
func (c WorkClock) Key(now time.Time) WorkClock {
	if !c.on {
		return c
	}
	c = c.Look(now, c.held)
	c.lastKey = now.Round(0)
	return c
}

// Take returns what was counted since the last Take and starts again from 0.
func (c WorkClock) Take() (WorkClock, time.Duration) {
	sum := c.sum
	c.sum = 0
	return c, sum
}
