// Package program tests the real program: its commands by scripts, and the workbench in
// a pseudo-terminal.
package program

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"

	"chape/ui/command"
)

// repo is the top of the repository, from here.
const repo = "../../.."

// TestMain lets the test binary be chape when it is called by that name: the
// scripts and the terminal tests run the real thing.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"chape": func() { os.Exit(command.Main()) }})
}

func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir: repo + "/testdata/script",
		Setup: func(e *testscript.Env) error {
			top, err := filepath.Abs(repo)
			e.Setenv("REPO", top)
			e.Setenv("HOME", e.WorkDir)
			e.Setenv("XDG_CACHE_HOME", e.WorkDir+"/cache")
			return err
		},
	})
}

// The readme promises nothing that no test holds: each row of its table names tests
// that there are.
func TestReadmeNamesTests(t *testing.T) {
	readme, err := os.ReadFile(repo + "/README.md")
	if err != nil {
		t.Fatal(err)
	}
	there := map[string]bool{}
	err = filepath.WalkDir(repo, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, "_test.go") {
			return err
		}
		src, err := os.ReadFile(path)
		for _, m := range regexp.MustCompile(`(?m)^func (Test\w+)\(t \*testing`).FindAllSubmatch(src, -1) {
			there[string(m[1])] = true
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	_, table, ok := strings.Cut(string(readme), "| what can happen |")
	if !ok {
		t.Fatal("the readme has no table of what can happen")
	}
	rows := 0
	for line := range strings.Lines(table) {
		if !strings.HasPrefix(line, "| ") {
			continue
		}
		names := regexp.MustCompile("`(Test\\w+)`").FindAllStringSubmatch(line, -1)
		if rows++; len(names) == 0 {
			t.Errorf("no test is named in: %s", line)
		}
		for _, m := range names {
			if !there[m[1]] {
				t.Errorf("there is no test %s, named in: %s", m[1], line)
			}
		}
	}
	if rows < 10 {
		t.Errorf("%d rows, want all that can happen", rows)
	}
}
