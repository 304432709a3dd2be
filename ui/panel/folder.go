package panel

import (
	"errors"
	"os"
	"path/filepath"
	"strings"

	"github.com/charmbracelet/x/ansi"
)

// folderOf reads a folder as it is typed: a full path, or one from the home folder on, in
// quotes or not, as file managers give it to paste. "" is none.
func folderOf(text string) (string, error) {
	if n := len(text); n >= 2 && (text[0] == '\'' || text[0] == '"') && text[n-1] == text[0] {
		text = text[1 : n-1]
	}
	if rest, ok := strings.CutPrefix(filepath.ToSlash(text), "~"); ok && (rest == "" || rest[0] == '/') {
		home, err := os.UserHomeDir()
		if err != nil {
			return "", errors.New("there is no home folder for ~: give a full path")
		}
		return filepath.Join(home, filepath.FromSlash(rest)), nil
	}
	if text != "" && !filepath.IsAbs(text) {
		return "", errors.New("give a full path, or one from the home folder on, as in ~/prints")
	}
	return strings.TrimSuffix(text, string(filepath.Separator)), nil
}

// tail is the end of a text, as far as it fits: of a folder it tells the most.
func tail(s string, w int) string {
	if wide := ansi.StringWidth(s); wide > w {
		return ansi.TruncateLeft(s, wide-max(w, 1)+1, "…")
	}
	return s
}
