package plain

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf16"
	"unicode/utf8"
)

// Safe returns s as one line that is safe to send to a terminal or a pipe: line breaks
// and tabs become spaces, other control characters are shown as the pictures
// that Unicode has for them (U+2400 and on; '�' for C1 and for bytes that are
// no UTF-8), and characters that change the order of the text or cannot be seen
// are left out. What is left of an escape sequence shows as ordinary
// characters, so nothing is hidden. Safe of Safe changes nothing.
func Safe(s string) string {
	if safeAlready(s) {
		return s
	}
	var b strings.Builder
	b.Grow(len(s))
	pile := accentsMost // nothing to put an accent on yet
	for i, r := range s {
		switch {
		case r == '\r' && strings.HasPrefix(s[i+1:], "\n"):
			continue
		case breaks(r):
			r = ' '
		case unicode.IsControl(r):
			r = picture(r)
		case unseen(r):
			continue
		}
		switch {
		case unicode.In(r, unicode.Mn, unicode.Me):
			if pile++; pile > accentsMost {
				continue
			}
		case r == ' ':
			pile = accentsMost
		default:
			pile = 0
		}
		b.WriteRune(r)
	}
	return b.String()
}

// accentsMost is how many accents a character may carry: written languages
// need two, a pile of them smears over the lines above and below.
const accentsMost = 2

// breaks says whether r ends a line, a field or a page.
func breaks(r rune) bool {
	return r >= '\t' && r <= '\r' || r == 0x85 || r == 0x2028 || r == 0x2029
}

// picture is the visible stand-in for a control character.
func picture(r rune) rune {
	switch {
	case r < ' ':
		return 0x2400 + r
	case r == 0x7f:
		return 0x2421
	default:
		return utf8.RuneError
	}
}

// safeAlready spares the common case a copy.
func safeAlready(s string) bool {
	for i := range len(s) {
		if s[i] < ' ' || s[i] >= 0x7f {
			return false
		}
	}
	return true
}

// unseen says whether r changes text without being seen: bidirectional
// controls and other format characters, tags, variation selectors, private and
// unassigned code points, and letters that are drawn as nothing.
func unseen(r rune) bool {
	const blankBraille, halfFiller = 0x2800, 0xffa0
	return r == blankBraille || r == halfFiller || !unicode.IsGraphic(r) ||
		unicode.In(r, unicode.Other_Default_Ignorable_Code_Point, unicode.Variation_Selector)
}

// Escaped is a JSON text in which the characters that Safe would leave out or replace
// stand as escapes (RFC 8259, 7): it is the same text to a program, and harmless on a
// screen.
func Escaped(text []byte) []byte {
	if safeAlready(strings.ReplaceAll(string(text), "\n", "")) {
		return text
	}
	var b strings.Builder
	for _, r := range string(text) {
		switch {
		case r < ' ', !unicode.IsControl(r) && !unseen(r):
			b.WriteRune(r)
		case r > 0xffff:
			high, low := utf16.EncodeRune(r)
			fmt.Fprintf(&b, `\u%04x\u%04x`, high, low)
		default:
			fmt.Fprintf(&b, `\u%04x`, r)
		}
	}
	return []byte(b.String())
}
