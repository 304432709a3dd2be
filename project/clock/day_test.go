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

// What has been is the last such day: today, yesterday, last year's 27 November; 29 February
// of the last leap year.
func TestPastDay(t *testing.T) {
	now := time.Date(2026, 11, 26, 9, 30, 0, 0, time.UTC)
	for text, want := range map[string]string{
		"24.11.": "2026-11-24", "26.11.": "2026-11-26", "27.11.": "2025-11-27", "24.11.2026": "2026-11-24",
		"29 Feb": "2024-02-29", "Nov 24": "2026-11-24", "2027-01-02": "2027-01-02", "soon": "soon", "": "",
	} {
		if got := PastDay(text, now); got != want {
			t.Errorf("PastDay(%q) = %q, want %q", text, got, want)
		}
	}
}
