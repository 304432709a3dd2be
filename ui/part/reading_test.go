package part

import (
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
)

// sent is a key and how many milliseconds after the one before it comes.
type sent struct {
	after int
	key   string // "cr", "lf", or what is typed
}

func keyOf(s string) tea.KeyMsg {
	switch s {
	case "cr":
		return tea.KeyMsg{Type: tea.KeyEnter}
	case "lf":
		return tea.KeyMsg{Type: tea.KeyCtrlJ}
	case " ":
		return tea.KeyMsg{Type: tea.KeySpace, Runes: []rune{' '}}
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(s)}
}

// last is what the last of the keys is taken for.
func last(keys []sent) Press {
	var (
		r   Reading
		p   Press
		now = time.Date(2026, 3, 2, 10, 0, 0, 0, time.UTC)
	)
	for _, k := range keys {
		now = now.Add(time.Duration(k.after) * time.Millisecond)
		p = r.Take(keyOf(k.key), now)
	}
	return p
}

func TestReading(t *testing.T) {
	for _, c := range []struct {
		name                        string
		keys                        []sent
		tool, echo, figure, command bool
	}{
		{"Enter alone", []sent{{0, "cr"}}, false, false, false, true},
		{"LF alone", []sent{{0, "lf"}}, false, false, false, true},
		{"a reading at 1 ms", []sent{{0, "1"}, {1, "1"}, {1, "4"}, {1, "cr"}}, true, false, true, false},
		{"a reading at 150 ms", []sent{{0, "1"}, {150, "1"}, {150, "4"}, {150, "cr"}}, true, false, true, false},
		{"a reading at 149 ms that ends with LF", []sent{{0, "1"}, {149, "1"}, {149, "4"}, {149, "lf"}}, true, false, true, false},
		{"its Enter at 151 ms", []sent{{0, "1"}, {150, "1"}, {150, "4"}, {151, "cr"}}, false, false, false, true},
		{"a digit at 151 ms before", []sent{{0, "1"}, {151, "1"}, {150, "4"}, {150, "cr"}}, true, false, false, false},
		{"two digits", []sent{{0, "1"}, {100, "4"}, {100, "cr"}}, true, false, false, false},
		{"with point, sign and unit", []sent{{0, "+"}, {9, "1"}, {9, "2"}, {9, "."}, {9, "7"}, {9, " "}, {9, "m"}, {9, "m"}, {9, "cr"}}, true, false, true, false},
		{"in one message", []sent{{0, "12.70"}, {1, "cr"}}, true, false, true, false},
		{"a word typed as fast", []sent{{0, "b"}, {90, "o"}, {90, "9"}, {90, "9"}, {90, "9"}, {90, "cr"}}, true, false, false, false},

		{"LF 150 ms after CR", []sent{{0, "cr"}, {150, "lf"}}, false, true, false, false},
		{"LF 151 ms after CR", []sent{{0, "cr"}, {151, "lf"}}, false, false, false, true},
		{"CR after CR", []sent{{0, "cr"}, {50, "cr"}}, false, false, false, true},
		{"CR 150 ms after a reading", []sent{{0, "8"}, {80, "0"}, {80, "cr"}, {150, "cr"}}, false, true, false, false},
		{"LF 150 ms after a reading", []sent{{0, "8"}, {80, "0"}, {80, "cr"}, {150, "lf"}}, false, true, false, false},
		{"CR after a reading's LF", []sent{{0, "8"}, {80, "0"}, {80, "lf"}, {80, "cr"}}, false, true, false, false},
		{"CR 151 ms after a reading", []sent{{0, "8"}, {80, "0"}, {80, "cr"}, {151, "cr"}}, false, false, false, true},
		{"the next reading's own Enter", []sent{{0, "8"}, {1, "cr"}, {1, "9"}, {1, "cr"}}, true, false, false, false},
		{"its LF", []sent{{0, "8"}, {1, "cr"}, {1, "9"}, {1, "cr"}, {1, "lf"}}, false, true, false, false},

		{"a letter alone", []sent{{0, "x"}}, false, false, false, true},
		{"a letter a second after a digit", []sent{{0, "4"}, {1000, "x"}}, false, false, false, false},
		{"a letter later", []sent{{0, "4"}, {1001, "x"}}, false, false, false, true},
		{"a letter after digit and Enter", []sent{{0, "4"}, {400, "cr"}, {500, "x"}}, false, false, false, false},
		{"a second letter after a digit", []sent{{0, "4"}, {600, "x"}, {400, "x"}}, false, false, false, false},
		{"letters on letters", []sent{{0, "j"}, {30, "j"}}, false, false, false, true},
		{"Space in a reading", []sent{{0, "4"}, {150, " "}}, false, false, false, false},
		{"Space before the next line", []sent{{0, "4"}, {9, "cr"}, {150, " "}}, false, false, false, false},
		{"Space after one", []sent{{0, "4"}, {151, " "}}, false, false, false, true},
		{"Space after a letter", []sent{{0, "j"}, {50, " "}}, false, false, false, true},
		{"the clock set back", []sent{{0, "4"}, {-3600_000, "cr"}}, false, false, false, true},
	} {
		p := last(c.keys)
		got := [4]bool{p.Tool(), p.Echo, p.Figure(), p.Command()}
		if want := [4]bool{c.tool, c.echo, c.figure, c.command}; got != want {
			t.Errorf("%s: tool, echo, figure, command = %v, want %v", c.name, got, want)
		}
	}
}

// An Enter behind letters alone is a hand's, however fast; near a digit or a reading it is not.
func TestByHand(t *testing.T) {
	for _, c := range []struct {
		name string
		keys []sent
		want bool
	}{
		{"Enter alone", []sent{{0, "cr"}}, false}, // which is a command as it is
		{"behind a letter", []sent{{0, "P"}, {40, "s"}, {40, "cr"}}, true},
		{"its LF", []sent{{0, "P"}, {40, "s"}, {40, "cr"}, {1, "lf"}}, false},
		{"a reading", []sent{{0, "1"}, {9, "4"}, {9, "cr"}}, false},
		{"a reading and its unit", []sent{{0, "1"}, {9, "4"}, {9, "m"}, {9, "m"}, {9, "cr"}}, false},
		{"a unit first", []sent{{0, "m"}, {9, "m"}, {9, "4"}, {9, "cr"}}, false},
		{"on the heels of a reading", []sent{{0, "1"}, {9, "cr"}, {9, "s"}, {9, "cr"}}, false},
		{"within a second of a digit", []sent{{0, "1"}, {800, "s"}, {100, "cr"}}, false},
		{"later", []sent{{0, "1"}, {1001, "s"}, {100, "cr"}}, true},
	} {
		if got := last(c.keys).ByHand(); got != c.want {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
		if last(c.keys).ByHand() && last(c.keys).Command() {
			t.Errorf("%s: a command everywhere", c.name)
		}
	}
}

// At every pace from 1 to 150 ms a character a reading has one Enter, however it ends.
func TestReadingAtEveryPace(t *testing.T) {
	for pace := 1; pace <= 150; pace++ {
		for _, ends := range [][]string{{"cr"}, {"lf"}, {"cr", "lf"}, {"cr", "cr"}, {"lf", "cr"}} {
			var r Reading
			now, enters := time.Date(2026, 3, 2, 10, 0, 0, 0, time.UTC), 0
			for range 3 { // of several lines
				for _, k := range append([]string{"1", "2", ".", "7"}, ends...) {
					now = now.Add(time.Duration(pace) * time.Millisecond)
					p := r.Take(keyOf(k), now)
					if p.Command() {
						t.Fatalf("%d ms, %v: %q is a command", pace, ends, k)
					}
					if p.Tool() && !p.Echo {
						enters++
					}
				}
			}
			if enters != 3 {
				t.Errorf("%d ms, %v: %d Enters of 3 readings", pace, ends, enters)
			}
		}
	}
}

// A pasted text is no reading, and Alt+Enter no Enter.
func TestNoReading(t *testing.T) {
	var r Reading
	now := time.Date(2026, 3, 2, 10, 0, 0, 0, time.UTC)
	r.Take(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("1095"), Paste: true}, now)
	if p := r.Take(keyOf("cr"), now.Add(time.Millisecond)); p.Figure() {
		t.Error("a pasted figure is taken for a tool's")
	}
	if p := r.Take(keyOf("u"), now.Add(2*time.Millisecond)); !p.Command() {
		t.Error("a letter after a pasted figure and its Enter is no command")
	}
	r.Take(keyOf("4"), now.Add(time.Second))
	if p := r.Take(tea.KeyMsg{Type: tea.KeyEnter, Alt: true}, now.Add(time.Second)); p.Tool() || p.String() != "alt+enter" {
		t.Errorf("Alt+Enter after a digit: %+v", p)
	}
}

// Letters that arrive together are taken one by one, a figure whole.
func TestLetters(t *testing.T) {
	for _, c := range []struct {
		key         tea.KeyMsg
		first, rest string
	}{
		{keyOf("rq"), "r", "q"},
		{keyOf("bü?"), "b", "ü?"},
		{keyOf("q"), "q", ""},
		{keyOf("12.7"), "12.7", ""},
		{keyOf("-4"), "-4", ""},
		{tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("rq"), Paste: true}, "rq", ""},
		{tea.KeyMsg{Type: tea.KeyEnter}, "", ""},
	} {
		first, rest, several := Letters(c.key)
		if string(first.Runes) != c.first || several != (c.rest != "") || several && string(rest.Runes) != c.rest {
			t.Errorf("Letters(%q) = %q, %q, %v", c.key, first.Runes, rest.Runes, several)
		}
	}
}

// A key that opens a page is no character of a reading.
func TestDone(t *testing.T) {
	var r Reading
	now := time.Date(2026, 3, 2, 10, 0, 0, 0, time.UTC)
	r.Take(keyOf("b"), now)
	r.Done()
	if p := r.Take(keyOf(" "), now.Add(time.Millisecond)); p.Near || !p.Command() {
		t.Errorf("Space after the key that opened the page: %+v", p)
	}
}

// A letter that a hand presses within a second of a figure is no command, and that is to be
// said; a unit behind the figure is of it, a tool's letters are, and a question takes the hand's.
func TestHasty(t *testing.T) {
	for _, c := range []struct {
		name                   string
		keys                   []sent
		hasty, command, answer bool
	}{
		{"behind a number and its Enter", []sent{{0, "1"}, {200, "2"}, {200, "cr"}, {300, "u"}}, true, false, true},
		{"a second on", []sent{{0, "1"}, {200, "2"}, {200, "cr"}, {801, "u"}}, false, true, true},
		{"behind a tool's reading", []sent{{0, "1"}, {5, "2"}, {5, "4"}, {5, "cr"}, {400, "u"}}, true, false, true},
		{"in a tool's breath", []sent{{0, "1"}, {5, "2"}, {5, "4"}, {5, "u"}}, false, false, false},
		{"right behind its Enter", []sent{{0, "1"}, {5, "2"}, {5, "4"}, {5, "cr"}, {5, "u"}}, false, false, false},
		{"a digit alone, then a letter", []sent{{0, "1"}, {300, "u"}}, true, false, true},
		{"a unit by hand", []sent{{0, "1"}, {300, "m"}}, false, false, false},
		{"a unit's letter once Enter has come", []sent{{0, "1"}, {300, "cr"}, {300, "m"}}, true, false, true},
		{"no letter", []sent{{0, "1"}, {300, "!"}}, false, true, true},
	} {
		p := last(c.keys)
		if p.Hasty() != c.hasty || p.Command() != c.command || p.Answer().Command() != c.answer {
			t.Errorf("%s: hasty %v, command %v, answer %v", c.name, p.Hasty(), p.Command(), p.Answer().Command())
		}
	}
}

// The stroke of a fraction that a hand types comes soon after a figure; what is pasted is none
// of it.
func TestAfterFigure(t *testing.T) {
	for _, c := range []struct {
		keys []sent
		want bool
	}{
		{[]sent{{0, "7"}, {300, "/"}}, true},
		{[]sent{{0, "7"}, {5, "/"}}, true},
		{[]sent{{0, "7"}, {1001, "/"}}, false},
		{[]sent{{0, "/"}}, false},
	} {
		if p := last(c.keys); p.AfterFigure() != c.want {
			t.Errorf("%v: %v", c.keys, p.AfterFigure())
		}
	}
	var r Reading
	now := time.Unix(1000, 0)
	r.Take(keyOf("7"), now)
	paste := tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("/a/b.jpg"), Paste: true}
	if p := r.Take(paste, now.Add(300*time.Millisecond)); p.AfterFigure() {
		t.Error("a paste is taken for a fraction")
	}
}
