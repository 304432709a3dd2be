package print

import (
	"strings"
	"testing"

	"chape/calc"
	"chape/calc/length"
	"chape/project/print/sheet"
)

// saying is the words of the pages of a name, each text apart.
func saying(t *testing.T, pages []sheet.Page, name string) []string {
	t.Helper()
	var out []string
	for _, p := range pages {
		if strings.HasPrefix(p.Name, name) {
			for _, w := range p.Drawing.Texts {
				out = append(out, w.Says)
			}
		}
	}
	if len(out) == 0 {
		t.Fatalf("no page %q", name)
	}
	return out
}

// pagesOf are the pages of a plan whose divider setting, pitch and places of holes are far
// apart, so that none can pass for another.
func pagesOf(t *testing.T, u length.Unit) []sheet.Page {
	t.Helper()
	p := garden()
	p.Units = u
	plan := compute(t, p)
	plan.Stitch.Walk, plan.Stitch.Pitch = 3.871, 4.623
	plan.Stitch.Along[9] = 41.74
	j, err := newJob(p, plan, Options{})
	if err != nil {
		t.Fatal(err)
	}
	return j.pages()
}

// Dividers are set by what the paper says: the chord, not the pitch along the line, to
// 0.01 mm, with what ten steps of it measure.
func TestDividerSettingOnPaper(t *testing.T) {
	for u, want := range map[length.Unit]string{
		length.Millimetres: "Divider setting 3.87 mm; ten steps of it 38.7 mm.",
		length.Inches:      "Divider setting 0.152 in, 3.87 mm; ten steps of it 1.52 in.",
	} {
		pages := pagesOf(t, u)
		if all := strings.Join(saying(t, pages, "Setting out"), " "); !strings.Contains(all, want) {
			t.Errorf("the setting-out sheet does not say %q:\n%s", want, all)
		}
	}
	card := saying(t, pagesOf(t, length.Millimetres), "Work card")
	for name, want := range map[string]string{"divider setting": "3.87 mm", "ten steps of it": "38.7 mm", "pitch along the line": "4.62 mm",
		"thickness to sew through": "9.60 mm"} {
		got := ""
		for i, s := range card {
			if s == name {
				got = card[i+1] + card[i+2] + " " + card[i+3]
			}
		}
		if got != want {
			t.Errorf("the work card says %s %q, want %q", name, got, want)
		}
	}
}

// The sheet to set out on counts holes from the mouth, and says how far along they stand as
// a ruler shows it: 41.74 mm is 41.5, or 1 21/32 in.
func TestDistancesOnTheSettingOutSheet(t *testing.T) {
	for u, want := range map[length.Unit]string{length.Millimetres: "10: 41.5 mm", length.Inches: "10: 1 21/32 in"} {
		all := saying(t, pagesOf(t, u), "Setting out")
		found := 0
		for _, s := range all {
			if s == want {
				found++
			}
			if strings.HasPrefix(s, "10: ") && s != want {
				t.Errorf("hole 10 is at %q, want %q", s, want)
			}
		}
		if found != 1 {
			t.Errorf("%q stands %d times on the sheet, want once:\n%q", want, found, all)
		}
	}
}

// A job without loop or steps has no empty headings.
func TestWorkCardLeavesOutWhatIsNot(t *testing.T) {
	p := garden()
	p.Belt.Loop, p.Steps, p.Notes = calc.NoLoop, nil, ""
	j, err := newJob(p, compute(t, p), Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range saying(t, j.pages(), "Work card") {
		if s == "belt loop" || s == "steps" || s == "notes" || strings.HasPrefix(s, "tab, ") {
			t.Errorf("the card has %q", s)
		}
	}
}
