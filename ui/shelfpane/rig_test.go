package shelfpane

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"chape/project"
	"chape/project/file"
	"chape/project/shelf"
	"chape/project/steps"
	"chape/project/store"
	"chape/ui/act"
	"chape/ui/term/ink"
	"chape/ui/test/golden"
	"chape/ui/test/rig"
)

var noon = time.Date(2026, 11, 25, 12, 0, 0, 0, time.UTC)

// desk is the screen on its rig, with what it gives to do done at once.
type desk struct {
	*rig.Rig[*Model]
	t *testing.T
}

func newRig(t *testing.T, dir string, w, h int) *desk {
	r := &desk{t: t}
	r.Rig = rig.At(t, noon, project.Project{}, w, h, func(now func() time.Time) *Model {
		return New(Options{Shelf: shelf.Open(store.OSLockingIn(""), dir), Clock: now, Styles: ink.New(ink.Middling, ink.Mono)})
	})
	return r
}

// sent is what the root would get.
func (r *desk) sent() (out []act.Msg) {
	for _, m := range r.Sent {
		if _, work := m.(act.Do); !work {
			out = append(out, m)
		}
	}
	return out
}

// keys types keys by hand: by name, or text.
func (r *desk) keys(keys ...string) *desk {
	for _, k := range keys {
		if rig.Key(k).Type != tea.KeyRunes {
			r.Keys(k)
		} else {
			r.Type(k)
		}
	}
	return r
}

func (r *desk) last() act.Msg {
	sent := r.sent()
	if len(sent) == 0 {
		return nil
	}
	return sent[len(sent)-1]
}

func (r *desk) titles() string {
	var out []string
	for _, i := range r.Pane.shown {
		out = append(out, r.Pane.entries[i].Title)
	}
	return strings.Join(out, ", ")
}

func (r *desk) chosen() string {
	e, _ := r.Pane.Chosen()
	return e.Title
}

// sheath is an invented project in the given step.
func sheath(title string, step int) project.Project {
	p := project.Defaults()
	p.Title, p.Steps = title, steps.FormThenSew(steps.Whole)
	for i := range p.Steps[:step] {
		p.Steps[i].Done = noon.Add(-time.Duration(100-i) * time.Hour)
	}
	return p
}

func put(t *testing.T, dir, name string, data []byte, at time.Time) {
	t.Helper()
	path := filepath.Join(dir, name)
	os.MkdirAll(filepath.Dir(path), 0o700)
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Chtimes(path, at, at); err != nil {
		t.Fatal(err)
	}
}

// full is a shelf with something of everything; all of it is invented.
func full(t *testing.T) string {
	dir := t.TempDir()
	ago := func(h int) time.Time { return noon.Add(-time.Duration(h) * time.Hour) }
	add := func(name string, p project.Project, at time.Time) { put(t, dir, name+".toml", file.Encode(p), at) }

	held := func(title string, step int, hold time.Duration, since int) project.Project {
		p := sheath(title, step)
		p.Steps[step].Hold, p.Steps[step].Latest, p.Steps[step].Started = hold, 2*hold, ago(since)
		return p
	}
	add("orchard", held("Orchard knife", 17, 24*time.Hour, 20), ago(20))
	add("skinner", held("Little skinner", 10, 15*time.Minute, 0), ago(0))
	add("camp", held("Camp knife, second try", 11, 12*time.Hour, 13), ago(13))
	p := sheath("Éclair, the pastry cook's knife with the long bolster and the short blade", 3)
	p.Customer.Name, p.Customer.Due = "Bögli", time.Date(2026, 12, 18, 0, 0, 0, 0, time.UTC)
	add("eclair", p, ago(30))
	p = sheath("Late promise", 22)
	p.Customer.Due = time.Date(2026, 11, 20, 0, 0, 0, 0, time.UTC)
	add("late promise", p, ago(31))
	add("whittler", sheath("Whittler", 0), ago(2))
	add("done", sheath("Fish knife", len(steps.FormThenSew(steps.Whole))), ago(3))
	add("put away/old", sheath("Old pattern", 5), ago(400))
	put(t, dir, "torn.toml", []byte("format = 1\ntitle = \"Torn\"\nunits = \"cm\"\n"), ago(1))
	for i := range 5 {
		add(fmt.Sprintf("spare %d", i), sheath(fmt.Sprintf("Spare %d", i), i), ago(50+i))
	}
	return dir
}

func check(t *testing.T, name, view string) {
	t.Helper()
	golden.Check(t, name+".txt", ansi.Strip(view))
}

// tenThousand is a shelf of invented projects.
func tenThousand(b *testing.B) string {
	dir := b.TempDir()
	data := string(file.Encode(sheath("Knife", 5)))
	for i := range 10000 {
		text := strings.Replace(data, `"Knife"`, fmt.Sprintf(`"Knife %d"`, i), 1)
		if err := os.WriteFile(filepath.Join(dir, fmt.Sprintf("knife %d.toml", i)), []byte(text), 0o600); err != nil {
			b.Fatal(err)
		}
	}
	return dir
}
