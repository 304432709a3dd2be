package bench

import (
	"chape/ui/part"
	"time"
)

// The times by which a hand is told from a slip, a stuck key and a measuring tool.
const (
	settleTime = time.Second     // without a key before the next change
	armTime    = 3 * time.Second // h, then Enter
	twiceTime  = 2 * time.Second // Ctrl+C and Ctrl+Z
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
)

// meaning is what the pressing was for.
type meaning uint8

const (
	nothing  meaning = iota
	goOn             // start the hold, or tick
	takeBack         // the last tick
	armed            // Enter will end the hold
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
	acted   meaning // goOn or takeBack since the last second without a key
}

// read takes one key event; near: in one breath with a character before, as in a
// measuring tool's reading.
func (h hand) read(k stroke, near bool, now time.Time) (hand, meaning) {
	was := h
	h.armedAt, h.once = time.Time{}, otherKey
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
		if h.acted == takeBack {
			return h, nothing
		}
		h.acted = takeBack
		return h, takeBack
	case returnKey, spaceKey, touchKey:
		return h.press(k, near, part.Within(was.armedAt, now, armTime))
	}
	return h, nothing
}

// press is Space, Enter or a touch: one of them counts until a second has
// passed without a key, even when it was refused, for the hold may fall due under
// a key that is stuck.
func (h hand) press(k stroke, reading, wasArmed bool) (hand, meaning) {
	ends := k == returnKey && wasArmed // the h just before is no reading
	if h.acted != nothing || reading && !ends && k != touchKey {
		return h, nothing
	}
	h.acted = goOn
	if ends {
		return h, endHold
	}
	return h, goOn
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
	h.lastKey, h.acted = now, goOn
	h.armedAt, h.once = time.Time{}, otherKey
	return h
}
