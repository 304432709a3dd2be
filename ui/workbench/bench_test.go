package workbench

import (
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
)

// BenchmarkSecond is what an idle second costs: tick, looks and the screen.
func BenchmarkSecond(b *testing.B) {
	s := filed(b, 120, 40, fresh())
	s.m.View()
	b.ReportAllocs()
	for b.Loop() {
		s.now = s.now.Add(time.Second)
		s.send(tickMsg{})
		s.m.View()
	}
}

// BenchmarkKeystroke is a digit typed into a number: plan and screen follow.
func BenchmarkKeystroke(b *testing.B) {
	s := filed(b, 120, 40, fresh())
	s.keys("1", "4")
	b.ReportAllocs()
	for b.Loop() {
		s.send(char('0'))
		s.m.View()
		s.send(tea.KeyMsg{Type: tea.KeyBackspace})
		s.m.View()
	}
}
