package command

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"chape/project/config"
	"chape/project/config/configtest"
	"chape/project/leather"
	"chape/ui/command/call"
)

// rack puts leather beside the settings, and gives a project's file.
func rack(t *testing.T, text string) string {
	t.Helper()
	configtest.Write(t, "")
	path, err := config.Path()
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(filepath.Dir(path), leather.Name), []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return filepath.Join("..", "..", "testdata", "guard.toml")
}

const offcuts = `[[leather]]
name = "offcut"
thickness = 3.2
corners = "0 20; 300 -10; 520 60; 510 380; 120 430; 10 250"
flaws = ["330 300 30"]
[[leather]]
name = "thin"
thickness = 1.6
width = 300
height = 200
[[leather]]
name = "hide only"
thickness = 3.2
`

func TestPlaceRefuses(t *testing.T) {
	file := rack(t, offcuts)
	for _, c := range []struct {
		args []string
		want string
		code int
	}{
		{[]string{"place"}, "needs a project's file", call.BadUsage},
		{[]string{"place", "nowhere.toml"}, "there is no file", call.BadFile},
		{[]string{"place", "--on", "ofcut", file}, "did you mean offcut?", call.BadUsage},
		{[]string{"place", "--on", "sofa", file}, "you have offcut, thin", call.BadUsage},
		{[]string{"place", "--on", "hide only", file}, "has no size", call.BadFile},
		{[]string{"place", "--on", "thin", file}, "not all parts fit: missing: body, no piece is", call.BadFile},
	} {
		var out, errs bytes.Buffer
		err := Run(call.World{Out: &out, Err: &errs}, c.args)
		if code := call.Status(&errs, err); code != c.code || !strings.Contains(errs.String(), c.want) {
			t.Errorf("%v: status %d, said %q, want %d, %q", c.args, code, errs.String(), c.code, c.want)
		}
	}
	rack(t, "gap = 200\n")
	if err := Run(call.World{Out: &bytes.Buffer{}, Err: &bytes.Buffer{}}, []string{"place", file}); err == nil || !strings.Contains(err.Error(), "gap: found 200 mm: give 0 to 50 mm") {
		t.Errorf("a gap of 200 mm: %v", err)
	}
	rack(t, "")
	if err := Run(call.World{Out: &bytes.Buffer{}, Err: &bytes.Buffer{}}, []string{"place", file}); err == nil || !strings.Contains(err.Error(), "there is no leather to cut from") {
		t.Errorf("without leather: %v", err)
	}
}

// Where parts lie is in a unit, from a corner: without both a figure means nothing. How far
// the search is takes no more than a few lines.
func TestPlaceSaysFromWhere(t *testing.T) {
	file := rack(t, offcuts)
	var out bytes.Buffer
	var heard []string
	w := call.World{Out: &out, Err: &out, Progress: func(line string) { heard = append(heard, line) }}
	if err := Run(w, []string{"place", "--on", "offcut", file}); err != nil {
		t.Fatal(err, out.String())
	}
	if n := len(heard); n == 0 || n > 10 || heard[0] == heard[n-1] { // a line for each tenth
		t.Errorf("%d lines of progress: %q", n, heard)
	}
	if want := "places in mm, along and up from the lower left corner"; !strings.Contains(out.String(), want) {
		t.Errorf("said %q, want %q", out.String(), want)
	}
}

func TestPlaceJSON(t *testing.T) {
	file := rack(t, offcuts)
	dir := t.TempDir()
	var out, errs bytes.Buffer
	if err := Run(call.World{Out: &out, Err: &errs}, []string{"place", "--json", "--on", "offcut", "--out", dir, file}); err != nil {
		t.Fatal(err, errs.String())
	}
	var said struct {
		Fits       bool
		Yield      float64
		Placements []struct {
			Part, Leather string
			Outline       [][2]float64
		}
		Pieces []struct{ Width, Height, Parts float64 }
	}
	if err := json.Unmarshal(out.Bytes(), &said); err != nil {
		t.Fatal(err)
	}
	if !said.Fits || len(said.Placements) < 2 || len(said.Pieces) != 1 || said.Placements[0].Leather != "offcut" {
		t.Fatalf("said %+v", said)
	}
	if p := said.Pieces[0]; said.Yield < 0.3 || said.Yield > 1 || said.Yield-p.Parts/(p.Width*p.Height) > 1e-9 {
		t.Errorf("yield %v of %+v", said.Yield, p)
	}
	for _, name := range []string{"guard on leather.pdf", "guard on leather.svg"} {
		if _, err := os.Stat(filepath.Join(dir, name)); err != nil {
			t.Error(err)
		}
	}
}
