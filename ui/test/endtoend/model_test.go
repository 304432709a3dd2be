//go:build !windows

package endtoend

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"chape/calc"
	"chape/project"
	"chape/project/file"
	"chape/project/store"
	"chape/ui/act"
	"chape/ui/canvas"
	"chape/ui/document"
	"chape/ui/session"
	"chape/ui/term/ink"
	"chape/ui/test/rig"
	"chape/ui/workbench"
)

var (
	plainDisk = store.OSLockingIn("")
	morning   = time.Date(2026, 11, 25, 9, 30, 0, 0, time.UTC) // a Wednesday
)

// desk is the workbench in this process, with a clock and a disk that the test
// holds in hand. Commands run at once.
type desk struct {
	t      testing.TB
	m      *workbench.Model
	now    time.Time
	second func(time.Time) tea.Msg // what the model wants to hear at the next full second
	path   string
	aside  string // the folder for what can't be saved where it belongs
	quit   bool
}

// deskOn opens the project of a file on the given disk.
func deskOn(t testing.TB, disk store.FS, path string) *desk {
	t.Helper()
	data, stamp, err := store.Read(plainDisk, path)
	if err != nil {
		t.Fatal(err)
	}
	p, notices, err := file.Decode(path, data)
	if err != nil {
		t.Fatal(err)
	}
	d := &desk{t: t, now: morning, path: path, aside: t.TempDir()}
	d.m = workbench.New(workbench.Options{
		Options: session.Options{
			Doc:       document.New(p, path, stamp, document.Options{Make: calc.Compute, Check: project.Project.Validate, Limits: calc.DefaultLimits()}),
			Notices:   notices,
			FS:        disk,
			Clock:     func() time.Time { return d.now },
			Elsewhere: []string{d.aside},
		},
		Tick: func(_ time.Duration, tell func(time.Time) tea.Msg) tea.Cmd {
			d.second = tell
			return nil
		},
		Styles: ink.New(ink.Middling, ink.None),
		Font:   act.Font{Glyphs: canvas.Braille},
	})
	d.run(d.m.Init())
	d.send(tea.WindowSizeMsg{Width: 160, Height: 45})
	return d
}

// newDesk makes a file with the project first.
func newDesk(t testing.TB, disk store.FS, p project.Project) *desk {
	t.Helper()
	path := filepath.Join(t.TempDir(), "knife.toml")
	if _, err := store.SaveNew(plainDisk, path, file.Encode(p)); err != nil {
		t.Fatal(err)
	}
	return deskOn(t, disk, path)
}

func (d *desk) send(msg tea.Msg) {
	_, cmd := d.m.Update(msg)
	d.run(cmd)
}

func (d *desk) run(cmd tea.Cmd) { rig.Drain(cmd, d.send, func() { d.quit = true }) }

// seconds lets the clock tick n times.
func (d *desk) seconds(n int) {
	for range n {
		d.now = d.now.Add(time.Second)
		d.send(d.second(d.now))
	}
}

// letters presses one key after the other, slowly enough for a letter after a figure.
func (d *desk) letters(text string) {
	for _, r := range text {
		k := tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}}
		if r == ' ' {
			k.Type = tea.KeySpace
		}
		d.press(k)
	}
}

func (d *desk) key(k tea.KeyType) { d.press(tea.KeyMsg{Type: k}) }

func (d *desk) press(k tea.KeyMsg) {
	d.now = d.now.Add(1001 * time.Millisecond)
	d.send(k)
}

// blade types the length of the blade.
func (d *desk) blade(figure string) {
	d.key(tea.KeyHome)
	d.key(tea.KeyDown)
	d.key(tea.KeyDown)
	d.press(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(figure)}) // as a calliper does
	d.key(tea.KeyEnter)
}

// settles waits, by its own clock, until a save that failed has been tried again.
func (d *desk) settles() {
	d.t.Helper()
	for n := 0; !d.saved(); n++ {
		if n > 30 {
			d.t.Fatalf("after 30 s it is still not saved:\n%s", d.screen())
		}
		d.seconds(1)
	}
}

func (d *desk) screen() string { return ansi.Strip(d.m.View()) }

func (d *desk) shows(text string) {
	d.t.Helper()
	if !strings.Contains(d.screen(), text) {
		d.t.Fatalf("the screen does not show %q:\n%s", text, d.screen())
	}
}

func (d *desk) lacks(text string) {
	d.t.Helper()
	if strings.Contains(d.screen(), text) {
		d.t.Fatalf("the screen shows %q:\n%s", text, d.screen())
	}
}

// saved tells whether the head of the screen says so.
func (d *desk) saved() bool {
	head, _, _ := strings.Cut(d.screen(), "\n")
	return strings.HasSuffix(strings.TrimRight(head, " "), "  saved")
}

// onDisk is the project as its file has it.
func (d *desk) onDisk() project.Project { return decode(d.t, d.path) }

// blades gives the blade length in every project of the folders.
func blades(t testing.TB, dirs ...string) map[float64]string {
	t.Helper()
	found := map[float64]string{}
	for _, dir := range dirs {
		entries, err := os.ReadDir(dir)
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range entries {
			if filepath.Ext(e.Name()) == ".toml" && !strings.HasPrefix(e.Name(), ".") {
				p := decode(t, filepath.Join(dir, e.Name()))
				found[float64(p.Outline.Blade)] = e.Name()
			}
		}
	}
	return found
}
