//go:build !windows

package endtoend

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"chape/project/file"
	"chape/project/store/storetest"
	"chape/ui/test/ptytest"
)

var wide = ptytest.Options{Width: 160, Height: 45}

// TestNoticedWithinTwoSeconds of the injected clock, whichever way the other
// program writes.
func TestNoticedWithinTwoSeconds(t *testing.T) {
	t.Parallel()
	writes := map[string]func(path string, data []byte) error{
		"in place": func(path string, data []byte) error { return os.WriteFile(path, data, 0o600) },
		"replaced": func(path string, data []byte) error {
			if err := os.WriteFile(path+".other", data, 0o600); err != nil {
				return err
			}
			return os.Rename(path+".other", path)
		},
		"same size and time": func(path string, data []byte) error {
			info, err := os.Stat(path)
			if err != nil {
				return err
			}
			if err := os.WriteFile(path, data, 0o600); err != nil {
				return err
			}
			return os.Chtimes(path, info.ModTime(), info.ModTime())
		},
	}
	for how, write := range writes {
		d := newDesk(t, storetest.New(), aKnife())
		theirs := aKnife()
		theirs.Outline.Blade = 109 // as many bytes
		if err := write(d.path, file.Encode(theirs)); err != nil {
			t.Fatal(err)
		}
		d.seconds(2)
		if s := d.screen(); !strings.Contains(s, "was changed by another program") || !strings.Contains(s, "109") {
			t.Errorf("%s: not noticed:\n%s", how, s)
		}
	}
}

// second opens the project once more.
func (h *home) second() *ptytest.Screen {
	h.t.Helper()
	s := h.start(wide)
	s.Shows("this project is open in another window as well")
	return s
}

// TestTwoWindows: what is kept in one shows in the other, both ways.
func TestTwoWindows(t *testing.T) {
	t.Parallel()
	h := newHome(t, aKnife())
	one, two := h.open(160, 45), h.second()
	begun := time.Now()
	one.Type(home_ + down + down + "142.5\r")
	two.Shows("was changed by another program")
	savedWith(two, 0, 142.5)
	t.Logf("noticed %v after the first key", time.Since(begun).Round(time.Millisecond))
	two.Type(home_ + down + down + down + "31.5\r")
	one.Shows("was changed by another program")
	savedWith(one, 1, 31.5)
	if o := h.read().Outline; o.Blade != 142.5 || o.Depth != 31.5 {
		t.Errorf("in the file: %+v", o)
	}
	h.orderly()
}

const question = "Changed on both sides"

// TestBothSides types into two windows at once until both have changed the
// project: whatever comes of it, no number of either is lost.
func TestBothSides(t *testing.T) {
	t.Parallel()
	asked := 0
	for range 5 {
		h := newHome(t, aKnife())
		one, two := h.open(160, 45), h.second()
		one.Type(home_ + down + down + pasted("142.5") + "\r")       // typed so fast it were a tool's,
		two.Type(home_ + down + down + down + pasted("31.5") + "\r") // in whose breath nothing is answered
		settled := func(screen string) bool {
			st, ok := screenState(screen)
			return strings.Contains(screen, question) || ok && (st.figures[0] == 142.5 || st.figures[1] == 31.5)
		}
		one.Until("an end", settled)
		two.Until("an end", settled)
		blade, depth := h.kept()
		if !blade || !depth {
			t.Fatalf("a number was lost: blade %v, depth %v, in %q\n%s\n%s", blade, depth, h.names(), one.Text(), two.Text())
		}
		for _, s := range []*ptytest.Screen{one, two} {
			if !strings.Contains(s.Text(), question) {
				continue
			}
			asked++
			s.Shows("knife (mine ")
			s.Type("y")
			s.Lacks(question)
			s.Type(home_ + down + down + strings.Repeat(down, 7) + "123.5\r")
			savedWith(s, 2, 123.5)
			if blade, depth := h.kept(); !blade || !depth {
				t.Errorf("after the answer a number is lost: %q", h.names())
			}
		}
		if asked > 0 {
			return
		}
	}
	t.Error("it never came to a change on both sides")
}

// kept tells which of the two numbers is in some file of the folder.
func (h *home) kept() (blade, depth bool) {
	for _, n := range h.names() {
		if filepath.Ext(n) == ".toml" && !strings.HasPrefix(n, ".") {
			o := decode(h.t, filepath.Join(filepath.Dir(h.path), n)).Outline
			blade, depth = blade || o.Blade == 142.5, depth || o.Depth == 31.5
		}
	}
	return blade, depth
}

// TestEditedByHand changes the open file in an editor: well, and then badly.
func TestEditedByHand(t *testing.T) {
	t.Parallel()
	h := newHome(t, aKnife())
	s := h.open(160, 45)
	p := aKnife()
	p.Outline.Blade = 133.5
	h.write(p)
	s.Shows("was changed by another program")
	savedWith(s, 0, 133.5)

	broken := append(file.Encode(p), "\n[knife\n"...)
	if err := os.WriteFile(h.path, broken, 0o600); err != nil {
		t.Fatal(err)
	}
	s.Shows("can't be loaded")
	s.Shows("the file was damaged by another program")
	s.Type(home_ + down + down + down + pasted("31.5") + "\r")
	s.Shows("Changed on both sides")
	if got, err := os.ReadFile(h.path); err != nil || !bytes.Equal(got, broken) {
		t.Error("what was edited by hand was written over")
	}
	s.Type("y")
	s.Lacks("Changed on both sides")
	savedWith(s, 1, 31.5)
	if got, err := os.ReadFile(h.path); err != nil || !bytes.Equal(got, broken) {
		t.Error("what was edited by hand was written over")
	}
	mine := ""
	for _, n := range h.names() {
		if strings.HasPrefix(n, "knife (mine ") {
			mine = n
		}
	}
	if mine == "" {
		t.Fatalf("ours was not kept: %q", h.names())
	}
	if o := decode(t, filepath.Join(filepath.Dir(h.path), mine)).Outline; o.Depth != 31.5 || o.Blade != 133.5 {
		t.Errorf("ours holds %+v", o)
	}
}

// TestGoneAndBack: the file is away for a while, as on a share that was put
// down. What comes back is taken for what it is.
func TestGoneAndBack(t *testing.T) {
	t.Parallel()
	for _, changed := range []bool{false, true} {
		for _, noticed := range []int{0, 3} {
			d := newDesk(t, storetest.New(), aKnife())
			away := d.path + ".away"
			if err := os.Rename(d.path, away); err != nil {
				t.Fatal(err)
			}
			d.seconds(noticed)
			if noticed > 0 {
				d.shows("moved or deleted")
			}
			if changed {
				theirs := aKnife()
				theirs.Outline.Depth = 31.5
				if err := os.WriteFile(away, file.Encode(theirs), 0o600); err != nil {
					t.Fatal(err)
				}
			}
			if err := os.Rename(away, d.path); err != nil {
				t.Fatal(err)
			}
			d.blade("130")
			d.seconds(5)
			found := blades(t, filepath.Dir(d.path))
			if found[130] == "" || changed && found[110] != "knife.toml" {
				t.Errorf("changed %v, noticed after %d s: in the files %v\n%s", changed, noticed, found, d.screen())
			}
			if asks := strings.Contains(d.screen(), question); asks != changed {
				t.Errorf("changed %v, noticed after %d s: asks %v", changed, noticed, asks)
			}
		}
	}
}
