package document

import (
	"errors"
	"fmt"
	"math/rand"
	"reflect"
	"testing"
	"time"

	"chape/calc"
	"chape/calc/knife"
	"chape/calc/length"
	"chape/project"
	"chape/project/steps"
	"chape/project/store"
)

var start = time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC)

// planOf stands in for the real plan: the document only hands it on. It can't
// plan a leather of no thickness.
func planOf(in calc.Input) (*calc.Plan, error) {
	if in.Sheath.Leather <= 0 {
		return nil, errors.New("no leather")
	}
	return &calc.Plan{Input: in}, nil
}

func sample() project.Project {
	return project.Project{
		Title:  "Test knife",
		Sheath: calc.Sheath{Leather: 3.2},
		Knife:  knife.Knife{Stations: []knife.Station{{At: 0}, {At: 100}}},
		Steps:  []steps.Step{{Title: "Fold"}, {Title: "Sew"}},
	}
}

func opened(stamp byte) *Doc {
	return New(sample(), "a.toml", stampOf(stamp), Options{Make: planOf, Limits: calc.DefaultLimits()})
}

func stampOf(b byte) store.Stamp {
	s := store.Stamp{Size: int64(b), Taken: start}
	s.Sum[0] = b
	return s
}

func leather(mm length.Length) func(*project.Project) error {
	return func(p *project.Project) error { p.Sheath.Leather = mm; return nil }
}

func preview(mm length.Length) func(*project.Project) {
	return func(p *project.Project) { p.Sheath.Leather = mm }
}

func TestPreviewLeavesNoTrace(t *testing.T) {
	d := opened(1)
	d.Preview(preview(1))
	d.Preview(func(p *project.Project) { p.Knife.Stations[0].At = 9 })
	s := d.Snapshot(start)
	if s.Project.Sheath.Leather != 3.2 || s.Project.Knife.Stations[0].At != 9 {
		t.Errorf("a preview stands on another: %+v", s.Project)
	}
	d.Drop()
	if got := d.Snapshot(start).Project; !reflect.DeepEqual(got, sample()) {
		t.Errorf("after Drop: %+v", got)
	}
	if d.Unsaved() {
		t.Error("a preview wants to be saved")
	}
}

func TestLastGoodPlanStays(t *testing.T) {
	d := opened(1)
	d.Preview(preview(0))
	s := d.Snapshot(start)
	if s.Plan == nil || s.Plan.Input.Sheath.Leather != 3.2 || !s.Stale || s.Err == nil {
		t.Errorf("plan %v, stale %v, err %v", s.Plan, s.Stale, s.Err)
	}
}

func TestRefusedCommitChangesNothing(t *testing.T) {
	d := New(sample(), "a.toml", stampOf(1), Options{Make: planOf, Check: func(p project.Project) error {
		if p.Sheath.Leather > 10 {
			return errors.New("too thick")
		}
		return nil
	}})
	err := d.Commit("leather", func(p *project.Project) error {
		p.Steps[0].Title = "spoilt"
		return errors.New("no")
	})
	if err == nil || d.Committed().Steps[0].Title != "Fold" {
		t.Errorf("err %v, step %q", err, d.Committed().Steps[0].Title)
	}
	if err := d.Commit("leather", leather(11)); err == nil || d.Unsaved() {
		t.Errorf("err %v, unsaved %v", err, d.Unsaved())
	}
	if _, ok := d.Undo(); ok {
		t.Error("a refused commit can be undone")
	}
}

// TestUndoRandom walks through random changes and compares with a plain list.
func TestUndoRandom(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	d := opened(1)
	states := []length.Length{3.2}
	at := 0
	for i := range 5000 {
		switch r.Intn(4) {
		case 0, 1:
			v := length.Length(1 + float64(i)/1000)
			if err := d.Commit(fmt.Sprint(v), leather(v)); err != nil {
				t.Fatal(err)
			}
			states = append(states[:at+1], v)
			at++
			if len(states) > depth+1 {
				states, at = states[1:], at-1
			}
		case 2:
			if _, ok := d.Undo(); ok != (at > 0) {
				t.Fatalf("step %d: Undo = %v at %d", i, ok, at)
			} else if ok {
				at--
			}
		case 3:
			if _, ok := d.Redo(); ok != (at < len(states)-1) {
				t.Fatalf("step %d: Redo = %v at %d of %d", i, ok, at, len(states))
			} else if ok {
				at++
			}
		}
		if got := d.Committed().Sheath.Leather; got != states[at] {
			t.Fatalf("step %d: leather %v, want %v", i, got, states[at])
		}
	}
}

// TestNothingIsShared changes every list of what was handed out and of what
// was handed in.
func TestNothingIsShared(t *testing.T) {
	p := sample()
	d := New(p, "", store.Stamp{}, Options{Make: planOf})
	p.Steps[0].Title = "spoilt"
	p.Knife.Stations[0].At = 77
	if err := d.Commit("x", func(q *project.Project) error { q.Steps[1].Title = "Glue"; return nil }); err != nil {
		t.Fatal(err)
	}
	d.Undo()
	if !reflect.DeepEqual(d.Committed(), sample()) {
		t.Errorf("got %+v", d.Committed())
	}
	for i, f := 0, reflect.TypeOf(project.Project{}); i < f.NumField(); i++ {
		switch f.Field(i).Name {
		case "Fits", "Carried", "Earlier", "Steps", "Patterns", "Quotes", "Weigh", "Added", "Knife":
		default:
			if k := f.Field(i).Type.Kind(); k == reflect.Slice || k == reflect.Map || k == reflect.Pointer {
				t.Errorf("clone does not know the list %s", f.Field(i).Name)
			}
		}
	}
}

func TestSavesAreSerialised(t *testing.T) {
	d := opened(1)
	d.Commit("a", leather(1))
	first, ok := d.NextSave(start)
	if !ok || first.Expect != stampOf(1) {
		t.Fatalf("first save %v, %v", first, ok)
	}
	d.Commit("b", leather(2))
	d.Commit("c", leather(3))
	if _, ok := d.NextSave(start); ok {
		t.Fatal("two saves at once")
	}
	d.SaveDone(first, stampOf(2), nil, start)
	second, ok := d.NextSave(start)
	if !ok || second.Project.Sheath.Leather != 3 || second.Expect != stampOf(2) {
		t.Fatalf("second save %+v, %v", second, ok)
	}
	if d.State() != Saving {
		t.Errorf("state %v while saving", d.State())
	}
	d.SaveDone(second, stampOf(3), nil, start)
	if d.State() != Saved || d.Unsaved() {
		t.Errorf("state %v, unsaved %v at the end", d.State(), d.Unsaved())
	}
}

func TestFailureIsShownUntilATryWorks(t *testing.T) {
	d := opened(1)
	d.Commit("a", leather(1))
	now := start
	for range 10 {
		s, ok := d.NextSave(now)
		if !ok {
			t.Fatal("no further try")
		}
		d.SaveDone(s, s.Expect, errors.New("the disk is full"), now)
		if _, ok := d.NextSave(now); ok || d.State() != Failed {
			t.Fatalf("tried again at once, or state %v", d.State())
		}
		now = now.Add(mostWait)
	}
	// The clock set back must not put the next try off for hours.
	if s, ok := d.NextSave(now.Add(-5 * time.Hour)); !ok {
		t.Error("no try with the clock set back")
	} else {
		d.SaveDone(s, stampOf(4), nil, now)
	}
	if d.State() != Saved {
		t.Errorf("state %v", d.State())
	}
}

func TestDeletedFileIsMadeAnew(t *testing.T) {
	d := opened(1)
	d.Commit("a", leather(1))
	s, _ := d.NextSave(start)
	if d.SaveDone(s, s.Expect, &store.ErrChanged{Path: "a.toml"}, start) {
		t.Error("a missing file counts as changed on both sides")
	}
	s, ok := d.NextSave(start.Add(time.Minute))
	if !ok || !s.Expect.IsZero() {
		t.Errorf("next save expects %v, %v", s.Expect, ok)
	}
	if d.SaveDone(s, s.Expect, &store.ErrExists{Path: "a.toml"}, start) {
		t.Error("a file that is there again counts as theirs before anyone has looked at it")
	}
	if s, ok = d.NextSave(start.Add(time.Minute)); !ok || !s.Expect.Same(stampOf(1)) {
		t.Errorf("the save after it is back expects %v, %v", s.Expect, ok)
	}
	if !d.SaveDone(s, s.Expect, &store.ErrChanged{Path: "a.toml", Now: stampOf(9)}, start) {
		t.Error("another file in its place does not count as theirs")
	}
}

func other(mm length.Length) Version {
	p := sample()
	p.Sheath.Leather = mm
	return Version{Project: p, Stamp: stampOf(9)}
}

func TestDiskChanged(t *testing.T) {
	d := opened(1)
	if got := d.DiskChanged(Version{Project: sample(), Stamp: stampOf(1)}); got != Nothing {
		t.Errorf("our own version: %v", got)
	}
	if got := d.DiskChanged(other(5)); got != Loaded || d.Committed().Sheath.Leather != 5 || d.Unsaved() {
		t.Errorf("%v, leather %v, unsaved %v", got, d.Committed().Sheath.Leather, d.Unsaved())
	}
	if _, ok := d.Undo(); !ok || d.Committed().Sheath.Leather != 3.2 || !d.Unsaved() {
		t.Errorf("undo did not bring ours back: %v", d.Committed().Sheath.Leather)
	}
	v := other(6)
	v.Stamp = stampOf(10)
	if got := d.DiskChanged(v); got != BothSide {
		t.Errorf("changed here as well: %v", got)
	}
	broken := Version{Stamp: stampOf(11), Err: errors.New("not a project")}
	if got := opened(1).DiskChanged(broken); got != Refused {
		t.Errorf("unreadable: %v", got)
	}
}

func TestDivided(t *testing.T) {
	divide := func() *Doc {
		d := opened(1)
		d.Commit("a", leather(1))
		s, _ := d.NextSave(start)
		if !d.SaveDone(s, s.Expect, &store.ErrChanged{Path: "a.toml", Now: stampOf(9)}, start) {
			t.Fatal("not noticed")
		}
		if _, ok := d.SaveNow(); ok {
			t.Fatal("another save before both sides are kept")
		}
		d.Divide(other(5), "a ours.toml", s.Rev, stampOf(2))
		d.Commit("b", leather(2))
		s, ok := d.NextSave(start)
		if !ok || s.Path != "a ours.toml" || s.Expect != stampOf(2) {
			t.Fatalf("changes while divided go to %+v", s)
		}
		d.SaveDone(s, stampOf(3), nil, start)
		return d
	}
	d := divide()
	d.Theirs()
	if d.Path() != "a.toml" || d.Committed().Sheath.Leather != 5 || d.State() != Saved || d.Stamp() != stampOf(9) {
		t.Errorf("theirs: %q, %v, state %v", d.Path(), d.Committed().Sheath.Leather, d.State())
	}
	d = divide()
	d.Ours()
	if d.Path() != "a ours.toml" || d.Committed().Sheath.Leather != 2 || d.State() != Saved {
		t.Errorf("ours: %q, %v, state %v", d.Path(), d.Committed().Sheath.Leather, d.State())
	}
}

func TestLooseCopyTouchesNothing(t *testing.T) {
	d := New(sample(), "", store.Stamp{}, Options{Make: planOf})
	d.Commit("a", leather(1))
	if _, ok := d.NextSave(start); ok || d.State() != Loose {
		t.Errorf("state %v", d.State())
	}
	d.Kept("new.toml", d.Rev(), stampOf(1))
	if d.State() != Saved || d.Path() != "new.toml" {
		t.Errorf("after Kept: state %v, path %q", d.State(), d.Path())
	}
	d.Commit("b", leather(2))
	if s, ok := d.NextSave(start); !ok || s.Expect != stampOf(1) {
		t.Errorf("after Kept: %+v, %v", s, ok)
	}
}

// TestOneKeyOnePlan: what was previewed is not planned again when it is kept or dropped,
// nor is anything when no measure changes.
func TestOneKeyOnePlan(t *testing.T) {
	made := 0
	d := New(sample(), "a.toml", stampOf(1), Options{Limits: calc.DefaultLimits(), Make: func(in calc.Input) (*calc.Plan, error) {
		made++
		return planOf(in)
	}})
	for _, step := range []struct {
		what string
		do   func()
		want int
	}{
		{"opening", func() {}, 1},
		{"a digit", func() { d.Preview(func(p *project.Project) { p.Sheath.Leather = 2 }) }, 1},
		{"keeping it", func() { d.Commit("leather", leather(2)) }, 0},
		{"another", func() { d.Preview(func(p *project.Project) { p.Sheath.Leather = 4 }) }, 1},
		{"Esc", d.Drop, 0},
		{"a title", func() { d.Commit("title", func(p *project.Project) error { p.Title = "x"; return nil }) }, 0},
		{"undo of the title", func() { d.Undo() }, 0},
		{"undo of the leather", func() { d.Undo() }, 1},
	} {
		if step.do(); made != step.want {
			t.Errorf("%s: %d plans, want %d", step.what, made, step.want)
		}
		made = 0
	}
	if _, shown := leatherOf(d); shown != sample().Sheath.Leather {
		t.Errorf("in the end the leather is %v", shown)
	}
}

func leatherOf(d *Doc) (committed, shown length.Length) {
	return d.Committed().Sheath.Leather, d.Snapshot(start).Project.Sheath.Leather
}
