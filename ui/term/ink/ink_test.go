package ink

import (
	"math"
	"reflect"
	"strconv"
	"testing"

	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"
)

// contrast is the contrast ratio of two colours '#rrggbb' (WCAG 2.1, W3C
// Recommendation 2018, definitions of relative luminance and contrast ratio).
func contrast(a, b string) float64 {
	la, lb := luminance(a), luminance(b)
	return (max(la, lb) + 0.05) / (min(la, lb) + 0.05)
}

func luminance(colour string) float64 {
	var sum float64
	for i, share := range []float64{0.2126, 0.7152, 0.0722} {
		n, err := strconv.ParseUint(colour[1+2*i:3+2*i], 16, 8)
		if err != nil {
			panic(err)
		}
		v := float64(n) / 255
		if v <= 0.03928 {
			v /= 12.92
		} else {
			v = math.Pow((v+0.055)/1.055, 2.4)
		}
		sum += share * v
	}
	return sum
}

// TestColoursRead asks for WCAG 2.1's 4.5 to 1 (success criterion 1.4.3) where
// the ground is known, also on the softer blacks and whites of terminals, and
// 4 to 1 on both full grounds where it is not: 4.58 is the most there is.
func TestColoursRead(t *testing.T) {
	if got := contrast("#000000", "#ffffff"); math.Abs(got-21) > 1e-9 {
		t.Fatalf("black on white is %v, WCAG says 21", got)
	}
	for name, c := range map[string]tint{"leather": leather, "thread": thread, "brass": brass, "madder": madder,
		"verdi": verdi, "steel": steel, "pencil": pencil} {
		for _, k := range []struct {
			colour, ground string
			least          float64
		}{
			{c.dark, "#000000", 4.5}, {c.dark, "#282828", 4.5},
			{c.light, "#ffffff", 4.5}, {c.light, "#f0f0e8", 4.5},
			{c.middling, "#000000", 4}, {c.middling, "#ffffff", 4},
		} {
			if got := contrast(k.colour, k.ground); got < k.least {
				t.Errorf("%s %s on %s: contrast %.2f, want %v", name, k.colour, k.ground, got, k.least)
			}
		}
	}
}

func TestParseGround(t *testing.T) {
	for _, c := range []struct {
		word, fgbg string
		want       Ground
	}{
		{"dark", "0;15", Dark}, {"Light", "15;0", Light}, {"", "", Middling}, {"auto", "15;0", Dark},
		{"auto", "0;15", Light}, {"auto", "0;default;15", Light}, {"auto", "12;8", Dark}, {"auto", "0;7", Light},
		{"auto", "0;default", Middling}, {"auto", "0;-1", Middling}, {"auto", "99", Middling},
	} {
		if got, err := ParseGround(c.word, c.fgbg); err != nil || got != c.want {
			t.Errorf("ParseGround(%q, %q) = %v, %v; want %v", c.word, c.fgbg, got, err, c.want)
		}
	}
	if _, err := ParseGround("pink", ""); err == nil {
		t.Error("pink is a background")
	}
}

func TestDepthOf(t *testing.T) {
	for _, c := range []struct {
		tty                     bool
		term, colourterm, nocol string
		want                    Depth
	}{
		{false, "xterm-256color", "truecolor", "", None},
		{true, "dumb", "", "", None},
		{true, "xterm-256color", "truecolor", "1", Mono},
		{true, "vt220", "", "", Mono},
		{true, "vte", "", "", Colours16},
		{true, "xterm-256color", "truecolor", "", TrueColour},
		{true, "tmux-256color", "", "", Colours256},
		{true, "xterm", "", "", Colours16},
		{true, "linux", "", "", Colours16},
	} {
		env := map[string]string{"TERM": c.term, "COLORTERM": c.colourterm, "NO_COLOR": c.nocol}
		if got := DepthOf(c.tty, func(k string) string { return env[k] }); got != c.want {
			t.Errorf("DepthOf(%v, %v) = %v, want %v", c.tty, env, got, c.want)
		}
	}
}

// Every style at every depth must send whole sequences only, none of them a
// colour without colours, and nothing at all to a file.
func TestDepthsKeepToTheirMeans(t *testing.T) {
	for _, g := range []Ground{Middling, Dark, Light} {
		for d := None; d <= TrueColour; d++ {
			styles := reflect.ValueOf(New(g, d))
			for i := range styles.NumField() {
				name := styles.Type().Field(i).Name
				got := styles.Field(i).Interface().(lipgloss.Style).Render("x")
				if ansi.Strip(got) != "x" {
					t.Errorf("%s at depth %d renders %q", name, d, got)
				}
				plain := styles.Field(i).Interface().(lipgloss.Style).UnsetForeground().Render("x")
				if d == None && got != "x" || d == Mono && got != plain {
					t.Errorf("%s at depth %d renders %q", name, d, got)
				}
			}
		}
	}
	if got := New(Dark, Mono).Warning("too tight"); ansi.Strip(got) != "! too tight" || got == "! too tight" {
		t.Errorf("a warning without colours is %q", got)
	}
}

func TestPensAreInOrder(t *testing.T) {
	s := New(Dark, TrueColour)
	pens := s.Pens()
	for pen, style := range map[int]lipgloss.Style{int(PenCut): s.Cut, int(PenWarn): s.Warn, int(PenText): s.Text} {
		if got, want := pens[pen].Open+"x"+pens[pen].Close, style.Render("x"); got != want {
			t.Errorf("pen %d sends %q, its style %q", pen, got, want)
		}
	}
}
