package print

import (
	"strings"
	"testing"

	"chape/calc/length"
)

// The pattern takes as many sheets as are printed; done as it says, a shorter lap saves one,
// and one that is shorter by a millimetre less does not.
func TestSheetsAreCounted(t *testing.T) {
	count := func(lap length.Length) (n int, shorter length.Length) {
		t.Helper()
		p := bar()
		p.Belt.Lap = lap
		plan := compute(t, p)
		n, shorter, fewer, err := Sheets(p, plan, Options{Paper: paper(t, "a4")})
		if err != nil {
			t.Fatal(err)
		}
		j, _ := newJob(p, plan, Options{Paper: paper(t, "a4")})
		printed := 0
		for _, page := range j.pages() {
			if strings.HasPrefix(page.Name, "Pattern") {
				printed++
			}
		}
		if printed != n {
			t.Errorf("lap %v: %d sheets counted, %d printed", lap, n, printed)
		}
		if (shorter > 0) != (fewer > 0) {
			t.Errorf("lap %v: %v shorter takes %d fewer", lap, shorter, fewer)
		}
		return n, shorter
	}
	found, none := 0, 0
	for lap := length.Length(8); lap < 90; lap += 3 {
		n, shorter := count(lap)
		if shorter == 0 {
			none++
			continue
		}
		found++
		if less, _ := count(lap - shorter); less >= n {
			t.Errorf("lap %v: %v less still takes %d sheets", lap, shorter, less)
		}
		if as, _ := count(lap - shorter + 1); as != n {
			t.Errorf("lap %v: %v less saves one too", lap, shorter-1)
		}
	}
	if found == 0 || none == 0 {
		t.Errorf("found %d, none %d: this shows nothing", found, none)
	}
}
