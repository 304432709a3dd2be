package session

import (
	"errors"

	"chape/project/store"
	"chape/ui/document"
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
	return st.Warn.Render("! NOT SAVED: " + reason(s.doc.Failure()))
}
