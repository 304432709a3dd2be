//go:build linux

package endtoend

import (
	"os"
	"path/filepath"
	"runtime"
	"testing"
	"time"

	"chape/project"
	"chape/project/store"
)

const day = 24 * time.Hour

// pastHolds is a project with holds that run out in the next days.
func pastHolds() project.Project {
	p := aKnife()
	for i, hold := range []time.Duration{30 * time.Minute, 20 * time.Hour, 6 * day} {
		p.Steps[i].Hold, p.Steps[i].Latest, p.Steps[i].Started = hold, 2*hold, morning
	}
	return p
}

// usage is what stays in use after everything that can be freed has been.
func usage() (heap uint64, goroutines, files int) {
	runtime.GC()
	runtime.GC()
	var s runtime.MemStats
	runtime.ReadMemStats(&s)
	open, _ := os.ReadDir("/proc/self/fd")
	return s.HeapAlloc, runtime.NumGoroutine(), len(open)
}

// TestTenDays lets the clock tick through ten days with holds that fall due:
// every second with -measure, else every ten minutes. Nothing grows.
func TestTenDays(t *testing.T) {
	step := 10 * time.Minute
	if *measure {
		step = time.Second
	}
	d := newDesk(t, plainDisk, pastHolds())
	pass := func(span time.Duration) (ticks int) {
		for end := d.now.Add(span); d.now.Before(end); ticks++ {
			d.now = d.now.Add(step)
			d.send(d.second(d.now))
			_ = d.m.View() // as the renderer would
		}
		return ticks
	}
	pass(10 * time.Hour) // until everything has been made once
	heap, goroutines, files := usage()
	begun := time.Now()
	ticks := pass(10 * day)
	perTick := time.Since(begun) / time.Duration(ticks)
	heap2, goroutines2, files2 := usage()
	t.Logf("%d ticks of %v: %v each; heap %d kB before, %d kB after; goroutines %d, %d; files %d, %d",
		ticks, step, perTick, heap>>10, heap2>>10, goroutines, goroutines2, files, files2)
	if heap2 > heap+heap/10+64<<10 {
		t.Errorf("the heap grew from %d to %d bytes", heap, heap2)
	}
	if goroutines2 > goroutines || files2 > files {
		t.Errorf("left behind: goroutines %d, %d; open files %d, %d", goroutines, goroutines2, files, files2)
	}
	if entries, err := os.ReadDir(filepath.Dir(d.path)); err != nil || len(entries) > 2 {
		t.Errorf("in the folder: %v, %v", entries, err)
	}
}

// BenchmarkIdleTick is one second in which nothing happens: tick, look at the
// disk, and the screen.
func BenchmarkIdleTick(b *testing.B) {
	d := newDesk(b, store.OSLockingIn(""), pastHolds())
	d.send(d.second(d.now))
	b.ReportAllocs()
	for b.Loop() {
		d.now = d.now.Add(time.Second)
		d.send(d.second(d.now))
		_ = d.m.View()
	}
}
