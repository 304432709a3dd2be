package bench

import (
	"fmt"
	"strings"

	"chape/ui/act"
	"chape/ui/layout"
)

// explain shows the keys in place of the step.
func (m *Model) explain() {
	m.silenced()
	m.helps = true
}

// putAway takes them away again. The key that does it does nothing else, however long it
// is held down.
func (m *Model) putAway() {
	m.silenced()
	m.helps = false
}

// help is the view with the keys in place of the step; the head still says the time.
func (m *Model) help() string {
	lines := []string{m.head(), "", " " + m.Styles.Strong.Render("The keys of the bench view"), ""}
	for _, k := range act.Alive(m) {
		text := fmt.Sprintf("%-14s  %s", k.Help().Key, k.Help().Desc)
		lines = append(lines, m.paragraph(text, 2, m.Styles.Text)...)
	}
	lines = append(lines, "", " "+m.Styles.Quiet.Render("any key puts this away and does nothing else"))
	return strings.Join(layout.Fit(lines, m.w, m.h), "\n")
}
