package workbench

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"chape/calc"
	"chape/calc/length"
	"chape/project/print"
	"chape/ui/layout"
	"chape/ui/term"
)

// sheets is the panel that asks how to print.
type sheets struct {
	o      print.Options // what is printed on Enter
	papers []print.Paper // that p goes round, the configured one first
	asked  sheetField    // what is being typed
	typed  string
	wrong  string // what will not do with what was typed
}

type sheetField uint8

const (
	noField sheetField = iota
	trialField
	pricksField
)

// mostTyped bounds what is typed into a field, in characters.
const mostTyped = 40

// askSheets opens the panel.
func (m *Model) askSheets() {
	s := &sheets{o: m.o.Print}
	if s.o.Paper.Width == 0 {
		s.o.Paper, _ = print.ParsePaper("a4")
	}
	s.papers = []print.Paper{s.o.Paper}
	for _, name := range []string{"a4", "a3", "letter", "legal"} {
		if p, err := print.ParsePaper(name); err == nil && p != s.o.Paper {
			s.papers = append(s.papers, p)
		}
	}
	m.sheets = s
}

// sheetsKey takes a key of the panel. A measuring tool does nothing there but in the
// field that is meant for it.
func (m *Model) sheetsKey(k tea.KeyMsg, reading bool) tea.Cmd {
	s := m.sheets
	if key.Matches(k, m.Keys.Suspend) {
		return m.suspend()
	}
	if s.asked != noField {
		return m.sheetsType(k, reading)
	}
	switch {
	case k.Type == tea.KeyEsc || key.Matches(k, m.Keys.Break, m.Keys.Quit):
		m.sheets = nil
	case k.Type == tea.KeyEnter && !reading:
		m.sheets = nil
		return m.print(s.o)
	case k.Type == tea.KeyRunes && !k.Paste:
		switch string(k.Runes) {
		case "h":
			s.o.Half = !s.o.Half
		case "f":
			if s.o.Up == calc.FleshUp {
				s.o.Up = calc.GrainUp
			} else {
				s.o.Up = calc.FleshUp
			}
		case "p":
			s.papers = append(s.papers[1:], s.papers[0])
			s.o.Paper = s.papers[0]
		case "t":
			s.asked = trialField
		case "m":
			s.asked = pricksField
		}
	}
	return nil
}

// sheetsType is a key while a field is being typed.
func (m *Model) sheetsType(k tea.KeyMsg, reading bool) tea.Cmd {
	s := m.sheets
	switch k.Type {
	case tea.KeyEsc, tea.KeyCtrlC:
		s.asked, s.typed, s.wrong = noField, "", ""
	case tea.KeyBackspace:
		if r := []rune(s.typed); len(r) > 0 {
			s.typed = string(r[:len(r)-1])
		}
	case tea.KeyRunes, tea.KeySpace:
		s.wrong = ""
		if len([]rune(s.typed))+len(k.Runes) <= mostTyped {
			s.typed += string(k.Runes)
		}
	case tea.KeyEnter:
		if s.asked == pricksField && reading && !strings.ContainsAny(strings.TrimSpace(s.typed), " ;,n") {
			s.typed = strings.TrimSpace(s.typed) + " " // the tool's second reading comes
			return nil
		}
		return m.sheetsTake()
	}
	return nil
}

// sheetsTake takes on what was typed, or says why it will not do.
func (m *Model) sheetsTake() tea.Cmd {
	s, text := m.sheets, strings.TrimSpace(m.sheets.typed)
	var cmd tea.Cmd
	var err error
	switch {
	case s.asked == trialField && text == "":
		s.o.Trial = 0
	case s.asked == trialField:
		o := s.o
		if o.Trial, err = length.Parse(text, m.doc.Unit()); err == nil {
			err = o.Check()
		}
		if err == nil {
			s.o = o
		}
	case text != "":
		var c print.Correction
		if c, err = print.Measured(text, m.o.Print.Correction); err == nil {
			s.o.Correction, m.o.Print.Correction = c, c
			cmd = m.keepPrinter(c)
		}
	}
	if err != nil {
		s.wrong = err.Error()
		return nil
	}
	s.asked, s.typed, s.wrong = noField, "", ""
	return cmd
}

// sheetsView is the panel.
func (m *Model) sheetsView() []string {
	r, s := m.overlay(), m.sheets
	yes := func(on bool, one, other string) string {
		if on {
			return one
		}
		return other
	}
	trial := "none: for the leather"
	if s.o.Trial != 0 {
		trial = s.o.Trial.Exact(m.doc.Unit()) + " thick"
	}
	corrected := "none"
	if c := s.o.Correction; c.Set() {
		corrected = fmt.Sprintf("%s mm, for all sheets", c)
	}
	row := func(letter, what, value string) string {
		return m.o.Styles.Strong.Render(letter) + "  " + layout.Line(what, 20) + " " + term.Plain(value)
	}
	lines := []string{
		row("Enter", "print", "the sheets as PDF, and SVG for a cutter"),
		row("p    ", "paper", s.o.Paper.Name),
		row("h    ", "pattern", yes(s.o.Half, "one half, to be marked and flipped", "whole")),
		row("f    ", "side up", yes(s.o.Up == calc.FleshUp, "flesh", "grain")),
		row("t    ", "trial stock", trial),
		row("m    ", "the pricks measured", corrected),
		row("Esc  ", "go back", ""),
		"",
	}
	switch s.asked {
	case trialField:
		lines = append(lines, "how thick is the trial stock? 0.1 is paper, 0.3 card; nothing: for the leather", "> "+term.Plain(s.typed)+"_")
	case pricksField:
		lines = append(lines, "across and along, mm: what do the two 100 mm measure? or none", "> "+term.Plain(s.typed)+"_")
	}
	if s.wrong != "" {
		lines = append(lines, layout.Wrap("! "+term.Plain(s.wrong), max(1, r.W-4))...)
	}
	var text []string
	for _, l := range lines {
		text = append(text, " "+l)
	}
	return layout.Frame(r.W, r.H, "Print", true, text, m.edges())
}
