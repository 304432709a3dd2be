package term

import (
	"cmp"
	"runtime"
	"strings"

	"chape/ui/canvas"
)

// Glyphs chooses what drawings are made of: ASCII on the console that has nothing more
// (TERM is 'linux' or 'dumb'), whatever was chosen in another terminal; else the
// configuration's word when it has one; else braille where the locale is UTF-8, and ASCII
// where not. What the font shows no program can tell. The environment is read with getenv.
func Glyphs(configured string, getenv func(string) string) (canvas.Glyphs, error) {
	g := canvas.ASCII
	if utf8Locale(getenv) {
		g = canvas.Braille
	}
	if configured != "" {
		var err error
		if g, err = canvas.ParseGlyphs(configured); err != nil {
			return g, err
		}
	}
	if name := getenv("TERM"); name == "linux" || name == "dumb" {
		return canvas.ASCII, nil
	}
	return g, nil
}

// utf8Locale tells whether characters are UTF-8, by the first of the variables that is
// set (POSIX.1-2017, XBD 8.2). Windows has no such variables; its terminals are.
func utf8Locale(getenv func(string) string) bool {
	locale := cmp.Or(getenv("LC_ALL"), getenv("LC_CTYPE"), getenv("LANG"))
	if locale == "" && runtime.GOOS == "windows" {
		return true
	}
	locale = strings.ToLower(locale)
	return strings.Contains(locale, "utf-8") || strings.Contains(locale, "utf8")
}
