// Package pdf writes pages as a PDF at true size.
package pdf

import (
	"bytes"
	"fmt"
	"math"
	"time"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"

	"chape/calc/curve"
	"chape/project/print/letters"
	"chape/project/print/sheet"
)

// Document is a file of pages, with what it says of itself.
type Document struct {
	Paper      sheet.Paper
	Correction sheet.Correction
	Date       time.Time
	Title      string
	Subject    string
	Pages      []sheet.Page
}

// DateOr is the date that a file bears; a fixed one if there is none: a file must not
// carry the clock.
func DateOr(d time.Time) time.Time {
	if d.IsZero() {
		return time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)
	}
	return d
}

// Bytes writes the pages. The layers of a drawing are layers of the file.
func (d Document) Bytes(compress bool) ([]byte, error) {
	paper := d.Paper
	f := fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "mm", Size: fpdf.SizeType{Wd: paper.Width, Ht: paper.Height}})
	f.SetCompression(compress)
	f.SetCatalogSort(true)
	f.SetAutoPageBreak(false, 0)
	f.SetMargins(0, 0, 0)
	f.SetProducer(sheet.Producer, false)
	f.SetTitle(d.Title, true)
	f.SetSubject(letters.Printable(d.Subject), true)
	f.SetCreationDate(d.Date.UTC())
	f.SetModificationDate(d.Date.UTC())
	f.AddUTF8FontFromBytes("words", "", goregular.TTF)
	f.AddUTF8FontFromBytes("words", "B", gobold.TTF)
	pen := &pen{f: f, ids: map[sheet.Layer]int{}}
	pen.set(paper, d.Correction)
	for _, l := range sheet.Layers {
		pen.ids[l] = f.AddLayer(string(l), true)
	}
	for i, p := range d.Pages {
		f.AddPage()
		f.SetLineJoinStyle("round")
		pen.state = sheet.Stroke{}
		_, h := paper.Area(d.Correction)
		p.Drawing.Text(sheet.Text{Layer: sheet.WordLayer, At: curve.Vec{X: pen.width, Y: h - 0.9}, Says: fmt.Sprintf("page %d of %d", i+1, len(d.Pages)), Size: 2.5, Anchor: sheet.End})
		pen.draw(&p.Drawing)
	}
	var out bytes.Buffer
	if err := f.Output(&out); err != nil {
		return nil, fmt.Errorf("the PDF could not be made: %w", err)
	}
	data, err := finish(out.Bytes())
	if err != nil {
		return nil, fmt.Errorf("the PDF could not be made: %w", err)
	}
	return data, nil
}

// pen draws millimetres as measured on paper: it stretches them by what the
// printer takes away, about the middle of the page.
type pen struct {
	f      *fpdf.Fpdf
	ids    map[sheet.Layer]int
	state  sheet.Stroke
	fx, fy float64
	ox, oy float64
	width  float64 // of what may be printed on
}

func (p *pen) set(paper sheet.Paper, c sheet.Correction) {
	w, h := paper.Area(c)
	p.width = w
	p.fx, p.fy = c.Factors()
	p.ox, p.oy = paper.Width/2-p.fx*w/2, paper.Height/2-p.fy*h/2
}

func (p *pen) at(v curve.Vec) (x, y float64) { return p.ox + p.fx*v.X, p.oy + p.fy*v.Y }

// draw puts a drawing on the page, layer by layer.
func (p *pen) draw(d *sheet.Drawing) {
	for _, l := range sheet.Layers {
		open := false
		begin := func() {
			if !open {
				p.f.BeginLayer(p.ids[l])
				open = true
			}
		}
		for _, q := range d.Paths {
			if q.Layer == l {
				begin()
				p.path(q)
			}
		}
		for _, c := range d.Circles {
			if c.Layer == l {
				begin()
				p.stroke(c.Stroke, 0)
				x, y := p.at(c.At)
				p.f.Ellipse(x, y, c.Radius*p.fx, c.Radius*p.fy, 0, "D")
			}
		}
		for _, s := range d.Spots {
			if s.Layer == l {
				begin()
				x, y := p.at(s.At)
				p.f.Ellipse(x, y, s.Radius*p.fx, s.Radius*p.fy, 0, p.fill(s.Ink))
			}
		}
		for _, t := range d.Texts {
			if t.Layer == l && t.Says != "" {
				begin()
				p.text(t)
			}
		}
		if open {
			p.f.EndLayer()
		}
	}
}

// stroke sets width and dashes if they are not set.
func (p *pen) stroke(s sheet.Stroke, from float64) {
	if p.state.Width != s.Width {
		p.f.SetLineWidth(s.Width)
	}
	if len(s.Dashes) > 0 || len(p.state.Dashes) > 0 || p.state.Width == 0 {
		sum := 0.0
		for _, d := range s.Dashes {
			sum += d
		}
		if sum > 0 {
			from = math.Mod(from, sum)
		}
		p.f.SetDashPattern(s.Dashes, from)
	}
	p.state = s
}

func (p *pen) path(q sheet.Path) {
	if len(q.Pts) < 2 {
		return
	}
	how := p.fill(q.Ink)
	if how == "D" {
		p.stroke(q.Stroke, q.From)
	}
	p.f.MoveTo(p.at(q.Pts[0]))
	for _, v := range q.Pts[1:] {
		p.f.LineTo(p.at(v))
	}
	if q.Closed {
		p.f.ClosePath()
	}
	p.f.DrawPath(how)
}

// fill sets the colour that fills, and gives the way of drawing.
func (p *pen) fill(i sheet.Ink) string {
	switch i {
	case sheet.Black:
		p.f.SetFillColor(0, 0, 0)
	case sheet.White:
		p.f.SetFillColor(255, 255, 255)
	default:
		return "D"
	}
	return "F"
}

func (p *pen) text(t sheet.Text) {
	style := ""
	if t.Bold {
		style = "B"
	}
	scale := min(p.fx, p.fy, 1) // words may not outgrow their box
	p.f.SetFont("words", style, t.Size*scale*72/25.4)
	if t.Grey {
		p.f.SetTextColor(165, 165, 165)
		defer p.f.SetTextColor(0, 0, 0)
	}
	w := letters.Width(t.Says, t.Bold) * t.Size * scale
	x, y := p.at(t.At)
	switch t.Anchor {
	case sheet.Middle:
		w /= 2
	case sheet.Start:
		w = 0
	}
	if t.Angle != 0 {
		p.f.TransformBegin()
		defer p.f.TransformEnd()
		p.f.TransformRotate(t.Angle*180/math.Pi, x, y)
	}
	p.f.Text(x-w, y, t.Says)
}
