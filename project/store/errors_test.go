package store_test

import (
	"errors"
	"fmt"
	"testing"

	"chape/project/store"
)

// Why a save failed does not depend on what the folder is called.
func TestReason(t *testing.T) {
	const odd = `/a": saved: /x can't be "/b.toml`
	now := store.Stamp{Size: 1}
	now.Sum[0] = 1
	for _, c := range []struct {
		err        error
		line, want string
	}{
		{&store.Failure{Path: odd, Doing: "saved", Why: "the disk is full", Try: "free some space, then save again"},
			fmt.Sprintf("%q can't be saved: the disk is full: free some space, then save again", odd), "the disk is full: free some space, then save again"},
		{&store.ErrChanged{Path: odd, Now: now},
			fmt.Sprintf("%q was changed by another program: nothing was written to it: load it, or keep both", odd), "changed by another program: nothing was written to it: load it, or keep both"},
		{&store.ErrChanged{Path: odd, Kept: "x"},
			fmt.Sprintf("%q is gone, moved or deleted by another program: save again under its name or another; one more version of it is in \"x\"", odd),
			"gone, moved or deleted by another program: save again under its name or another; one more version of it is in \"x\""},
		{&store.ErrExists{Path: odd}, fmt.Sprintf("%q is there already: choose another name", odd), "there already: choose another name"},
		{errors.New("x: y"), "x: y", "x: y"},
	} {
		if c.err.Error() != c.line {
			t.Errorf("the line is\n%s, want\n%s", c.err, c.line)
		}
		if got := store.Reason(fmt.Errorf("in passing: %w", c.err)); got != c.want && c.line != c.want {
			t.Errorf("Reason = %q, want %q", got, c.want)
		}
	}
}
