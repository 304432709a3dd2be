package print

import (
	"bytes"
	"compress/zlib"
	"io"
	"math"
	"regexp"
	"sort"
	"strconv"
	"strings"
	"testing"
	"unicode/utf16"

	"chape/calc/curve"
	"chape/project/print/sheet"
)

// The reader takes the written bytes apart, as far as these files need it:
// objects, page size, and in each page's content the paths and the words with
// the layer that they are on. Everything is turned into millimetres from the
// upper left corner of the paper: user units are 1/72 in (ISO 32000-1, 8.3.2.3).

type readPath struct {
	layer  sheet.Layer
	width  float64
	dashed bool
	curved bool // made of curves only: a circle
	closed bool
	pts    curve.Line // ends of segments
}

type readText struct {
	layer sheet.Layer
	at    curve.Vec // where no rotation applies
	s     string
}

type readPage struct {
	width, height float64
	paths         []readPath
	texts         []readText
}

var (
	objectRE = regexp.MustCompile(`(?s)(\d+) 0 obj\n(.*?)\nendobj`)
	boxRE    = regexp.MustCompile(`/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]`)
	refRE    = regexp.MustCompile(`/Contents (\d+) 0 R`)
)

const point = 25.4 / 72

func readPDF(t testing.TB, data []byte) []readPage {
	t.Helper()
	objects := map[int]string{}
	var pageIDs []int
	size := ""
	for _, m := range objectRE.FindAllSubmatch(data, -1) {
		id, _ := strconv.Atoi(string(m[1]))
		body := string(m[2])
		objects[id] = body
		if strings.Contains(body, "/Type /Page\n") {
			pageIDs = append(pageIDs, id)
		}
		if b := boxRE.FindString(body); b != "" && size == "" {
			size = b
		}
	}
	sort.Ints(pageIDs)
	box := boxRE.FindStringSubmatch(size)
	if box == nil {
		t.Fatal("no MediaBox in the file")
	}
	w, _ := strconv.ParseFloat(box[1], 64)
	h, _ := strconv.ParseFloat(box[2], 64)
	var pages []readPage
	for _, id := range pageIDs {
		if own := boxRE.FindStringSubmatch(objects[id]); own != nil && own[0] != size {
			t.Fatalf("page object %d has a size of its own: %s", id, own[0])
		}
		ref, _ := strconv.Atoi(refRE.FindStringSubmatch(objects[id])[1])
		p := readPage{width: w * point, height: h * point}
		p.read(t, inflate(t, objects[ref]), h)
		pages = append(pages, p)
	}
	return pages
}

func inflate(t testing.TB, object string) []byte {
	t.Helper()
	_, stream, _ := strings.Cut(object, "stream\n")
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

// read runs the operators of a content stream.
func (p *readPage) read(t testing.TB, content []byte, high float64) {
	t.Helper()
	var args []string
	var now readPath
	var words string
	on := sheet.Layer("")
	turned := 0
	at := func(i int) curve.Vec {
		x, err1 := strconv.ParseFloat(args[i], 64)
		y, err2 := strconv.ParseFloat(args[i+1], 64)
		if err1 != nil || err2 != nil || math.IsNaN(x+y) {
			t.Fatalf("bad point in content: %q", args)
		}
		return curve.Vec{X: x * point, Y: (high - y) * point}
	}
	textAt := curve.Vec{}
	for _, tok := range tokens(content) {
		switch tok {
		case "BDC":
			n, _ := strconv.Atoi(strings.TrimPrefix(args[len(args)-1], "/OC"))
			on = sheet.Layers[n]
		case "EMC":
			on = ""
		case "w":
			w, _ := strconv.ParseFloat(args[0], 64)
			now.width = w * point
		case "d":
			now.dashed = args[0] != "[]"
		case "cm":
			turned++
		case "Q":
			turned = max(0, turned-1)
		case "m":
			now.pts, now.curved, now.closed = curve.Line{at(0)}, true, false
		case "l":
			now.pts, now.curved = append(now.pts, at(0)), false
		case "c":
			now.pts = append(now.pts, at(4))
		case "h":
			now.closed = true
		case "S", "s":
			now.layer = on
			q := now
			q.pts = append(curve.Line{}, now.pts...)
			p.paths = append(p.paths, q)
		case "Td":
			textAt = at(0)
		case "Tj":
			words = args[len(args)-1]
			v := textAt
			if turned > 0 {
				v = curve.Vec{X: math.NaN(), Y: math.NaN()}
			}
			p.texts = append(p.texts, readText{on, v, decode(words)})
		case "J", "j", "rg", "RG", "g", "G", "q", "BT", "ET", "Tf", "re", "f", "Tw":
		default:
			args = append(args, tok)
			continue
		}
		args = nil
	}
}

// tokens splits a content stream; strings keep their opening bracket.
func tokens(b []byte) []string {
	var out []string
	for i := 0; i < len(b); {
		switch c := b[i]; {
		case c == ' ' || c == '\n' || c == '\r':
			i++
		case c == '(':
			s := []byte{'('}
			for i++; b[i] != ')'; i++ {
				if b[i] == '\\' {
					i++
					if b[i] == 'r' {
						s = append(s, '\r')
						continue
					}
				}
				s = append(s, b[i])
			}
			i++
			out = append(out, string(s))
		case c == '[':
			n := bytes.IndexByte(b[i:], ']')
			out = append(out, string(b[i:i+n+1]))
			i += n + 1
		default:
			n := bytes.IndexAny(b[i:], " \n\r([")
			if n < 0 {
				n = len(b) - i
			}
			out = append(out, string(b[i:i+n]))
			i += n
		}
	}
	return out
}

// decode reads UTF-16BE, which is what the words are written in.
func decode(s string) string {
	s = strings.TrimPrefix(s, "(")
	var u []uint16
	for i := 0; i+1 < len(s); i += 2 {
		u = append(u, uint16(s[i])<<8|uint16(s[i+1]))
	}
	return string(utf16.Decode(u))
}

// circles gives the circles of a layer.
func (p readPage) circles(l sheet.Layer) []sheet.Circle {
	var out []sheet.Circle
	for _, q := range p.paths {
		if q.layer == l && q.curved && len(q.pts) > 3 {
			ends := q.pts[1:]
			var c curve.Vec
			for _, v := range ends {
				c = c.Add(v.Mul(1 / float64(len(ends))))
			}
			out = append(out, sheet.Circle{Layer: l, At: c, Radius: c.Dist(ends[0])})
		}
	}
	return out
}

// crosses gives the middles of the crosses of a layer, from their level strokes.
func (p readPage) crosses(l sheet.Layer) curve.Line {
	var out curve.Line
	for _, q := range p.paths {
		if q.layer == l && len(q.pts) == 2 && !q.curved && math.Abs(q.pts[0].Y-q.pts[1].Y) < 0.01 &&
			math.Abs(q.pts[0].Dist(q.pts[1])-2*crossArm) < 0.1 {
			out = append(out, q.pts[0].Add(q.pts[1]).Mul(0.5))
		}
	}
	return out
}

// words is all text of the page.
func (p readPage) words() string {
	var s []string
	for _, t := range p.texts {
		s = append(s, t.s)
	}
	return strings.Join(s, "\n")
}
