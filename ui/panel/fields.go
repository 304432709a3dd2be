package panel

import (
	"errors"
	"os"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"chape/calc/length"
	"chape/project/print"
	"chape/ui/act"
	"chape/ui/layout"
	"chape/ui/part"
	"chape/ui/term"
)

// taker is what becomes of a text that Enter has ended: it closes the field, or says why
// that stays.
type taker func(a *part.Ask, by part.Press) []act.Msg

// The longest texts, in characters.
const mostTyped, mostFolder = 40, 400

func (p *Print) open(label string, most int, number bool, take taker) {
	p.ask, p.take = part.NewAsk(label, "", most), take
	p.ask.Number = number
}

func (p *Print) askTrial() {
	p.open("How thick is the trial stock? 0.1 mm is paper, 0.3 mm card; nothing: for the leather", mostTyped, true, p.takeTrial)
}

func (p *Print) takeTrial(a *part.Ask, by part.Press) []act.Msg {
	o, text, err := p.o, strings.TrimSpace(a.Text()), error(nil)
	if o.Trial = 0; text != "" {
		o.Trial, err = length.Parse(text, p.unit)
	}
	if err == nil {
		err = o.Check()
	}
	if err != nil {
		a.Refuse(err, by)
		return nil
	}
	p.o, p.ask = o, nil
	return nil
}

func (p *Print) askPricks() {
	p.open("What do the two 100 mm measure, across and along, in mm? none: no correction any more", mostTyped, true, p.takePricks)
}

func (p *Print) takePricks(a *part.Ask, by part.Press) []act.Msg {
	text := strings.TrimSpace(a.Text())
	if by.Tool() && !strings.ContainsAny(text, " ;,n") {
		a.SetText(text + " ") // the tool's second reading comes
		return nil
	}
	if text == "" {
		p.ask = nil
		return nil
	}
	c, err := print.Measured(text, p.o.Correction)
	if err != nil {
		a.Refuse(err, by)
		return nil
	}
	p.o.Correction, p.ask = c, nil
	return []act.Msg{MeasuredMsg{c}}
}

func (p *Print) askFolder() {
	p.open("Which folder? A full path, or one from ~/ on; nothing: the usual one", mostFolder, false, p.takeFolder)
}

// FolderSeenMsg is the answer of a look whether there is such a folder.
type FolderSeenMsg struct {
	ask    *part.Ask // that it was typed into
	by     part.Press
	folder string
	text   string
	err    error // why it will not do, os.ErrNotExist where there is none yet
}

// takeFolder has looked whether there is such a folder, which a slow disk may take its
// time to tell; where there is none, a second Enter has it made with the sheets.
func (p *Print) takeFolder(a *part.Ask, by part.Press) []act.Msg {
	dir, err := folderOf(strings.TrimSpace(a.Text()))
	switch {
	case err != nil:
		a.Refuse(err, by)
		return nil
	case dir == "" || a.Asked() && a.Doubt(noFolder, by):
		p.ask = nil
		return []act.Msg{FolderMsg{dir}}
	}
	seen := FolderSeenMsg{ask: a, by: by, folder: dir, text: a.Text()}
	return []act.Msg{act.Do(func() tea.Msg { return seen.look() })}
}

const noFolder = "there is no such folder yet: Enter again has it made, when the sheets are written"

// look looks at the disk.
func (s FolderSeenMsg) look() FolderSeenMsg {
	info, err := os.Stat(s.folder)
	switch s.err = err; {
	case err == nil && !info.IsDir():
		s.err = errors.New("this is a file: give a folder")
	case err != nil && !errors.Is(err, os.ErrNotExist):
		s.err = errors.New("the folder can't be looked at: give another one")
	}
	return s
}

// Seen takes what a look at the folder has found, if it is still the one that is meant.
func (p *Print) Seen(msg FolderSeenMsg) []act.Msg {
	switch {
	case p.ask == nil || p.ask != msg.ask || p.ask.Text() != msg.text:
	case errors.Is(msg.err, os.ErrNotExist):
		p.ask.Doubt(noFolder, msg.by)
	case msg.err != nil:
		p.ask.Refuse(msg.err, msg.by)
	default:
		p.ask = nil
		return []act.Msg{FolderMsg{msg.folder}}
	}
	return nil
}

// mostWritten is how many lines what was printed last takes.
const mostWritten = 3

// rowKey and rowName are the columns before a row's value.
const rowKey, rowName = 7, 20

// View says what Enter would print.
func (p *Print) View() []string {
	room := max(1, p.w-4)
	var lines []string
	show := func(name, what, value string) {
		lines = append(lines, layout.Line(p.style.Strong.Render(name), rowKey)+layout.Line(what, rowName)+" "+tail(term.Plain(value), room-rowKey-rowName-1))
	}
	for _, r := range p.rows() {
		show(r.Help().Key, r.name, r.value)
	}
	if p.written != "" {
		lines = append(append(lines, ""), layout.Paragraph("written last: "+term.Plain(p.written), room, mostWritten, p.style.Quiet)...)
	}
	if p.ask != nil {
		p.ask.SetWidth(room)
		lines = append(append(lines, ""), p.ask.Lines(room, p.style.Styles)...)
	}
	return p.framed("Print", lines)
}
