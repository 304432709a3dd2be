package workbench

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chape/calc"
	"chape/project"
	"chape/project/leather"
	"chape/project/money"
	"chape/project/print"
	"chape/project/print/layout"
	"chape/project/shop"
	"chape/ui/act"
	"chape/ui/alarm"
	"chape/ui/canvas"
	"chape/ui/session"
	"chape/ui/term"
	"chape/ui/term/ink"
	"chape/ui/tracing"
)

// Options are what the workbench needs from outside. New fills in what is left
// out, so that a test gives only what it is about.
type Options struct {
	session.Options
	Tick     func(time.Duration, func(time.Time) tea.Msg) tea.Cmd // waits; tea.Tick
	Alarm    alarm.Options                                        // its clock and its shelf are the session's
	Styles   ink.Styles
	Font     act.Font
	Remember func(f act.Font) error // keeps how drawings are made; nil: for this time only
	Suspends bool                   // the system can put the program aside
	Print    print.Options
	Scale    float64 // grams, one step of the kitchen scale; 0: as the digits tell
	Shop     shop.Shop
	// KeepPrice keeps a price in the settings, and gives the shop then; nil: nowhere to.
	KeepPrice func(key string, a money.Amount) (shop.Shop, error)
	KeepWeek  func(text string) (shop.Shop, error) // the same with the hours at the bench
	Tracing   tracing.Settings
	Leather   *leather.File // the leather on the rack; nil: for this time only
	// Reread looks whether the user's settings have changed on the disk, and gives what
	// puts them in and what is to be said of it; nil where there is nothing new. It is
	// called from a command, one at a time. Reread nil: nobody looks.
	Reread   func() *Settings
	OnShelf  bool                               // start on the shelf, with no project open
	Begin    func(title string) project.Project // a new project by the user's defaults
	Greeting string                             // one line for the start
}

// Settings are those read again: what holds from now on, but for the look of the screen,
// which holds from the next start.
type Settings struct {
	Put    func(*Options)
	Limits calc.Limits
	Say    act.Say
}

type mute struct{}

func (mute) Bell() error                                  { return nil }
func (mute) Close() error                                 { return nil }
func (mute) Title(string) error                           { return nil }
func (mute) Notice(term.NoticeKind, string, string) error { return nil }

func (o Options) filled() Options {
	if o.Font.Aspect == 0 {
		o.Font.Aspect = canvas.DefaultAspect
	}
	if o.Clock == nil {
		o.Clock = time.Now
	}
	if o.Tick == nil {
		o.Tick = tea.Tick
	}
	if o.Alarm.Voice == nil {
		o.Alarm.Voice = mute{}
	}
	o.Alarm.Clock, o.Alarm.Shelf = o.Clock, o.Shelf
	return o
}

// wait gives a command that brings a message after a time.
func (o Options) wait(d time.Duration, msg tea.Msg) tea.Cmd {
	return o.Tick(d, func(time.Time) tea.Msg { return msg })
}

// paper is what a placing is printed on.
func (o *Options) paper() layout.Options {
	return layout.Options{Paper: o.Print.Paper, Correction: o.Print.Correction, Cutter: o.Print.Cutter}
}

// ascii tells whether the screen keeps to plain characters.
func (o Options) ascii() bool { return o.Font.Glyphs == canvas.ASCII }
