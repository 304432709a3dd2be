package bench

import (
	"time"

	"chape/ui/part"
)

// The times by which a hand is told from a slip, a stuck key and a measuring tool.
const (
	settleTime = time.Second            // without a key before the next change
	sameTime   = 3 * time.Second        // after a change the same key is taken for one that is held down
	quietTime  = 600 * time.Millisecond // until no more of it comes
	armTime    = 3 * time.Second        // h, then Enter
	twiceTime  = 2 * time.Second        // Ctrl+C and Ctrl+Z
)

// stroke is what was pressed.
type stroke uint8

const (
	otherKey stroke = iota
	charKey
	spaceKey
	returnKey
	touchKey // a touch or click on the step
	backKey
	endKey
	leaveKey
	quitKey
	suspendKey
	anyKey // whichever silenced an alarm
)

// meaning is what the pressing was for.
type meaning uint8

const (
	nothing  meaning = iota
	goOn             // start the hold, or tick
	takeBack         // the start of the hold, or the last tick
	later            // one of the two, if no key follows in quietTime: see hand.quiet
	silence          // an alarm was silenced: neither of the two
	armed            // Enter will end the hold
	tooLate          // the Enter that was to end it, after armTime
	endHold
	leave
	onceMore // of quit or suspend
	quit
	suspend
)

// hand reads the meaning of keys from their order and times. It is a value: read
// returns the next state. Times may carry a monotonic reading; where the clock
// was set back between two keys they count as far apart.
type hand struct {
	lastKey time.Time // of any key
	armedAt time.Time
	once    stroke // quitKey or suspendKey, pressed a first time
	onceAt  time.Time
	acted   meaning // goOn, takeBack or silence since the last second without a key
	by      stroke  // what did it
	at      time.Time
	waits   meaning // what the last key was for, if it is not held down
}

// read takes one key event; near: in one breath with a character before, as in a
// measuring tool's reading.
func (h hand) read(k stroke, near bool, now time.Time) (hand, meaning) {
	was := h
	h.armedAt, h.once, h.waits = time.Time{}, otherKey, nothing
	h.lastKey = now
	if was.acted != nothing && (now.Before(was.lastKey) || now.Sub(was.lastKey) >= settleTime) {
		h.acted = nothing
	}
	switch k {
	case leaveKey:
		return h, leave
	case quitKey, suspendKey:
		return h.pressTwice(k, was, now)
	case endKey:
		if near {
			return h, nothing
		}
		h.armedAt = now
		return h, armed
	case backKey:
		if h.acted == takeBack || h.acted == silence {
			return h, nothing
		}
		if was.waits != nothing { // it has not been done: that is all there is to take back
			return h.act(takeBack, nothing, k, now)
		}
		return h.act(takeBack, takeBack, k, now)
	case returnKey, spaceKey, touchKey:
		return h.press(k, near, was.armedAt, now)
	}
	return h, nothing
}

// press is Space, Enter or a touch: one of them counts until a second has
// passed without a key, even when it was refused, for the hold may fall due under
// a key that is stuck. Enter as the first key after the h of armedAt never ticks, however
// late it comes: it was to end a hold.
func (h hand) press(k stroke, reading bool, armedAt, now time.Time) (hand, meaning) {
	afterH := k == returnKey && !armedAt.IsZero()
	ends := afterH && part.Within(armedAt, now, armTime) // the h just before is no reading
	if h.acted != nothing || reading && !ends && k != touchKey {
		return h, nothing
	}
	if ends {
		return h.act(goOn, endHold, k, now)
	}
	if afterH {
		return h.act(goOn, tooLate, k, now)
	}
	return h.act(goOn, goOn, k, now)
}

// act does what a key means or, where the same key did something a moment ago, puts it
// off: a key that is held down can begin to repeat as late as that, and no terminal
// tells when it is let go.
func (h hand) act(kind, means meaning, k stroke, now time.Time) (hand, meaning) {
	h.acted = kind
	if (h.by == k || h.by == anyKey) && part.Within(h.at, now, sameTime) && means != nothing {
		h.waits = means
		return h, later
	}
	h.by, h.at = k, now
	return h, means
}

// quiet gives what the key of a time was for, when no key has followed it till now.
func (h hand) quiet(of stroke, pressed, now time.Time) (hand, meaning) {
	means := h.waits
	if means == nothing || !h.lastKey.Equal(pressed) || now.Sub(pressed) < quietTime {
		return h, nothing
	}
	h.waits, h.by, h.at = nothing, of, now
	return h, means
}

// pressTwice asks for the same key again before it means anything.
func (h hand) pressTwice(k stroke, was hand, now time.Time) (hand, meaning) {
	if was.once != k || !part.Within(was.onceAt, now, twiceTime) {
		h.once, h.onceAt = k, now
		return h, onceMore
	}
	if k == quitKey {
		return h, quit
	}
	return h, suspend
}

// silenced notes a key that was used up elsewhere: while it is held down it
// does nothing here either.
func (h hand) silenced(now time.Time) hand {
	h.lastKey, h.acted, h.by, h.at = now, silence, anyKey, now
	h.armedAt, h.once, h.waits = time.Time{}, otherKey, nothing
	return h
}
