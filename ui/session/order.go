package session

import (
	"path/filepath"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"chape/project/print/order"
	"chape/ui/act"
)

// PrintOrder prints a quote for the customer, by its place, where the pattern's sheets go.
func (s *Session) PrintOrder(i int, o order.Options) []act.Msg {
	if why, ok := s.Idle(); !ok {
		return []act.Msg{why}
	}
	path := s.doc.Path()
	if path == "" {
		return warn("keep this copy first (Ctrl+S): the sheet is named after its file")
	}
	s.printing = true
	p, dir := s.doc.Committed(), s.PrintFolder()
	base := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	return do(func() tea.Msg {
		f, err := order.File(p, i, base, o)
		if err != nil {
			return printedMsg{err: err}
		}
		paths, err := write(dir, f)
		return printedMsg{paths: paths, err: err}
	})
}
