package call

import (
	"errors"
	"fmt"
	"strings"
	"testing"
)

// TestStatus: an error is said as it is, but for what a terminal would act on.
func TestStatus(t *testing.T) {
	for _, c := range []struct {
		err    error
		said   string
		status int
	}{
		{nil, "", Good},
		{errors.New("no such file"), "chape: no such file\n", BadFile},
		{Misuse("which file?"), "chape: which file?\n", BadUsage},
		{fmt.Errorf("because: %w", Misuse("which file?")), "chape: because: which file?\n", BadUsage},
		{errors.New("a fault\n\nstack\n\tframe"), "chape: a fault\n\nstack\n frame\n", BadFile},
		{Misuse("not defined: -\x1b[2J"), "chape: not defined: -␛[2J\n", BadUsage},
	} {
		var b strings.Builder
		if got := Status(&b, c.err); got != c.status || b.String() != c.said {
			t.Errorf("Status(%v) = %d, said %q; want %d, %q", c.err, got, b.String(), c.status, c.said)
		}
	}
}
