// Package call is the frame that every plain command stands in: what it may touch, how its
// call is read, refused and helped with, and the exit status. Help, completions and the
// manual page are made here, all from the same table of commands.
package call

import (
	"errors"
	"fmt"
	"io"
	"strings"
	"time"

	"chape/ui/term"
)

// The exit statuses.
const (
	Good     = 0
	BadFile  = 1 // the file, or what it holds
	BadUsage = 2 // the call
)

// World is what a command may touch.
type World struct {
	In       io.Reader
	Out, Err io.Writer
	Version  string
	// Open shows the workbench: on a file, on the folder of a shelf, or with
	// "" on the user's own shelf.
	Open func(path string, named bool) error
	// Now is the wall clock; nil: time.Now.
	Now func() time.Time
	// Progress hears what long work is at; nil where nobody is looking.
	Progress func(what string)
	// Ring sounds the alarm; nil where there is no terminal.
	Ring Voice
	// Pause lets that time pass; nil: none does.
	Pause func(time.Duration)
}

// usageError is a call that does not make sense.
type usageError struct{ text string }

func (e usageError) Error() string { return e.text }

// Misuse is the error of a call that does not make sense: one line that says what would do.
func Misuse(format string, args ...any) error {
	return usageError{fmt.Sprintf(format, args...)}
}

// Status prints an error, if there is one, and gives the exit status for it. The
// lines are made safe: a file's name or a mistyped word may hold anything.
func Status(w io.Writer, err error) int {
	if err == nil {
		return Good
	}
	for i, line := range strings.Split(err.Error(), "\n") {
		if line = term.Plain(line); i == 0 {
			line = "chape: " + line
		}
		fmt.Fprintln(w, line)
	}
	var u usageError
	if errors.As(err, &u) {
		return BadUsage
	}
	return BadFile
}

// Voice is what a hold that falls due is told with; a *term.Writer is one.
type Voice interface {
	Bell() error
	Title(title string) error
	Notice(kind term.NoticeKind, heading, text string) error
	Talks() bool  // whether the terminal takes titles and notices
	Close() error // gives the window its old title back
}
