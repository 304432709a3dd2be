package session

import (
	"errors"
	"io/fs"
	"path/filepath"
	"testing"

	"github.com/charmbracelet/x/ansi"

	"chape/project/store"
)

// TestBriefly: why a save failed has room beside its key in 80 columns, whatever the reason.
func TestBriefly(t *testing.T) {
	path := filepath.Join("/", "a rather long folder of mine, with sheaths in it", "knife.toml")
	denied := &store.Failure{Path: path, Doing: "saved", Why: `no permission in the folder "` + filepath.Dir(path) + `"`, Try: "change its permissions", Err: fs.ErrPermission}
	for want, err := range map[string]error{
		"no permission in its folder":              denied,
		"the file is read-only":                    &store.Failure{Path: path, Doing: "saved", Why: "the file is read-only", Try: "allow writing to it"},
		"it will be tried again":                   nil,
		"the share has gone, and with it all tha…": errors.New("the share has gone, and with it all that was mounted there"),
	} {
		got := briefly(err)
		if line := "! NOT SAVED: " + got + ": Ctrl+S saves it elsewhere"; got != want || ansi.StringWidth(line) > 80 {
			t.Errorf("%v: %q, want %q", err, got, want)
		}
	}
}
