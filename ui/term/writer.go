// Package term is what chape says to the terminal beside the screen itself:
// one locked way out, bell, window title and notices, text made safe, and the
// choice of glyphs.
package term

import (
	"io"
	"os"
	"strings"
	"sync"
	"unicode"
)

// Sequences after ECMA-48 and, for the window title, xterm's control sequences
// document (operating system command 2, window operations 22 and 23).
const (
	bell      = "\a"
	oscOpen   = "\x1b]"
	oscClose  = "\x1b\\"
	titlePush = "\x1b[22;0t"
	titlePop  = "\x1b[23;0t"
)

// The most that a title and a notice hold, in cells: terminals cut there or
// earlier.
const (
	titleMost  = 80
	noticeMost = 200
)

// Writer is the one way to the terminal. The screen's renderer, the bell and
// the title all go through it, so that none lands in the midst of another. It
// has the methods by which bubbletea knows a terminal and asks for its size.
// The zero value is of no use: take Open.
type Writer struct {
	mu     sync.Mutex
	out    *os.File
	talks  bool // it takes titles and notices
	pushed bool
	title  string
}

// NewWriter returns the writer for a terminal. With talks false, when it knows no
// titles and notices, they say nothing; Open finds that out by itself.
func NewWriter(out *os.File, talks bool) *Writer {
	return &Writer{out: out, talks: talks}
}

// Talks tells whether titles and notices are sent at all.
func (w *Writer) Talks() bool { return w.talks }

// Write sends p whole, before or after any other sequence.
func (w *Writer) Write(p []byte) (int, error) {
	w.mu.Lock()
	defer w.mu.Unlock()
	return w.out.Write(p)
}

// Fd is the file descriptor, for bubbletea to ask the size of.
func (w *Writer) Fd() uintptr { return w.out.Fd() }

// Read reads from the terminal; bubbletea wants the method and never calls it.
func (w *Writer) Read(p []byte) (int, error) { return w.out.Read(p) }

// Close gives the window its old title back; the file stays open.
func (w *Writer) Close() error {
	w.mu.Lock()
	defer w.mu.Unlock()
	if !w.pushed {
		return nil
	}
	w.pushed, w.title = false, ""
	return w.say(titlePop)
}

// Bell rings.
func (w *Writer) Bell() error {
	w.mu.Lock()
	defer w.mu.Unlock()
	return w.send(bell)
}

// Title sets the window's title. The first call keeps the old one for Close.
// The same title again sends nothing.
func (w *Writer) Title(title string) error {
	w.mu.Lock()
	defer w.mu.Unlock()
	title = Short(title, titleMost)
	if w.pushed && title == w.title {
		return nil
	}
	var b strings.Builder
	if !w.pushed {
		b.WriteString(titlePush)
	}
	b.WriteString(oscOpen + "2;" + title + oscClose)
	w.pushed, w.title = true, title
	return w.say(b.String())
}

// NoticeKind is how the desktop is told that a hold has ended.
type NoticeKind uint8

// Terminals know one or the other, or none; an unknown one is passed over in
// silence.
const (
	NoNotice NoticeKind = iota
	OSC9                // operating system command 9
	OSC777              // operating system command 777, with a heading
)

// Notice tells the desktop by way of the terminal.
func (w *Writer) Notice(kind NoticeKind, heading, text string) error {
	heading, text = Short(heading, titleMost), Short(text, noticeMost)
	var s string
	switch kind {
	case OSC9:
		if text = heading + ": " + text; startsWithDigit(text) {
			text = " " + text // '9;4;…' would be read as progress
		}
		s = oscOpen + "9;" + text + oscClose
	case OSC777:
		s = oscOpen + "777;notify;" + strings.ReplaceAll(heading, ";", ",") + ";" + text + oscClose
	default:
		return nil
	}
	w.mu.Lock()
	defer w.mu.Unlock()
	return w.say(s)
}

func startsWithDigit(s string) bool {
	return s != "" && unicode.IsDigit(rune(s[0]))
}

// say sends a sequence unless the terminal would not understand it; the lock is held.
func (w *Writer) say(s string) error {
	if !w.talks {
		return nil
	}
	return w.send(s)
}

func (w *Writer) send(s string) error {
	_, err := io.WriteString(w.out, s)
	return err
}
