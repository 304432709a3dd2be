package print

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"chape/calc"
	"chape/project/example"
	"chape/project/print/sheet"
	"chape/project/print/svg"
)

var update = flag.Bool("update", false, "write the picture of a sheet anew")

// TestSheetPicture: the README shows a sheet of the example's pattern as it is printed,
// drawn by the SVG writer.
func TestSheetPicture(t *testing.T) {
	p := example.Load(time.Date(2026, time.November, 25, 15, 2, 0, 0, time.UTC))
	plan, err := calc.Compute(p.Input(calc.DefaultLimits()))
	if err != nil {
		t.Fatal(err)
	}
	paper, err := sheet.ParsePaper("a4")
	if err != nil {
		t.Fatal(err)
	}
	j, err := newJob(p, plan, Options{Paper: paper})
	if err != nil {
		t.Fatal(err)
	}
	page := fullest(j.pages())
	got := svg.Picture(&page.Drawing, "A sheet of the invented example's pattern", page.Name)
	got = onPaper(t, got)
	const path = "../../testdata/pictures/sheet.svg"
	if *update {
		if err := os.MkdirAll("../../testdata/pictures", 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if want, err := os.ReadFile(path); err != nil || !bytes.Equal(want, got) {
		t.Errorf("%s is not what is printed now: go test ./project/print -run SheetPicture -update makes it anew (%v)", path, err)
	}
	if len(got) > 200_000 {
		t.Errorf("%d bytes are too many for a picture in a readme", len(got))
	}
}

// fullest is the sheet of the pattern that has most of its cut line.
func fullest(pages []sheet.Page) (best sheet.Page) {
	most := 0
	for _, p := range pages {
		points := 0
		for _, q := range p.Drawing.Paths {
			if q.Layer == sheet.CutLayer {
				points += len(q.Pts)
			}
		}
		if strings.HasPrefix(p.Name, "Pattern") && points > most {
			best, most = p, points
		}
	}
	return best
}

// onPaper lays paper under a drawing: a readme can be dark.
func onPaper(t *testing.T, drawing []byte) []byte {
	t.Helper()
	m := regexp.MustCompile(`viewBox="(\S+) (\S+) (\S+) (\S+)">\n`).FindSubmatchIndex(drawing)
	if m == nil {
		t.Fatal("the SVG says no view box")
	}
	of := func(i int) []byte { return drawing[m[2*i]:m[2*i+1]] }
	paper := fmt.Sprintf("<rect x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\" fill=\"white\"/>\n", of(1), of(2), of(3), of(4))
	return slices.Concat(drawing[:m[1]], []byte(paper), drawing[m[1]:])
}
