// Package part is what panes, pages and questions are made of: who types (a hand or a
// measuring tool), one line being edited, a list with its cursor, a table of keys.
package part

import (
	"strings"
	"time"
	"unicode"

	tea "github.com/charmbracelet/bubbletea"
)

// The times that tell a measuring tool from a hand. A tool types its reading and its
// Enter in one breath, from 1 to 150 ms a character.
const (
	Breath = 150 * time.Millisecond // as close as this to the one before: the same reading
	Settle = time.Second            // this long after a figure letters are no commands
)

// Reading watches the keyboard for the readings of measuring tools, which arrive
// wherever the cursor is, and is the only one to tell them from a hand. The root has
// one, which every key goes through. The zero Reading has seen nothing. A clock that was
// set back counts as long ago: better one Enter too many than a keyboard that seems
// dead.
type Reading struct {
	char   time.Time // the last character, till an Enter
	digit  time.Time // the last digit
	ended  time.Time // the Enter of the last reading
	cr     time.Time
	enter  time.Time // the last Enter of any kind
	run    []rune    // what was typed in one breath
	figure bool      // a digit is in it
	behind bool      // it began on the heels of a reading's Enter
	pasted bool      // it was, by hand: no reading
}

// Press is a key, and what its time tells of who pressed it.
type Press struct {
	tea.KeyMsg
	Near bool   // in one breath with the character before
	Held bool   // an Enter in one breath with another: a key that is held down answers nothing
	Echo bool   // it is nothing: an Enter on the heels of one that it belongs to
	Run  string // of an Enter: what was typed before it in one breath

	hand  bool // of an Enter: it is in one breath with letters alone, and no reading is near
	part  bool // of a reading, or a letter soon after a figure
	hasty bool // the latter, by hand, and no unit behind that figure
	after bool // within a second of a figure
}

// Take takes a key at a time and says what it is. LF, which some tools and terminals
// send, is Enter.
func (r *Reading) Take(k tea.KeyMsg, now time.Time) Press {
	p := Press{KeyMsg: k}
	switch {
	case k.Alt:
	case k.Type == tea.KeyEnter, k.Type == tea.KeyCtrlJ:
		p.Echo = r.echo(k, now)
		p.Held = r.char.IsZero() && Within(r.enter, now, Breath)
		r.enter = now
		if k.Type == tea.KeyEnter {
			r.cr = now
		}
		p.Type = tea.KeyEnter
		if p.Echo {
			break
		}
		if p.Near = Within(r.char, now, Breath); p.Near {
			p.Run = string(r.run)
			p.hand = !r.figure && !r.behind && !r.pasted && !Within(r.digit, now, Settle)
		}
		if p.Near && !r.pasted {
			r.ended = now
		}
		r.char = time.Time{} // a reading has one Enter
	case k.Type == tea.KeyRunes, k.Type == tea.KeySpace:
		r.typed(&p, now)
	}
	return p
}

// Done tells that the last key was a command that has opened something: what is pressed
// there next is not in one breath with it.
func (r *Reading) Done() { r.char, r.run, r.figure = time.Time{}, nil, false }

// echo tells whether an Enter belongs to one before it: an LF to a CR, or a second one
// to a reading.
func (r *Reading) echo(k tea.KeyMsg, now time.Time) bool {
	if !r.char.IsZero() { // something was typed since
		return false
	}
	return Within(r.ended, now, Breath) || k.Type == tea.KeyCtrlJ && Within(r.cr, now, Breath)
}

// longestRun is how much of what is typed in one breath is looked at.
const longestRun = 40

func (r *Reading) typed(p *Press, now time.Time) {
	same, next := Within(r.char, now, Breath), Within(r.ended, now, Breath) // the same line, the next one
	if !same || p.Paste {
		r.run, r.figure = nil, false
	}
	if !same || p.Paste {
		r.pasted, r.behind = p.Paste, next
	}
	p.Near = same || next
	digit := Within(r.digit, now, Settle)
	p.after = digit && !p.Paste
	soon := unicode.IsLetter(p.Runes[0]) && digit
	p.part = r.figure || next || soon
	p.hasty = soon && !p.Near && !p.Paste && !Within(r.enter, now, Breath) && (r.enter.After(r.digit) || !strings.ContainsRune(unitLetters, p.Runes[0]))
	r.char = now
	if p.Paste {
		r.run = append(r.run, 'p') // pasted by hand: no figure
		return
	}
	for _, c := range p.Runes {
		if isDigit(c) {
			r.figure, r.digit = true, now
		}
		if len(r.run) < longestRun {
			r.run = append(r.run, c)
		}
	}
}

// unitLetters are those of what may stand behind a figure: mm, in, cm, oz.
const unitLetters = "mincozMINCOZ"

func isDigit(c rune) bool { return '0' <= c && c <= '9' }

// Tool tells whether it is the Enter of a measuring tool, or of a hand as fast: it keeps
// a number and goes on, and does nothing elsewhere.
func (p Press) Tool() bool { return p.Type == tea.KeyEnter && p.Near }

// ByHand tells whether it is an Enter as close behind a letter as a tool's is, but no digit
// is in what was typed: no reading is that. It may confirm what that letter was a command for.
func (p Press) ByHand() bool { return p.Tool() && !p.Echo && p.hand }

// Figure tells whether it is the Enter of a figure of three digits or more with
// nothing else, all in one breath: no text is that.
func (p Press) Figure() bool {
	digits, text := 0, strings.TrimRight(p.Run, " minMIN\"″")
	for _, c := range text {
		switch {
		case isDigit(c):
			digits++
		case !strings.ContainsRune(".,+-/ ", c):
			return false
		}
	}
	return p.Tool() && digits >= leastFigure
}

const leastFigure = 3

// Command tells whether it may be a command: not what a measuring tool types, which
// digits and signs are always, nor a letter within a second of a figure, nor what is
// pasted.
func (p Press) Command() bool {
	return !p.Echo && !p.part && !p.Tool() && !p.Paste && !StartsNumber(p.KeyMsg)
}

// Hasty tells whether it is a letter that a hand pressed so soon after a figure that it is
// no command: where it would have been one that has to be said.
func (p Press) Hasty() bool { return p.hasty }

// Answer is the press as an answer to a question: that was read before the letter, so a
// hand's counts however soon behind a figure.
func (p Press) Answer() Press {
	p.part = p.part && !p.hasty
	return p
}

// AfterFigure tells whether it came within a second of a figure: the stroke of a fraction
// then, and no path begins with it.
func (p Press) AfterFigure() bool { return p.after }

// Ignored says that of a letter.
func (p Press) Ignored() string {
	return p.String() + " came right behind a number and did nothing: press it again"
}

// Within tells whether now is at most d after then.
func Within(then, now time.Time, d time.Duration) bool {
	passed := now.Sub(then)
	return !then.IsZero() && passed >= 0 && passed <= d
}

// Letters takes the first letter off a key message with more than one: on a slow line,
// or while the program was busy, letters arrive together. A figure stays whole, and so
// does a paste; where a text is typed nothing is to be taken apart.
func Letters(k tea.KeyMsg) (first, rest tea.KeyMsg, several bool) {
	if k.Type != tea.KeyRunes || k.Paste || k.Alt || len(k.Runes) < 2 || StartsNumber(k) {
		return k, k, false
	}
	first, rest = k, k
	first.Runes, rest.Runes = k.Runes[:1], k.Runes[1:]
	return first, rest, true
}

// IsFigure tells whether a key is part of a figure, or all of it, or something pasted: a
// command nowhere.
func IsFigure(k tea.KeyMsg) bool { return k.Paste || StartsNumber(k) }

// StartsNumber tells whether a key is the beginning of a number.
func StartsNumber(k tea.KeyMsg) bool {
	return k.Type == tea.KeyRunes && !k.Alt && len(k.Runes) > 0 && strings.ContainsRune("0123456789.,+-¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞−", k.Runes[0])
}
