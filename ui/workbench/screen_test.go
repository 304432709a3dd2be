package workbench

import (
	"math"
	"path/filepath"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"chape/calc"
	"chape/project"
	"chape/project/example"
	"chape/project/file"
	"chape/project/shelf"
	"chape/project/store"
	"chape/ui/act"
	"chape/ui/alarm"
	"chape/ui/canvas"
	"chape/ui/document"
	"chape/ui/layout"
	"chape/ui/part"
	"chape/ui/session"
	"chape/ui/term"
	"chape/ui/term/ink"
	"chape/ui/test/golden"
	"chape/ui/test/rig"
)

var morning = time.Date(2026, 11, 25, 9, 30, 0, 0, time.UTC) // a Wednesday

// screen is the real root with a clock of its own, its commands run at once.
type screen struct {
	t     testing.TB
	m     *Model
	now   time.Time
	voice *voice
	quit  bool
	path  string
}

// voice counts what is said beside the screen.
type voice struct {
	bells int
	title string
	said  []string
}

func (v *voice) Bell() error          { v.bells++; return nil }
func (v *voice) Close() error         { v.title = ""; return nil }
func (v *voice) Title(s string) error { v.title = s; return nil }
func (v *voice) Notice(_ term.NoticeKind, _, text string) error {
	v.said = append(v.said, text)
	return nil
}

// loose opens the example as a copy without a file.
func loose(t testing.TB, w, h int) *screen {
	return start(t, w, h, example.Load(morning), "", calc.Compute)
}

// filed opens a project that lies in a file of its own.
func filed(t testing.TB, w, h int, p project.Project) *screen {
	t.Helper()
	path := filepath.Join(t.TempDir(), "knife.toml")
	if _, err := store.SaveNew(disk, path, file.Encode(p)); err != nil {
		t.Fatal(err)
	}
	return start(t, w, h, p, path, calc.Compute)
}

var disk = store.OSLockingIn("")

func start(t testing.TB, w, h int, p project.Project, path string, make document.Maker, with ...func(*Options)) *screen {
	t.Helper()
	s := &screen{t: t, now: morning, voice: &voice{}, path: path}
	var stamp store.Stamp
	if path != "" {
		var err error
		if _, stamp, err = store.Read(disk, path); err != nil {
			t.Fatal(err)
		}
	}
	open := func(p project.Project, path string, stamp store.Stamp) *document.Doc {
		return document.New(p, path, stamp, document.Options{Make: make, Check: project.Project.Validate, Limits: calc.DefaultLimits()})
	}
	o := Options{
		Options: session.Options{
			Doc:       open(p, path, stamp),
			Document:  open,
			FS:        disk,
			Clock:     func() time.Time { return s.now },
			Shelf:     shelf.Open(disk, filepath.Join(t.TempDir(), "shelf")),
			Elsewhere: []string{t.TempDir()},
		},
		Tick:     func(time.Duration, func(time.Time) tea.Msg) tea.Cmd { return nil },
		Alarm:    alarm.Options{Voice: s.voice},
		Styles:   ink.New(ink.Middling, ink.None),
		Font:     act.Font{Glyphs: canvas.Braille},
		Suspends: true,
	}
	for _, change := range with {
		change(&o)
	}
	s.m = New(o)
	s.run(s.m.Init())
	s.send(tea.WindowSizeMsg{Width: w, Height: h})
	return s
}

func (s *screen) send(msg tea.Msg) {
	_, cmd := s.m.Update(msg)
	s.run(cmd)
}

func (s *screen) run(cmd tea.Cmd) { rig.Drain(cmd, s.send, func() { s.quit = true }) }

// wait lets time pass, with the ticks in it: every second for a while, then
// one at the end.
func (s *screen) wait(d time.Duration) {
	for ; d > time.Second; d -= time.Second {
		if d > 5*time.Minute {
			s.now = s.now.Add(d - time.Second)
			d = time.Second
		} else {
			s.now = s.now.Add(time.Second)
		}
		s.send(tickMsg{})
		if d <= time.Second {
			return
		}
	}
	s.now = s.now.Add(d)
	s.send(tickMsg{})
}

var named = map[string]tea.KeyType{
	"enter": tea.KeyEnter, "tab": tea.KeyTab, "esc": tea.KeyEsc, "up": tea.KeyUp, "down": tea.KeyDown,
	"left": tea.KeyLeft, "right": tea.KeyRight, "home": tea.KeyHome, "end": tea.KeyEnd, "lf": tea.KeyCtrlJ,
	"backspace": tea.KeyBackspace, "shift+tab": tea.KeyShiftTab, "pgdown": tea.KeyPgDown, "pgup": tea.KeyPgUp,
	"ctrl+c": tea.KeyCtrlC, "ctrl+s": tea.KeyCtrlS, "ctrl+r": tea.KeyCtrlR, "ctrl+z": tea.KeyCtrlZ,
	"delete": tea.KeyDelete, "f1": tea.KeyF1,
}

// byHand is between two keys: long enough for a letter after a figure.
const byHand = part.Settle + time.Millisecond

// keys types by hand: named keys, or the characters of a word.
func (s *screen) keys(words ...string) {
	for _, w := range words {
		if k, ok := named[w]; ok {
			s.now = s.now.Add(byHand)
			s.send(tea.KeyMsg{Type: k})
			continue
		}
		for _, r := range w {
			s.now = s.now.Add(byHand)
			s.send(char(r))
		}
	}
}

func char(r rune) tea.KeyMsg {
	k := tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}}
	if r == ' ' {
		k.Type = tea.KeySpace
	}
	return k
}

// reading types as a calliper does, in one breath.
func (s *screen) reading(figure string, ends ...string) {
	s.now = s.now.Add(time.Second)
	s.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(figure)})
	for _, e := range ends {
		s.now = s.now.Add(time.Millisecond)
		s.send(tea.KeyMsg{Type: named[e]})
	}
}

func (s *screen) text() string { return ansi.Strip(s.m.View()) }

func (s *screen) shows(text string) {
	s.t.Helper()
	if !strings.Contains(s.text(), text) {
		s.t.Errorf("the screen does not show %q:\n%s", text, s.text())
	}
}

func (s *screen) lacks(text string) {
	s.t.Helper()
	if strings.Contains(s.text(), text) {
		s.t.Errorf("the screen shows %q:\n%s", text, s.text())
	}
}

// readFile is the project in a file.
func (s *screen) readFile(path string) project.Project {
	s.t.Helper()
	data, _, err := store.Read(disk, path)
	if err != nil {
		s.t.Fatal(err)
	}
	p, _, err := file.Decode(path, data)
	if err != nil {
		s.t.Fatal(err)
	}
	return p
}

// onDisk is the project as its file has it.
func (s *screen) onDisk() project.Project {
	s.t.Helper()
	return s.readFile(s.m.session.Doc().Path())
}

// fits checks that the screen fills its size and nothing is wider.
func (s *screen) fits() {
	s.t.Helper()
	lines := strings.Split(s.m.View(), "\n")
	if len(lines) > s.m.height {
		s.t.Errorf("%d×%d: %d lines", s.m.width, s.m.height, len(lines))
	}
	for _, l := range lines {
		if w := ansi.StringWidth(l); w > s.m.width {
			s.t.Errorf("%d×%d: a line of %d cells: %q", s.m.width, s.m.height, w, l)
		}
	}
}

func TestGoldenScreens(t *testing.T) {
	tests := []struct {
		name string
		w, h int
		keys []string
	}{
		{"plan-80x24", 80, 24, nil},
		{"abreast-120x40", 120, 40, nil},
		{"abreast-160x45", 160, 45, []string{"tab"}},
		{"tiny-30x8", 30, 8, nil},
	}
	for _, tt := range tests {
		s := loose(t, tt.w, tt.h)
		s.keys("f1") // silences the example's hold
		s.keys(tt.keys...)
		s.fits()
		golden.Screen(t, tt.name+".txt", s.text())
	}
}

// TestNoLineIsWiderThanTheScreen tries every pane, overlay and question at
// many sizes.
func TestNoLineIsWiderThanTheScreen(t *testing.T) {
	s := loose(t, 80, 24)
	s.m.session.Doc().Commit("a long title", func(p *project.Project) error {
		p.Title = strings.Repeat("日本 long ", 15)
		return nil
	})
	states := map[string]func(){
		"knife": func() { s.m.takeUp(s.m.book.Standing[layout.Knife]) },
		"plan":  func() { s.m.takeUp(s.m.book.Standing[layout.Plan]) },
		"steps": func() { s.m.takeUp(s.m.book.Standing[layout.Steps]) },
		"help":  func() { s.m.showHelp() },
		"question": func() {
			s.m.ask(act.Question{Title: "Which?", Text: []string{"One of two."}, Choices: []act.Choice{{Key: "y", Does: "this"}}})
		},
		"loss":  func() { s.m.do(s.m.session.Quit()) },
		"bench": func() { s.m.closed(); s.m.takeUp(s.m.book.Named("Bench view")) },
	}
	for _, name := range []string{"knife", "plan", "steps", "help", "question", "loss", "bench"} {
		states[name]()
		for _, w := range []int{1, 7, 39, 40, 59, 60, 80, 81, 117, 118, 139, 163, 220} {
			for _, h := range []int{1, 11, 12, 19, 20, 24, 37, 61} {
				s.send(tea.WindowSizeMsg{Width: w, Height: h})
				s.fits()
				if t.Failed() {
					t.Fatalf("in %s", name)
				}
			}
		}
	}
}

// A terminal may claim any size: past the largest that is filled the view stays as it is.
func TestSizesAreBounded(t *testing.T) {
	s := loose(t, widest, highest)
	want := s.m.View()
	for _, size := range []tea.WindowSizeMsg{{Width: widest + 1, Height: highest + 1}, {Width: 65535, Height: 65535}, {Width: math.MaxInt, Height: math.MaxInt}} {
		s.send(size)
		if s.m.View() != want {
			t.Errorf("another view at %d × %d", size.Width, size.Height)
		}
	}
	s.send(tea.WindowSizeMsg{Width: -1, Height: -1})
	s.m.View()
}
