package document

import (
	"errors"
	"testing"
	"time"

	"chape/project/store"
)

// TestGoneIsUnsaved: a file that was deleted holds nothing that was saved; it is
// made anew when that is asked for, and tried until it works.
func TestGoneIsUnsaved(t *testing.T) {
	d := opened(1)
	d.Gone()
	if d.State() != Gone || !d.Unsaved() {
		t.Fatalf("state %v, unsaved %v", d.State(), d.Unsaved())
	}
	if s, ok := d.NextSave(start); ok {
		t.Errorf("made anew without being asked: %+v", s)
	}
	s, ok := d.SaveNow()
	if !ok || !s.Expect.IsZero() {
		t.Fatalf("asked to save: %+v, %v", s, ok)
	}
	d.SaveDone(s, s.Expect, errors.New("no such folder"), start)
	if s, ok = d.NextSave(start.Add(time.Minute)); !ok || d.State() == Saved {
		t.Fatalf("not tried again, state %v", d.State())
	}
	d.SaveDone(s, stampOf(2), nil, start)
	if d.State() != Saved || d.Unsaved() {
		t.Errorf("after it was made: state %v", d.State())
	}
}

func TestGoneAndBackAsItWas(t *testing.T) {
	d := opened(1)
	d.Gone()
	if got := d.DiskChanged(Version{Project: sample(), Stamp: stampOf(1)}); got != Nothing || d.State() != Saved {
		t.Errorf("%v, state %v", got, d.State())
	}
	d.Gone()
	if got := d.DiskChanged(other(5)); got != Loaded || d.State() != Saved {
		t.Errorf("back with another content: %v, state %v", got, d.State())
	}
}

// TestDamagedIsUnsaved: what can't be loaded is never replaced: ours goes beside it.
func TestDamagedIsUnsaved(t *testing.T) {
	broken := Version{Stamp: stampOf(9), Err: errors.New("not a project")}
	for _, away := range []bool{false, true} {
		d := opened(1)
		if away {
			d.Gone()
		}
		d.DiskChanged(broken)
		if d.State() != Damaged || !d.Unsaved() || d.Damage() == nil {
			t.Fatalf("state %v, unsaved %v, %v", d.State(), d.Unsaved(), d.Damage())
		}
		if s, ok := d.NextSave(start); ok {
			t.Errorf("saved without being asked: %+v", s)
		}
		s, ok := d.SaveNow()
		if !ok || !s.Expect.Same(stampOf(1)) {
			t.Fatalf("asked to save: %+v, %v", s, ok)
		}
		if !d.SaveDone(s, s.Expect, &store.ErrChanged{Path: "a.toml", Now: stampOf(9)}, start) {
			t.Fatal("not put beside")
		}
		d.Divide(broken, "a mine.toml", s.Rev, stampOf(2))
		d.Ours()
		if d.State() != Saved || d.Path() != "a mine.toml" {
			t.Errorf("state %v in %q", d.State(), d.Path())
		}
	}
	d := opened(1)
	d.DiskChanged(broken)
	d.Restamp(stampOf(1))
	if d.State() != Saved {
		t.Errorf("mended outside: state %v", d.State())
	}
	d.DiskChanged(broken)
	if d.DiskChanged(other(5)); d.State() != Saved || d.Committed().Sheath.Leather != 5 {
		t.Errorf("mended by another program: state %v", d.State())
	}
}
