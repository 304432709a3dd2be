package tracing

import (
	"context"
	"errors"
	"path/filepath"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/calc/trace"
	"chape/ui/act"
	"chape/ui/part"
	"chape/ui/term/ink"
	"chape/ui/test/rig"
)

// bench is a Picker, and what a root would do with its answers.
type bench struct {
	t       *testing.T
	p       *Picker
	reading part.Reading
	now     time.Time
	event   Event // the last that was one
	work    []tea.Cmd
	asked   []string
}

func onBench(t *testing.T, folder string) *bench {
	b := &bench{t: t, now: rig.Noon}
	b.p = New(trace.Pattern, func() Settings { return Settings{Folder: folder, Standoff: 0.2} }, ink.Styles{})
	b.p.SetWidth(70)
	b.p.Reader = func(ctx context.Context, path string, o trace.Options) (trace.Reading, error) {
		b.asked = append(b.asked, path)
		for s := trace.Find; s <= trace.Marks; s++ {
			o.Progress(s)
		}
		if o.Of != trace.Pattern || o.Standoff != 0.2 {
			t.Errorf("read with %+v", o)
		}
		switch {
		case ctx.Err() != nil:
			return trace.Reading{}, ctx.Err()
		case strings.Contains(path, "bad"):
			return trace.Reading{}, errors.New("no sheet: photograph it")
		}
		return trace.Reading{Of: o.Of, Line: 0.5}, nil
	}
	b.take(b.p.Look())
	b.run()
	return b
}

func (b *bench) take(out []act.Msg) {
	for _, m := range out {
		if do, ok := m.(act.Do); ok {
			b.work = append(b.work, tea.Cmd(do))
		}
	}
}

func (b *bench) send(msg tea.Msg) {
	out, e := b.p.Update(msg)
	if e != None {
		b.event = e
	}
	b.take(out)
}

// run does the work that waits, and what comes of it.
func (b *bench) run() {
	for len(b.work) > 0 {
		w := b.work[0]
		b.work = b.work[1:]
		if msg := w(); msg != nil {
			b.send(msg)
		}
	}
}

func (b *bench) key(k tea.KeyMsg, after time.Duration) {
	b.now = b.now.Add(after)
	b.send(b.reading.Take(k, b.now))
}

// fast types as a terminal without bracketed paste hands a path on.
func (b *bench) fast(text string) {
	for _, r := range text {
		k := tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}}
		if r == ' ' {
			k.Type = tea.KeySpace
		}
		b.key(k, time.Millisecond)
	}
}

func (b *bench) says(text string) {
	b.t.Helper()
	if got := strings.Join(b.p.Lines(70), "\n"); !strings.Contains(got, text) {
		b.t.Errorf("the page does not say %q:\n%s", text, got)
	}
}

// A path in each form, pasted and as fast keys: the same picture is read.
func TestDropped(t *testing.T) {
	want := "/p q/IMG 1.jpg"
	for _, text := range []string{want, `'/p q/IMG 1.jpg'`, `/p\ q/IMG\ 1.jpg`, "file:///p%20q/IMG%201.jpg"} {
		b := onBench(t, "")
		b.key(rig.Paste(text), time.Second)
		if !b.p.Busy() {
			t.Fatalf("%q pasted: nothing is read", text)
		}
		b.run()
		fast := onBench(t, "")
		fast.fast(text)
		fast.key(rig.Key("enter"), time.Second)
		fast.run()
		for how, b := range map[string]*bench{"pasted": b, "fast": fast} {
			r, path := b.p.Reading()
			if b.event != Got || path != want || len(b.asked) != 1 || b.asked[0] != want || r.Line != 0.5 {
				t.Errorf("%s %q: event %v, read %q", how, text, b.event, b.asked)
			}
		}
	}
}

func TestStagesAreSaid(t *testing.T) {
	b := onBench(t, "")
	b.key(rig.Paste("/a/IMG.jpg"), time.Second)
	b.says("opening the picture")
	b.send(stageMsg{b.p.job, trace.CameraFit, make(chan trace.Stage)})
	b.says("reading IMG.jpg")
	b.says("> camera <")
	b.work = nil
}

// Esc gives up: what comes of the reading afterwards is nothing, its context is done.
func TestGivenUp(t *testing.T) {
	b := onBench(t, "")
	b.key(rig.Paste("/a/IMG.jpg"), time.Second)
	b.key(rig.Key("esc"), time.Second)
	if b.p.Busy() || b.event != None {
		t.Fatalf("busy %v, event %v", b.p.Busy(), b.event)
	}
	b.run()
	if b.event != None || b.p.Refused() != nil {
		t.Errorf("after giving up: event %v, %v", b.event, b.p.Refused())
	}
	b.key(rig.Key("esc"), time.Second)
	if b.event != Left {
		t.Error("a second Esc does not leave")
	}
}

func TestRefusedInOneLine(t *testing.T) {
	b := onBench(t, "")
	b.key(rig.Paste("/a/bad.jpg"), time.Second)
	b.run()
	b.says("! bad.jpg: no sheet: photograph it")
	if b.event != None {
		t.Errorf("event %v", b.event)
	}
	b.key(rig.Paste("/a/good.jpg"), time.Second)
	b.run()
	if b.event != Got {
		t.Error("another picture is not read after one that was refused")
	}
}

func TestNewestIsTaken(t *testing.T) {
	d := t.TempDir()
	write(t, d, "a.jpg", "b.jpg")
	b := onBench(t, d)
	b.says("Enter takes the newest one: b.jpg")
	b.key(rig.Key("enter"), time.Second)
	b.run()
	if len(b.asked) != 1 || b.asked[0] != filepath.Join(d, "b.jpg") {
		t.Errorf("read %q", b.asked)
	}
	onBench(t, t.TempDir()).says("There is no picture in ")
	b = onBench(t, "")
	b.key(rig.Key("enter"), time.Second)
	if b.p.Busy() {
		t.Error("Enter reads without a folder")
	}
	b.says("With the folder where your pictures arrive")
}

func TestCompleted(t *testing.T) {
	d := t.TempDir()
	write(t, d, "IMG_1.jpg", "IMG_2.jpg")
	b := onBench(t, "")
	b.fast(d + "/I")
	b.key(rig.Key("tab"), time.Second)
	b.run()
	if got := b.p.ask.Text(); got != d+"/IMG_" {
		t.Errorf("completed to %q", got)
	}
	b.says("IMG_1.jpg  IMG_2.jpg")
	b.fast("1")
	b.key(rig.Key("tab"), time.Second)
	b.fast("x") // the answer comes too late
	b.run()
	if got := b.p.ask.Text(); got != d+"/IMG_1x" {
		t.Errorf("a late answer: %q", got)
	}
	b.key(rig.Key("tab"), time.Second)
	b.run()
	b.says("no folder and no picture begins so")
	b.key(rig.Key("esc"), time.Second)
	if b.p.Typing() || b.event != None {
		t.Error("Esc does not take the path away alone")
	}
}

// A measuring tool begins no path, and reads no picture.
func TestToolDoesNothing(t *testing.T) {
	d := t.TempDir()
	write(t, d, "a.jpg")
	b := onBench(t, d)
	b.now = b.now.Add(time.Second)
	b.fast("12.34")
	b.key(rig.Key("enter"), time.Millisecond)
	if b.p.Typing() || b.p.Busy() {
		t.Error("a reading did something")
	}
}

// A name with backslashes of its own is found.
func TestReadTakesTheNameAsItIs(t *testing.T) {
	d := t.TempDir()
	write(t, d, `a\b.jpg`)
	b := onBench(t, "")
	b.key(rig.Paste(d+`/a\b.jpg`), time.Second)
	b.run()
	if len(b.asked) != 1 || b.asked[0] != d+`/a\b.jpg` {
		t.Errorf("read %q", b.asked)
	}
}

// What picture and trace refuse is said without the path, in one line.
func TestReadRefuses(t *testing.T) {
	d := t.TempDir()
	write(t, d, "empty.jpg")
	for path, want := range map[string]string{d + "/empty.jpg": "the file is empty: ", d: "that is a folder: ", d + "/none.jpg": "there is no such picture: "} {
		_, err := Read(context.Background(), path, trace.Options{})
		if err == nil || !strings.HasPrefix(err.Error(), want) {
			t.Errorf("%s: %v", path, err)
		}
	}
}

// TestAnEnterThatWasNotMeantReadsNothing: one of a measuring tool, or of a key held down.
func TestAnEnterThatWasNotMeantReadsNothing(t *testing.T) {
	for name, held := range map[string]bool{"held": true, "pressed": false} {
		b := onBench(t, "")
		b.p.newest = "/a/b.jpg"
		b.send(part.Press{KeyMsg: rig.Key("enter"), Held: held})
		if b.p.Busy() == held {
			t.Errorf("Enter %s: reading is %v", name, b.p.Busy())
		}
	}
	b := onBench(t, "")
	b.p.newest = "/a/b.jpg"
	b.fast("12.34")
	b.key(rig.Key("enter"), time.Millisecond)
	if b.p.Busy() {
		t.Error("a tool's Enter reads a picture")
	}
}
