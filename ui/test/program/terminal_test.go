//go:build !windows

package program

import (
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"chape/project"
	"chape/project/file"
	"chape/project/steps"
	"chape/project/store"
	"chape/ui/test/ptytest"
)

// home is a home folder for the real program.
type home struct {
	t   *testing.T
	dir string
}

// newHome is one where it has been chosen how drawings look.
func newHome(t *testing.T) *home {
	h := &home{t, t.TempDir()}
	folder := filepath.Join(h.dir, "config", "chape")
	if err := os.MkdirAll(folder, 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(folder, "config.toml"), []byte("glyphs = \"braille\"\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	return h
}

// open starts chape in a terminal.
func (h *home) open(width, height int, args ...string) *ptytest.Screen {
	h.t.Helper()
	s := ptytest.Start(h.t, ptytest.Options{Width: width, Height: height, Dir: h.dir}, "chape", args...)
	s.Shows("saved")
	return s
}

// newProject writes an empty project, as chape new does.
func (h *home) newProject(name string) string {
	h.t.Helper()
	path := filepath.Join(h.dir, name)
	p := project.New("Test knife", 0, project.Defaults())
	p.Steps = steps.FormThenSew(steps.Whole)
	if _, err := store.SaveNew(store.OSLockingIn(""), path, file.Encode(p)); err != nil {
		h.t.Fatal(err)
	}
	return path
}

func (h *home) read(path string) project.Project {
	h.t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		h.t.Fatal(err)
	}
	p, _, err := file.Decode(path, data)
	if err != nil {
		h.t.Fatal(err)
	}
	return p
}

// TestKnifeInFourteenNumbers counts what it takes from an empty project to the
// pattern of one's own knife: at most 14 numbers and 42 keys.
func TestKnifeInFourteenNumbers(t *testing.T) {
	h := newHome(t)
	path := h.newProject("own.toml")
	s := h.open(120, 40, path)
	before := s.Text()
	numbers, keys := 0, 0
	for _, n := range []string{
		"142", "31.5", "3.8", // blade: length, depth, spine
		"14", "33", "19.5", // bolster: length, depth, thickness
		"112", "28", "18", // handle: length, depth, thickness
		"4.5", "24", // swell, butt
	} {
		numbers++
		s.Type(n)
		s.Shows(n)
		s.Type("\r") // as fast as a measuring tool: it goes past the choices
		keys += len(n) + 1
	}
	if numbers > 14 || keys > 42 {
		t.Errorf("%d numbers, %d keys", numbers, keys)
	}
	s.Until("the last number kept", func(string) bool { return h.read(path).Outline.Butt == 24 })
	s.Shows("divider setting")
	if s.Text() == before {
		t.Error("the plan did not follow")
	}
	o := h.read(path).Outline
	if o.Blade != 142 || o.Depth != 31.5 || o.Spine != 3.8 || o.FrontThick != 19.5 || o.Handle != 112 || o.Swell != 4.5 {
		t.Errorf("in the file: %+v", o)
	}
	t.Logf("%d numbers, %d keys", numbers, keys)
	s.Type("\x03")
	if code := s.Exit(); code != 0 {
		t.Errorf("exit status %d", code)
	}
}

// TestOneDay types, ticks, starts a hold, resizes, quits and opens again.
func TestOneDay(t *testing.T) {
	h := newHome(t)
	path := h.newProject("day.toml")
	s := h.open(80, 24, path)
	s.Type("\x1b[200~142\x1b[201~") // pasted, so that the Space that follows is no slip on the heels of a figure
	s.Shows("142")
	s.Type("\r")
	s.Shows("saved")

	s.Type("\x1b[Z") // Shift+Tab: the steps
	s.Shows("Space tick")
	s.Type(" ")
	s.Until("the tick on the disk", func(string) bool { return !h.read(path).Steps[0].Done.IsZero() })

	s.Resize(160, 45)
	s.Shows("half-widths") // all three panes
	s.Resize(60, 20)
	s.Lacks("half-widths")
	s.Resize(30, 8)
	s.Shows("needs 40×12")
	s.Resize(80, 24)
	s.Shows("Space tick")

	for range 11 { // down to the fold, whose hold is 2 h
		s.Type("\x1b[B")
	}
	s.Shows("hold 2 h")
	s.Type("t")
	s.Shows("FOLD: 2 h to go")
	s.Type("\x03")
	if code := s.Exit(); code != 0 {
		t.Fatalf("exit status %d", code)
	}
	if !strings.Contains(s.Raw(), "\x1b[?1049l") || !strings.Contains(s.Raw(), "\x1b[23;0t") {
		t.Error("the screen or the window's title was not given back")
	}

	s = h.open(80, 24, path)
	s.Shows("FOLD: ")
	s.Shows("142")
	s.Shows("saved")
}

// TestSuddenEnd: whatever ends the program, what the screen called saved is on
// the disk.
func TestSuddenEnd(t *testing.T) {
	for _, sig := range []syscall.Signal{syscall.SIGTERM, syscall.SIGHUP, syscall.SIGKILL} {
		h := newHome(t)
		path := h.newProject("end.toml")
		s := h.open(80, 24, path)
		s.Type("142")
		s.Shows("142")
		s.Type("\r")
		s.Until("the number on the disk", func(string) bool { return h.read(path).Outline.Blade == 142 })
		s.Type("7")
		s.Shows("› 7")
		s.Signal(sig)
		s.Exit()
		if o := h.read(path).Outline; o.Blade != 142 || o.Depth != 30 {
			t.Errorf("%v: in the file: %+v", sig, o)
		}
		h.open(80, 24, path).Shows("142")
	}
}

// TestMuteTerminal: a terminal that answers no question delays nothing, and
// the program asks none.
func TestMuteTerminal(t *testing.T) {
	h := newHome(t)
	s := ptytest.Start(t, ptytest.Options{Width: 80, Height: 24, Dir: h.dir, Mute: true}, "chape", h.newProject("mute.toml"))
	s.Shows("? keys")
	for _, query := range []string{"\x1b]11;?", "\x1b]10;?", "\x1b[6n", "\x1b[c"} {
		if strings.Contains(s.Raw(), query) {
			t.Errorf("asks the terminal %q", query)
		}
	}
}

// TestTwoWindows has the same project open twice.
func TestTwoWindows(t *testing.T) {
	h := newHome(t)
	path := h.newProject("two.toml")
	one := h.open(80, 24, path)
	two := h.open(80, 24, path)
	one.Type("142")
	one.Shows("142")
	one.Type("\r")
	two.Shows("was changed by another program")
	two.Shows("142")
}

// TestFirstStart: the first frame of the first start is the workbench on the example. How
// drawings look is chosen by moving, and kept.
func TestFirstStart(t *testing.T) {
	h := &home{t, t.TempDir()}
	s := ptytest.Start(t, ptytest.Options{Width: 80, Height: 24, Dir: h.dir}, "chape")
	s.Shows("n your own knife")
	first := s.Text()
	for _, want := range []string{"Example: field knife", "LOOSEN 2: due since", "DRY: ", "stitches"} {
		if !strings.Contains(first, want) {
			t.Errorf("no %q in the first frame:\n%s", want, first)
		}
	}
	config := filepath.Join(h.dir, "config", "chape", "config.toml")
	s.Type("D")
	s.Shows("plain characters")
	s.Type("\x1b[C")
	s.Until("the answer on the disk", func(string) bool {
		data, err := os.ReadFile(config)
		return err == nil && strings.Contains(string(data), "blocks")
	})
	s.Type("\x03")
	s.Exit()
	if data, err := os.ReadFile(config); err != nil || !strings.Contains(string(data), `glyphs = "blocks"`) {
		t.Errorf("in the settings: %v\n%s", err, data)
	}
}
