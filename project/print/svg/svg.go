// Package svg writes a drawing as an SVG file at true size, for a cutter.
package svg

import (
	"bytes"
	"chape/project/print/sheet"
	"encoding/xml"
	"fmt"
	"math"
	"slices"
	"strconv"
)

// Write gives the drawing as a file at true size, in millimetres, with a group for each of
// the layers that it has, each of a colour of its own. No stroke is dashed: a cutter would
// follow the dashes.
func Write(d *sheet.Drawing, title, says string, look Look) []byte {
	layers, out := look.layers(), &file{}
	const room = 8 // mm round it, for the words
	b := d.Bounds().Grow(room)
	for _, t := range d.Texts {
		if slices.Contains(layers, t.Layer) {
			b = b.Union(t.Box().Grow(1))
		}
	}
	w, h := math.Ceil(b.Width()), math.Ceil(b.Height())
	out.f(`<?xml version="1.0" encoding="UTF-8"?>` + "\n")
	out.f(`<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="%s %s %s %s">`+"\n",
		fig(w), fig(h), fig(b.Lo.X), fig(b.Lo.Y), fig(w), fig(h))
	out.f("<!-- %s -->\n", sheet.Producer)
	out.f("<title>%s</title>\n", escaped(title))
	out.f("<desc>%s</desc>\n", escaped(says))
	for _, l := range layers {
		out.group(d, l, look.Colours.of(l))
	}
	out.f("</svg>\n")
	return out.Bytes()
}

// file collects what is written.
type file struct{ bytes.Buffer }

func (s *file) f(format string, args ...any) { fmt.Fprintf(s, format, args...) }

func (s *file) group(d *sheet.Drawing, l sheet.Layer, colour string) {
	if !has(d, l) {
		return
	}
	s.f(`<g id="%s" fill="none" stroke="%s">`+"\n", l, colour)
	for _, p := range d.Paths {
		if p.Layer == l {
			s.path(p)
		}
	}
	for _, c := range d.Circles {
		if c.Layer == l {
			s.f(`<circle cx="%s" cy="%s" r="%s" stroke-width="%s"/>`+"\n", fig(c.At.X), fig(c.At.Y), fig(c.Radius), fig(c.Stroke.Width))
		}
	}
	for _, t := range d.Texts {
		if t.Layer == l {
			s.text(t, colour)
		}
	}
	s.f("</g>\n")
}

// has tells whether there is anything on a layer.
func has(d *sheet.Drawing, l sheet.Layer) bool {
	return slices.ContainsFunc(d.Paths, func(p sheet.Path) bool { return p.Layer == l }) ||
		slices.ContainsFunc(d.Circles, func(c sheet.Circle) bool { return c.Layer == l }) ||
		slices.ContainsFunc(d.Texts, func(t sheet.Text) bool { return t.Layer == l })
}

func (s *file) path(p sheet.Path) {
	s.f(`<path d="M`)
	for i, v := range p.Pts {
		if i > 0 {
			s.WriteByte('L')
		}
		s.f("%s %s", fig(v.X), fig(v.Y))
	}
	if p.Closed {
		s.WriteByte('Z')
	}
	s.f(`" stroke-width="%s"/>`+"\n", fig(p.Stroke.Width))
}

func (s *file) text(t sheet.Text, colour string) {
	if t.Grey {
		colour = "silver"
	}
	s.f(`<text x="%s" y="%s" font-family="sans-serif" font-size="%s" fill="%s" stroke="none"`, fig(t.At.X), fig(t.At.Y), fig(t.Size), colour)
	if t.Bold {
		s.f(` font-weight="bold"`)
	}
	if t.Anchor != sheet.Start {
		s.f(` text-anchor="%s"`, [...]string{"start", "middle", "end"}[t.Anchor])
	}
	if t.Angle != 0 {
		s.f(` transform="rotate(%s %s %s)"`, fig(-t.Angle*180/math.Pi), fig(t.At.X), fig(t.At.Y))
	}
	s.f(">%s</text>\n", escaped(t.Says))
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
