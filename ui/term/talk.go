package term

import (
	"os"
	"runtime"
	"strings"
)

// Open returns the writer for a terminal, which sends the kind in TERM nothing that
// it would show as rubbish.
func Open(out *os.File) *Writer {
	return NewWriter(out, talks(os.Getenv("TERM"), runtime.GOOS == "windows"))
}

// talks tells whether a terminal of that kind takes titles and notices, or passes
// over them in silence. The bell is older than any of them.
//
// The consoles of Linux and the BSDs and the terminals up to ECMA-48 know no operating
// system commands (terminfo(5): none of their entries has 'tsl'). Windows has no TERM.
func talks(kind string, windows bool) bool {
	if kind == "" {
		return windows
	}
	for _, mute := range []string{"dumb", "unknown", "linux", "vt", "wsvt", "ansi", "cons", "con80"} {
		if strings.HasPrefix(kind, mute) {
			return false
		}
	}
	return true
}
