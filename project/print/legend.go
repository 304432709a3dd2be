package print

import (
	"chape/calc/curve"
	"chape/project/print/letters"
	"chape/project/print/sheet"
)

// sign is a line or a mark of the sheets with its words.
type sign struct {
	of    sheet.Layer
	like  sheet.Stroke // as lines of the layer are drawn; of a hole its cross
	says  string       // on a sheet
	whole string       // on the first page, where it is more
}

// signs are the lines of the sheets.
var signs = []sign{
	{sheet.CutLayer, sheet.Wide, "cut: the middle of the line", ""},
	{sheet.WeltLayer, sheet.Wide, "cut: the middle of the line", ""},
	{sheet.StrapLayer, sheet.Wide, "cut: the middle of the line", ""},
	{sheet.AddedLayer, sheet.Wide, "cut: the middle of the line", ""},
	{sheet.StitchLayer, sheet.Dashed, "stitch line", ""},
	{sheet.HoleLayer, sheet.Hair, "hole", "a hole; every tenth has a ring and its number from the mouth"},
	{sheet.GlueLayer, sheet.Thin, "glue line", "glue line: the welt lies from here outwards; roughen and cement no further in"},
	{sheet.FoldLayer, sheet.DashDot, "fold", ""},
	{sheet.MarkLayer, sheet.Hair, "knife", "the knife as it lies in the back half"},
	{sheet.MarkLayer, sheet.Thin, "tick: match body and welt", "a tick stands at the same place on body and welt: each side of a step, and by its distance from the point"},
	{sheet.RegisterLayer, sheet.Dotted, "joint: trim here", "joint of two sheets: trim one of them here"},
}

// shows tells whether a drawing has a sign. A layer holds more than one kind of line.
func (s sign) on(d *sheet.Drawing) bool {
	for _, p := range d.Paths {
		if p.Layer == s.of && p.Stroke.Width == s.like.Width && len(p.Stroke.Dashes) == len(s.like.Dashes) {
			return true
		}
	}
	return false
}

// signsOn are those of a drawing, those that say the same once.
func signsOn(d *sheet.Drawing) []sign {
	var out []sign
	said := map[string]bool{}
	for _, s := range signs {
		if !said[s.says] && s.on(d) {
			said[s.says] = true
			out = append(out, s)
		}
	}
	return out
}

// What a sign takes in a legend, mm.
const (
	signLong = 12.0
	signGap  = 6.0
	signLine = 3.6
)

// legendRows sets signs side by side, as many as the width takes.
func legendRows(all []sign, width float64) [][]sign {
	var rows [][]sign
	left := 0.0
	for _, s := range all {
		w := signLong + 1.5 + letters.Width(s.says, false)*frameSize + signGap
		if len(rows) == 0 || w > left {
			rows, left = append(rows, nil), width
		}
		rows[len(rows)-1] = append(rows[len(rows)-1], s)
		left -= w
	}
	return rows
}

// draw shows a piece of the line.
func (s sign) draw(d *sheet.Drawing, at curve.Vec, long float64) {
	if s.of == sheet.HoleLayer {
		cross(d, sheet.WordLayer, at.Add(curve.Vec{X: long / 2}))
		return
	}
	d.Line(sheet.WordLayer, s.like, at, at.Add(curve.Vec{X: long}))
}

// legend draws the rows from a place downwards.
func legend(d *sheet.Drawing, rows [][]sign, at curve.Vec) {
	for i, row := range rows {
		p := at.Add(curve.Vec{Y: signLine * float64(i)})
		for _, s := range row {
			s.draw(d, p.Sub(curve.Vec{Y: 0.9}), signLong)
			d.Text(sheet.Text{Layer: sheet.WordLayer, At: p.Add(curve.Vec{X: signLong + 1.5}), Says: s.says, Size: frameSize})
			p.X += signLong + 1.5 + letters.Width(s.says, false)*frameSize + signGap
		}
	}
}

// legendPage shows a piece of each line with all its words.
func legendPage(f *sheet.Flow, all []sign) {
	for _, s := range all {
		says := s.whole
		if says == "" {
			says = s.says
		}
		lines := letters.Wrap(letters.Printable(says), 2.7, f.Width-26, false)
		f.Need(3.8 * float64(len(lines)))
		s.draw(f.Page(), curve.Vec{X: f.X() + 0.4, Y: f.Y + 2}, 22)
		for _, l := range lines {
			f.Put(26, l, 2.7, false, sheet.Start)
			f.Y += 3.8
		}
	}
}
