package call

import (
	"io"
	"strings"

	"chape/project/words"
	"chape/ui/layout"
)

// wordsWide is how wide the word list is printed: it fits any terminal and a page.
const wordsWide = 78

// wordList prints what the words of the form and of the plan mean.
func wordList(w io.Writer) error {
	var b strings.Builder
	for i, word := range words.All() {
		if i > 0 {
			b.WriteByte('\n')
		}
		b.WriteString(word.Name + "\n")
		for _, l := range layout.Wrap(word.Text, wordsWide-4) {
			b.WriteString("    " + strings.TrimRight(l, " ") + "\n")
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}
