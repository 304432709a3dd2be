package term

import (
	"io"
	"os"
	"regexp"
	"strings"
	"sync"
	"testing"
)

// said returns what the writer sent while do ran.
func said(t *testing.T, talks bool, do func(*Writer)) string {
	t.Helper()
	r, out, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	got := make(chan string)
	go func() {
		b, _ := io.ReadAll(r)
		got <- string(b)
	}()
	do(NewWriter(out, talks))
	out.Close()
	return <-got
}

func TestTitleIsPushedOnceAndPopped(t *testing.T) {
	got := said(t, true, func(w *Writer) {
		w.Title("hold 12 min")
		w.Title("hold 12 min")
		w.Title("due")
		w.Close()
		w.Close()
	})
	// xterm control sequences: 22;0t keeps icon name and title, 23;0t restores.
	want := "\x1b[22;0t\x1b]2;hold 12 min\x1b\\" + "\x1b]2;due\x1b\\" + "\x1b[23;0t"
	if got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestTextCannotLeaveItsSequence(t *testing.T) {
	evil := "x\x1b\\\x1b]0;y\a\u009c\u202e" + strings.Repeat("z", 500)
	for name, do := range map[string]func(*Writer){
		"title":  func(w *Writer) { w.Title(evil) },
		"osc 9":  func(w *Writer) { w.Notice(OSC9, evil, evil) },
		"777":    func(w *Writer) { w.Notice(OSC777, evil, evil) },
		"digits": func(w *Writer) { w.Notice(OSC9, "4;1;50", "") },
	} {
		got := said(t, true, do)
		got = strings.TrimPrefix(got, titlePush)
		body, ok := strings.CutSuffix(strings.TrimPrefix(got, oscOpen), oscClose)
		if !ok || strings.ContainsAny(body, "\x1b\a\u009c\u202e") || len(body) > 1200 {
			t.Errorf("%s: sent %q", name, got)
		}
		if strings.HasPrefix(body, "9;4;") {
			t.Errorf("%s: reads as progress: %q", name, got)
		}
	}
}

func TestTalks(t *testing.T) {
	for kind, want := range map[string]bool{
		"xterm-256color": true, "xterm": true, "tmux-256color": true, "screen": true, "foot": true, "rxvt": true,
		"linux": false, "linux-16color": false, "dumb": false, "vt100": false, "vt220": false, "ansi": false, "cons25": false, "": false,
	} {
		if got := talks(kind, false); got != want {
			t.Errorf("talks(%q) = %v, want %v", kind, got, want)
		}
	}
	if !talks("", true) {
		t.Error("without TERM on Windows it takes no titles")
	}
}

func TestMuteTerminalHearsTheBellOnly(t *testing.T) {
	got := said(t, false, func(w *Writer) {
		w.Bell()
		w.Title("a")
		w.Notice(OSC9, "a", "b")
		io.WriteString(w, "screen")
		w.Close()
	})
	if got != "\ascreen" {
		t.Errorf("got %q", got)
	}
}

func TestWritesAreNotTorn(t *testing.T) {
	const frame = "\x1b[H" + "0123456789012345678901234567890123456789" + "\x1b[K"
	got := said(t, true, func(w *Writer) {
		var all sync.WaitGroup
		for range 4 {
			all.Go(func() {
				for range 200 {
					io.WriteString(w, frame)
				}
			})
			all.Go(func() {
				for i := range 200 {
					w.Bell()
					w.Title(strings.Repeat("t", 1+i%2))
					w.Notice(OSC777, "due", "look")
				}
			})
		}
		all.Wait()
	})
	whole := regexp.MustCompile(`\x1b\[H[0-9]{40}\x1b\[K|\a|\x1b\[22;0t|\x1b\]2;tt?\x1b\\|\x1b\]777;notify;due;look\x1b\\`)
	if rest := whole.ReplaceAllString(got, ""); rest != "" {
		t.Errorf("torn pieces: %q", rest)
	}
	if n := strings.Count(got, frame); n != 800 {
		t.Errorf("%d frames arrived whole, want 800", n)
	}
}
