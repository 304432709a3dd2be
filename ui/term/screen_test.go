//go:build !windows

package term_test

import (
	"fmt"
	"os"
	"os/exec"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/creack/pty"

	"chape/ui/term"
	_ "chape/ui/term/background"
)

// sizes is a program that shows the size it was told.
type sizes struct {
	w, h int
	out  *term.Writer
}

func (m sizes) Init() tea.Cmd { return nil }

func (m sizes) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.w, m.h = msg.Width, msg.Height
		m.out.Title(m.View())
		m.out.Bell()
	case tea.KeyMsg:
		if strings.ContainsRune(string(msg.Runes), 'q') { // letters that come together are one message
			return m, tea.Quit
		}
		return m, tea.WindowSize()
	}
	return m, nil
}

func (m sizes) View() string { return fmt.Sprintf("size %d by %d", m.w, m.h) }

// TestMain runs the program instead of the tests when it is the child in the
// pseudo-terminal.
func TestMain(m *testing.M) {
	if os.Getenv("CHAPE_TEST_CHILD") == "" {
		os.Exit(m.Run())
	}
	out := term.NewWriter(os.Stdout, true)
	if _, err := tea.NewProgram(sizes{out: out}, tea.WithAltScreen(), tea.WithOutput(out)).Run(); err != nil {
		fmt.Println(err)
		os.Exit(1)
	}
	out.Close()
}

// terminal is a pseudo-terminal that answers nothing.
type terminal struct {
	*os.File
	seen string
}

// until reads until the text has come.
func (p *terminal) until(t *testing.T, text string) {
	t.Helper()
	buf := make([]byte, 4096)
	for !strings.Contains(p.seen, text) {
		n, err := p.Read(buf)
		p.seen += string(buf[:n])
		if err != nil {
			t.Fatalf("%q has not come: %v; seen %q", text, err, p.seen)
		}
	}
}

func TestSilentTerminalIsAskedNothingAndTellsItsSize(t *testing.T) {
	child := exec.Command(os.Args[0])
	child.Env = []string{"CHAPE_TEST_CHILD=1", "TERM=xterm-256color", "HOME=" + t.TempDir(), "TZ=UTC"}
	file, err := pty.StartWithSize(child, &pty.Winsize{Cols: 83, Rows: 21})
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	defer time.AfterFunc(20*time.Second, func() { child.Process.Kill() }).Stop()
	p := &terminal{File: file}
	p.until(t, "size 83 by 21")
	if err := pty.Setsize(file, &pty.Winsize{Cols: 120, Rows: 40}); err != nil {
		t.Fatal(err)
	}
	// The program may not listen for the resize signal yet: a key makes it ask
	// for the size again.
	if _, err := file.WriteString("r"); err != nil {
		t.Fatal(err)
	}
	p.until(t, "]2;size 120 by 40\x1b\\")
	if _, err := file.WriteString("q"); err != nil {
		t.Fatal(err)
	}
	p.until(t, "\x1b[23;0t")
	if err := child.Wait(); err != nil {
		t.Errorf("ended with %v", err)
	}
	// Requests that a terminal is meant to answer: colours (OSC 10 and 11 with
	// '?'), cursor position (CSI 6n), device attributes (CSI c), as ECMA-48 and
	// xterm's control sequences have them.
	for _, question := range []string{"\x1b]10;?", "\x1b]11;?", "\x1b[6n", "\x1b[c", "\x1b[0c", "\x1b[>c"} {
		if strings.Contains(p.seen, question) {
			t.Errorf("the terminal was asked %q", question)
		}
	}
}
