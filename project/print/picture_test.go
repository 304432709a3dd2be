package print

import (
	"bytes"
	"flag"
	"fmt"
	"html"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
	"time"

	"chape/calc"
	"chape/project/example"
	"chape/project/print/sheet"
)

var update = flag.Bool("update", false, "write the picture of a sheet anew")

// TestSheetPicture: the README shows a sheet of the example's pattern as it is printed.
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
	got := drawn(page, "A sheet of the invented example's pattern")
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

// drawn is a sheet as a picture: black on white, for a readme can be dark, all layers, dashes
// as they are on paper.
func drawn(p sheet.Page, title string) []byte {
	var out bytes.Buffer
	put := func(format string, args ...any) { fmt.Fprintf(&out, format+"\n", args...) }
	d := &p.Drawing
	b := d.Bounds().Grow(8)
	for _, w := range d.Texts {
		b = b.Union(w.Box().Grow(1))
	}
	box := fmt.Sprintf(`%s %s %.0f %.0f`, thousandth(b.Lo.X), thousandth(b.Lo.Y), math.Ceil(b.Width()), math.Ceil(b.Height()))
	part := strings.Fields(box)
	put(`<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="%s">`, part[2], part[3], box)
	put("<title>%s</title>\n<desc>%s</desc>", html.EscapeString(title), html.EscapeString(p.Name))
	put(`<rect x="%s" y="%s" width="%s" height="%s" fill="white"/>`, part[0], part[1], part[2], part[3])
	put(`<g fill="none" stroke="black">`)
	for _, q := range d.Paths {
		var at, dashes []string
		for _, v := range q.Pts {
			at = append(at, thousandth(v.X)+" "+thousandth(v.Y))
		}
		for _, v := range q.Stroke.Dashes {
			dashes = append(dashes, thousandth(v))
		}
		end := strings.Repeat("Z", map[bool]int{true: 1}[q.Closed])
		put(`<path d="M%s%s" stroke-width="%s" stroke-dasharray="%s"/>`, strings.Join(at, "L"), end, thousandth(q.Stroke.Width), strings.Join(dashes, " "))
	}
	for _, c := range d.Circles {
		put(`<circle cx="%s" cy="%s" r="%s" stroke-width="%s"/>`, thousandth(c.At.X), thousandth(c.At.Y), thousandth(c.Radius), thousandth(c.Stroke.Width))
	}
	put("</g>\n" + `<g font-family="sans-serif">`)
	for _, w := range d.Texts {
		x, y := thousandth(w.At.X), thousandth(w.At.Y)
		put(`<text x="%s" y="%s" font-size="%s" font-weight="%s" text-anchor="%s" transform="rotate(%s %s %s)">%s</text>`, x, y, thousandth(w.Size),
			map[bool]string{true: "bold", false: "normal"}[w.Bold], [...]string{"start", "middle", "end"}[w.Anchor], thousandth(-w.Angle*180/math.Pi), x, y, html.EscapeString(w.Says))
	}
	put("</g>\n</svg>")
	return out.Bytes()
}

// thousandth is a figure to a thousandth.
func thousandth(v float64) string { return strconv.FormatFloat(math.Round(v*1000)/1000+0, 'f', -1, 64) }
