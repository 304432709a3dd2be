// Package mutation tells how much the tests notice. Each mutant is one wrong word,
// figure, threshold or key put into a copy of a file; a test has to fail for it.
//
//	go test ./ui/test/mutation -mutants        # all, some minutes
//	go test ./ui/test/mutation -mutants -only steps
//
// Without the flag it is only checked that every mutant's place is still there.
package mutation

import (
	"encoding/json"
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

var (
	run  = flag.Bool("mutants", false, "put each mutant in and run the tests that could notice")
	only = flag.String("only", "", "of these rooms alone, such as steps")
)

// mutant replaces the one place where a file says was; notice are the packages whose
// tests could.
type mutant struct {
	file, was, is string
	notice        string // packages below the top, apart by spaces
}

// root is the top of the project from here.
const root = "../../.."

// leastCaught is how many of all the mutants have to be noticed: 57 of 60.
const leastCaught = 0.95

func TestPlacesAreThere(t *testing.T) {
	for room, list := range mutants {
		for _, m := range list {
			text, err := os.ReadFile(filepath.Join(root, m.file))
			if err != nil {
				t.Errorf("%s: %v", room, err)
				continue
			}
			if n := strings.Count(string(text), m.was); n != 1 || m.was == m.is {
				t.Errorf("%s: %s says %q %d times, want once: mend the list of mutants", room, m.file, m.was, n)
			}
		}
	}
}

func TestMutants(t *testing.T) {
	if !*run {
		return // long by flag
	}
	caught, all := 0, 0
	for room, list := range mutants {
		if *only != "" && *only != room {
			continue
		}
		in := 0
		for _, m := range list {
			if m.noticed(t) {
				in++
			} else {
				t.Logf("%s: nothing noticed %q for %q in %s", room, m.is, m.was, m.file)
			}
		}
		t.Logf("%s: %d of %d", room, in, len(list))
		caught, all = caught+in, all+len(list)
	}
	t.Logf("%d of %d mutants were noticed", caught, all)
	if float64(caught) < leastCaught*float64(all) {
		t.Errorf("%d of %d mutants were noticed, want 95 in 100", caught, all)
	}
}

// noticed runs the tests with the mutant laid over its file; nothing in the tree is
// changed. A mutant that does not compile is a fault of the list.
func (m mutant) noticed(t *testing.T) bool {
	t.Helper()
	dir := t.TempDir()
	whole, err := filepath.Abs(filepath.Join(root, m.file))
	if err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(whole)
	if err != nil {
		t.Fatal(err)
	}
	copied := filepath.Join(dir, "mutant.go")
	overlay := filepath.Join(dir, "overlay.json")
	put := func(path string, data []byte) {
		if err := os.WriteFile(path, data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	put(copied, []byte(strings.Replace(string(text), m.was, m.is, 1)))
	list, _ := json.Marshal(map[string]map[string]string{"Replace": {whole: copied}})
	put(overlay, list)
	args := []string{"test", "-overlay", overlay}
	for _, p := range strings.Fields(m.notice) {
		args = append(args, "./"+p)
	}
	cmd := exec.Command("go", args...)
	cmd.Dir = root
	out, err := cmd.CombinedOutput()
	if strings.Contains(string(out), "[build failed]") || strings.Contains(string(out), "[setup failed]") {
		t.Errorf("%q for %q in %s does not compile:\n%s", m.is, m.was, m.file, out)
	}
	return err != nil
}
