package session

import (
	"errors"
	"fmt"
	"path/filepath"
	"strings"

	"chape/project/store"
	"chape/ui/document"
	"chape/ui/term"
	"chape/ui/term/ink"
)

// Stands says in a few words how the project stands to its file, and what to do.
func (s *Session) Stands(st ink.Styles) string {
	switch s.doc.State() {
	case document.Saved:
		return st.Good.Render("saved")
	case document.Saving:
		return st.Quiet.Render("saving…")
	case document.Loose:
		return st.Note.Render("* a copy, not kept: Ctrl+S keeps it")
	case document.Divided:
		return st.Warn.Render("! changed on both sides")
	case document.Gone:
		return st.Warn.Render("! the file is gone: Ctrl+S makes it anew")
	case document.Damaged:
		var unread *store.Failure
		if errors.As(s.doc.Damage(), &unread) {
			return st.Warn.Render("! the file can't be read: " + unread.Why)
		}
		return st.Warn.Render("! the file was damaged by another program: Ctrl+S puts yours beside it")
	}
	does := "saves it elsewhere"
	if s.o.Shelf == nil {
		does = "tries again"
	}
	return st.Warn.Render("! NOT SAVED: " + briefly(s.doc.Failure()) + ": Ctrl+S " + does)
}

// mostWhy is how much of a reason stands beside the key on a narrow screen.
const mostWhy = 40

// briefly is why a save failed, without what would do: that stands in the question that
// Ctrl+S asks.
func briefly(err error) string {
	var f *store.Failure
	if !errors.As(err, &f) {
		return term.Short(reason(err), mostWhy)
	}
	why := strings.ReplaceAll(f.Why, fmt.Sprintf("the folder %q", filepath.Dir(f.Path)), "its folder")
	return term.Short(term.Plain(why), mostWhy)
}
