package print

import (
	"bytes"
	"os/exec"
	"strings"
	"testing"

	"chape/calc/length"
	"chape/project/print/sheet"
)

// Narrow paper must not lose the words that a pattern's safety hangs on.
func TestNarrowPaperSaysAll(t *testing.T) {
	o := Options{Half: true, Paper: paper(t, "148x180"), Correction: sheet.Correction{X: 98.5, Y: 101.2}}
	data, err := PDF(garden(), compute(t, garden()), o)
	if err != nil {
		t.Fatal(err)
	}
	sheets := 0
	for i, p := range readPDF(t, data) {
		words := oneLine(p.Words())
		if len(p.Circles(sheet.ScaleLayer)) == 0 || !strings.Contains(words, "Half pattern, sheet") {
			continue
		}
		sheets++
		for _, want := range []string{"the other ends at the mouth; the drain hole belongs", "before you cut.", "100 × 100 mm.", "thickness takes it up.", "pattern 3"} {
			if !strings.Contains(words, want) {
				t.Errorf("page %d does not say %q", i+1, want)
			}
		}
	}
	if sheets < 2 {
		t.Errorf("%d sheets of the half pattern, want several", sheets)
	}
}

func TestWords(t *testing.T) {
	p := garden()
	p.Title = "½″ é × ° e\u0301" // the last in two pieces, as some systems name files
	data, err := PDF(p, compute(t, p), Options{Date: day})
	if err != nil {
		t.Fatal(err)
	}
	var all strings.Builder
	for _, q := range readPDF(t, data) {
		all.WriteString(oneLine(q.Words()) + " ")
	}
	got := all.String()
	for _, want := range []string{"½″ é × ° é", "pattern 3", "25 November 2026", "row 2, column 1", "set your dividers here: 100 mm", "4″",
		"Print at 100 %", "Grain side up", "right hand, edge to the rear", "In paper this hangs 2.5 mm loose", "relief hole 3.2 mm",
		"drain 4 mm", "stitch line", "glue line: welt to here", "fold", "cut", " mouth ", "welt", "pattern 3, cut 1", "leather 3.2 mm", "for the right hand", "least stretch", "towards you,", "divider setting", "half-widths",
		"wait 24 h, look by 48 h", "leather dust", "not for storage", "local rules", "for Zoé"} {
		if !strings.Contains(got, want) {
			t.Errorf("nowhere on paper: %q", want)
		}
	}
	if strings.Contains(got, "3.937 in") {
		t.Error("inches between the pricks, where millimetres are measured in")
	}
	inches := p.Clone()
	inches.Units = length.Inches
	data, err = PDF(inches, compute(t, inches), Options{Date: day})
	if err != nil {
		t.Fatal(err)
	}
	said := 0
	for _, q := range readPDF(t, data) {
		said += strings.Count(oneLine(q.Words()), "set your dividers here: 100 mm, 3.937 in")
	}
	if said == 0 || said%2 != 0 { // across and along, on each sheet
		t.Errorf("in inches the pricks are said in inches %d times", said)
	}
	if strings.Contains(got, "TRIAL") {
		t.Error("a pattern for leather is marked as a trial")
	}
	tool, err := exec.LookPath("pdftotext")
	if err != nil {
		return // the check above read the bytes; this one is another reader's
	}
	cmd := exec.Command(tool, "-", "-")
	cmd.Stdin = bytes.NewReader(data)
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("pdftotext: %v", err)
	}
	for _, want := range []string{"½″ é × ° é", "row 2, column 1", "set your dividers here: 100 mm"} {
		if !strings.Contains(string(out), want) {
			t.Errorf("pdftotext finds no %q", want)
		}
	}
}

func TestTitlesBreakNoPage(t *testing.T) {
	t.Parallel()
	plain, err := PDF(garden(), compute(t, garden()), Options{})
	if err != nil {
		t.Fatal(err)
	}
	want := len(readPDF(t, plain))
	for _, title := range []string{"", " ", `"quoted" 'knife' \ ) ( %`, "🔪 knife 🇬🇧 👩‍🔧", strings.Repeat("long ", 60), strings.Repeat("W", 300),
		"סכין גן עברית", "سكين الحديقة", "\u202etxet\u202c", "a\x00b\nc\td\r", "\xff\xfe broken", "Ċ Ȋ"} {
		p := garden()
		p.Title, p.Customer.Name, p.Notes = title, title, title
		p.Steps[0].Title, p.Steps[1].Caution = title, title
		data, err := PDF(p, compute(t, p), Options{})
		if err != nil {
			t.Errorf("title %q: %v", title, err)
			continue
		}
		if got := len(readPDF(t, data)); got < want || got > want+1 {
			t.Errorf("title %q: %d pages, want %d", title, got, want)
		}
		if _, err := SVG(p, compute(t, p), Options{}); err != nil {
			t.Errorf("title %q: %v", title, err)
		}
	}
}

// What the font lacks is said, once, on the first page.
func TestLettersLeftOut(t *testing.T) {
	const say = "stands for them"
	for title, want := range map[string]string{"סכין גן": "(a title that can't be printed)", "🔪 knife": "… knife", "Plain": ""} {
		p := garden()
		p.Title = title
		data, err := PDF(p, compute(t, p), Options{})
		if err != nil {
			t.Fatal(err)
		}
		times := 0
		for i, q := range readPDF(t, data) {
			words := oneLine(q.Words())
			if strings.Contains(words, say) {
				times++
			}
			if strings.Contains(words, "□") || i == 0 && !strings.Contains(words, want) {
				t.Errorf("title %q: page %d has boxes, or not %q", title, i+1, want)
			}
		}
		if (times == 1) != (want != "") {
			t.Errorf("title %q: said %d times that letters are left out", title, times)
		}
	}
}
