package print

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"math"
	"strconv"

	"chape/calc"
	"chape/calc/curve"
	"chape/project"
)

// SVG draws the pattern, with the welt beside it, for a cutter: one file at
// true size in millimetres, with groups cut, stitch, holes, fold, glue,
// relief, welt, and words. What is cut is closed paths; no segment strays
// more than 0.05 mm from its curve. Holes are as wide as the chosen drill.
// Paper and printer correction mean nothing here. Errors are as for PDF.
func SVG(p project.Project, plan *calc.Plan, o Options) ([]byte, error) {
	o.Paper, o.Correction = Paper{}, Correction{}
	j, err := newJob(p, plan, o)
	if err != nil {
		return nil, err
	}
	j.o.begin("svg")
	d := j.forCutter()
	const room = 8 // mm round it, for the words
	b := d.bounds().grow(room)
	for _, t := range d.texts {
		b = b.union(t.box().grow(1))
	}
	out := &svg{}
	w, h := math.Ceil(b.width()), math.Ceil(b.height())
	out.f(`<?xml version="1.0" encoding="UTF-8"?>` + "\n")
	out.f(`<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="%s %s %s %s">`+"\n",
		fig(w), fig(h), fig(b.lo.X), fig(b.lo.Y), fig(w), fig(h))
	out.f("<!-- %s -->\n", producer)
	out.f("<title>%s</title>\n", escaped(j.heading(1, 100)))
	out.f("<desc>%s</desc>\n", escaped(j.sideWords()+" "+j.looseWords()))
	for _, l := range []layer{cutLayer, stitchLayer, holeLayer, foldLayer, glueLayer, reliefLayer, weltLayer, trialLayer, wordLayer} {
		if l != trialLayer || j.trial() {
			out.group(&d, l)
		}
	}
	out.f("</svg>\n")
	return out.Bytes(), nil
}

// forCutter is the pattern and, right of it, the welt.
func (j *job) forCutter() drawing {
	d := j.pattern()
	for i := range d.paths {
		if d.paths[i].layer == cutLayer {
			d.paths[i].closed = true // half a pattern as well, along the fold
		}
	}
	whole := d.bounds()
	d.settle(whole.grow(6))
	d.label(whole.grow(6))
	d.put(j.halves(), whole)
	drill := j.plan.Stitch.Choice().Diameter
	d.paths, d.circles = withHoles(d, drill)
	welt := j.welt()
	welt.label(welt.bounds().grow(6))
	at := welt.bounds()
	d.add(welt, curve.Vec{X: whole.hi.X - at.lo.X + 25, Y: whole.hi.Y - at.hi.Y})
	if j.trial() {
		d.add(notForLeather(d.bounds()), curve.Vec{})
	}
	return d
}

// withHoles has a circle for each cross, and no rings.
func withHoles(d drawing, drill float64) (paths []path, circles []circle) {
	for _, p := range d.paths {
		if p.layer != holeLayer {
			paths = append(paths, p)
		} else if p.pts[0].Y == p.pts[1].Y { // of the two strokes of a cross, the level one
			circles = append(circles, circle{holeLayer, hair, p.pts[0].Add(p.pts[1]).Mul(0.5), drill / 2})
		}
	}
	for _, c := range d.circles {
		if c.layer != holeLayer {
			circles = append(circles, c)
		}
	}
	return paths, circles
}

// svg collects the file.
type svg struct{ bytes.Buffer }

func (s *svg) f(format string, args ...any) { fmt.Fprintf(s, format, args...) }

func (s *svg) group(d *drawing, l layer) {
	s.f(`<g id="%s" fill="none" stroke="black">`+"\n", l)
	for _, p := range d.paths {
		if p.layer == l {
			s.path(p)
		}
	}
	for _, c := range d.circles {
		if c.layer == l {
			s.f(`<circle cx="%s" cy="%s" r="%s" stroke-width="%s"/>`+"\n", fig(c.at.X), fig(c.at.Y), fig(c.radius), fig(c.stroke.width))
		}
	}
	for _, t := range d.texts {
		if t.layer == l {
			s.text(t)
		}
	}
	s.f("</g>\n")
}

func (s *svg) path(p path) {
	s.f(`<path d="M`)
	for i, v := range p.pts {
		if i > 0 {
			s.WriteByte('L')
		}
		s.f("%s %s", fig(v.X), fig(v.Y))
	}
	if p.closed {
		s.WriteByte('Z')
	}
	s.f(`" stroke-width="%s"`, fig(p.stroke.width))
	for i, d := range p.stroke.dashes {
		if i == 0 {
			s.f(` stroke-dasharray="%s`, fig(d))
		} else {
			s.f(" %s", fig(d))
		}
	}
	if len(p.stroke.dashes) > 0 {
		s.WriteByte('"')
	}
	s.f("/>\n")
}

func (s *svg) text(t text) {
	colour := "black"
	if t.grey {
		colour = "silver"
	}
	s.f(`<text x="%s" y="%s" font-family="sans-serif" font-size="%s" fill="%s" stroke="none"`, fig(t.at.X), fig(t.at.Y), fig(t.size), colour)
	if t.bold {
		s.f(` font-weight="bold"`)
	}
	if t.anchor != start {
		s.f(` text-anchor="%s"`, [...]string{"start", "middle", "end"}[t.anchor])
	}
	if t.angle != 0 {
		s.f(` transform="rotate(%s %s %s)"`, fig(-t.angle*180/math.Pi), fig(t.at.X), fig(t.at.Y))
	}
	s.f(">%s</text>\n", escaped(t.s))
}

// fig is a figure to a thousandth, without zeros at its end.
func fig(v float64) string {
	return strconv.FormatFloat(math.Round(v*1000)/1000+0, 'f', -1, 64)
}

func escaped(s string) string {
	var b bytes.Buffer
	if err := xml.EscapeText(&b, []byte(s)); err != nil {
		return "" // a buffer takes everything
	}
	return b.String()
}
