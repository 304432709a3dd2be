package pdf

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"
	"time"

	"chape/calc/curve"
	"chape/project/print/sheet"
)

// document is a file of two pages with a line and a word each.
func document(day time.Time) Document {
	var d sheet.Drawing
	d.Line(sheet.CutLayer, sheet.Wide, curve.Vec{X: 10, Y: 10}, curve.Vec{X: 90, Y: 10})
	d.Text(sheet.Text{Layer: sheet.WordLayer, At: curve.Vec{X: 10, Y: 20}, Says: "½″ é", Size: 3})
	return Document{Paper: sheet.Papers[0], Date: day, Title: "T", Pages: []sheet.Page{{Name: "a", Drawing: d}, {Name: "b", Drawing: d}}}
}

// The update that asks for no scaling: the catalog that the last cross-reference table
// leads to has it, and what was there before has not moved (ISO 32000-1, 7.5.6, 12.2).
func TestPrintScaling(t *testing.T) {
	data, err := document(time.Date(2026, 11, 25, 9, 30, 0, 0, time.UTC)).Bytes(true)
	if err != nil {
		t.Fatal(err)
	}
	last := regexp.MustCompile(`startxref\n(\d+)\n%%EOF\n$`).FindSubmatch(data)
	if last == nil {
		t.Fatal("no startxref at the end")
	}
	at, _ := strconv.Atoi(string(last[1]))
	var id, offset int
	var end string
	if _, err := fmt.Sscanf(string(data[at:]), "xref\n0 1\n0000000000 65535 f \n%d 1\n%d 00000 n \n%s", &id, &offset, &end); err != nil || end != "trailer" {
		t.Fatalf("the table reads %.80q: %v", data[at:], err)
	}
	if root := regexp.MustCompile(`/Root (\d+) 0 R`).FindSubmatch(data[at:]); root == nil || string(root[1]) != strconv.Itoa(id) {
		t.Errorf("the root is %q, the new object %d", root, id)
	}
	catalog, _, _ := bytes.Cut(data[offset:], []byte("endobj"))
	for _, want := range []string{fmt.Sprintf("%d 0 obj\n", id), "/Type /Catalog\n", "/Pages 1 0 R\n", "/OCProperties <<",
		"/Version /1.6\n", "/ViewerPreferences << /PrintScaling /None >>\n"} {
		if bytes.Count(catalog, []byte(want)) != 1 {
			t.Errorf("the catalog has %q %d times, want once", want, bytes.Count(catalog, []byte(want)))
		}
	}
	prev := regexp.MustCompile(`/Prev (\d+)\n`).FindSubmatch(data[at:])
	if prev == nil {
		t.Fatal("no /Prev")
	}
	if before, _ := strconv.Atoi(string(prev[1])); !bytes.HasPrefix(data[before:], []byte("xref\n0 ")) {
		t.Errorf("/Prev leads to %.20q", data[before:])
	}
	check(t, data)
}

// check has the file looked at by qpdf, on a machine that has it.
func check(t *testing.T, data []byte) {
	t.Helper()
	program, err := exec.LookPath("qpdf")
	if err != nil {
		return
	}
	path := filepath.Join(t.TempDir(), "a.pdf")
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	if out, err := exec.Command(program, "--check", path).CombinedOutput(); err != nil {
		t.Errorf("qpdf --check: %v\n%s", err, out)
	}
}

func TestFinishRefuses(t *testing.T) {
	for _, data := range []string{"", "%PDF-1.3\n", "\ntrailer\n<<\n/Size 2\n>>\nstartxref\n9\n%%EOF\n", "\ntrailer\n<<\n/Root 2 0 R\n>>\nstartxref\n9\n%%EOF\n",
		"\n2 0 obj\n<<\n\ntrailer\n<<\n/Root 2 0 R\n>>\nstartxref\n9\n%%EOF\n"} {
		if out, err := finish([]byte(data)); err == nil {
			t.Errorf("finish(%q) = %q", data, out)
		}
	}
}

// The same file gives the same bytes in every zone: the date is a day, not a moment.
func TestSameBytesInEveryZone(t *testing.T) {
	day := time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)
	want, err := document(day).Bytes(true)
	if err != nil {
		t.Fatal(err)
	}
	for _, hours := range []int{-12, 14} {
		old := time.Local
		time.Local = time.FixedZone("", hours*3600)
		got, err := document(day).Bytes(true)
		time.Local = old
		if err != nil || !bytes.Equal(got, want) {
			t.Errorf("%d hours from UTC: other bytes, %v", hours, err)
		}
	}
}
