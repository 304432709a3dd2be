package workbench

import (
	"errors"
	"fmt"
	"os"

	"chape/ui/document"
	"chape/ui/guard"
	"chape/ui/term"
)

// Run shows the workbench until it is left. The error, for people, says what
// could not be kept and where it was put instead.
func Run(o Options) error {
	out := term.Open(os.Stdout)
	o.Alarm.Voice = out
	m := New(o)
	defer m.session.Release() // another window may open the project when its last save is done
	crash, err := guard.Run(m, out)
	out.Close()
	for _, line := range m.unrung() {
		fmt.Println(line)
	}
	return errors.Join(err, m.Finish(crash))
}

// unrung says, to whoever has quit, which holds run on without a bell.
func (m *Model) unrung() []string {
	lines := m.alarm.Running(m.session.Doc().State() == document.Loose)
	if len(lines) == 0 {
		return nil
	}
	return append([]string{"Nothing rings while chape is closed. Still running:"}, lines...)
}
