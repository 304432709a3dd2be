//go:build !windows

package endtoend

import "testing"

// TestLettersTogether: on a slow line letters arrive together; each does what
// it does alone.
func TestLettersTogether(t *testing.T) {
	h := newHome(t, aKnife())
	s := h.open(160, 45)
	s.Type(home_ + down + down + pasted("142.5") + "\r" + pasted("31.5") + "\r")
	savedWith(s, 1, 31.5)
	s.Type("uu")
	savedWith(s, 0, 110)
	s.Type("UUb")
	s.Shows("Esc leave")
	s.Type(escape)
	savedWith(s, 1, 31.5)
}
