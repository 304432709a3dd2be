package part

import (
	"errors"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/ui/act"
)

// slow is a key pressed by hand.
func slow(s string) Press {
	k := keyOf(s)
	if s == "esc" {
		k = tea.KeyMsg{Type: tea.KeyEsc}
	}
	if k.Type == tea.KeyCtrlJ {
		k.Type = tea.KeyEnter
	}
	return Press{KeyMsg: k}
}

func typed(a *Ask, r *Reading, now *time.Time, pace time.Duration, keys ...string) Reply {
	var out Reply
	for _, k := range keys {
		*now = now.Add(pace)
		out = a.Take(r.Take(keyOf(k), *now))
	}
	return out
}

func TestAskRefusesFigures(t *testing.T) {
	for _, c := range []struct {
		name   string
		number bool
		pace   time.Duration
		keys   []string
		want   Reply
	}{
		{"a tool's figure", false, 150 * time.Millisecond, []string{"1", "1", "4", "cr"}, Nothing},
		{"a tool's figure with LF", false, time.Millisecond, []string{"1", "2", ".", "7", "lf"}, Nothing},
		{"by hand", false, 151 * time.Millisecond, []string{"1", "1", "4", "cr"}, Kept},
		{"two digits", false, time.Millisecond, []string{"1", "4", "cr"}, Kept},
		{"a word typed fast", false, 60 * time.Millisecond, []string{"D", "r", "o", "p", "cr"}, Kept},
		{"where a number is asked", true, time.Millisecond, []string{"1", "1", "4", "cr"}, Kept},
		{"and its second Enter", true, 80 * time.Millisecond, []string{"1", "1", "4", "cr", "lf"}, Nothing},
	} {
		a, r, now := NewAsk("Title", "", 20), Reading{}, time.Date(2026, 3, 2, 10, 0, 0, 0, time.UTC)
		a.Number = c.number
		if got := typed(a, &r, &now, c.pace, c.keys...); got != c.want {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
		if said := a.Err() != nil; said != (c.want == Nothing && !c.number) {
			t.Errorf("%s: it says %v", c.name, a.Err())
		}
	}
}

func TestAsk(t *testing.T) {
	a := NewAsk("Grams", "12", 20)
	a.Fresh = true
	if a.Take(slow("4")) != Typed || a.Text() != "4" {
		t.Errorf("the first character stands beside the old value: %q", a.Text())
	}
	a.Take(slow("5"))
	if a.Text() != "45" {
		t.Errorf("typed 45: %q", a.Text())
	}
	by := slow("cr")
	if a.Take(by) != Kept {
		t.Error("Enter does not keep it")
	}
	if a.Doubt("is it?", by) {
		t.Error("a doubt is no question the first time")
	}
	tool := by
	tool.Near = true
	if a.Doubt("is it?", tool) {
		t.Error("a tool answers the question")
	}
	held := by
	held.Held = true
	if a.Doubt("is it?", held) {
		t.Error("a key held down answers the question")
	}
	if !a.Doubt("is it?", by) {
		t.Error("a second Enter by hand is no answer")
	}
	a.Refuse(errors.New("no"), tool)
	if a.Take(slow("7")); a.Text() != "7" || a.Err() != nil {
		t.Errorf("after a refused reading: %q, %v", a.Text(), a.Err())
	}
	if a.Take(slow("esc")) != Dropped {
		t.Error("Esc does not drop it")
	}
	c := Confirm("Enter does it")
	if c.Take(tool) != Nothing || c.Take(slow("x")) != Dropped || c.Take(by) != Kept {
		t.Error("a plain question: Enter by hand yes, another key no, a tool's Enter nothing")
	}
}

func TestFirstLine(t *testing.T) {
	for in, want := range map[string]string{"": "", "\n\n": "", " 12.7\r\n13\n": "12.7", "a\tb\nc": "a b"} {
		if got := FirstLine(in); got != want {
			t.Errorf("FirstLine(%q) = %q, want %q", in, got, want)
		}
	}
}

func TestList(t *testing.T) {
	var l List
	l.Set(10, 4)
	for _, c := range []struct{ to, at, top int }{{3, 3, 0}, {4, 4, 1}, {9, 9, 6}, {99, 9, 6}, {7, 7, 6}, {5, 5, 5}, {-1, 0, 0}} {
		if l.Choose(c.to); l.At != c.at || l.Top != c.top {
			t.Errorf("Choose(%d): at %d, top %d, want %d, %d", c.to, l.At, l.Top, c.at, c.top)
		}
	}
	l.Choose(9)
	l.Set(3, 4)
	if from, to := l.Shown(); l.At != 2 || from != 0 || to != 3 {
		t.Errorf("three left: at %d, %d to %d", l.At, from, to)
	}
	if _, ok := l.Click(3); ok {
		t.Error("a click below the list meets something")
	}
	if at, ok := l.Click(1); !ok || at != 1 || l.At != 1 {
		t.Errorf("a click on the second: %d %v", at, ok)
	}
	l.Set(0, 4)
	if _, ok := l.Click(0); ok || l.At != 0 {
		t.Error("an empty list has something")
	}
	l.Set(10, 4)
	for _, c := range []struct {
		key tea.KeyType
		at  int
	}{{tea.KeyDown, 1}, {tea.KeyPgDown, 5}, {tea.KeyEnd, 9}, {tea.KeyUp, 8}, {tea.KeyPgUp, 4}, {tea.KeyHome, 0}} {
		if _, known := l.Keys("step").Take(Press{KeyMsg: tea.KeyMsg{Type: c.key}}); !known || l.At != c.at {
			t.Errorf("%v: at %d, want %d", c.key, l.At, c.at)
		}
	}
	if !l.Wheel(tea.MouseMsg{Action: tea.MouseActionPress, Button: tea.MouseButtonWheelDown}) || l.At != 1 {
		t.Error("the wheel moves nothing")
	}
}

func TestKeys(t *testing.T) {
	done := ""
	say := func(s string) func() []act.Msg {
		return func() []act.Msg { done += s; return []act.Msg{act.Say{Text: s}} }
	}
	keys := Keys{Key("x", "take it out", say("x"), "x").Foot("out"), Key("Enter", "open it", say("o"), "enter")}
	if out, known := keys.Take(slow("x")); !known || len(out) != 1 || done != "x" {
		t.Errorf("x: %v %v %q", out, known, done)
	}
	for _, p := range []Press{slow("y"), {KeyMsg: keyOf("x"), part: true}, {KeyMsg: keyOf("cr"), Near: true}, {KeyMsg: keyOf("cr"), Echo: true}} {
		if _, known := keys.Take(p); known {
			t.Errorf("%+v is a command", p)
		}
	}
	s := keys.Section("List", true)
	if len(s.Keys) != 2 || s.Keys[0].Help().Desc != "take it out" || s.Keys[0].Brief != "out" || !s.Now {
		t.Errorf("section %+v", s)
	}
}
