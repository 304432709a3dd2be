package command

import (
	"errors"
	"fmt"
	"os"
	"strings"
	"time"

	"github.com/charmbracelet/x/ansi"

	"chape/ui/command/call"
	"chape/ui/command/settings"
	"chape/ui/term"
)

var ringVerb = call.Verb{
	Name: "ring", Does: "try the alarm: what a hold that falls due does",
	More: "It rings the bell, sets the window's title, asks for a notice on the desktop\n" +
		"and runs your own command, as your settings have it, and says what you should\n" +
		"hear and see.",
	Run: func(w call.World, v call.Verb, args []string) error {
		fs := call.Flags(v.Name)
		if done, err := call.Parsed(w, v, fs, args); done || err != nil {
			return err
		}
		switch {
		case fs.NArg() > 0:
			return call.Misuse("ring takes no file: %q is too much", fs.Arg(0))
		case w.Ring == nil:
			return errors.New("there is no terminal to ring in: call it in one")
		}
		return tryAlarm(w, settings.For(w))
	},
}

// trial is what the alarm says when it is tried.
const trial = "a hold is due: this is a trial"

// titleTime is how long the title stands, and the notice is waited for.
const titleTime = 5 * time.Second

// tryAlarm does all that a hold that falls due does, and says each.
func tryAlarm(w call.World, set settings.Chosen) error {
	o := set.Workbench()
	say := func(what, text string) error {
		const name, wide = 8, 72 // columns
		text = strings.ReplaceAll(ansi.Wordwrap(text, wide, ""), "\n", "\n"+strings.Repeat(" ", name))
		_, err := fmt.Fprintf(w.Out, "%-*s%s\n", name, what, text)
		return err
	}
	bell := "off in your settings (bell = false): nothing rings"
	if !o.Alarm.NoBell {
		bell = "rung: heard nothing, and no flash? See your terminal's settings and its volume. " +
			"A hold that falls due rings again every 20 s until a key is pressed"
		if err := w.Ring.Bell(); err != nil {
			return err
		}
	}
	title := fmt.Sprintf("the window's, or the tab's, is now \"! %s\"", trial)
	notice := fmt.Sprintf("asked for by %s: a notice should show on the desktop, unless you look at this window", set.Notice)
	switch {
	case !w.Ring.Talks():
		title = fmt.Sprintf("a terminal of the kind %q has none: nothing was sent", os.Getenv("TERM"))
		notice = "a terminal of this kind knows none: nothing was sent"
	case o.Alarm.Notice == term.NoNotice:
		notice = "none in your settings: try notice = \"osc 9\" or \"osc 777\", if your terminal knows one of them"
	}
	err := errors.Join(w.Ring.Title("! "+trial), w.Ring.Notice(o.Alarm.Notice, "chape", trial),
		say("bell", bell), say("title", title), say("notice", notice))
	if err != nil {
		return errors.Join(err, w.Ring.Close())
	}
	failed := tryOnDue(o.Alarm.OnDue, say)
	if w.Pause != nil && w.Ring.Talks() {
		w.Pause(titleTime)
	}
	return errors.Join(failed, w.Ring.Close())
}

// tryOnDue runs the user's own command, if there is one.
func tryOnDue(words []string, say func(what, text string) error) error {
	if len(words) == 0 {
		return say("on_due", "no command in your settings: nothing was run")
	}
	if err := term.Call(words, trial); err != nil {
		return errors.Join(say("on_due", "failed, see below: no shell reads it, so each word stands by itself"), err)
	}
	return say("on_due", "ran without fault: "+term.Plain(strings.Join(words, " ")))
}
