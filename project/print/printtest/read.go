// Package printtest reads written PDF files back, for tests: it takes the bytes apart as far
// as these files need it, by the standard and not by what the writer meant, and turns
// everything into millimetres from the upper left corner of the paper. User units are
// 1/72 in, y up (ISO 32000-1, 8.3.2.3).
package printtest

import (
	"bytes"
	"compress/zlib"
	"io"
	"iter"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"chape/calc/curve"
	"chape/project/print/sheet"
)

// Path is a line that is drawn, or an area that is filled.
type Path struct {
	Layer  sheet.Layer
	Width  float64   // of the line, mm
	Dashes []float64 // mm; none: drawn through
	Phase  float64   // where in the dashes the line begins, mm
	Grey   float64   // of an area: 0 black, 1 white
	Curved bool      // made of curves only: a circle
	Closed bool
	Pts    curve.Line // ends of segments
}

// Text is one line of words.
type Text struct {
	Layer sheet.Layer
	At    curve.Vec // where it begins
	Angle float64   // against the clock, radians
	Size  float64   // of the letters' body, mm
	Bold  bool
	Grey  float64
	Says  string
}

// Page is one page, millimetres.
type Page struct {
	Width, Height float64
	Paths         []Path // stroked
	Fills         []Path
	Texts         []Text
}

// Point is a user unit of PDF in millimetres.
const Point = 25.4 / 72

var (
	boxRE   = regexp.MustCompile(`/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]`)
	refRE   = regexp.MustCompile(`/Contents (\d+) 0 R`)
	layerRE = regexp.MustCompile(`/(OC\d+) (\d+) 0 R`)
	nameRE  = regexp.MustCompile(`(?s)/Type /OCG /Name \((.*)\)>>`)
	fontRE  = regexp.MustCompile(`/(F[0-9a-f]+) (\d+) 0 R`)
	baseRE  = regexp.MustCompile(`/BaseFont /(\w+)`)
)

// book is the objects of a file, and what its pages share.
type book struct {
	objects map[int]string
	layers  map[string]sheet.Layer // by the name of the property
	bold    map[string]bool        // by the name of the font
}

// Read gives the pages of a file.
func Read(t testing.TB, data []byte) []Page {
	t.Helper()
	b := book{map[int]string{}, map[string]sheet.Layer{}, map[string]bool{}}
	var ids []int
	size := ""
	for id, body := range objects(data) {
		b.objects[id] = body
		if strings.Contains(body, "/Type /Page\n") {
			ids = append(ids, id)
		}
		if box := boxRE.FindString(body); box != "" && size == "" {
			size = box
		}
	}
	slices.Sort(ids)
	b.shared()
	box := boxRE.FindStringSubmatch(size)
	if box == nil {
		t.Fatal("no MediaBox in the file")
	}
	w, h := number(t, box[1]), number(t, box[2])
	var pages []Page
	for _, id := range ids {
		if own := boxRE.FindStringSubmatch(b.objects[id]); own != nil && own[0] != size {
			t.Fatalf("page object %d has a size of its own: %s", id, own[0])
		}
		ref := refRE.FindStringSubmatch(b.objects[id])
		if ref == nil {
			t.Fatalf("page object %d has no contents", id)
		}
		p := &reader{t: t, book: b, high: h, at: one, Page: Page{Width: w * Point, Height: h * Point}}
		p.run(inflate(t, b.objects[atoi(ref[1])]))
		pages = append(pages, p.Page)
	}
	return pages
}

// objects are those of a file by their numbers, in its order; of two versions the later
// counts (ISO 32000-1, 7.5.6).
func objects(data []byte) iter.Seq2[int, string] {
	return func(yield func(int, string) bool) {
		const begin, end = " 0 obj\n", "\nendobj"
		for {
			i := bytes.Index(data, []byte(begin))
			if i < 0 {
				return
			}
			from := i
			for from > 0 && data[from-1] >= '0' && data[from-1] <= '9' {
				from--
			}
			id := atoi(string(data[from:i]))
			data = data[i+len(begin):]
			n := bytes.Index(data, []byte(end))
			if n < 0 || !yield(id, string(data[:n])) {
				return
			}
			data = data[n+len(end):]
		}
	}
}

// shared finds the names of layers and which fonts are bold: all pages have one
// dictionary of resources.
func (b *book) shared() {
	for _, body := range b.objects {
		for _, m := range layerRE.FindAllStringSubmatch(body, -1) {
			if name := nameRE.FindStringSubmatch(b.objects[atoi(m[2])]); name != nil {
				b.layers[m[1]] = sheet.Layer(decode(unescaped(name[1])))
			}
		}
		for _, m := range fontRE.FindAllStringSubmatch(body, -1) {
			if base := baseRE.FindStringSubmatch(b.objects[atoi(m[2])]); base != nil {
				b.bold[m[1]] = strings.HasSuffix(base[1], "B")
			}
		}
	}
}

func inflate(t testing.TB, object string) []byte {
	t.Helper()
	_, stream, _ := strings.Cut(object, "stream\n")
	if !strings.Contains(object, "/FlateDecode") {
		plain, _, _ := strings.Cut(stream, "\nendstream")
		return []byte(plain)
	}
	r, err := zlib.NewReader(strings.NewReader(stream))
	if err != nil {
		t.Fatalf("content stream: %v", err)
	}
	data, err := io.ReadAll(r)
	if err != nil {
		t.Fatalf("content stream: %v", err)
	}
	return data
}

func atoi(s string) int {
	n, _ := strconv.Atoi(s) // what the expressions above let through
	return n
}

// Circles gives the circles of a layer: curves only, with their radius across.
func (p Page) Circles(l sheet.Layer) []sheet.Circle { return circles(p.Paths, l) }

// Spots gives the round filled patches of a layer.
func (p Page) Spots(l sheet.Layer) []sheet.Circle { return circles(p.Fills, l) }

func circles(paths []Path, l sheet.Layer) []sheet.Circle {
	var out []sheet.Circle
	for _, q := range paths {
		if q.Layer == l && q.Curved && len(q.Pts) > 3 {
			ends := q.Pts[1:]
			var c curve.Vec
			for _, v := range ends {
				c = c.Add(v.Mul(1 / float64(len(ends))))
			}
			out = append(out, sheet.Circle{Layer: l, Stroke: sheet.Stroke{Width: q.Width}, At: c, Radius: c.Dist(ends[0])})
		}
	}
	return out
}

// Words is all text of the page, a line each.
func (p Page) Words() string {
	var s []string
	for _, t := range p.Texts {
		s = append(s, t.Says)
	}
	return strings.Join(s, "\n")
}
