package shelfpane

import (
	"fmt"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project/shelf"
)

// From nothing to the first screen of 10,000 projects, and to the one with the batch
// that fills it.
func BenchmarkFirstScreen(b *testing.B) {
	dir := tenThousand(b)
	for _, batches := range []int{0, 1} {
		b.Run(fmt.Sprintf("batches=%d", batches), func(b *testing.B) {
			for b.Loop() {
				m := New((&rig{now: noon}).options(dir))
				m.SetSize(160, 45)
				look := m.Init()
				m, cmd := m.Update(look())
				for range batches {
					m, cmd = m.Update(cmd())
				}
				if !strings.Contains(m.View(), "10000 projects") {
					b.Fatal("no projects")
				}
			}
		})
	}
}

// large is a shelf of 10,000 that is read.
func large() Model {
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
	m, _ := large().Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("/")})
	for b.Loop() {
		m, _ = m.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("9")})
		m, _ = m.Update(tea.KeyMsg{Type: tea.KeyBackspace})
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
		m, _ = m.Update(batchMsg{run: m.scan.run, entries: batch})
	}
}

// How long it takes until all of 10,000 files are read.
func BenchmarkFill(b *testing.B) {
	dir := tenThousand(b)
	for b.Loop() {
		m := New((&rig{now: noon}).options(dir))
		m.SetSize(160, 45)
		m, cmd := m.Update(m.Init()())
		for cmd != nil {
			m, cmd = m.Update(cmd())
		}
		if m.scan.left > 0 {
			b.Fatal("not all are read")
		}
	}
}
