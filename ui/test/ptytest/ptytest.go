//go:build !windows

// Package ptytest runs a program in a pseudo-terminal and reads its screen as
// a person would. Tests only. It waits on output with a condition variable and
// never sleeps.
package ptytest

import (
	"errors"
	"io"
	"os"
	"os/exec"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/charmbracelet/x/vt"
	"github.com/creack/pty"
)

// patience is how long a wait lasts before it fails the test.
const patience = 15 * time.Second

// Options say how the program is started.
type Options struct {
	Width, Height int
	Dir           string   // the home folder and the folder the program starts in
	Env           []string // added to the fixed environment
	Mute          bool     // the terminal answers no queries

	// Watch is called after each piece of output with what the screen then
	// shows. It must not call the Screen's methods.
	Watch func(screen string)
}

// Screen is a running program and what its terminal shows.
type Screen struct {
	t    testing.TB
	cmd  *exec.Cmd
	pty  *os.File
	emu  *vt.Emulator
	mute bool
	see  func(screen string)

	mu     sync.Mutex
	output *sync.Cond
	raw    strings.Builder
	bells  int
	title  string
	ended  bool
	code   int
}

// Start runs a program in a terminal of its own. It is killed when the test
// ends.
func Start(t testing.TB, o Options, name string, args ...string) *Screen {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(path, args...)
	cmd.Dir = o.Dir
	// Nothing of the machine's own settings may show.
	cmd.Env = append([]string{
		"TERM=xterm-256color", "COLORTERM=truecolor", "LANG=C.UTF-8", "TZ=UTC",
		"HOME=" + o.Dir, "XDG_CONFIG_HOME=" + o.Dir + "/config", "XDG_DATA_HOME=" + o.Dir + "/data",
		"XDG_CACHE_HOME=" + o.Dir + "/cache", "PATH=" + os.Getenv("PATH"),
	}, o.Env...)
	f, err := pty.StartWithSize(cmd, &pty.Winsize{Rows: uint16(o.Height), Cols: uint16(o.Width)})
	if err != nil {
		t.Fatal(err)
	}
	s := &Screen{t: t, cmd: cmd, pty: f, emu: vt.NewEmulator(o.Width, o.Height), mute: o.Mute, see: o.Watch}
	s.output = sync.NewCond(&s.mu)
	s.emu.SetCallbacks(vt.Callbacks{
		Bell:  func() { s.bells++ },
		Title: func(title string) { s.title = title },
	})
	go s.answer()
	done := make(chan struct{})
	go s.read(done)
	go s.wait(done)
	t.Cleanup(s.Kill)
	return s
}

// answer sends the terminal's replies to the program's queries.
func (s *Screen) answer() {
	buf := make([]byte, 256)
	for {
		n, err := s.emu.Read(buf)
		if n > 0 && !s.mute {
			s.pty.Write(buf[:n])
		}
		if err != nil {
			return
		}
	}
}

func (s *Screen) read(done chan<- struct{}) {
	defer close(done)
	buf := make([]byte, 64<<10)
	for {
		n, err := s.pty.Read(buf)
		s.mu.Lock()
		s.emu.Write(buf[:n])
		s.raw.Write(buf[:n])
		if s.see != nil && n > 0 {
			s.see(s.emu.String())
		}
		s.output.Broadcast()
		s.mu.Unlock()
		if err != nil {
			return
		}
	}
}

func (s *Screen) wait(read <-chan struct{}) {
	err := s.cmd.Wait()
	<-read
	s.mu.Lock()
	defer s.mu.Unlock()
	var exit *exec.ExitError
	if errors.As(err, &exit) {
		s.code = exit.ExitCode()
	}
	s.ended = true
	if c, ok := s.emu.InputPipe().(io.Closer); ok {
		c.Close()
	}
	s.pty.Close()
	s.output.Broadcast()
}

// Type sends bytes as the keyboard would.
func (s *Screen) Type(keys string) {
	s.t.Helper()
	if _, err := s.pty.WriteString(keys); err != nil {
		s.t.Fatalf("typing %q: %v\n%s", keys, err, s.Text())
	}
}

// Send is Type for a program that may have ended.
func (s *Screen) Send(keys string) error {
	_, err := s.pty.WriteString(keys)
	return err
}

// Resize changes the size of the terminal.
func (s *Screen) Resize(width, height int) {
	s.mu.Lock()
	s.emu.Resize(width, height)
	s.mu.Unlock()
	if err := pty.Setsize(s.pty, &pty.Winsize{Rows: uint16(height), Cols: uint16(width)}); err != nil {
		s.t.Fatal(err)
	}
}

// Text is what the screen shows, without colours.
func (s *Screen) Text() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.emu.String()
}

// Raw is every byte the program has written.
func (s *Screen) Raw() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.raw.String()
}

// Bells counts the bells rung so far.
func (s *Screen) Bells() int {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.bells
}

// Title is the window's title.
func (s *Screen) Title() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.title
}

// Until waits until the screen is as ok wants it, and fails the test with what
// it shows if that does not come.
func (s *Screen) Until(what string, ok func(screen string) bool) {
	s.t.Helper()
	if !s.until(func() bool { return ok(s.emu.String()) }) {
		s.t.Fatalf("the screen never showed %s:\n%s", what, s.Text())
	}
}

// Reaches is Until for a program that may end before: it tells whether the
// screen came to be as ok wants it.
func (s *Screen) Reaches(ok func(screen string) bool) bool {
	return s.until(func() bool { return ok(s.emu.String()) })
}

// Shows waits for a piece of text.
func (s *Screen) Shows(text string) {
	s.t.Helper()
	s.Until("\""+text+"\"", func(screen string) bool { return strings.Contains(screen, text) })
}

// Lacks waits until a piece of text is gone.
func (s *Screen) Lacks(text string) {
	s.t.Helper()
	s.Until("a screen without \""+text+"\"", func(screen string) bool { return !strings.Contains(screen, text) })
}

// Exit waits for the program to end by itself and gives its status.
func (s *Screen) Exit() int {
	s.t.Helper()
	if !s.until(func() bool { return s.ended }) {
		s.t.Fatalf("the program did not end:\n%s", s.Text())
	}
	return s.code
}

// Kill ends the program at once and waits for that.
func (s *Screen) Kill() {
	s.mu.Lock()
	ended := s.ended
	s.mu.Unlock()
	if !ended {
		s.cmd.Process.Kill()
		s.until(func() bool { return s.ended })
	}
}

// Pid is the program's process.
func (s *Screen) Pid() int { return s.cmd.Process.Pid }

// Signal sends a signal to the program.
func (s *Screen) Signal(sig os.Signal) {
	if err := s.cmd.Process.Signal(sig); err != nil {
		s.t.Fatal(err)
	}
}

func (s *Screen) until(ok func() bool) bool {
	late := false
	alarm := time.AfterFunc(patience, func() {
		s.mu.Lock()
		late = true
		s.output.Broadcast()
		s.mu.Unlock()
	})
	defer alarm.Stop()
	s.mu.Lock()
	defer s.mu.Unlock()
	for !ok() {
		if late || s.ended && !ok() {
			return ok()
		}
		s.output.Wait()
	}
	return true
}
