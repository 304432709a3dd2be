package command

import (
	"bytes"
	"encoding/json"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"chape/calc/curve"
	"chape/project/config/configtest"
	"chape/project/file"
	"chape/project/picture/phototest"
	"chape/project/print/tracing"
	"chape/ui/command/call"
)

// photo writes the picture of a traced knife, 184 mm long with a step at 100, and gives its path.
func photo(t *testing.T, dir string) string {
	t.Helper()
	sheet, err := tracing.PDF(tracing.Options{})
	if err != nil {
		t.Fatal(err)
	}
	p, err := phototest.Read(sheet, 8)
	if err != nil {
		t.Fatal(err)
	}
	pen := phototest.Pencil{Width: 0.6, Dark: 0.6, Rand: rand.New(rand.NewPCG(1, 1))}
	// the point at the top, the back to the left
	p.Trace(curve.Line{{X: 78, Y: 50}, {X: 70, Y: 80}, {X: 70, Y: 150}, {X: 70, Y: 234}, {X: 94, Y: 234}, {X: 94, Y: 100}, {X: 88, Y: 65}}, pen)
	p.Stroke(curve.Vec{X: 70, Y: 150}, curve.Vec{X: 64, Y: 150}, pen)
	p.Stroke(curve.Vec{X: 94, Y: 150}, curve.Vec{X: 100, Y: 150}, pen)
	path := filepath.Join(dir, "knife on paper.jpg")
	if err := os.WriteFile(path, phototest.JPEG(p, phototest.Camera{Width: 975, Height: 1300, Fill: 0.85, Tilt: 0.2}), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestTraceCommand(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	dir := t.TempDir()
	path, to := photo(t, dir), filepath.Join(dir, "knife.toml")
	kitchen, err := os.ReadFile(filepath.Join("..", "..", "testdata", "guard.toml"))
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(to, kitchen, 0o600); err != nil {
		t.Fatal(err)
	}
	var out, bad bytes.Buffer
	w := call.World{Out: &out, Err: &bad, Now: func() time.Time { return time.Date(2026, 11, 25, 10, 0, 0, 0, time.UTC) }}
	if err := Run(w, []string{"trace", "--json", path, to}); err != nil {
		t.Fatal(err)
	}
	var said struct {
		Sheet   struct{ Width, Height, Version float64 }
		Of      string
		Outline [][2]float64
		Gaps    []float64 `json:"closed_gaps"`
		Fold    struct{ From, To [2]float64 }
		Marks   []struct{ At, Gap, Depth float64 }
		Steps   []float64
	}
	if err := json.Unmarshal(out.Bytes(), &said); err != nil {
		t.Fatal(err)
	}
	if said.Sheet.Width != 175 || said.Of != "knife" || len(said.Marks) < 4 || len(said.Steps) != 1 || said.Gaps == nil {
		t.Errorf("said %+v", said)
	}
	if s := said.Steps[0]; s < 99.4 || s > 100.6 {
		t.Errorf("a step at %v, want 100", s)
	}
	var line curve.Line
	for i, v := range said.Outline {
		line = append(line, curve.Vec{X: v[0], Y: v[1]})
		if i > 0 && line[i].Dist(line[i-1]) > 0.5 {
			t.Fatalf("neighbours %v apart", line[i].Dist(line[i-1]))
		}
	}
	if line.Area() <= 0 {
		t.Error("the outline runs clockwise")
	}
	data, err := os.ReadFile(to)
	if err != nil {
		t.Fatal(err)
	}
	configtest.Write(t, `units = "in"`)
	out.Reset()
	if err := Run(w, []string{"trace", path}); err != nil || !strings.Contains(out.String(), " read to about 0.004 in;") || strings.Contains(out.String(), "within 0 in") {
		t.Errorf("in inches: %v\n%s", err, out.String())
	}
	p, _, err := file.Decode(to, data)
	if err != nil || p.Tracing.Picture != "knife on paper.jpg" || len(p.Knife.Stations) != len(said.Marks) {
		t.Errorf("the file holds %+v, %v", p.Tracing, err)
	}
}

func TestTraceCalls(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	dir := t.TempDir()
	letter := filepath.Join(dir, "letter.jpg")
	if err := os.WriteFile(letter, []byte("dear sir"), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		args   []string
		want   string
		status int
	}{
		{[]string{"trace"}, "which photograph?", call.BadUsage},
		{[]string{"trace", letter, "a.toml", "b.toml"}, "one too many", call.BadUsage},
		{[]string{"trace", "--of", "fish", letter}, "try knife, pattern or leather", call.BadUsage},
		{[]string{"trace", "--of", "leather", letter, "a.toml"}, "a knife alone", call.BadUsage},
		{[]string{"trace", "--rule", "900", letter}, "5 to 150 mm", call.BadUsage},
		{[]string{"trace", letter}, "not a picture", call.BadFile},
		{[]string{"trace", filepath.Join(dir, "none.jpg")}, "no such picture", call.BadFile},
		{[]string{"trace", letter, filepath.Join(dir, "none.toml")}, "there is no file", call.BadFile},
	} {
		var out, bad bytes.Buffer
		status := call.Status(&bad, Run(call.World{Out: &out, Err: &bad}, c.args))
		if status != c.status || !strings.Contains(bad.String(), c.want) || strings.Count(bad.String(), "\n") != 1 {
			t.Errorf("%q: status %d, %q; want %d and %q", c.args, status, bad.String(), c.status, c.want)
		}
	}
}
