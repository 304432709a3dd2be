package printtest

import (
	"bytes"
	"math"
	"strconv"
	"strings"
	"testing"
	"unicode/utf16"

	"chape/calc/curve"
	"chape/project/print/sheet"
)

// matrix maps (x, y) to (a·x + c·y + e, b·x + d·y + f) (ISO 32000-1, 8.3.3).
type matrix [6]float64

var one = matrix{1, 0, 0, 1, 0, 0}

// before is m, then n.
func (m matrix) before(n matrix) matrix {
	return matrix{
		m[0]*n[0] + m[1]*n[2], m[0]*n[1] + m[1]*n[3],
		m[2]*n[0] + m[3]*n[2], m[2]*n[1] + m[3]*n[3],
		m[4]*n[0] + m[5]*n[2] + n[4], m[4]*n[1] + m[5]*n[3] + n[5],
	}
}

// saved is what q keeps and Q brings back, as far as it is read here.
type saved struct {
	at   matrix
	grey float64
}

// reader runs the operators of a content stream.
type reader struct {
	Page
	t     testing.TB
	book  book
	high  float64 // of the page, user units
	at    matrix
	saved []saved
	args  []string
	now   Path
	on    sheet.Layer
	grey  float64
	font  Text // size and weight
	begun curve.Vec
}

// number is argument i.
func (r *reader) number(i int) float64 {
	if i >= len(r.args) {
		r.t.Fatalf("too few arguments: %q", r.args)
	}
	return number(r.t, r.args[i])
}

func number(t testing.TB, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		t.Fatalf("%q is no number of a content stream", s)
	}
	return v
}

// place is the point of arguments i and i+1.
func (r *reader) place(i int) curve.Vec {
	x, y := r.number(i), r.number(i+1)
	m := r.at
	return curve.Vec{X: (m[0]*x + m[2]*y + m[4]) * Point, Y: (r.high - (m[1]*x + m[3]*y + m[5])) * Point}
}

func (r *reader) run(content []byte) {
	for _, tok := range tokens(content) {
		if !r.state(tok) && !r.path(tok) && !r.text(tok) {
			r.args = append(r.args, tok)
			continue
		}
		r.args = r.args[:0]
	}
}

// state does what sets up: layers, matrix, width, dashes, grey.
func (r *reader) state(tok string) bool {
	switch tok {
	case "BDC":
		l, ok := r.book.layers[strings.TrimPrefix(r.args[len(r.args)-1], "/")]
		if !ok {
			r.t.Fatalf("%q is no layer of the file", r.args)
		}
		r.on = l
	case "EMC":
		r.on = ""
	case "w":
		r.now.Width = r.number(0) * Point
	case "d":
		r.now.Dashes, r.now.Phase = nil, r.number(1)*Point
		for _, s := range strings.Fields(strings.Trim(r.args[0], "[]")) {
			r.now.Dashes = append(r.now.Dashes, number(r.t, s)*Point)
		}
	case "g":
		r.grey = r.number(0)
	case "cm":
		var m matrix
		for i := range m {
			m[i] = r.number(i)
		}
		r.at = m.before(r.at)
	case "q":
		r.saved = append(r.saved, saved{r.at, r.grey})
	case "Q":
		if len(r.saved) > 0 {
			last := r.saved[len(r.saved)-1]
			r.at, r.grey, r.saved = last.at, last.grey, r.saved[:len(r.saved)-1]
		}
	case "J", "j", "G":
	default:
		return false
	}
	return true
}

// path builds paths and paints them.
func (r *reader) path(tok string) bool {
	now := &r.now
	switch tok {
	case "m":
		now.Pts, now.Curved, now.Closed = curve.Line{r.place(0)}, true, false
	case "l":
		now.Pts, now.Curved = append(now.Pts, r.place(0)), false
	case "c":
		now.Pts = append(now.Pts, r.place(4))
	case "h":
		now.Closed = true
	case "S", "f":
		q := *now
		q.Layer, q.Pts = r.on, append(curve.Line{}, now.Pts...)
		if tok == "f" {
			q.Grey = r.grey
			r.Fills = append(r.Fills, q)
		} else {
			r.Paths = append(r.Paths, q)
		}
	default:
		return false
	}
	return true
}

// text sets words.
func (r *reader) text(tok string) bool {
	switch tok {
	case "Tf":
		name := strings.TrimPrefix(r.args[0], "/")
		bold, ok := r.book.bold[name]
		if !ok {
			r.t.Fatalf("%q is no font of the file", name)
		}
		r.font.Bold, r.font.Size = bold, r.number(1)*Point
	case "Td":
		r.begun = r.place(0)
	case "Tj":
		w := r.font
		w.Layer, w.At, w.Grey = r.on, r.begun, r.grey
		w.Angle = math.Atan2(r.at[1], r.at[0])
		w.Says = decode(strings.TrimPrefix(r.args[len(r.args)-1], "("))
		r.Texts = append(r.Texts, w)
	case "BT", "ET":
	default:
		return false
	}
	return true
}

// tokens splits a content stream; strings keep their opening bracket.
func tokens(b []byte) []string {
	var out []string
	for i := 0; i < len(b); {
		switch c := b[i]; {
		case c == ' ' || c == '\n' || c == '\r':
			i++
		case c == '(':
			from := i + 1
			for i = from; i < len(b) && b[i] != ')'; i++ {
				if b[i] == '\\' {
					i++
				}
			}
			out = append(out, "("+unescaped(string(b[from:min(i, len(b))])))
			i++
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

// unescaped takes the backslashes out of a string (ISO 32000-1, 7.3.4.2).
func unescaped(s string) string {
	var b strings.Builder
	for i := 0; i < len(s); i++ {
		if s[i] == '\\' && i+1 < len(s) {
			i++
			if s[i] == 'r' {
				b.WriteByte('\r')
				continue
			}
		}
		b.WriteByte(s[i])
	}
	return b.String()
}

// decode reads UTF-16BE, which is what words are written in.
func decode(s string) string {
	s = strings.TrimPrefix(s, "\xfe\xff")
	var u []uint16
	for i := 0; i+1 < len(s); i += 2 {
		u = append(u, uint16(s[i])<<8|uint16(s[i+1]))
	}
	return string(utf16.Decode(u))
}
