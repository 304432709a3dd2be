// Package letters measures and breaks words in the font of the sheets.
package letters

import (
	"regexp"
	"strings"
	"sync"
	"unicode"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/text/unicode/norm"
)

// Lacking stands for letters that the font does not have.
const Lacking = "…"

// face is one weight of the font, with the widths of letters: of common ones at hand, of
// others as they are asked for. Widths are shares of the size; negative: not in the font.
type face struct {
	common [0x180]float64 // Latin letters: a sheet asks for thousands
	mu     sync.Mutex
	font   *sfnt.Font
	buf    sfnt.Buffer
	widths map[rune]float64
}

var faces = sync.OnceValue(func() [2]*face {
	return [2]*face{loadFace(goregular.TTF), loadFace(gobold.TTF)}
})

// loadFace reads a font that is part of the program: it can't be bad.
func loadFace(ttf []byte) *face {
	f, err := sfnt.Parse(ttf)
	if err != nil {
		panic("print: the built-in font can't be read: " + err.Error())
	}
	out := &face{font: f, widths: map[rune]float64{}}
	for r := range out.common {
		out.common[r] = out.advance(rune(r))
	}
	return out
}

func weight(bold bool) *face {
	if bold {
		return faces()[1]
	}
	return faces()[0]
}

// width of a letter as a share of the size; ok is false if the font has none.
func (f *face) width(r rune) (w float64, ok bool) {
	if r >= 0 && int(r) < len(f.common) {
		w = f.common[r]
		return w, w >= 0
	}
	f.mu.Lock()
	defer f.mu.Unlock()
	w, seen := f.widths[r]
	if !seen {
		w = f.advance(r)
		f.widths[r] = w
	}
	return w, w >= 0
}

// advance looks a width up in the font.
func (f *face) advance(r rune) float64 {
	const ppem = 2048
	if i, err := f.font.GlyphIndex(&f.buf, r); err == nil && i != 0 {
		if a, err := f.font.GlyphAdvance(&f.buf, i, fixed.I(ppem), font.HintingNone); err == nil {
			return float64(a) / 64 / ppem
		}
	}
	return -1
}

// Width is the width of a line of words as a share of its size.
func Width(s string, bold bool) float64 {
	f := weight(bold)
	sum := 0.0
	for _, r := range s {
		if w, ok := f.width(r); ok {
			sum += w
		}
	}
	return sum
}

// Printable brings words to what the font can show: letters with their accents in
// one, tabs and line ends as spaces, marks that can't be seen (directions, joiners)
// left out, and an ellipsis for letters that are lacking, however many in a row.
func Printable(s string) string {
	f := weight(false)
	var b strings.Builder
	gap := false // letters were left out, and spaces since
	for _, r := range norm.NFC.String(s) {
		switch {
		case unicode.IsSpace(r):
			if !gap {
				b.WriteByte(' ')
			}
			continue
		case hidden(r):
			continue
		case !f.shows(r):
			if !gap {
				b.WriteString(Lacking)
			}
			gap = true
			continue
		}
		if gap && (unicode.IsLetter(r) || unicode.IsDigit(r)) {
			b.WriteByte(' ')
		}
		gap = false
		b.WriteRune(r)
	}
	return b.String()
}

// hidden are marks that nobody sees.
func hidden(r rune) bool {
	return unicode.Is(unicode.Cf, r) || unicode.Is(unicode.Variation_Selector, r) || unicode.IsControl(r)
}

// shows tells whether the font has a letter, and the PDF a place for it.
func (f *face) shows(r rune) bool {
	_, ok := f.width(r)
	return ok && r <= 0xffff
}

// Lacks tells whether printable leaves letters out of any of the words.
func Lacks(words ...string) bool {
	f := weight(false)
	for _, s := range words {
		for _, r := range norm.NFC.String(s) {
			if !unicode.IsSpace(r) && !hidden(r) && !f.shows(r) {
				return true
			}
		}
	}
	return false
}

// Fit cuts words with an ellipsis so that they are no wider than width.
func Fit(s string, size, width float64, bold bool) string {
	if Width(s, bold)*size <= width {
		return s
	}
	r := []rune(s)
	for n := len(r) - 1; n > 0; n-- {
		cut := strings.TrimRight(string(r[:n]), " ") + "…"
		if Width(cut, bold)*size <= width {
			return cut
		}
	}
	return ""
}

// Wrap breaks words into lines no wider than width; a word too long for a
// line is broken anywhere. A figure stays with its fraction and its unit.
func Wrap(s string, size, width float64, bold bool) []string {
	var lines []string
	line := ""
	for _, word := range figuresWhole(strings.Fields(s)) {
		for {
			try := word
			if line != "" {
				try = line + " " + word
			}
			if Width(try, bold)*size <= width {
				line = try
				break
			}
			if line != "" {
				lines, line = append(lines, line), ""
				continue
			}
			n := longestPrefix(word, size, width, bold)
			lines, word = append(lines, word[:n]), word[n:]
		}
	}
	if line != "" || len(lines) == 0 {
		lines = append(lines, line)
	}
	return lines
}

// units are what a figure is not parted from.
var units = regexp.MustCompile(`^(mm|cm|m|in|ft|oz|g|h|min|s|%|°C|cm²|in²|ft²)[.,:;)]*$`)

var fraction = regexp.MustCompile(`^\d+/\d+[.,:;)]*$`)

// figuresWhole puts a figure, its fraction and its unit into one word.
func figuresWhole(words []string) []string {
	var out []string
	for _, w := range words {
		n := len(out) - 1
		if n >= 0 && endsInDigit(out[n]) && (units.MatchString(w) || fraction.MatchString(w)) {
			out[n] += " " + w
			continue
		}
		out = append(out, w)
	}
	return out
}

func endsInDigit(s string) bool { return s[len(s)-1] >= '0' && s[len(s)-1] <= '9' }

// longestPrefix is how many bytes of a word fit, at least one letter.
func longestPrefix(word string, size, width float64, bold bool) int {
	fits := 0
	for i := range word {
		if i > 0 && Width(word[:i], bold)*size > width {
			break
		}
		fits = i
	}
	if fits == 0 {
		for i := range word {
			if i > 0 {
				return i
			}
		}
		return len(word)
	}
	return fits
}

// Joined is the non-empty words with a mark between them.
func Joined(words ...string) string {
	var out []string
	for _, w := range words {
		if w != "" {
			out = append(out, w)
		}
	}
	return strings.Join(out, " · ")
}
