package command

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"chape/project/config/configtest"
	"chape/ui/command/call"
	"chape/ui/term"
)

var be = flag.String("be", "", "how TestBeTheCommand ends")

// TestBeTheCommand is the user's own command: the test's binary.
func TestBeTheCommand(t *testing.T) {
	switch *be {
	case "good":
		os.Exit(0)
	case "bad":
		fmt.Fprintln(os.Stderr, "no sound for: "+os.Getenv("CHAPE_DUE"))
		os.Exit(4)
	}
}

// fakeVoice notes what is sent.
type fakeVoice struct {
	sent []string
	mute bool
	err  error
}

func (v *fakeVoice) note(text string) error { v.sent = append(v.sent, text); return v.err }
func (v *fakeVoice) Bell() error            { return v.note("bell") }
func (v *fakeVoice) Title(s string) error   { return v.note("title " + s) }
func (v *fakeVoice) Talks() bool            { return !v.mute }
func (v *fakeVoice) Close() error           { return v.note("close") }
func (v *fakeVoice) Notice(kind term.NoticeKind, _, s string) error {
	return v.note(fmt.Sprint("notice ", kind, " ", s))
}

func TestRing(t *testing.T) {
	onDue := func(how string) string {
		return fmt.Sprintf("on_due = [%q, \"-test.run\", \"^TestBeTheCommand$\", \"-be\", %q]\n", os.Args[0], how)
	}
	title := "title ! " + trial
	for _, c := range []struct {
		name, config string
		voice        fakeVoice
		sent         []string
		says         []string
		fails        string
	}{
		{"no settings", "", fakeVoice{}, []string{"bell", title, "notice 0 " + trial, "close"},
			[]string{"bell    rung: heard nothing", "every 20 s", `is now "! ` + trial + `"`, "notice  none in your settings", "on_due  no command"}, ""},
		{"all of it", "notice = \"osc 777\"\n" + onDue("good"), fakeVoice{}, []string{"bell", title, "notice 2 " + trial, "close"},
			[]string{"asked for by osc 777", "on_due  ran without fault: " + os.Args[0]}, ""},
		{"bell off", "bell = false\nnotice = \"osc 9\"", fakeVoice{}, []string{title, "notice 1 " + trial, "close"},
			[]string{"bell    off in your settings (bell = false)", "asked for by osc 9"}, ""},
		{"on the console", "notice = \"osc 9\"", fakeVoice{mute: true}, nil,
			[]string{"bell    rung", `title   a terminal of the kind "linux" has none`, "notice  a terminal of this kind knows none"}, ""},
		{"command fails", onDue("bad"), fakeVoice{}, []string{"bell", title, "notice 0 " + trial, "close"},
			[]string{"bell    rung", "on_due  failed, see below"}, "exit status 4: no sound for: " + trial},
		{"command missing", `on_due = ["no-such-command-of-ours"]`, fakeVoice{}, nil, nil, "there is no such command"},
		{"settings broken", "bell = 3", fakeVoice{}, nil, []string{"bell    rung", "your settings can't be used"}, ""},
		{"terminal gone", "", fakeVoice{err: errors.New("no terminal")}, []string{"bell"}, nil, "no terminal"},
	} {
		t.Run(c.name, func(t *testing.T) {
			configtest.Write(t, c.config)
			t.Setenv("TERM", "linux")
			var out strings.Builder
			var waited time.Duration
			w := call.World{Out: &out, Err: &out, Ring: &c.voice, Pause: func(d time.Duration) { waited += d }}
			err := Run(w, []string{"ring"})
			if got := fmt.Sprint(err); c.fails == "" && err != nil || !strings.Contains(got, c.fails) && c.fails != "" {
				t.Errorf("error %v, want %q", err, c.fails)
			}
			if c.sent != nil && !slices.Equal(c.voice.sent, c.sent) {
				t.Errorf("sent %q, want %q", c.voice.sent, c.sent)
			}
			text := regexp.MustCompile(`\n {8}`).ReplaceAllString(out.String(), " ")
			for _, say := range c.says {
				if !strings.Contains(text, say) {
					t.Errorf("no %q in\n%s", say, out.String())
				}
			}
			if c.voice.err == nil && (waited == 0) != c.voice.mute {
				t.Errorf("waited %v to be looked at", waited)
			}
			for line := range strings.Lines(out.String()) {
				if len(line) > 81 && !strings.Contains(line, os.Args[0]) && !strings.HasPrefix(line, "chape: ") {
					t.Errorf("a line of %d: %q", len(line), line)
				}
			}
		})
	}
}
