//go:build !windows

package endtoend

import (
	"io/fs"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project/store"
	"chape/project/store/storetest"
)

// TestFullDisk: the failure is shown until a save works, work goes on
// meanwhile, and nothing of it is lost.
func TestFullDisk(t *testing.T) {
	t.Parallel()
	disk := storetest.New()
	d := newDesk(t, disk, aKnife())
	d.blade("120")
	if !d.saved() || d.onDisk().Outline.Blade != 120 {
		t.Fatalf("not saved on a disk with room:\n%s", d.screen())
	}
	disk.Limited = true
	d.blade("130")
	d.shows("NOT SAVED: the disk is full")
	if got := d.onDisk().Outline.Blade; got != 120 {
		t.Errorf("in the file: %v", got)
	}
	d.seconds(90)
	d.shows("NOT SAVED")
	d.blade("140") // work goes on
	d.shows("NOT SAVED")
	d.letters("u")
	d.blade("150")
	disk.Limited = false
	d.settles()
	if got := d.onDisk().Outline.Blade; got != 150 {
		t.Errorf("in the file: %v", got)
	}
	d.lacks("NOT SAVED")
}

// fullFolder is a disk on which one folder takes no more files.
type fullFolder struct {
	store.FS
	dir string
}

func (f *fullFolder) Create(name string, perm fs.FileMode) (store.File, error) {
	if filepath.Dir(name) == f.dir {
		return nil, &fs.PathError{Op: "open", Path: name, Err: syscall.ENOSPC}
	}
	return f.FS.Create(name, perm)
}

// TestQuitOnAFullDisk: quitting says what would be lost, and afterwards where
// it was put instead.
func TestQuitOnAFullDisk(t *testing.T) {
	t.Parallel()
	disk := &fullFolder{FS: plainDisk}
	d := newDesk(t, disk, aKnife())
	disk.dir = filepath.Dir(d.path)
	d.blade("130")
	d.letters("q")
	d.shows("the disk is full")
	d.shows("Quitting puts your work into a file of its own")
	if d.quit {
		t.Fatal("it quits without a question")
	}
	d.letters("s") // tries again, in vain
	d.shows("Quitting puts your work into a file of its own")
	d.key(tea.KeyEsc)
	d.shows("NOT SAVED")
	d.letters("q")
	d.letters("q")
	if !d.quit {
		t.Fatalf("it does not quit:\n%s", d.screen())
	}
	err := d.m.Finish(nil)
	if err == nil || !strings.Contains(err.Error(), "the disk is full") || !strings.Contains(err.Error(), d.aside) {
		t.Errorf("at the end it says %v", err)
	}
	if found := blades(t, filepath.Dir(d.path), d.aside); found[110] != "knife.toml" || found[130] == "" {
		t.Errorf("in the files: %v", found)
	}
}

// TestNoDiskAtAll: where nothing takes the work, that is said and no more can
// be done.
func TestNoDiskAtAll(t *testing.T) {
	t.Parallel()
	disk := storetest.New()
	d := newDesk(t, disk, aKnife())
	disk.Limited = true
	d.blade("130")
	err := d.m.Finish(nil)
	if err == nil || !strings.Contains(err.Error(), "the last changes are lost") {
		t.Errorf("at the end it says %v", err)
	}
}

// TestEachCallOfASaveFails lets each system call of a save fail, once, and
// then each kind of call for as long as it lasts.
func TestEachCallOfASaveFails(t *testing.T) {
	t.Parallel()
	calls := savingCalls(t)
	if len(calls) < 8 {
		t.Fatalf("a save makes %d calls only: %q", len(calls), calls)
	}
	shown, kinds := 0, map[string]bool{}
	for i, call := range calls {
		if callFails(t, call, func(d *storetest.Disk) { d.FailAt = len(d.Calls()) + 1 + i }) {
			shown++
		}
		if kind := strings.Fields(call)[0]; !kinds[kind] {
			kinds[kind] = true
			callFails(t, "every "+kind, func(d *storetest.Disk) { d.FailOn = kind })
		}
	}
	if shown < 8 {
		t.Errorf("only %d failures were shown", shown)
	}
	t.Logf("%d calls of %d kinds; %d failures were shown, the others did no harm", len(calls), len(kinds), shown)
}

// callFails makes a change while a call fails, and more while it does not any more.
// The screen never says saved for what is not in the file, and in the end
// everything is. It tells whether a failure was shown.
func callFails(t *testing.T, call string, fail func(*storetest.Disk)) (shown bool) {
	t.Helper()
	disk := storetest.New()
	d := newDesk(t, disk, aKnife())
	fail(disk)
	disk.Err = syscall.EIO
	d.blade("130")
	if shown = !d.saved(); shown {
		d.shows("NOT SAVED")
	} else if got := d.onDisk().Outline.Blade; got != 130 {
		t.Errorf("%s fails: called saved, in the file %v", call, got)
	}
	d.letters("u")
	d.blade("140")
	disk.FailAt, disk.FailOn = 0, ""
	d.settles()
	if got := d.onDisk().Outline.Blade; got != 140 {
		t.Errorf("%s fails: afterwards in the file %v", call, got)
	}
	if found := blades(t, filepath.Dir(d.path)); len(found) != 1 {
		t.Errorf("%s fails: in the folder %v", call, found)
	}
	return shown
}

// TestDiskDiesInASave lets the disk die at each call of a save, as when the
// power fails: what the next start finds is whole, and no older than what was
// called saved.
func TestDiskDiesInASave(t *testing.T) {
	t.Parallel()
	for i := range savingCalls(t) {
		disk := storetest.New()
		d := newDesk(t, disk, aKnife())
		disk.CrashAt = len(disk.Calls()) + 1 + i
		d.blade("130")
		wasSaved := d.saved()
		again := deskOn(t, storetest.New(), d.path)
		got := again.onDisk().Outline.Blade
		if got != 130 && (got != 110 || wasSaved) {
			t.Errorf("dead at call %d: in the file %v, called saved: %v", i+1, got, wasSaved)
		}
		again.blade("150")
		if !again.saved() || again.onDisk().Outline.Blade != 150 {
			t.Errorf("dead at call %d: the next run does not save", i+1)
		}
	}
}

// savingCalls are the system calls from a commit to the word saved.
func savingCalls(t *testing.T) []string {
	t.Helper()
	disk := storetest.New()
	d := newDesk(t, disk, aKnife())
	before := len(disk.Calls())
	d.blade("130")
	if !d.saved() {
		t.Fatal("a good disk does not save")
	}
	return disk.Calls()[before:]
}
