package panel

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chape/calc"
	"chape/calc/length"
	"chape/project/print"
	"chape/project/print/sheet"
	"chape/ui/act"
	"chape/ui/layout"
	"chape/ui/term"
)

// What the panel that asks how to print answers with.
type (
	// PrintMsg has the sheets printed.
	PrintMsg struct {
		Options print.Options
		Tracing bool // not the pattern: a sheet to trace a knife on
	}
	// FolderMsg has the sheets go into another folder, a full path; "": the usual one.
	FolderMsg struct{ Folder string }
	// MeasuredMsg tells what the pricks on a sheet measured.
	MeasuredMsg struct{ Correction sheet.Correction }
)

// Print asks how to print.
type Print struct {
	frame
	o      print.Options // what is printed on Enter
	folder string        // where it goes
	blank  bool          // that is a sheet to trace a knife on
	unit   length.Unit
	papers []sheet.Paper // that p goes round, the configured one first
	asked  printField    // what is being typed
	typed  string
	wrong  string // what will not do with what was typed
	close  []key.Binding
}

type printField uint8

const (
	noField printField = iota
	trialField
	pricksField
	folderField
)

// mostTyped bounds what is typed into a field, in characters.
const mostTyped = 40

// mostFolder is the same for a folder.
const mostFolder = 400

// NewPrint gives the panel, with o as the user has configured it and the folder that the
// sheets go to.
func NewPrint(o print.Options, folder string, u length.Unit, s Style, close ...key.Binding) *Print {
	p := &Print{frame: frame{style: s}, o: o, folder: folder, unit: u, close: close}
	if p.o.Paper.Width == 0 {
		p.o.Paper, _ = sheet.ParsePaper("a4")
	}
	p.papers = []sheet.Paper{p.o.Paper}
	for _, name := range []string{"a4", "a3", "letter", "legal"} {
		if paper, err := sheet.ParsePaper(name); err == nil && paper != p.o.Paper {
			p.papers = append(p.papers, paper)
		}
	}
	return p
}

// SetFolder shows where the sheets go.
func (p *Print) SetFolder(folder string) { p.folder = folder }

// Tracing has it print a sheet to trace a knife on, unless that is changed.
func (p *Print) Tracing() *Print {
	p.blank = true
	return p
}

// Key takes a key. A measuring tool does nothing there but in the field that is meant
// for it.
func (p *Print) Key(k tea.KeyMsg, reading bool) (out []act.Msg, done bool) {
	if p.Typing() {
		return p.typeKey(k, reading), false
	}
	switch {
	case k.Type == tea.KeyEsc || key.Matches(k, p.close...):
		return nil, true
	case k.Type == tea.KeyEnter && !reading:
		return []act.Msg{PrintMsg{p.o, p.blank}}, true
	case k.Type == tea.KeyRunes && !k.Paste:
		p.letter(string(k.Runes))
	}
	return nil, false
}

func (p *Print) letter(s string) {
	if p.blank && strings.Contains("hft", s) { // of a pattern alone
		return
	}
	switch s {
	case "s":
		p.blank = !p.blank
	case "h":
		p.o.Half = !p.o.Half
	case "f":
		if p.o.Up == calc.FleshUp {
			p.o.Up = calc.GrainUp
		} else {
			p.o.Up = calc.FleshUp
		}
	case "p":
		p.papers = append(p.papers[1:], p.papers[0])
		p.o.Paper = p.papers[0]
	case "t":
		p.asked = trialField
	case "m":
		p.asked = pricksField
	case "d":
		p.asked = folderField
	}
}

// typeKey is a key while a field is being typed.
func (p *Print) typeKey(k tea.KeyMsg, reading bool) []act.Msg {
	switch k.Type {
	case tea.KeyEsc, tea.KeyCtrlC:
		p.asked, p.typed, p.wrong = noField, "", ""
	case tea.KeyBackspace:
		if r := []rune(p.typed); len(r) > 0 {
			p.typed = string(r[:len(r)-1])
		}
	case tea.KeyRunes, tea.KeySpace:
		p.wrong = ""
		if len([]rune(p.typed))+len(k.Runes) <= p.most() {
			p.typed += string(k.Runes)
		}
	case tea.KeyEnter:
		if p.asked == pricksField && reading && !strings.ContainsAny(strings.TrimSpace(p.typed), " ;,n") {
			p.typed = strings.TrimSpace(p.typed) + " " // the tool's second reading comes
			return nil
		}
		return p.take()
	}
	return nil
}

// most is how many characters the open field takes.
func (p *Print) most() int {
	if p.asked == folderField {
		return mostFolder
	}
	return mostTyped
}

// take takes on what was typed, or says why it will not do.
func (p *Print) take() (out []act.Msg) {
	text := strings.TrimSpace(p.typed)
	var err error
	switch {
	case p.asked == trialField && text == "":
		p.o.Trial = 0
	case p.asked == trialField:
		o := p.o
		if o.Trial, err = length.Parse(text, p.unit); err == nil {
			err = o.Check()
		}
		if err == nil {
			p.o = o
		}
	case p.asked == folderField:
		var dir string
		if dir, err = folderOf(text); err == nil {
			out = []act.Msg{FolderMsg{dir}}
		}
	case text != "":
		var c sheet.Correction
		if c, err = print.Measured(text, p.o.Correction); err == nil {
			p.o.Correction = c
			out = []act.Msg{MeasuredMsg{c}}
		}
	}
	if err != nil {
		p.wrong = err.Error()
		return nil
	}
	p.asked, p.typed, p.wrong = noField, "", ""
	return out
}

// rowHead is what a row takes before its value.
const rowHead = 5 + 2 + 20 + 1

// View says what Enter would print.
func (p *Print) View() []string {
	choose := func(on bool, one, other string) string {
		if on {
			return one
		}
		return other
	}
	trial := "none: for the leather"
	if p.o.Trial != 0 {
		trial = p.o.Trial.Exact(p.unit) + " thick"
	}
	corrected := "none"
	if c := p.o.Correction; c.Set() {
		corrected = fmt.Sprintf("%s mm, for all sheets", c)
	}
	row := func(letter, what, value string) string {
		return p.style.Strong.Render(letter) + "  " + layout.Line(what, 20) + " " + term.Plain(value)
	}
	lines := []string{
		row("Enter", "print", choose(p.blank, "a PDF: the sheet, and how to trace", "the sheets as PDF, and SVG for a cutter")),
		row("s    ", "sheets", choose(p.blank, "to trace a knife on", "the pattern")),
		row("p    ", "paper", p.o.Paper.Name),
	}
	if !p.blank {
		lines = append(lines,
			row("h    ", "pattern", choose(p.o.Half, "one half, to be marked and flipped", "whole")),
			row("f    ", "side up", choose(p.o.Up == calc.FleshUp, "flesh", "grain")),
			row("t    ", "trial stock", trial))
	}
	lines = append(lines,
		row("m    ", "the pricks measured", corrected),
		row("d    ", "into the folder", tail(p.folder, p.w-4-rowHead)),
		row("Esc  ", "go back", ""),
		"")
	switch p.asked {
	case trialField:
		lines = append(lines, "how thick is the trial stock? 0.1 is paper, 0.3 card; nothing: for the leather", "> "+term.Plain(p.typed)+"_")
	case pricksField:
		lines = append(lines, "across and along, mm: what do the two 100 mm measure? or none", "> "+term.Plain(p.typed)+"_")
	}
	if p.asked == folderField {
		lines = append(lines, "which folder? a full path, or from ~/ on; nothing: the usual one", "> "+tail(term.Plain(p.typed), p.w-8)+"_")
	}
	if p.wrong != "" {
		lines = append(lines, layout.Wrap("! "+term.Plain(p.wrong), max(1, p.w-4))...)
	}
	return p.framed("Print", lines)
}

// Foot is empty: the keys stand in the panel.
func (p *Print) Foot() []key.Binding { return nil }

// Typing tells whether a field is open.
func (p *Print) Typing() bool { return p.asked != noField }
