package panel

import (
	"errors"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/x/ansi"

	"chape/calc"
	"chape/calc/length"
	"chape/project/print"
	"chape/project/print/sheet"
	"chape/ui/act"
	"chape/ui/layout"
	"chape/ui/part"
	"chape/ui/term/ink"
	"chape/ui/test/rig"
)

// desk is a panel with somebody at its keys.
type desk struct {
	t       testing.TB
	p       Panel
	now     time.Time
	reading part.Reading
	out     []act.Msg
	done    bool
}

func at(t testing.TB, p Panel) *desk {
	p.SetSize(80, 22)
	return &desk{t: t, p: p, now: rig.Noon}
}

// keys presses keys by hand, or what is typed letter by letter.
func (d *desk) keys(names ...string) *desk { return d.pace(rig.ByHand, names...) }

func (d *desk) pace(pace time.Duration, names ...string) *desk {
	for _, n := range names {
		d.now = d.now.Add(pace)
		p := d.reading.Take(rig.Key(n), d.now)
		if p.Echo {
			continue
		}
		out, done := d.p.Take(p)
		d.done = done
		d.do(out)
	}
	return d
}

// do keeps what the panel answers, and has it hear what its work brings.
func (d *desk) do(out []act.Msg) {
	for _, o := range out {
		do, ok := o.(act.Do)
		if !ok {
			d.out = append(d.out, o)
			continue
		}
		if seen, ok := do().(FolderSeenMsg); ok {
			d.do(d.p.(*Print).Seen(seen))
		}
	}
}

func letters(text string) (all []string) {
	for _, r := range text {
		all = append(all, string(r))
	}
	return all
}

func (d *desk) screen() string { return ansi.Strip(strings.Join(d.p.View(), "\n")) }

func (d *desk) shows(texts ...string) *desk {
	d.t.Helper()
	flat := strings.Join(strings.Fields(d.screen()), " ")
	for _, text := range texts {
		if !strings.Contains(flat, text) {
			d.t.Errorf("no %q in\n%s", text, d.screen())
		}
	}
	return d
}

var (
	style = Style{Styles: ink.New(ink.Dark, ink.None)}
	quits = key.NewBinding(key.WithKeys("q"), key.WithHelp("q", "quit"))
	helps = key.NewBinding(key.WithKeys("?"), key.WithHelp("?", "help"))
)

func newPrint() *Print {
	return NewPrint(print.Options{}, func() string { return "/home/somebody/sheets" }, length.Millimetres, style, quits)
}

// all are the panels, those of the printing also with a field open.
func all(t testing.TB) map[string]Panel {
	typing := newPrint()
	at(t, typing).keys("d")
	return map[string]Panel{
		"print": newPrint(), "tracing": newPrint().Tracing(), "typing": typing,
		"help":     NewHelp(Sections(newPrint()), style, quits),
		"explain":  NewExplain("swell", func(w, h int) []string { return nil }, style, helps, quits),
		"question": NewQuestion(act.Question{Title: "Which?", Choices: []act.Choice{{Key: "k", Does: "keep it"}, {Key: "t", Does: "throw it away"}}}, style),
	}
}

// Each key has a name and words, none does two things, and each panel fills its room.
func TestPanelsAreWhole(t *testing.T) {
	for name, p := range all(t) {
		t.Run(name, func(t *testing.T) {
			rig.CheckKeys(t, p)
			if act.Typing(p) != (name == "typing") {
				t.Error("typing, or not")
			}
			for _, size := range [][2]int{{30, 8}, {60, 20}, {80, 24}, {160, 45}} {
				p.SetSize(size[0], size[1])
				lines := p.View()
				if len(lines) != size[1] {
					t.Errorf("%v: %d lines", size, len(lines))
				}
				for _, l := range lines {
					if ansi.StringWidth(l) != size[0] {
						t.Errorf("%v: %q", size, ansi.Strip(l))
					}
				}
			}
		})
	}
}

// A measuring tool types its readings, at any pace, into every panel: they answer nothing.
func TestToolAnswersNothing(t *testing.T) {
	for name, p := range all(t) {
		if name == "typing" {
			continue // a folder: TestFolder
		}
		for _, pace := range []time.Duration{time.Millisecond, 150 * time.Millisecond} {
			d := at(t, p).pace(pace, "1", "2", ".", "7", "enter", "ctrl+j", "k")
			if d.done || len(d.out) > 0 {
				t.Errorf("%s at %v: %v, %#v", name, pace, d.done, d.out)
			}
		}
	}
}

func TestQuestion(t *testing.T) {
	answer := func(stays bool, k string) *desk {
		return at(t, NewQuestion(act.Question{Title: "Which?", Stays: stays, Choices: []act.Choice{
			{Key: "k", Does: "keep it", Do: func() []act.Msg { return []act.Msg{act.Leave{}} }}, {Key: "t", Does: "throw it away"},
		}}, style)).keys(k)
	}
	if d := answer(false, "k"); !d.done || !reflect.DeepEqual(d.out, []act.Msg{act.Leave{}}) {
		t.Errorf("k: %v, %#v", d.done, d.out)
	}
	if d := answer(false, "t"); !d.done || d.out != nil {
		t.Errorf("t: %v, %#v", d.done, d.out)
	}
	for _, k := range []string{"x", "enter", " "} {
		if d := answer(false, k); d.done || d.out != nil {
			t.Errorf("%q: %v, %#v", k, d.done, d.out)
		}
	}
	if !answer(false, "esc").done || answer(true, "esc").done {
		t.Error("Esc takes away what does not stay, and nothing else")
	}
	if strings.Contains(answer(true, "x").screen(), "Esc") || !strings.Contains(answer(false, "x").screen(), "Esc") {
		t.Error("Esc is named where it does something, and only there")
	}
}

func TestExplain(t *testing.T) {
	of := func(k string) *desk {
		return at(t, NewExplain("swell", func(w, h int) []string { return []string{"of the handle"} }, style, helps, quits)).keys(k)
	}
	of("x").shows("swell", "of the handle")
	if d := of("?"); !d.done || !reflect.DeepEqual(d.out, []act.Msg{act.Help{}}) {
		t.Errorf("? leads to %#v", d.out)
	}
	for _, k := range []string{"esc", "q", "enter", " "} {
		if d := of(k); !d.done || d.out != nil {
			t.Errorf("%q: %v, %#v", k, d.done, d.out)
		}
	}
	if of("x").done {
		t.Error("any key closes it")
	}
}

func TestHelpMoves(t *testing.T) {
	var keys []key.Binding
	for _, r := range "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMN" {
		keys = append(keys, key.NewBinding(key.WithKeys(string(r)), key.WithHelp(string(r), "does "+string(r))))
	}
	d := at(t, NewHelp([]Section{{Title: "All", Keys: keys}}, style, quits))
	d.shows("up and down for more", "does a")
	d.keys("end").shows("does N")
	d.keys("home").shows("does a")
	d.keys("pgdown").shows("does t")
	d.keys("up", "pgup").shows("does a")
	if d.keys("q"); !d.done {
		t.Error("q does not close it")
	}
	wide := NewHelp([]Section{{Title: "All", Keys: keys[:3]}}, Style{Styles: style.Styles, Edges: layout.Edges{ASCII: true}})
	at(t, wide).keys("end").shows("does a") // all have room: it stays
}

// Enter prints what the rows say, and has another paper than the usual one kept.
func TestPrint(t *testing.T) {
	d := at(t, newPrint()).keys("h", "f", "enter")
	want := PrintMsg{Options: print.Options{Half: true, Up: calc.FleshUp, Paper: sheet.Papers[0]}}
	if !d.done || !reflect.DeepEqual(d.out, []act.Msg{want}) {
		t.Errorf("Enter: %#v", d.out)
	}
	d = at(t, newPrint()).keys("p", "s", "h", "enter")
	want = PrintMsg{Options: print.Options{Paper: sheet.Papers[1]}, Tracing: true}
	if !reflect.DeepEqual(d.out, []act.Msg{PaperMsg{sheet.Papers[1]}, want}) {
		t.Errorf("a tracing sheet on another paper: %#v", d.out)
	}
	if d = at(t, newPrint()).keys("p", "esc"); !d.done || d.out != nil {
		t.Errorf("Esc: %#v", d.out)
	}
	at(t, newPrint().Written("/a/orchard pattern 3.pdf")).shows("written last: /a/orchard pattern 3.pdf", "/home/somebody/sheets")
}

func TestPrintFields(t *testing.T) {
	d := at(t, newPrint()).keys("t").shows("How thick is the trial stock?").keys("3", "0", "0", "enter").shows("no thickness for trial stock")
	d.keys("esc").keys("t", "0", ".", "3", "enter").shows("0.3 mm thick")
	d.keys("t", "enter").shows("none: for the leather")
	d.keys("m").pace(time.Millisecond, letters("99.5")...).pace(time.Millisecond, "enter", "ctrl+j")
	d.now = d.now.Add(time.Minute)
	d.pace(time.Millisecond, letters("100.2")...).pace(time.Millisecond, "enter", "ctrl+j")
	if want := (MeasuredMsg{sheet.Correction{X: 99.5, Y: 100.2}}); !reflect.DeepEqual(d.out, []act.Msg{want}) {
		t.Errorf("two readings: %#v", d.out)
	}
	d.keys("m", "5", "enter").shows("! ")
	d.keys("esc", "m", "enter")
	if len(d.out) != 1 || act.Typing(d.p) {
		t.Errorf("nothing typed: %#v", d.out)
	}
}

// A folder that is there is taken; one that is not asks; a file is refused, and so is a
// reading.
func TestFolder(t *testing.T) {
	there := t.TempDir()
	none, file := filepath.Join(there, "none"), filepath.Join(there, "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	of := func(text string) *desk { return at(t, newPrint()).keys("d").keys(letters(text)...).keys("enter") }
	if d := of(there); !reflect.DeepEqual(d.out, []act.Msg{FolderMsg{there}}) || act.Typing(d.p) {
		t.Errorf("there: %#v", d.out)
	}
	if d := of(none).shows("there is no such folder yet"); d.out != nil {
		t.Errorf("not there: %#v", d.out)
	} else if d.keys("enter"); !reflect.DeepEqual(d.out, []act.Msg{FolderMsg{none}}) {
		t.Errorf("meant: %#v", d.out)
	}
	of(file).shows("this is a file")
	of(filepath.Join(file, "below")).shows("can't be looked at")
	of("sheets").shows("give a full path")
	at(t, newPrint()).keys("d", "x", "backspace").pace(time.Second, "1").pace(time.Millisecond, "2", "3", ".", "7", "enter").shows(part.NoText)
}

// What a slow disk says of a folder that is not meant any more does nothing.
func TestLateFolder(t *testing.T) {
	p := newPrint()
	at(t, p).keys("d", "~")
	late := FolderSeenMsg{ask: p.ask, folder: "/a", text: "/a", err: errors.New("no")}
	if out := p.Seen(late); out != nil || p.ask.Err() != nil {
		t.Errorf("typed on since: %#v, %v", out, p.ask.Err())
	}
	late.text, late.ask, late.err = "~", part.NewAsk("", "~", 9), nil
	if out := p.Seen(late); out != nil || p.ask == nil {
		t.Errorf("another field: %#v", out)
	}
}

// The sheets are counted again with each choice, as that takes a while not with each letter
// of a text, and not when it is over.
func TestSheetsAreCountedOnceAChoice(t *testing.T) {
	n := 0
	p := newPrint().Counted(func(o print.Options) string { n++; return ": " + o.Trial.Exact(length.Millimetres) })
	d := at(t, p)
	for _, c := range []struct {
		keys []string
		want int
	}{{[]string{"p"}, 1}, {[]string{"d", "/", "a", "b", "c"}, 0}, {[]string{"esc"}, 1}, {[]string{"t", "0", ".", "3"}, 0}, {[]string{"enter"}, 1}, {[]string{"enter"}, 0}} {
		n = 0
		if d.keys(c.keys...); n != c.want {
			t.Errorf("%q: counted %d times, want %d", c.keys, n, c.want)
		}
		if !d.done && c.want > 0 && c.keys[0] == "enter" {
			d.shows("the pattern: 0.3")
		}
	}
}
