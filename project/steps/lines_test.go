package steps

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"
)

// hours makes a hold that falls due so many hours from noon.
func hours(project, short string, h float64) Hold {
	due := noon.Add(time.Duration(h * float64(time.Hour)))
	return Hold{Project: project, Short: short, Started: noon.AddDate(0, 0, -9), Due: due}
}

func TestHoldLine(t *testing.T) {
	look := hours("", "DRY", -1)
	look.LookBy = noon.Add(24 * time.Hour)
	late := look
	late.LookBy = noon.Add(-time.Minute)
	only := look
	only.Due = only.Started
	for want, h := range map[string]Hold{
		"knife DRY: 1 h to go, 13:00":             hours("knife", "DRY", 1),
		"DRY: 2 d 3 h to go, Sat 14:30":           hours("", "DRY", 50.5),
		"DRY: due since 11:00":                    hours("", "DRY", -1),
		"DRY: due since 11:00, look by Fri 12:00": look,
		"DRY: look at it, was due by 11:59":       late,
		"DRY: look by Fri 12:00":                  only,
	} {
		if got := h.Line(noon); got != want {
			t.Errorf("%+v says %q, want %q", h, got, want)
		}
	}
}

func TestHoldLines(t *testing.T) {
	var six, many []Hold
	for i := range 6 {
		six = append(six, hours(fmt.Sprintf("knife %d", i), "DRY", float64(i*20+1)))
	}
	for i := range 40 {
		many = append(many, hours(fmt.Sprintf("knife %d", i), "DRY", float64(i-30)-0.5))
	}
	away := slices.Clone(six[:3])
	away[0].PutAway = true
	long := strings.Repeat("long name ", 8)
	for _, c := range []struct {
		name  string
		holds []Hold
		want  []string
	}{
		{"none", nil, nil},
		{"one", six[:1], []string{"knife 0 DRY: 1 h to go, 13:00"}},
		{"six", six, []string{
			"knife 0 DRY: 1 h to go, 13:00   knife 1 DRY: 21 h to go, Fri 09:00",
			"knife 2 DRY: 41 h to go, Sat 05:00   +3 more, next Sun 01:00"}},
		{"due first", []Hold{hours("", "DRY", 3), hours("", "LOOSEN 2", -1)}, []string{"LOOSEN 2: due since 11:00   DRY: 3 h to go, 15:00"}},
		{"put away last", away, []string{
			"knife 1 DRY: 21 h to go, Fri 09:00   knife 2 DRY: 41 h to go, Sat 05:00", "knife 0 DRY: 1 h to go, 13:00"}},
		{"many due, some running", many, []string{
			"31 due: knife 0 DRY, knife 1 DRY, knife 2 DRY, knife 3 DRY, knife 4 DRY, …",
			"knife 31 DRY: 30 min to go, 12:30   +8 more, next 13:30"}},
		{"four due, one running", []Hold{
			hours("", "LOOSEN 2", -5), hours("Birch", "CURE", -4), hours("Birch", "FOLD", -3), hours("Gum", "CURE", -2), hours("Elm", "DRY", 0.5)},
			[]string{"4 due: LOOSEN 2, Birch CURE, Birch FOLD, Gum CURE   Elm DRY: 30 min to go, 12:30"}},
		{"due only", many[:30], []string{"30 due: knife 0 DRY, knife 1 DRY, knife 2 DRY, knife 3 DRY, knife 4 DRY, …"}},
		{"long names", []Hold{hours(long, "DRY", -1), hours(long, "CURE", 1), hours(long, "SEAL", 2)}, []string{
			"long name long name long name long name long name long nam… DRY: due since 11:00",
			"long name long name long name long… CURE: 1 h to go, 13:00   +1 more, next 14:00"}},
	} {
		if got := HoldLines(c.holds, noon, 80); !slices.Equal(got, c.want) {
			t.Errorf("%s:\n%s\nwant\n%s", c.name, strings.Join(got, "\n"), strings.Join(c.want, "\n"))
		}
	}
}

// Whatever is due: the next hold to fall due is told, and the time after 'next' lies ahead.
func TestHoldLinesAlwaysTellTheNext(t *testing.T) {
	for due := range 12 {
		for running := 1; running < 12; running++ {
			var holds []Hold
			for i := range due {
				holds = append(holds, hours(fmt.Sprintf("due %d", i), "LOOSEN 1", float64(-i)-0.5))
			}
			for i := range running {
				holds = append(holds, hours(fmt.Sprintf("runs %d", i), "DRY", float64(i)+0.25))
			}
			text := strings.Join(HoldLines(holds, noon, 80), "\n")
			if !strings.Contains(text, "runs 0 DRY: 15 min to go, 12:15") {
				t.Fatalf("%d due, %d running:\n%s", due, running, text)
			}
			if _, next, ok := strings.Cut(text, "next "); ok && next <= "12:15" {
				t.Fatalf("%d due, %d running: next is past:\n%s", due, running, text)
			}
		}
	}
}

func TestHoldLinesFitAnyWidth(t *testing.T) {
	holds := []Hold{hours("wide 刀の鞘\x1b[31m\n"+strings.Repeat("x", 100), "DRY", 1)}
	for i := range 12 {
		holds = append(holds, hours(fmt.Sprintf("刀 %d", i), "MEASURE12", float64(3*i-18)))
	}
	for from := range len(holds) {
		for width := range 200 {
			lines := HoldLines(holds[from:], noon, width)
			if len(lines) > 2 || width > 0 && len(lines) == 0 {
				t.Fatalf("width %d: %d lines", width, len(lines))
			}
			for _, l := range lines {
				if ansi.StringWidth(l) > width || strings.ContainsAny(l, "\x1b\n") {
					t.Fatalf("width %d: %q", width, l)
				}
			}
		}
	}
}

func TestNearest(t *testing.T) {
	away := hours("away", "DRY", 1)
	away.PutAway = true
	for _, c := range []struct {
		holds []Hold
		want  string
	}{
		{[]Hold{hours("a", "DRY", 3), hours("b", "DRY", 2), hours("c", "DRY", -1)}, "b"},
		{[]Hold{hours("a", "DRY", -1), hours("b", "DRY", -2)}, "b"},
		{[]Hold{away, hours("a", "DRY", 3)}, "a"},
		{[]Hold{away, hours("a", "DRY", -1)}, "a"},
		{[]Hold{away}, "away"},
	} {
		if got, ok := Nearest(c.holds, noon); !ok || got.Project != c.want {
			t.Errorf("nearest of %+v is %q, want %q", c.holds, got.Project, c.want)
		}
	}
	if _, ok := Nearest(nil, noon); ok {
		t.Error("a nearest hold of none")
	}
}

// A full shelf: the worst order is the one in which each hold goes before those known.
func BenchmarkHoldLines(b *testing.B) {
	for _, run := range []struct {
		name string
		from float64
	}{{"due", -1}, {"running", 10_001}} {
		holds := make([]Hold, 10_000)
		for i := range holds {
			holds[i] = hours("a", "DRY", run.from-float64(i))
		}
		b.Run(run.name, func(b *testing.B) {
			for b.Loop() {
				HoldLines(holds, noon, 160)
			}
		})
	}
}
