package clock

import (
	"testing"
	"time"
)

func TestDay(t *testing.T) {
	now := time.Date(2026, 11, 25, 9, 30, 0, 0, time.UTC)
	for text, want := range map[string]string{
		"24 Dec": "2026-12-24", "24 dec": "2026-12-24", "Dec 24": "2026-12-24", "24 December": "2026-12-24",
		"24.12.": "2026-12-24", "24 Nov": "2027-11-24", "25 Nov": "2026-11-25", "1 Jan 2028": "2028-01-01",
		"29 Feb": "2028-02-29", "2026-12-24": "2026-12-24", "24. Dec": "2026-12-24",
		"30 Feb": "30 Feb", "soon": "soon", "": "", "12": "12", "24 Dec 2026 at noon": "24 Dec 2026 at noon",
	} {
		if got := Day(text, now); got != want {
			t.Errorf("Day(%q) = %q, want %q", text, got, want)
		}
	}
}
