package command

import (
	"errors"
	"io/fs"
	"os"
	"strings"

	"chape/project/shelf"
	"chape/project/store"
	"chape/ui/command/call"
	"chape/ui/command/settings"
)

// locate gives the file that a word of a call means: the one at that path or, where there
// is none, the project on the shelf that is called so. A word that means neither is given
// back: whoever reads it says what is wrong with it.
func locate(set settings.Chosen, word string) (path string, err error) {
	if _, err := os.Lstat(word); !errors.Is(err, fs.ErrNotExist) || call.IsProject(word) {
		return word, nil
	}
	folder, err := set.Folder()
	if err != nil {
		return word, nil
	}
	exact, near := shelf.Open(store.OS(), folder).Named(word)
	switch {
	case len(exact) == 1:
		return exact[0].Path, nil
	case len(exact) > 1:
		return "", call.Misuse("%d projects on your shelf are called %q: give one of their files: %s", len(exact), word, some(exact, func(e shelf.Entry) string { return e.Path }))
	case len(near) > 0:
		return "", call.Misuse("there is no project called %q on your shelf: did you mean %s?", word, some(near, func(e shelf.Entry) string { return e.Title }))
	}
	return word, nil
}

// some lists a few of the projects, as they would have to be typed.
func some(all []shelf.Entry, by func(shelf.Entry) string) string {
	const most = 4
	var words []string
	for i, e := range all {
		if i == most {
			words = append(words, "…")
			break
		}
		words = append(words, call.Typable(by(e)))
	}
	return strings.Join(words, ", ")
}
