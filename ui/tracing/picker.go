package tracing

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"chape/calc/trace"
	"chape/ui/act"
	"chape/ui/layout"
	"chape/ui/part"
	"chape/ui/term"
	"chape/ui/term/ink"
)

// Settings are the user's.
type Settings struct {
	Folder   string  // where pictures of tracings arrive; "": none
	Standoff float64 // mm, from the middle of a drawn line to the knife; 0: half the line
}

// Picker asks for a picture and reads it. Whoever has one hands it every message that is not
// its own, and looks at what Update says.
type Picker struct {
	Of     trace.Of
	Styles ink.Styles
	Reader Reader // Read, unless a test has one of its own

	set    func() Settings
	ask    *part.Ask // the path being typed; nil: none is
	names  []string  // what the text may go on to
	newest string
	job    *job
	width  int
	left   bool // the last key was to leave

	refused error
	path    string
	reading trace.Reading
}

// Event is what a message was to a Picker.
type Event uint8

// What it was.
const (
	None Event = iota
	Got        // a picture was read: see Reading
	Left       // Esc, with nothing begun
)

// New gives a Picker for what lies on the sheet; set gives the settings of the moment.
func New(of trace.Of, set func() Settings, styles ink.Styles) *Picker {
	return &Picker{Of: of, Styles: styles, Reader: Read, set: set}
}

// SetWidth sets the cells that a path being typed may fill.
func (p *Picker) SetWidth(w int) {
	p.width = w
	if p.ask != nil {
		p.ask.SetWidth(w)
	}
}

// Look gives what looks for the newest picture of the settings' folder.
func (p *Picker) Look() []act.Msg {
	folder := p.set().Folder
	p.newest = ""
	if folder == "" {
		return nil
	}
	return []act.Msg{act.Do(func() tea.Msg { return newestMsg{p, newest(folder)} })}
}

// Stop gives up what is being read or typed.
func (p *Picker) Stop() {
	if p.job != nil {
		p.job.stop()
	}
	p.job, p.ask, p.names, p.refused = nil, nil, nil, nil
}

// Reading is what the last picture gave, and its path.
func (p *Picker) Reading() (trace.Reading, string) { return p.reading, p.path }

// Refused is why the last picture will not do; nil: nothing was refused.
func (p *Picker) Refused() error { return p.refused }

// Typing tells whether keys go into a path.
func (p *Picker) Typing() bool { return p.ask != nil }

// Busy tells whether a picture is being read.
func (p *Picker) Busy() bool { return p.job != nil }

// Start reads the picture that a text names.
func (p *Picker) Start(text string) []act.Msg {
	p.Stop()
	var out []act.Msg
	p.job, out = start(text, p.Reader, trace.Options{Of: p.Of, Standoff: p.set().Standoff})
	return out
}

// Update takes a message.
func (p *Picker) Update(msg tea.Msg) ([]act.Msg, Event) {
	switch msg := msg.(type) {
	case part.Press:
		return p.press(msg)
	case newestMsg:
		if msg.of == p {
			p.newest = msg.path
		}
	case namesMsg:
		p.completed(msg)
	case stageMsg:
		if msg.job == p.job {
			p.job.stage, p.job.nth = msg.stage.String(), int(msg.stage)+1
			return []act.Msg{act.Do(p.job.listen(msg.more))}, None
		}
	case readMsg:
		if msg.job == p.job && p.job != nil {
			return nil, p.read(msg)
		}
	}
	return nil, None
}

func (p *Picker) read(msg readMsg) Event {
	name, path := p.job.name(), p.job.path
	p.job = nil
	if msg.err != nil {
		p.refused = fmt.Errorf("%.60s: %w", name, msg.err)
		if errors.Is(msg.err, context.Canceled) {
			p.refused = nil
		}
		return None
	}
	p.reading, p.path = msg.reading, path
	return Got
}

func (p *Picker) press(k part.Press) ([]act.Msg, Event) {
	if k.Paste && Names(string(k.Runes)) {
		return p.Start(string(k.Runes)), None
	}
	row, known := p.keys().Find(k.KeyMsg)
	switch {
	case known && row.Do != nil:
		if k.Type == tea.KeyEnter && (k.Tool() || k.Held) {
			return nil, None
		}
		p.left = false
		if out := row.Do(); !p.left {
			return out, None
		}
		return nil, Left
	case p.job != nil:
	case p.ask != nil:
		return p.typed(k), None
	case (k.Type == tea.KeyRunes || k.Type == tea.KeySpace) && !k.Alt && !part.StartsNumber(k.KeyMsg):
		p.refused = nil
		p.ask = part.NewAsk("the picture's path", "", longestPath)
		p.ask.SetWidth(p.width)
		p.ask.Take(k)
	}
	return nil, None
}

const longestPath = 4096

// typed is a key that goes into the path.
func (p *Picker) typed(k part.Press) []act.Msg {
	switch p.ask.Take(k) {
	case part.Dropped:
		p.ask, p.names = nil, nil
	case part.Kept:
		if strings.TrimSpace(p.ask.Text()) != "" {
			return p.Start(p.ask.Text())
		}
	case part.Typed:
		p.names = nil
	}
	return nil
}

// complete looks for what the path being typed may go on to.
func (p *Picker) complete() []act.Msg {
	text := p.ask.Text()
	return []act.Msg{act.Do(func() tea.Msg {
		longer, names := complete(text)
		return namesMsg{p, text, longer, names}
	})}
}

// completed carries the text on, if it is still the same.
func (p *Picker) completed(msg namesMsg) {
	if msg.of != p || p.ask == nil || p.ask.Text() != msg.text {
		return
	}
	p.names = msg.names
	if len(p.names) == 0 {
		p.ask.Say("no folder and no picture begins so", nil)
		return
	}
	p.ask.SetText(msg.longer)
}

// readNewest reads the newest picture of the settings' folder, if there is one.
func (p *Picker) readNewest() []act.Msg {
	if p.newest == "" {
		return nil
	}
	return p.Start(p.newest)
}

// waitKeys are the keys while no picture is chosen yet; other letters begin a path, too.
func (p *Picker) waitKeys() part.Keys {
	enter := part.Key("Enter", "read the newest picture of your folder", p.readNewest, "enter")
	if p.newest != "" {
		enter = enter.Foot("the newest picture")
	}
	return part.Keys{
		part.Key("/ ~", "type the picture's path, or drop the picture on the window", nil, "/", "~").Foot("type its path"),
		enter,
		part.Key("Esc", "back", part.Quiet(func() { p.left = true }), "esc").Foot("back"),
	}
}

func (p *Picker) readingKeys() part.Keys {
	return part.Keys{part.Key("Esc", "give up reading", part.Quiet(p.Stop), "esc").Foot("give up reading")}
}

// pathKeys are those while a path is typed, which takes Enter and Esc itself.
func (p *Picker) pathKeys() part.Keys {
	return part.Keys{
		part.Key("Enter", "read this picture", nil, "enter").Foot("read it"),
		part.Key("Tab", "complete the name", p.complete, "tab").Foot("complete"),
		part.Key("Esc", "leave it", nil, "esc").Foot("leave it"),
	}
}

// keys are those that are alive now.
func (p *Picker) keys() part.Keys {
	switch {
	case p.job != nil:
		return p.readingKeys()
	case p.ask != nil:
		return p.pathKeys()
	}
	return p.waitKeys()
}

// Keys are the keys of a Picker, with those of its page behind them.
func (p *Picker) Keys(now bool, more ...part.Row) []act.Section {
	typed := p.pathKeys().Section("While a path is typed", now && p.ask != nil)
	typed.Text = true
	return []act.Section{
		append(p.waitKeys(), more...).Section("Which picture", now && p.ask == nil && p.job == nil),
		typed,
		p.readingKeys().Section("While a picture is read", now && p.job != nil),
	}
}

// Lines are what stands on the page, at most w cells wide: what may be done, the path being
// typed, or how far the reading is.
func (p *Picker) Lines(w int) []string {
	st := p.Styles
	var out []string
	add := func(s string, most int) { out = append(out, layout.Paragraph(s, w, most, st.Text)...) }
	switch {
	case p.job != nil:
		out = append(out, layout.Paragraph("reading "+term.Short(p.job.name(), 60), w, 2, st.Strong)...)
		out = append(out, p.progress(w)...)
		return out
	case p.ask != nil:
		out = append(out, p.ask.Lines(w, st)...)
		if len(p.names) > 1 {
			out = append(out, layout.Paragraph(term.Plain(strings.Join(p.names, "  ")), w, 4, st.Quiet)...)
		}
		return out
	}
	if p.refused != nil {
		out = append(out, layout.Paragraph("! "+term.Plain(p.refused.Error()), w, 4, st.Warn)...)
	}
	add("Drop the picture on this window, or type / or ~ and its path.", 2)
	switch folder := p.set().Folder; {
	case p.newest != "":
		add("Enter takes the newest one: "+term.Short(filepath.Base(p.newest), 60)+".", 2)
	case folder != "":
		add("There is no picture in "+term.Short(folder, 60)+" yet.", 2)
	default:
		out = append(out, layout.Paragraph("With the folder where your pictures arrive in the settings ([tracing] pictures), Enter takes the newest one.", w, 3, st.Quiet)...)
	}
	return out
}

// progress names the stages, the one that it is at between > and <.
func (p *Picker) progress(w int) []string {
	words := []string{}
	for i := range stages {
		word := trace.Stage(i).String()
		if i+1 == p.job.nth {
			word = p.Styles.Strong.Render("> " + word + " <")
		} else {
			word = p.Styles.Quiet.Render("  " + word + "  ")
		}
		words = append(words, word)
	}
	line := strings.Join(words, " ")
	if p.job.nth == 0 {
		line = p.job.stage
	}
	return []string{layout.Line(line, w)}
}
