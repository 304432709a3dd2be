package leatherpage

import (
	"fmt"
	"strings"
	"testing"

	"chape/calc/length"
	"chape/project"
	"chape/ui/act"
	"chape/ui/test/rig"
)

// to goes to the row of a name.
func (b bench) to(name string) *rig.Rig[*Model] {
	b.T.Helper()
	for i, r := range b.Pane.rows() {
		if r.name == name {
			b.Pane.list.Choose(i)
			return b.Rig
		}
	}
	b.T.Fatalf("no row %q", name)
	return nil
}

// Degrees typed on the grain that counts are which way it runs; the grain stays as it was
// chosen. While it is free that is said.
func TestDegreesTypedOnTheGrain(t *testing.T) {
	b := newBench(t, 78, 19, offcut())
	b.Keys("enter")
	b.to("grain").Keys("9")
	if b.Pane.entry != nil || len(b.Said) == 0 || !strings.Contains(b.Said[len(b.Said)-1], "Enter first: the grain counts") {
		t.Errorf("free: said %q", b.Said)
	}
	b.Keys("enter", "9", "0", "enter").Shows("counts: the fold lies along it")
	if l := b.kept().Pieces[0]; !l.Fixed || l.Grain != 90 {
		t.Errorf("fixed %v, grain %v", l.Fixed, l.Grain)
	}
}

// On a name letters begin it, whatever they are commands for elsewhere.
func TestLettersBeginAName(t *testing.T) {
	for _, name := range []string{"double shoulder", "veg tan", "pull-up", "mill", "Upper"} {
		b := newBench(t, 78, 19, offcut())
		if b.Keys("enter"); !act.Writing(b.Pane) {
			t.Fatal("the root's keys are alive on the name")
		}
		b.Type(name).Keys("enter")
		if got := b.kept().Pieces[0].Name; got != name || b.Pane.job != nil || b.Pane.large {
			t.Errorf("%q is kept as %q", name, got)
		}
		if act.Writing(b.Pane) {
			t.Error("letters are no commands on the thickness")
		}
		b.to("name").Keys("x", "esc")
		if got := b.kept().Pieces[0].Name; got != name || act.Typing(b.Pane) {
			t.Errorf("after Esc it is %q", got)
		}
		if b.Keys("5"); b.Pane.entry != nil || !strings.Contains(b.Said[len(b.Said)-1], "Enter opens the text") {
			t.Errorf("a figure: said %q", b.Said)
		}
	}
	b := newBench(t, 78, 19, offcut())
	b.to("    another part of this sheath").Keys("enter").Type("pouch").Keys("enter")
	if len(b.Project.Added) != 1 || b.Project.Added[0].Name != "pouch" {
		t.Errorf("added %+v", b.Project.Added)
	}
	b.to("name").Keys("ctrl+u") // undo has a key that is no letter
	if act.Typing(b.Pane) || b.Last() != (act.Undo{}) {
		t.Errorf("Ctrl+U on a name: %v", b.Last())
	}
}

// Corners begin with a figure, at once.
func TestPlacesBeginWithAFigure(t *testing.T) {
	b := newBench(t, 78, 19, offcut())
	b.Keys("enter")
	b.to("corners").Type("0 0; 300 0; 300 200").Keys("enter")
	if got := b.kept().Pieces[0].Corners; len(got) != 3 || got[1].X != 300 {
		t.Errorf("corners %v, said %q", got, b.Said)
	}
}

// A new piece that is left as it was added is taken back; one of which something was typed,
// or which is the sheath's, stays.
func TestANewPieceLeftAsItWas(t *testing.T) {
	add := func() bench {
		b := newBench(t, 78, 19)
		b.to("another piece of leather").Keys("enter")
		return b
	}
	b := add()
	b.Keys("esc")
	if got := b.kept().Pieces; len(got) != 0 || b.Pane.view != viewAll || b.Said[len(b.Said)-1] != "no new piece: nothing was typed of it" {
		t.Errorf("%d pieces stay, said %q", len(got), b.Said)
	}
	b.Keys("enter", "9", "esc", "enter", "a", "esc", "esc") // begun and left
	if got := b.kept().Pieces; len(got) != 0 {
		t.Errorf("%d pieces stay", len(got))
	}
	for _, keys := range [][]string{{"o", "d", "d", "enter"}, {"down", "3", "enter"}, {"end", "enter"}} {
		b := add()
		b.Keys(keys...).Keys("esc")
		if got := b.kept().Pieces; len(got) != 1 || b.Pane.view != viewAll {
			t.Errorf("%q: %d pieces", keys, len(got))
		}
		b.Keys("enter", "esc") // looked at again it is no new one
		if got := b.kept().Pieces; len(got) != 1 {
			t.Errorf("%q: looked at again %d pieces", keys, len(got))
		}
	}
}

// In inches all that the page proposes, and each example, is in inches and in round figures.
func TestInchesThroughout(t *testing.T) {
	b := newBench(t, 120, 40)
	b.Project.Units = length.Inches
	b.Show()
	b.to("    another part of this sheath").Keys("enter").Shows("2 1/2 in", "1 1/4 in")
	if want := (project.Part{Name: "part 1", Count: 1, Length: 63.5, Width: 31.75}); b.Project.Added[0] != want {
		t.Errorf("added %+v", b.Project.Added[0])
	}
	b.to("half-widths").Shows(`"0 3/8; 1-1/2 3/4; 3 1/4"`)
	b.Keys("esc")
	b.to("another piece of leather").Keys("enter")
	b.to("corners").Shows(`"0 3/4; 12 0; 16-1/2 2-1/2; 16 13"`)
	b.Keys("0").Type(" 10 1/2; 12 0").Keys("enter").Shows(`"0 10 1/2" is no place`, "0 10-1/2; 12 0").Keys("esc")
	b.to("another flaw").Shows(`"12 10-1/2 1"`).Type("4 8; 1").Keys("enter").Shows("0 10-1/2; 12 0").Keys("esc")
	b.to("bend").Keys("enter").Shows("about 3/4 in wide and 6 in long").Lacks("mm").Keys("esc")
	b.to("stretch").Keys("enter").Shows("two marks 4 in apart", "before 4 in").Lacks("mm")
}

// Rows that have no room are counted below those that have.
func TestHiddenRowsAreCounted(t *testing.T) {
	b := newBench(t, 58, 16, offcut())
	b.Show()
	rows := len(b.Pane.rows())
	if _, to := b.Pane.list.Shown(); to >= rows {
		t.Fatalf("%d rows have room", rows)
	}
	_, to := b.Pane.list.Shown()
	b.Shows(fmt.Sprintf("%d more lines: PgDn", rows-to))
	b.Keys("end").Shows("lines above: PgUp", "> place the parts").Lacks("more line")
	newBench(t, 120, 40, offcut()).Lacks("more line", "above: PgUp")
}
