package plain

import (
	"regexp"
	"strings"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"
)

// figure is a number with what belongs to it: a sign or a diameter before, its fraction
// and its unit behind, and the stop that ends them.
var figure = regexp.MustCompile(`(?:[±Ø+−-] )?\d+(?: \d+/\d+)?(?: (?:(?:mm|cm|m|in|ft|oz|lb|g|kg|min|s)\b|h\b(?: \d+ min\b)?|°C|%))?[.,:;)]*`)

const (
	space = " "
	bound = "\u00a0" // no line breaks here
)

// Wrap breaks a text at spaces into lines of at most w columns, words longer than that
// anywhere. A figure stays with its fraction and its unit where a line has room for them.
// No lines for w of 0 or less.
func Wrap(text string, w int) []string {
	if w <= 0 {
		return nil
	}
	whole := text
	if strings.ContainsAny(text, "0123456789") {
		whole = figure.ReplaceAllStringFunc(text, func(f string) string {
			if utf8.RuneCountInString(f) > w {
				return f
			}
			return strings.ReplaceAll(f, space, bound)
		})
	}
	return strings.Split(strings.ReplaceAll(ansi.Wrap(whole, w, ""), bound, space), "\n")
}
