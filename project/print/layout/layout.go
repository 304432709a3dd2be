// Package layout draws how parts lie on leather: on paper at a fraction of true size with
// dimensions, and as an SVG file at true size.
package layout

import (
	"cmp"
	"errors"
	"fmt"
	"time"

	"chape/calc/curve"
	"chape/calc/length"
	"chape/calc/nest"
	"chape/project/leather"
	"chape/project/print/folder"
	"chape/project/print/letters"
	"chape/project/print/pdf"
	"chape/project/print/sheet"
	"chape/project/print/svg"
)

// Options say on what the placing is printed. The zero value is A4 and millimetres.
type Options struct {
	Paper      sheet.Paper
	Correction sheet.Correction
	Cutter     svg.Look
	Unit       length.Unit
	Date       time.Time // stands in the file and on its pages; zero: none
}

// job is one placing to print.
type job struct {
	laid  leather.Laid
	title string
	o     Options
}

// Files are the placing as a PDF, and an SVG for each piece of leather used, by names that
// begin with base. The error says what can't be printed.
func Files(l leather.Laid, base, title string, o Options) ([]folder.File, error) {
	data, err := PDF(l, title, o)
	if err != nil {
		return nil, err
	}
	out := []folder.File{{Name: folder.Name(base, " on leather.pdf"), Data: data}}
	for i, u := range l.Result.Uses {
		end := " on leather.svg"
		if len(l.Result.Uses) > 1 {
			end = fmt.Sprintf(" on leather %d.svg", i+1)
		}
		out = append(out, folder.File{Name: folder.Name(base, end), Data: SVG(l, u, title, o.Cutter)})
	}
	return out, nil
}

// PDF draws a page for each piece of leather used, at 1:4 or, where that has no room, at the next
// smaller scale, and lists where each part lies. Errors are those of paper and
// correction, or that nothing was placed.
func PDF(l leather.Laid, title string, o Options) ([]byte, error) {
	o.Paper = o.Paper.OrFirst()
	if err := cmp.Or(o.Paper.Check(), o.Correction.Check()); err != nil {
		return nil, err
	}
	if len(l.Result.Uses) == 0 {
		return nil, errors.New("nothing to print: no part has a place")
	}
	j := job{l, title, o}
	var pages []sheet.Page
	for _, u := range l.Result.Uses {
		pages = append(pages, j.piece(u))
		pages = append(pages, j.list(u)...)
	}
	return pdf.Document{Paper: o.Paper, Correction: o.Correction, Date: pdf.DateOr(o.Date), Title: letters.Printable(title) + " on leather",
		Subject: "how the parts lie", Pages: pages}.Bytes(true)
}

// SVG draws one piece of leather with the parts on it, at true size.
func SVG(l leather.Laid, u nest.Use, title string, look svg.Look) []byte {
	piece := l.Task.Pieces[u.Piece]
	var d sheet.Drawing
	flat(&d, l, u, func(v curve.Vec) curve.Vec { return curve.Vec{X: v.X, Y: -v.Y} }, 4)
	return svg.Write(&d, letters.Printable(title)+" on "+letters.Printable(piece.Name), "grain side up, at true size, in millimetres", look)
}

// flat draws a piece with its flaws, the parts and their folds, by a way of putting places on
// paper, with names of a size.
func flat(d *sheet.Drawing, l leather.Laid, u nest.Use, at func(curve.Vec) curve.Vec, size float64) {
	put := func(pts curve.Line) curve.Line {
		out := make(curve.Line, len(pts))
		for i, p := range pts {
			out[i] = at(p)
		}
		return out
	}
	piece := l.Task.Pieces[u.Piece]
	d.Path(sheet.Path{Layer: sheet.MarkLayer, Stroke: sheet.Thin, Pts: put(piece.Outline), Closed: true})
	word := func(p curve.Vec, says string, bold bool) {
		d.Text(sheet.Text{Layer: sheet.WordLayer, At: at(p).Add(curve.Vec{Y: size / 3}), Says: says, Size: size, Bold: bold, Anchor: sheet.Middle})
	}
	for _, f := range piece.Flaws {
		d.Path(sheet.Path{Layer: sheet.MarkLayer, Stroke: sheet.Dashed, Pts: put(f), Closed: true})
		word(leather.Middle(f), "flaw", false)
	}
	for i, p := range l.On(u.Piece) {
		outline := p.Put(l.Task.Parts[p.Part].Outline)
		d.Path(sheet.Path{Layer: layerOf(l.Task.Parts[p.Part].Kind), Stroke: sheet.Wide, Pts: put(outline), Closed: true})
		if fold := l.Folds[p.Part]; fold != nil {
			d.Path(sheet.Path{Layer: sheet.FoldLayer, Stroke: sheet.DashDot, Pts: put(p.Put(fold))})
		}
		word(leather.Middle(outline), fmt.Sprint(i+1), true)
	}
}

// layerOf is the layer that a part is cut by.
func layerOf(k nest.Kind) sheet.Layer {
	switch k {
	case nest.Welt:
		return sheet.WeltLayer
	case nest.Strap:
		return sheet.StrapLayer
	}
	return sheet.CutLayer
}
