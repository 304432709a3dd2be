package panel

import (
	"github.com/charmbracelet/bubbles/key"

	"chape/calc"
	"chape/calc/length"
	"chape/project/print"
	"chape/project/print/sheet"
	"chape/ui/act"
	"chape/ui/part"
)

// What the panel that asks how to print answers with.
type (
	// PrintMsg has the sheets printed.
	PrintMsg struct {
		Options print.Options
		Tracing bool // not the pattern: a sheet to trace a knife on
	}
	// PaperMsg has another paper kept: it is what lies in the printer.
	PaperMsg struct{ Paper sheet.Paper }
	// FolderMsg has the sheets go into another folder, a full path; "": the usual one.
	FolderMsg struct{ Folder string }
	// MeasuredMsg tells what the pricks on a sheet measured.
	MeasuredMsg struct{ Correction sheet.Correction }
)

// Print asks how to print.
type Print struct {
	frame
	o       print.Options // what is printed on Enter
	folder  func() string // where it goes
	written string        // what was printed last; "": nothing
	blank   bool          // to be printed is a sheet to trace a knife on
	unit    length.Unit
	papers  []sheet.Paper // that p goes round
	was     sheet.Paper   // the configured one
	ask     *part.Ask     // what is being typed; nil: nothing
	take    taker         // what becomes of it
	close   []key.Binding
	count   func(print.Options) string // how many sheets the pattern takes, in words
	takes   string                     // as last counted
}

// NewPrint gives the panel, with o as the user has configured it and the folder that the
// sheets go to.
func NewPrint(o print.Options, folder func() string, u length.Unit, s Style, close ...key.Binding) *Print {
	p := &Print{frame: frame{style: s}, o: o, folder: folder, unit: u, close: close}
	p.o.Paper = p.o.Paper.OrFirst()
	p.was, p.papers = p.o.Paper, []sheet.Paper{p.o.Paper}
	for _, paper := range sheet.Papers {
		if paper != p.o.Paper {
			p.papers = append(p.papers, paper)
		}
	}
	return p
}

// Written has it show what was printed last.
func (p *Print) Written(paths string) *Print {
	p.written = paths
	return p
}

// Counted has it say how many sheets of the paper the pattern takes, in the words of count.
func (p *Print) Counted(count func(print.Options) string) *Print {
	p.count = count
	p.recount()
	return p
}

func (p *Print) recount() {
	if p.count != nil && !p.blank {
		p.takes = p.count(p.o)
	}
}

// Tracing has it print a sheet to trace a knife on, unless that is changed.
func (p *Print) Tracing() *Print {
	p.blank = true
	return p
}

// row is a key with what it stands for in the panel.
type row struct {
	part.Row
	name, value string
}

// rows are the keys while nothing is typed.
func (p *Print) rows() []row {
	flip := func(b *bool) func() []act.Msg { return part.Quiet(func() { *b = !*b }) }
	rows := []row{
		{part.Key("Enter", "print the sheets", p.ends(p.print), "enter"), "print", words(p.blank, "a PDF: the sheet, and how to trace", "the sheets as PDF, and SVG for a cutter")},
		{part.Key("s", "the pattern, or a sheet to trace a knife on", flip(&p.blank), "s"), "sheets", words(p.blank, "to trace a knife on", "the pattern"+p.takes)},
		{part.Key("p", "another paper, kept for the next time", part.Quiet(p.turnPaper), "p"), "paper", p.o.Paper.Name},
	}
	if !p.blank {
		trial := "none: for the leather"
		if p.o.Trial != 0 {
			trial = p.o.Trial.Exact(p.unit) + " " + p.unit.String() + " thick"
		}
		rows = append(rows,
			row{part.Key("h", "the whole pattern, or one half of it", flip(&p.o.Half), "h"), "pattern", words(p.o.Half, "one half, to be marked and flipped", "whole")},
			row{part.Key("f", "which side of the leather is up: grain or flesh", part.Quiet(p.turnSide), "f"), "side up", words(p.o.Up == calc.FleshUp, "flesh", "grain")},
			row{part.Key("t", "sized for trial stock, by its thickness", part.Quiet(p.askTrial), "t"), "trial stock", trial})
	}
	corrected := "none"
	if c := p.o.Correction; c.Set() {
		corrected = c.String() + " mm, for all sheets"
	}
	return append(rows,
		row{part.Key("m", "what the two pricks on a sheet measured", part.Quiet(p.askPricks), "m"), "the pricks measured", corrected},
		row{part.Key("d", "another folder for the sheets", part.Quiet(p.askFolder), "d"), "into the folder", p.folder()},
		row{p.leaving("go back without printing", p.close), "go back", ""})
}

func words(on bool, one, other string) string {
	if on {
		return one
	}
	return other
}

func (p *Print) keys() part.Keys {
	var keys part.Keys
	for _, r := range p.rows() {
		keys = append(keys, r.Row)
	}
	return keys
}

// Keys implements Panel.
func (p *Print) Keys() []act.Section {
	ask := part.AskKeys()
	ask.Now = p.ask != nil
	return []act.Section{p.keys().Section("How to print", !ask.Now), ask}
}

// Take takes a key. A measuring tool does nothing there but in the field that is meant
// for it.
func (p *Print) Take(k part.Press) (out []act.Msg, done bool) {
	defer func() {
		if !p.over && p.ask == nil { // a letter of a text changes nothing yet
			p.recount()
		}
	}()
	if p.ask == nil {
		if k.ByHand() {
			k.Near = false // behind a letter that was a command here
		}
		return p.frame.take(p.keys(), k)
	}
	switch p.ask.Take(k) {
	case part.Dropped:
		p.ask = nil
	case part.Kept:
		return p.take(p.ask, k), false
	}
	return nil, false
}

// print is Enter: another paper than the one configured is kept.
func (p *Print) print() []act.Msg {
	out := []act.Msg{PrintMsg{p.o, p.blank}}
	if p.o.Paper != p.was {
		out = append([]act.Msg{PaperMsg{p.o.Paper}}, out...)
	}
	return out
}

func (p *Print) turnPaper() {
	p.papers = append(p.papers[1:], p.papers[0])
	p.o.Paper = p.papers[0]
}

func (p *Print) turnSide() {
	if p.o.Up == calc.FleshUp {
		p.o.Up = calc.GrainUp
	} else {
		p.o.Up = calc.FleshUp
	}
}
