// Package phototest makes photographs for tests: the bytes of a printed page are turned into
// paper by a reading of their own (or by poppler's pdftoppm), things are drawn and laid on it,
// and a camera of its own takes the picture. Nothing here knows what the page should look like.
package phototest

import (
	"bytes"
	"compress/zlib"
	"errors"
	"image"
	"image/draw"
	"io"
	"math"
	"os/exec"
	"regexp"
	"strconv"
	"strings"

	_ "image/png" // what pdftoppm writes

	"golang.org/x/image/vector"

	"chape/calc/curve"
)

// Paper is a sheet as it lies there: how much light each place throws back, by channel.
type Paper struct {
	W, H  int
	PerMM float64 // dots a millimetre
	RGB   []uint8 // linear, not as a camera writes it
}

const paperWhite = 225 // of 255: good paper throws back less than nine tenths

func blank(wide, high, perMM float64) *Paper {
	p := &Paper{W: int(math.Ceil(wide * perMM)), H: int(math.Ceil(high * perMM)), PerMM: perMM}
	p.RGB = bytes.Repeat([]byte{paperWhite}, 3*p.W*p.H)
	return p
}

var (
	objectRE = regexp.MustCompile(`(?s)(\d+) 0 obj\n(.*?)\nendobj`)
	boxRE    = regexp.MustCompile(`/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]`)
	refRE    = regexp.MustCompile(`/Contents (\d+) 0 R`)
)

// Read turns the first page of a PDF into paper: its filled paths and its strokes, black or
// white. Words are left out. User units are 1/72 in, y up (ISO 32000-1, 8.3.2.3).
func Read(pdf []byte, perMM float64) (*Paper, error) {
	objects := map[string]string{}
	contents, first := "", 0
	var box []string
	for _, m := range objectRE.FindAllSubmatch(pdf, -1) {
		body := string(m[2])
		objects[string(m[1])] = body
		if b := boxRE.FindStringSubmatch(body); b != nil && box == nil {
			box = b
		}
		n, _ := strconv.Atoi(string(m[1]))
		if strings.Contains(body, "/Type /Page\n") && (contents == "" || n < first) {
			contents, first = refRE.FindStringSubmatch(body)[1], n
		}
	}
	if box == nil || contents == "" {
		return nil, errors.New("no page in the file")
	}
	w, _ := strconv.ParseFloat(box[1], 64)
	h, _ := strconv.ParseFloat(box[2], 64)
	_, stream, _ := strings.Cut(objects[contents], "stream\n")
	z, err := zlib.NewReader(strings.NewReader(stream))
	if err != nil {
		return nil, err
	}
	data, err := io.ReadAll(z)
	if err != nil && len(data) == 0 {
		return nil, err
	}
	p := blank(w*25.4/72, h*25.4/72, perMM)
	p.run(strings.Fields(string(data)), h)
	return p, nil
}

// run follows the operators of a content stream that paint.
func (p *Paper) run(tokens []string, high float64) {
	var args []float64
	k := p.PerMM * 25.4 / 72
	var path [][]vec // the points of each move, line or curve
	put := func() {
		var q []vec
		for i := 0; i+1 < len(args); i += 2 {
			q = append(q, vec{X: k * args[i], Y: k * (high - args[i+1])})
		}
		path = append(path, q)
	}
	grey := uint8(0)
	for _, t := range tokens {
		switch t {
		case "g", "rg":
			if len(args) > 0 {
				grey = uint8(math.Round(args[0] * paperWhite))
			}
		case "m":
			path = nil
			put()
		case "l", "c":
			put()
		case "f":
			p.paint(path, grey)
		default:
			if v, err := strconv.ParseFloat(t, 64); err == nil {
				args = append(args, v)
				continue
			}
		}
		args = args[:0]
	}
}

type vec = curve.Vec

// paint fills a path: in a field no larger than it is.
func (p *Paper) paint(path [][]vec, grey uint8) {
	var all curve.Line
	for _, q := range path {
		all = append(all, q...)
	}
	lo, hi := all.Bounds()
	x0, y0 := max(0, int(lo.X)-1), max(0, int(lo.Y)-1)
	x1, y1 := min(p.W, int(hi.X)+2), min(p.H, int(hi.Y)+2)
	if x1 <= x0 || y1 <= y0 {
		return
	}
	r := vector.NewRasterizer(x1-x0, y1-y0)
	r.DrawOp = draw.Src
	at := func(v vec) (float32, float32) { return float32(v.X - float64(x0)), float32(v.Y - float64(y0)) }
	for i, q := range path {
		switch x, y := at(q[0]); {
		case i == 0:
			r.MoveTo(x, y)
		case len(q) == 1:
			r.LineTo(x, y)
		default:
			bx, by := at(q[1])
			cx, cy := at(q[2])
			r.CubeTo(x, y, bx, by, cx, cy)
		}
	}
	r.ClosePath()
	mask := image.NewAlpha(image.Rect(0, 0, x1-x0, y1-y0))
	r.Draw(mask, mask.Rect, image.Opaque, image.Point{})
	for i, a := range mask.Pix {
		j := 3 * ((y0+i/mask.Stride)*p.W + x0 + i%mask.Stride)
		for c := range 3 {
			v := &p.RGB[j+c]
			*v = uint8((int(*v)*(255-int(a)) + int(grey)*int(a) + 127) / 255)
		}
	}
}

// Poppler renders the first page with pdftoppm; ok is false where there is none.
func Poppler(path string, perMM float64) (p *Paper, ok bool) {
	tool, err := exec.LookPath("pdftoppm")
	if err != nil {
		return nil, false
	}
	out, err := exec.Command(tool, "-r", strconv.FormatFloat(perMM*25.4, 'f', 3, 64), "-f", "1", "-l", "1", "-png", "-gray", path).Output()
	if err != nil {
		return nil, false
	}
	img, _, err := image.Decode(bytes.NewReader(out))
	if err != nil {
		return nil, false
	}
	b := img.Bounds()
	p = &Paper{W: b.Dx(), H: b.Dy(), PerMM: perMM, RGB: make([]uint8, 3*b.Dx()*b.Dy())}
	for y := range p.H {
		for x := range p.W {
			v, _, _, _ := img.At(b.Min.X+x, b.Min.Y+y).RGBA()
			for c := range 3 {
				p.RGB[3*(y*p.W+x)+c] = uint8(v >> 8 * paperWhite / 255)
			}
		}
	}
	return p, true
}
