package workbench

import (
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
)

func TestTyping(t *testing.T) {
	char := tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("12.3")}
	cr := tea.KeyMsg{Type: tea.KeyEnter}
	lf := tea.KeyMsg{Type: tea.KeyCtrlJ}
	type event struct {
		key           tea.KeyMsg
		after         time.Duration
		drop, reading bool
	}
	tests := []struct {
		name   string
		events []event
	}{
		{"reading with CR", []event{{char, 0, false, false}, {cr, 2 * time.Millisecond, false, true}}},
		{"reading with LF", []event{{char, 0, false, false}, {lf, 2 * time.Millisecond, false, true}}},
		{"reading with CR LF", []event{{char, 0, false, false}, {cr, 0, false, true}, {lf, 50 * time.Millisecond, true, false}}},
		{"two lines", []event{{cr, 0, false, false}, {lf, 0, true, false}, {lf, 0, false, false}}},
		{"by hand", []event{{char, 0, false, false}, {cr, 151 * time.Millisecond, false, false}, {lf, 51 * time.Millisecond, false, false}}},
		{"clock set back", []event{{char, 0, false, false}, {cr, -time.Hour, false, false}}},
	}
	for _, tt := range tests {
		var watch typing
		now := time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC)
		for i, e := range tt.events {
			now = now.Add(e.after)
			out, drop, reading := watch.key(e.key, now)
			if drop != e.drop || reading != e.reading {
				t.Errorf("%s, event %d: key(%v) = drop %v, reading %v; want %v, %v", tt.name, i, e.key, drop, reading, e.drop, e.reading)
			}
			if out.Type == tea.KeyCtrlJ && !drop {
				t.Errorf("%s, event %d: an LF got through as such", tt.name, i)
			}
		}
	}
}
