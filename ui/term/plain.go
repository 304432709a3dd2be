package term

import (
	"github.com/charmbracelet/x/ansi"

	"chape/project/plain"
)

// Plain returns s as one line that is safe to send to a terminal, see plain.Safe.
func Plain(s string) string { return plain.Safe(s) }

// Short is Plain, cut to a width in cells with an ellipsis.
func Short(s string, width int) string {
	return ansi.Truncate(Plain(s), width, "…")
}
