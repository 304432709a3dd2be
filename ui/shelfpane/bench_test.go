package shelfpane

import (
	"fmt"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project/shelf"
	"chape/project/store"
	"chape/ui/act"
	"chape/ui/part"
	"chape/ui/test/rig"
)

// From nothing to the first screen of 10,000 projects, and to the one with the batch
// that fills it.
func BenchmarkFirstScreen(b *testing.B) {
	dir := tenThousand(b)
	for _, batches := range []int{0, 1} {
		b.Run(fmt.Sprintf("batches=%d", batches), func(b *testing.B) {
			for b.Loop() {
				m := onDisk(dir)
				out := tell(m, act.InHand{Is: true})
				for range batches + 1 {
					out = tell(m, work(out)())
				}
				if !strings.Contains(m.View(), "10000 projects") {
					b.Fatal("no projects")
				}
			}
		})
	}
}

func onDisk(dir string) *Model {
	m := New(Options{Shelf: shelf.Open(store.OSLockingIn(""), dir), Clock: func() time.Time { return noon }})
	m.SetSize(160, 45)
	return m
}

func tell(m *Model, msg tea.Msg) []act.Msg {
	_, out := m.Update(msg)
	return out
}

// work is the last thing to do of an answer.
func work(out []act.Msg) act.Do { return out[len(out)-1].(act.Do) }

// large is a shelf of 10,000 that is read.
func large() *Model {
	m := New(Options{Clock: func() time.Time { return noon }})
	m.SetSize(160, 45)
	entries := make([]shelf.Entry, 10000)
	for i := range entries {
		entries[i] = shelf.Entry{Path: fmt.Sprintf("/shelf/knife %d.toml", i), Title: fmt.Sprintf("Knife %d", i), State: shelf.InHand, Step: "Dry"}
	}
	m.scan.seen = true
	m.setEntries(entries)
	return m
}

// A letter typed into the words looked for, taken out again, and the new screen.
func BenchmarkFindKey(b *testing.B) {
	m := large()
	key := func(name string) { tell(m, part.Press{KeyMsg: rig.Key(name)}) }
	key("/")
	for b.Loop() {
		key("9")
		key("backspace")
		if len(m.View()) == 0 {
			b.Fatal("no view")
		}
	}
}

// How long a batch that comes in keeps the keys waiting.
func BenchmarkBatch(b *testing.B) {
	m := large()
	batch := make([]shelf.Entry, laterBatch)
	for i := range batch {
		batch[i] = m.entries[(i*37)%len(m.entries)]
		batch[i].Modified = noon
	}
	for b.Loop() {
		tell(m, batchMsg{run: m.scan.run, entries: batch})
	}
}

// How long it takes until all of 10,000 files are read.
func BenchmarkFill(b *testing.B) {
	dir := tenThousand(b)
	for b.Loop() {
		m := onDisk(dir)
		out := tell(m, act.InHand{Is: true})
		for len(out) > 0 {
			out = tell(m, work(out)())
		}
		if m.scan.left > 0 {
			b.Fatal("not all are read")
		}
	}
}
