// Package ink has chape's colours and styles: few, calm, and all of them to be
// told apart without colour.
package ink

import (
	"fmt"
	"regexp"
	"runtime"
	"strconv"
	"strings"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"
)

// Ground is the background that colours are chosen for.
type Ground uint8

// Middling colours read on both grounds, at less contrast than the others.
const (
	Middling Ground = iota
	Dark
	Light
)

// ParseGround reads the configuration's word: dark, light, or auto. Auto goes
// by COLORFGBG, which some terminals set to 'foreground;background' in the 16
// colours, and is Middling without it: the terminal is never asked.
func ParseGround(word, colorfgbg string) (Ground, error) {
	switch strings.ToLower(strings.TrimSpace(word)) {
	case "dark":
		return Dark, nil
	case "light":
		return Light, nil
	case "", "auto":
		return groundOf(colorfgbg), nil
	default:
		return Middling, fmt.Errorf("%q is not a background: try dark, light or auto", word)
	}
}

func groundOf(colorfgbg string) Ground {
	last := colorfgbg[strings.LastIndexByte(colorfgbg, ';')+1:]
	switch n, err := strconv.Atoi(last); {
	case err != nil || n < 0 || n > 15:
		return Middling
	case n == 7 || n >= 9:
		return Light
	default:
		return Dark
	}
}

// Depth is how many colours the terminal has.
type Depth uint8

// With None there is no styling at all, as for a file; Mono keeps bold,
// underline and reverse.
const (
	None Depth = iota
	Mono
	Colours16
	Colours256
	TrueColour
)

// DepthOf goes by the environment: NO_COLOR (no-color.org) takes the colours
// and leaves bold and underline. getenv is os.Getenv.
func DepthOf(terminal bool, getenv func(string) string) Depth {
	kind, colours := getenv("TERM"), strings.ToLower(getenv("COLORTERM"))
	switch {
	case !terminal || kind == "dumb":
		return None
	case getenv("NO_COLOR") != "" || videoTerminal.MatchString(kind):
		return Mono
	case colours == "truecolor" || colours == "24bit" || strings.HasSuffix(kind, "-direct"):
		return TrueColour
	case kind == "" && runtime.GOOS == "windows": // its console takes them all and sets neither
		return TrueColour
	case kind == "":
		return Mono
	case strings.Contains(kind, "256color"):
		return Colours256
	default:
		return Colours16
	}
}

// videoTerminal matches vt100, vt220 and their like, which have no colours.
var videoTerminal = regexp.MustCompile(`^vt[0-9]`)

func (d Depth) profile() termenv.Profile {
	switch d {
	case None:
		return termenv.Ascii
	case Mono, Colours16:
		return termenv.ANSI
	case Colours256:
		return termenv.ANSI256
	default:
		return termenv.TrueColor
	}
}

// tint is one colour of the palette on each ground. The sixteen colours of the
// terminal's own have no fixed tones; what reads on one ground may not on the
// other, and "" stands for the terminal's own foreground.
type tint struct {
	dark, light, middling string
	dark16, light16       string
}

// The palette, named after the bench it comes from.
var (
	leather = tint{"#d2925a", "#7d4a1c", "#a86c36", "3", ""}
	thread  = tint{"#e6dcc0", "#5f5640", "#82785c", "", ""}
	brass   = tint{"#d9b44a", "#6e5600", "#8c7420", "3", ""}
	madder  = tint{"#f0796a", "#a32a1c", "#c9523f", "1", "1"}
	verdi   = tint{"#7fb89a", "#1f6446", "#4a8a6a", "2", "2"}
	steel   = tint{"#9fb4c4", "#3d566b", "#667e90", "6", "4"}
	pencil  = tint{"#9a948a", "#66615a", "#7c776f", "", ""}

	ownColour = lipgloss.NoColor{} // the terminal's own
)

// colour picks the tint for a ground and a depth.
func (t tint) colour(g Ground, d Depth) lipgloss.TerminalColor {
	switch {
	case d <= Mono:
		return ownColour
	case d == Colours16:
		return t.sixteen(g)
	case g == Dark:
		return lipgloss.Color(t.dark)
	case g == Light:
		return lipgloss.Color(t.light)
	default:
		return lipgloss.Color(t.middling)
	}
}

// sixteen picks among the terminal's own colours; where the ground is not
// known, only one that serves on both.
func (t tint) sixteen(g Ground) lipgloss.TerminalColor {
	own := t.dark16
	switch {
	case g == Light:
		own = t.light16
	case g == Middling && t.dark16 != t.light16:
		own = ""
	}
	if own == "" {
		return ownColour
	}
	return lipgloss.Color(own)
}
