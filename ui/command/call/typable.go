package call

import (
	"runtime"
	"strings"
	"unicode"
)

// Typable is a word of a command line as it has to be typed, so that what is suggested
// can be pasted: quoted for the shell where it must be.
func Typable(word string) string { return quotedFor(runtime.GOOS == "windows", word) }

// TypablePath is Typable for a file, whose name must not be taken for an option.
func TypablePath(path string) string {
	if strings.HasPrefix(path, "-") {
		path = "./" + path
	}
	return Typable(path)
}

// quotedFor quotes a word that is more than letters, digits and what never means
// anything to a shell: after POSIX.1-2017, 2.2.2, in single quotes; for the shells of
// Windows, whose names of files hold no quotes, in double ones.
func quotedFor(windows bool, word string) string {
	plain := func(r rune) bool {
		return unicode.IsLetter(r) || unicode.IsDigit(r) || strings.ContainsRune("-_./+:@%,", r) || windows && r == '\\'
	}
	switch {
	case word != "" && !strings.ContainsFunc(word, func(r rune) bool { return !plain(r) }):
		return word
	case windows:
		return `"` + word + `"`
	}
	return "'" + strings.ReplaceAll(word, "'", `'\''`) + "'"
}
