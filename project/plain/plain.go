// Package plain is what is done to words that others wrote, so that none of it reaches a
// screen raw: they come from files, keys and decoders.
package plain

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Printable is s as it stands, or quoted where it would not print: a name or a
// value may hold anything, and none of it may reach the terminal raw.
func Printable(s string) string {
	bad := func(r rune) bool { return r == utf8.RuneError || !unicode.IsPrint(r) }
	if s == "" || strings.ContainsFunc(s, bad) {
		return strconv.Quote(s)
	}
	return s
}

// Quote quotes s, cut where nobody would read on.
func Quote(s string) string {
	const most = 40
	if utf8.RuneCountInString(s) > most {
		s = string([]rune(s)[:most]) + "…"
	}
	return strconv.Quote(s)
}

// Foreign takes line ends and whatever does not print out of a foreign text.
func Foreign(s string) string {
	s = strings.Join(strings.Fields(s), " ")
	if q := Printable(s); q != s {
		s = strings.Trim(q, `"`)
	}
	if r := []rune(s); len(r) > 160 {
		s = string(r[:160]) + "…"
	}
	return s
}

// Many is a number of things with their name: "1 step", "3 steps".
func Many(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return strconv.Itoa(n) + " " + what + "s"
}
