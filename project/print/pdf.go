package print

import (
	"bytes"
	"fmt"
	"math"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"

	"chape/calc/curve"
)

// producer stands in the file, and marks it as one of ours.
const producer = "chape pattern sheets"

// pdf writes the pages. The layers of a drawing are layers of the file.
func (j *job) pdf(pages []page, compress bool) ([]byte, error) {
	paper := j.o.Paper
	f := fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "mm", Size: fpdf.SizeType{Wd: paper.Width, Ht: paper.Height}})
	f.SetCompression(compress)
	f.SetCatalogSort(true)
	f.SetAutoPageBreak(false, 0)
	f.SetMargins(0, 0, 0)
	f.SetProducer(producer, false)
	f.SetTitle(j.title(), true)
	f.SetSubject(printable(j.subject()), true)
	f.SetCreationDate(j.o.Date.UTC())
	f.SetModificationDate(j.o.Date.UTC())
	f.AddUTF8FontFromBytes("words", "", goregular.TTF)
	f.AddUTF8FontFromBytes("words", "B", gobold.TTF)
	pen := &pen{f: f, ids: map[layer]int{}}
	pen.set(paper, j.o.Correction)
	for _, l := range layers {
		pen.ids[l] = f.AddLayer(string(l), true)
	}
	for i, p := range pages {
		f.AddPage()
		f.SetLineJoinStyle("round")
		pen.state = stroke{}
		_, h := paper.area(j.o.Correction)
		p.d.text(text{layer: wordLayer, at: curve.Vec{X: pen.width, Y: h - 0.6}, s: fmt.Sprintf("page %d of %d", i+1, len(pages)), size: 2.2, anchor: end})
		pen.draw(&p.d)
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

func (j *job) subject() string {
	if j.tracing {
		return "a knife is traced on it"
	}
	return fmt.Sprintf("sheath pattern, revision %d", j.p.Revision)
}

// pen draws millimetres as measured on paper: it stretches them by what the
// printer takes away, about the middle of the page.
type pen struct {
	f      *fpdf.Fpdf
	ids    map[layer]int
	state  stroke
	fx, fy float64
	ox, oy float64
	width  float64 // of what may be printed on
}

func (p *pen) set(paper Paper, c Correction) {
	w, h := paper.area(c)
	p.width = w
	p.fx, p.fy = c.factors()
	p.ox, p.oy = paper.Width/2-p.fx*w/2, paper.Height/2-p.fy*h/2
}

func (p *pen) at(v curve.Vec) (x, y float64) { return p.ox + p.fx*v.X, p.oy + p.fy*v.Y }

// draw puts a drawing on the page, layer by layer.
func (p *pen) draw(d *drawing) {
	for _, l := range layers {
		open := false
		begin := func() {
			if !open {
				p.f.BeginLayer(p.ids[l])
				open = true
			}
		}
		for _, q := range d.paths {
			if q.layer == l {
				begin()
				p.path(q)
			}
		}
		for _, c := range d.circles {
			if c.layer == l {
				begin()
				p.stroke(c.stroke, 0)
				x, y := p.at(c.at)
				p.f.Ellipse(x, y, c.radius*p.fx, c.radius*p.fy, 0, "D")
			}
		}
		for _, s := range d.spots {
			if s.layer == l {
				begin()
				x, y := p.at(s.at)
				p.f.Ellipse(x, y, s.radius*p.fx, s.radius*p.fy, 0, p.fill(s.ink))
			}
		}
		for _, t := range d.texts {
			if t.layer == l && t.s != "" {
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
func (p *pen) stroke(s stroke, from float64) {
	if p.state.width != s.width {
		p.f.SetLineWidth(s.width)
	}
	if len(s.dashes) > 0 || len(p.state.dashes) > 0 || p.state.width == 0 {
		sum := 0.0
		for _, d := range s.dashes {
			sum += d
		}
		if sum > 0 {
			from = math.Mod(from, sum)
		}
		p.f.SetDashPattern(s.dashes, from)
	}
	p.state = s
}

func (p *pen) path(q path) {
	if len(q.pts) < 2 {
		return
	}
	how := p.fill(q.ink)
	if how == "D" {
		p.stroke(q.stroke, q.from)
	}
	p.f.MoveTo(p.at(q.pts[0]))
	for _, v := range q.pts[1:] {
		p.f.LineTo(p.at(v))
	}
	if q.closed {
		p.f.ClosePath()
	}
	p.f.DrawPath(how)
}

// fill sets the colour that fills, and gives the way of drawing.
func (p *pen) fill(i ink) string {
	switch i {
	case black:
		p.f.SetFillColor(0, 0, 0)
	case white:
		p.f.SetFillColor(255, 255, 255)
	default:
		return "D"
	}
	return "F"
}

func (p *pen) text(t text) {
	style := ""
	if t.bold {
		style = "B"
	}
	scale := min(p.fx, p.fy, 1) // words may not outgrow their box
	p.f.SetFont("words", style, t.size*scale*72/25.4)
	if t.grey {
		p.f.SetTextColor(165, 165, 165)
		defer p.f.SetTextColor(0, 0, 0)
	}
	w := textWidth(t.s, t.bold) * t.size * scale
	x, y := p.at(t.at)
	switch t.anchor {
	case middle:
		w /= 2
	case start:
		w = 0
	}
	if t.angle != 0 {
		p.f.TransformBegin()
		defer p.f.TransformEnd()
		p.f.TransformRotate(t.angle*180/math.Pi, x, y)
	}
	p.f.Text(x-w, y, t.s)
}
