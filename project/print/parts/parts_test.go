package parts

import (
	"math"
	"strings"
	"testing"

	"chape/project"
	"chape/project/print/sheet"
)

// Small parts share sheets in rows that lie clear of each other, with their words below them;
// a part larger than a sheet stands alone, in words at its foot; one without an outline nowhere.
func TestRunsShareSheets(t *testing.T) {
	p := project.Defaults()
	for range 9 {
		p.Added = append(p.Added, project.Part{Name: "tab", Count: 1, Length: 80, Width: 40})
	}
	p.Added = append(p.Added, project.Part{Name: "dangler", Count: 1, Length: 400, Width: 20}, project.Part{Name: "nothing", Count: 1})
	runs := Runs(p, 190, 240, "Orchard knife", false)
	// 190 − 40 mm take three of 40 with 10 between, 240 − 28.6 mm two rows of 80 with their words: six a sheet.
	var names []string
	for _, r := range runs {
		names = append(names, r.Name)
	}
	if got := strings.Join(names, ", "); got != "Added parts, Added parts, dangler" {
		t.Fatalf("runs: %s", got)
	}
	for i, want := range []int{6, 3, 1} {
		if got := len(runs[i].Drawing.Paths); got != want || len(runs[i].Zones) != want {
			t.Errorf("run %d has %d parts, want %d", i+1, got, want)
		}
	}
	if runs[2].Says != "dangler: 400 × 20 mm, cut 1 of 3.2 mm leather" || len(runs[2].Drawing.Texts) != 0 {
		t.Errorf("alone: %q, %d words on it", runs[2].Says, len(runs[2].Drawing.Texts))
	}
	for i, a := range runs[0].Drawing.Paths {
		lo, hi := a.Pts.Bounds()
		if math.Abs(hi.X-lo.X-40) > 1e-9 || math.Abs(hi.Y-lo.Y-80) > 1e-9 {
			t.Errorf("part %d is %v × %v", i+1, hi.X-lo.X, hi.Y-lo.Y)
		}
		box := sheet.Box{Lo: lo, Hi: hi}
		for _, w := range runs[0].Drawing.Texts {
			if b := w.Box(); b.Lo.X < box.Hi.X && b.Hi.X > box.Lo.X && b.Lo.Y < box.Hi.Y && b.Hi.Y > box.Lo.Y {
				t.Errorf("%q lies over part %d", w.Says, i+1)
			}
		}
	}
}

// On a trial no part is said to be cut of leather.
func TestTrialPartsAreNotForLeather(t *testing.T) {
	p := project.Defaults()
	p.Added = []project.Part{{Name: "tab", Count: 1, Length: 80, Width: 40}}
	var words []string
	for _, w := range Runs(p, 190, 240, "Orchard knife", true)[0].Drawing.Texts {
		words = append(words, w.Says)
	}
	if got := strings.Join(words, "|"); got != "tab|TRIAL: not for leather|80 × 40 mm" {
		t.Errorf("said %s", got)
	}
}
