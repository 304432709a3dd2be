package shelf

import "testing"

// The first screen of 10,000 projects: all names, and the 50 changed last.
func BenchmarkFirstScreen(b *testing.B) {
	dir := many(b, 10000)
	for b.Loop() {
		sc, err := open(dir).Look()
		if err != nil {
			b.Fatal(err)
		}
		entries := sc.Entries()
		if len(entries) != 10000 || len(sc.Next(50)) != 50 {
			b.Fatal("not all of them")
		}
		Sort(entries, now)
	}
}

// All of them read for the first time.
func BenchmarkWhole(b *testing.B) {
	dir := many(b, 10000)
	for b.Loop() {
		if len(all(b, open(dir))) != 10000 {
			b.Fatal("not all of them")
		}
	}
}

// A second look, where nothing has changed.
func BenchmarkRefresh(b *testing.B) {
	s := open(many(b, 10000))
	all(b, s)
	for b.Loop() {
		sc, err := s.Look()
		if err != nil || sc.Left() != 0 {
			b.Fatal(err, sc.Left())
		}
	}
}

// What is asked every second, where nothing has changed.
func BenchmarkHolds(b *testing.B) {
	s := open(many(b, 10000))
	all(b, s)
	at := s.fsys.Now().Add(2 * settle) // the folder has come to rest
	s.lookAtAll(at)
	for b.Loop() {
		if len(s.Holds(at)) == 0 {
			b.Fatal("no holds")
		}
	}
}

func BenchmarkFind(b *testing.B) {
	entries := all(b, open(many(b, 10000)))
	for b.Loop() {
		q, n := ParseQuery("knife 99"), 0
		for _, e := range entries {
			if q.Finds(e) {
				n++
			}
		}
		if n != 280 {
			b.Fatal(n)
		}
	}
}
