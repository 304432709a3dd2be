package shelfpane

import (
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project/shelf"
	"chape/project/shop"
	"chape/ui/act"
)

// The first batch fills a screen soon; the later ones are large enough for the sorting
// after each not to matter.
const (
	firstBatch = 50
	laterBatch = 250
)

// scanning is the look at the folder that is under way.
type scanning struct {
	run  int // the newest look; what an older one brings is dropped
	left int // files still to be read
	seen bool
	err  error // why the folder can't be read
}

type (
	lookedMsg struct {
		run     int
		scan    *shelf.Scan
		entries []shelf.Entry
		err     error
	}
	batchMsg struct {
		run     int
		scan    *shelf.Scan
		entries []shelf.Entry
		left    int
	}
)

// look has the folder looked at, and what has changed in it read batch by batch. It may be
// asked for at any time.
func (m *Model) look() []act.Msg {
	m.scan.run++
	run, s := m.scan.run, m.o.Shelf
	return do(func() tea.Msg {
		scan, err := s.Look()
		if err != nil {
			return lookedMsg{run: run, err: err}
		}
		return lookedMsg{run: run, scan: scan, entries: scan.Entries()}
	})
}

func next(run int, scan *shelf.Scan, n int) []act.Msg {
	return do(func() tea.Msg {
		entries := scan.Next(n)
		return batchMsg{run, scan, entries, scan.Left()}
	})
}

// looked takes the names in. Of a file that has changed, what it said before is shown
// until it is read.
func (m *Model) looked(msg lookedMsg) []act.Msg {
	if msg.run != m.scan.run {
		return nil
	}
	m.scan.seen, m.scan.err = true, msg.err
	if msg.err != nil {
		m.scan.left = 0
		return nil
	}
	before := m.places()
	for i, e := range msg.entries {
		if at, ok := before[e.Path]; ok && e.State == shelf.Unread {
			msg.entries[i] = m.entries[at]
		}
	}
	m.setEntries(msg.entries)
	if m.scan.left = msg.scan.Left(); m.scan.left == 0 {
		return nil
	}
	return next(msg.run, msg.scan, firstBatch)
}

func (m *Model) batch(msg batchMsg) []act.Msg {
	if msg.run != m.scan.run {
		return nil
	}
	places, entries := m.places(), slices.Clone(m.entries)
	for _, e := range msg.entries {
		if at, ok := places[e.Path]; ok {
			entries[at] = e
		}
	}
	m.setEntries(entries)
	if m.scan.left = msg.left; m.scan.left == 0 {
		return nil
	}
	return next(msg.run, msg.scan, laterBatch)
}

// places finds entries by their paths.
func (m *Model) places() map[string]int {
	places := make(map[string]int, len(m.entries))
	for i := range m.entries {
		places[m.entries[i].Path] = i
	}
	return places
}

// setEntries shows other entries; the choice stays on its project.
func (m *Model) setEntries(entries []shelf.Entry) {
	chosen, ok := m.Chosen()
	shelf.Sort(entries, m.o.Clock().Round(0))
	m.entries, m.queue = entries, shop.Queue{}
	seen := make(map[string]bool, len(entries))
	m.twice = map[string]bool{}
	for i := range entries {
		if seen[entries[i].Title] {
			m.twice[entries[i].Title] = true
		}
		seen[entries[i].Title] = true
	}
	m.refindFor(chosen.Path, ok && m.moved)
}

// refind looks again for what is typed; the first one found is chosen.
func (m *Model) refind() { m.refindFor("", false) }

func (m *Model) refindFor(path string, follow bool) {
	q := shelf.ParseQuery(m.find.Text())
	m.shown = make([]int, 0, len(m.entries))
	at := 0
	for i := range m.entries {
		if !q.Finds(m.entries[i]) {
			continue
		}
		if follow && m.entries[i].Path == path {
			at = len(m.shown)
		}
		m.shown = append(m.shown, i)
	}
	if !follow {
		m.moved = false
	}
	m.list.At = at
	m.scroll()
}

func warn(text string) []act.Msg { return []act.Msg{act.Say{Text: text, Warn: true}} }

func say(text string) []act.Msg { return []act.Msg{act.Say{Text: text}} }

func do(work tea.Cmd) []act.Msg { return []act.Msg{act.Do(work)} }
