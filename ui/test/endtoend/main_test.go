//go:build !windows

// Package endtoend runs the real program as a person, a full disk, a second
// window or a power switch would meet it, and measures it beside a bare one.
//
//	go test ./ui/test/endtoend                            the short runs
//	go test ./ui/test/endtoend -run Kill -kills 500       the long one
//	go test ./ui/test/endtoend -run Measure -measure -v   the figures of DEVELOPERS.md
package endtoend

import (
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"chape/project"
	"chape/project/file"
	"chape/project/steps"
	"chape/project/store"
	"chape/ui/test/ptytest"
)

var (
	program = flag.String("chape", "", "the program to test; without it, it is built")
	kills   = flag.Int("kills", 20, "how often the program is killed")
	seed    = flag.Uint64("seed", 1, "of what is typed and when the program is killed")
	measure = flag.Bool("measure", false, "take the measurements, which need a quiet machine and some minutes")
)

func TestMain(m *testing.M) {
	flag.Parse()
	os.Exit(run(m))
}

// run builds the program once for all tests.
func run(m *testing.M) int {
	if *program != "" {
		return m.Run()
	}
	dir, err := os.MkdirTemp("", "endtoend")
	if err == nil {
		defer os.RemoveAll(dir)
		*program, err = build(dir, "chape")
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	return m.Run()
}

// build makes the program of a package of this module in dir.
func build(dir, pkg string) (string, error) {
	name := filepath.Join(dir, filepath.Base(pkg))
	if out, err := exec.Command("go", "build", "-o", name, pkg).CombinedOutput(); err != nil {
		return "", fmt.Errorf("go build %s: %w\n%s", pkg, err, out)
	}
	return name, nil
}

// home is a home folder for the program, where it has been chosen how drawings look, with
// a folder for one project.
type home struct {
	t    testing.TB
	dir  string
	path string // of the project
}

func newHome(t testing.TB, p project.Project) *home {
	t.Helper()
	h := &home{t: t, dir: t.TempDir()}
	h.path = filepath.Join(h.dir, "work", "knife.toml")
	config := filepath.Join(h.dir, "config", "chape")
	for _, dir := range []string{config, filepath.Dir(h.path)} {
		if err := os.MkdirAll(dir, 0o700); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.WriteFile(filepath.Join(config, "config.toml"), []byte("glyphs = \"braille\"\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	h.write(p)
	return h
}

// write puts a project into the file as another program would.
func (h *home) write(p project.Project) {
	h.t.Helper()
	if err := os.WriteFile(h.path, file.Encode(p), 0o600); err != nil {
		h.t.Fatal(err)
	}
}

// open starts chape on the project and waits for its screen.
func (h *home) open(width, height int) *ptytest.Screen {
	h.t.Helper()
	s := h.start(ptytest.Options{Width: width, Height: height})
	s.Shows(ready)
	return s
}

func (h *home) start(o ptytest.Options) *ptytest.Screen {
	h.t.Helper()
	o.Dir = h.dir
	return ptytest.Start(h.t, o, *program, h.path)
}

func (h *home) read() project.Project { return decode(h.t, h.path) }

func decode(t testing.TB, path string) project.Project {
	t.Helper()
	data, _, err := store.Read(store.OSLockingIn(""), path)
	if err != nil {
		t.Fatal(err)
	}
	p, _, err := file.Decode(path, data)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// names lists the folder of the project.
func (h *home) names() []string {
	h.t.Helper()
	entries, err := os.ReadDir(filepath.Dir(h.path))
	if err != nil {
		h.t.Fatal(err)
	}
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	return names
}

// aKnife is a project with twelve steps, every fourth with a hold.
func aKnife() project.Project {
	p := project.New("Test knife", 0, project.Defaults())
	for i := range stepCount {
		name := fmt.Sprintf("STEP%c", 'A'+i)
		s := steps.Step{Title: name, Short: name}
		if hasHold(i) {
			s.Hold = 10 * time.Hour
		}
		p.Steps = append(p.Steps, s)
	}
	return p
}

const stepCount = 12

func hasHold(step int) bool { return step%4 == 3 }

// ready stands at the foot of the screen while no question is open.
const ready = "q quit"

// The keys that are more than a character.
const (
	home_   = "\x1b[H"
	down    = "\x1b[B"
	tab     = "\t"
	backTab = "\x1b[Z"
	escape  = "\x1b"
	ctrlC   = "\x03" // quits also within a second of a figure, where letters are no commands
)
