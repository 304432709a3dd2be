package store

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// nameMax is the longest name SafeName makes, in bytes; it leaves room for
// an ending and for the names made beside it.
const nameMax = 120

// nameless is what SafeName makes of a title without a usable character.
const nameless = "untitled"

// SafeName makes a file name, without folder or ending, from any title: one
// that Linux, macOS and Windows all take, of at most 120 bytes, never empty.
// Letters of every script stay; what some system refuses, or no one can see,
// becomes a space or a dash. The rules for Windows are those of Microsoft,
// "Naming Files, Paths, and Namespaces".
func SafeName(title string) string {
	var b strings.Builder
	for _, r := range strings.ToValidUTF8(title, " ") {
		switch {
		case strings.ContainsRune(`/\:|*?"<>`, r):
			b.WriteRune('-')
		case unicode.IsSpace(r), unicode.IsControl(r), !unicode.IsGraphic(r):
			b.WriteRune(' ')
		default:
			b.WriteRune(r)
		}
	}
	// One space for many. A dot in front hides a file, a dash there looks like
	// a flag, and Windows drops dots and spaces at the end.
	name := strings.Join(strings.Fields(b.String()), " ")
	name = strings.TrimLeft(name, "-. ")
	name = strings.TrimRight(cutBytes(name, nameMax-1), ". ")
	if name == "" {
		return nameless
	}
	if reserved(name) {
		// "NUL.txt" is the device as well: what counts is before the dot.
		return "_" + name
	}
	return name
}

// reserved reports a name that Windows takes for a device, whatever follows
// its first dot.
func reserved(name string) bool {
	first, _, _ := strings.Cut(name, ".")
	first = strings.ToUpper(strings.TrimRight(first, " "))
	switch first {
	case "CON", "PRN", "AUX", "NUL", "CONIN$", "CONOUT$":
		return true
	}
	port, ok := strings.CutPrefix(first, "COM")
	if !ok {
		port, ok = strings.CutPrefix(first, "LPT")
	}
	return ok && utf8.RuneCountInString(port) == 1 && strings.Contains("0123456789¹²³", port)
}

// cutBytes shortens s to at most n bytes without splitting a rune.
func cutBytes(s string, n int) string {
	if len(s) <= n {
		return s
	}
	for n > 0 && !utf8.RuneStart(s[n]) {
		n--
	}
	return s[:max(n, 0)]
}
