// Package tracing takes a picture of a tracing sheet from the user and reads it: which
// picture, how far the reading is, what it gave or why not. Pages that need what lies on a
// sheet (a knife's outline, an earlier pattern, a piece of leather) have a Picker.
package tracing

import (
	"net/url"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
)

// Path is the path in a text as terminals paste one when a file is dropped on them:
// plain, in quotes, with backslashes before what a shell would take amiss, or as a file://
// URL. ~/ is the home folder. Of several lines the first counts.
func Path(text string) string {
	text = strings.TrimSpace(text)
	if i := strings.IndexAny(text, "\r\n"); i >= 0 {
		text = strings.TrimSpace(text[:i])
	}
	if p, ok := fromURL(text); ok {
		return p
	}
	if n := len(text); n > 1 && (text[0] == '\'' || text[0] == '"') && text[n-1] == text[0] {
		quote := text[:1]
		text = text[1 : n-1]
		if quote == "'" {
			text = strings.ReplaceAll(text, `'\''`, "'")
		} else if runtime.GOOS != "windows" {
			text = bare(text)
		}
		if p, ok := fromURL(text); ok {
			return p
		}
	} else if runtime.GOOS != "windows" {
		text = bare(text)
	}
	return fromHome(text)
}

// bare takes the backslashes off.
func bare(s string) string {
	var b strings.Builder
	escaped := false
	for _, r := range s {
		if r == '\\' && !escaped {
			escaped = true
			continue
		}
		escaped = false
		b.WriteRune(r)
	}
	return b.String()
}

// fromURL is the path of a file URL (RFC 8089); its host is left aside.
func fromURL(s string) (string, bool) {
	if len(s) < 5 || !strings.EqualFold(s[:5], "file:") {
		return "", false
	}
	u, err := url.Parse(s)
	if err != nil || u.Path == "" {
		return "", false
	}
	p := u.Path
	if runtime.GOOS == "windows" {
		p = strings.TrimPrefix(p, "/")
	}
	return filepath.FromSlash(p), true
}

func fromHome(s string) string {
	if s != "~" && !strings.HasPrefix(s, "~/") {
		return s
	}
	home, err := os.UserHomeDir()
	if err != nil {
		return s
	}
	return filepath.Join(home, s[1:])
}

// kinds are the endings of names of what cameras write, those that will be refused among
// them: the refusal says what would do.
var kinds = []string{".jpg", ".jpeg", ".png", ".heic", ".heif"}

func isPicture(name string) bool {
	return slices.Contains(kinds, strings.ToLower(filepath.Ext(name)))
}

// Names tells whether a text that was pasted names a picture by its full path: then it was
// dropped on the window.
func Names(text string) bool {
	p := Path(text)
	return filepath.IsAbs(p) && isPicture(p)
}

// Begins tells whether a path as it is pasted may begin with this letter.
func Begins(r rune) bool { return strings.ContainsRune(`/~'"\`, r) }

// mostNames bounds how many names of a folder are looked at.
const mostNames = 20000

// complete carries a path being typed on as far as the names in its folder say, and gives
// those that begin so: folders, which end in a slash, and pictures. It reads the disk.
func complete(text string) (longer string, names []string) {
	path := fromHome(text)
	if text == "~" {
		return "~/", nil
	}
	folder, begin := filepath.Split(path)
	look := folder
	if look == "" {
		look = "."
	}
	f, err := os.Open(look)
	if err != nil {
		return text, nil
	}
	defer f.Close()
	entries, _ := f.ReadDir(mostNames)
	for _, e := range entries {
		name := e.Name()
		if !strings.HasPrefix(name, begin) || begin == "" && strings.HasPrefix(name, ".") {
			continue
		}
		if info, err := os.Stat(filepath.Join(look, name)); err == nil && info.IsDir() {
			names = append(names, name+"/")
		} else if isPicture(name) {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	return text[:len(text)-len(begin)] + common(begin, names), names
}

// common is what all names begin with; begin where there are none.
func common(begin string, names []string) string {
	if len(names) == 0 {
		return begin
	}
	c := names[0]
	for _, n := range names[1:] {
		for !strings.HasPrefix(n, c) {
			c = c[:len(c)-1]
		}
	}
	for !validEnd(c) {
		c = c[:len(c)-1]
	}
	return c
}

// validEnd tells whether a text does not end within a letter.
func validEnd(s string) bool { return strings.ToValidUTF8(s, "") == s }

// newest is the picture of a folder that was changed last; "" where there is none.
func newest(folder string) string {
	f, err := os.Open(fromHome(folder))
	if err != nil {
		return ""
	}
	defer f.Close()
	entries, _ := f.ReadDir(mostNames)
	best, found := int64(0), ""
	for _, e := range entries {
		if !isPicture(e.Name()) || strings.HasPrefix(e.Name(), ".") {
			continue
		}
		info, err := os.Stat(filepath.Join(f.Name(), e.Name()))
		if err != nil || !info.Mode().IsRegular() {
			continue
		}
		if t := info.ModTime().UnixNano(); found == "" || t > best || t == best && e.Name() > filepath.Base(found) {
			best, found = t, filepath.Join(f.Name(), e.Name())
		}
	}
	return found
}
