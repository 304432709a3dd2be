package tracing

import (
	"bytes"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"chape/calc/curve"
	"chape/project/print/letters"
	"chape/project/print/sheet"
)

// Two pricks across and two along, 100 mm apart as printed, in the strips outside the frame,
// with the words of every other sheet; nothing nearer than 8 mm to the paper's edge.
func TestPricksInTheStrips(t *testing.T) {
	for _, c := range papers {
		p := on(t, c.name, c.c)[0]
		got := p.Circles(sheet.ScaleLayer)
		if len(got) != 4 {
			t.Fatalf("%s: %d pricks", c.name, len(got))
		}
		across, along := got[1].At.Sub(got[0].At), got[3].At.Sub(got[2].At)
		if across.Dist(curve.Vec{X: 100}) > fine || along.Dist(curve.Vec{Y: 100}) > fine {
			t.Errorf("%s %v: pricks %v and %v apart", c.name, c.c, across, along)
		}
		words := strings.ReplaceAll(p.Words(), "\n", " ")
		if n := strings.Count(words, "set your dividers here: 100 mm"); n != 2 || !strings.Contains(words, "Print at 100 %.") {
			t.Errorf("%s: the sheet says %q", c.name, words)
		}
		for _, l := range p.Paths {
			lo, hi := l.Pts.Bounds()
			if r := l.Width / 2; lo.X-r < 8-fine || lo.Y-r < 8-fine || hi.X+r > p.Width-8+fine || hi.Y+r > p.Height-8+fine {
				t.Errorf("%s: a line from %v to %v", c.name, lo, hi)
			}
		}
	}
}

// drawn is the pages before they are written.
func drawn(t *testing.T, paper string, c sheet.Correction) []sheet.Page {
	t.Helper()
	p, err := sheet.ParsePaper(paper)
	if err != nil {
		t.Fatal(err)
	}
	o := Options{Paper: p, Correction: c}
	first, err := o.sheet()
	if err != nil {
		t.Fatal(err)
	}
	return append([]sheet.Page{first}, o.words()...)
}

// All words stand inside what may be printed on and none over another, even on the smallest
// paper; those on the sheet are as large as there is room for, never over 2.5 mm.
func TestWordsHaveRoom(t *testing.T) {
	for _, c := range papers {
		w, h := sizeOf(t, c.name, c.c)
		for n, p := range drawn(t, c.name, c.c) {
			texts := p.Drawing.Texts
			for i, a := range texts {
				b := a.Box()
				if b.Lo.X < -fine || b.Lo.Y < -fine || b.Hi.X > w+fine || b.Hi.Y > h+fine {
					t.Errorf("%s, page %d: %q stands at %v of %.1f × %.1f", c.name, n+1, a.Says, b, w, h)
				}
				if n == 0 && (a.Size > sheet.WordSize || a.Size < 1.5) {
					t.Errorf("%s: %q is %.2f mm", c.name, a.Says, a.Size)
				}
				for _, o := range texts[:i] {
					if q := o.Box(); b.Lo.X < q.Hi.X-0.3 && q.Lo.X < b.Hi.X-0.3 && b.Lo.Y < q.Hi.Y-0.5 && q.Lo.Y < b.Hi.Y-0.5 {
						t.Errorf("%s, page %d: %q prints over %q", c.name, n+1, a.Says, o.Says)
					}
				}
			}
		}
	}
}

// The second page is one page whatever the paper, in the order of the work, counted from 1 in
// each part; the edge is taped before a pencil is taken, and no line is longer than 150 mm.
func TestWhatToDo(t *testing.T) {
	for _, c := range papers {
		pages := drawn(t, c.name, c.c)
		if len(pages) != 2 {
			t.Fatalf("%s: %d pages", c.name, len(pages))
		}
		var says []string
		for _, w := range pages[1].Drawing.Texts[2:] { // without the page's head
			says = append(says, w.Says)
			if wide := letters.Width(w.Says, w.Bold) * w.Size; wide > 150.01 {
				t.Errorf("%s: %q is %.1f mm long", c.name, w.Says, wide)
			}
		}
		all := strings.Join(says, " ")
		at := 0
		for _, next := range []string{"100 %", "trace", "1. Tape the knife's edge", "2. Draw round", "sharp pencil", "3. Where a bolster", "4. Take the knife away", "photograph",
			"1. Put the sheet flat", "2. Hold the telephone", "3. Take one picture", "read", "1. Copy the picture", "2. Look at the outline", "leather and earlier patterns", "--rule"} {
			i := strings.Index(all[at:], next)
			if i < 0 {
				t.Errorf("%s: %q is not said, or not in its turn:\n%s", c.name, next, all)
				break
			}
			at += i
		}
	}
}

// The file is called by its paper unless that is the first of those with names.
func TestFile(t *testing.T) {
	for paper, want := range map[string]string{"a4": "tracing sheet.pdf", "letter": "tracing sheet letter.pdf", "200x300": "tracing sheet 200 x 300 mm.pdf"} {
		p, err := sheet.ParsePaper(paper)
		if err != nil {
			t.Fatal(err)
		}
		if f, err := File(Options{Paper: p}); err != nil || f.Name != want || !bytes.HasPrefix(f.Data, []byte("%PDF-")) {
			t.Errorf("%s: %q, %d bytes, %v; want %q", paper, f.Name, len(f.Data), err, want)
		}
	}
	if f, err := File(Options{}); err != nil || f.Name != "tracing sheet.pdf" {
		t.Errorf("on no paper: %q, %v", f.Name, err)
	}
}

// The same options give the same bytes; the date is that which was given.
func TestSameBytes(t *testing.T) {
	var heard []string
	o := Options{Date: time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC), Progress: func(s string) { heard = append(heard, s) }}
	a, err1 := PDF(o)
	b, err2 := PDF(o)
	if err1 != nil || err2 != nil || !bytes.Equal(a, b) || !bytes.Contains(a, []byte("D:20261125")) {
		t.Errorf("twice: %v, %v, the same bytes: %v", err1, err2, bytes.Equal(a, b))
	}
	if !slices.Equal(heard, []string{"tracing sheet", "tracing sheet"}) {
		t.Errorf("heard %q", heard)
	}
}

// What can't be printed is refused with what would do, and nothing is drawn.
func TestRefused(t *testing.T) {
	for want, o := range map[string]Options{
		"at most 600 x 1200 mm":  {Paper: sheet.Paper{Name: "x", Width: 601, Height: 1200}},
		"use at most 600 x 1200": {Paper: sheet.Paper{Name: "x", Width: 1201, Height: 600}},
		"too small":              {Paper: sheet.Paper{Name: "x", Width: 100, Height: 100}},
		"measure again":          {Correction: sheet.Correction{X: 90}},
		"no printer's error":     {Correction: sheet.Correction{Y: math.NaN()}},
	} {
		if data, err := PDF(o); err == nil || data != nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%+v: %d bytes, %v; want an error with %q", o, len(data), err, want)
		}
	}
}
