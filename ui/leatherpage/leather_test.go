package leatherpage

import (
	"context"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"chape/calc/curve"
	"chape/calc/length"
	"chape/calc/nest"
	"chape/calc/trace"
	"chape/project"
	"chape/project/file"
	"chape/project/leather"
	"chape/project/shelf"
	"chape/project/store"
	"chape/project/value"
	"chape/ui/act"
	"chape/ui/canvas"
	"chape/ui/term/ink"
	"chape/ui/test/rig"
)

// bench is the page with a rack in a folder of its own, and a shelf.
type bench struct {
	*rig.Rig[*Model]
	rack  *leather.File
	shelf *shelf.Shelf
}

func newBench(t *testing.T, w, h int, pieces ...leather.Leather) bench {
	t.Helper()
	dir := t.TempDir()
	fsys := store.OSLockingIn("")
	b := bench{rack: &leather.File{FS: fsys, Path: filepath.Join(dir, leather.Name)}, shelf: shelf.Open(fsys, filepath.Join(dir, "shelf"))}
	s := leather.Empty()
	s.Pieces = pieces
	if err := b.rack.Keep(s); err != nil {
		t.Fatal(err)
	}
	for _, title := range []string{"Boning knife", "Field knife"} {
		p := knife(title)
		if _, err := b.shelf.Create(p); err != nil {
			t.Fatal(err)
		}
	}
	p := knife("Orchard knife")
	b.Rig = rig.New(t, p, w, h, func(func() time.Time) *Model {
		m := New(Options{Rack: b.rack, Shelf: b.shelf, Styles: ink.New(ink.Dark, ink.None)})
		m.place = first
		return m
	})
	b.Plan = true
	b.Snap.Font = act.Font{Glyphs: canvas.Braille, Aspect: 2}
	b.Snap.Prints = filepath.Join(dir, "prints")
	b.Show()
	return b
}

// first is the placing that the search begins with, as if it were its best.
func first(_ context.Context, t nest.Task, told func(nest.Progress)) (nest.Result, error) {
	over, stop := context.WithCancel(context.Background())
	stop()
	r, err := nest.Place(over, t, told)
	r.Stopped = false
	return r, err
}

func knife(title string) project.Project {
	p := project.Defaults()
	p.Title, p.Revision = title, 1
	return p
}

// kept is the leather as its file has it.
func (b bench) kept() leather.Stock {
	b.T.Helper()
	data, err := os.ReadFile(b.rack.Path)
	if err != nil {
		b.T.Fatal(err)
	}
	s, err := leather.Decode("leather.toml", data)
	if err != nil {
		b.T.Fatal(err)
	}
	return s
}

func offcut() leather.Leather {
	l := leather.New("offcut by the window")
	l.Width, l.Height = 0, 0
	at, _ := value.Pairs("0 20; 300 -10; 520 60; 510 380; 120 430; 10 250", length.Millimetres)
	l.Corners = at
	f, _ := leather.ReadFlaw("330 300 30", length.Millimetres)
	l.Flaws = []leather.Flaw{f}
	return l
}

func TestGolden(t *testing.T) {
	plain := leather.New("shoulder")
	for _, c := range []struct {
		name string
		w, h int
		keys []string
	}{
		{"rack_78x19", 78, 19, nil},
		{"placed_78x19", 78, 19, []string{"p"}},
		{"placed_158x40", 158, 40, []string{"p"}},
		{"large_78x19", 78, 19, []string{"p", "v"}},
		{"piece_78x19", 78, 19, []string{"enter"}},
		{"piece_158x40", 158, 40, []string{"enter"}},
		{"grain_78x19", 78, 19, []string{"enter", "down", "down", "down", "down", "down", "down", " ", "down", "4", "0", "enter"}},
		{"bend_78x19", 78, 19, []string{"down", "enter", "end", "up", "up", "enter", "1", "5", "0", "enter", "6", "7", "enter", "6", "6", "enter", "6", "enter"}},
		{"stretch_158x40", 158, 40, []string{"down", "enter", "end", "up", "enter", "down", "1", "1", "2", "enter", "1", "0", "7", "enter"}},
	} {
		b := newBench(t, c.w, c.h, offcut(), plain)
		b.Keys(c.keys...)
		b.Golden(t, c.name)
	}
}

func TestEverySize(t *testing.T) {
	b := newBench(t, 78, 19, offcut())
	for _, keys := range [][]string{{"p"}, {"enter"}, {"end", "up", "enter"}, {"esc", "esc"}} {
		b.Keys(keys...)
		rig.CheckSizes(t, b.Pane, 160, 45)
	}
	rig.CheckKeys(t, b.Pane)
}

// A piece is typed as a maker would, kept in its file, undone and redone there.
func TestPieceIsKept(t *testing.T) {
	b := newBench(t, 78, 19)
	b.Keys("home", "enter").Shows("name", "thickness")
	b.Keys("enter").Type("odd bit").Keys("enter")
	b.Type("8 oz").Keys("enter", "down", "down", "enter")
	b.Type("0 20; 300 0; 420 60; 410 330; 10 250").Keys("enter", "down", "enter")
	b.Type("330 200 30").Keys("enter")
	s := b.kept()
	if len(s.Pieces) != 1 {
		t.Fatalf("kept %+v, said %v", s, b.Said)
	}
	l := s.Pieces[0]
	if l.Name != "odd bit" || math.Abs(l.Thickness.MM()-3.175) > 1e-9 || len(l.Corners) != 5 || len(l.Flaws) != 1 || l.Flaws[0].Across != 30 {
		t.Errorf("kept %+v", l)
	}
	b.Keys("u")
	if l := b.kept().Pieces[0]; len(l.Flaws) != 0 || len(l.Corners) != 5 {
		t.Errorf("after undo %+v", l)
	}
	b.Keys("U")
	if l := b.kept().Pieces[0]; len(l.Flaws) != 1 {
		t.Errorf("after redo %+v", l)
	}
	b.Keys("u", "u", "u", "u", "u")
	if n := len(b.kept().Pieces); n != 0 {
		t.Errorf("after five undos %d pieces", n)
	}
	b.Keys("u")
	if b.Last() != (act.Undo{}) {
		t.Errorf("what was not of the leather is for the root to undo: %v", b.Last())
	}
}

// What will not do is said, and nothing is kept.
func TestRefused(t *testing.T) {
	b := newBench(t, 78, 19, offcut())
	before, _ := os.ReadFile(b.rack.Path)
	b.Keys("enter", "down", "9", "9", "enter").Shows("give 0.2 to 20 mm")
	b.Keys("esc", "down", "enter").Type("0 0; 9").Keys("enter").Shows("is no place")
	b.Keys("esc", "enter").Type("0 0; 90 0; 10 90; 90 70").Keys("enter").Shows("crosses itself")
	b.Keys("esc", "down", "down", "enter").Type("3 3").Keys("enter").Shows("three corners")
	b.Keys("esc", "enter").Type("9000 100 30").Keys("enter").Shows("lies off the leather")
	if after, _ := os.ReadFile(b.rack.Path); string(after) != string(before) {
		t.Errorf("the file is now %s", after)
	}
}

// Three knives on one offcut: the others come from the shelf.
func TestSeveralKnives(t *testing.T) {
	b := newBench(t, 158, 40, offcut())
	b.Shows("Boning knife", "Field knife")
	b.Keys("down", "down", "down", "down", " ")
	laid, err := b.Pane.ask()
	if err != nil || laid.Copies() != 4 || !laid.Several() {
		t.Fatalf("two knives: %d parts, %v", laid.Copies(), err)
	}
	b.Keys("down", " ")
	if laid, _ = b.Pane.ask(); laid.Copies() != 6 {
		t.Errorf("three knives: %d parts", laid.Copies())
	}
	b.Keys(" ")
	if laid, _ = b.Pane.ask(); laid.Copies() != 4 {
		t.Errorf("one taken out again: %d parts", laid.Copies())
	}
}

// What is ticked is kept: the page opened anew has it, u takes it back, and a project that
// can't be read any more is left out and said.
func TestTicksAreKept(t *testing.T) {
	b := newBench(t, 158, 40, offcut(), leather.New("shoulder"))
	b.Keys("down", " ", "end", "up", "up", " ")
	if s := b.kept(); len(s.With) != 1 || s.Pieces[0].Aside || !s.Pieces[1].Aside {
		t.Fatalf("kept %v, %+v", s.With, s.Pieces)
	}
	anew := func() *Model {
		b.Pane = New(Options{Rack: b.rack, Shelf: b.shelf, Styles: ink.New(ink.Dark, ink.None)})
		b.Pane.place = first
		b.Pane.SetSize(158, 40)
		b.Show()
		b.Send(act.InHand{Is: true})
		return b.Pane
	}
	laid, err := anew().ask()
	if err != nil || len(laid.Task.Pieces) != 1 || laid.Copies() != 4 || !laid.Several() {
		t.Fatalf("opened anew: %d pieces, %d parts, %v", len(laid.Task.Pieces), laid.Copies(), err)
	}
	b.Keys("home", "down", " ", "u").Shows("[ ] shoulder")
	if s := b.kept(); !s.Pieces[1].Aside {
		t.Error("undone, but not on the disk")
	}
	if err := os.WriteFile(b.kept().With[0], []byte("title = "), 0o600); err != nil {
		t.Fatal(err)
	}
	laid, err = anew().ask()
	said := b.Said[len(b.Said)-1]
	if err != nil || laid.Several() || !strings.Contains(said, "Field knife.toml was to be cut") {
		t.Errorf("with a broken project: %d parts, %v; with %v; said %v", laid.Copies(), err, b.kept().With, b.Said)
	}
}

// A project that turns out not to be cut is left out and said, and u leads past it to what
// was changed before.
func TestWhatCantBeCutIsForgotten(t *testing.T) {
	b := newBench(t, 158, 40, offcut(), leather.New("shoulder"))
	b.Keys("down", " ") // the shoulder is put aside
	field := b.Pane.others[1].Path
	if err := os.WriteFile(field, []byte("title = "), 0o600); err != nil {
		t.Fatal(err)
	}
	b.Keys("end", "up", "up", " ")
	if said := b.Said[len(b.Said)-1]; !strings.HasPrefix(said, "Field knife can't be cut yet") || b.Pane.others[1].On || len(b.kept().With) != 0 {
		t.Fatalf("said %q, with %v", said, b.kept().With)
	}
	b.Keys("u", "u")
	if s := b.kept(); s.Pieces[1].Aside || len(s.With) != 0 {
		t.Errorf("u leads nowhere: %+v, with %v", s.Pieces[1], s.With)
	}
	b.Keys("U", "U")
	if s := b.kept(); !s.Pieces[1].Aside || len(s.With) != 0 {
		t.Errorf("redone: %+v, with %v", s.Pieces[1], s.With)
	}
}

// Esc breaks a search off, and what was found till then is kept.
func TestBrokenOff(t *testing.T) {
	b := newBench(t, 78, 19, offcut())
	b.Pane.place, b.Hold = nest.Place, true
	b.Keys("p").Shows("placing")
	b.Keys("esc")
	b.Run()
	if b.Pane.job != nil || b.Pane.laid == nil || len(b.Pane.laid.Result.Placements) != 2 {
		t.Fatalf("job %v, laid %+v", b.Pane.job, b.Pane.laid)
	}
	if !b.Pane.laid.Result.Stopped {
		t.Error("it is not said to be broken off")
	}
	b.Shows("broken off, the best so far")
}

// The yield goes into the cost; a change of the leather takes the placing away.
func TestYieldToTheCost(t *testing.T) {
	b := newBench(t, 78, 19, offcut())
	b.Keys("p", "end", "up", "enter")
	want := b.Pane.laid.Lost()
	if h := b.Project.Hide; !h.Placed || h.Lost != want || want <= 0 {
		t.Errorf("hide %+v, want %v", h, want)
	}
	if again, err := file.Encode(b.Project), error(nil); err != nil || !strings.Contains(string(again), "[leather]\nlost = 0.") {
		t.Errorf("the file has no lost:\n%s", again)
	}
	b.Shows("so far yield")
	if b.Pane.laid == nil {
		t.Error("the placing is gone after its own yield was kept")
	}
	b.Keys("home", " ")
	if b.Pane.laid != nil {
		t.Error("a placing on leather that is not cut from stands")
	}
	b.Keys("end").Shows("the cost is reckoned with")
	if b.Keys("x"); b.Project.Hide.Placed {
		t.Error("the yield is not forgotten")
	}
	b.Keys("p")
	if got := b.Said[len(b.Said)-1]; !strings.Contains(got, "no leather to cut from") {
		t.Errorf("said %q", got)
	}
}

func TestPrint(t *testing.T) {
	b := newBench(t, 78, 19, offcut())
	b.Keys("p", "end", "enter")
	for _, name := range []string{"sheath on leather.pdf", "sheath on leather.svg"} {
		if _, err := os.Stat(filepath.Join(b.Snap.Prints, name)); err != nil {
			t.Errorf("%v; said %v", err, b.Said)
		}
	}
}

// A part of the maker's own is the project's, and is placed.
func TestAddedParts(t *testing.T) {
	b := newBench(t, 78, 19, offcut())
	b.Keys("down", "down", "down", "enter").Shows("half-widths", "the body's")
	b.Keys("enter").Type("firesteel loop").Keys("enter")
	b.Keys("2", "enter", "8", "0", "enter", "2", "5", "enter")
	want := project.Part{Name: "firesteel loop", Count: 2, Length: 80, Width: 25}
	if len(b.Project.Added) != 1 || b.Project.Added[0] != want {
		t.Fatalf("added %+v, said %v", b.Project.Added, b.Said)
	}
	if laid, err := b.Pane.ask(); err != nil || laid.Copies() != 4 {
		t.Errorf("%d parts, %v", laid.Copies(), err)
	}
	b.Keys("esc", "home", "down", "down", "down").Shows("firesteel loop × 2")
	b.Keys("x")
	if len(b.Project.Added) != 0 {
		t.Errorf("taken out: %+v", b.Project.Added)
	}
}

// A piece read from a photograph: 100 × 60 mm with a corner cut off, wherever it lay.
func TestFromAPhotograph(t *testing.T) {
	b := newBench(t, 78, 19, offcut())
	b.Pane.picker.Reader = func(_ context.Context, path string, o trace.Options) (trace.Reading, error) {
		if o.Of != trace.Leather || path != "/pictures/bit.jpg" {
			t.Errorf("read %q as %v", path, o.Of)
		}
		edge := curve.Line{{X: 30, Y: 40}, {X: 130, Y: 40}, {X: 130, Y: 100}, {X: 50, Y: 100}, {X: 30, Y: 80}}
		var fine curve.Line // as closely as it is read
		for i, p := range edge {
			q := edge[(i+1)%len(edge)]
			for s := range 200 {
				fine = append(fine, p.Add(q.Sub(p).Mul(float64(s)/200)))
			}
		}
		return trace.Reading{Of: o.Of, Outline: fine}, nil
	}
	b.Keys("enter", "down", "down", "down", "enter").Shows("Drop the picture")
	rig.CheckSizes(t, b.Pane, 80, 24)
	b.Send(rig.Paste("/pictures/bit.jpg"))
	l := b.kept().Pieces[0]
	if len(l.Corners) != 5 || math.Abs(math.Abs(l.Corners.Area())-5800) > traced*80 || len(l.Flaws) != 1 {
		t.Fatalf("kept %+v, said %v", l, b.Said)
	}
	if got := b.Said[len(b.Said)-1]; !strings.Contains(got, "the flaws typed before stay") || !strings.HasSuffix(got, "; flaw 1 lies off it") {
		t.Errorf("said %q", got)
	}
	if lo, hi := l.Corners.Bounds(); lo.Norm() > 0.01 || hi.Dist(curve.Vec{X: 100, Y: 60}) > 0.01 {
		t.Errorf("from %v to %v", lo, hi)
	}
	b.Keys("u")
	if l := b.kept().Pieces[0]; len(l.Corners) != 6 || len(l.Flaws) != 1 {
		t.Errorf("after undo %+v", l)
	}
	b.Keys("enter").Shows("Drop the picture")
	b.Keys("esc").Shows("thickness")
}

// A file that will not do is left alone, and that is said; nothing is put over it.
func TestUnreadable(t *testing.T) {
	b := newBench(t, 78, 19, offcut())
	broken := []byte("gap = 99\n")
	if err := os.WriteFile(b.rack.Path, broken, 0o600); err != nil {
		t.Fatal(err)
	}
	b.Send(act.InHand{Is: true}).Shows("can't be read", "give 0 to 50 mm")
	b.Keys("home", "enter", "down", "5", "enter")
	if got, _ := os.ReadFile(b.rack.Path); string(got) != string(broken) {
		t.Errorf("the file is now %q", got)
	}
}
